import { BANDS, deltaE00, type Lab } from '../../colour/index.ts';
import { effectiveShare } from '../film/film.ts';
import type { Ink } from '../types.ts';
import type { Colourist } from './colourist.ts';
import type { PotAsk } from './types.ts';

export interface Search extends PotAsk {
  readonly pot: Ink;
  readonly potMl: number;
  readonly works: number;
  readonly colour: Colourist;
  readonly nowOff: number;
}

export interface Addition {
  readonly pots: readonly number[];
  readonly ml: readonly number[];
  readonly deltaE: number;
  readonly lab: Lab;
}

/** No correction is looked for that makes the pot more than this many times larger. */
const mostGrowth = 6;

/**
 * Tries one addition, then two, then three: for each choice and each proportion between them, the smallest amount
 * that reaches the wanted ΔE00. Fewer kinds win unless more kinds save a third of the amount.
 */
export function leastAddition(search: Search): Addition {
  const n = search.shelf.length;
  const most = Math.min(3, search.mostAdditions ?? 3, n);
  let best: Addition | undefined,
    nearest: Addition = { pots: [], ml: [], deltaE: search.nowOff, lab: search.colour(search.pot.k, search.pot.s) };
  const amount = (a: Addition): number => a.ml.reduce((x, y) => x + y, 0);
  for (let count = 1; count <= most; count++) {
    if (count === 3 && best) break;
    for (const pots of choose(n, count)) {
      for (const direction of directions(count)) {
        const found = along(search, pots, direction, best ? amount(best) * (count > best.pots.length ? 0.67 : 1) : Infinity);
        if (found.deltaE < nearest.deltaE) nearest = found;
        if (found.deltaE <= search.within && (!best || amount(found) < amount(best) * (count > best.pots.length ? 0.67 : 1))) best = found;
      }
    }
  }
  return best ?? nearest;
}

function* choose(n: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= n - count; i++) for (const rest of choose(n, count - 1, i + 1)) yield [i, ...rest];
}

const ratios = [0.01, 0.04, 0.1, 0.2, 0.4, 0.6, 0.8, 0.9, 0.96, 0.99];

function directions(count: number): readonly (readonly number[])[] {
  if (count === 1) return [[1]];
  if (count === 2) return ratios.map((r) => [r, 1 - r]);
  const coarse = [0.03, 0.15, 0.4, 0.7, 0.94];
  return coarse.flatMap((a) => coarse.map((b) => [a, (1 - a) * b, (1 - a) * (1 - b)]));
}

/** The smallest amount in one proportion that reaches the wanted ΔE00, or the amount that comes nearest. */
function along(search: Search, pots: readonly number[], direction: readonly number[], mostMl: number): Addition {
  const { pot, potMl, works } = search;
  const k = new Float64Array(BANDS),
    s = new Float64Array(BANDS);
  const addK = new Float64Array(BANDS),
    addS = new Float64Array(BANDS);
  let limit = Math.min(mostMl, potMl * (mostGrowth - 1));
  let bent = false;
  pots.forEach((p, j) => {
    const { grams, densityGPerMl, ink } = search.shelf[p];
    bent ||= ink.gamma !== undefined && ink.gamma !== 1;
    for (let i = 0; i < BANDS; i++) {
      addK[i] += works * direction[j] * ink.k[i];
      addS[i] += works * direction[j] * ink.s[i];
    }
    if (grams !== undefined) limit = Math.min(limit, grams / densityGPerMl / direction[j]);
  });
  const at = (ml: number): Addition => {
    const whole = potMl + ml;
    if (bent) strengthInPot(search, pots, direction, ml / whole, addK, addS);
    for (let i = 0; i < BANDS; i++) {
      k[i] = (pot.k[i] * potMl + addK[i] * ml) / whole;
      s[i] = (pot.s[i] * potMl + addS[i] * ml) / whole;
    }
    const lab = search.colour(k, s);
    return { pots, ml: direction.map((d) => d * ml), deltaE: deltaE00(lab, search.wanted), lab };
  };
  let below = 0;
  let best = at(Math.min(limit, potMl * 1e-4));
  for (let ml = potMl * 0.0005; below < limit; ml *= 1.5) {
    const here = at(Math.min(ml, limit));
    if (here.deltaE < best.deltaE) best = here;
    if (here.deltaE <= search.within) {
      let low = below,
        high = Math.min(ml, limit);
      for (let round = 0; round < 14; round++) {
        const middle = (low + high) / 2;
        if (at(middle).deltaE <= search.within) high = middle;
        else low = middle;
      }
      return at(high);
    }
    // Well past its nearest point: more will not help.
    if (here.deltaE > best.deltaE + 1) break;
    below = ml;
  }
  return refine(at, best, potMl, limit, search.within);
}

/** Inks whose strength does not go straight with their share: what each adds, per share of all additions in the pot. */
function strengthInPot(
  search: Search,
  pots: readonly number[],
  direction: readonly number[],
  addedShare: number,
  addK: Float64Array,
  addS: Float64Array,
): void {
  addK.fill(0);
  addS.fill(0);
  pots.forEach((p, j) => {
    const { ink } = search.shelf[p];
    const amount = (search.works * effectiveShare(ink, direction[j] * addedShare)) / addedShare;
    for (let i = 0; i < BANDS; i++) {
      addK[i] += amount * ink.k[i];
      addS[i] += amount * ink.s[i];
    }
  });
}

/** Around the nearest sample, a finer look, in case the wanted ΔE00 is met between two samples. */
function refine(at: (ml: number) => Addition, best: Addition, potMl: number, limit: number, within: number): Addition {
  const centre = best.ml.reduce((a, b) => a + b, 0);
  if (best.deltaE > within + 1.5 || centre <= 0) return best;
  let low = centre / 1.5,
    high = Math.min(limit, centre * 1.5);
  for (let round = 0; round < 16; round++) {
    const left = low + (high - low) / 3,
      right = high - (high - low) / 3;
    if (at(left).deltaE < at(right).deltaE) high = right;
    else low = left;
  }
  const found = at((low + high) / 2);
  if (found.deltaE > within) return found.deltaE < best.deltaE ? found : best;
  let [from, to] = [Math.min(centre / 1.5, potMl), (low + high) / 2];
  for (let round = 0; round < 14; round++) {
    const middle = (from + to) / 2;
    if (at(middle).deltaE <= within) to = middle;
    else from = middle;
  }
  return at(to);
}
