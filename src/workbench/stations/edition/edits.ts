import type { Job } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { step } from '../../words/index.ts';
import type { EditionField } from '../../words/en/edition.ts';

type Edition = Job['edition'];
export type Apart = Edition['setApart'][string];

export function setEdition(bench: Bench, field: EditionField, change: Partial<Edition>): void {
  bench.edit(step('edition', field), (job) => ({ ...job, edition: clean({ ...job.edition, ...change }) }));
}

export function setRecord(bench: Bench, change: Partial<Edition['record']>): void {
  bench.edit(step('edition', 'record'), (job) => ({ ...job, edition: { ...job.edition, record: clean({ ...job.edition.record, ...change }) } }));
}

export function setMaker(bench: Bench, maker: string): void {
  bench.edit(step('edition', 'record'), (job) => (job.maker === maker ? job : { ...job, maker }));
}

export function setApart(bench: Bench, sheet: string, as: Apart | null): void {
  bench.edit(step('edition', 'set-apart'), (job) => {
    const { [sheet]: _, ...others } = job.edition.setApart;
    return { ...job, edition: { ...job.edition, setApart: as === null ? others : { ...others, [sheet]: as } } };
  });
}

export function setCount(bench: Bench, paperId: string, count: number): void {
  bench.edit(step('edition', 'count'), (job) => ({ ...job, papers: job.papers.map((p) => (p.id === paperId ? { ...p, count } : p)) }));
}

/** Fields that were emptied are left out, as a job that never had them. */
function clean<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined && v !== '')) as T;
}
