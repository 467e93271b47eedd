import { readdirSync, statSync, type Dirent } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { readJob, readJobFile, jobFileName, type JobBundle } from '../../core/job/index.ts';
import { fail } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
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
