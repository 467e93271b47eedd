import { ProblemError, type Problem } from '../src/core/problem.ts';
import { english, tell, tellProblem, type Reader, type Saying } from '../src/words/index.ts';

/** A saying as an English reader in millimetres reads it. */
export function inEnglish(said: Saying, reader: Reader = english): string {
  return tell(said, reader);
}

/** The problems that a call throws; fails the test where it throws none or something else. */
export function refusedBy(call: () => unknown): readonly Problem[] {
  try {
    call();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
  throw new Error('It should have been refused, and was not.');
}

/** All that a refusal says, in English: to look for what it must name. */
export function refusalOf(call: () => unknown): string {
  return refusedBy(call)
    .map((p) => tellProblem(p))
    .join('\n');
}

/** The same of a call that ends later. */
export async function refusalOfAsync(call: () => Promise<unknown>): Promise<string> {
  const ended = await call().then(
    () => null,
    (error: unknown) => ({ error }),
  );
  return refusalOf(() => {
    if (ended) throw ended.error;
  });
}
