import { checkJob, writeJob, type JobBundle } from '../../core/job/index.ts';
import { ProblemError } from '../../core/problem.ts';
import { checkFree, writeWhole } from './write-folder.ts';

/** A job as a folder, whole or not at all. */
export function writeJobTo(out: string, made: JobBundle, replace: boolean): void {
  checkFree(out, { kind: 'job', replace });
  const errors = checkJob(made).filter((p) => p.severity === 'error');
  if (errors.length > 0) throw new ProblemError(errors);
  writeWhole(
    out,
    [...writeJob(made)].map(([path, bytes]) => ({ path, bytes })),
    { kind: 'job', replace },
  );
}
