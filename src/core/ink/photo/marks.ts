import type { Photograph, Point } from './sample.ts';

/** A dark square ring as the drawdown sheet has in its corners; the first corner's has a dot inside. */
export interface FoundMark {
  readonly centre: Point;
  readonly sizePx: number;
  readonly dot: boolean;
}

const workingSide = 1400;

/**
 * Finds the square rings in a photograph, turned and in perspective.
 * @param by what is dark: as the eye sees it, or in whichever colour of light is least (rings in a pale or a yellow ink)
 */
export function findMarks(photo: Photograph, by: 'eye' | 'darkest' = 'eye'): FoundMark[] {
  const step = Math.max(1, Math.ceil(Math.max(photo.width, photo.height) / workingSide));
  const w = Math.floor(photo.width / step),
    h = Math.floor(photo.height / step);
  const grey = new Float64Array(w * h);
  const top = photo.data instanceof Uint16Array ? 65535 : 255;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const at = (y * step * photo.width + x * step) * 4;
      const [r, g, b] = [photo.data[at], photo.data[at + 1], photo.data[at + 2]];
      grey[y * w + x] = (by === 'eye' ? (r + 2 * g + b) / 4 : Math.min(r, g, b)) / top;
    }
  }
  const dark = darkerThanAround(grey, w, h);
  const blobs = blobsOf(dark, w, h);
  const marks: FoundMark[] = [];
  for (const ring of blobs) {
    const bw = ring.x1 - ring.x0 + 1,
      bh = ring.y1 - ring.y0 + 1;
    if (bw < 8 || bh < 8 || bw > w / 4 || bh > h / 4 || bw / bh > 1.9 || bh / bw > 1.9) continue;
    const cx = (ring.x0 + ring.x1) / 2,
      cy = (ring.y0 + ring.y1) / 2;
    // The ring's own middle is light: its centre of mass lies in the middle, its area leaves a hole there.
    const share = ring.area / (bw * bh);
    if (share < 0.25 || share > 0.8) continue;
    if (Math.hypot(ring.sx / ring.area - cx, ring.sy / ring.area - cy) > 0.1 * Math.max(bw, bh)) continue;
    const hole = ringHole(dark, ring.label, w, cx, cy, bw, bh);
    if (!hole.closed) continue;
    marks.push({ centre: [(ring.sx / ring.area) * step, (ring.sy / ring.area) * step], sizePx: Math.sqrt(bw * bh) * step, dot: hole.dot });
  }
  return marks;
}

interface Blob {
  label: number;
  area: number;
  sx: number;
  sy: number;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}
interface Dark {
  readonly label: Int32Array;
  readonly mask: Uint8Array;
}

/** Darker than two thirds of the mean of a wide square around (summed-area table). */
function darkerThanAround(grey: Float64Array, w: number, h: number): Dark {
  const sums = new Float64Array((w + 1) * (h + 1));
  for (let y = 0; y < h; y++) {
    let row = 0;
    for (let x = 0; x < w; x++) {
      row += grey[y * w + x];
      sums[(y + 1) * (w + 1) + x + 1] = sums[y * (w + 1) + x + 1] + row;
    }
  }
  const reach = Math.max(12, Math.round(Math.max(w, h) / 16));
  const mask = new Uint8Array(w * h);
  for (let y = 0; y < h; y++) {
    const y0 = Math.max(0, y - reach),
      y1 = Math.min(h, y + reach + 1);
    for (let x = 0; x < w; x++) {
      const x0 = Math.max(0, x - reach),
        x1 = Math.min(w, x + reach + 1);
      const sum = sums[y1 * (w + 1) + x1] - sums[y0 * (w + 1) + x1] - sums[y1 * (w + 1) + x0] + sums[y0 * (w + 1) + x0];
      if (grey[y * w + x] < (0.66 * sum) / ((x1 - x0) * (y1 - y0))) mask[y * w + x] = 1;
    }
  }
  return { mask, label: new Int32Array(w * h) };
}

function blobsOf(dark: Dark, w: number, h: number): Blob[] {
  const { mask, label } = dark;
  const blobs: Blob[] = [];
  const queue: number[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (!mask[start] || label[start]) continue;
    const blob: Blob = { label: blobs.length + 1, area: 0, sx: 0, sy: 0, x0: w, y0: h, x1: 0, y1: 0 };
    queue.push(start);
    label[start] = blob.label;
    while (queue.length > 0) {
      const at = queue.pop()!;
      const x = at % w,
        y = (at - x) / w;
      blob.area++;
      blob.sx += x;
      blob.sy += y;
      blob.x0 = Math.min(blob.x0, x);
      blob.x1 = Math.max(blob.x1, x);
      blob.y0 = Math.min(blob.y0, y);
      blob.y1 = Math.max(blob.y1, y);
      for (const [nx, ny] of [
        [x + 1, y],
        [x - 1, y],
        [x, y + 1],
        [x, y - 1],
      ]) {
        const next = ny * w + nx;
        if (nx >= 0 && ny >= 0 && nx < w && ny < h && mask[next] && !label[next]) {
          label[next] = blob.label;
          queue.push(next);
        }
      }
    }
    blobs.push(blob);
  }
  return blobs;
}

/** From the middle outwards in sixteen directions the ring must be met; dark in the very middle is the dot. */
function ringHole(
  dark: Dark,
  ring: number,
  w: number,
  cx: number,
  cy: number,
  bw: number,
  bh: number,
): { readonly closed: boolean; readonly dot: boolean } {
  let met = 0,
    dots = 0;
  const { label, mask } = dark;
  const size = Math.max(bw, bh);
  for (let d = 0; d < 16; d++) {
    const dx = Math.cos((d * Math.PI) / 8),
      dy = Math.sin((d * Math.PI) / 8);
    let light = false,
      hit = false;
    for (let t = 0; t < size; t += 0.5) {
      const x = Math.round(cx + dx * t),
        y = Math.round(cy + dy * t);
      if (x < cx - bw / 2 - 1 || x > cx + bw / 2 + 1 || y < cy - bh / 2 - 1 || y > cy + bh / 2 + 1) break;
      const at = y * w + x;
      if (label[at] === ring) {
        hit = light;
        break;
      }
      if (!mask[at]) light = true;
      else if (t < size * 0.12 && mask[at]) dots++;
    }
    if (hit) met++;
  }
  return { closed: met >= 15, dot: dots > 8 };
}
