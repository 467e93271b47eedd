import type { Plan } from '../../core/plan/index.ts';
import type { PlanDigest } from './protocol.ts';

/** Fingerprint (SHA-256) of every code and every Lab to the last bit: shows that two machines made the same Plan. */
export async function digestPlan(plan: Pick<Plan, 'codes' | 'papers'>): Promise<PlanDigest> {
  const labs = Float64Array.from(plan.papers.flatMap((paper) => paper.overlaps.flatMap((o) => [o.code, ...o.lab, o.band, o.areaMm2])));
  return { codes: await hexOf(plan.codes.data), labs: await hexOf(new Uint8Array(labs.buffer)) };
}

async function hexOf(bytes: Uint8Array): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', bytes as BufferSource);
  return Array.from(new Uint8Array(hash), (b) => b.toString(16).padStart(2, '0')).join('');
}
