import { describe, expect, test } from 'vitest';
import { refusedBy } from '../../../test/said.ts';
import { binomialAt, binomialAtLeast, binomialQuantile } from './sheets/binomial.ts';
import { sheetsFromCount } from './sheets/from-count.ts';
import { isGood, numberEdition, roman } from './sheets/numbering.ts';
import type { NumberingInput, Sheet } from './sheets/numbering.ts';
import { dryingFactor, openTimeAdvice } from './day/open-time.ts';
import { certaintyOf, planSheets, proofsFor, shareWhole, sheetsToStart, throughRuns } from './sheets/sheets.ts';

const codeOf = (act: () => unknown): string => refusedBy(act)[0].code;

describe('chances', () => {
  // Standard tables of the cumulative binomial, n = 20, p = 0.05: 0.3585, 0.7358, 0.9245, 0.9841, 0.9974.
  test('of 20 sheets with one in twenty spoiled, as the tables have it', () => {
    [0.3585, 0.7358, 0.9245, 0.9841, 0.9974].forEach((p, k) => expect(1 - binomialAtLeast(20, k + 1, 0.05)).toBeCloseTo(p, 4));
    expect([0.35, 0.5, 0.74, 0.92, 0.95].map((share) => binomialQuantile(20, 0.05, share))).toEqual([0, 1, 2, 2, 3]);
    expect(binomialQuantile(20, 0.95, 0.05)).toBe(17);
  });

  // By hand: 6/16 of four throws; 0.05²⁰; and the middle of a thousand throws (Abramowitz & Stegun's series against the exact sum).
  test('exactly', () => {
    expect(binomialAt(4, 2, 0.5)).toBeCloseTo(6 / 16, 12);
    expect(binomialAt(3, 0, 0.2)).toBeCloseTo(0.512, 12);
    expect(binomialAt(1000, 500, 0.5)).toBeCloseTo(0.025225018178360804, 13);
    expect(binomialAt(30, 15, 0.5)).toBeCloseTo(155117520 / 2 ** 30, 14);
    expect(binomialAtLeast(20, 20, 0.05) / 0.05 ** 20).toBeCloseTo(1, 9);
    expect(binomialAtLeast(200, 190, 0.05)).toBeGreaterThan(0);
    expect(binomialAtLeast(200, 190, 0.05)).toBeLessThan(1e-200);
    // Either way of adding up: all of n equal chances.
    for (let k = 1; k <= 9; k++) {
      let sum = 0;
      for (let i = k; i <= 9; i++) sum += binomialAt(9, i, 0.4);
      expect(binomialAtLeast(9, k, 0.4)).toBeCloseTo(sum, 12);
    }
  });

  test('where there is no doubt there is none', () => {
    expect([
      binomialAt(5, -1, 0.5),
      binomialAt(5, 6, 0.5),
      binomialAt(5, 0, 0),
      binomialAt(5, 1, 0),
      binomialAt(5, 5, 1),
      binomialAt(5, 4, 1),
    ]).toEqual([0, 0, 1, 0, 1, 0]);
    expect([binomialAt(5, -1, 0), binomialAt(5, 6, 1), binomialAt(5, 0, -0.1), binomialAt(5, 5, 1.1)]).toEqual([0, 0, 1, 1]);
    expect([
      binomialAtLeast(5, 0, 0.3),
      binomialAtLeast(5, -2, 0),
      binomialAtLeast(5, 6, 1),
      binomialAtLeast(5, 1, 0),
      binomialAtLeast(5, 5, 1),
    ]).toEqual([1, 1, 0, 0, 1]);
    expect([binomialQuantile(5, 0, 0.99), binomialQuantile(5, 1, 0.5), binomialQuantile(0, 0.5, 0.5)]).toEqual([0, 5, 0]);
  });
});

