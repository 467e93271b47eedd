import { BANDS, deltaE00, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { effectiveShare, overGround } from '../film.ts';
import { mixInks } from '../mix.ts';
import { internal } from '../surface.ts';
import type { Ink, Surface } from '../types.ts';

export interface ShelfPot {
  readonly id: string;
  readonly name: string;
  readonly ink: Ink;
  readonly densityGPerMl: number;
  /** Grams at hand; left out: as much as is wanted. */
  readonly grams?: number;
}

/** What was weighed into the pot: ids of the shelf. */
export interface PotContent {
  readonly id: string;
  readonly grams: number;
}

/** One drawdown of the pot, and what had been added to it since the one before. */
export interface PotRound {
  readonly added: readonly PotContent[];
  /** Measured reflectance of the drawdown over the ground. */
  readonly reading: Spectrum;
}

export interface PotAsk {
  readonly wanted: Lab;
  readonly ground: Spectrum;
  readonly surface: Surface;
  /** As first mixed. */
  readonly contents: readonly PotContent[];
  /** First to last; the first has nothing added. The last one says what is in the pot now. */
  readonly rounds: readonly PotRound[];
  readonly shelf: readonly ShelfPot[];
  /** ΔE00 to be reached. */
  readonly within: number;
  /** Grams that the run still needs; more than that in the pot is waste. */
  readonly needGrams?: number;
  /** Kinds of addition at most; 3 when left out and at most; a third only where two don't do. */
  readonly mostAdditions?: number;
}

export interface PotCorrection {
  readonly now: { readonly lab: Lab; readonly deltaE: number; readonly grams: number };
  /** Grams to add, first the most; empty when the pot is near enough. */
  readonly additions: readonly { readonly id: string; readonly name: string; readonly grams: number }[];
  readonly after: { readonly lab: Lab; readonly deltaE: number; readonly grams: number };
  /** The pot afterwards against now, 1 = no more. */
  readonly grows: number;
  readonly reaches: boolean;
  /** Better to start again: said with the reason. */
  readonly startAgain: string | null;
  /** How the shelf's inks worked in this pot against what their readings say, from all rounds; 1 = as read. */
  readonly works: number;
  readonly problems: readonly Problem[];
}

/**
 * The least addition from the shelf that brings a pot within a wanted ΔE00. The pot is taken as its last drawdown
 * reads; how strongly additions work in it is learnt from every round so far.
 * @throws ProblemError without a drawdown, or with contents that are not on the shelf
 */
export function correctPot(ask: PotAsk): PotCorrection {
  const last = ask.rounds[ask.rounds.length - 1];
  if (!last) fail('no-drawdown', 'pot', 'There is no drawdown of this pot to judge it by.', 'Pull one, let it dry and read it; or say what is wrong with the colour.');
  const shelf = new Map(ask.shelf.map((p) => [p.id, p]));
  const known = (content: PotContent): ShelfPot => shelf.get(content.id) ?? fail('not-on-shelf', 'pot', `${content.id} is in the pot but not on the shelf.`, 'Add its reading to the shelf.');
  const everything = [...ask.contents, ...ask.rounds.flatMap((r) => r.added)];
  const potMl = everything.reduce((sum, c) => sum + c.grams / known(c).densityGPerMl, 0);
  const potGrams = everything.reduce((sum, c) => sum + c.grams, 0);
  if (!(potGrams > 0)) fail('pot-empty', 'pot', 'The pot is empty.', 'Say what was weighed into it.');
  const works = learnWorks(ask, known);
  const ground = internal(ask.ground, ask.surface);
  const byRecipe = mixOf(everything, known);
  const pot = potInk(last.reading, { k: byRecipe.k, s: byRecipe.s.map((v) => v * works) }, ground, ask.surface);
  const colour = colourist(ground, ask.surface);
  const now = colour(pot.k, pot.s);
  const nowOff = deltaE00(now, ask.wanted);
  const problems: Problem[] = [];
  if (Math.abs(works - 1) > 0.25) {
    problems.push(problem('warning', 'pot-unlike-recipe', 'pot', `This pot works ${works > 1 ? 'stronger' : 'weaker'} than its recipe says, by ${Math.round(Math.abs(works - 1) * 100)} %.`,
      'The drawdown may be thicker or thinner than usual, or something was weighed wrongly. Additions are counted accordingly.'));
  }
  const base = { now: { lab: now, deltaE: nowOff, grams: potGrams }, works, problems };
  if (nowOff <= ask.within) return { ...base, additions: [], after: base.now, grows: 1, reaches: true, startAgain: null };

  const plan = leastAddition({ ...ask, pot, potMl, works, colour, nowOff });
  const grams = plan.ml.map((ml, i) => ml * ask.shelf[plan.pots[i]].densityGPerMl);
  const added = grams.reduce((a, b) => a + b, 0);
  const after = { lab: plan.lab, deltaE: plan.deltaE, grams: potGrams + added };
  const reaches = plan.deltaE <= ask.within + 1e-9;
  const need = ask.needGrams ?? potGrams;
  const startAgain = !reaches ? `No addition from the shelf brings this pot nearer than ΔE00 ${plan.deltaE.toFixed(1)}; mix a fresh one.`
    : after.grams > 2 * need && added > need ? `The pot would grow to ${Math.round(after.grams)} g where ${Math.round(need)} g are needed: a fresh pot takes less ink than the correction (${Math.round(added)} g).`
      : null;
  const additions = plan.pots.map((p, i) => ({ id: ask.shelf[p].id, name: ask.shelf[p].name, grams: grams[i] })).filter((a) => a.grams > 0).sort((a, b) => b.grams - a.grams);
  return { ...base, additions, after, grows: after.grams / potGrams, reaches, startAgain };
}

function mixOf(contents: readonly PotContent[], known: (c: PotContent) => ShelfPot): Ink {
  const volumes = contents.map((c) => c.grams / known(c).densityGPerMl);
  const all = volumes.reduce((a, b) => a + b, 0);
  return mixInks(contents.map((c, i) => ({ ink: known(c).ink, share: volumes[i] / all })));
}

/** The pot as an ink: scattering as its recipe says, absorption so that the drawdown comes out as read. */
function potInk(reading: Spectrum, recipe: Ink, ground: Spectrum, surface: Surface): Ink {
  const seen = internal(reading, surface);
  const k = new Float64Array(BANDS);
  for (let i = 0; i < BANDS; i++) {
    const off = (K: number): number => overGround(K, recipe.s[i], ground[i]) - seen[i];
    let low = 0, high = 6;
    if (off(0) <= 0) continue;
    for (let round = 0; round < 48; round++) {
      const middle = (low + high) / 2;
      if (off(middle) > 0) low = middle;
      else high = middle;
    }
    k[i] = (low + high) / 2;
  }
  return { k, s: recipe.s };
}

/**
 * Deposit and concentration of this pot against the readings of the shelf: one factor, from what the first drawdown
 * should have been and from what every addition since has done; drawn towards 1 as far as the drawdowns leave it open.
 */
function learnWorks(ask: PotAsk, known: (c: PotContent) => ShelfPot): number {
  const ground = internal(ask.ground, ask.surface);
  // Prior: drawdowns by hand vary by some 15 % (OPTICS section 6).
  let top = 1 / 0.15 ** 2, bottom = 1 / 0.15 ** 2;
  let contents = [...ask.contents];
  for (const round of ask.rounds) {
    contents = [...contents, ...round.added];
    const recipe = mixOf(contents, known);
    const read = potInk(round.reading, recipe, ground, ask.surface).k;
    let cross = 0, own = 0;
    for (let i = 2; i < BANDS; i++) {
      // Where almost nothing comes back, the drawdown tells little.
      const weight = Math.exp(-4 * recipe.k[i]);
      cross += weight * read[i] * recipe.k[i];
      own += weight * recipe.k[i] * recipe.k[i];
    }
    if (own < 1e-9) continue;
    // A drawdown tells the factor to some 5 %.
    top += cross / own / 0.05 ** 2;
    bottom += 1 / 0.05 ** 2;
  }
  return Math.min(2, Math.max(0.5, top / bottom));
}

type Colourist = (k: Float64Array, s: Float64Array) => Lab;

function colourist(ground: Spectrum, surface: Surface): Colourist {
  const seen = new Float64Array(BANDS);
  const { ks, k1, k2 } = surface;
  return (k, s) => {
    for (let i = 0; i < BANDS; i++) {
      const r = overGround(k[i], s[i], ground[i]);
      seen[i] = ks + ((1 - k1) * (1 - k2) * r) / (1 - k2 * r);
    }
    return labFromXyz(xyzAt(seen, 0));
  };
}

interface Search extends PotAsk {
  readonly pot: Ink;
  readonly potMl: number;
  readonly works: number;
  readonly colour: Colourist;
  readonly nowOff: number;
}

interface Addition {
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
function leastAddition(search: Search): Addition {
  const n = search.shelf.length;
  const most = Math.min(3, search.mostAdditions ?? 3, n);
  let best: Addition | undefined, nearest: Addition = { pots: [], ml: [], deltaE: search.nowOff, lab: search.colour(search.pot.k, search.pot.s) };
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
  const k = new Float64Array(BANDS), s = new Float64Array(BANDS);
  const addK = new Float64Array(BANDS), addS = new Float64Array(BANDS);
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
      let low = below, high = Math.min(ml, limit);
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
function strengthInPot(search: Search, pots: readonly number[], direction: readonly number[], addedShare: number, addK: Float64Array, addS: Float64Array): void {
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
  let low = centre / 1.5, high = Math.min(limit, centre * 1.5);
  for (let round = 0; round < 16; round++) {
    const left = low + (high - low) / 3, right = high - (high - low) / 3;
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
