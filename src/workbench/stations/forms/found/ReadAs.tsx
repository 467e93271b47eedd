import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ColourEdges } from '../../../../core/asks/index.ts';
import type { JobForm, JobReadAs } from '../../../../core/job/index.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import { faultsOf } from '../../../engine/faults.ts';
import type { DrawingReadings } from '../../../engine/protocol.ts';
import type { Bench } from '../../../store/bench.ts';
import { step, words } from '../../../store/words.ts';
import { broughtProblems } from './bring.ts';
import { withoutIdleCuts } from '../edits.ts';
import { Slider } from '../../../ui/fields/Slider.tsx';

const edges: readonly ColourEdges[] = ['spread', 'under', 'meet'];
const usual = 0.5;

/** What of a drawing is the form: a picture of each choice, to touch; and the drawing as a set of layers, one for each colour. */
export function ReadAs({ bench, form }: { readonly bench: Bench; readonly form: JobForm }) {
  const w = words().forms;
  const found = useSignal<DrawingReadings | null>(null);
  const how = useSignal<ColourEdges>('spread');
  const threshold = useSignal(form.read?.threshold ?? usual);
  const bytes = form.drawing === undefined ? undefined : bench.attachments.value.get(form.drawing);
  useEffect(() => {
    found.value = null;
    threshold.value = form.read?.threshold ?? usual;
    if (!bytes || form.drawing === undefined || /\.dxf$/i.test(form.drawing)) return;
    let here = true;
    bench.ask('readAs', { bytes, name: form.drawing }).then(
      (answer) => {
        if (here) found.value = answer;
      },
      // What can't be read at all is among the job's problems already.
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, [bytes, form.id]);
  const readings = found.value;
  if (!readings || !bytes || form.drawing === undefined) return null;
  const colours = readings.choices.filter((c) => c.colour !== undefined);
  const set = (read: JobReadAs): void =>
    bench.edit(step('readForm', form.name), (j) => ({
      ...j,
      forms: j.forms.map((f) =>
        f.id === form.id ? { ...f, read: { ...(f.read?.threshold === undefined ? {} : { threshold: f.read.threshold }), ...read } } : f,
      ),
    }));
  const now = form.read;
  const pressed = (choice: DrawingReadings['choices'][number]): boolean =>
    choice.colour !== undefined
      ? now?.what === 'colours' && (now.colours?.includes(choice.colour) ?? false)
      : now?.what === choice.reading.what && (now.white ?? 'paper') === (choice.reading.white ?? 'paper');
  const touch = (choice: DrawingReadings['choices'][number]): void => {
    const { colour } = choice;
    if (colour === undefined) return set({ what: choice.reading.what, ...(choice.reading.white ? { white: choice.reading.white } : {}) });
    const before = now?.what === 'colours' ? (now.colours ?? []) : [];
    const after = before.includes(colour) ? before.filter((c) => c !== colour) : [...before, colour];
    if (after.length > 0) set({ what: 'colours', colours: after });
  };
  const nameOf = (choice: DrawingReadings['choices'][number]): string =>
    choice.colour !== undefined
      ? w.readColour(choice.colour, Math.round(100 * (choice.share ?? 0)))
      : choice.reading.what === 'dark'
        ? w.readDark
        : choice.reading.white === 'shape'
          ? w.readWithWhite
          : w.readAll;
  const settle = (): void => {
    const base: JobReadAs = now ?? { what: 'silhouette' };
    set({ ...base, threshold: threshold.value });
  };
  const apart = async (): Promise<void> => {
    const job = bench.job.peek();
    const planned = bench.plan.peek()?.forms.find((f) => f.id === form.id);
    if (!job || form.drawing === undefined) return;
    const { widthMm, heightMm } = job.image;
    const size = now === undefined || now.what === 'silhouette' ? planned?.widthMm : undefined;
    try {
      const next = await bench.ask('byColour', {
        bytes,
        job,
        by: {
          drawing: form.drawing,
          name: form.name,
          edges: how.value,
          middleMm: [widthMm / 2, heightMm / 2],
          widthMm: size ?? Math.min(widthMm, readings.box[2]),
        },
      });
      // The cut that the whole drawing made of itself when it was brought is not wanted beside its colours.
      bench.edit(step('formByColour', form.name), () => withoutIdleCuts(next, form.id));
      broughtProblems.value = [];
      bench.announce(w.madeByColour(colours.length));
    } catch (error) {
      bench.refuse(faultsOf(error, say('where.file', { file: asName(form.drawing) })));
    }
  };
  const [x, y, width, height] = readings.box;
  return (
    <section class="forms-part" aria-labelledby="read-as">
      <h3 id="read-as">{w.readAs}</h3>
      <ul class="tiles">
        {readings.choices.map((choice) => (
          <li key={choice.path.slice(0, 60) + (choice.colour ?? choice.reading.what)}>
            <button type="button" class="tile" aria-pressed={pressed(choice)} aria-label={nameOf(choice)} onClick={() => touch(choice)}>
              <svg class="tile-picture" viewBox={`${x} ${y} ${width} ${height}`} aria-hidden="true">
                <path fill-rule="evenodd" d={choice.path} style={choice.colour === undefined ? undefined : { fill: choice.colour }} />
              </svg>
              <b>{nameOf(choice)}</b>
            </button>
          </li>
        ))}
      </ul>
      <label class="num">
        <span>
          {w.readThreshold} {w.percent(Math.round(threshold.value * 100))}
        </span>
        <Slider
          label={w.readThreshold}
          value={threshold.value}
          min={0.05}
          max={0.95}
          step={0.01}
          text={w.percent(Math.round(threshold.value * 100))}
          onMove={(v) => {
            threshold.value = v;
          }}
          onSettle={settle}
        />
      </label>
      {colours.length > 1 && (
        <>
          <fieldset class="choices">
            <legend>{w.colourEdges}</legend>
            {edges.map((edge) => (
              <label key={edge} class="choice-mark">
                <input
                  type="radio"
                  name="colour-edges"
                  checked={how.value === edge}
                  onChange={() => {
                    how.value = edge;
                  }}
                />
                <span>{w.colourEdge[edge]}</span>
              </label>
            ))}
          </fieldset>
          <button type="button" class="button button-line" onClick={() => void apart()}>
            {w.oneCutAColour(colours.length)}
          </button>
        </>
      )}
    </section>
  );
}
