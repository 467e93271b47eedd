import type { ReadonlySignal, Signal } from '@preact/signals';
import type { PlannedOverlap } from '../../../core/plan/index.ts';
import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta, sayPercent } from '../../ui/fields/format.ts';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap, shareOf } from './names.ts';
import { swatchOf } from './ramp.ts';

interface Props {
  readonly plan: ShownPlan;
  /** As D50 shows it, or without tones: ramps are known under no other lamp. */
  readonly paper: Pick<ShownPaper, 'tones'>;
  readonly overlaps: readonly PlannedOverlap[];
  readonly pointed: Signal<number | null>;
  readonly held: ReadonlySignal<number | null>;
  readonly shown: ReadonlySignal<number | null>;
  readonly onHold: (code: number) => void;
}

/** Arrow keys go from swatch to swatch; up and down as the eye sees the rows. */
function onKeyDown(e: KeyboardEvent & { currentTarget: HTMLElement }): void {
  const all = [...e.currentTarget.querySelectorAll<HTMLButtonElement>('button')];
  const at = all.indexOf(document.activeElement as HTMLButtonElement);
  if (at < 0) return;
  const columns = all.filter((b) => b.offsetTop === all[0].offsetTop).length;
  const by: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowLeft: -1,
    ArrowDown: columns,
    ArrowUp: -columns,
    Home: -at,
    End: all.length - 1 - at,
  };
  if (!(e.key in by)) return;
  e.preventDefault();
  all[Math.max(0, Math.min(all.length - 1, at + by[e.key]))].focus();
}

export function SwatchGrid({ plan, paper, overlaps, pointed, held, shown, onHold }: Props) {
  const w = words().overlaps;
  return (
    <ul
      class="swatch-grid"
      onKeyDown={onKeyDown}
      onPointerLeave={() => {
        pointed.value = null;
      }}
    >
      {overlaps.map((overlap) => {
        const swatch = swatchOf(plan, paper, overlap);
        return (
          <li key={overlap.code}>
            <button
              type="button"
              class={`overlap${shown.value === overlap.code ? ' overlap-shown' : ''}`}
              aria-pressed={held.value === overlap.code}
              data-code={overlap.code}
              onPointerEnter={(e) => {
                if (e.pointerType !== 'touch') pointed.value = overlap.code;
              }}
              onFocus={() => {
                pointed.value = overlap.code;
              }}
              onBlur={() => {
                pointed.value = null;
              }}
              onClick={() => onHold(overlap.code)}
            >
              <span class="overlap-colour" style={{ background: swatch.background }} />
              <span class="overlap-facts">
                <Films layers={plan.layers} here={overlap.layers} />
                <span class="unseen">
                  {w.swatch(nameOverlap(plan, overlap))} {swatch.ramp}{' '}
                </span>
                <span>{sayPercent(shareOf(plan, overlap))}</span>
                <small>± {sayDelta(overlap.band)}</small>
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
