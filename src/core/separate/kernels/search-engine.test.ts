import { expect, test } from 'vitest';
import { benchShelf } from '../../../../bench/separate-shelf.ts';
import { compiledKernel } from '../../../../scripts/kernels.ts';
import { readFileSync } from 'node:fs';
import { deltaE00Of } from '../../colour/index.ts';
import { seeded } from '../../random.ts';
import { targetsOf, type Edges, type Targets } from '../search/fit-score.ts';
import { filmOfRecipe, overlapLabOf, type LayerRecipe, type PotShare } from '../search/recipe.ts';
import { bestPot, judgedScore, quickOverlaps, shareSlopes, usedBy, type EngineGround } from './search-engine.ts';

const { paper, surface, shelf } = benchShelf();
const pots = new Map(shelf.map((pot) => [pot.id, pot.ink])),
  ids = [...pots.keys()],
  deposit = 1.1;
const ground: EngineGround = {
  shelf: pots,
  paper,
  surface,
  deposit,
  below: [filmOfRecipe({ wish: -1, parts: [{ id: 'lagoon', share: 0.3 }] }, pots, deposit)],
  codes: Array.from({ length: 16 }, (_, i) => i),
};
const quick: EngineGround = { ...ground, quick: true };

function plan(seed: number): LayerRecipe[] {
  const random = seeded(seed);
  return [0, 1, 2].map((wish) => ({ wish, parts: pot(random) }));
}

function pot(random: { next(): number; below(n: number): number }): PotShare[] {
  return [0, 1].map(() => ({ id: ids[random.below(ids.length)], share: 0.5 * Math.exp(-3 * random.next()) }));
}

function full(recipes: readonly LayerRecipe[]): Float64Array {
  return overlapLabOf(paper, [...ground.below, ...recipes.map((recipe) => filmOfRecipe(recipe, pots, deposit))], surface);
}

const random = seeded(9),
  count = 37;
const targets = targetsOf(
  Float64Array.from({ length: count * 3 }, (_, i) => (i % 3 === 0 ? 20 + 70 * random.next() : 30 * random.normal())),
  Float64Array.from({ length: count }, () => random.next()),
);

/** The plain way: for each colour the nearest by its form; exactly, of the nearest two. */
function plainly(
  { lab, form, weight }: Targets,
  overlaps: Float64Array,
  codes: readonly number[],
  exact: boolean,
): { readonly score: number; readonly code: readonly number[] } {
  let score = 0;
  const code = [...weight].map((w, i) => {
    const told = codes
      .map((c) => {
        const dl = overlaps[c * 3] - lab[i * 3],
          da = overlaps[c * 3 + 1] - lab[i * 3 + 1],
          db = overlaps[c * 3 + 2] - lab[i * 3 + 2];
        const near = form[i * 4] * dl * dl + form[i * 4 + 1] * da * da + form[i * 4 + 2] * da * db + form[i * 4 + 3] * db * db;
        return {
          c,
          near,
          off: deltaE00Of(lab[i * 3], lab[i * 3 + 1], lab[i * 3 + 2], overlaps[c * 3], overlaps[c * 3 + 1], overlaps[c * 3 + 2]),
        };
      })
      .sort((a, b) => a.near - b.near);
    const best = exact && told[1].near < 2 * told[0].near && told[1].off < told[0].off ? told[1] : told[0];
    score += w * (exact ? best.off : Math.sqrt(best.near));
    return best.c;
  });
  return { score, code };
}

test('the bytes are those of the source', async () => {
  for (const name of ['search', 'blur', 'register'] as const)
    expect(readFileSync(new URL(`./${name}-wasm.ts`, import.meta.url), 'utf8'), name).toBe(await compiledKernel(name));
}, 60_000);

test('overlaps in all bands are those of core/ink, over a layer that is printed too', () => {
  for (let seed = 1; seed <= 40; seed++) {
    const expected = full(plan(seed));
    quickOverlaps(ground, plan(seed)).forEach((v, i) => {
      expect(Math.abs(v - expected[i])).toBeLessThan(2e-3);
    });
  }
});

test('in half the bands they are within ΔE00 0.2 on the average', () => {
  let sum = 0,
    worst = 0,
    all = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const exact = full(plan(seed)),
      few = quickOverlaps(quick, plan(seed));
    expect(few).toHaveLength(exact.length);
    for (let c = 0; c < exact.length; c += 3) {
      const d = deltaE00Of(exact[c], exact[c + 1], exact[c + 2], few[c], few[c + 1], few[c + 2]);
      sum += d;
      worst = Math.max(worst, d);
      all++;
    }
  }
  expect(sum / all).toBeLessThan(0.2);
  expect(worst).toBeLessThan(1.5);
});

test('a film of much ink or next to none is the same film', () => {
  for (const share of [1, 1e-3, 1e-6])
    for (const id of ids) {
      const recipes = [0, 1, 2].map((wish) => ({ wish, parts: [{ id, share }] })),
        expected = full(recipes);
      quickOverlaps(ground, recipes).forEach((v, i) => {
        expect(Math.abs(v - expected[i])).toBeLessThan(2e-3);
      });
    }
});

