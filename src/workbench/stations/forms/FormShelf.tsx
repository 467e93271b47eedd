import { useRef } from 'preact/hooks';
import type { JobForm } from '../../../core/job/index.ts';
import { saySize } from '../../ui/fields/units.ts';
import type { Bench } from '../../store/bench.ts';
import { LengthField } from '../../ui/fields/LengthField.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { regionPath } from '../../ui/region-path.ts';
import { step, words } from '../../store/words.ts';
import { bringDrawings, broughtProblems } from './found/bring.ts';
import { newCut, newPart, withParts } from './edits.ts';
import { MadeNumbers, MakeShape } from './found/MakeShape.tsx';
import { Pencil } from './found/Pencil.tsx';
import { takePhotograph } from './found/photograph.ts';
import { ReadAs } from './found/ReadAs.tsx';
import { inHand, takeForm } from './state.ts';

/** What is wrong with a drawing, or to be done with a form just taken, is brought into sight: the shelf may be long, or far from where the drawing was dropped. */
const showIt = (at: HTMLElement | null): void => {
  at?.scrollIntoView({ block: 'nearest' });
};

/** All forms of the job as little cut-outs, to put on cuts; and the ways to bring more. */
export function FormShelf({ bench, cutId }: { readonly bench: Bench; readonly cutId: string | null }) {
  const w = words().forms;
  const chooser = useRef<HTMLInputElement>(null);
  const photos = useRef<HTMLInputElement>(null);
  const job = bench.job.value!;
  const plan = bench.plan.value;
  const chosen = job.forms.find((f) => f.id === inHand.value.formId);
  const uses = (id: string): number => job.cuts.reduce((n, c) => n + c.parts.filter((p) => p.form === id).length, 0);
  return (
    <section class="forms-part" aria-labelledby="form-shelf">
      <h2 id="form-shelf">{w.formsTitle}</h2>
      <ul class="tiles">
        {job.forms.map((form) => {
          const planned = plan?.forms.find((f) => f.id === form.id);
          const size = planned ? saySize(planned.widthMm, planned.heightMm, job.units) : '–';
          const box = planned ? Math.max(planned.widthMm, planned.heightMm) : 1;
          return (
            <li key={form.id}>
              <button
                type="button"
                class="tile"
                aria-pressed={chosen?.id === form.id}
                aria-label={w.formTile(form.name, size, w.formUsed(uses(form.id)))}
                onClick={() => takeForm(chosen?.id === form.id ? null : form.id)}
              >
                <svg
                  class="tile-picture"
                  viewBox={planned ? `${(planned.widthMm - box) / 2} ${(planned.heightMm - box) / 2} ${box} ${box}` : '0 0 1 1'}
                  aria-hidden="true"
                >
                  {planned && <path fill-rule="evenodd" d={regionPath(planned.region)} />}
                </svg>
                <b>{form.name}</b> <small>{size}</small>
              </button>
            </li>
          );
        })}
        <li>
          <input
            ref={chooser}
            type="file"
            accept=".svg,.svgz,.dxf,image/svg+xml"
            multiple
            class="unseen"
            tabindex={-1}
            aria-label={w.bring}
            data-bring="drawing"
            onChange={(e) => {
              const files = [...(e.currentTarget.files ?? [])];
              e.currentTarget.value = '';
              void bringDrawings(bench, files, cutId, null);
            }}
          />
          <button type="button" class="tile tile-new" onClick={() => chooser.current?.click()}>
            <svg class="tile-picture" viewBox="0 0 24 24" aria-hidden="true">
              <path class="plus" d="M12 6v12M6 12h12" />
            </svg>
            <b>{w.bring}</b>
            <small>SVG · DXF</small>
          </button>
        </li>
        <li>
          <input
            ref={photos}
            type="file"
            accept="image/jpeg,image/png,image/webp,image/tiff"
            class="unseen"
            tabindex={-1}
            aria-label={w.bringPhoto}
            data-bring="photo"
            onChange={(e) => {
              const file = e.currentTarget.files?.[0];
              e.currentTarget.value = '';
              if (file) void takePhotograph(bench, file);
            }}
          />
          <button type="button" class="tile tile-new" onClick={() => photos.current?.click()}>
            <svg class="tile-picture" viewBox="0 0 24 24" aria-hidden="true">
              <path class="plus" d="M6 7l12 1 1 10-14-1zM9 12a3 2.4 0 1 0 6 0a3 2.4 0 1 0-6 0" />
            </svg>
            <b>{w.bringPhoto}</b>
          </button>
        </li>
      </ul>
      {broughtProblems.value.length > 0 && (
        <div class="brought" role="alert" ref={showIt}>
          <ProblemList problems={broughtProblems.value} />
          <button
            type="button"
            class="button button-line"
            onClick={() => {
              broughtProblems.value = [];
            }}
          >
            {words().shell.close}
          </button>
        </div>
      )}
      <MakeShape bench={bench} />
      <Pencil bench={bench} />
      {chosen && <FormInHand bench={bench} form={chosen} cutId={cutId} uses={uses(chosen.id)} />}
    </section>
  );
}

