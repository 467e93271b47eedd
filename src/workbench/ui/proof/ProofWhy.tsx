import { words } from '../../store/words.ts';
import type { ShownPlan } from '../../engine/protocol.ts';
import { Why } from '../fields/Why.tsx';

/** What the numbers under a proof were worked out from, and how sure they are. */
export function ProofWhy({ plan }: { readonly plan: ShownPlan }) {
  const w = words().laydown;
  return (
    <Why of={w.whyProof}>
      <p>{w.whyLab}</p>
      <p>{w.whyBand}</p>
      <p>{w.whyArea(Math.round(25.4 / plan.codes.mmPerPx))}</p>
    </Why>
  );
}
