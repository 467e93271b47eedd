import { binomialDistribution } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import {
  binomialAt,
  binomialAtLeast,
  colophon,
  documentationSheet,
  numberEdition,
  openTimeAdvice,
  planDay,
  proofsFor,
  roman,
  sheetsToStart,
  studioDefaults,
} from '../../src/core/edition/index.ts';
import type { NumberedSheet, Sheet } from '../../src/core/edition/index.ts';
import { inEnglish } from '../said.ts';

describe('binomial tails hold against a statistics library', () => {
  // simple-statistics 7: binomialDistribution gives P(k) until nearly all is summed (its epsilon is 1e-4, so the far tail is missing).
  test.each([
    [29, 0.95 ** 4],
    [12, 0.9],
    [40, 0.5],
    [100, 0.81450625],
    [7, 0.99],
    [60, 0.25],
  ])('%i sheets that come through with %f', (n, p) => {
    const theirs = binomialDistribution(n, p)!;
    theirs.forEach((chance, k) => expect(Math.abs(binomialAt(n, k, p) - chance)).toBeLessThan(1e-11));
    let below = 0;
    theirs.forEach((chance, k) => {
      expect(Math.abs(binomialAtLeast(n, k, p) - (1 - below))).toBeLessThan(1e-10);
      below += chance;
    });
  });

  // Exact in whole numbers: Σ C(n, k) a^k (b − a)^(n−k) / b^n.
  test.each([
    [30, 24, 4n, 5n],
    [50, 50, 19n, 20n],
    [200, 150, 4n, 5n],
    [400, 290, 3n, 4n],
    [25, 1, 1n, 20n],
  ])('and against whole-number arithmetic: %i of which at least %i', (n, k, over, under) => {
    let sum = 0n;
    let choose = 1n;
    for (let i = 0; i <= n; i++) {
      if (i >= k) sum += choose * over ** BigInt(i) * (under - over) ** BigInt(n - i);
      choose = (choose * BigInt(n - i)) / BigInt(i + 1);
    }
    const exact = Number((sum * 10n ** 18n) / under ** BigInt(n)) / 1e18;
    expect(Math.abs(binomialAtLeast(n, k, Number(over) / Number(under)) - exact)).toBeLessThan(1e-12);
  });
});

// Arithmetic of the rule N = ⌈target / (1 − p)^L⌉: 23 good, 5 %, 4 runs → 29.
test('rule of thumb: 23 good sheets at 5 % in four runs ask for 29', () => {
  const sheets = sheetsToStart({ target: 23, spoilagePerRun: [0.05, 0.05, 0.05, 0.05], certainty: 0.9 });
  expect(sheets.rule).toBe(29);
  expect(sheets.start).toBeGreaterThan(29);
});

// Print workshop's buying guide: 5 % a run, four colours, 100 sheets → about 20 rejects.
test('5 % a run in four colours rejects about 20 of 100', () => {
  const { survive } = sheetsToStart({ target: 80, spoilagePerRun: [0.05, 0.05, 0.05, 0.05], certainty: 0.5 });
  expect(100 * (1 - survive)).toBeGreaterThan(17);
  expect(100 * (1 - survive)).toBeLessThan(21);
});

