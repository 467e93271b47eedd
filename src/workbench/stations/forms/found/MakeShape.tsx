import { type JobForm, type JobMade, madeKinds, usualShape } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { step, words } from '../../../store/words.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { freshId, freshName, newCut, newPart, withForm } from '../edits.ts';
import { inHand, takeForm } from '../state.ts';

/** A little picture of each kind, 24 units wide. */
const pictures: Readonly<Record<JobMade['kind'], string>> = {
  flat: 'M2 2H22V22H2Z',
  band: 'M1 9H23V15H1Z',
  circle: 'M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18Z',
  ring: 'M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18Z M12 7a5 5 0 1 1 0 10a5 5 0 1 1 0-10Z',
  comb: 'M3 3H21V7H19V21H16.5V7H14V21H11.5V7H9V21H6.5V7H3Z',
  torn: 'M2 8L5 6L7 7.5L10 5.5L13 7L16 6L19 8L22 6.5V20H2Z',
  wave: 'M2 9C5 4 8 4 12 9S19 14 22 9V20H2Z',
  grid: 'M3 3H8V8H3ZM10 3H15V8H10ZM17 3H22V8H17ZM3 10H8V15H3ZM10 10H15V15H10ZM17 10H22V15H17ZM3 17H8V22H3ZM10 17H15V22H10ZM17 17H22V22H17Z',
  letters: 'M11 3L4 21H7.5L9 17H11V14.5H10L11 10ZM13 3L20 21H16.5L15 17H13V14.5H14L13 10Z',
};

/** Shapes that nobody has to draw: one touch puts one on the shelf, or on a cut of its own while there is none. */
export function MakeShape({ bench }: { readonly bench: Bench }) {
  const w = words().forms;
  const make = (kind: JobMade['kind']): void => {
    const job = bench.job.peek();
    if (!job) return;
    const name = freshName(job.forms, w.madeKinds[kind]);
    const form: JobForm = { id: freshId(job.forms, name), name, made: usualShape(kind, job.image) };
    const { widthMm, heightMm } = job.image;
    if (job.cuts.length === 0) {
      const made = newCut(withForm(job, form), name, newPart(form.id, widthMm / 2, heightMm / 2));
      bench.edit(step('bringForm', name), () => made.job);
      inHand.value = { cutId: made.id, part: 0, formId: form.id };
    } else {
      bench.edit(step('bringForm', name), (j) => withForm(j, form));
      takeForm(form.id);
    }
    bench.announce(w.brought(name));
  };
  return (
    <details class="fold">
      <summary>{w.makeShape}</summary>
      <ul class="tiles">
        {madeKinds.map((kind) => (
          <li key={kind}>
            <button type="button" class="tile tile-new" onClick={() => make(kind)}>
              <svg class="tile-picture" viewBox="0 0 24 24" aria-hidden="true">
                <path fill-rule="evenodd" d={pictures[kind]} />
              </svg>
              <b>{w.madeKinds[kind]}</b>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

type Size = Exclude<{ [K in keyof AllOf<JobMade>]: K extends `${string}Mm` ? K : never }[keyof AllOf<JobMade>], undefined>;
type AllOf<T> = { [K in T extends unknown ? keyof { [P in keyof T as string extends P ? never : P]: 1 } : never]: unknown };

/** The figures of a made shape. */
export function MadeNumbers({ bench, form, made }: { readonly bench: Bench; readonly form: JobForm; readonly made: JobMade }) {
  const w = words().forms;
  const { units } = bench.job.value!;
  const change = (more: Readonly<Record<string, unknown>>): void =>
    bench.edit(step('shapeForm', form.name), (j) => ({
      ...j,
      forms: j.forms.map((f) =>
        f.id === form.id ? { ...f, made: { ...made, ...more } as JobMade, widthMm: undefined, heightMm: undefined } : f,
      ),
    }));
  const values = made as Readonly<Record<string, unknown>>;
  const size = (key: Size & string, label: string, minMm = 0.1) => (
    <label class="num" key={key}>
      <span>{label}</span>
      <LengthField
        label={label}
        valueMm={Number(values[key])}
        minMm={minMm}
        maxMm={5000}
        units={units}
        onSet={(v) => change({ [key]: v })}
      />
    </label>
  );
  const count = (key: string, label: string, most: number, least = 1) => (
    <label class="num" key={key}>
      <span>{label}</span>
      <NumberField
        label={label}
        value={Number(values[key])}
        min={least}
        max={most}
        unit={w.times}
        onSet={(v) => change({ [key]: Math.round(v) })}
      />
    </label>
  );
  const edgesOf = (choices: readonly ('top' | 'both' | 'all')[]) => (
    <fieldset class="choices" key="edges">
      <legend>{w.shapeEdges}</legend>
      {choices.map((choice) => (
        <label key={choice} class="choice-mark">
          <input type="radio" name="edges" checked={values['edges'] === choice} onChange={() => change({ edges: choice })} />
          <span>{w.shapeEdge[choice]}</span>
        </label>
      ))}
    </fieldset>
  );
  const fields = () => {
    switch (made.kind) {
      case 'flat':
      case 'band':
        return [size('widthMm', w.width), size('heightMm', w.height)];
      case 'circle':
        return [size('acrossMm', w.across)];
      case 'ring':
        return [size('acrossMm', w.across), size('bandMm', w.bandWidth)];
      case 'comb':
        return [
          count('stripes', w.stripes, 500),
          size('stripeMm', w.stripeWidth),
          size('gapMm', w.gap),
          size('lengthMm', w.shapeLength),
          size('backMm', w.back, 0),
        ];
      case 'torn':
        return [
          size('widthMm', w.width),
          size('heightMm', w.height),
          size('roughMm', w.rough),
          edgesOf(['top', 'both', 'all']),
          <button key="again" type="button" class="button button-line" onClick={() => change({ seed: made.seed + 1 })}>
            {w.tearAgain}
          </button>,
        ];
      case 'wave':
        return [
          size('widthMm', w.width),
          size('heightMm', w.height),
          size('lengthMm', w.waveLength),
          size('swingMm', w.swing),
          edgesOf(['top', 'both']),
        ];
      case 'grid':
        return [count('columns', w.columns, 200), count('rows', w.rows, 200), size('cellMm', w.cell), size('gapMm', w.gap, 0)];
      case 'letters':
        return [
          <label class="num" key="text">
            <span>{w.lettering}</span>
            <textarea
              class="text"
              rows={2}
              maxLength={500}
              value={made.text}
              aria-label={w.lettering}
              onChange={(e) => {
                if (e.currentTarget.value.trim() !== '') change({ text: e.currentTarget.value });
              }}
            />
          </label>,
          size('capHeightMm', w.capHeight),
          size('bridgeMm', w.bridgeWidth, 0),
          size('spaceMm', w.letterSpace, -50),
          <fieldset class="choices" key="weight">
            <legend>{w.weight}</legend>
            {(['regular', 'semibold', 'bold'] as const).map((weight) => (
              <label key={weight} class="choice-mark">
                <input type="radio" name="weight" checked={made.weight === weight} onChange={() => change({ weight })} />
                <span>{w.weights[weight]}</span>
              </label>
            ))}
          </fieldset>,
        ];
    }
  };
  return <div class="nums">{fields()}</div>;
}
