import type { PhotoSpace } from './space.ts';

/** A picture in memory: RGBA, 8 or 16 bits, row by row from the top left. */
export interface Photograph {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array | Uint8ClampedArray | Uint16Array;
  readonly space: PhotoSpace;
}

export type Point = readonly [number, number];
/** Four corners in pixels, in order around. */
export type Quad = readonly [Point, Point, Point, Point];

export interface Sample {
  /** Mean light of each channel, 0..1, without the outer quarter of values. */
  readonly rgb: readonly [number, number, number];
  /** Spread of the values about it, relative. */
  readonly noise: number;
  /** Share of points at the top of the scale in some channel. */
  readonly clipped: number;
  /** Share of points at the bottom in some channel. */
  readonly floored: number;
  readonly centre: Point;
}

const side = 24;
/** Keeps clear of a patch's edge. */
const inset = 0.15;

/** Reads a patch: a grid of points inside the quad, trimmed, so that dust and glare don't count. */
export function sampleQuad(photo: Photograph, quad: Quad): Sample {
  const top = photo.data instanceof Uint16Array ? 65535 : 255;
  const values: [Float64Array, Float64Array, Float64Array] = [
    new Float64Array(side * side),
    new Float64Array(side * side),
    new Float64Array(side * side),
  ];
  let clipped = 0,
    floored = 0;
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      const u = inset + ((1 - 2 * inset) * (i + 0.5)) / side,
        v = inset + ((1 - 2 * inset) * (j + 0.5)) / side;
      const x = mix(mix(quad[0][0], quad[1][0], u), mix(quad[3][0], quad[2][0], u), v);
      const y = mix(mix(quad[0][1], quad[1][1], u), mix(quad[3][1], quad[2][1], u), v);
      const px = Math.max(0, Math.min(photo.width - 1, Math.round(x))),
        py = Math.max(0, Math.min(photo.height - 1, Math.round(y)));
      const at = (py * photo.width + px) * 4;
      let high = false,
        low = false;
      for (let c = 0; c < 3; c++) {
        const raw = photo.data[at + c];
        high ||= raw >= top * 0.996;
        low ||= raw <= top * 0.004;
        values[c][j * side + i] = photo.space.linear(raw / top);
      }
      if (high) clipped++;
      if (low) floored++;
    }
  }
  const n = side * side;
  let noise = 0;
  const rgb = values.map((channel) => {
    channel.sort();
    const kept = channel.subarray(Math.floor(n / 8), Math.ceil((n * 7) / 8));
    const mean = kept.reduce((a, b) => a + b, 0) / kept.length;
    const spread = Math.sqrt(kept.reduce((a, b) => a + (b - mean) ** 2, 0) / kept.length);
    noise = Math.max(noise, mean > 0 ? spread / mean : 0);
    return mean;
  }) as unknown as [number, number, number];
  const centre: Point = [(quad[0][0] + quad[1][0] + quad[2][0] + quad[3][0]) / 4, (quad[0][1] + quad[1][1] + quad[2][1] + quad[3][1]) / 4];
  return { rgb, noise, clipped: clipped / n, floored: floored / n, centre };
}

function mix(a: number, b: number, f: number): number {
  return a + (b - a) * f;
}

/** A rectangle in pixels as a quad. */
export function rectQuad(x: number, y: number, width: number, height: number): Quad {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}
