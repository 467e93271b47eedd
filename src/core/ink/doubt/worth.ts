import type { Lab } from '../../colour/index.ts';
import type { Foresight } from '../foresight.ts';
import { alike, bits, reach } from '../learn/kriging.ts';
import { modelBand } from '../model-band.ts';
import { stepsAt } from '../film/jitter.ts';
import type { ReadingKind } from '../types.ts';

export interface WorthAsk {
  readonly foresight: Foresight;
  /** Printed area of each overlap, mm². */
  readonly areas: Float64Array;
  /** Overlaps that need no reading: they were read already. */
  readonly read: readonly number[];
  readonly kind: ReadingKind;
  /** How many readings to name. */
  readonly most?: number;
}

export interface WorthReading {
  /** The overlap, by the bits of its layers. */
  readonly row: number;
  /** Mean band of the print, by area, once this one and those before it are read. */
  readonly meanBand: number;
}

export interface ReadingsWorth {
  /** Mean band of all foreseen overlaps now, by area. */
  readonly meanBand: number;
  readonly picks: readonly WorthReading[];
}

/** Overlaps looked at, the largest first; more of them change nothing that can be seen. */
const mostLooked = 40;
const readingSigma = 0.3;

/**
 * The overlaps whose measurement would narrow this print's colours most, one after the other: how much less would be in doubt of
 * all overlaps, by area, given that one is known (conditioning of normal variables; their covariance is that of the foreseen prints
 * and of the model's own errors, docs/optics.md 6).
 */
export function readingsWorth(ask: WorthAsk): ReadingsWorth {
  const { foresight, areas } = ask;
  const rows = Array.from(areas.keys())
    .filter((row) => areas[row] > 0 && bits(row) > 1 && !ask.read.includes(row))
    .sort((a, b) => areas[b] - areas[a] || a - b)
    .slice(0, mostLooked);
  const n = rows.length;
  const whole = rows.reduce((sum, row) => sum + areas[row], 0);
  const meanBand = n === 0 ? 0 : rows.reduce((sum, row) => sum + areas[row] * foresight.band[row], 0) / whole;
  const C = covariance(foresight, rows, ask.kind);
  const before = rows.map((_, u) => trace(C, n, u));
  const picks: WorthReading[] = [];
  const chosen = new Set<number>();
  while (picks.length < Math.min(ask.most ?? 3, n)) {
    let best = -1,
      least = Infinity;
    for (let c = 0; c < n; c++) {
      if (chosen.has(c)) continue;
      const inverse = inverseAt(C, n, c);
      let sum = 0;
      for (let u = 0; u < n; u++) {
        const left = u === c ? 0 : Math.max(0, trace(C, n, u) - explained(C, n, u, c, inverse));
        sum += areas[rows[u]] * foresight.band[rows[u]] * (u === c || chosen.has(u) ? 0 : Math.sqrt(left / before[u]));
      }
      if (sum < least - 1e-9) {
        least = sum;
        best = c;
      }
    }
    if (best < 0) break;
    condition(C, n, best);
    chosen.add(best);
    picks.push({ row: rows[best], meanBand: least / whole });
  }
  return { meanBand, picks };
}

/** 3n × 3n, in steps of ΔE00 along lightness, chroma and hue. */
function covariance(foresight: Foresight, rows: readonly number[], kind: ReadingKind): Float64Array {
  const { samples, overlaps, clouds, lab } = foresight;
  const n = rows.length;
  const m = 3 * n;
  const off = new Float64Array(samples * m);
  const labs = rows.map((row): Lab => [lab[row * 3], lab[row * 3 + 1], lab[row * 3 + 2]]);
  rows.forEach((row, u) => {
    const { sl, sc, sh, ca, cb } = stepsAt(labs[u]);
    const mean = [0, 0, 0];
    for (let s = 0; s < samples; s++) for (let c = 0; c < 3; c++) mean[c] += clouds[(s * overlaps + row) * 3 + c] / samples;
    for (let s = 0; s < samples; s++) {
      const at = (s * overlaps + row) * 3;
      const da = clouds[at + 1] - mean[1],
        db = clouds[at + 2] - mean[2];
      off[s * m + u * 3] = (clouds[at] - mean[0]) / sl;
      off[s * m + u * 3 + 1] = (da * ca + db * cb) / sc;
      off[s * m + u * 3 + 2] = (db * ca - da * cb) / sh;
    }
  });
  const C = new Float64Array(m * m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let s = 0; s < samples; s++) sum += off[s * m + i] * off[s * m + j];
      C[i * m + j] = C[j * m + i] = sum / samples;
    }
  // The samples vary the model's own error overlap by overlap; its kinship is added here.
  const model = modelBand(kind, 2);
  for (let u = 0; u < n; u++)
    for (let v = 0; v < u; v++)
      for (let c = 0; c < 3; c++) {
        const [size, power] = c === 0 ? [model.light, reach.lightness] : [model.colour, reach.colour];
        const shared = size * size * alike(rows[u], labs[u], rows[v], labs[v], power);
        C[(u * 3 + c) * m + v * 3 + c] += shared;
        C[(v * 3 + c) * m + u * 3 + c] += shared;
      }
  return C;
}

function trace(C: Float64Array, n: number, u: number): number {
  const m = 3 * n;
  return C[u * 3 * m + u * 3] + C[(u * 3 + 1) * m + u * 3 + 1] + C[(u * 3 + 2) * m + u * 3 + 2];
}

/** (C at c + the reading's own doubt)⁻¹, 3 × 3. */
function inverseAt(C: Float64Array, n: number, c: number): Float64Array {
  const m = 3 * n;
  const at = (i: number, j: number): number => C[(c * 3 + i) * m + c * 3 + j] + (i === j ? readingSigma ** 2 : 0);
  const out = new Float64Array(9);
  const cofactor = (i: number, j: number): number => {
    const [a, b] = [(i + 1) % 3, (i + 2) % 3],
      [p, q] = [(j + 1) % 3, (j + 2) % 3];
    return at(a, p) * at(b, q) - at(a, q) * at(b, p);
  };
  const determinant = at(0, 0) * cofactor(0, 0) + at(0, 1) * cofactor(0, 1) + at(0, 2) * cofactor(0, 2);
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) out[i * 3 + j] = cofactor(j, i) / determinant;
  return out;
}

/** Trace of C(u, c) inverse C(c, u). */
function explained(C: Float64Array, n: number, u: number, c: number, inverse: Float64Array): number {
  const m = 3 * n;
  let sum = 0;
  for (let k = 0; k < 3; k++)
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) sum += C[(u * 3 + k) * m + c * 3 + i] * inverse[i * 3 + j] * C[(u * 3 + k) * m + c * 3 + j];
  return sum;
}

/** C once c is known, in place. */
function condition(C: Float64Array, n: number, c: number): void {
  const m = 3 * n;
  const inverse = inverseAt(C, n, c);
  const cross = new Float64Array(m * 3);
  for (let i = 0; i < m; i++) for (let k = 0; k < 3; k++) cross[i * 3 + k] = C[i * m + c * 3 + k];
  for (let i = 0; i < m; i++) {
    const w = [0, 1, 2].map((k) => cross[i * 3] * inverse[k] + cross[i * 3 + 1] * inverse[3 + k] + cross[i * 3 + 2] * inverse[6 + k]);
    for (let j = 0; j < m; j++) C[i * m + j] -= w[0] * cross[j * 3] + w[1] * cross[j * 3 + 1] + w[2] * cross[j * 3 + 2];
  }
}