test('scores and codes are those reckoned plainly, exact and rough, all codes and some', () => {
  for (const codes of [ground.codes, [1, 2, 4, 7, 9]])
    for (let seed = 1; seed <= 20; seed++) {
      const on = { ...ground, codes },
        recipes = plan(seed),
        lab = quickOverlaps(on, recipes);
      for (const kind of ['rough', 'exact'] as const) {
        const plain = plainly(targets, lab, codes, kind === 'exact');
        expect(judgedScore(on, { kind, targets }, recipes)).toBeCloseTo(plain.score, 4);
        expect([...usedBy(on, { kind, targets }, recipes).code]).toEqual(plain.code);
      }
    }
});

test('given what prints where, the score is the mean difference of those pairs', () => {
  const use = { target: Uint16Array.of(0, 0, 5, 36), code: Uint8Array.of(1, 3, 15, 0), share: Float64Array.of(0.1, 0.2, 0.3, 0.4) };
  const recipes = plan(3),
    lab = quickOverlaps(ground, recipes);
  const plain = [...use.share].reduce((sum, share, k) => {
    const t = use.target[k] * 3,
      c = use.code[k] * 3;
    return sum + share * deltaE00Of(targets.lab[t], targets.lab[t + 1], targets.lab[t + 2], lab[c], lab[c + 1], lab[c + 2]);
  }, 0);
  expect(judgedScore(ground, { kind: 'printed', targets, use }, recipes)).toBeCloseTo(plain, 9);
});

test('edges cost their price for every layer in which their two colours differ', () => {
  const edges: Edges = {
    a: Uint16Array.from({ length: 120 }, () => random.below(count)),
    b: Uint16Array.from({ length: 120 }, () => random.below(count)),
    price: Float64Array.from({ length: 120 }, () => 0.02 * random.next()),
  };
  const pairs = new Map<string, number>();
  for (let k = 0; k < 120; k++)
    if (edges.a[k] !== edges.b[k]) pairs.set([edges.a[k], edges.b[k]].sort((x, y) => x - y).join(), edges.price[k]);
  const list = [...pairs];
  const once: Edges = {
    a: Uint16Array.from(list, ([key]) => Number(key.split(',')[0])),
    b: Uint16Array.from(list, ([key]) => Number(key.split(',')[1])),
    price: Float64Array.from(list, ([, price]) => price),
  };
  const with_ = { ...targets, edges: once },
    bits = (v: number): number => v.toString(2).replaceAll('0', '').length;
  for (let seed = 1; seed <= 10; seed++)
    for (const kind of ['rough', 'exact'] as const) {
      const recipes = plan(seed),
        { code } = usedBy(ground, { kind, targets: with_ }, recipes);
      const cost = list.reduce((sum, _, k) => sum + once.price[k] * bits(code[once.a[k]] ^ code[once.b[k]]), 0);
      expect(judgedScore(ground, { kind, targets: with_ }, recipes)).toBeCloseTo(judgedScore(ground, { kind, targets }, recipes) + cost, 4);
    }
});

test('the best of many pots for a place is the one that scores least by itself', () => {
  const judge = { kind: 'exact', targets } as const,
    pick = seeded(4);
  for (let at = 0; at < 3; at++) {
    const recipes = plan(at + 50),
      tried = Array.from({ length: 30 }, () => pot(pick));
    const scores = tried.map((parts) =>
      judgedScore(
        ground,
        judge,
        recipes.map((r, i) => (i === at ? { ...r, parts } : r)),
      ),
    );
    const found = bestPot(ground, judge, recipes, at, tried, Infinity)!;
    expect(found.number).toBe(scores.indexOf(Math.min(...scores)));
    expect(found.score).toBeCloseTo(Math.min(...scores), 9);
    expect(bestPot(ground, judge, recipes, at, tried, Math.min(...scores))).toBeUndefined();
  }
});

test('slopes are what small steps of each share do', () => {
  const recipes = plan(8),
    { lab, slopes } = shareSlopes(ground, recipes, (r) => r.wish !== 1);
  expect(slopes).toHaveLength(4);
  const before = full(recipes);
  lab.forEach((v, i) => {
    expect(Math.abs(v - before[i])).toBeLessThan(2e-3);
  });
  [
    [0, 0],
    [0, 1],
    [2, 0],
    [2, 1],
  ].forEach(([layer, part], n) => {
    const moved = full(
      recipes.map((r, i) =>
        i === layer ? { ...r, parts: r.parts.map((p, k) => (k === part ? { ...p, share: p.share * Math.exp(0.02) } : p)) } : r,
      ),
    );
    slopes[n].forEach((v, i) => {
      expect(Math.abs(v - (moved[i] - before[i]) / 0.02)).toBeLessThan(0.2);
    });
  });
});

test('told by rough differences, the better of two plans that differ by a fifth is the better one nineteen times in twenty', () => {
  const told = Array.from({ length: 60 }, (_, i) => plan(i + 100)).map((recipes) => [
    judgedScore(ground, { kind: 'exact', targets }, recipes),
    judgedScore(ground, { kind: 'rough', targets }, recipes),
  ]);
  let right = 0,
    asked = 0;
  for (const [exact, rough] of told)
    for (const [other, otherRough] of told) {
      if (other < exact * 1.2) continue;
      asked++;
      if (otherRough > rough) right++;
    }
  expect(asked).toBeGreaterThan(200);
  expect(right / asked).toBeGreaterThan(0.95);
});
