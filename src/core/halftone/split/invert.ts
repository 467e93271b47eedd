import type { Lab } from '../../colour/index.ts';
import { exp, solveLinear } from '../../numeric/index.ts';
import type { ToneForesight, ToneModel } from '../model/tone-model.ts';

/** What colours out of the inks' reach keep. */
export type ToneReach = 'nearest' | 'lightness' | 'chroma' | 'contrast';

export interface InvertAsk {
  readonly model: ToneModel;
  readonly foresight: ToneForesight;
  /** Most that all inks may cover together, in whole layers: 2.4 is 240 %. */
  readonly limit: number;
  /** The ink that takes greys over from the others, by its place; null: none. */
  readonly grey: number | null;
  /** How much of the grey it takes, 0..1. */
  readonly greyShare: number;
  readonly reach: ToneReach;
}

export interface Inverted {
  readonly covers: Float64Array;
  /** How far it stays off, as steps of Lab weighed by what reach keeps. */
  readonly off: number;
}

/** @param enough where it begins no farther off than this, it stays; left out: it always settles */
export type Invert = (target: Lab, from: ArrayLike<number>, rounds: number, enough?: number) => Inverted;

/** Lightness, chroma, hue: what a step of each counts. Chroma is seen less well than lightness (as in ΔE00's own weights). */
const weights: Record<ToneReach, readonly [number, number, number]> = {
  nearest: [1, 0.6, 0.9],
  contrast: [1, 0.6, 0.9],
  lightness: [3, 0.35, 0.9],
  chroma: [0.5, 0.9, 0.9],
};

/** Steps of Lab that a wish for the grey ink may cost: enough to choose among mixtures of one colour, too little to move it. */
const wish = 0.6,
  sparing = 0.15,
  overLimit = 250;
const step = 1 / 512;
/** A round that gains less than this (ΔE squared) was the last. */
const settled = 1e-4;

/**
 * Lab → what each film covers: Gauss–Newton within 0..1, damped (Levenberg 1944), on colour, ink limit and the wish for the grey ink together.
 * Where several mixtures make one colour, the wish decides, smoothly.
 */
export function inverter({ model, foresight, limit, grey, greyShare, reach }: InvertAsk): Invert {
  const { k } = model;
  const paper = foresight.lab(new Float64Array(k));
  const darkest = foresight.lab(Float64Array.from({ length: k }, () => Math.min(1, limit / k)))[0];
  const [wl, wc, wh] = weights[reach];
  const rows = 3 + 1 + k;
  const residual = new Float64Array(rows),
    moved = new Float64Array(rows),
    J = new Float64Array(rows * k);
  const A = new Float64Array(k * k),
    g = new Float64Array(k);
  return (target, from, rounds, enough = 0) => {
    const [tl, ta, tb] = target;
    const chroma = Math.hypot(ta, tb);
    // Along and across the target's hue; greys have none.
    const [ca, cb] = chroma > 1 ? [ta / chroma, tb / chroma] : [1, 0];
    const sure = chroma / (chroma + 10);
    const [along, across] = [wc * sure + wh * (1 - sure), wh];
    const dark = Math.min(1, Math.max(0, (paper[0] - tl) / Math.max(1, paper[0] - darkest)));
    const greyWish = greyShare * dark ** 1.5 * exp(-((chroma / 45) ** 2));
    const look = (c: ArrayLike<number>, out: Float64Array): number => {
      const [l, a, b] = foresight.lab(c);
      const [dl, da, db] = [l - tl, a - ta, b - tb];
      out[0] = wl * dl;
      out[1] = along * (da * ca + db * cb);
      out[2] = across * (-da * cb + db * ca);
      let sum = 0;
      for (let i = 0; i < k; i++) sum += c[i];
      out[3] = Math.max(0, sum - limit) * overLimit;
      for (let i = 0; i < k; i++) out[4 + i] = i === grey ? wish * (c[i] - greyWish) : sparing * c[i];
      let cost = 0;
      for (let r = 0; r < rows; r++) cost += out[r] * out[r];
      return cost;
    };
    let c = Float64Array.from({ length: k }, (_, i) => Math.min(1, Math.max(0, from[i])));
    let cost = look(c, residual);
    const colour = (): number => Math.hypot(residual[0], residual[1], residual[2]);
    // What lies between solved neighbours and is met by their mean stays that mean.
    if (enough > 0 && colour() < enough) return { covers: c, off: colour() };
    // A start between solved neighbours is nearly there: it moves only by what could be seen.
    const least = Math.max(settled, (enough * enough) / 2);
    let damp = 0.5;
    const next = new Float64Array(k);
    for (let round = 0; round < rounds; round++) {
      for (let i = 0; i < k; i++) {
        const was = c[i];
        const h = was > 0.5 ? -step : step;
        c[i] = was + h;
        look(c, moved);
        c[i] = was;
        for (let r = 0; r < rows; r++) J[r * k + i] = (moved[r] - residual[r]) / h;
      }
      let took = false;
      for (let tries = 0; tries < 5 && !took; tries++) {
        g.fill(0);
        A.fill(0);
        for (let r = 0; r < rows; r++)
          for (let i = 0; i < k; i++) {
            g[i] -= J[r * k + i] * residual[r];
            for (let j = 0; j < k; j++) A[i * k + j] += J[r * k + i] * J[r * k + j];
          }
        for (let i = 0; i < k; i++) {
          // What would leave 0..1 stays at its end.
          if ((c[i] <= 0 && g[i] < 0) || (c[i] >= 1 && g[i] > 0)) {
            for (let j = 0; j < k; j++) A[i * k + j] = A[j * k + i] = 0;
            A[i * k + i] = 1;
            g[i] = 0;
          } else A[i * k + i] += damp;
        }
        if (!solveLinear(A, g)) break;
        for (let i = 0; i < k; i++) next[i] = Math.min(1, Math.max(0, c[i] + g[i]));
        const now = look(next, moved);
        if (now < cost) {
          const gained = cost - now;
          c = Float64Array.from(next);
          residual.set(moved);
          cost = now;
          damp = Math.max(1e-3, damp / 4);
          took = true;
          if (gained < least) return { covers: c, off: colour() };
        } else damp *= 6;
      }
      if (!took) break;
    }
    return { covers: c, off: colour() };
  };
}
