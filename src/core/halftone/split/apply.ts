import { quietTask, type Task } from '../../task.ts';
import type { SplitTable } from './table.ts';

/** The number of full light. */
export const topOf = (rgb: Uint8Array | Uint16Array): number => (rgb instanceof Uint8Array ? 255 : 65535);

/**
 * A picture → one plane an ink, what each film covers, 0..255. Flat in memory, the same tetrahedra as `coversAt`, in whole numbers; what is lost
 * in rounding is passed on along the row, so that even the slowest gradient keeps its mean.
 * @param rgb three a pixel: bytes, or 0..65535
 */
export async function applySplit(
  table: SplitTable,
  rgb: Uint8Array | Uint16Array,
  width: number,
  height: number,
  task: Task = quietTask,
): Promise<Uint8Array[]> {
  const { k, side } = table;
  const planes = Array.from({ length: k }, () => new Uint8Array(width * height));
  // Covers as whole numbers, 255 × 256 = solid.
  const covers = Int32Array.from(table.covers, (v) => Math.round(v * 65280));
  const top = topOf(rgb);
  const node = new Uint8Array(top + 1),
    part = new Int32Array(top + 1);
  for (let v = 0; v <= top; v++) {
    const x = (v * (side - 1)) / top;
    node[v] = Math.min(side - 2, Math.floor(x));
    part[v] = Math.round((x - node[v]) * 256);
  }
  const R = side * side * k,
    G = side * k;
  const kept = new Int32Array(k);
  for (let y = 0; y < height; y++) {
    kept.fill(128);
    for (let x = 0, p = y * width, at = p * 3; x < width; x++, p++, at += 3) {
      const r = rgb[at],
        g = rgb[at + 1],
        b = rgb[at + 2];
      const u = part[r],
        v = part[g],
        w = part[b];
      const base = node[r] * R + node[g] * G + node[b] * k;
      let first: number, second: number, f0: number, f1: number, f2: number;
      if (u >= v) {
        if (v >= w) {
          first = R;
          second = R + G;
          f0 = u;
          f1 = v;
          f2 = w;
        } else if (u >= w) {
          first = R;
          second = R + k;
          f0 = u;
          f1 = w;
          f2 = v;
        } else {
          first = k;
          second = R + k;
          f0 = w;
          f1 = u;
          f2 = v;
        }
      } else if (u >= w) {
        first = G;
        second = R + G;
        f0 = v;
        f1 = u;
        f2 = w;
      } else if (v >= w) {
        first = G;
        second = G + k;
        f0 = v;
        f1 = w;
        f2 = u;
      } else {
        first = k;
        second = G + k;
        f0 = w;
        f1 = v;
        f2 = u;
      }
      const m0 = 256 - f0,
        m1 = f0 - f1,
        m2 = f1 - f2;
      for (let c = 0; c < k; c++) {
        const i = base + c;
        const sum = ((covers[i] * m0 + covers[i + first] * m1 + covers[i + second] * m2 + covers[i + R + G + k] * f2) >> 8) + kept[c];
        const value = sum >> 8;
        planes[c][p] = value;
        kept[c] = sum - (value << 8);
      }
    }
    if ((y & 127) === 0) {
      task.report(0.9 + (0.1 * y) / height);
      await task.pause();
    }
  }
  return planes;
}
