import { lensOfShares, type KeptLens } from '../../core/form/index.ts';
import { fail, ProblemError } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
import { fileAt, readFileBytes } from './disk.ts';

/** A camera's lens as `trace --keep-lens` and `lens` wrote it. */
export function keptLensFrom(file: string): KeptLens {
  try {
    const { lens } = JSON.parse(new TextDecoder().decode(readFileBytes(file))) as { readonly lens: unknown };
    if (lensOfShares(lens, { width: 1, height: 1 })) return lens as KeptLens;
  } catch (error) {
    if (error instanceof ProblemError) throw error;
  }
  return fail('not-a-lens', fileAt(file), say('refusals.notALens'), say('refusals.keepLens'));
}
