import { planSheets, type SheetPlan } from '../edition/index.ts';
import type { Job, JobLayer } from '../job/index.ts';
import { ProblemError, type Problem } from '../problem.ts';

/** How many sheets, through which runs. */
export interface PlannedEdition {
  /** null where the wishes can't be planned; `problems` says why. */
  readonly sheets: SheetPlan | null;
  /** Pulls of each run in laydown order, set-up sheets counted; open layers are planned like the others. */
  readonly pullsOfRun: readonly number[];
  readonly problems: readonly Problem[];
}

export function planEdition(job: Pick<Job, 'edition' | 'papers'>, layers: readonly JobLayer[]): PlannedEdition {
  const { edition } = job;
  const runs = layers.length;
  if (job.papers.length === 0 || runs === 0) return { sheets: null, pullsOfRun: layers.map(() => 0), problems: [] };
  try {
    const sheets = planSheets({
      papers: job.papers.map((p) => ({ id: p.id, name: p.name, count: p.count, printed: p.printed !== undefined })),
      target: edition.target, certainty: edition.certainty, spoilagePerRun: layers.map(() => edition.spoilagePerRun), setUpSheets: edition.setUpSheets,
      proofs: { artistsProofShare: edition.artistsProofShare, batProofs: edition.batProofs, printersProofs: edition.printersProofs, horsCommerce: edition.horsCommerce },
    });
    return { sheets, pullsOfRun: sheets.runs.map((run) => run.prepare + sheets.setUp.perRun), problems: sheets.problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { sheets: null, pullsOfRun: layers.map(() => 0), problems: error.problems };
  }
}
