/**
 * A shape on the sheet. Millimetres, y downwards, origin at the top left corner of the image area.
 * Rings are closed (last point not repeated), never cross themselves or one another, outer rings and holes
 * wind opposite ways; so even-odd and non-zero filling give the same shape. x0, y0, x1, y1, …
 * Curves are flattened to within 0.02 mm on reading; smooth outlines are fitted again when a file is written.
 */
export interface Region {
  readonly rings: readonly Float64Array[];
}

export const emptyRegion: Region = { rings: [] };

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function rectangle(x: number, y: number, width: number, height: number): Region {
  return { rings: [Float64Array.of(x, y, x + width, y, x + width, y + height, x, y + height)] };
}

/** Signed area of one ring in mm² (shoelace); positive when it winds clockwise on screen (y down). */
export function ringArea(ring: Float64Array): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    twice += ring[j] * ring[i + 1] - ring[i] * ring[j + 1];
  }
  return twice / 2;
}

/** Area in mm²; holes count as taken away. */
export function regionArea(region: Region): number {
  let sum = 0;
  for (const ring of region.rings) sum += ringArea(ring);
  return Math.abs(sum);
}

export function regionBox(region: Region): Box {
  let minX = Infinity,
    minY = Infinity,
    maxX = -Infinity,
    maxY = -Infinity;
  for (const ring of region.rings) {
    for (let i = 0; i < ring.length; i += 2) {
      minX = Math.min(minX, ring[i]);
      maxX = Math.max(maxX, ring[i]);
      minY = Math.min(minY, ring[i + 1]);
      maxY = Math.max(maxY, ring[i + 1]);
    }
  }
  return { minX, minY, maxX, maxY };
}

/** Length of all outlines in mm. */
export function regionPerimeter(region: Region): number {
  let sum = 0;
  for (const ring of region.rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      sum += Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1]);
    }
  }
  return sum;
}

/** Whether a box lies in another, edges included. */
export function boxHolds(outer: Box, inner: Box): boolean {
  return outer.minX <= inner.minX && outer.minY <= inner.minY && outer.maxX >= inner.maxX && outer.maxY >= inner.maxY;
}

/** Whether a point lies in a closed ring, whichever way it winds (a ray to the left crosses it an odd number of times). */
export function ringHolds(ring: Float64Array, x: number, y: number): boolean {
  let odd = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    if (ring[i + 1] > y !== ring[j + 1] > y && x < ring[i] + ((y - ring[i + 1]) * (ring[j] - ring[i])) / (ring[j + 1] - ring[i + 1]))
      odd = !odd;
  }
  return odd;
}
