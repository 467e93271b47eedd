import type { Spectrum } from '../colour/index.ts';
import { settleProblems, type Job, type JobInk, type JobLayer, type JobPaper } from '../job/index.ts';
import { problem, ProblemError, type Problem } from '../problem.ts';
import { list, name as asName, say, type Saying } from '../../words/say.ts';
import { depositOfRun, findInks, type FoundInks, type Plan, planPress, type RunLayer } from '../plan/index.ts';

/** What questions about a job's colours are answered from: its inks as films, and its printing layers. */
export interface InkBench {
  readonly job: Job;
  readonly found: FoundInks;
  readonly wetMicrons: number;
  /** Layers that are not off, in laydown order, each with its film: its own mesh, and the ridge of fine shapes where the Plan is at hand. */
  readonly layers: readonly RunLayer[];
}

export function inkBench(job: Job, plan?: Pick<Plan, 'layers'>): InkBench {
  const on = job.layers.filter((l) => !l.off);
  const press = planPress(job, on);
  const { wetMicrons } = press.deposit;
  const layers = on.map((l) => ({
    ...l,
    filmTimes: plan?.layers.find((p) => p.id === l.id)?.filmTimes ?? depositOfRun(press, l.id).wetMicrons / wetMicrons,
  }));
  return { job, found: findInks(job, wetMicrons), wetMicrons, layers };
}

/** The paper named, or the first. Throws `ProblemError`. */
export function paperOf(bench: InkBench, id: string | undefined): { readonly paper: JobPaper; readonly spectrum: Spectrum } {
  const paper = id === undefined ? bench.job.papers[0] : bench.job.papers.find((p) => p.id === id);
  const spectrum = paper && bench.found.papers.get(paper.id);
  if (!paper || !spectrum) {
    refuse(
      bench.job,
      'no-such-paper',
      'papers',
      id === undefined ? say('asks.noPaperRead') : say('asks.noSuchPaper', { paper: asName(id) }),
      oneOf(bench.job.papers.filter((p) => bench.found.papers.has(p.id))) ?? say('asks.readPaper'),
    );
  }
  return { paper, spectrum };
}

/** The layer named, by id, name or run number (1 is printed first). Throws `ProblemError`. */
export function layerOf(bench: InkBench, name: string): JobLayer {
  const wanted = name.trim().toLowerCase();
  const layer =
    bench.layers.find((l) => l.id === name) ?? bench.layers.find((l) => l.name.toLowerCase() === wanted) ?? bench.layers[Number(name) - 1];
  if (!layer)
    refuse(
      bench.job,
      'no-such-layer',
      'layers',
      say('asks.noSuchLayer', { layer: asName(name) }),
      oneOf(bench.layers) ?? say('asks.addLayer'),
    );
  return layer;
}

/** Advice to use one of these; null where there are none. */
function oneOf(items: readonly { readonly id: string }[]): Saying | null {
  return items.length === 0
    ? null
    : say('asks.useOneOf', {
        all: list(
          items.map((item) => asName(item.id)),
          'comma',
        ),
      });
}

/** Where a layer's pot stands, for problems. */
export function placeOfPot(layer: JobLayer): string {
  return `layers[#${layer.id}].ink`;
}

/** Pots at hand: what was read itself and colours. Mixes are made of them. */
export function potsOf(job: Pick<Job, 'inks'>): readonly JobInk[] {
  return job.inks.filter((ink) => ink.role === 'ink' && ink.from !== 'mix');
}

/** Refuses a question: one error, with its place in the job's own names. */
export function refuse(job: Job, code: string, path: string, message: Saying, advice: Saying): never {
  throw new ProblemError(settleProblems([problem('error', code, path, message, advice)], job));
}

/** Answers from what knows nothing of the job: the problems of the answer, and those thrown, get their places in the job's own names. */
export function inJob<T>(job: Job, answer: () => T): T {
  try {
    return settled(answer(), job);
  } catch (error) {
    throw refusal(error, job);
  }
}

/** The same where the answer takes its time. */
export async function inJobLater<T>(job: Job, answer: () => Promise<T>): Promise<T> {
  try {
    return settled(await answer(), job);
  } catch (error) {
    throw refusal(error, job);
  }
}

function settled<T>(answer: T, job: Job): T {
  const problems = (answer as { readonly problems?: readonly Problem[] }).problems;
  return problems ? { ...answer, problems: settleProblems(problems, job) } : answer;
}

function refusal(error: unknown, job: Job): unknown {
  return error instanceof ProblemError ? new ProblemError(settleProblems(error.problems, job)) : error;
}
