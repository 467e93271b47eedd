import { seeded } from '../src/core/random.ts';
import type { Separation } from '../src/core/separate/index.ts';

/** How many prints are pulled, how far layers sit off, how near anything planned excuses a light place, and from how many L* on it is a slit. */
const prints = 24,
  sigmaMm = 0.5,
  nearMm = 1,
  seenFrom = 15;

/** Share of the area, on average over seeded prints, that turns lighter by more than 15 L* than anything planned within 1 mm. */
export function slitShare({ codes, overlapLab, width, height, mmPerPx, layers }: Separation): number {
  const light = Float32Array.from({ length: overlapLab.length / 3 }, (_, code) => overlapLab[3 * code]),
    most = lightestNear(
      Float32Array.from(codes, (code) => light[code]),
      width,
      height,
      Math.round(nearMm / mmPerPx),
    ),
    random = seeded(1),
    normal = (): number =>
      Math.round((Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next()) * sigmaMm) / mmPerPx);
  const bits = layers.map((layer) => layer.bit);
  let count = 0;
  for (let print = 0; print < prints; print++) {
    const off = bits.map((bit) => ({ bit, dx: normal(), dy: normal() }));
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        let code = 0;
        for (const { bit, dx, dy } of off) {
          const u = Math.max(0, Math.min(width - 1, x + dx)),
            v = Math.max(0, Math.min(height - 1, y + dy));
          code |= codes[v * width + u] & (1 << bit);
        }
        if (light[code] > most[y * width + x] + seenFrom) count++;
      }
  }
  return count / (prints * width * height);
}

/** The lightest within a square around each pixel. */
function lightestNear(values: Float32Array, width: number, height: number, reach: number): Float32Array {
  const rows = values.slice(),
    out = values.slice();
  for (let i = 0; i < values.length; i++)
    for (let k = Math.max(-reach, -(i % width)); k <= Math.min(reach, width - 1 - (i % width)); k++)
      rows[i] = Math.max(rows[i], values[i + k]);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) out[i] = Math.max(out[i], rows[v * width + x]);
    }
  return out;
}