describe('sheets to start with', () => {
  // docs/trade.md 7: N = ⌈target/(1−p)^L⌉: 23, 5 %, 4 runs → 29. Exact binomial beside it.
  test('the rule gives 29 for 23 prints through four runs; to be nine in ten sure takes more', () => {
    const found = sheetsToStart({ target: 23, spoilagePerRun: [0.05, 0.05, 0.05, 0.05], certainty: 0.9 });
    expect(found.rule).toBe(29);
    expect(found.survive).toBeCloseTo(0.95 ** 4, 12);
    expect(found.expectedGood).toBeCloseTo(found.start * 0.95 ** 4, 9);
    expect(found.certainty).toBe(binomialAtLeast(found.start, 23, found.survive));
    expect(found.certainty).toBeGreaterThanOrEqual(0.9);
    expect(binomialAtLeast(found.start - 1, 23, found.survive)).toBeLessThan(0.9);
    expect(certaintyOf(30, 23, [0.05, 0.05])).toBe(binomialAtLeast(30, 23, 0.95 ** 2));
    expect(sheetsToStart({ target: 10, spoilagePerRun: [0, 0], certainty: 0.99 })).toMatchObject({ start: 10, rule: 10, certainty: 1 });
    // Whole divisions are not rounded up by the last digit of a computer's arithmetic.
    expect(sheetsToStart({ target: 9, spoilagePerRun: [0.1], certainty: 0.5 }).rule).toBe(10);
    expect(sheetsToStart({ target: 1, spoilagePerRun: [0.5], certainty: 0.49 })).toMatchObject({ start: 1, rule: 2 });
    // Every start up to a larger edition is the least that does.
    for (const target of [2, 7, 40, 300]) {
      const { start, survive, certainty } = sheetsToStart({ target, spoilagePerRun: [0.3, 0.2], certainty: 0.8 });
      expect([certainty >= 0.8, binomialAtLeast(start - 1, target, survive) < 0.8]).toEqual([true, true]);
    }
  });

  test('through the runs go fewer and fewer: 20, 19, 18.05 on average', () => {
    const runs = throughRuns(20, [0.05, 0.05, 0.1], 0.9);
    expect(runs.map((one) => one.expected)).toEqual([20, expect.closeTo(19, 9), expect.closeTo(18.05, 9)]);
    expect(runs.map((one) => one.run)).toEqual([0, 1, 2]);
    expect(runs.map((one) => one.prepare)).toEqual([20, 20, binomialQuantile(20, 0.95 ** 2, 0.9)]);
  });

  test('what cannot be asked for is refused', () => {
    const ask = (more: object) => codeOf(() => sheetsToStart({ target: 10, spoilagePerRun: [0.05], certainty: 0.9, ...more }));
    for (const target of [0, 1.5, 100_001, -1]) expect(ask({ target })).toBe('no-sheets');
    for (const certainty of [0, 1, NaN]) expect(ask({ certainty })).toBe('certainty');
    for (const spoilage of [-0.1, 1, NaN]) expect(ask({ spoilagePerRun: [0.1, spoilage] })).toBe('spoilage');
    expect(ask({ target: 1000, spoilagePerRun: [0.9, 0.9, 0.9] })).toBe('spoilage-high');
    expect(sheetsToStart({ target: 1, spoilagePerRun: [], certainty: 0.5 }).start).toBe(1);
    // One in ten thousand gets through: said with the digits that show it.
    expect(refusedBy(() => sheetsToStart({ target: 100, spoilagePerRun: [0.99, 0.99], certainty: 0.9 }))[0]).toMatchObject({
      message: { values: { survive: { share: expect.closeTo(1e-4, 12), digits: 3 } } },
    });
    expect(refusedBy(() => sheetsToStart({ target: 100_000, spoilagePerRun: [0.5], certainty: 0.9 }))[0]).toMatchObject({
      message: { values: { survive: { digits: 0 } } },
    });
  });
});

