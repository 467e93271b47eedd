import { fail } from '../../../core/problem.ts';
import { say } from '../../../words/index.ts';
import { digestPlan } from '../digest.ts';
import type { Work } from './room.ts';

export const digestAnswer: Work<'digest'> = async (_ask, room) => {
  if (!room.last) fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
  return { answer: await digestPlan(room.last.plan), transfer: [] };
};
