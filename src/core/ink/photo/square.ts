import { pow } from '../../numeric/index.ts';
import type { Xyz } from '../../colour/index.ts';
import { inverse3 } from '../../numeric/index.ts';
import { srgbSpace } from './space.ts';
import type { PhotoRead } from './read.ts';
import type { Photograph } from './sample.ts';

/** sRGB, three bytes a pixel, row by row. */
export interface Squared {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array<ArrayBuffer>;
}

/** IEC 61966-2-1, light → byte, in steps fine enough for the darkest bytes. */
const steps = 8192;
const bytes = Uint8Array.from({ length: steps + 1 }, (_, i) => {
  const v = i / steps;
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * pow(v, 1 / 2.4) - 0.055));
});
const toScreen = inverse3(srgbSpace.toXyz);
/** Pixels along a side of what is taken as lit alike. */
const block = 8;

/**
 * A flat thing in a photograph as it looks from straight above, for the screen.
 * @param onPhoto mm on the thing, from its top left corner → pixels of the photograph, as the lens shows them
 * @param read its colours, where they were read: light evened out, paper as paper is
 */
export function squareUp(
  photo: Photograph,
  onPhoto: (xMm: number, yMm: number) => readonly [number, number],
  size: { readonly widthMm: number; readonly heightMm: number },
  longPx: number,
  read: Pick<PhotoRead, 'xyzAt'> | null,
): Squared {
  const scale = longPx / Math.max(size.widthMm, size.heightMm);
  const width = Math.max(1, Math.round(size.widthMm * scale)),
    height = Math.max(1, Math.round(size.heightMm * scale));
  const light = lightOf(photo);
  const own = (rgb: readonly number[]): Xyz =>
    photo.space.toXyz.map((row) => row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]) as unknown as Xyz;
  const xyzOf: PhotoRead['xyzAt'] = read ? read.xyzAt : own;
  const across = onPhoto(size.widthMm, size.heightMm / 2),
    from = onPhoto(0, size.heightMm / 2);
  // Every pixel is the mean of so many by so many places, so that a large photograph doesn't come out gritty.
  const fine = Math.max(2, Math.min(4, Math.round(Math.hypot(across[0] - from[0], across[1] - from[1]) / width)));
  const rgb = new Uint8Array(width * height * 3);
  const atMm = (x: number, y: number): readonly [number, number] => onPhoto((x / width) * size.widthMm, (y / height) * size.heightMm);
  const colour = new Float64Array(9);
  const sum = new Float64Array(3);
  for (let top = 0; top < height; top += block)
    for (let left = 0; left < width; left += block) {
      // Light changes slowly over the sheet, and colour is light times a matrix: one matrix for each small block.
      const centre = atMm(left + block / 2, top + block / 2);
      for (let from = 0; from < 3; from++) {
        const xyz = xyzOf(
          [0, 1, 2].map((c) => (c === from ? 1 : 0)),
          centre,
        );
        for (let c = 0; c < 3; c++) colour[c * 3 + from] = toScreen[c][0] * xyz[0] + toScreen[c][1] * xyz[1] + toScreen[c][2] * xyz[2];
      }
      for (let y = top; y < Math.min(height, top + block); y++)
        for (let x = left; x < Math.min(width, left + block); x++) {
          sum.fill(0);
          for (let k = 0; k < fine * fine; k++) {
            const [px, py] = atMm(x + ((k % fine) + 0.5) / fine, y + (Math.floor(k / fine) + 0.5) / fine);
            const u = Math.max(0, Math.min(photo.width - 1, Math.floor(px))),
              v = Math.max(0, Math.min(photo.height - 1, Math.floor(py)));
            for (let c = 0; c < 3; c++) sum[c] += light(photo.data[(v * photo.width + u) * 4 + c]);
          }
          for (let c = 0; c < 3; c++) {
            const value = (colour[c * 3] * sum[0] + colour[c * 3 + 1] * sum[1] + colour[c * 3 + 2] * sum[2]) / (fine * fine);
            rgb[(y * width + x) * 3 + c] = bytes[Math.round(steps * Math.min(1, Math.max(0, value)))];
          }
        }
    }
  return { width, height, rgb };
}

/** Stored value → light; worked out once for each value there can be. */
function lightOf(photo: Photograph): (stored: number) => number {
  const shift = photo.data instanceof Uint16Array ? 4 : 0;
  const top = (photo.data instanceof Uint16Array ? 65535 : 255) >> shift;
  const table = Float64Array.from({ length: top + 1 }, (_, i) => photo.space.linear(i / top));
  return (stored) => table[stored >> shift];
}
