import { exp } from '../../numeric/index.ts';
import { BANDS, deltaE00, type Lab, type Spectrum } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { deltaE as ofDeltaE, mass, name as asName, say, share as asShare, type Saying } from '../../../words/say.ts';
import { overGround } from '../film/film.ts';
import { mixInks } from '../film/mix.ts';
import { internal } from '../film/surface.ts';
import type { Ink, Surface } from '../types.ts';
import { colourist } from './colourist.ts';
import { leastAddition } from './least-addition.ts';
import type { PotAsk, PotContent, ShelfPot } from './types.ts';

export interface PotCorrection {
  readonly now: { readonly lab: Lab; readonly deltaE: number; readonly grams: number };
  /** Grams to add, first the most; empty when the pot is near enough. */
  readonly additions: readonly { readonly id: string; readonly name: string; readonly grams: number }[];
  readonly after: { readonly lab: Lab; readonly deltaE: number; readonly grams: number };
  /** The pot afterwards against now, 1 = no more. */
  readonly grows: number;
  readonly reaches: boolean;
  /** Why it is better to start again; null where it isn't. */
  readonly startAgain: Saying | null;
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
  const place = ask.place ?? say('where.pot');
  const last = ask.rounds[ask.rounds.length - 1];
  if (!last) fail('no-drawdown', place, say('recipes.noDrawdown'), say('recipes.pullOne'));
  const shelf = new Map(ask.shelf.map((p) => [p.id, p]));
  const known = (content: PotContent): ShelfPot =>
    shelf.get(content.id) ?? fail('not-on-shelf', place, say('recipes.notOnShelf', { ink: asName(content.id) }), say('recipes.addReading'));
  const everything = [...ask.contents, ...ask.rounds.flatMap((r) => r.added)];
  const potMl = everything.reduce((sum, c) => sum + c.grams / known(c).densityGPerMl, 0);
  const potGrams = everything.reduce((sum, c) => sum + c.grams, 0);
  if (!(potGrams > 0)) fail('pot-empty', place, say('recipes.potEmpty'), say('recipes.listContents'));
  const works = learnWorks(ask, known);
  const ground = internal(ask.ground, ask.surface);
  const byRecipe = mixOf(everything, known);
  const pot = potInk(last.reading, { k: byRecipe.k, s: byRecipe.s.map((v) => v * works) }, ground, ask.surface);
  const colour = colourist(ground, ask.surface);
  const now = colour(pot.k, pot.s);
  const nowOff = deltaE00(now, ask.wanted);
  const problems: Problem[] = [];
  if (Math.abs(works - 1) > 0.25) {
    const by = asShare(Math.abs(works - 1), 0);
    const message = say(works > 1 ? 'recipes.potStronger' : 'recipes.potWeaker', { by });
    problems.push(problem('warning', 'pot-unlike-recipe', place, message, say('recipes.drawdownMayDiffer')));
  }
  const base = { now: { lab: now, deltaE: nowOff, grams: potGrams }, works, problems };
  if (nowOff <= ask.within) return { ...base, additions: [], after: base.now, grows: 1, reaches: true, startAgain: null };

  const plan = leastAddition({ ...ask, pot, potMl, works, colour, nowOff });
  const grams = plan.ml.map((ml, i) => ml * ask.shelf[plan.pots[i]].densityGPerMl);
  const added = grams.reduce((a, b) => a + b, 0);
  const after = { lab: plan.lab, deltaE: plan.deltaE, grams: potGrams + added };
  const reaches = plan.deltaE <= ask.within + 1e-9;
  const need = ask.needGrams ?? potGrams;
  const startAgain = !reaches
    ? say('recipes.nothingReaches', { off: ofDeltaE(plan.deltaE) })
    : after.grams > 2 * need && added > need
      ? say('recipes.potWouldGrow', { grown: mass(after.grams), need: mass(need), added: mass(added) })
      : null;
  const additions = plan.pots
    .map((p, i) => ({ id: ask.shelf[p].id, name: ask.shelf[p].name, grams: grams[i] }))
    .filter((a) => a.grams > 0)
    .sort((a, b) => b.grams - a.grams);
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
    let low = 0,
      high = 6;
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
  // Prior: drawdowns by hand vary by some 15 % (docs/optics.md 6).
  let top = 1 / 0.15 ** 2,
    bottom = 1 / 0.15 ** 2;
  let contents = [...ask.contents];
  for (const round of ask.rounds) {
    contents = [...contents, ...round.added];
    const recipe = mixOf(contents, known);
    const read = potInk(round.reading, recipe, ground, ask.surface).k;
    let cross = 0,
      own = 0;
    for (let i = 2; i < BANDS; i++) {
      // Where almost nothing comes back, the drawdown tells little.
      const weight = exp(-4 * recipe.k[i]);
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
