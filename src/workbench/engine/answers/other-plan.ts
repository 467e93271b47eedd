import { createPlanner, readyBundle, type Plan, type Planner } from '../../../core/plan/index.ts';
import { showPlan } from './plan.ts';
import type { Room, Work } from './room.ts';

/** A planner of its own, so that looking at another version costs the job on the bench nothing of what is remembered for it. */
const others = new WeakMap<Room, { readonly planner: Planner; plan: Plan | null }>();

export function otherPlan(room: Room): Plan | null {
  return others.get(room)?.plan ?? null;
}

export const otherPlanAnswer: Work<'otherPlan'> = async ({ job, attachments }, room) => {
  await room.ready;
  const other = others.get(room) ?? { planner: createPlanner(), plan: null };
  others.set(room, other);
  const plan = other.planner.plan(await readyBundle({ job, attachments: room.knownBytes(attachments) }));
  other.plan = plan;
  return { answer: showPlan(plan), transfer: [] };
};
