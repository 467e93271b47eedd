import type { Photo } from '../../core/form/index.ts';
import type { Picture } from '../../core/separate/index.ts';

/** Pixels as bytes; what is see-through is white, like the paper behind it. */
export function photoOf({ width, height, pixels, coverage }: Picture): Photo {
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < data.length; i++) {
    const value =
      pixels.kind === 'srgb8'
        ? pixels.data[i]
        : pixels.kind === 'srgb16'
          ? pixels.data[i] >> 8
          : Math.round(255 * Math.min(1, Math.cbrt(pixels.data[i] / 32768)));
    const cover = coverage ? coverage[(i / 3) | 0] / 255 : 1;
    data[i] = value * cover + 255 * (1 - cover);
  }
  return { width, height, channels: 3, data };
}
