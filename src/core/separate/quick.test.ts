import { expect, test } from 'vitest';
import { benchShelf } from '../../../bench/separate-shelf.ts';
import { deltaE00Of } from '../colour/index.ts';
import { seeded } from '../random.ts';
import { meanDifference, roughDifference, targetsOf } from './fit-score.ts';
import { labOf, quickly, stateOf, type SearchSetup } from './moves.ts';
import { filmOfRecipe, overlapLabOf, type LayerRecipe } from './recipe.ts';

const { paper, surface, shelf } = benchShelf();
const pots = new Map(shelf.map((pot) => [pot.id, pot.ink])), ids = [...pots.keys()], deposit = 1.1;
const setup: SearchSetup = {
  wishes: [{}, {}, {}], shelf: pots, mostInPot: 2, paper, surface, deposit, below: [filmOfRecipe({ wish: -1, parts: [{ id: 'lagoon', share: 0.3 }] }, pots, deposit)],
  codes: Array.from({ length: 16 }, (_, i) => i), leastShare: 0.005,
};

function plan(seed: number): LayerRecipe[] {
  const random = seeded(seed);
  return [0, 1, 2].map((wish) => ({ wish, parts: [0, 1].map(() => ({ id: ids[random.below(ids.length)], share: 0.5 * Math.exp(-3 * random.next()) })) }));
}

test('overlaps worked out in few bands are those of all bands within ΔE00 0.2 on the average, over a layer that is printed too', () => {
  const quick = quickly(setup);
  let sum = 0, worst = 0, count = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const full = overlapLabOf(paper, [...setup.below, ...stateOf(setup, plan(seed)).films], surface), few = labOf(quick, stateOf(quick, plan(seed)));
    expect(few).toHaveLength(full.length);
    for (let c = 0; c < full.length; c += 3) {
      const d = deltaE00Of(full[c], full[c + 1], full[c + 2], few[c], few[c + 1], few[c + 2]);
      sum += d;
      worst = Math.max(worst, d);
      count++;
    }
  }
  expect(sum / count).toBeLessThan(0.2);
  expect(worst).toBeLessThan(1.5);
});

test('told by rough differences, the better of two plans that differ by a fifth is the better one nineteen times in twenty', () => {
  const random = seeded(9), count = 40;
  const targets = targetsOf(Float64Array.from({ length: count * 3 }, (_, i) => (i % 3 === 0 ? 20 + 70 * random.next() : 30 * random.normal())), new Float64Array(count).fill(1));
  const told = Array.from({ length: 60 }, (_, i) => labOf(setup, stateOf(setup, plan(i + 100)))).map((lab) => [meanDifference(targets, lab, setup.codes), roughDifference(targets, lab, setup.codes)]);
  let right = 0, asked = 0;
  for (const [exact, rough] of told) for (const [other, otherRough] of told) {
    if (other < exact * 1.2) continue;
    asked++;
    if (otherRough > rough) right++;
  }
  expect(asked).toBeGreaterThan(200);
  expect(right / asked).toBeGreaterThan(0.95);
});
