/** [a b c d e f]: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

export const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function chain(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** Undefined where the matrix flattens everything. */
export function inverse([a, b, c, d, e, f]: Matrix): Matrix | undefined {
  const det = a * d - b * c;
  if (!(Math.abs(det) > 1e-300)) return undefined;
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
}

/** The square root of how much areas grow. */
export const scaleOf = (m: Matrix): number => Math.sqrt(Math.abs(m[0] * m[3] - m[1] * m[2]));

export function readMatrix(text: string | undefined): Matrix {
  if (!text) return identity;
  const found = /matrix\(([^)]*)\)/.exec(text);
  const values = found
    ? found[1]
        .trim()
        .split(/[\s,]+/)
        .map(Number)
    : [];
  return values.length === 6 && values.every(Number.isFinite)
    ? [values[0], values[1], values[2], values[3], values[4], values[5]]
    : identity;
}

/** Numbers of the normaliser have 24 bits. */
const numberStep = 2 ** -24;

/**
 * How far off, in user units, the points of a path may be because its coordinates are huge, and how large it is itself.
 * Undefined where nothing is off worth a word.
 */
export function coarseness(data: string): { readonly off: number; readonly extent: number } | undefined {
  if (!/\d{5}|e/i.test(data)) return undefined;
  let most = 0;
  const low = [Infinity, Infinity],
    high = [-Infinity, -Infinity];
  (data.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? []).forEach((word, i) => {
    const v = Number(word),
      axis = i % 2;
    most = Math.max(most, Math.abs(v));
    low[axis] = Math.min(low[axis], v);
    high[axis] = Math.max(high[axis], v);
  });
  return { off: most * numberStep, extent: Math.max(high[0] - low[0], high[1] - low[1]) };
}

/** One stretch of a path, flattened: x0, y0, … */
export interface SubPath {
  readonly points: number[];
  readonly closed: boolean;
}

/** Curves may leave their true course by this much on the working scale (mm). */
export const flatnessMm = 0.02;

const mostStepsPerCurve = 400;

/** Absolute M, L, C, Q, Z only (what the normaliser writes), moved by `matrix` and flattened to within `tolerance`. */
export function flattenPath(data: string, matrix: Matrix, tolerance: number): SubPath[] {
  const tokens = data.match(/[MLCQZ]|[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? [];
  const [a, b, c, d, e, f] = matrix;
  const out: SubPath[] = [];
  let points: number[] = [];
  let at = 0;
  let x = 0,
    y = 0,
    startX = 0,
    startY = 0;
  const number = (): number => Number(tokens[at++]);
  let px = 0,
    py = 0;
  const read = (): void => {
    px = number();
    py = number();
  };
  const put = (ux: number, uy: number): void => {
    points.push(a * ux + c * uy + e, b * ux + d * uy + f);
  };
  const finish = (closed: boolean): void => {
    if (points.length >= 4) out.push({ points, closed });
    points = [];
  };
  while (at < tokens.length) {
    const command = tokens[at++];
    if (command === 'Z') {
      finish(true);
      x = startX;
      y = startY;
      continue;
    }
    if (command === 'M') {
      finish(false);
      read();
      x = startX = px;
      y = startY = py;
      put(x, y);
      continue;
    }
    if (command !== 'L' && command !== 'C' && command !== 'Q') continue;
    if (!points.length) put(x, y);
    if (command === 'L') {
      read();
      x = px;
      y = py;
      put(x, y);
      continue;
    }
    read();
    let x1 = px,
      y1 = py;
    read();
    let x2 = px,
      y2 = py;
    let x3 = px,
      y3 = py;
    if (command === 'C') {
      read();
      x3 = px;
      y3 = py;
    } else {
      // A quadratic curve as a cubic one.
      x2 = x3 + (2 / 3) * (x1 - x3);
      y2 = y3 + (2 / 3) * (y1 - y3);
      x1 = x + (2 / 3) * (x1 - x);
      y1 = y + (2 / 3) * (y1 - y);
    }
    // Steps from the second differences: the chord leaves the curve by at most |second derivative| / (8 n²).
    const ux = Math.max(Math.abs(x - 2 * x1 + x2), Math.abs(x1 - 2 * x2 + x3));
    const uy = Math.max(Math.abs(y - 2 * y1 + y2), Math.abs(y1 - 2 * y2 + y3));
    const bend = 6 * Math.hypot(a * ux, b * ux, c * uy, d * uy);
    const steps = Math.min(mostStepsPerCurve, Math.max(1, Math.ceil(Math.sqrt(bend / (8 * tolerance)))));
    for (let i = 1; i <= steps; i++) {
      const t = i / steps,
        s = 1 - t;
      const w0 = s * s * s,
        w1 = 3 * s * s * t,
        w2 = 3 * s * t * t,
        w3 = t * t * t;
      put(w0 * x + w1 * x1 + w2 * x2 + w3 * x3, w0 * y + w1 * y1 + w2 * y2 + w3 * y3);
    }
    x = x3;
    y = y3;
  }
  finish(false);
  return out;
}
