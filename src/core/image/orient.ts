import type { Pixels } from './types.ts';

interface Oriented {
  readonly width: number;
  readonly height: number;
  readonly pixels: Pixels;
  readonly coverage?: Uint8Array;
}

/** Turns a picture upright. Orientation 1..8 as in Exif (CIPA DC-008, tag 0112). */
export function upright(width: number, height: number, pixels: Pixels, coverage: Uint8Array | undefined, orientation: number): Oriented {
  if (orientation <= 1 || orientation > 8) return { width, height, pixels, coverage };
  const swapped = orientation >= 5;
  const outWidth = swapped ? height : width,
    outHeight = swapped ? width : height;
  // Where the pixel shown at 0, 0 is stored, and how far apart those are that are shown side by side and one below the other.
  const stored = (x: number, y: number): number => {
    const [sx, sy] = sourceOf(orientation, x, y, width, height);
    return sy * width + sx;
  };
  const first = stored(0, 0),
    right = stored(1, 0) - first,
    below = stored(0, 1) - first;
  const moved = <T extends Uint8Array | Uint16Array>(from: T, channels: number): T => {
    const out = (from instanceof Uint16Array ? new Uint16Array(from.length) : new Uint8Array(from.length)) as T;
    for (let y = 0, to = 0; y < outHeight; y++)
      for (let x = 0, at = (first + y * below) * channels; x < outWidth; x++, at += right * channels)
        for (let c = 0; c < channels; c++) out[to++] = from[at + c];
    return out;
  };
  const turned = { ...pixels, data: moved(pixels.data, 3) } as Pixels;
  return { width: outWidth, height: outHeight, pixels: turned, ...(coverage ? { coverage: moved(coverage, 1) } : {}) };
}

/** Which stored pixel is shown at x, y: the stored row 0 is at the top, right, bottom or left, possibly mirrored. */
function sourceOf(orientation: number, x: number, y: number, w: number, h: number): [number, number] {
  switch (orientation) {
    case 2:
      return [w - 1 - x, y];
    case 3:
      return [w - 1 - x, h - 1 - y];
    case 4:
      return [x, h - 1 - y];
    case 5:
      return [y, x];
    case 6:
      return [y, h - 1 - x];
    case 7:
      return [w - 1 - y, h - 1 - x];
    default:
      return [w - 1 - y, x];
  }
}
