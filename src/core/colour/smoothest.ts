import { exp, log, solveLinear, tanh } from '../numeric/index.ts';
import { figure, say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { BANDS, type Spectrum, type Xyz } from './bands.ts';
import { weights } from './weights.ts';

const W = weights.D50.map((row) => Float64Array.from(row));
const N = BANDS + 3;

/**
 * The smoothest reflectance with this colour under D50: least Σ(z[n+1] − z[n])² with W · (tanh z + 1)/2 = XYZ
 * (Burns, smooth reflectance from tristimulus values: Newton on 36 + 3 unknowns). Always inside 0..most.
 * @param most highest reflectance; above 1 only for papers whose brighteners glow
 * @throws ProblemError `not-a-surface-colour` when no paper or ink can have that colour in this light
 */
export function smoothestSpectrum(xyz: Xyz, most = 1): Spectrum {
  return (
    solveSmoothest([xyz[0] / most, xyz[1] / most, xyz[2] / most])?.map((v) => v * most) ??
    fail(
      'not-a-surface-colour',
      '',
      say('colour.noSurfaceHasIt', { x: figure(xyz[0] * 100, 1), y: figure(xyz[1] * 100, 1), z: figure(xyz[2] * 100, 1) }),
      say('colour.checkLight'),
    )
  );
}

/**
 * As above, but a colour that no surface can have is moved towards the grey of the same lightness until one can.
 * `moved` is the share of the way (0: not at all). For readings that carry doubt, such as photographs.
 */
export function smoothestSpectrumNear(xyz: Xyz): { readonly spectrum: Spectrum; readonly moved: number } {
  const direct = solveSmoothest(xyz);
  if (direct) return { spectrum: direct, moved: 0 };
  const y = Math.min(0.97, Math.max(0.002, xyz[1]));
  const grey: Xyz = [0.96422 * y, y, 0.82521 * y];
  let low = 0,
    high = 1;
  let best = solveSmoothest(grey)!;
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2;
    const tried = solveSmoothest([0, 1, 2].map((k) => xyz[k] + (grey[k] - xyz[k]) * middle) as unknown as Xyz);
    if (tried) {
      best = tried;
      high = middle;
    } else low = middle;
  }
  return { spectrum: best, moved: high };
}

function solveSmoothest(xyz: Xyz): Spectrum | undefined {
  if (!xyz.every((v) => Number.isFinite(v) && v > 0)) return undefined;
  const z = new Float64Array(N);
  if (newton(z, xyz)) return reflectance(z);
  // Far from grey Newton may lose its way: walk there from grey, each step starting where the last one ended.
  const grey = [0.48211, 0.5, 0.412605];
  z.fill(0);
  for (let step = 1; step <= 12; step++) {
    const part = step / 12;
    if (!newton(z, [0, 1, 2].map((k) => exp(log(grey[k]) * (1 - part) + log(xyz[k]) * part)) as unknown as Xyz)) return undefined;
  }
  return reflectance(z);
}

function reflectance(z: Float64Array): Spectrum {
  return Float64Array.from({ length: BANDS }, (_, i) => (tanh(z[i]) + 1) / 2);
}

/** Newton on z (36) and the multipliers (3), in place. false: no solution found. */
function newton(z: Float64Array, xyz: Xyz): boolean {
  const J = new Float64Array(N * N);
  const F = new Float64Array(N);
  for (let round = 0; round < 60; round++) {
    J.fill(0);
    F.fill(0);
    for (let i = 0; i < BANDS; i++) {
      const th = tanh(z[i]);
      const value = (th + 1) / 2,
        slope = (1 - th * th) / 2,
        bend = -(1 - th * th) * th;
      let pull = 0;
      for (let k = 0; k < 3; k++) {
        const w = W[k][i];
        pull += w * z[BANDS + k];
        F[BANDS + k] += w * value;
        J[(BANDS + k) * N + i] = w * slope;
        J[i * N + BANDS + k] = w * slope;
      }
      const left = i > 0 ? 1 : 0,
        right = i < BANDS - 1 ? 1 : 0;
      F[i] = 2 * (left * (z[i] - z[i - left]) + right * (z[i] - z[i + right])) + slope * pull;
      J[i * N + i] = 2 * (left + right) + bend * pull;
      if (left) J[i * N + i - 1] = -2;
      if (right) J[i * N + i + 1] = -2;
    }
    let off = 0;
    for (let k = 0; k < 3; k++) {
      F[BANDS + k] -= xyz[k];
    }
    for (let i = 0; i < N; i++) off = Math.max(off, Math.abs(F[i]));
    if (off < 1e-11) return true;
    if (!solveLinear(J, F)) return false;
    for (let i = 0; i < N; i++) {
      const step = i < BANDS ? Math.max(-2, Math.min(2, F[i])) : F[i];
      z[i] -= step;
      if (!Number.isFinite(z[i]) || (i < BANDS && Math.abs(z[i]) > 12)) return false;
    }
  }
  return false;
}
