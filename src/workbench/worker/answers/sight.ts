import { keepSight } from '../../store/sight.ts';
import { showPaper } from './plan.ts';
import type { Work } from './room.ts';

/** Only the Plan of the very job that is asked for: another may have been planned since. */
export const keepSightAnswer: Work<'keepSight'> = async ({ key, job }, room) => {
  if (room.last && JSON.stringify(room.last.job) === JSON.stringify(job)) {
    const { plan } = room.last;
    await keepSight({ key, plan: { ...plan, papers: plan.papers.map(showPaper) } });
  }
  return { answer: null, transfer: [] };
};
