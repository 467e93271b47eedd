import { strFromU8, strToU8, unzipSync, zipSync, type UnzipFileFilter, type Zippable } from 'fflate';
import { fail } from '../problem.ts';
import { parseJobText, writeJobText } from './parse.ts';
import type { JobBundle } from './schema.ts';

/** The document's name inside a job folder or a `.laydown` file. */
export const jobFileName = 'job.json';

/** No job needs more; what claims to is a mistake or a trap. */
const mostBytes = 1_000_000_000;

/** Files of a job folder by path → a Job with its attachments. Throws `ProblemError`. */
export function readJob(files: ReadonlyMap<string, Uint8Array>): JobBundle {
  const document = files.get(jobFileName);
  if (!document)
    fail(
      'no-job-file',
      jobFileName,
      'There is no job.json here, so this is not a job.',
      'Choose the folder that holds job.json, or a .laydown file.',
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
export function readJobFile(bytes: Uint8Array, place = 'the file'): JobBundle {
  let total = 0;
  const filter: UnzipFileFilter = (file) => {
    total += file.originalSize;
    return total <= mostBytes && !file.name.endsWith('/') && !file.name.startsWith('/') && !file.name.split(/[\\/]/).includes('..');
  };
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(bytes, { filter });
  } catch {
    fail(
      'not-a-job-file',
      place,
      'It cannot be opened as a .laydown file: it is cut short or something else.',
      'Choose another copy; nothing was changed.',
    );
  }
  if (total > mostBytes)
    fail('job-file-too-large', place, 'It unpacks to more than 1 GB.', 'Take the large pictures out of the job and try again.');
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
