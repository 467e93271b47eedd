import { keepSight } from '../../../store/keep/sight.ts';
import { showPlan } from '../plan.ts';
import type { Work } from '../room.ts';

/** Only the Plan of the very job that is asked for: another may have been planned since. */
export const keepSightAnswer: Work<'keepSight'> = async ({ key, job }, room) => {
  if (room.last && JSON.stringify(room.last.job) === JSON.stringify(job)) {
    const { plan } = room.last;
    await keepSight({ key, plan: showPlan(plan) });
  }
  return { answer: null, transfer: [] };
};
