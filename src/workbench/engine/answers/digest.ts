import type { Plan } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { say } from '../../../words/one-language.ts';
import type { PlanDigest } from '../protocol.ts';
import type { Work } from './room.ts';

export const digestAnswer: Work<'digest'> = async (_ask, room) => {
  if (!room.last) fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
  return { answer: await digestPlan(room.last.plan), transfer: [] };
};

/** Fingerprint (SHA-256) of every code and every Lab to the last bit: shows that two machines made the same Plan. */
export async function digestPlan(plan: Pick<Plan, 'codes' | 'papers'>): Promise<PlanDigest> {
  const labs = Float64Array.from(plan.papers.flatMap((paper) => paper.overlaps.flatMap((o) => [o.code, ...o.lab, o.band, o.areaMm2])));
  return { codes: await hexOf(plan.codes.data), labs: await hexOf(new Uint8Array(labs.buffer)) };
}

async function hexOf(bytes: Uint8Array): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', bytes as BufferSource);
  return Array.from(new Uint8Array(hash), (b) => b.toString(16).padStart(2, '0')).join('');
}
