import { pow } from '../../numeric/index.ts';
import { fail } from '../../problem.ts';
import { say } from '../../../words/say.ts';
import type { Place } from '../types.ts';

/** Light to XYZ under D50 (rows X, Y, Z) and the curve of the values, as an ICC matrix profile has them. */
export interface PhotoSpace {
  readonly name: string;
  readonly toXyz: readonly (readonly [number, number, number])[];
  /** Value 0..1 → light 0..1. */
  readonly linear: (value: number) => number;
  /** true when its gamut goes well beyond a screen's usual one. */
  readonly wide: boolean;
}

// IEC 61966-2-1.
const srgbCurve = (v: number): number => (v <= 0.04045 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4));

/** IEC 61966-2-1, adapted to D50 (Bradford), as CSS Color 4 tables it. */
export const srgbSpace: PhotoSpace = {
  name: 'sRGB',
  wide: false,
  linear: srgbCurve,
  toXyz: [
    [0.43607, 0.38515, 0.14308],
    [0.22249, 0.7169, 0.06061],
    [0.01392, 0.09708, 0.7141],
  ],
};

/** The usual wide space of telephones (CSS Color 4 `display-p3`), adapted to D50. */
export const wideSpace: PhotoSpace = {
  name: 'display-p3',
  wide: true,
  linear: srgbCurve,
  toXyz: [
    [0.51512, 0.29198, 0.1571],
    [0.2412, 0.69225, 0.06657],
    [-0.00105, 0.04189, 0.78407],
  ],
};

/**
 * Reads a matrix profile (ISO 15076-1: rXYZ, gXYZ, bXYZ and rTRC) out of a photograph's file.
 * @throws ProblemError when the profile is of another kind or broken
 */
export function spaceFromProfile(bytes: Uint8Array, place: Place): PhotoSpace {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const broken = (): never => fail('profile-not-read', place, say('readings.profileUnusable'), say('readings.saveAsRgb'));
  if (bytes.length < 132) broken();
  const count = view.getUint32(128);
  if (count > 100 || bytes.length < 132 + count * 12) broken();
  const tags = new Map<string, { at: number; size: number }>();
  for (let i = 0; i < count; i++) {
    const at = 132 + i * 12;
    tags.set(String.fromCharCode(...bytes.subarray(at, at + 4)), { at: view.getUint32(at + 4), size: view.getUint32(at + 8) });
  }
  const tag = (name: string, least: number): number => {
    const found = tags.get(name);
    if (!found || found.size < least || found.at + found.size > bytes.length) return broken();
    return found.at;
  };
  const fixed = (at: number): number => view.getInt32(at) / 65536;
  const columns = ['rXYZ', 'gXYZ', 'bXYZ'].map((name) => {
    const at = tag(name, 20);
    return [fixed(at + 8), fixed(at + 12), fixed(at + 16)];
  });
  const toXyz = [0, 1, 2].map((row) => [columns[0][row], columns[1][row], columns[2][row]] as const);
  const trc = tag('rTRC', 12);
  const kind = String.fromCharCode(...bytes.subarray(trc, trc + 4));
  let linear: (v: number) => number;
  if (kind === 'curv') {
    const n = view.getUint32(trc + 8);
    if (n > 65536 || trc + 12 + 2 * n > bytes.length) broken();
    if (n === 0) linear = (v) => v;
    else if (n === 1) {
      const gamma = view.getUint16(trc + 12) / 256;
      linear = (v) => pow(v, gamma);
    } else {
      const table = Float64Array.from({ length: n }, (_, i) => view.getUint16(trc + 12 + 2 * i) / 65535);
      linear = (v) => {
        const x = v * (n - 1),
          i = Math.min(n - 2, Math.floor(x));
        return table[i] + (table[i + 1] - table[i]) * (x - i);
      };
    }
  } else if (kind === 'para') {
    const type = view.getUint16(trc + 8);
    const size = [1, 3, 4, 5, 7][type];
    if (size === undefined || trc + 12 + 4 * size > bytes.length) broken();
    const [g, a = 1, b = 0, c = 0, d = type === 1 || type === 2 ? -b / a : 0, e = 0, f = 0] = Array.from({ length: size }, (_, i) =>
      fixed(trc + 12 + 4 * i),
    );
    linear =
      type === 0
        ? (v) => pow(v, g)
        : type === 1
          ? (v) => (v >= -b / a ? pow(a * v + b, g) : 0)
          : type === 2
            ? (v) => (v >= -b / a ? pow(a * v + b, g) + c : c)
            : type === 3
              ? (v) => (v >= d ? pow(a * v + b, g) : c * v)
              : (v) => (v >= d ? pow(a * v + b, g) + e : c * v + f);
  } else return broken();
  // Area of the triangle of primaries against sRGB's tells whether it is wide.
  return { name: 'profile', toXyz, linear, wide: triangle(toXyz) > 1.15 * triangle(srgbSpace.toXyz) };
}

function triangle(m: readonly (readonly [number, number, number])[]): number {
  const [p, q, r] = [0, 1, 2].map((c) => {
    const sum = m[0][c] + m[1][c] + m[2][c];
    return [m[0][c] / sum, m[1][c] / sum];
  });
  return Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1])) / 2;
}

/** The other way round. */
export function inverse3(m: readonly (readonly [number, number, number])[]): number[][] {
  const minor = (r: number, c: number): number => {
    const [a, b] = [0, 1, 2].filter((i) => i !== r),
      [p, q] = [0, 1, 2].filter((i) => i !== c);
    return m[a][p] * m[b][q] - m[a][q] * m[b][p];
  };
  const det = [0, 1, 2].reduce((sum, c) => sum + (c % 2 ? -1 : 1) * m[0][c] * minor(0, c), 0);
  return [0, 1, 2].map((r) => [0, 1, 2].map((c) => (((r + c) % 2 ? -1 : 1) * minor(c, r)) / det));
}
