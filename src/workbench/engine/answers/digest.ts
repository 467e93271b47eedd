import { digestPlan } from '../digest.ts';
import type { Work } from './room.ts';

export const digestAnswer: Work<'digest'> = async (_ask, room) => {
  if (!room.last) throw new Error('Nothing is planned yet.');
  return { answer: await digestPlan(room.last.plan), transfer: [] };
};
