import type { ReadonlySignal } from '@preact/signals';
import type { Illuminant } from '../../../core/colour/index.ts';
import type { Bench } from '../../store/bench.ts';
import { sayPercent } from '../../ui/fields/format.ts';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap, shareOf } from './names.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly shown: ReadonlySignal<number | null>;
  /** That `paper` is shown under. */
  readonly lamp: Illuminant;
  readonly onPoint: (code: number | null, press: boolean, pixel: number | null) => void;
}

/** The proof with the overlap in question in colour and all others grey. Reads the signal here, so that only this draws anew. */
export function FocusedProof({ bench, plan, paper, shown, lamp, onPoint }: Props) {
  const overlap = shown.value === null ? undefined : paper.overlaps.find((o) => o.code === shown.value);
  const label = overlap
    ? words().overlaps.proofOnly(nameOverlap(plan, overlap), sayPercent(shareOf(plan, overlap)))
    : words().laydown.proof(paper.name);
  return <ProofCanvas bench={bench} plan={plan} paper={paper} lamp={lamp} only={overlap?.code ?? null} label={label} onPoint={onPoint} />;
}
