import { diagonalWeight, straightWeight } from './length.ts';

/** Working memory of `leastCut`, made once per raster: about 52 bytes a pixel. */
export interface CutRoom {
  /** What may still flow to each of the eight neighbours: pixel × 8. */
  readonly flow: Float32Array;
  /** What a pixel has to give (above 0) or can take (below 0). */
  readonly excess: Float32Array;
  readonly depth: Int32Array;
  readonly queue: Int32Array;
  readonly path: Int32Array;
  readonly next: Uint8Array;
}

export function cutRoom(pixels: number): CutRoom {
  return {
    flow: new Float32Array(pixels * 8), excess: new Float32Array(pixels), depth: new Int32Array(pixels),
    queue: new Int32Array(pixels), path: new Int32Array(pixels), next: new Uint8Array(pixels),
  };
}

/** Neighbours in pairs, so that direction k leads back by k ^ 1; the first four are straight. */
const stepX = [1, -1, 0, 0, 1, -1, 1, -1], stepY = [0, 0, 1, -1, 1, -1, -1, 1];

/** What is below this is nothing: far below any colour difference. */
const nothing = 1e-5;

/**
 * The one mask with the least sum of `gain` over its pixels plus price × length of its outline: a minimum cut, so there is no
 * better one (Greig, Porteous and Seheult 1989). By blocking flows (Dinic 1970) on the raster itself.
 * @param gain cost of having the pixel in the mask, below 0 where it helps; width × height
 * @param price of a pixel length of outline
 * @param out takes 1 in the mask, 0 elsewhere
 */
export function leastCut(gain: Float32Array, width: number, height: number, price: number, room: CutRoom, out: Uint8Array): void {
  const steps = stepX.map((x, k) => x + stepY[k] * width);
  prepare(gain, width, height, price, room);
  while (layered(width * height, steps, room)) blocked(width * height, steps, room);
  for (let i = 0; i < out.length; i++) out[i] = room.depth[i] >= 0 ? 1 : 0;
}

function prepare(gain: Float32Array, width: number, height: number, price: number, { flow, excess }: CutRoom): void {
  for (let y = 0, i = 0; y < height; y++) for (let x = 0; x < width; x++, i++) {
    excess[i] = -gain[i];
    for (let k = 0; k < 8; k++) {
      const nx = x + stepX[k], ny = y + stepY[k];
      flow[i * 8 + k] = nx < 0 || ny < 0 || nx >= width || ny >= height ? 0 : price * (k < 4 ? straightWeight : diagonalWeight);
    }
  }
}

/** How many steps each pixel is from those that have something to give, -1 out of reach. @returns whether any that can take is within reach */
function layered(pixels: number, steps: readonly number[], { flow, excess, depth, queue }: CutRoom): boolean {
  let tail = 0, reached = false;
  for (let i = 0; i < pixels; i++) {
    depth[i] = -1;
    if (excess[i] > nothing) {
      depth[i] = 0;
      queue[tail++] = i;
    }
  }
  for (let head = 0; head < tail; head++) {
    const i = queue[head];
    if (excess[i] < -nothing) {
      reached = true;
      continue;
    }
    for (let k = 0; k < 8; k++) {
      if (flow[i * 8 + k] <= nothing) continue;
      const j = i + steps[k];
      if (depth[j] >= 0) continue;
      depth[j] = depth[i] + 1;
      queue[tail++] = j;
    }
  }
  return reached;
}

/** Sends along shortest ways until each of them is used up somewhere. */
function blocked(pixels: number, steps: readonly number[], room: CutRoom): void {
  const { flow, excess, depth, path, next } = room;
  next.fill(0);
  for (let from = 0; from < pixels; from++) {
    while (depth[from] === 0 && excess[from] > nothing) {
      const length = wayFrom(from, steps, room);
      if (length === 0) break;
      const last = path[length - 1], to = (last >> 3) + steps[last & 7];
      let sent = Math.min(excess[from], -excess[to]);
      for (let s = 0; s < length; s++) sent = Math.min(sent, flow[path[s]]);
      for (let s = 0; s < length; s++) {
        const edge = path[s], k = edge & 7;
        flow[edge] -= sent;
        flow[((edge >> 3) + steps[k]) * 8 + (k ^ 1)] += sent;
      }
      excess[from] -= sent;
      excess[to] += sent;
    }
  }
}

/** A way from a pixel downhill to one that can take something, as edges in `path`. @returns its length, 0 if there is none left */
function wayFrom(from: number, steps: readonly number[], { flow, excess, depth, path, next }: CutRoom): number {
  let length = 0, at = from;
  for (;;) {
    if (excess[at] < -nothing) return length;
    let moved = false;
    for (; next[at] < 8; next[at]++) {
      const k = next[at], edge = at * 8 + k, to = at + steps[k];
      if (flow[edge] <= nothing || depth[to] !== depth[at] + 1) continue;
      path[length++] = edge;
      at = to;
      moved = true;
      break;
    }
    if (moved) continue;
    if (length === 0) return 0;
    at = path[--length] >> 3;
    next[at]++;
  }
}
