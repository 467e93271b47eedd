import { boxHolds, regionBox, ringArea, ringHolds } from '../form/index.ts';
import type { Region } from '../form/index.ts';

/**
 * The order in which to cut closed paths: what lies inside another first, so that the sheet stays firm and a cut-out is
 * lifted last; among those free to go, the one that begins nearest to where the knife is. Indices into `lines.rings`.
 */
export function cutOrder(lines: Region): number[] {
  const { rings } = lines;
  const inside = ringsAround(lines);
  const waitsFor = new Int32Array(rings.length);
  for (const around of inside) for (const k of around) waitsFor[k]++;
  const order: number[] = [];
  const done = new Uint8Array(rings.length);
  let x = 0,
    y = 0;
  while (order.length < rings.length) {
    let next = -1,
      least = Infinity;
    for (let i = 0; i < rings.length; i++) {
      if (done[i] || waitsFor[i] > 0) continue;
      const d = Math.hypot(rings[i][0] - x, rings[i][1] - y);
      if (d < least) {
        least = d;
        next = i;
      }
    }
    done[next] = 1;
    order.push(next);
    for (const k of inside[next]) waitsFor[k]--;
    x = rings[next][0];
    y = rings[next][1];
  }
  return order;
}

/** For each ring the larger ones that hold it. */
export function ringsAround({ rings }: Region): number[][] {
  const areas = rings.map((ring) => Math.abs(ringArea(ring)));
  const boxes = rings.map((ring) => regionBox({ rings: [ring] }));
  return rings.map((ring, i) =>
    rings.flatMap((other, k) => (areas[k] > areas[i] && boxHolds(boxes[k], boxes[i]) && ringHolds(other, ring[0], ring[1]) ? [k] : [])),
  );
}
