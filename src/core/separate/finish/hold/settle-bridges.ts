import { bitsOf, bytesOf, emptyBits, fillBits, putBits, type Bits } from '../../kernels/bits.ts';
import { dilated } from '../../kernels/morph.ts';
import { relaxed, type Field } from '../../kernels/relax.ts';
import { energyOf } from '../../prepare/masks.ts';
import { cuttableMask, type CutRules } from '../cuttable.ts';
import { widenLines } from '../widen.ts';

/** How far around a bridge another layer may change, mm; what is gained beyond comes from elsewhere. */
const aroundMm = 2.5;
/** ΔE00·mm² that a layer must gain to be drawn again: what a bridge of a few millimetres costs. */
const leastGain = 150;

/**
 * Masks that settle again once bridges lie: where one layer's ink is missing for a bridge, the others print what hides it best.
 * Each layer in turn around the others as they print now, cuttable again, kept where the print gains.
 * @param planned masks as they are wanted; changed
 * @param prints what the stencils print of them
 * @returns layers that changed
 */
export function settleAroundBridges(
  field: Field,
  planned: Uint8Array,
  prints: Uint8Array,
  bits: readonly number[],
  rules: CutRules,
  mmPerPx: number,
): number[] {
  const { width, height, layers } = field,
    all = (1 << layers) - 1,
    changed: number[] = [];
  for (const bit of bits) {
    const own = 1 << bit,
      missing = missingBut(planned, prints, own, width, height);
    if (missing === null) continue;
    const near = bytesOf(dilated(missing, aroundMm / mmPerPx)),
      trial = prints.map((code, i) => (code & ~own) | (planned[i] & own)),
      before = trial.slice();
    relaxed({ ...field, frozen: all & ~own }, trial, 4, 2e-5, bytesOf(dilated(missing, 1.5)));
    for (let i = 0; i < trial.length; i++) if (!near[i]) trial[i] = before[i];
    const wanted = bitsOf(trial, bit, width, height),
      widen = (cut: Bits): boolean => widenLines(field, trial, bit, wanted, cut, 1, rules.openingPx);
    putBits(trial, bit, cuttableMask(wanted, rules, widen));
    for (let i = 0; i < trial.length; i++) if (!near[i]) trial[i] = before[i];
    const gain = energyOf(field, before, mmPerPx) - energyOf(field, trial, mmPerPx);
    if (gain < leastGain) continue;
    for (let i = 0; i < trial.length; i++) planned[i] = (planned[i] & ~own) | (trial[i] & own);
    changed.push(bit);
  }
  return changed;
}

/** Where ink of the other layers is missing; null where none is. */
function missingBut(planned: Uint8Array, prints: Uint8Array, own: number, width: number, height: number): Bits | null {
  const out = emptyBits(width, height);
  let any = false;
  for (let i = 0; i < planned.length; i++)
    if (planned[i] & ~prints[i] & ~own) {
      fillBits(out, i, i + 1, 1);
      any = true;
    }
  return any ? out : null;
}