describe('proofs and papers', () => {
  const none = { artistsProofShare: 0, batProofs: 0, printersProofs: 0, horsCommerce: 0 };
  // docs/trade.md 7: A/P 5..10 % of the edition.
  test('artist’s proofs are a share of the edition, one at least once they are wished for', () => {
    const wishes = { artistsProofShare: 0.1, batProofs: 1, printersProofs: 2, horsCommerce: 3 };
    expect(proofsFor(25, wishes)).toEqual({ artists: 3, bat: 1, printers: 2, horsCommerce: 3, total: 9 });
    expect(proofsFor(3, wishes).artists).toBe(1);
    expect(proofsFor(0, wishes).artists).toBe(0);
    expect(proofsFor(25, none)).toEqual({ artists: 0, bat: 0, printers: 0, horsCommerce: 0, total: 0 });
    for (const [key, value] of [
      ['artistsProofShare', -0.1],
      ['printersProofs', 10_001],
      ['horsCommerce', NaN],
    ] as const)
      expect(refusedBy(() => proofsFor(25, { ...none, [key]: value }))[0]).toMatchObject({ code: 'proof-count', path: `edition.${key}` });
    expect(refusedBy(() => proofsFor(25, { ...none, artistsProofShare: -1 }))[0].message).toMatchObject({
      key: 'edition.artistsShareImpossible',
    });
    expect(refusedBy(() => proofsFor(25, { ...none, batProofs: -1 }))[0].message).toMatchObject({ key: 'edition.proofsImpossible' });
    expect(proofsFor(25, { ...none, horsCommerce: 10_000 }).total).toBe(10_000);
  });

  test('whole numbers by largest remainder, the first wins a tie', () => {
    expect(shareWhole(10, [1, 1, 1])).toEqual([4, 3, 3]);
    expect(shareWhole(11, [1, 1, 1])).toEqual([4, 4, 3]);
    expect(shareWhole(7, [30, 50, 20])).toEqual([2, 4, 1]);
    expect(shareWhole(10, [5, 0])).toEqual([10, 0]);
    expect(shareWhole(3, [0, 0])).toEqual([0, 0]);
    expect(shareWhole(0, [2, 3])).toEqual([0, 0]);
    expect(shareWhole(1, [1, 2])).toEqual([0, 1]);
  });

  const paper = (id: string, count: number, more: object = {}) => ({ id, name: id, count, ...more });
  const plan = (more: Partial<Parameters<typeof planSheets>[0]>) =>
    planSheets({
      papers: [paper('p', 40)],
      target: 20,
      certainty: 0.9,
      spoilagePerRun: [0.05, 0.05],
      setUpSheets: 3,
      proofs: none,
      ...more,
    });

  test('an edition on two papers is shared out by the sheets at hand, its proofs by the numbers, B.A.T. on the first', () => {
    const { papers } = plan({
      papers: [paper('a', 30), paper('b', 60)],
      target: 30,
      proofs: { artistsProofShare: 0.1, batProofs: 1, printersProofs: 1, horsCommerce: 1 },
    });
    expect(papers.map((one) => [one.paperId, one.edition, one.wanted])).toEqual([
      ['a', 10, 12],
      ['b', 20, 24],
    ]);
    expect(papers.map((one) => one.proofs)).toEqual([
      { bat: 1, artists: 1, printers: 0, horsCommerce: 0, total: 2 },
      { bat: 0, artists: 2, printers: 1, horsCommerce: 1, total: 4 },
    ]);
    expect(papers[0]).toMatchObject({
      start: 30,
      expectedGood: expect.closeTo(30 * 0.9025, 9),
      certainty: binomialAtLeast(30, 12, 0.95 * 0.95),
      apart: false,
    });
    expect(papers[0].likelyGood).toEqual([binomialQuantile(30, 0.9025, 0.05), binomialQuantile(30, 0.9025, 0.95)]);
  });

  test('a paper’s own wish goes first; papers still to be bought share evenly and get what they need', () => {
    const own = plan({ papers: [paper('a', 30, { target: 5 }), paper('b', 10), paper('c', 30)], target: 25 }).papers;
    expect(own.map((one) => one.edition)).toEqual([5, 5, 15]);
    const bought = plan({ papers: [paper('a', 0), paper('b', 0, { printed: true }), paper('c', 0, { target: 0 })] });
    expect(bought.papers.map((one) => [one.edition, one.apart])).toEqual([
      [10, false],
      [10, true],
      [0, false],
    ]);
    const { start } = sheetsToStart({ target: 10, spoilagePerRun: [0.05, 0.05], certainty: 0.9 });
    expect(bought.papers.map((one) => [one.start, one.toStart, one.certainty >= 0.9])).toEqual([
      [start, start, true],
      [start, start, true],
      [0, 0, true],
    ]);
    expect(bought.problems).toMatchObject([
      { severity: 'note', code: 'sheets-to-get', path: 'papers[#a].count', advice: { values: { n: start } } },
      { code: 'sheets-to-get', path: 'papers[#b].count' },
    ]);
    expect(bought.papers[2].certainty).toBe(1);
    // A wish beyond the edition leaves nothing over, and takes nothing away.
    expect(plan({ papers: [paper('a', 40, { target: 30 }), paper('b', 10)] }).papers.map((one) => one.edition)).toEqual([30, 0]);
    expect(codeOf(() => plan({ papers: [paper('a', 10, { target: 0 })] }))).toBe('no-sheets');
    expect(codeOf(() => plan({ papers: [] }))).toBe('no-paper');
  });

  test('a paper that skips a run loses nothing in it and is not counted there', () => {
    const { papers, runs } = plan({ papers: [paper('a', 20), paper('b', 20, { skips: [1] })] });
    expect(papers.map((one) => one.runs.map((r) => r.run))).toEqual([[0, 1], [0]]);
    expect(papers[1].expectedGood).toBeCloseTo(19, 9);
    expect(runs).toMatchObject([
      { run: 0, expected: 40, prepare: 40 },
      { run: 1, expected: expect.closeTo(19, 9), prepare: 20 },
    ]);
  });

  test('too few sheets are said by how bad it is: for the proofs, for the prints, or for being sure', () => {
    const told = (count: number, proofs = { ...none, printersProofs: 3 }) => plan({ papers: [paper('p', count)], proofs }).problems[0];
    expect(told(2)).toMatchObject({ severity: 'error', code: 'more-proofs-than-sheets', message: { values: { proofs: 3 } } });
    expect(told(3)).toMatchObject({ severity: 'error', code: 'more-prints-than-sheets', message: { values: { wanted: 23 } } });
    expect(told(22)).toMatchObject({ code: 'more-prints-than-sheets' });
    expect(told(23)).toMatchObject({
      severity: 'warning',
      code: 'sheets-short',
      path: 'papers[#p].count',
      message: { values: { reached: 9, asked: 90 } },
    });
    const { start } = sheetsToStart({ target: 23, spoilagePerRun: [0.05, 0.05], certainty: 0.9 });
    expect(told(start - 1)).toMatchObject({ code: 'sheets-short', advice: { values: { start } } });
    expect(told(start)).toBeUndefined();
  });

  test('set-up sheets: newsprint first, the last one an offcut of the good paper', () => {
    expect(plan({}).setUp).toMatchObject({
      perRun: 3,
      newsprint: 2,
      goodPaper: 1,
      text: { key: 'edition.setUpSheets', values: { newsprint: 2 } },
    });
    expect(plan({ setUpSheets: 1 }).setUp).toMatchObject({ newsprint: 0, goodPaper: 1, text: { key: 'edition.setUpOffcut' } });
    expect(plan({ setUpSheets: 0 }).setUp).toMatchObject({ newsprint: 0, goodPaper: 0, text: { key: 'edition.noSetUpSheet' } });
    for (const setUpSheets of [-1, 1.5]) expect(codeOf(() => plan({ setUpSheets }))).toBe('set-up-sheets');
  });
});

