import { useLayoutEffect, useRef } from 'preact/hooks';
import { PlaneCanvas } from '../../../ui/PlaneCanvas.tsx';
import { regionPath } from '../../../ui/region-path.ts';
import { words } from '../../../store/words.ts';
import type { Bench } from '../../../store/bench.ts';
import { bridgeAt, chosenLayer, lookAt, placing } from '../state.ts';

/** The cut sheets as they hang on the line, pegged up in the order they print; the one on the table below is marked. */
export function HungSheets({ bench, chosen }: { readonly bench: Bench; readonly chosen: string }) {
  const w = words().stencils;
  const line = useRef<HTMLUListElement>(null);
  useLayoutEffect(() => {
    const [row, sheet] = [line.current, line.current?.querySelector<HTMLElement>('[aria-pressed=true]')];
    if (!row || !sheet) return;
    const [seen, held] = [row.getBoundingClientRect(), sheet.getBoundingClientRect()];
    if (held.left < seen.left || held.right > seen.right) row.scrollLeft += held.left - seen.left - (seen.width - held.width) / 2;
  }, [chosen]);
  return (
    <ul class="hung" aria-label={w.all} ref={line}>
      {bench.plan.value?.layers.map(({ id, run, name, side, stencil, tone }) => {
        const {
          sheet,
          certificate: { holds, faults },
          knife,
        } = stencil;
        const says = tone ? w.film : holds ? w.difficulty[knife.difficulty] : w.holdsNot(faults.length);
        const width = sheet.maxX - sheet.minX,
          height = sheet.maxY - sheet.minY;
        return (
          <li key={id}>
            <button
              type="button"
              class="hung-sheet"
              aria-pressed={id === chosen}
              data-stencil={id}
              aria-label={w.tile(run, name, w[side], says)}
              onClick={() => {
                chosenLayer.value = id;
                bridgeAt.value = placing.value = lookAt.value = null;
              }}
            >
              {tone && <PlaneCanvas class="hung-picture" {...bench.plan.value!.codes} plane={tone.plane} widestPx={240} label="" />}
              {!tone && (
                <svg class="hung-picture" viewBox={`${sheet.minX} ${sheet.minY} ${width} ${height}`} aria-hidden="true">
                  <rect class="stencil-sheet" x={sheet.minX} y={sheet.minY} width={width} height={height} />
                  <path class="stencil-prints" fill-rule="evenodd" d={regionPath(stencil.prints)} />
                </svg>
              )}
              <b>
                {run} {name}
              </b>{' '}
              <small class={holds ? 'knows' : 'needs'}>{says}</small>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
