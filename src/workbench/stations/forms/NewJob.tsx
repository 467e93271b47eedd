import { useSignal } from '@preact/signals';
import { mmPerInch, type LengthUnits } from '../../ui/fields/units.ts';
import { LengthField } from '../../ui/fields/LengthField.tsx';
import { UnitChoice } from '../../ui/fields/UnitChoice.tsx';
import { words } from '../../store/words.ts';
import { newJobText, type NewJobWishes } from './new-job.ts';

/** Sizes to begin with: round in each unit. A bench that was not written on yet takes the other unit's. */
const usual = {
  mm: { imageMm: [180, 240], sheetMm: [250, 330] },
  in: { imageMm: [7 * mmPerInch, 9 * mmPerInch], sheetMm: [10 * mmPerInch, 13 * mmPerInch] },
} as const satisfies Record<LengthUnits, Pick<NewJobWishes, 'imageMm' | 'sheetMm'>>;

/** An empty bench becomes a job: how large the image is, on which sheet, in which units. */
export function NewJob({ onStart }: { readonly onStart: (jobText: string) => void }) {
  const w = words().forms;
  const wishes = useSignal<NewJobWishes>({ title: w.newTitleDefault, units: 'mm', starter: true, ...usual.mm });
  const { title, units, imageMm, sheetMm } = wishes.value;
  const set = (change: Partial<NewJobWishes>): void => {
    wishes.value = { ...wishes.value, ...change };
  };
  const untouched = imageMm === usual[units].imageMm && sheetMm === usual[units].sheetMm;
  const fits = imageMm[0] <= sheetMm[0] && imageMm[1] <= sheetMm[1];
  const field = (label: string, valueMm: number, onSet: (mm: number) => void) => (
    <label class="num">
      <span>{label}</span>
      <LengthField label={label} valueMm={valueMm} minMm={5} maxMm={5000} units={units} onSet={onSet} />
    </label>
  );
  return (
    <section class="new-job" aria-labelledby="new-job">
      <h3 id="new-job">{w.newJob}</h3>
      <div class="row">
        <label class="num">
          <span>{w.newTitle}</span>
          <input class="text" value={title} maxLength={200} onInput={(e) => set({ title: e.currentTarget.value })} />
        </label>
        <UnitChoice units={units} onChange={(u) => set({ units: u, ...(untouched ? usual[u] : {}) })} />
      </div>
      <div class="nums">
        {field(w.imageWidth, imageMm[0], (mm) => set({ imageMm: [mm, imageMm[1]] }))}
        {field(w.imageHeight, imageMm[1], (mm) => set({ imageMm: [imageMm[0], mm] }))}
        {field(w.sheetWidth, sheetMm[0], (mm) => set({ sheetMm: [mm, sheetMm[1]] }))}
        {field(w.sheetHeight, sheetMm[1], (mm) => set({ sheetMm: [sheetMm[0], mm] }))}
      </div>
      <label class="tick">
        <input type="checkbox" checked={wishes.value.starter} onChange={(e) => set({ starter: e.currentTarget.checked })} />
        <span>
          {w.withStarter} <small>{w.withStarterHint}</small>
        </span>
      </label>
      {!fits && (
        <p role="alert">
          <b>{w.notFit}</b>
        </p>
      )}
      <div class="row">
        <button
          type="button"
          class="button button-strong"
          disabled={!fits || title.trim() === ''}
          onClick={() => onStart(newJobText({ ...wishes.value, title: title.trim() }))}
        >
          {w.start}
        </button>
      </div>
    </section>
  );
}
