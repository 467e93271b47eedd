import { pow } from '../numeric/index.ts';
import { inverse3, srgbSpace, wideSpace, type Photograph } from '../ink/index.ts';
import type { Picture } from '../separate/index.ts';

// XYZ under D50 → the wide space's light: the inverse of `wideSpace.toXyz`.
const toWide = inverse3(wideSpace.toXyz);

/** A picture as a photograph that colours are read from; what came through a colour profile is held in the wide space. */
export function photographOf(picture: Picture): Photograph {
  const { width, height, pixels } = picture;
  const n = width * height;
  if (pixels.kind !== 'xyz16') {
    const top = pixels.kind === 'srgb8' ? 255 : 65535;
    const data = pixels.kind === 'srgb8' ? new Uint8Array(n * 4) : new Uint16Array(n * 4);
    for (let i = 0; i < n; i++) {
      for (let c = 0; c < 3; c++) data[i * 4 + c] = pixels.data[i * 3 + c];
      data[i * 4 + 3] = top;
    }
    return { width, height, data, space: srgbSpace };
  }
  const data = new Uint16Array(n * 4);
  for (let i = 0; i < n; i++) {
    const x = pixels.data[i * 3] / 32768,
      y = pixels.data[i * 3 + 1] / 32768,
      z = pixels.data[i * 3 + 2] / 32768;
    for (let c = 0; c < 3; c++) data[i * 4 + c] = Math.round(65535 * encoded(toWide[c][0] * x + toWide[c][1] * y + toWide[c][2] * z));
    data[i * 4 + 3] = 65535;
  }
  return { width, height, data, space: wideSpace };
}

/** IEC 61966-2-1, the other way round. */
function encoded(light: number): number {
  const v = Math.min(1, Math.max(0, light));
  return v <= 0.0031308 ? 12.92 * v : 1.055 * pow(v, 1 / 2.4) - 0.055;
}
