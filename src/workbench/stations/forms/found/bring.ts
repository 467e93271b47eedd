import { signal } from '@preact/signals';
import { type JobForm, fileStem } from '../../../../core/job/index.ts';
import { fail, type Problem } from '../../../../core/problem.ts';
import { name as asName, say, type Saying } from '../../../../words/one-language.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { faultsOf } from '../../../engine/faults.ts';
import { step, words } from '../../../store/words.ts';
import { freshId, freshName, newCut, newPart, tidy, withForm, withParts } from '../edits.ts';
import { inHand, takeForm } from '../state.ts';

/** What is doubtful or wrong about what was brought last. */
export const broughtProblems = signal<readonly Problem[]>([]);

const mostBytes = 50_000_000;
/** A drawing without a true size comes in at this share of the image. */
const shareOfImage = 0.5;

export const isPicture = (file: File): boolean => /^image\/(?!svg)/.test(file.type) || /\.(jpe?g|png|webp|tiff?)$/i.test(file.name);

/**
 * Drawings become forms. The first makes a cut of its own; others go onto the cut in hand when dropped on the sheet
 * (`at`, mm on the image), else onto the shelf. What can't be read is told and leaves the bench as it was.
 */
export async function bringDrawings(
  bench: Bench,
  files: readonly File[],
  cutId: string | null,
  at: readonly [number, number] | null,
): Promise<void> {
  const problems: Problem[] = [];
  let into = cutId;
  for (const file of files) {
    try {
      into = (await bringOne(bench, file, into, at, problems)) ?? into;
    } catch (error) {
      problems.push(...faultsOf(error, say('where.file', { file: asName(file.name) })));
    }
  }
  broughtProblems.value = problems;
}

async function bringOne(
  bench: Bench,
  file: File,
  cutId: string | null,
  at: readonly [number, number] | null,
  problems: Problem[],
): Promise<string | null> {
  const w = words().forms;
  const refuse = (code: string, message: Saying, advice: Saying): never =>
    fail(code, say('where.file', { file: asName(file.name) }), message, advice);
  if (!/\.(svgz?|dxf)$/i.test(file.name) && file.type !== 'image/svg+xml')
    refuse('not-a-drawing', say('page.notADrawing'), say('page.saveAsDrawing'));
  if (file.size > mostBytes) refuse('drawing-too-large', say('page.largerThan', { megabytes: mostBytes / 1e6 }), say('page.cutLess'));
  const bytes = new Uint8Array(await file.arrayBuffer());
  const ending = /\.(dxf|svgz)$/i.exec(file.name)?.[1].toLowerCase() ?? 'svg';
  const read = await bench.ask('drawing', { bytes, name: file.name });
  problems.push(...read.problems);
  const job = bench.job.peek();
  if (!job) return null;

  const name = freshName(job.forms, nameOf(file.name));
  const { widthMm, heightMm } = job.image;
  const k = Math.min((widthMm * shareOfImage) / read.widthMm, (heightMm * shareOfImage) / read.heightMm);
  const form: JobForm = {
    id: freshId(job.forms, name),
    name,
    drawing: freshPath(bench.attachments.peek(), name, ending),
    ...(read.hasPhysicalUnits ? {} : { widthMm: tidy(read.widthMm * k) }),
  };
  const attachments = new Map([...bench.attachments.peek(), [form.drawing!, bytes]]);
  const middle = at ?? [widthMm / 2, heightMm / 2];
  const part = newPart(form.id, middle[0], middle[1]);
  let into: string | null = null;
  if (job.cuts.length === 0) {
    bench.edit(
      step('bringForm', name),
      (j) => {
        const made = newCut(withForm(j, form), name, part);
        into = made.id;
        return made.job;
      },
      { attachments },
    );
    // In hand as a form too: what of the drawing is cut is chosen at once.
    inHand.value = { cutId: into, part: 0, formId: form.id };
  } else if (at && cutId) {
    const index = job.cuts.find((c) => c.id === cutId)?.parts.length ?? 0;
    bench.edit(step('bringForm', name), (j) => withParts(withForm(j, form), cutId, (parts) => [...parts, part]), { attachments });
    inHand.value = { cutId, part: index, formId: null };
  } else {
    bench.edit(step('bringForm', name), (j) => withForm(j, form), { attachments });
    takeForm(form.id);
  }
  bench.announce(read.hasPhysicalUnits ? w.brought(name) : w.noTrueSize(name, sayLength(form.widthMm!, job.units)));
  return into;
}

/** `sea-star_2.svg` → “Sea star 2”. */
export function nameOf(file: string): string {
  const plain =
    file
      .replace(/\.[^.]*$/, '')
      .replace(/[-_\s]+/g, ' ')
      .trim()
      .slice(0, 200) || file;
  return plain[0].toUpperCase() + plain.slice(1);
}

function freshPath(taken: ReadonlyMap<string, unknown>, name: string, ending: string): string {
  const stem = fileStem(name);
  for (let n = 1; ; n++) {
    const path = `${stem}${n === 1 ? '' : `-${n}`}.${ending}`;
    if (!taken.has(path)) return path;
  }
}
