import { problem, ProblemError, type Problem } from '../../core/problem.ts';
import { name as asName, say, type Saying } from '../../words/one-language.ts';

/**
 * What went wrong, in the printmaker's words. What nobody foresaw keeps the machine's own words beside them, for whoever looks into it.
 * @param place where it happened, when it was not foreseen
 */
export function faultsOf(error: unknown, place: Saying = say('where.workbench')): readonly Problem[] {
  if (error instanceof ProblemError) return error.problems;
  const trace = asName(error instanceof Error ? error.message : String(error));
  return [problem('error', 'went-wrong', place, say('engine.wentWrong'), say('engine.saveAndReload', { trace }))];
}
