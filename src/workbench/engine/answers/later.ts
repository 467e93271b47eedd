import { fail } from '../../../core/problem.ts';
import { name as asName, say } from '../../../words/one-language.ts';
import type { Question } from '../protocol.ts';
import type { Work } from './room.ts';

/** Answers that a Plan does without. */
type Answers<Q extends Question> = { readonly [P in Q]: Work<P> };

const all: (() => Promise<unknown>)[] = [];

/** Answers that come in a file of their own: when one of them is first asked for, or before that while the bench rests. */
export function later<Q extends Question>(
  part: string,
  bring: () => Promise<{ readonly answers: Answers<Q> }>,
  questions: readonly Q[],
): Answers<Q> {
  let coming: Promise<Answers<Q>> | null = null;
  const load = (): Promise<Answers<Q>> =>
    (coming ??= bring().then(
      ({ answers }) => answers,
      () => {
        coming = null;
        return fail('part-missing', say('where.workbench'), say('engine.partMissing', { part: asName(part) }), say('engine.loadAgain'));
      },
    ));
  all.push(load);
  const answer = async (question: Q, ...[ask, room, task]: Parameters<Work<Q>>): Promise<unknown> =>
    (await load())[question](ask, room, task);
  return Object.fromEntries(questions.map((question) => [question, answer.bind(null, question)])) as unknown as Answers<Q>;
}

/** Brings what has not come yet, one part after the other; what doesn't come now is asked for again when it is needed. */
export async function bringLater(): Promise<void> {
  for (const load of all) await load().catch(() => undefined);
}
