import type { ReadonlySignal } from '@preact/signals';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { words } from '../../store/words.ts';
import { Films } from './Films.tsx';
import { sayDelta, sayLab, sayPercent } from '../fields/format.ts';

interface Props {
  readonly plan: ShownPlan | null;
  readonly paper: ShownPaper | null;
  /** A signal, so that a moving pointer draws this line anew and nothing else. */
  readonly code: ReadonlySignal<number | null>;
  readonly hint: string;
}

/** One line about the overlap pointed at: swatch, films, Lab, band, share. */
export function OverlapLine({ plan, paper, code, hint }: Props) {
  const overlap = code.value === null ? undefined : paper?.overlaps.find((o) => o.code === code.value);
  if (!plan || !overlap) return <p class="overlap-line">{hint}</p>;
  const w = words().overlaps;
  const names = overlap.layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id);
  const { widthMm, heightMm } = plan.job.image;
  return (
    <p class="overlap-line">
      <span class="swatch" style={{ background: overlap.srgb }} />
      <Films layers={plan.layers} here={overlap.layers} />
      <b>{names.length > 0 ? w.films(names) : w.barePaper}</b>
      <span>
        {w.lab}
        {'\u2002'}
        {sayLab(overlap.lab)}
      </span>
      <span>{w.bandValue(sayDelta(overlap.band))}</span>
      <span>{sayPercent(overlap.areaMm2 / (widthMm * heightMm))}</span>
    </p>
  );
}
