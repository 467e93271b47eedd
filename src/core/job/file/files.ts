import { strToU8, zipSync, type Zippable } from 'fflate';
import { name as asName, say, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { firstChanged, manifestName, manifestOf } from './manifest.ts';
import { decodeJobText, jobFileName, parseJobText, writeJobText } from './parse.ts';
import type { JobBundle } from '../schema/schema.ts';
import { readZip, type ZipFault } from './zip.ts';

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
  const job = parseJobText(decodeJobText(document));
  const attachments = new Map([...files].filter(([path]) => path !== jobFileName && path !== manifestName));
  return { job, attachments };
}

/** A Job with its attachments → files by path. */
export function writeJob(bundle: JobBundle): Map<string, Uint8Array> {
  return new Map([[jobFileName, strToU8(writeJobText(bundle.job))], ...bundle.attachments]);
}

/** What is said of a zip that is not read: code, what is wrong, what to do. */
const faults = {
  'not-a-zip': ['not-a-job-file', say('job.notAJobFile'), say('job.chooseAnotherCopy')],
  damaged: ['job-file-damaged', say('job.damagedFile'), say('job.chooseAnotherCopy')],
  locked: ['job-file-locked', say('job.lockedFile'), say('job.unlockFile')],
  'too-large': ['job-file-too-large', say('job.unpacksTooLarge'), say('job.takePicturesOut')],
} as const satisfies Record<ZipFault, readonly [string, Saying, Saying]>;

/** One `.laydown` file (a zip) → Job. Refuses what is broken, changed, climbs out of the folder, or swells without end. */
export function readJobFile(bytes: Uint8Array, file?: string): JobBundle {
  const place = file === undefined ? say('where.theFile') : say('where.file', { file: asName(file) });
  const files = readZip(bytes, mostBytes);
  if (typeof files === 'string') {
    const [code, message, advice] = faults[files];
    return fail(code, place, message, advice);
  }
  const manifest = files.get(manifestName);
  const changed = manifest ? firstChanged(files, manifest) : null;
  if (changed !== null) fail('job-file-changed', place, say('job.changedFile', { file: asName(changed) }), say('job.unpackFirst'));
  return readJob(new Map([...files].filter(([path]) => staysInside(path))));
}

function staysInside(path: string): boolean {
  return !path.startsWith('/') && !path.split(/[\\/]/).includes('..');
}

/** Job → one `.laydown` file. The same Job gives the same bytes: times inside are fixed. */
export function writeJobFile(bundle: JobBundle): Uint8Array {
  const entries: Zippable = {};
  const files = writeJob(bundle);
  for (const [path, data] of [...files, [manifestName, manifestOf(files)] as const].sort(([a], [b]) => (a < b ? -1 : 1))) {
    entries[path] = [data, { mtime: '1980-01-01T00:00:00', level: /\.(png|jpe?g|webp)$/i.test(path) ? 0 : 6 }];
  }
  return zipSync(entries);
}
