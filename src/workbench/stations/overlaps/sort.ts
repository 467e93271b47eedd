import type { PlannedOverlap } from '../../../core/plan/index.ts';

export type SortBy = 'films' | 'area' | 'lightness' | 'hue';
export const sortings: readonly SortBy[] = ['films', 'area', 'lightness', 'hue'];

/** Below this chroma a colour has no hue to speak of; greys stand together before the hues. */
const leastChroma = 4;

function hue({ lab: [, a, b] }: PlannedOverlap): number {
  return Math.hypot(a, b) < leastChroma ? -1 : ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
}

const orders: Readonly<Record<SortBy, (x: PlannedOverlap, y: PlannedOverlap) => number>> = {
  films: (x, y) => x.layers.length - y.layers.length || y.areaMm2 - x.areaMm2,
  area: (x, y) => y.areaMm2 - x.areaMm2,
  lightness: (x, y) => y.lab[0] - x.lab[0],
  hue: (x, y) => hue(x) - hue(y) || y.lab[0] - x.lab[0],
};

/** Overlaps that cover area, sorted; those that tie stand by code, so the chart never jumps. */
export function sortOverlaps(overlaps: readonly PlannedOverlap[], by: SortBy): PlannedOverlap[] {
  return overlaps.filter((o) => o.areaMm2 > 0).sort((x, y) => orders[by](x, y) || x.code - y.code);
}
