import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync, existsSync, type Dirent } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { readJob, readJobFile, jobFileName, type JobBundle } from '../core/job/index.ts';
import { fail } from '../core/problem.ts';
import { list as listOf, name as asName, say } from '../words/index.ts';
import { diskError, fileAt, folderAt, readFileBytes } from './disk.ts';

/** A job folder holds drawings, photographs and readings; more than this is some other folder. */
const mostBytes = 1_000_000_000;
const mostFiles = 5000;

/** Reads a job: a folder with job.json, that job.json itself, or a `.laydown` file. Throws `ProblemError`. */
export function readJobAt(path: string): JobBundle {
  const at = resolve(path);
  const info = statSync(at, { throwIfNoEntry: false });
  if (!info) fail('no-such-job', fileAt(path), say('cli.nothingHere'), say('cli.nameJob'));
  if (info.isDirectory()) return readJob(readFolder(at));
  if (basename(at) === jobFileName) return readJob(readFolder(dirname(at)));
  return readJobFile(readFileBytes(path), path);
}

function readFolder(folder: string): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  let total = 0;
  const walk = (at: string): void => {
    for (const entry of entriesOf(at).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const path = join(at, entry.name);
      if (entry.isDirectory()) walk(path);
      else if (entry.isFile()) {
        total += statSync(path).size;
        if (total > mostBytes || files.size >= mostFiles) {
          fail('folder-too-large', folderAt(folder), say('cli.folderTooLarge'), say('cli.giveJobFolder'));
        }
        files.set(relative(folder, path).split(sep).join('/'), readFileBytes(path));
      }
    }
  };
  walk(folder);
  return files;
}

function entriesOf(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    return fail('cannot-read', folderAt(folder), say('cli.cannotRead', { why: diskError(error) }), say('cli.checkName'));
  }
}

/** Lists what a packet consists of, so that a later one may take its place and touch nothing else. */
const listName = 'packet-files.txt';

/** What `writeWhole` asks of a disk; handed in by tests that need a full one. */
export interface Disk {
  writeFileSync(path: string, bytes: Uint8Array | string): void;
  renameSync(from: string, to: string): void;
}

/** Throws when the folder may not be written: asked before long work, so that it is not done in vain. */
export function checkFree(folder: string, replace: boolean): void {
  const target = resolve(folder);
  const place = folderAt(folder);
  const existing = existsSync(target) ? [...readFolderNames(target)] : [];
  if (existing.length > 0) {
    if (!replace) fail('packet-exists', place, say('cli.folderExists'), say('cli.otherFolderOrReplace'));
    const list = join(target, listName);
    const ours = new Set(existsSync(list) ? readFileSync(list, 'utf8').split('\n') : []);
    const foreign = existing.filter((name) => name !== listName && !ours.has(name));
    if (foreign.length > 0) {
      const some = [...foreign.slice(0, 3), ...(foreign.length > 3 ? ['…'] : [])];
      fail('folder-in-use', place, say('cli.foreignFiles', { files: listOf(some.map(asName), 'comma') }), say('cli.otherFolder'));
    }
  }
}

/**
 * Writes a folder whole or not at all: into a folder beside it first, then the two change places.
 * An existing packet gives way only when `replace` is set, and never a folder that holds anything else.
 */
export function writeWhole(
  folder: string,
  files: readonly { path: string; bytes: Uint8Array }[],
  replace: boolean,
  disk: Disk = { writeFileSync, renameSync },
): void {
  checkFree(folder, replace);
  const target = resolve(folder);
  const partial = `${target}.partial-${process.pid}`;
  const old = `${target}.old-${process.pid}`;
  try {
    for (const file of files) {
      const path = join(partial, file.path);
      mkdirSync(dirname(path), { recursive: true });
      disk.writeFileSync(path, file.bytes);
    }
    disk.writeFileSync(join(partial, listName), [...files.map((f) => f.path)].join('\n'));
    if (existsSync(target)) disk.renameSync(target, old);
    try {
      disk.renameSync(partial, target);
    } catch (error) {
      if (existsSync(old)) renameSync(old, target);
      throw error;
    }
  } catch (error) {
    if (existsSync(partial)) rmSync(partial, { recursive: true, force: true });
    fail('cannot-write', folderAt(folder), say('cli.cannotWrite', { why: diskError(error) }), say('cli.nothingHalfWritten'));
  } finally {
    if (existsSync(target)) rmSync(old, { recursive: true, force: true });
  }
}

function* readFolderNames(folder: string, below = ''): Generator<string> {
  for (const entry of readdirSync(join(folder, below), { withFileTypes: true })) {
    const name = below ? `${below}/${entry.name}` : entry.name;
    if (entry.isDirectory()) yield* readFolderNames(folder, name);
    else yield name;
  }
}
