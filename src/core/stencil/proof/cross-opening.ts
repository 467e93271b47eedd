import type { Region } from '../../form/index.ts';

export interface Crossing {
  readonly fromMm: readonly [number, number];
  readonly toMm: readonly [number, number];
}

const directions = 72;
/** A bridge reaches this far into the paper at each end, so that it is one with it. */
const rootMm = 0.5;
/** A place on the edge or a little outside the opening is taken as meant for it. */
const reachMm = 4;

/**
 * The shortest straight way across an opening through a point. Ways between two different outlines (an island and what is
 * around it) come before ways from an outline to itself, which hold nothing. null when no opening is near.
 */
export function crossOpening(opening: Region, [x, y]: readonly [number, number]): Crossing | null {
  const inside = isInside(opening, x, y) ? ([x, y] as const) : pushInside(opening, x, y);
  if (!inside) return null;
  let best: { way: Crossing; score: number } | null = null;
  for (let k = 0; k < directions; k++) {
    const angle = (Math.PI * k) / directions;
    const ux = Math.cos(angle),
      uy = Math.sin(angle);
    const hit = nearestHits(opening, inside[0], inside[1], ux, uy);
    if (!hit) continue;
    const length = hit.ahead - hit.behind;
    const score = hit.same ? length + 1e6 : length;
    if (best && best.score <= score) continue;
    const from = hit.behind - rootMm,
      to = hit.ahead + rootMm;
    best = {
      way: {
        fromMm: [round(inside[0] + ux * from), round(inside[1] + uy * from)],
        toMm: [round(inside[0] + ux * to), round(inside[1] + uy * to)],
      },
      score,
    };
  }
  return best?.way ?? null;
}

const round = (v: number): number => Math.round(v * 100) / 100;

function isInside(region: Region, x: number, y: number): boolean {
  let odd = false;
  for (const ring of region.rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      if (ring[i + 1] > y !== ring[j + 1] > y && x < ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1]) + ring[i])
        odd = !odd;
    }
  }
  return odd;
}

/** Nearest crossings of the outlines on a line through a point, on either side of it. */
function nearestHits(
  region: Region,
  x: number,
  y: number,
  ux: number,
  uy: number,
): { behind: number; ahead: number; same: boolean } | null {
  let ahead = Infinity,
    behind = -Infinity,
    ringAhead = -1,
    ringBehind = -1;
  region.rings.forEach((ring, r) => {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const ax = ring[j] - x,
        ay = ring[j + 1] - y,
        bx = ring[i] - x,
        by = ring[i + 1] - y;
      const sideA = ux * ay - uy * ax,
        sideB = ux * by - uy * bx;
      if (sideA > 0 === sideB > 0) continue;
      const t = sideA / (sideA - sideB);
      const along = (ax + (bx - ax) * t) * ux + (ay + (by - ay) * t) * uy;
      if (along > 0 && along < ahead) [ahead, ringAhead] = [along, r];
      if (along <= 0 && along > behind) [behind, ringBehind] = [along, r];
    }
  });
  return ringAhead < 0 || ringBehind < 0 ? null : { behind, ahead, same: ringAhead === ringBehind };
}

/** A point just inside the opening next to a place outside it, if one lies within reach. */
function pushInside(region: Region, x: number, y: number): readonly [number, number] | null {
  for (let radius = 0.25; radius <= reachMm; radius += 0.25) {
    for (let k = 0; k < 32; k++) {
      const px = x + radius * Math.cos((k * Math.PI) / 16),
        py = y + radius * Math.sin((k * Math.PI) / 16);
      if (isInside(region, px, py)) return [px, py];
    }
  }
  return null;
}
