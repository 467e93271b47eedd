import { joinRuns } from '../../stencil/index.ts';
import { BitRuns, emptyBits, fillBits, inverted, lastWord, type Bits } from './bits.ts';

/**
 * Every pixel within a disc around one of the mask, centre to centre. Exact: each row is broadened by one pixel a side after the other,
 * and laid over the rows above and below where the disc is so broad. Nothing lies beyond the border.
 */
export function dilated(mask: Bits, radiusPx: number): Bits {
  const { width, height, across, words } = mask;
  const reach = Math.floor(radiusPx),
    out = emptyBits(width, height),
    last = lastWord(width);
  // Half the disc's width at each step up or down.
  const halves = Array.from({ length: reach + 1 }, (_, dy) => Math.floor(Math.sqrt(radiusPx * radiusPx - dy * dy)));
  const row = new Int32Array(across + 2);
  for (let y = 0; y < height; y++) {
    const from = y * across;
    let any = 0;
    for (let w = 0; w < across; w++) any |= row[w + 1] = words[from + w];
    if (any === 0) continue;
    for (let half = 0; half <= reach; half++) {
      if (half > 0) broaden(row, across);
      for (let dy = 0; dy <= reach; dy++) {
        if (halves[dy] !== half) continue;
        if (y >= dy) lay(row, out.words, (y - dy) * across, across, last);
        if (dy > 0 && y + dy < height) lay(row, out.words, (y + dy) * across, across, last);
      }
    }
  }
  return out;
}

/** A row one pixel broader on both sides; its first and last words are empty. */
function broaden(row: Int32Array, across: number): void {
  let before = 0,
    here = row[1];
  for (let w = 1; w <= across; w++) {
    const after = w < across ? row[w + 1] : 0;
    row[w] = here | (here << 1) | (before >>> 31) | (here >>> 1) | (after << 31);
    before = here;
    here = after;
  }
}

function lay(row: Int32Array, onto: Int32Array, at: number, across: number, last: number): void {
  for (let w = 0; w < across; w++) onto[at + w] |= row[w + 1];
  onto[at + across - 1] &= last;
}

export const eroded = (mask: Bits, radiusPx: number): Bits => inverted(dilated(inverted(mask), radiusPx));

/** Ink narrower than twice the radius goes. */
export const opened = (mask: Bits, radiusPx: number): Bits => dilated(eroded(mask, radiusPx), radiusPx);

/** Paper narrower than twice the radius goes. */
export const closed = (mask: Bits, radiusPx: number): Bits => eroded(dilated(mask, radiusPx), radiusPx);

/** Switches every connected part (by edges) of value `of` that has fewer pixels than `least`; paper that touches the border stays. */
export function withoutSpecks(mask: Bits, of: 0 | 1, least: number): Bits {
  const { width, height } = mask;
  const { count, starts, ends, roots } = joinRuns(new BitRuns(mask, of), width, false);
  const pixels = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const atBorder = starts[i] < width || starts[i] >= (height - 1) * width || starts[i] % width === 0 || ends[i] % width === 0;
    pixels[roots[i]] += of === 0 && atBorder ? Infinity : ends[i] - starts[i];
  }
  const out = { ...mask, words: mask.words.slice() };
  for (let i = 0; i < count; i++) if (pixels[roots[i]] < least) fillBits(out, starts[i], ends[i], of ? 0 : 1);
  return out;
}

/** Pixels start..end−1 of one row. */
export type Run = readonly [start: number, end: number];

/** Every part of a mask that hangs together, corners not counted, as runs of its rows. */
export function eachPart(mask: Bits, visit: (runs: readonly Run[]) => void): void {
  const { count, starts, ends, roots } = joinRuns(new BitRuns(mask, 1), mask.width, false);
  const parts = new Map<number, Run[]>();
  for (let i = 0; i < count; i++) {
    const part = parts.get(roots[i]);
    if (part) part.push([starts[i], ends[i]]);
    else parts.set(roots[i], [[starts[i], ends[i]]]);
  }
  for (const runs of parts.values()) visit(runs);
}
