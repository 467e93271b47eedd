import { unzipSync, zipSync } from 'fflate';
import { copyOfPrint, nextPrint } from '../../../core/asks/index.ts';
import { freshId, type JobBundle } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { download } from '../../store/keep/files.ts';
import type { Keeper, Snapshot } from '../../store/keep/keep.ts';
import type { Keeping } from '../../store/keep/keeping.ts';
import { words } from '../../store/words.ts';

const fileName = 'laydown-prints.zip';
const mostBytes = 1_000_000_000;
const mostPrints = 2000;

/** Every print as a .laydown file, all of them in one. */
export async function exportPrints(bench: Bench, keeping: Keeping, keeper: Keeper): Promise<void> {
  await keeping.flush();
  const files: { id: string; bytes: Uint8Array }[] = [];
  for (const { print } of await keeper.prints()) {
    const whole = await keeper.print(print);
    if (whole) files.push({ id: freshId(files, whole.job.title), bytes: await bench.ask('saveJob', whole) });
  }
  // They are packed already; a fixed date, so that the same prints are the same bytes.
  const entries = files.map(({ id, bytes }) => [`${id}.laydown`, [bytes, { level: 0, mtime: '1980-01-01T00:00:00' }]] as const);
  download(zipSync(Object.fromEntries(entries) as Parameters<typeof zipSync>[0]), fileName, 'application/zip');
  bench.announce(words().prints.exported(files.length, fileName));
}

/** A file with many prints: those that do not hang on the wall yet are hung there. False for any other file. */
export async function takeInPrints(bench: Bench, keeping: Keeping, file: File): Promise<boolean> {
  if (file.size > mostBytes || !/\.zip$/i.test(file.name)) return false;
  const files = printsIn(new Uint8Array(await file.arrayBuffer()));
  if (files.length === 0) return false;
  // All are read before the first is hung: a damaged file changes nothing.
  const opened: JobBundle[] = [];
  for (const [name, bytes] of files) opened.push(await bench.ask('openJob', { file: bytes, name }));
  const added = await keeping.hang(opened);
  bench.announce(words().prints.imported(added, opened.length - added));
  location.hash = 'prints';
  return true;
}

function printsIn(zip: Uint8Array): [string, Uint8Array][] {
  let room = mostBytes,
    left = mostPrints;
  try {
    return Object.entries(
      unzipSync(zip, {
        filter: ({ name, originalSize }) => /\.laydown$/i.test(name) && --left >= 0 && (room -= originalSize) >= 0,
      }),
    );
  } catch {
    return [];
  }
}

/** What a new print takes from another: all that is planned, or the studio alone. */
export function printFrom(kept: Snapshot, what: 'copy' | 'next', titles: readonly string[]): JobBundle {
  const w = words().prints;
  const wish = what === 'copy' ? w.copyTitle(kept.job.title) : w.nextTitle(kept.job.title);
  const make = what === 'copy' ? copyOfPrint : nextPrint;
  const made = make(kept, freshTitle(wish, titles));
  return { ...made, job: { ...made.job, print: crypto.randomUUID() } };
}

/** No two prints on the wall are called the same. */
function freshTitle(wish: string, taken: readonly string[]): string {
  const short = wish.slice(0, 190);
  for (let n = 1; ; n++) {
    const title = n === 1 ? short : `${short} ${n}`;
    if (!taken.includes(title)) return title;
  }
}
