import { randomBytes } from 'node:crypto';
import { closeSync, constants, fsyncSync, lstatSync, openSync, readdirSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fail } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
import { diskError, fileAt } from './disk.ts';
import { sayHere } from '../reader.ts';

/** Fails before any work where the file could not be written afterwards: it is there already, or a folder or link stands in its place. */
export function mustBeNew(out: string, replace: boolean): void {
  const there = standsAt(out);
  if (there === 'folder') fail('folder-in-the-way', fileAt(out), say('cli.folderStandsHere'), say('cli.otherName'));
  if (there === 'link') fail('link-in-the-way', fileAt(out), say('cli.linkStandsHere'), say('cli.otherName'));
  if (there === 'file' && !replace) fail('file-exists', fileAt(out), say('cli.fileExists'), say('cli.otherNameOrReplace'));
  const above = standsAt(dirname(resolve(out)), true);
  if (above !== 'folder')
    fail(
      'cannot-write',
      fileAt(out),
      say('cli.cannotWrite', { why: say(above ? 'cli.fileInTheWay' : 'cli.noFolder') }),
      say('cli.otherPlace'),
    );
}

/** What there is at a path, links not followed unless asked. */
export function standsAt(path: string, throughLinks = false): 'file' | 'folder' | 'link' | null {
  try {
    const info = lstatSync(path, { throwIfNoEntry: false });
    if (!info) return null;
    if (info.isSymbolicLink()) return throughLinks ? standsAt(join(path, '.')) : 'link';
    return info.isDirectory() ? 'folder' : 'file';
  } catch {
    return null;
  }
}

/**
 * Writes a file whole or not at all: beside it first, flushed to the disk, then put in its place in one step. A kill at any moment leaves the
 * file that was there, or the new one. What is there already is only replaced when that was said.
 */
export function writeNew(out: string, replace: boolean, make: () => string | Uint8Array): void {
  mustBeNew(out, replace);
  const bytes = make();
  const target = resolve(out);
  const beside = join(dirname(target), `.${basename(target)}.laydown-${process.pid}-${randomBytes(4).toString('hex')}`);
  try {
    clearLeftOver(dirname(target), basename(target));
    writeFlushed(beside, bytes);
    renameSync(beside, target);
    flushFolder(dirname(target));
  } catch (error) {
    rmSync(beside, { force: true });
    fail('cannot-write', fileAt(out), say('cli.cannotWrite', { why: diskError(error) }), say('cli.otherPlace'));
  }
}

/** Into a file that must not exist yet, also not as a link, down to the disk. */
export function writeFlushed(path: string, content: string | Uint8Array): void {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  const file = openSync(path, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, 0o666);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** The new name in the folder, down to the disk. Some systems can't; then it is theirs to do soon. */
export function flushFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // Nothing to be done about it.
  }
}

/** Half-written files of a Laydown that was killed. They were never put in place, so nothing is lost with them. */
function clearLeftOver(folder: string, name: string): void {
  for (const entry of readdirSync(folder)) {
    const pid = entry.startsWith(`.${name}.laydown-`) ? /^(\d+)-[0-9a-f]{8}$/.exec(entry.slice(name.length + 10)) : null;
    if (!pid || isRunning(Number(pid[1]))) continue;
    rmSync(join(folder, entry), { force: true });
    console.error(sayHere('cli.clearedLeftOver', { file: { kind: 'name', name: entry } }));
  }
}

export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
