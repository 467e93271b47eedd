import { emptyBits, fillBits, type Bits } from '../kernels/bits.ts';
import { dilated, eachPart, type Run } from '../kernels/morph.ts';
import type { Field } from '../kernels/relax.ts';

/** Shorter than so many times its least width a line is a dot, and lost in cutting. */
const leastLength = 2;

/**
 * Lines of one layer that are too thin for the knife, made as broad as it can cut wherever the print is better with them than without:
 * an eyebrow, a rim, a highlight.
 * @param mask as it was wanted
 * @param cut what of it can be cut; lines are put into it
 * @param ink 1: lines of ink; 0: of paper
 * @param widthPx the narrowest line of its kind
 * @returns whether any was put in
 */
export function widenLines(field: Field, codes: Uint8Array, layer: number, mask: Bits, cut: Bits, ink: 0 | 1, widthPx: number): boolean {
  const { width, height, words } = mask;
  const thin = emptyBits(width, height);
  for (let w = 0; w < words.length; w++) thin.words[w] = ink ? words[w] & ~cut.words[w] : cut.words[w] & ~words[w];
  const lines = emptyBits(width, height);
  const least = leastLength * widthPx;
  eachPart(thin, (runs) => {
    const pixels = runs.reduce((sum, [start, end]) => sum + end - start, 0);
    if (pixels >= least) for (const [start, end] of runs) fillBits(lines, start, end, 1);
  });
  let any = false;
  // A line of one pixel comes out just broad enough, a broader one a little broader.
  eachPart(dilated(lines, (widthPx - 1) / 2), (runs) => {
    if (gainOf(field, codes, layer, cut, ink, runs) <= 0) return;
    for (const [start, end] of runs) fillBits(cut, start, end, ink);
    any = true;
  });
  return any;
}

/** How much better the print is with a part than as it is cut, its outline paid for. */
function gainOf(
  { table, codeCount, binOf, weight, price }: Field,
  codes: Uint8Array,
  layer: number,
  cut: Bits,
  ink: 0 | 1,
  runs: readonly Run[],
): number {
  const { width, across, words } = cut,
    bit = 1 << layer;
  let gain = 0,
    ends = 0;
  for (const [start, end] of runs) {
    const from = start - (start % width);
    for (let i = start; i < end; i++) {
      const x = i - from,
        is = (words[(from / width) * across + (x >> 5)] >>> (x & 31)) & 1;
      if (is === ink) continue;
      const row = binOf[i] * codeCount,
        inked = table[row + (codes[i] | bit)],
        bare = table[row + (codes[i] & ~bit)];
      gain += (ink ? bare - inked : inked - bare) * (weight ? weight[i] : 1);
      // A part's outline is about as long as its rows have ends, or as its widest row is twice: a line has the one or the other.
      if (i === start || i === end - 1) ends++;
    }
  }
  const widest = runs.reduce((most, [start, end]) => Math.max(most, end - start), 0);
  return gain - Math.max(ends, 2 * widest) * price[layer];
}
