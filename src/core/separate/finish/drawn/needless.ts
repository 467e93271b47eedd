import { energyOf } from '../../prepare/masks.ts';
import type { Field } from '../../kernels/relax.ts';

/**
 * A run of a drawing that prints less than this share of it, and without which colours are off by no more than this on average (ΔE00), is crumbs along
 * edges: nobody would cut it.
 */
const leastArea = 0.03,
  leastGain = 0.1;

/** Runs that a drawing does without print nothing; `codes` is changed in place. */
export function withoutNeedless(field: Field, codes: Uint8Array, frozen: number): void {
  if (field.paired) return;
  const free = { ...field, price: new Float32Array(8) };
  for (let layer = 0; layer < field.layers; layer++) {
    const bit = 1 << layer;
    if (frozen & bit) continue;
    const without = codes.map((code) => code & ~bit),
      printed = codes.reduce((sum, code) => sum + ((code >> layer) & 1), 0);
    if (printed === 0 || printed > leastArea * codes.length) continue;
    if (energyOf(free, without, 1) - energyOf(free, codes, 1) < leastGain * codes.length) codes.set(without);
  }
}
