import type { JobLayer } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { withLayer } from '../../store/edits.ts';
import { sayPercent } from '../../ui/fields/format.ts';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { PlaneCanvas } from '../../ui/PlaneCanvas.tsx';
import { StencilPicture } from '../../ui/StencilPicture.tsx';
import { step, words } from '../../store/words.ts';
import { moveShelf, type ShelfDrag } from './drag.ts';
import { PotControls } from './PotControls.tsx';

interface Props {
  readonly bench: Bench;
  readonly layer: JobLayer;
  /** In job.layers; 0 is printed first. */
  readonly place: number;
  readonly drag: ShelfDrag;
}

/** One run: its stencil, its pot, and the sheet as it lies in the rack after that run. */
export function Shelf({ bench, layer, place, drag }: Props) {
  const w = words().laydown;
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  const drawn = plan ? null : bench.drawn.value;
  const asDrawn = drawn?.layers.find((l) => l.id === layer.id);
  const layers = bench.job.value?.layers ?? [];
  const printing = layers.filter((l) => !l.off);
  const run = layer.off ? null : printing.indexOf(layer) + 1;
  const planned = plan?.layers.find((l) => l.id === layer.id);
  // Layers that are open leave nothing on the sheet; the progressive proofs count those that print.
  const shown = planned ?? asDrawn;
  const printed = (plan ?? drawn)?.layers.filter((l) => l.inkId !== null && shown && l.run <= shown.run).length ?? 0;

  const carried = drag.carried.value;
  const inHand = carried?.layerId === layer.id;
  const makesRoom =
    carried && !inHand
      ? place > carried.from && place <= carried.to
        ? carried.heightPx
        : place < carried.from && place >= carried.to
          ? -carried.heightPx
          : 0
      : 0;
  const style = inHand
    ? { transform: `translateY(${carried.byPx}px)`, zIndex: 2 }
    : makesRoom
      ? { transform: `translateY(${makesRoom}px)` }
      : {};

  const onKeyDown = (e: KeyboardEvent): void => {
    const by = e.key === 'ArrowUp' ? 1 : e.key === 'ArrowDown' ? -1 : 0;
    if (by === 0) return;
    e.preventDefault();
    moveShelf(bench, layer.id, place + by);
  };
  const setOff = (off: boolean): void =>
    bench.edit(step(off ? 'leaveOut' : 'takeIn', layer.name), (job) => withLayer(job, layer.id, { off }));

  return (
    <li
      class={`shelf${layer.off ? ' shelf-out' : ''}${inHand ? ' shelf-in-hand' : ''}`}
      data-layer={layer.id}
      style={style}
      aria-label={layer.name}
    >
      <div class="shelf-hold">
        <button
          type="button"
          class="handle"
          onKeyDown={onKeyDown}
          {...drag.handle(layer.id)}
          aria-label={run === null ? w.handleOut(layer.name) : w.handle(layer.name, run, printing.length)}
        >
          <span class="run-number">{run ?? '–'}</span>
          <svg class="grip" viewBox="0 0 20 8" aria-hidden="true">
            <path d="M1 1.5h18M1 6.5h18" />
          </svg>
        </button>
        <span class="steps">
          <button
            type="button"
            class="step-button"
            aria-label={w.later(layer.name)}
            disabled={place === layers.length - 1}
            onClick={() => moveShelf(bench, layer.id, place + 1)}
          >
            <svg viewBox="0 0 16 16" aria-hidden="true">
              <path d="M2 11l6-6 6 6" />
            </svg>
          </button>
          <button
            type="button"
            class="step-button"
            aria-label={w.earlier(layer.name)}
            disabled={place === 0}
            onClick={() => moveShelf(bench, layer.id, place - 1)}
          >
            <svg viewBox="0 0 16 16" aria-hidden="true">
              <path d="M2 5l6 6 6-6" />
            </svg>
          </button>
        </span>
      </div>
      <div class="shelf-stencil">
        {planned?.tone && plan && <PlaneCanvas {...plan.codes} plane={planned.tone.plane} widestPx={240} label={layer.name} />}
        {planned && !planned.tone && plan && (
          <StencilPicture
            prints={planned.stencil.prints}
            widthMm={plan.job.image.widthMm}
            heightMm={plan.job.image.heightMm}
            label={layer.side === 'window' ? w.windowPicture(layer.name) : w.piecePicture(layer.name)}
          />
        )}
        {asDrawn && drawn && <StencilPicture prints={asDrawn.prints} {...drawn.job.image} label={w.drawnPicture(layer.name)} />}
      </div>
      <h2>{layer.name}</h2>
      <label class="tick">
        <input
          type="checkbox"
          checked={!layer.off}
          onChange={(e) => setOff(!e.currentTarget.checked)}
          aria-label={w.inPrintOf(layer.name)}
        />
        <span>{layer.off ? w.notInPrint : w.inPrint}</span>
      </label>
      <PotControls bench={bench} layer={layer} planned={shown} />
      <p class="shelf-facts">{planned && w.covers(sayPercent(planned.coverage))}</p>
      <div class="shelf-sheet">
        {planned && plan && paper && <ProofCanvas bench={bench} plan={plan} paper={paper} runs={printed} label={w.sheetAfter(run ?? 0)} />}
        {asDrawn && drawn && (
          <ProofCanvas bench={bench} plan={drawn} paper={drawn.papers[0]} runs={printed} label={w.sheetAfter(run ?? 0)} />
        )}
      </div>
    </li>
  );
}
