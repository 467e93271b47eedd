import type { OpenedJob } from '../engine/protocol.ts';
import type { Bench } from './bench.ts';
import { fingerprint, stepAside, type Keeper, type Snapshot } from './keep/keep.ts';
import type { Keeping } from './keep/keeping.ts';

/**
 * What lies on the bench when the page opens: the job served with it (`?job=open`), unless the bench already holds that very
 * file with changes of the printmaker's; else what was there last; else nothing. A job that gives way is kept among the prints.
 */
export async function startBench(bench: Bench, keeping: Keeping, keeper: Keeper, search: string): Promise<void> {
  const kept = await keeper.kept().catch(() => null);
  if (new URLSearchParams(search).get('job') === 'open') {
    const response = await fetch('./open.laydown').catch(() => null);
    if (response?.ok) {
      const bytes = new Uint8Array(await response.arrayBuffer());
      const print = await fingerprint(bytes);
      if (kept?.servedPrint !== print) {
        const opened = await bench.ask('openJob', { file: bytes, name: 'open.laydown' });
        await stepAside(keeper, kept);
        return putOn(bench, keeping, opened, print, {});
      }
    }
  }
  if (kept) putOn(bench, keeping, kept, kept.servedPrint, kept);
}

export function putOn(
  bench: Bench,
  keeping: Keeping,
  opened: OpenedJob,
  servedPrint: string | null,
  as: Partial<Pick<Snapshot, 'changed' | 'print' | 'own'>>,
): void {
  keeping.opened(servedPrint, as.changed ?? false, as);
  bench.put({ job: opened.job, attachments: opened.attachments });
}