describe('how long ink stays open', () => {
  // First order in 1 − RH: known at 52.5 %, twice as long at 76.25 %, as long as at 95 % above that.
  test('the drier the air the sooner it dries', () => {
    expect(dryingFactor(52.5, 52.5)).toBe(1);
    expect(dryingFactor(76.25, 52.5)).toBeCloseTo(2, 12);
    expect(dryingFactor(0, 50)).toBeCloseTo(0.5, 12);
    expect(dryingFactor(95, 50)).toBeCloseTo(10, 12);
    expect(dryingFactor(100, 50)).toBeCloseTo(10, 12);
    for (const humidity of [-1, 101, NaN]) expect(codeOf(() => dryingFactor(humidity, 50))).toBe('humidity');
    expect(refusedBy(() => dryingFactor(150, 50))[0].message).toMatchObject({ values: { humidity: { share: 1.5 } } });
  });

  const advice = (pullsPerHour: number, openMinutes: readonly [number, number] = [5, 15], mishapMinutes = 4) =>
    openTimeAdvice({ pullsPerHour, humidityPercent: 52.5, openMinutes, mishapMinutes });
  // docs/trade.md 3: retarder 2..5 %, ceiling 10 %; 5..15 min open; a percent gains 12 %.
  test('60 pulls an hour and a mishap of 4 min need the 5 that ink stays open: no retarder', () => {
    expect(advice(60)).toMatchObject({
      intervalMinutes: 1,
      neededMinutes: 5,
      openMinutes: [5, 15],
      retarderShare: 0,
      problems: [],
      text: { key: 'day.noRetarder' },
    });
    expect(openTimeAdvice({ pullsPerHour: 40, humidityPercent: 76.25 })).toMatchObject({
      openMinutes: [expect.closeTo(10, 9), expect.closeTo(30, 9)],
      intervalMinutes: 1.5,
      neededMinutes: 5.5,
      retarderShare: 0,
    });
    expect(openTimeAdvice({ pullsPerHour: 40, humidityPercent: 52.5 })).toMatchObject({ retarderShare: 0.02 });
  });

  test('ten minutes of 5: 9 %; 8 minutes: 5 %; 5.1 min: the least that is used; more than 10 % is no help', () => {
    expect(advice(60, [5, 15], 4.1)).toMatchObject({ retarderShare: 0.02, problems: [], text: { key: 'day.takeRetarder' } });
    expect(advice(30, [5, 15], 5.5)).toMatchObject({ retarderShare: 0.05, problems: [] });
    expect(advice(30, [5, 15], 6.1)).toMatchObject({
      retarderShare: 0.06,
      problems: [{ severity: 'warning', code: 'retarder-high', message: { values: { low: { value: 2 }, high: { share: 0.05 } } } }],
    });
    expect(advice(12, [5, 15], 5)).toMatchObject({ retarderShare: 0.09, problems: [{ code: 'retarder-high' }] });
    expect(advice(12, [5, 15], 5.9)).toMatchObject({ retarderShare: 0.1, problems: [{ code: 'retarder-high' }] });
    expect(advice(12, [5, 15], 6.1)).toMatchObject({
      retarderShare: 0.1,
      problems: [{ severity: 'warning', code: 'ink-dries-in-mesh', message: { values: { humidity: { share: 0.525 } } } }],
    });
    for (const pulls of [0, -3, NaN]) expect(codeOf(() => advice(pulls))).toBe('pace');
  });
});

