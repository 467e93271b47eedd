import { type Job, type JobForm, type JobLayer, type JobPart, freshId, mostLayers } from '../../../core/job/index.ts';

export { freshId, freshName } from '../../../core/job/index.ts';

/** Pure edits of forms, cuts and their parts. Each gives a new Job sharing every part it did not touch. */

export function newPart(form: string, xMm: number, yMm: number): JobPart {
  return { form, how: 'add', xMm: tidy(xMm), yMm: tidy(yMm), angleDeg: 0, scale: 1, mirror: false };
}

/** Hundredths of a millimetre: finer than any hand, and no long tails in the file. */
export function tidy(value: number, per = 100): number {
  return Math.round(value * per) / per;
}

export function withParts(job: Job, cutId: string, change: (parts: readonly JobPart[]) => readonly JobPart[]): Job {
  return { ...job, cuts: job.cuts.map((cut) => (cut.id === cutId ? { ...cut, parts: [...change(cut.parts)] } : cut)) };
}

export function withPart(job: Job, cutId: string, index: number, change: Partial<JobPart>): Job {
  return withParts(job, cutId, (parts) => parts.map((part, i) => (i === index ? { ...part, ...change } : part)));
}

export function withForm(job: Job, form: JobForm): Job {
  return { ...job, forms: [...job.forms, form] };
}

export function newCut(job: Job, name: string, part: JobPart): { readonly job: Job; readonly id: string } {
  const id = freshId(job.cuts, name);
  return { job: { ...job, cuts: [...job.cuts, { id, name, parts: [part] }] }, id };
}

/** Takes a cut away with the layers it served, and what was wanted or read of those. */
export function withoutCut(job: Job, cutId: string): Job {
  const gone = new Set(job.layers.filter((l) => l.cut === cutId).map((l) => l.id));
  const stays = (item: { readonly layers: readonly string[] }): boolean => !item.layers.some((id) => gone.has(id));
  return {
    ...job,
    cuts: job.cuts.filter((c) => c.id !== cutId),
    layers: job.layers.filter((l) => !gone.has(l.id)),
    wanted: job.wanted.filter(stays),
    proofReadings: job.proofReadings.filter(stays),
  };
}

/** Without cuts that hold this form alone and print nothing. */
export function withoutIdleCuts(job: Job, form: string): Job {
  const idle = job.cuts.filter((cut) => cut.parts.every((p) => p.form === form) && !job.layers.some((l) => l.cut === cut.id));
  return idle.reduce((left, cut) => withoutCut(left, cut.id), job);
}

/** A part taken off its cut; with its last part a cut goes too. */
export function withoutPart(job: Job, cutId: string, index: number): Job {
  const cut = job.cuts.find((c) => c.id === cutId);
  if (!cut) return job;
  return cut.parts.length === 1 ? withoutCut(job, cutId) : withParts(job, cutId, (parts) => parts.filter((_, i) => i !== index));
}

/** One more layer, printed last, of this side of a cut; null when the sheet takes no more. */
export function withNewLayer(
  job: Job,
  cutId: string,
  side: JobLayer['side'],
  name: string,
): { readonly job: Job; readonly layer: JobLayer } | null {
  if (job.layers.filter((l) => !l.off).length >= mostLayers) return null;
  const layer: JobLayer = {
    id: freshId(job.layers, name),
    name,
    cut: cutId,
    side,
    ink: null,
    strength: 1,
    spreadMm: 0,
    bridgesBy: 'least-seen',
    off: false,
  };
  return { job: { ...job, layers: [...job.layers, layer] }, layer };
}
