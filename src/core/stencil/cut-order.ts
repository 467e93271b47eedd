import { regionBox, ringArea } from '../form/index.ts';
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
  const mayHold = (k: number, i: number): boolean =>
    boxes[k].minX <= boxes[i].minX && boxes[k].minY <= boxes[i].minY && boxes[k].maxX >= boxes[i].maxX && boxes[k].maxY >= boxes[i].maxY;
  return rings.map((ring, i) =>
    rings.flatMap((other, k) => (k !== i && areas[k] > areas[i] && mayHold(k, i) && contains(other, ring[0], ring[1]) ? [k] : [])),
  );
}

function contains(ring: Float64Array, x: number, y: number): boolean {
  let odd = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    if (ring[i + 1] > y !== ring[j + 1] > y && x < ring[i] + ((y - ring[i + 1]) * (ring[j] - ring[i])) / (ring[j + 1] - ring[i + 1]))
      odd = !odd;
  }
  return odd;
}
