import type { Job, JobPaper, JobScreen } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { step } from '../../../store/words.ts';
import type { PressField } from '../../../../words/en/bench/press.ts';

/** Edits of the press, each under its name. */
export function setScreen(bench: Bench, field: PressField, change: Partial<JobScreen>): void {
  bench.edit(step('press', field), (job) => (job.screen ? { ...job, screen: clean({ ...job.screen, ...change }) } : job));
}

export function takeScreen(bench: Bench, screen: JobScreen): void {
  bench.edit(step('press', 'screen'), (job) => ({ ...job, screen }));
}

export function setRegister(bench: Bench, field: PressField, change: Partial<Job['register']>): void {
  bench.edit(step('press', field), (job) => ({ ...job, register: clean({ ...job.register, ...change }) }));
}

/** How films lie on one another: dried between coats, wet on wet, or not known. */
export function setFilms(bench: Bench, films: Job['press']['films']): void {
  bench.edit(step('press', 'films'), (job) => ({ ...job, press: { ...job.press, films } }));
}

export function setDay(bench: Bench, change: Partial<Job['day']>): void {
  bench.edit(step('press', 'day'), (job) => ({ ...job, day: { ...job.day, ...change } }));
}

export function setPaper(bench: Bench, id: string, change: Partial<JobPaper>): void {
  bench.edit(step('press', 'paper'), (job) => ({
    ...job,
    papers: job.papers.map((paper) => (paper.id === id ? { ...paper, ...change } : paper)),
  }));
}

export function addPaperLike(bench: Bench, id: string, name: string): void {
  bench.edit(step('press', 'paper-added'), (job) => {
    const like = job.papers.find((paper) => paper.id === id);
    if (!like) return job;
    const taken = new Set(job.papers.map((paper) => paper.id));
    let n = 2;
    while (taken.has(`${id}-${n}`)) n++;
    return { ...job, papers: [...job.papers, { ...like, id: `${id.slice(0, 58)}-${n}`, name }] };
  });
}

export function takePaperAway(bench: Bench, id: string): void {
  bench.edit(step('press', 'paper-away'), (job) => ({
    ...job,
    papers: job.papers.filter((paper) => paper.id !== id),
    proofReadings: job.proofReadings.filter((r) => r.paper !== id),
  }));
}

/** A run's own gap; undefined: the screen's. */
export function setLayerGap(bench: Bench, id: string, offContactMm: number | undefined): void {
  bench.edit(step('press', 'run-gap'), (job) => ({
    ...job,
    layers: job.layers.map((layer) => (layer.id === id ? clean({ ...layer, offContactMm }) : layer)),
  }));
}

/** A run's own mesh, of a screen of its own; undefined: the job's screen. */
export function setLayerMesh(bench: Bench, id: string, mesh: { readonly perCm: number; readonly threadMicrons: number } | undefined): void {
  const own = mesh && { perCm: mesh.perCm, threadMicrons: mesh.threadMicrons };
  bench.edit(step('press', 'run-mesh'), (job) => ({
    ...job,
    layers: job.layers.map((layer) => (layer.id === id ? clean({ ...layer, mesh: own }) : layer)),
  }));
}

export function spreadLayer(bench: Bench, id: string, spreadMm: number): void {
  bench.edit(step('spread', bench.job.peek()?.layers.find((l) => l.id === id)?.name ?? id), (job) => ({
    ...job,
    layers: job.layers.map((l) => (l.id === id ? { ...l, spreadMm: Math.max(-10, Math.min(10, Math.round(spreadMm * 10) / 10)) } : l)),
  }));
}

/** Fields set to undefined are left out, as a job that never had them. */
export function clean<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}
