import type { Codes } from './codes.ts';

/** What lies along the joint of two layers, besides them. */
export interface SeamGround {
  /** Code of the other layers there: what a gap would lay bare. */
  readonly rest: number;
  /** Whole codes on both sides. */
  readonly first: number;
  readonly second: number;
  /** Of the joint's length. */
  readonly share: number;
}

/** Every so-maniest pixel is looked at: joints are long. */
const everyPx = 2;

/**
 * What shows when two layers that meet fall apart: along their joint, the codes of both sides and of what lies there without
 * them. `overlapMm`: how far the two overlap, so that the far side is looked for beyond it.
 */
export function seamGrounds(codes: Codes, firstBit: number, secondBit: number, overlapMm: number): SeamGround[] {
  const { width, height, mmPerPx, data } = codes;
  const [a, b] = [1 << firstBit, 1 << secondBit];
  const reach = Math.max(1, Math.ceil((overlapMm + 0.6) / mmPerPx));
  const found = new Map<number, { first: number; second: number; count: number }>();
  let all = 0;
  for (let y = reach; y < height - reach; y += everyPx) {
    for (let x = reach; x < width - reach; x += everyPx) {
      const here = data[y * width + x];
      if (!(here & a) || here & b) continue;
      for (const there of [
        data[y * width + x - reach],
        data[y * width + x + reach],
        data[(y - reach) * width + x],
        data[(y + reach) * width + x],
      ]) {
        if (!(there & b) || there & a) continue;
        const rest = here & ~(a | b) & there;
        const known = found.get(rest);
        if (known) known.count++;
        else found.set(rest, { first: here, second: there, count: 1 });
        all++;
        break;
      }
    }
  }
  return [...found].map(([rest, { first, second, count }]) => ({ rest, first, second, share: count / all }));
}