function FormInHand({
  bench,
  form,
  cutId,
  uses,
}: {
  readonly bench: Bench;
  readonly form: JobForm;
  readonly cutId: string | null;
  readonly uses: number;
}) {
  const w = words().forms;
  const job = bench.job.value!;
  const planned = bench.plan.value?.forms.find((f) => f.id === form.id);
  const cut = job.cuts.find((c) => c.id === cutId);
  const part = newPart(form.id, job.image.widthMm / 2, job.image.heightMm / 2);
  const onto = (): void => {
    if (!cut) return;
    bench.edit(step('putForm', form.name, cut.name), (j) => withParts(j, cut.id, (parts) => [...parts, part]));
    inHand.value = { cutId: cut.id, part: cut.parts.length, formId: null };
    bench.announce(w.placed(form.name, cut.name));
  };
  const anew = (): void => {
    const made = newCut(job, form.name, part);
    bench.edit(step('newCut', form.name), () => made.job);
    inHand.value = { cutId: made.id, part: 0, formId: null };
    bench.announce(w.placed(form.name, form.name));
  };
  const setWidth = (widthMm: number): void =>
    bench.edit(step('sizeForm', form.name), (j) => ({
      ...j,
      forms: j.forms.map((f) => (f.id === form.id ? { ...f, widthMm, heightMm: undefined } : f)),
    }));
  const remove = (): void => {
    const attachments = new Map(bench.attachments.value);
    const shared = job.forms.some((f) => f.id !== form.id && f.drawing === form.drawing);
    if (form.drawing && !shared) attachments.delete(form.drawing);
    bench.edit(step('removeForm', form.name), (j) => ({ ...j, forms: j.forms.filter((f) => f.id !== form.id) }), { attachments });
    takeForm(null);
  };
  return (
    <>
      <div class="row form-in-hand" key={form.id} ref={showIt}>
        {cut && (
          <button type="button" class="button button-strong" onClick={onto}>
            {w.ontoCut(cut.name)}
          </button>
        )}
        <button type="button" class={`button ${cut ? 'button-line' : 'button-strong'}`} onClick={anew}>
          {w.asNewCut}
        </button>
        {planned && !form.made && (
          <label class="num">
            <span>{w.formWidth}</span>
            <LengthField label={w.formWidth} valueMm={planned.widthMm} minMm={1} maxMm={5000} units={job.units} onSet={setWidth} />
          </label>
        )}
        {uses === 0 && (
          <button type="button" class="button button-line" onClick={remove}>
            {w.removeForm}
          </button>
        )}
      </div>
      {form.made && <MadeNumbers bench={bench} form={form} made={form.made} />}
      {form.drawing !== undefined && <ReadAs key={form.id} bench={bench} form={form} />}
    </>
  );
}