describe('numbers in pencil', () => {
  const runs = ['one', 'two'];
  const sheet = (id: string, more: Partial<Sheet> = {}): Sheet => ({ id, paper: 'p', runs, faults: [], ...more });
  const many = (n: number, more: Partial<Sheet> = {}): Sheet[] =>
    Array.from({ length: n }, (_, i) => sheet(`${more.paper ?? 's'}${i + 1}`, more));
  const fault = (rejects: boolean) => ({ run: 'one', rejects, kind: 'smear' }) as unknown as Sheet['faults'][number];
  const number = (sheets: readonly Sheet[], more: Partial<NumberingInput> = {}) =>
    numberEdition({
      sheets,
      runs,
      proofs: { artistsProofShare: 0, batProofs: 0, printersProofs: 0, horsCommerce: 0 },
      papersAre: 'sub-editions',
      ...more,
    });
  const marks = (made: ReturnType<typeof number>) => made.sheets.map((one) => [one.kind, one.number, one.of]);

  test('Roman numerals as they are written', () => {
    // 1..10 and the usual dates: any textbook.
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map(roman)).toEqual(['I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X']);
    expect([14, 40, 49, 50, 90, 99, 100, 400, 500, 888, 900, 1666, 1954, 3999].map(roman)).toEqual([
      'XIV',
      'XL',
      'XLIX',
      'L',
      'XC',
      'XCIX',
      'C',
      'CD',
      'D',
      'DCCCLXXXVIII',
      'CM',
      'MDCLXVI',
      'MCMLIV',
      'MMMCMXCIX',
    ]);
    expect([0, -4, 1.5, 4000].map(roman)).toEqual(['0', '-4', '1.5', '4000']);
  });

  test('good is through every run, without what rejects it, and not set apart but as B.A.T.', () => {
    expect([sheet('a'), sheet('a', { faults: [fault(false)] }), sheet('a', { kept: 'bat' })].map((one) => isGood(one, runs))).toEqual([
      true,
      true,
      true,
    ]);
    expect(
      [sheet('a', { runs: ['one'] }), sheet('a', { faults: [fault(false), fault(true)] }), sheet('a', { kept: 'state' })].map((one) =>
        isGood(one, runs),
      ),
    ).toEqual([false, false, false]);
  });

  // docs/trade.md 7: B.A.T. first, then the numbers, A/P, P/P, H.C.; the order of numbers means nothing.
  test('ten good sheets, five to number: B.A.T., 1/5 to 5/5, one A/P, one P/P, one H.C., one spare', () => {
    const made = number(many(10), { target: 5, proofs: { artistsProofShare: 0.1, batProofs: 1, printersProofs: 1, horsCommerce: 1 } });
    expect(marks(made)).toEqual([
      ['bat', 1, 1],
      ...[1, 2, 3, 4, 5].map((n) => ['edition', n, 5]),
      ['artists', 1, 1],
      ['printers', 1, 1],
      ['hors-commerce', 1, 1],
      ['spare', null, null],
    ]);
    expect(made.sheets[1].text).toMatchObject({ key: 'edition.markEdition', values: { number: 1, of: 5 } });
    expect(made.sheets[0].text).toMatchObject({ key: 'edition.markBat' });
    expect(made.sheets[8].text).toMatchObject({ key: 'edition.markHorsCommerce' });
    expect(made.sizes).toEqual([{ paper: 'p', edition: 5, artists: 1, bat: 1, printers: 1, horsCommerce: 1, spare: 1 }]);
    expect(made.problems).toMatchObject([{ code: 'spare-sheets', message: { values: { n: 1 } } }]);
    expect(made.totalImpressions).toBe(10);
    // Fewer good sheets than wishes: the numbers go first, then proofs in their order.
    const few = (n: number) =>
      number(many(n), { target: 5, proofs: { artistsProofShare: 0.4, batProofs: 0, printersProofs: 2, horsCommerce: 2 } }).sizes[0];
    expect([6, 8, 10].map((n) => [few(n).edition, few(n).artists, few(n).printers, few(n).horsCommerce, few(n).spare])).toEqual([
      [5, 1, 0, 0, 0],
      [5, 2, 1, 0, 0],
      [5, 2, 2, 1, 0],
    ]);
    expect(number(many(4), { target: 5 }).problems).toMatchObject([
      { severity: 'warning', code: 'edition-smaller', message: { values: { numbered: 4, target: 5 } } },
    ]);
  });

  test('without a target the edition leaves room for its proofs: of 12, a tenth A/P, a P/P and an H.C. leave 9', () => {
    const made = number(many(12), { proofs: { artistsProofShare: 0.1, batProofs: 0, printersProofs: 1, horsCommerce: 1 } });
    expect(made.sizes[0]).toMatchObject({ edition: 9, artists: 1, printers: 1, horsCommerce: 1, spare: 0 });
    expect(made.problems).toEqual([]);
    expect(
      number(many(1), { proofs: { artistsProofShare: 0.1, batProofs: 1, printersProofs: 1, horsCommerce: 1 } }).sizes[0],
    ).toMatchObject({ edition: 1, bat: 0, spare: 0 });
    expect(number(many(2), { proofs: { artistsProofShare: 0, batProofs: 5, printersProofs: 0, horsCommerce: 0 } }).sizes[0]).toMatchObject({
      edition: 1,
      bat: 1,
    });
    expect(number([]).problems).toMatchObject([{ severity: 'error', code: 'no-good-sheet' }]);
    expect(number([], { target: 3 }).problems).toHaveLength(1);
  });

  test('a B.A.T. that was chosen is the one; several are counted in Roman', () => {
    const sheets = [...many(3), sheet('x', { kept: 'bat' }), sheet('y', { kept: 'bat' })];
    const made = number(sheets, { proofs: { artistsProofShare: 0, batProofs: 1, printersProofs: 0, horsCommerce: 0 } });
    expect(marks(made).slice(3)).toEqual([
      ['bat', 1, 2],
      ['bat', 2, 2],
    ]);
    expect(made.sheets[4].text).toMatchObject({ key: 'edition.markOneOf', values: { number: { name: 'II' }, of: { name: 'II' } } });
    expect(made.sizes[0]).toMatchObject({ edition: 3, bat: 2 });
    expect(number(sheets, { proofs: { artistsProofShare: 0, batProofs: 3, printersProofs: 0, horsCommerce: 0 } }).sizes[0]).toMatchObject({
      edition: 2,
      bat: 3,
    });
  });

  // docs/trade.md 7: another paper falls outside the edition: sub-editions, or E.V.
  test('two papers are two editions, the target shared by their good sheets, or one varied edition', () => {
    const sheets = [...many(4, { paper: 'a' }), ...many(8, { paper: 'b' })];
    expect(number(sheets, { target: 9 }).sizes).toMatchObject([
      { paper: 'a', edition: 3, spare: 1 },
      { paper: 'b', edition: 6, spare: 2 },
    ]);
    expect(number(sheets).sizes).toMatchObject([
      { paper: 'a', edition: 4 },
      { paper: 'b', edition: 8 },
    ]);
    const varied = number(sheets, { target: 9, papersAre: 'varied' });
    expect(varied.sizes).toMatchObject([{ paper: null, edition: 9, spare: 3 }]);
    expect(varied.sheets[0]).toMatchObject({ kind: 'varied', number: 1, of: 9, text: { key: 'edition.markVaried' } });
    // A paper with no good sheet takes nothing of the target.
    expect(number([...many(3, { paper: 'a', runs: [] }), ...many(5, { paper: 'b' })], { target: 4 }).sizes).toMatchObject([
      { edition: 0 },
      { edition: 4 },
    ]);
    const three = [...many(3, { paper: 'a' }), ...many(3, { paper: 'b' }), ...many(3, { paper: 'c' })];
    expect(number(three, { target: 8 }).sizes.map((one) => one.edition)).toEqual([3, 3, 2]);
  });

  test('states by the runs they have seen, trials, and what is not signed', () => {
    const state = (id: string, seen: readonly string[]) => sheet(id, { runs: seen, kept: 'state' });
    const sheets = [
      sheet('a'),
      state('s2', ['one', 'two']),
      state('s1', ['one']),
      state('s1b', ['one']),
      state('s0', []),
      sheet('t1', { kept: 'colour-trial' }),
      sheet('t2', { kept: 'colour-trial' }),
      sheet('u', { kept: 'set-up' }),
      sheet('c', { kept: 'cancellation' }),
      sheet('r', { faults: [fault(true)] }),
      sheet('sr', { runs: ['one'], kept: 'state', faults: [fault(true), fault(false)] }),
      sheet('tr', { kept: 'colour-trial', faults: [fault(false), fault(true)] }),
      sheet('half', { runs: ['one'] }),
      sheet('never', { runs: [] }),
    ];
    const made = number(sheets);
    expect(marks(made)).toEqual([
      ['edition', 1, 1],
      ['state', 1, 1],
      ['state', 1, 2],
      ['state', 2, 2],
      ['rejected', null, null],
      ['colour-trial', 1, 2],
      ['colour-trial', 2, 2],
      ['set-up', null, null],
      ['cancellation', null, null],
      ['rejected', null, null],
      ['rejected', null, null],
      ['rejected', null, null],
      ['rejected', null, null],
      ['rejected', null, null],
    ]);
    expect(made.sheets[1].text).toMatchObject({ key: 'edition.markState', values: { step: { name: 'II' } } });
    expect(made.sheets[3].text).toMatchObject({ key: 'edition.markStateOneOf', values: { step: { name: 'I' }, number: 2, of: 2 } });
    expect(made.sheets[6].text).toMatchObject({ key: 'edition.markOneOf', values: { number: { name: 'II' } } });
    expect(made.sheets[8].text).toMatchObject({ key: 'edition.markCancellation' });
    // Impressions: all that met the screen, but for sheets to set up with.
    expect(made.totalImpressions).toBe(11);
    expect(codeOf(() => number([sheet('a'), sheet('a')]))).toBe('sheet-twice');
  });

  test('out of the count at the press: runs in laydown order, faults reject, no sheet is lost', () => {
    const state = {
      sheets: [
        { sheet: 's1', runs: ['two', 'one'], faults: [{ run: 'two', fault: 'smear' }] },
        { sheet: 'stray', runs: ['one'], faults: [] },
      ],
    } as unknown as Parameters<typeof sheetsFromCount>[0];
    const found = sheetsFromCount(
      state,
      [
        { id: 's1', paper: 'p' },
        { id: 's2', paper: 'p', kept: 'bat' },
      ],
      ['one', 'two', 'three'],
    );
    expect(found.map((one) => [one.id, one.paper, one.runs, one.faults.length])).toEqual([
      ['s1', 'p', ['one', 'two'], 1],
      ['s2', 'p', [], 0],
      ['stray', 'unknown', ['one'], 0],
    ]);
    expect(found[0].faults[0]).toMatchObject({ run: 'two', rejects: true });
    expect(found[1].kept).toBe('bat');
  });
});