describe('the pencil’s conventions', () => {
  const runs = ['r1', 'r2'];
  const written = ({ text }: NumberedSheet): string => (text ? inEnglish(text) : '');
  const sheets = Array.from({ length: 16 }, (_, i): Sheet => ({ id: `s${i}`, paper: i < 10 ? 'smooth' : 'thin', runs, faults: [] }));
  const proofs = { artistsProofShare: 0.1, batProofs: 1, printersProofs: 1, horsCommerce: 0 };

  // How fine art is numbered: A/P five to ten in a hundred.
  test('artist’s proofs are a twentieth to a tenth of the edition', () => {
    expect(studioDefaults.artistsProofShare).toEqual([0.05, 0.1]);
    expect(proofsFor(50, { ...proofs, artistsProofShare: 0.1 }).artists).toBe(5);
  });

  // Museum of graphic arts, technical information: categories other than the edition in Roman numerals.
  test('proofs are numbered in Roman numerals, the edition in Arabic', () => {
    const { sheets: all } = numberEdition({ sheets, runs, target: 10, proofs: { ...proofs, artistsProofShare: 0.4 }, papersAre: 'varied' });
    expect(all.filter((one) => one.kind === 'artists').map(written)).toEqual(['A/P I/IV', 'A/P II/IV', 'A/P III/IV', 'A/P IV/IV']);
  });

  // College print course: "E.V. 1/8" for a varied edition.
  test('a varied edition is written E.V. 1/8', () => {
    const { sheets: all } = numberEdition({ sheets, runs, target: 8, proofs, papersAre: 'varied' });
    expect(written(all.find((one) => one.kind === 'varied')!)).toBe('E.V. 1/8');
  });

  // Labelling an original print: another paper falls outside the edition.
  test('two papers are two editions', () => {
    const { sizes } = numberEdition({ sheets, runs, proofs, papersAre: 'sub-editions' });
    expect(sizes.map((size) => size.paper)).toEqual(['smooth', 'thin']);
  });

  // Roman numerals as on clocks, title pages and in the year of a film: public examples.
  test.each([
    [1, 'I'],
    [4, 'IV'],
    [9, 'IX'],
    [14, 'XIV'],
    [40, 'XL'],
    [90, 'XC'],
    [400, 'CD'],
    [1954, 'MCMLIV'],
    [1999, 'MCMXCIX'],
    [2014, 'MMXIV'],
    [3999, 'MMMCMXCIX'],
  ])('%i is %s', (value, text) => {
    expect(roman(value)).toBe(text);
  });

  // Statutes of New York (ACA 15), Maryland (14-504), Hawaii (481F), California (Civil Code 1742–1744.9), Georgia (10-1-432): themes, not advice.
  test('the record holds every theme that statutes ask for', () => {
    const edition = numberEdition({ sheets, runs, target: 8, proofs, papersAre: 'varied' });
    const facts = { title: 'Tide pool', imageMm: [180, 240] as const, papers: [], layers: [] };
    const asked = documentationSheet(facts, edition)
      .fields.filter((field) => field.why === 'disclosure')
      .map((field) => field.id);
    expect(asked).toEqual(
      expect.arrayContaining(['artist', 'signature', 'medium', 'year', 'edition', 'master', 'other', 'posthumous', 'workshop']),
    );
    expect(inEnglish(colophon(facts, edition))).toContain('8 numbered, 1 A/P, 1 B.A.T., 1 P/P');
  });
});

// Trade blog on retarder: 2..5 % usual; ceiling 10 % and about 5 % glycerin, up to 10 % in a very dry climate: common practice.
test('retarder stays within what is usual, and never goes past its ceiling', () => {
  for (const humidityPercent of [5, 10, 20, 30, 40, 50, 60, 80]) {
    for (const pullsPerHour of [5, 12, 30, 60, 100]) {
      const { retarderShare } = openTimeAdvice({ pullsPerHour, humidityPercent });
      expect(retarderShare === 0 || retarderShare >= 0.02).toBe(true);
      expect(retarderShare).toBeLessThanOrEqual(0.1);
    }
  }
  expect(openTimeAdvice({ pullsPerHour: 40, humidityPercent: 60 }).retarderShare).toBe(0);
});

describe('the day against a published scheduling problem', () => {
  /**
   * S. M. Johnson, "Optimal two- and three-stage production schedules with setup times included", Naval Research Logistics
   * Quarterly 1 (1954): five jobs on two machines, one after the other; least makespan 47, of the order 5 1 4 3 2; the worst, its reverse, takes 78.
   * Here the first machine is the hand that sets up, the second the one that prints a sheet a minute.
   */
  const first = [4, 4, 30, 6, 2];
  const second = [5, 1, 4, 30, 3];
  const ends = (order: readonly number[]): number =>
    planDay({
      runs: order.map((i) => ({ id: `${i}`, name: `${i}`, sheets: second[i], setUpMinutes: first[i], dryMinutes: 0 })),
      startHour: 0,
      endHour: 24,
      pullsPerHour: 60,
      pullsPerHourHelped: 60,
      setUpMinutes: 0,
      cleanMinutes: 0,
      mixMinutesPerRun: 0,
      dryMinutes: 0,
      rackPlaces: 100,
      screens: 5,
      humidityPercent: 50,
      hands: 2,
    }).workEnds;
  const orders = (left: readonly number[]): number[][] =>
    left.length === 0 ? [[]] : left.flatMap((one) => orders(left.filter((other) => other !== one)).map((rest) => [one, ...rest]));

  test('no order takes longer than in the flow shop, the best one 47 minutes: no gap to the optimum', () => {
    const flowShop = (order: readonly number[]): number => {
      let [one, two] = [0, 0];
      for (const i of order) {
        one += first[i];
        two = Math.max(one, two) + second[i];
      }
      return two;
    };
    const all = orders([0, 1, 2, 3, 4]);
    for (const order of all) expect(ends(order), order.join(' ')).toBeLessThanOrEqual(flowShop(order) + 1e-6);
    expect(ends([4, 0, 3, 2, 1])).toBeCloseTo(47, 6);
    expect(flowShop([1, 2, 3, 0, 4])).toBe(78);
    expect(Math.min(...all.map(ends))).toBeCloseTo(47, 6);
  });
});
