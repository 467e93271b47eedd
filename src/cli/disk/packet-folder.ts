import { existsSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fingerprintOf, jobFileName, type JobBundle } from '../../core/job/index.ts';
import { problem, type Problem } from '../../core/problem.ts';
import { madeFromName } from '../../packet/index.ts';
import { name as asName, say } from '../../words/index.ts';
import type { Call } from '../command.ts';
import { folderAt } from './disk.ts';

/** Where a job's packet goes when nobody says where: beside it, named after it. */
export function usualPacketFolder(jobPath: string): string {
  const at = resolve(jobPath);
  const job = basename(at) === jobFileName ? dirname(at) : at;
  return `${existsSync(job) && statSync(job).isDirectory() ? job : job.replace(/\.laydown$/, '')}-packet`;
}

/** A packet that was made from another state of the job; null where it fits, or where there is none. */
export function stalePacket(call: Call, bundle: JobBundle): Problem | null {
  const asked = call.options['packet'];
  const folder = typeof asked === 'string' ? asked : usualPacketFolder(call.words[0]);
  const file = join(folder, madeFromName);
  if (!existsSync(file)) return null;
  const was = readFileSync(file, 'utf8').trim().slice(0, 20);
  const is = fingerprintOf(bundle);
  if (was === is) return null;
  return problem(
    'warning',
    'packet-old',
    folderAt(basename(folder)),
    say('answers.packetOld', { was: asName(was), is: asName(is) }),
    say('answers.packetAnew'),
  );
}
