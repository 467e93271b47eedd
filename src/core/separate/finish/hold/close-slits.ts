import { bitsOf, bytesOf, emptyBits, fillBits, putBits, type Bits } from '../../kernels/bits.ts';
import { dilated, eachPart, type Run } from '../../kernels/morph.ts';
import { around } from '../../kernels/register-room.ts';
import type { Field } from '../../kernels/relax.ts';
import { barePrices, cuttableMask, type CutRules } from '../cuttable.ts';

/** A light place narrower than this between darker ones is a slit, mm; common practice: from about a millimetre on it is a shape. */
const narrowMm = 1.1;
/** L* by which it must be lighter to be seen. */
const seenFrom = 6;
/** ΔE00 an L* beyond that, as for layers that sit off. */
const { slitPrice } = barePrices;
/** ΔE00·mm² that it must gain: less is not worth the bump in an outline. */
const leastGain = 5;
/** How far ink is drawn beyond a slit, mm: so that it stays closed when layers sit off, or where the line in which inks then overlap is worse, just enough. */
const beyondMm = [0.5, 0.25];

/** What the print may be as light as at each pixel: the broad shapes around it, and the picture itself. */
export interface SlitWatch {
  readonly lightness: Float32Array;
  readonly most: Float32Array;
}

/**
 * A watch on narrow places lighter than the shapes on both sides of them and than the picture there: paper left bare where a bridge lies beside
 * another run's edge, or where two edges don't quite meet.
 * @param codes the print
 * @param lightness L* of each code
 * @param target the picture's Lab, three numbers a pixel
 */
export function slitWatch(
  codes: Uint8Array,
  width: number,
  height: number,
  lightness: Float32Array,
  target: Float32Array,
  mmPerPx: number,
): SlitWatch {
  const reach = Math.max(1, Math.round(narrowMm / mmPerPx / 2)),
    here = Float32Array.from(codes, (code) => lightness[code]),
    broad = around(around(here, width, height, reach, false), width, height, reach, true),
    drawn = around(
      here.map((_, i) => target[3 * i]),
      width,
      height,
      reach,
      true,
    );
  for (let i = 0; i < broad.length; i++) broad[i] = Math.max(broad[i], drawn[i]) + seenFrom;
  return { lightness, most: broad };
}

/** What a print's slits cost, ΔE00·px. */
export function slitCost({ lightness, most }: SlitWatch, codes: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < codes.length; i++) sum += slitPrice * Math.max(0, lightness[codes[i]] - most[i]);
  return sum;
}

/**
 * Closes slits of paper: the run that hides one best, where the print is the better for it, is drawn a little beyond it.
 * @param planned masks as they are wanted; changed
 * @param prints what the stencils print of them, as far as is known
 * @returns layers that changed
 */
export function closeSlits(
  field: Field,
  planned: Uint8Array,
  prints: Uint8Array,
  bits: readonly number[],
  rules: CutRules,
  watch: SlitWatch,
  mmPerPx: number,
): number[] {
  const { width, height } = field,
    ways = new Map(bits.map((bit) => [bit, emptyBits(width, height)]));
  for (let i = 0; i < prints.length; i++) {
    if (watch.lightness[prints[i]] <= watch.most[i]) continue;
    const bit = bestCover(field, prints, planned, bits, watch, i);
    if (bit !== undefined) fillBits(ways.get(bit)!, i, i + 1, 1);
  }
  return bits.filter((bit) => {
    const more = emptyBits(width, height);
    let any = false;
    for (const beyond of beyondMm)
      eachPart(dilated(ways.get(bit)!, beyond / mmPerPx), (runs) => {
        if (coverCost(field, prints, bit, watch, runs) * mmPerPx ** 2 > -leastGain) return;
        for (const [start, end] of runs) fillBits(more, start, end, 1);
        any = true;
      });
    return any && drawn(planned, bit, more, rules, beyondMm[0] / mmPerPx);
  });
}

/** Adds ink to one run's mask, cuttable again near by. @returns whether it changed */
function drawn(planned: Uint8Array, bit: number, more: Bits, rules: CutRules, nearPx: number): boolean {
  const own = bitsOf(planned, bit, more.width, more.height),
    near = bytesOf(dilated(more, nearPx)),
    before = planned.slice();
  for (let w = 0; w < own.words.length; w++) own.words[w] |= more.words[w];
  putBits(planned, bit, cuttableMask(own, rules));
  let any = false;
  for (let i = 0; i < planned.length; i++)
    if (!near[i]) planned[i] = before[i];
    else any ||= planned[i] !== before[i];
  return any;
}

/** What one more run's ink on a pixel costs the print: how far the colour is off, and how light it is for a slit. */
function inkCost(
  { binOf, table, codeCount, weight }: Field,
  code: number,
  inked: number,
  { lightness, most }: SlitWatch,
  i: number,
): number {
  const row = binOf[i] * codeCount;
  return (
    (table[row + inked] - table[row + code]) * Math.max(1, weight?.[i] ?? 1) -
    slitPrice * (Math.max(0, lightness[code] - most[i]) - Math.max(0, lightness[inked] - most[i]))
  );
}

/** The run that hides a pixel best; none where none gains. Through its own bridge no ink comes. */
function bestCover(
  field: Field,
  prints: Uint8Array,
  planned: Uint8Array,
  bits: readonly number[],
  watch: SlitWatch,
  i: number,
): number | undefined {
  let best: number | undefined,
    least = 0;
  for (const bit of bits) {
    if ((planned[i] >> bit) & 1) continue;
    const cost = inkCost(field, prints[i], prints[i] | (1 << bit), watch, i);
    if (cost < least) {
      least = cost;
      best = bit;
    }
  }
  return best;
}

function coverCost(field: Field, prints: Uint8Array, bit: number, watch: SlitWatch, runs: readonly Run[]): number {
  let cost = 0;
  for (const [start, end] of runs)
    for (let i = start; i < end; i++) if (!((prints[i] >> bit) & 1)) cost += inkCost(field, prints[i], prints[i] | (1 << bit), watch, i);
  return cost;
}
