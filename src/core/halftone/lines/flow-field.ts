import { exp } from '../../numeric/index.ts';

/** A tone on a grid, row by row. */
export interface ToneGrid {
  readonly data: Float32Array;
  readonly width: number;
  readonly height: number;
}

/** Which way lines run at a place of the image, as a unit vector without a sign. */
export type Direction = (xMm: number, yMm: number) => readonly [number, number];

/** Of what is seen in the wide surround, and of the direction that was asked for: both count only where nothing else speaks. */
const wideShare = 0.12,
  askedShare = 2e-5;

/**
 * Along the picture's edges: the direction across which its tone changes least, from the structure tensor (Förstner and Gülch 1987), smoothed over
 * a little more than a line's distance; flat places follow what lies around, and in the end the angle asked for.
 */
export function directionField(tone: ToneGrid, pxPerMm: number, pitchMm: number, angleDeg: number): Direction {
  const { data, width, height } = tone;
  const n = width * height;
  const [xx, xy, yy] = [new Float32Array(n), new Float32Array(n), new Float32Array(n)];
  const at = (x: number, y: number): number => data[Math.min(height - 1, Math.max(0, y)) * width + Math.min(width - 1, Math.max(0, x))];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const gx = at(x + 1, y) - at(x - 1, y),
        gy = at(x, y + 1) - at(x, y - 1);
      const i = y * width + x;
      xx[i] = gx * gx;
      xy[i] = gx * gy;
      yy[i] = gy * gy;
    }
  const near = [xx, xy, yy].map((plane) => blurred(plane, width, height, 1.2 * pitchMm * pxPerMm));
  const wide = [xx, xy, yy].map((plane) => blurred(plane, width, height, 5 * pitchMm * pxPerMm));
  const turn = (angleDeg * Math.PI) / 180;
  // The tensor of a gradient across the lines asked for.
  const asked = [Math.sin(turn) ** 2, -Math.sin(turn) * Math.cos(turn), Math.cos(turn) ** 2];
  const J = near.map((plane, c) => plane.map((v, i) => v + wideShare * wide[c][i] + askedShare * asked[c]));
  const between = (plane: Float32Array, x: number, y: number): number => {
    const u = Math.min(width - 1.001, Math.max(0, x * pxPerMm - 0.5)),
      v = Math.min(height - 1.001, Math.max(0, y * pxPerMm - 0.5));
    const i = Math.floor(u),
      k = Math.floor(v);
    const [f, g] = [u - i, v - k];
    const a = k * width + i,
      b = height > 1 ? a + width : a;
    return (plane[a] * (1 - f) + plane[a + 1] * f) * (1 - g) + (plane[b] * (1 - f) + plane[b + 1] * f) * g;
  };
  return (x, y) => {
    const [a, b, c] = J.map((plane) => between(plane, x, y));
    // The eigenvector of the smaller eigenvalue: along the edge.
    const along = 0.5 * Math.atan2(2 * b, a - c) + Math.PI / 2;
    return [Math.cos(along), Math.sin(along)];
  };
}

/** Gaussian in both directions, edges carried on. */
export function blurred(plane: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.ceil(2.5 * sigma);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
  const whole = kernel.reduce((a, b) => a + b, 0);
  const pass = (from: Float32Array, n: number, lines: number, step: number, line: number): Float32Array => {
    const out = new Float32Array(from.length);
    for (let l = 0; l < lines; l++)
      for (let i = 0; i < n; i++) {
        let sum = 0;
        for (let k = -reach; k <= reach; k++) sum += kernel[k + reach] * from[l * line + Math.min(n - 1, Math.max(0, i + k)) * step];
        out[l * line + i * step] = sum / whole;
      }
    return out;
  };
  return pass(pass(plane, width, height, 1, width), height, width, width, 1);
}
