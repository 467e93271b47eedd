import { strFromU8, strToU8, unzipSync, zipSync, type UnzipFileFilter, type Zippable } from 'fflate';
import { name as asName, say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { jobFileName, parseJobText, writeJobText } from './parse.ts';
import type { JobBundle } from './schema.ts';

/** No job needs more; what claims to is a mistake or a trap. */
const mostBytes = 1_000_000_000;

/** Files of a job folder by path → a Job with its attachments. Throws `ProblemError`. */
export function readJob(files: ReadonlyMap<string, Uint8Array>): JobBundle {
  const document = files.get(jobFileName);
  if (!document)
    fail(
      'no-job-file',
      say('where.file', { file: asName(jobFileName) }),
      say('job.noJobFile', { file: asName(jobFileName) }),
      say('job.chooseJobFolder', { file: asName(jobFileName) }),
    );
  const job = parseJobText(strFromU8(document));
  const attachments = new Map([...files].filter(([path]) => path !== jobFileName));
  return { job, attachments };
}

/** A Job with its attachments → files by path. */
export function writeJob(bundle: JobBundle): Map<string, Uint8Array> {
  return new Map([[jobFileName, strToU8(writeJobText(bundle.job))], ...bundle.attachments]);
}

/** One `.laydown` file (a zip) → Job. Refuses what is broken, climbs out of the folder, or swells without end. */
export function readJobFile(bytes: Uint8Array, file?: string): JobBundle {
  const place = file === undefined ? say('where.theFile') : say('where.file', { file: asName(file) });
  let total = 0;
  const filter: UnzipFileFilter = (entry) => {
    total += entry.originalSize;
    return total <= mostBytes && !entry.name.endsWith('/') && !entry.name.startsWith('/') && !entry.name.split(/[\\/]/).includes('..');
  };
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(bytes, { filter });
  } catch {
    fail('not-a-job-file', place, say('job.notAJobFile'), say('job.chooseAnotherCopy'));
  }
  if (total > mostBytes) fail('job-file-too-large', place, say('job.unpacksTooLarge'), say('job.takePicturesOut'));
  return readJob(new Map(Object.entries(entries)));
}

/** Job → one `.laydown` file. The same Job gives the same bytes: times inside are fixed. */
export function writeJobFile(bundle: JobBundle): Uint8Array {
  const entries: Zippable = {};
  for (const [path, data] of [...writeJob(bundle)].sort(([a], [b]) => (a < b ? -1 : 1))) {
    entries[path] = [data, { mtime: '1980-01-01T00:00:00', level: /\.(png|jpe?g|webp)$/i.test(path) ? 0 : 6 }];
  }
  return zipSync(entries);
}
