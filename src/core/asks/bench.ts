import type { Spectrum } from '../colour/index.ts';
import type { Job, JobInk, JobLayer, JobPaper } from '../job/index.ts';
import { fail } from '../problem.ts';
import { findInks, type FoundInks } from '../plan/parts/inks.ts';
import { planPress } from '../plan/parts/press.ts';

/** What questions about a job's colours are answered from: its inks as films, and its printing layers. */
export interface InkBench {
  readonly job: Job;
  readonly found: FoundInks;
  readonly wetMicrons: number;
  /** Layers that are not off, in laydown order. */
  readonly layers: readonly JobLayer[];
}

export function inkBench(job: Job): InkBench {
  const wetMicrons = planPress(job).deposit.wetMicrons;
  return { job, found: findInks(job, wetMicrons), wetMicrons, layers: job.layers.filter((l) => !l.off) };
}

/** The paper named, or the first. Throws `ProblemError`. */
export function paperOf(bench: InkBench, id: string | undefined): { readonly paper: JobPaper; readonly spectrum: Spectrum } {
  const paper = id === undefined ? bench.job.papers[0] : bench.job.papers.find((p) => p.id === id);
  const spectrum = paper && bench.found.papers.get(paper.id);
  if (!paper || !spectrum) {
    fail(
      'no-such-paper',
      'papers',
      id === undefined ? 'The job has no paper that was read.' : `The job has no paper “${id}” that was read.`,
      `Use one of: ${bench.job.papers.map((p) => p.id).join(', ') || 'none yet'}.`,
    );
  }
  return { paper, spectrum };
}

/** The layer named, by id, name or run number (1 is printed first). Throws `ProblemError`. */
export function layerOf(bench: InkBench, name: string): JobLayer {
  const wanted = name.trim().toLowerCase();
  const layer =
    bench.layers.find((l) => l.id === name) ?? bench.layers.find((l) => l.name.toLowerCase() === wanted) ?? bench.layers[Number(name) - 1];
  if (!layer) fail('no-such-layer', name, `The job has no layer “${name}”.`, `Use one of: ${bench.layers.map((l) => l.id).join(', ')}.`);
  return layer;
}

/** Pots at hand: what was read itself and colours. Mixes are made of them. */
export function potsOf(job: Pick<Job, 'inks'>): readonly JobInk[] {
  return job.inks.filter((ink) => ink.role === 'ink' && ink.from !== 'mix');
}
