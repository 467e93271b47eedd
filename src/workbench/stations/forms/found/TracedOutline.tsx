import { words } from '../../../store/words.ts';
import { saySize, type LengthUnits } from '../../../ui/fields/units.ts';
import type { TraceAnswer } from '../../../engine/protocol.ts';

interface Props {
  readonly traced: TraceAnswer['traced'];
  readonly units: LengthUnits;
  /** Of a plate with openings these are taken, not the plate. */
  readonly openings: boolean;
  readonly onOpenings: (are: boolean) => void;
}

/** The outline that came of a photograph; of a plate, whether it is itself meant or its openings. */
export function TracedOutline({ traced, units, openings, onOpenings }: Props) {
  const w = words().forms;
  return (
    <>
      {(traced?.hasOpenings || openings) && (
        <fieldset class="choices">
          <legend>{w.plateTitle}</legend>
          {([false, true] as const).map((is) => (
            <label key={String(is)} class="choice-mark">
              <input type="radio" name="plate" checked={openings === is} onChange={() => onOpenings(is)} />
              <span>{is ? w.plateOpenings : w.plateItself}</span>
            </label>
          ))}
        </fieldset>
      )}
      {traced && (
        <>
          <svg
            class="trace-outline"
            viewBox={`${-1} ${-1} ${traced.widthMm + 2} ${traced.heightMm + 2}`}
            role="img"
            aria-label={w.tracedSize(saySize(traced.widthMm, traced.heightMm, units), traced.outline.length)}
          >
            <path fill-rule="evenodd" d={traced.outline.map((ring) => `M${ring.map((p) => p.join(' ')).join('L')}Z`).join('')} />
          </svg>
          <p>
            <b>{w.tracedSize(saySize(traced.widthMm, traced.heightMm, units), traced.outline.length)}</b>
          </p>
          <details class="fold">
            <summary>{words().sheet.why}</summary>
            <p>{w.tracedWhy}</p>
          </details>
        </>
      )}
    </>
  );
}
