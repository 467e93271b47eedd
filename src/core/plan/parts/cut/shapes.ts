import {
  common,
  emptyRegion,
  makeShape,
  openDrawing,
  place,
  rectangle,
  regionBox,
  repeatPlacements,
  takeAway,
  tidy,
  toTrueSize,
  unite,
  type Region,
} from '../../../form/index.ts';
import { copiesOf, mostCopies, type Job, type JobBundle, type JobCut, type JobForm } from '../../../job/index.ts';
import { problem, ProblemError, type Problem } from '../../../problem.ts';
import type { Memory } from '../../memory.ts';
import type { PlannedForm } from '../../planned.ts';
import { list, name as asName, say } from '../../../../words/say.ts';

export interface MadeForm {
  readonly form: PlannedForm | null;
  readonly problems: readonly Problem[];
}

/** A form's drawing or outline → its region at true size. What can't be read is told, not thrown. */
export function makeForm(form: JobForm, drawing: Uint8Array | undefined): MadeForm {
  const problems: Problem[] = [];
  try {
    let region: Region;
    if (form.outline) {
      region = tidy(
        form.outline.map((ring) => Float64Array.from(ring.flat())),
        'even-odd',
      );
    } else if (form.drawing !== undefined && drawing) {
      const read = openDrawing(drawing, form.drawing).read(form.read);
      problems.push(...read.problems);
      region = read.region;
    } else if (form.made) {
      const made = makeShape(form.made);
      region = made.region;
      if (made.missing.length > 0) {
        const letters = list(
          made.missing.map((letter) => asName(letter)),
          'comma',
        );
        problems.push(
          problem(
            'warning',
            'letters-missing',
            `forms[#${form.id}].made`,
            say('plan.lettersMissing', { letters }),
            say('plan.otherLetters'),
          ),
        );
      }
    } else {
      return { form: null, problems };
    }
    region = toTrueSize(region, { widthMm: form.widthMm, heightMm: form.heightMm });
    if (region.rings.length === 0) {
      const place = `forms[#${form.id}].${form.outline ? 'outline' : form.made ? 'made' : 'drawing'}`;
      problems.push(problem('error', 'form-empty', place, say('plan.formEmpty'), say('plan.chooseShape')));
      return { form: null, problems };
    }
    const box = regionBox(region);
    return { form: { id: form.id, name: form.name, region, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY }, problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { form: null, problems: [...problems, ...error.problems] };
  }
}

/** Corners of all copies of a cut's forms: uniting more takes longer than anyone waits. */
const mostPoints = 2_000_000;
const pointsOf = (region: Region): number => region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);

export interface MadeCut {
  readonly region: Region;
  readonly problems: readonly Problem[];
}

/** Forms placed, repeated, united and taken away, in the order of the parts: one knife path. */
function makeCut(cut: JobCut, image: Job['image'], forms: ReadonlyMap<string, PlannedForm>): MadeCut {
  const area = { minX: 0, minY: 0, maxX: image.widthMm, maxY: image.heightMm };
  const problems: Problem[] = [];
  let region = emptyRegion;
  // Too many copies are told where the job is checked; nobody waits for them here.
  if (copiesOf(cut) > mostCopies) return { region, problems };
  let points = 0;
  cut.parts.forEach((part, i) => {
    const form = forms.get(part.form);
    if (!form) return;
    const repeated = repeatPlacements(part, part.repeat, area, `cuts[#${cut.id}].parts[${i}].repeat`);
    problems.push(...repeated.problems);
    points += repeated.placements.length * pointsOf(form.region);
    if (points > mostPoints) {
      if (!problems.some((p) => p.code === 'too-many-points'))
        problems.push(
          problem(
            'error',
            'too-many-points',
            `cuts[#${cut.id}]`,
            say('plan.tooManyPoints', { most: mostPoints / 1e6 }),
            say('plan.simplerForms'),
          ),
        );
      return;
    }
    const placed = place(form.region, repeated.placements);
    if (part.how === 'takeAway') region = takeAway(region, placed);
    else if (part.how === 'common') region = common(region, placed);
    else region = region.rings.length > 0 ? unite([region, placed]) : placed;
  });
  const inside = common(region, rectangle(0, 0, image.widthMm, image.heightMm));
  if (inside.rings.length === 0) {
    problems.push(
      problem(
        'error',
        'nothing-to-cut',
        `cuts[#${cut.id}]`,
        say(region.rings.length === 0 ? 'plan.nothingToCut' : 'plan.cutOutsideImage'),
        say('plan.putFormInside'),
      ),
    );
  }
  return { region, problems };
}

/** All forms and cuts of a job. A cut of which nothing is left is not among them. */
export function planShapes(
  { job, attachments }: JobBundle,
  memory: Memory,
  found: (problems: readonly Problem[]) => void,
): { readonly forms: readonly PlannedForm[]; readonly cuts: ReadonlyMap<string, Region> } {
  const forms = new Map<string, PlannedForm>();
  for (const form of job.forms) {
    const drawing = form.drawing === undefined ? undefined : attachments.get(form.drawing);
    const made = memory.part(`form ${form.id}`, { form, drawing }, formFrom);
    found(made.problems);
    if (made.form) forms.set(form.id, made.form);
  }
  const cuts = new Map<string, Region>();
  for (const cut of job.cuts) {
    const used = [...new Set(cut.parts.map((p) => p.form))].flatMap((id) => forms.get(id) ?? []);
    const made = memory.part(`cut ${cut.id}`, { cut, image: job.image, forms: used }, cutFrom);
    found(made.problems);
    if (made.region.rings.length > 0) cuts.set(cut.id, made.region);
  }
  return { forms: [...forms.values()], cuts };
}

const formFrom = ({ form, drawing }: { readonly form: JobForm; readonly drawing: Uint8Array | undefined }): MadeForm =>
  makeForm(form, drawing);

interface CutReads {
  readonly cut: JobCut;
  readonly image: Job['image'];
  readonly forms: readonly PlannedForm[];
}

const cutFrom = ({ cut, image, forms }: CutReads): MadeCut => makeCut(cut, image, new Map(forms.map((f) => [f.id, f])));
