import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync, existsSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { readJob, readJobFile, jobFileName, type JobBundle } from '../core/job/index.ts';
import { fail } from '../core/problem.ts';

/** A job folder holds drawings, photographs and readings; more than this is some other folder. */
const mostBytes = 1_000_000_000;
const mostFiles = 5000;

/** Reads a job: a folder with job.json, that job.json itself, or a `.laydown` file. Throws `ProblemError`. */
export function readJobAt(path: string): JobBundle {
  const at = resolve(path);
  const info = statSync(at, { throwIfNoEntry: false });
  if (!info) fail('no-such-job', path, 'There is nothing here.', 'Give a folder with job.json in it, or a .laydown file.');
  if (info.isDirectory()) return readJob(readFolder(at));
  if (basename(at) === jobFileName) return readJob(readFolder(dirname(at)));
  return readJobFile(new Uint8Array(readFileSync(at)), path);
}

function readFolder(folder: string): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  let total = 0;
  const walk = (at: string): void => {
    for (const entry of readdirSync(at, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const path = join(at, entry.name);
      if (entry.isDirectory()) walk(path);
      else if (entry.isFile()) {
        total += statSync(path).size;
        if (total > mostBytes || files.size >= mostFiles) {
          fail(
            'folder-too-large',
            folder,
            'The folder holds far more than a job does.',
            'Give the folder of one job, with only its drawings and pictures in it.',
          );
        }
        files.set(relative(folder, path).split(sep).join('/'), new Uint8Array(readFileSync(path)));
      }
    }
  };
  walk(folder);
  return files;
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
  const existing = existsSync(target) ? [...readFolderNames(target)] : [];
  if (existing.length > 0) {
    if (!replace)
      fail(
        'packet-exists',
        folder,
        'There is something here already.',
        'Choose another folder with --out, or say --replace to put the new one in its place.',
      );
    const list = join(target, listName);
    const ours = new Set(existsSync(list) ? readFileSync(list, 'utf8').split('\n') : []);
    const foreign = existing.filter((name) => name !== listName && !ours.has(name));
    if (foreign.length > 0) {
      fail(
        'folder-in-use',
        folder,
        `The folder holds files that no packet made: ${foreign.slice(0, 3).join(', ')}${foreign.length > 3 ? ' …' : ''}.`,
        'Choose another folder; nothing was touched.',
      );
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
    fail(
      'cannot-write',
      folder,
      `It could not be written: ${sayDiskError(error)}`,
      'Nothing was left half-written. Make room, or choose another folder with --out.',
    );
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

export function sayDiskError(error: unknown): string {
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'the disk is full.';
  if (code === 'EROFS') return 'the disk can only be read.';
  if (code === 'EACCES' || code === 'EPERM') return 'this folder may not be written to.';
  if (code === 'ENOTDIR' || code === 'EEXIST') return 'a file stands where a folder is needed.';
  return error instanceof Error ? error.message : String(error);
}
