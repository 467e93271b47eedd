import { useSignal } from '@preact/signals';
import { askExposure, readRows, wedgeCurve, withExposure, withWedge, type WedgeCurve } from '../../../core/asks/index.ts';
import { stripSeconds } from '../../../core/halftone/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { ProblemError, type Problem } from '../../../core/problem.ts';
import { deltaE, figure, film, list, name as asName, say, share } from '../../../words/one-language.ts';
import { faultsOf } from '../../engine/faults.ts';
import type { Bench } from '../../store/bench.ts';
import { step, told, words } from '../../store/words.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { FileButton } from '../../ui/fields/FileButton.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';

type Layer = Plan['layers'][number];
interface Props {
  readonly bench: Bench;
  readonly plan: Pick<Plan, 'layers' | 'press'>;
  readonly layer: Layer;
  /** Saves one of the two films that this needs. */
  readonly save: (what: 'wedge' | 'strip') => void;
  readonly busy: boolean;
}

const seconds = (s: number): ReturnType<typeof figure> => figure(s, s < 20 ? 1 : 0, false);

/** What a run's dots gain: its curve, the wedge that is printed for it, and what was read of that. */
export function Wedge({ bench, layer, save, busy }: Props) {
  const w = words().stencils;
  const typed = useSignal('');
  const problems = useSignal<readonly Problem[]>([]);
  const paper = bench.paper.value;
  const curve = wedgeCurve(paper?.tones, layer.id);
  if (!paper || !curve) return null;
  const at = { paperId: paper.id, layerId: layer.id };
  const read = async (from: { readonly bytes: Uint8Array; readonly name: string } | { readonly text: string }): Promise<void> => {
    bench.refuse(null);
    try {
      await bench.upToDate();
      const found = await bench.ask('wedge', { ...at, ...from });
      problems.value = found.problems;
      bench.edit(step('wedge', layer.name), (job) => withWedge(job, at, found));
      bench.announce(told(say('halftone.wedgeKept', { n: found.steps.length })));
    } catch (error) {
      bench.refuse(faultsOf(error));
    }
  };
  const half = share(curve.points.find((p) => p.film === 0.5)?.paper ?? 0.5, 0);
  return (
    <section class="beside" aria-labelledby="wedge">
      <h2 id="wedge">{w.wedge}</h2>
      <CurvePicture curve={curve} label={told(say('halftone.curveOf', { layer: asName(layer.name), paper: asName(paper.name) }))} />
      <PaperSwitch bench={bench} />
      <p>
        {told(
          curve.read
            ? say('halftone.curveRead', { half, n: figure(curve.n, 2), off: deltaE(curve.off ?? 0) })
            : say('halftone.curveGuessed', { half }),
        )}
      </p>
      <p>{told(say('halftone.wedgeUse'))}</p>
      <div class="row">
        <button type="button" class="button button-line" disabled={busy} onClick={() => save('wedge')}>
          {w.wedgeSave}
        </button>
        <FileButton
          label={w.wedgeRead}
          hint={w.wedgeReadHint}
          accept="image/*,.txt,.cgats,.cxf,.xml,.csv,.ti3,.it8"
          onFile={(name, bytes) => read({ bytes, name })}
        />
      </div>
      <label class="tone-typed">
        <span>{w.wedgeTyped}</span>
        <textarea
          class="text"
          rows={4}
          value={typed.value}
          placeholder={w.wedgeExample}
          onInput={(e) => {
            typed.value = e.currentTarget.value;
          }}
        />
      </label>
      <div class="row">
        <button
          type="button"
          class="button button-line"
          disabled={typed.value.trim() === ''}
          onClick={() => void read({ text: typed.value })}
        >
          {w.wedgeTake}
        </button>
        {curve.read && (
          <button
            type="button"
            class="button button-line"
            onClick={() => {
              problems.value = [];
              bench.edit(step('wedge', layer.name), (job) => withWedge(job, at, { steps: [], problems: [] }));
            }}
          >
            {w.wedgeAway}
          </button>
        )}
      </div>
      {problems.value.length > 0 && <ProblemList problems={problems.value} />}
    </section>
  );
}

/** Film along the bottom, paper up the side; the line without gain beside it. */
function CurvePicture({ curve, label }: { readonly curve: WedgeCurve; readonly label: string }) {
  const side = 100;
  const d = curve.points.map((p, i) => `${i === 0 ? 'M' : 'L'}${p.film * side} ${side - p.paper * side}`).join('');
  return (
    <svg class="tone-curve" viewBox={`-2 -2 ${side + 4} ${side + 4}`} role="img" aria-label={label}>
      <title>{label}</title>
      <path class="tone-frame" d={`M0 0H${side}V${side}H0Z`} />
      <path class="tone-even" d={`M0 ${side}L${side} 0`} />
      <path class="tone-line" d={d} />
      {curve.read && curve.points.map((p) => <circle key={p.film} cx={p.film * side} cy={side - p.paper * side} r={1.6} />)}
    </svg>
  );
}

/** How long the screen is exposed: the strip, its times, and what it showed. */
export function Exposure({ bench, plan, layer, save, busy }: Props) {
  const w = words().stencils;
  const first = useSignal(60);
  const rows = useSignal('');
  const { had, more } = stripSeconds(first.value);
  const keep = (): void => {
    bench.refuse(null);
    try {
      const found = askExposure(plan, layer.id, first.value, readRows(rows.value, say('where.exposureStrip')));
      bench.edit(step('exposure', layer.name), (job) => withExposure(job, plan, layer.id, found));
      const { row, lightest, darkest } = found;
      bench.announce(
        [
          told(
            say('halftone.exposeFor', {
              time: seconds(found.seconds),
              row: row + 1,
              lightest: share(lightest, 0),
              darkest: share(darkest, 0),
            }),
          ),
          found.atEnd ? told(say(found.atEnd === 'shortest' ? 'halftone.stripAtShortest' : 'halftone.stripAtLongest')) : '',
          told(say('halftone.leastTaken', { least: film(found.takenMicrons, 0) })),
        ].join(' '),
      );
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      bench.refuse(error.problems);
    }
  };
  return (
    <section class="beside" aria-labelledby="exposure">
      <h2 id="exposure">{w.exposure}</h2>
      <p>{told(say('halftone.stripUse'))}</p>
      <div class="row">
        <button type="button" class="button button-line" disabled={busy} onClick={() => save('strip')}>
          {w.stripSave}
        </button>
      </div>
      <div class="fields">
        <CountField label={w.stripFirst} value={first.value} min={1} max={3600} digits={0} unit="s" onSet={(v) => (first.value = v)} />
      </div>
      <p>{told(say('halftone.rowsAre', { first: seconds(first.value), more: list(more.slice(1).map(seconds), 'and') }))}</p>
      <ol class="strip-times">
        {had.map((s, i) => (
          <li key={i}>{told(say('halftone.rowHad', { row: i + 1, time: seconds(s) }))}</li>
        ))}
      </ol>
      <label class="tone-typed">
        <span>{w.stripRows}</span>
        <input
          class="text"
          value={rows.value}
          placeholder="10-90, 5-95, 3-97, -"
          onInput={(e) => {
            rows.value = e.currentTarget.value;
          }}
        />
      </label>
      <div class="row">
        <button type="button" class="button button-line" disabled={rows.value.trim() === ''} onClick={keep}>
          {w.stripTake}
        </button>
      </div>
    </section>
  );
}
