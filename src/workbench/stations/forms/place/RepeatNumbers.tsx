import type { JobPart } from '../../../../core/job/index.ts';
import { step, words } from '../../../store/words.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { tidy, withPart } from '../edits.ts';
import type { PartInHand } from './place.ts';

type Repeat = NonNullable<JobPart['repeat']>;
type Kind = Repeat['kind'] | 'none';
const kinds: readonly Kind[] = ['none', 'rows', 'around', 'scatter'];

/** Copies of a part: in rows, around a point, or scattered with a seed. */
export function RepeatNumbers({ bench, cutId, index, part, form }: PartInHand) {
  const w = words().forms;
  const { units, image } = bench.job.value!;
  const set = (repeat: Repeat | undefined): void => bench.edit(step('repeatForm', form.name), (j) => withPart(j, cutId, index, { repeat }));
  const width = form.widthMm * part.scale,
    height = form.heightMm * part.scale;
  const begin = (kind: Kind): Repeat | undefined => {
    if (kind === 'rows') return { kind, columns: 2, rows: 1, stepXMm: tidy(width * 1.15, 10), stepYMm: tidy(height * 1.15, 10) };
    if (kind === 'around') return { kind, count: 6, centreMm: [image.widthMm / 2, image.heightMm / 2], turnForms: true };
    if (kind === 'scatter')
      return { kind, count: 12, seed: 1, leastMm: tidy(Math.min(Math.max(width, height) * 0.9, 1000), 10), turn: true };
    return undefined;
  };
  const count = (label: string, value: number, most: number, onSet: (v: number) => void) => (
    <label class="num">
      <span>{label}</span>
      <NumberField label={label} value={value} min={1} max={most} unit={w.times} onSet={(v) => onSet(Math.round(v))} />
    </label>
  );
  const length = (label: string, valueMm: number, minMm: number, onSet: (v: number) => void) => (
    <label class="num">
      <span>{label}</span>
      <LengthField label={label} valueMm={valueMm} minMm={minMm} maxMm={5000} units={units} onSet={onSet} />
    </label>
  );
  const repeat = part.repeat;
  return (
    <div class="repeat">
      <fieldset class="choices">
        <legend>{w.repeat}</legend>
        {kinds.map((kind) => (
          <label key={kind} class="choice-mark">
            <input type="radio" name="repeat" checked={(repeat?.kind ?? 'none') === kind} onChange={() => set(begin(kind))} />
            <span>{w.repeatKinds[kind]}</span>
          </label>
        ))}
      </fieldset>
      {repeat?.kind === 'rows' && (
        <div class="nums">
          {count(w.columns, repeat.columns, 500, (columns) => set({ ...repeat, columns }))}
          {count(w.rows, repeat.rows, 500, (rows) => set({ ...repeat, rows }))}
          {length(w.stepX, repeat.stepXMm, -5000, (stepXMm) => set({ ...repeat, stepXMm }))}
          {length(w.stepY, repeat.stepYMm, -5000, (stepYMm) => set({ ...repeat, stepYMm }))}
        </div>
      )}
      {repeat?.kind === 'around' && (
        <div class="nums">
          {count(w.count, repeat.count, 500, (n) => set({ ...repeat, count: n }))}
          {length(w.centreX, repeat.centreMm[0], -5000, (x) => set({ ...repeat, centreMm: [x, repeat.centreMm[1]] }))}
          {length(w.centreY, repeat.centreMm[1], -5000, (y) => set({ ...repeat, centreMm: [repeat.centreMm[0], y] }))}
          <label class="tick">
            <input type="checkbox" checked={repeat.turnForms} onChange={(e) => set({ ...repeat, turnForms: e.currentTarget.checked })} />
            <span>{w.turnForms}</span>
          </label>
        </div>
      )}
      {repeat?.kind === 'scatter' && (
        <div class="nums">
          {count(w.count, repeat.count, 2000, (n) => set({ ...repeat, count: n }))}
          {length(w.least, repeat.leastMm, 0, (leastMm) => set({ ...repeat, leastMm: Math.min(1000, leastMm) }))}
          <label class="tick">
            <input type="checkbox" checked={repeat.turn} onChange={(e) => set({ ...repeat, turn: e.currentTarget.checked })} />
            <span>{w.turnEach}</span>
          </label>
          <button type="button" class="button button-line" onClick={() => set({ ...repeat, seed: repeat.seed + 1 })}>
            {w.throwAgain}
          </button>
          <p class="num-note">{w.throwNote(repeat.seed)}</p>
        </div>
      )}
    </div>
  );
}
