import type { Job } from '../../../core/job/index.ts';
import { sheetsOf } from '../../../core/plan/index.ts';
import { ProblemError } from '../../../core/problem.ts';
import type { Bench } from '../../store/bench.ts';
import { step } from '../../store/words.ts';
import type { EditionField } from '../../../words/en/bench/edition.ts';

type Edition = Job['edition'];
export type Apart = Edition['setApart'][string];

export function setEdition(bench: Bench, field: EditionField, change: Partial<Edition>): void {
  bench.edit(step('edition', field), (job) => ({ ...job, edition: clean({ ...job.edition, ...change }) }));
}

/** Prints of the edition wanted on one paper; null: shared out by the sheets at hand. */
export function setWantedOn(bench: Bench, paper: string, wanted: number | null): void {
  bench.edit(step('edition', 'wanted-on'), (job) => ({
    ...job,
    papers: job.papers.map((p) => (p.id === paper ? clean({ ...p, wantedPrints: wanted ?? undefined }) : p)),
  }));
}

export function setRecord(bench: Bench, change: Partial<Edition['record']>): void {
  bench.edit(step('edition', 'record'), (job) => ({
    ...job,
    edition: { ...job.edition, record: clean({ ...job.edition.record, ...change }) },
  }));
}

export function setMaker(bench: Bench, maker: string): void {
  bench.edit(step('edition', 'record'), (job) => (job.maker === maker ? job : { ...job, maker }));
}

export function setApart(bench: Bench, sheet: string, as: Apart | null): void {
  bench.edit(step('edition', 'set-apart'), (job) => {
    const others = Object.fromEntries(Object.entries(job.edition.setApart).filter(([id]) => id !== sheet));
    return { ...job, edition: { ...job.edition, setApart: as === null ? others : { ...others, [sheet]: as } } };
  });
}

/** As many sheets of every paper as the wishes ask for; never fewer than there are. The edition is shared out by the sheets at hand, so more of one paper asks for more of it: a few rounds settle that. */
export function takeEnough(bench: Bench): void {
  bench.edit(step('edition', 'count'), (job) => {
    let papers = job.papers;
    for (let round = 0; round < 12; round++) {
      const needed = sheetsNeeded({ ...job, papers });
      if (!needed || papers.every((p) => p.count === 0 || p.count >= (needed.get(p.id) ?? 0))) break;
      papers = papers.map((p) => (p.count === 0 ? p : { ...p, count: Math.max(p.count, needed.get(p.id) ?? 0) }));
    }
    return papers === job.papers ? job : { ...job, papers };
  });
}

function sheetsNeeded(job: Job): ReadonlyMap<string, number> | null {
  try {
    const plan = sheetsOf(job, job.layers.filter((l) => !l.off).length);
    return new Map(plan.papers.map((p) => [p.paperId, p.toStart]));
  } catch (error) {
    if (error instanceof ProblemError) return null;
    throw error;
  }
}

/** Fields that were emptied are left out, as a job that never had them. */
function clean<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined && v !== '')) as T;
}
