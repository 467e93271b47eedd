import { existsSync, mkdirSync, readdirSync, renameSync, rmdirSync, rmSync } from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { jobFileName } from '../../core/job/index.ts';
import { fail } from '../../core/problem.ts';
import { list as listOf, name as asName, say } from '../../words/index.ts';
import { diskError, folderAt } from './disk.ts';
import { sayHere } from '../reader.ts';
import { flushFolder, isRunning, standsAt, writeFlushed } from './write-file.ts';
import { listOfWritten, notAsWritten, type FolderKind } from './written-list.ts';

/** What `writeWhole` asks of a disk; handed in by tests that need a full one. */
export interface Disk {
  writeFileSync(path: string, bytes: Uint8Array | string): void;
  renameSync(from: string, to: string): void;
}

export interface FolderWish {
  readonly kind: FolderKind;
  /** What an earlier run wrote may give way. */
  readonly replace: boolean;
  /** Of the job that it is made from: nothing is written into it. */
  readonly jobFolder?: string;
}

/**
 * Throws where the folder may not be written: asked before long work, so that it is not done in vain. A folder gives way only when that was said,
 * only to one of its own kind, and only as long as nobody has changed, added or filled in anything.
 */
export function checkFree(folder: string, { kind, replace, jobFolder }: FolderWish): void {
  const target = resolve(folder);
  const place = folderAt(folder);
  putRight(target);
  if (jobFolder !== undefined && `${target}${sep}`.startsWith(`${resolve(jobFolder)}${sep}`))
    fail('into-the-job', place, say('cli.intoTheJob'), say('cli.otherFolder'));
  const there = standsAt(target);
  if (there === 'link') fail('link-in-the-way', place, say('cli.linkStandsHere'), say('cli.otherFolder'));
  if (there === 'file') fail('file-in-the-way', place, say('cli.fileStandsHere'), say('cli.otherFolder'));
  if (there === null) return reachable(target, folder);
  if (readdirSync(target).length === 0) return;
  if (!replace) fail('packet-exists', place, say('cli.folderExists'), say('cli.otherFolderOrReplace'));
  const found = notAsWritten(target);
  if (kind !== 'job' && existsSync(join(target, jobFileName)))
    fail('folder-has-job', place, say('cli.folderHasJob'), say('cli.otherFolder'));
  const some = (names: readonly string[]): ReturnType<typeof listOf> =>
    listOf([...names.slice(0, 3), ...(names.length > 3 ? ['…'] : [])].map(asName), 'comma');
  if (found.foreign.length > 0)
    fail('folder-in-use', place, say('cli.foreignFiles', { files: some(found.foreign) }), say('cli.otherFolder'));
  if (found.changed.length > 0)
    fail('files-changed', place, say('cli.changedFiles', { files: some(found.changed) }), say('cli.otherFolder'));
  if (found.kind !== null && found.kind !== kind) fail('folder-in-use', place, say('cli.otherKind'), say('cli.otherFolder'));
}

/** The nearest folder above that exists must be one. */
function reachable(target: string, folder: string): void {
  for (let above = dirname(target); ; above = dirname(above)) {
    const there = standsAt(above, true);
    if (there === 'folder' || above === dirname(above)) return;
    if (there !== null)
      fail('cannot-write', folderAt(folder), say('cli.cannotWrite', { why: say('cli.fileInTheWay') }), say('cli.otherFolder'));
  }
}

/**
 * Writes a folder whole or not at all: into a folder beside it first, then the two change places. What was there stays beside it under the date
 * until the next time that this succeeds. A kill at any moment leaves the one or the other; what lies between two steps is put right at the next start.
 */
export function writeWhole(
  folder: string,
  files: readonly { path: string; bytes: Uint8Array }[],
  wish: FolderWish,
  disk: Disk = { writeFileSync: writeFlushed, renameSync },
): void {
  checkFree(folder, wish);
  const target = resolve(folder);
  const partial = `${target}.partial-${process.pid}`,
    old = `${target}.old-${process.pid}`;
  try {
    for (const file of [...files, listOfWritten(wish.kind, files)]) {
      const path = join(partial, file.path);
      mkdirSync(dirname(path), { recursive: true });
      disk.writeFileSync(path, file.bytes);
    }
    flushFolder(partial);
    const had = existsSync(target) && readdirSync(target).length > 0;
    if (had) disk.renameSync(target, old);
    else if (existsSync(target)) rmdirSync(target);
    try {
      disk.renameSync(partial, target);
    } catch (error) {
      if (had) renameSync(old, target);
      throw error;
    }
    flushFolder(dirname(target));
    if (had) keepDated(target, old);
  } catch (error) {
    if (existsSync(partial)) rmSync(partial, { recursive: true, force: true });
    fail('cannot-write', folderAt(folder), say('cli.cannotWrite', { why: diskError(error) }), say('cli.nothingHalfWritten'));
  }
}

/** What gave way goes beside it under the date; what had given way before that goes, unless somebody has put their hand to it since. */
function keepDated(target: string, old: string): void {
  const dated = `${basename(target)}.before-`;
  for (const entry of readdirSync(dirname(target))) {
    if (!entry.startsWith(dated) || !/^\d{4}-\d\d-\d\d-\d{6}(-\d+)?$/.test(entry.slice(dated.length))) continue;
    const path = join(dirname(target), entry);
    if (standsAt(path) !== 'folder') continue;
    const { foreign, changed } = notAsWritten(path);
    if (foreign.length === 0 && changed.length === 0) rmSync(path, { recursive: true, force: true });
  }
  const now = new Date().toISOString().slice(0, 19).replace('T', '-').replaceAll(':', '');
  let to = `${target}.before-${now}`;
  for (let n = 2; existsSync(to); n++) to = `${target}.before-${now}-${n}`;
  renameSync(old, to);
  console.error(sayHere('cli.keptDated', { folder: asName(basename(to)) }));
}

/** What a Laydown that was killed left beside a folder: half of a new one goes, and what was to give way comes back where the new one never came. */
function putRight(target: string): void {
  const above = dirname(target);
  if (standsAt(above, true) !== 'folder') return;
  for (const entry of readdirSync(above)) {
    const [, what, pid] = entry.startsWith(`${basename(target)}.`)
      ? (/^(partial|old)-(\d+)$/.exec(entry.slice(basename(target).length + 1)) ?? [])
      : [];
    if (pid === undefined || isRunning(Number(pid)) || standsAt(join(above, entry)) !== 'folder') continue;
    if (what === 'partial') {
      rmSync(join(above, entry), { recursive: true, force: true });
      console.error(sayHere('cli.clearedLeftOver', { file: asName(entry) }));
    } else if (!existsSync(target)) {
      renameSync(join(above, entry), target);
      console.error(sayHere('cli.putBack', { folder: asName(basename(target)) }));
    } else keepDated(target, join(above, entry));
  }
}
