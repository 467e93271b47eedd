import { words } from '../../store/words.ts';
import { Calibrate } from '../../ui/screen/Calibrate.tsx';
import { ZoomBar, ZoomView } from '../../ui/proof/ZoomView.tsx';
import type { StationProps } from '../station.ts';
import { Bridges } from './Bridges.tsx';
import { Certificate } from './Certificate.tsx';
import { CutPair } from './sheet/CutPair.tsx';
import { DoneMarks } from './sheet/DoneMarks.tsx';
import { HungSheets } from './sheet/HungSheets.tsx';
import { Islands } from './Islands.tsx';
import { KnifeWork } from './sheet/KnifeWork.tsx';
import { MaterialChoice } from './sheet/Materials.tsx';
import { chosenLayer, fromBelow, lookAt, placing, shownPxPerMm, zoom } from './state.ts';
import { StencilDrawing } from './StencilDrawing.tsx';
import { Film } from './Film.tsx';
import { Stock } from './sheet/Stock.tsx';

/** Stencils: one at a time, large; beside it what holds it, what that costs, and what the knife has to do. */
export function StencilsView({ bench }: StationProps) {
  const w = words().stencils;
  const job = bench.job.value;
  const plan = bench.plan.value;
  if (!job || !plan) return null;
  const planned = plan.layers.find((l) => l.id === chosenLayer.value) ?? plan.layers[0];
  const layer = planned && job.layers.find((l) => l.id === planned.id);
  if (!planned || !layer) {
    return (
      <section class="empty-bench">
        <h2>{w.none}</h2>
        <p>{w.noneText}</p>
        <p>
          <a class="button button-strong to-forms" href="#forms">
            {words().forms.title}
          </a>
        </p>
      </section>
    );
  }
  if (planned.tone) {
    return (
      <div class="stencils">
        <HungSheets bench={bench} chosen={planned.id} />
        <Film bench={bench} plan={plan} layer={{ ...planned, tone: planned.tone }} />
      </div>
    );
  }
  const { sheet } = planned.stencil;
  const edge = 4;
  const box = { minX: sheet.minX - edge, minY: sheet.minY - edge, maxX: sheet.maxX + edge, maxY: sheet.maxY + edge };
  const parts = { bench, layer, planned };
  return (
    <div class="stencils">
      <HungSheets bench={bench} chosen={planned.id} />
      <div class="forms-sheet">
        <ZoomView box={box} zoom={zoom} shown={shownPxPerMm} label={w.drawing(planned.name, w[planned.side])} lookAt={lookAt.value}>
          {(pxPerMm) => <StencilDrawing bench={bench} layer={layer} planned={planned} pxPerMm={pxPerMm} />}
        </ZoomView>
        <div class="forms-bar">
          <ZoomBar zoom={zoom} shown={shownPxPerMm} />
          <fieldset class="choices">
            <legend class="unseen">{w.seen}</legend>
            <label class="choice-mark">
              <input
                type="radio"
                name="seen"
                checked={!fromBelow.value}
                onChange={() => {
                  fromBelow.value = false;
                }}
              />
              <span>{w.meshSide}</span>
            </label>
            <label class="choice-mark">
              <input
                type="radio"
                name="seen"
                checked={fromBelow.value}
                onChange={() => {
                  fromBelow.value = true;
                }}
              />
              <span>{w.paperSide}</span>
            </label>
          </fieldset>
        </div>
        {placing.value && (
          <div class="row placing-bar" role="status">
            <b>{w.placingHint}</b>
            <button
              type="button"
              class="button button-line"
              onClick={() => {
                placing.value = null;
              }}
            >
              {w.stop}
            </button>
          </div>
        )}
        <Calibrate units={job.units} />
      </div>
      <div class="stencils-beside">
        <DoneMarks bench={bench} layer={layer} planned={planned} />
        <Certificate {...parts} />
        <Bridges {...parts} />
        <Islands {...parts} />
        <KnifeWork {...parts} />
      </div>
      <div class="stencils-under">
        <MaterialChoice {...parts} />
        <Stock {...parts} />
        <CutPair {...parts} />
      </div>
    </div>
  );
}
