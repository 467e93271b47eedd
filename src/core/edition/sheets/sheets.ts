import { log10 } from '../../numeric/index.ts';
import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { figure, name as asName, say, share as asShare, type Saying } from '../../../words/say.ts';
import { binomialAtLeast, binomialQuantile } from './binomial.ts';

export interface SheetsToStart {
  readonly start: number;
  /** Chance that at least `target` good sheets come out of `start`: exact binomial, each sheet on its own. */
  readonly certainty: number;
  readonly survive: number;
  readonly expectedGood: number;
  /** The rule of thumb ⌈target / Π(1 − p)⌉, met about every other time only. */
  readonly rule: number;
  readonly throughRuns: readonly RunSheets[];
}

export interface RunSheets {
  /** From 0. */
  readonly run: number;
  /** Sheets that go into this run: on average, and as many as to be ready for. */
  readonly expected: number;
  readonly prepare: number;
}

const mostSheets = 100_000;

/** Sheets to start with so that `target` good ones come out with the wanted certainty. Throws ProblemError. */
export function sheetsToStart(input: {
  readonly target: number;
  readonly spoilagePerRun: readonly number[];
  readonly certainty: number;
}): SheetsToStart {
  const { target, certainty } = input;
  if (!(Number.isInteger(target) && target >= 1 && target <= mostSheets)) noEdition(target);
  if (!(certainty > 0 && certainty < 1))
    fail(
      'certainty',
      'edition.certainty',
      say('edition.certaintyImpossible', { certainty: asShare(certainty) }),
      say('edition.giveCertainty', { usual: asShare(0.9) }),
    );
  const survive = surviving(input.spoilagePerRun);
  if (target / survive > mostSheets) {
    const digits = Math.max(0, Math.min(6, 1 - Math.floor(log10(survive * 100))));
    fail(
      'spoilage-high',
      'edition.spoilagePerRun',
      say('edition.spoilageTooHigh', { survive: asShare(survive, digits) }),
      say('edition.fewerLayersOrPractise'),
    );
  }
  const good = (start: number): number => binomialAtLeast(start, target, survive);
  let low = target;
  let high = target;
  while (good(high) < certainty) {
    low = high + 1;
    high = Math.ceil(high * 1.5) + 1;
    if (high > mostSheets * 10) fail('spoilage-high', 'edition.certainty', say('edition.noStackThisSure'), say('edition.lessCertainty'));
  }
  while (low < high) {
    const middle = (low + high) >> 1;
    if (good(middle) >= certainty) high = middle;
    else low = middle + 1;
  }
  return {
    start: low,
    certainty: good(low),
    survive,
    expectedGood: low * survive,
    rule: Math.ceil(target / survive - 1e-9),
    throughRuns: throughRuns(low, input.spoilagePerRun, certainty),
  };
}

/** Chance that `start` sheets give at least `target` good ones. */
export function certaintyOf(start: number, target: number, spoilagePerRun: readonly number[]): number {
  return binomialAtLeast(start, target, surviving(spoilagePerRun));
}

/** Sheets into each run: on average, and the number not passed with the given certainty. The first run gets them all. */
export function throughRuns(start: number, spoilagePerRun: readonly number[], certainty: number): RunSheets[] {
  let share = 1;
  return spoilagePerRun.map((spoilage, run) => {
    const here = { run, expected: start * share, prepare: binomialQuantile(start, share, certainty) };
    share *= 1 - spoilage;
    return here;
  });
}

function noEdition(target: number): never {
  return fail(
    'no-sheets',
    'edition.target',
    say('edition.sizeImpossible', { target: figure(target, 2, false) }),
    say('edition.sayHowManyGood'),
  );
}

function surviving(spoilagePerRun: readonly number[]): number {
  return spoilagePerRun.reduce((share, spoilage) => {
    if (!(spoilage >= 0 && spoilage < 1))
      fail(
        'spoilage',
        'edition.spoilagePerRun',
        say('edition.spoilageImpossible', { spoilage: asShare(spoilage) }),
        say('edition.giveSpoilage', { usual: asShare(0.05) }),
      );
    return share * (1 - spoilage);
  }, 1);
}

export interface ProofWishes {
  /** Of the edition's number. */
  readonly artistsProofShare: number;
  readonly batProofs: number;
  readonly printersProofs: number;
  readonly horsCommerce: number;
}

export interface ProofCounts {
  readonly artists: number;
  readonly bat: number;
  readonly printers: number;
  readonly horsCommerce: number;
  readonly total: number;
}

/** Proofs that an edition of this many holds back: A/P rounded, at least one once a share is wished for. */
export function proofsFor(target: number, wishes: ProofWishes): ProofCounts {
  for (const [key, value] of Object.entries(wishes) as [string, number][]) {
    if (!(value >= 0 && value <= 10000))
      fail(
        'proof-count',
        `edition.${key}`,
        key === 'artistsProofShare'
          ? say('edition.artistsShareImpossible', { share: asShare(value) })
          : say('edition.proofsImpossible', { proofs: figure(value, 2, false) }),
        say('edition.noughtOrMore'),
      );
  }
  const artists = wishes.artistsProofShare > 0 && target > 0 ? Math.max(1, Math.round(target * wishes.artistsProofShare)) : 0;
  const total = artists + wishes.batProofs + wishes.printersProofs + wishes.horsCommerce;
  return { artists, bat: wishes.batProofs, printers: wishes.printersProofs, horsCommerce: wishes.horsCommerce, total };
}

export interface PaperForSheets {
  readonly id: string;
  readonly name: string;
  /** Sheets at hand. 0: still to be bought, as many as are needed. */
  readonly count: number;
  /** It already carries an older print: used as a ground, kept apart and counted for itself. */
  readonly printed?: boolean;
  /** Runs (by index) that this paper skips. */
  readonly skips?: readonly number[];
  /** Good sheets wanted on it; left out: the target is shared out by `count`. */
  readonly target?: number;
}

export interface PaperSheets {
  readonly paperId: string;
  readonly name: string;
  readonly apart: boolean;
  /** Good sheets wanted: edition and proofs. */
  readonly wanted: number;
  readonly edition: number;
  readonly proofs: ProofCounts;
  /** Sheets that go into the first run: what is at hand, or `toStart` when nothing is. */
  readonly start: number;
  /** Sheets needed to reach `wanted` with the certainty asked for. */
  readonly toStart: number;
  readonly certainty: number;
  readonly expectedGood: number;
  /** Between these, nine times in ten. */
  readonly likelyGood: readonly [number, number];
  readonly runs: readonly RunSheets[];
}

export interface SheetPlan {
  readonly papers: readonly PaperSheets[];
  /** All papers together, set-up sheets not counted. */
  readonly runs: readonly RunSheets[];
  /** Sheets used to set up each run; newsprint first, then offcuts of the good paper. */
  readonly setUp: { readonly perRun: number; readonly newsprint: number; readonly goodPaper: number; readonly text: Saying };
  readonly problems: readonly Problem[];
}

/** Which sheets to start, paper by paper. Throws ProblemError when nothing is to be printed. */
export function planSheets(input: {
  readonly papers: readonly PaperForSheets[];
  readonly target: number;
  readonly certainty: number;
  /** One for each run, in laydown order. */
  readonly spoilagePerRun: readonly number[];
  readonly setUpSheets: number;
  readonly proofs: ProofWishes;
  /** Paper that all proofs are taken from; left out: shared out like the edition. */
  readonly proofsOn?: string;
}): SheetPlan {
  const { papers, target, certainty, spoilagePerRun, setUpSheets, proofs } = input;
  if (papers.length === 0) fail('no-paper', 'papers', say('edition.noPaper'), say('edition.addPaper'));
  if (!(Number.isInteger(setUpSheets) && setUpSheets >= 0))
    fail(
      'set-up-sheets',
      'edition.setUpSheets',
      say('edition.setUpImpossible', { sheets: figure(setUpSheets, 2, false) }),
      say('edition.wholeNumber'),
    );
  const problems: Problem[] = [];
  const targets = shareOut(target, papers);
  if (targets.every((one) => one === 0)) noEdition(0);
  const wholeProofs = proofsFor(target, proofs);
  const asked = papers.findIndex((paper) => paper.id === input.proofsOn);
  const given = asked < 0 ? shareWhole(wholeProofs.total, targets) : papers.map((_, i) => (i === asked ? wholeProofs.total : 0));
  const planned = papers.map((paper, i): PaperSheets => {
    const edition = targets[i];
    const mine = splitProofs(wholeProofs, given, i);
    const wanted = edition + mine.total;
    const spoilage = spoilagePerRun.map((share, run) => (paper.skips?.includes(run) ? 0 : share));
    const toStart = wanted === 0 ? 0 : sheetsToStart({ target: wanted, spoilagePerRun: spoilage, certainty }).start;
    const start = paper.count > 0 ? paper.count : toStart;
    const survive = spoilage.reduce((share, one) => share * (1 - one), 1);
    const reached = wanted === 0 ? 1 : binomialAtLeast(start, wanted, survive);
    if (paper.count === 0 && toStart > 0)
      problems.push(
        problem(
          'note',
          'sheets-to-get',
          `papers[#${paper.id}].count`,
          say('edition.noneAtHand', { paper: asName(paper.name) }),
          say('edition.getSheets', { n: toStart }),
        ),
      );
    if (start < toStart) problems.push(shortOf(paper, { start, toStart, wanted, reached, certainty, proofs: mine.total }));
    return {
      paperId: paper.id,
      name: paper.name,
      apart: paper.printed === true,
      wanted,
      edition,
      proofs: mine,
      start,
      toStart,
      certainty: reached,
      expectedGood: start * survive,
      likelyGood: [binomialQuantile(start, survive, 0.05), binomialQuantile(start, survive, 0.95)],
      runs: throughRuns(start, spoilage, certainty).filter(({ run }) => !paper.skips?.includes(run)),
    };
  });
  const runs = spoilagePerRun.map((_, run): RunSheets => {
    const here = planned.flatMap((paper) => paper.runs.filter((one) => one.run === run));
    return { run, expected: sum(here.map((one) => one.expected)), prepare: sum(here.map((one) => one.prepare)) };
  });
  // The last one is of the good paper.
  const goodPaper = Math.min(1, setUpSheets),
    newsprint = setUpSheets - goodPaper;
  return {
    papers: planned,
    runs,
    problems,
    setUp: {
      perRun: setUpSheets,
      newsprint,
      goodPaper,
      text:
        goodPaper === 0
          ? say('edition.noSetUpSheet')
          : newsprint === 0
            ? say('edition.setUpOffcut')
            : say('edition.setUpSheets', { newsprint }),
    },
  };
}

function shortOf(
  paper: PaperForSheets,
  got: {
    readonly start: number;
    readonly toStart: number;
    readonly wanted: number;
    readonly reached: number;
    readonly certainty: number;
    readonly proofs: number;
  },
): Problem {
  const place = `papers[#${paper.id}].count`;
  const of = { sheets: got.start, paper: asName(paper.name) };
  if (got.proofs > got.start)
    return problem(
      'error',
      'more-proofs-than-sheets',
      place,
      say('edition.moreProofsThanSheets', { proofs: got.proofs, ...of }),
      say('edition.fewerProofsOr', { start: got.toStart }),
    );
  if (got.wanted > got.start)
    return problem(
      'error',
      'more-prints-than-sheets',
      place,
      say('edition.morePrintsThanSheets', { wanted: got.wanted, ...of }),
      say('edition.startWithOrSmaller', { start: got.toStart }),
    );
  return problem(
    'warning',
    'sheets-short',
    place,
    say('edition.sheetsShort', {
      ...of,
      wanted: got.wanted,
      reached: Math.floor(got.reached * 100),
      asked: Math.round(got.certainty * 100),
    }),
    say('edition.startWithOrSmaller', { start: got.toStart }),
  );
}

/** The target over the papers: their own wish, the rest by the sheets at hand (largest remainder), older prints last. */
function shareOut(target: number, papers: readonly PaperForSheets[]): number[] {
  const own = papers.map((paper) => paper.target);
  const left = Math.max(0, target - sum(own.map((one) => one ?? 0)));
  const open = papers.map((paper, i) => (own[i] !== undefined ? 0 : paper.count));
  const weights = sum(open) > 0 ? open : papers.map((_, i) => (own[i] === undefined ? 1 : 0));
  const shared = shareWhole(left, weights);
  return papers.map((_, i) => own[i] ?? shared[i]);
}

/** Whole numbers that add up to `total`, as near to the weights as can be (largest remainder, first wins a tie). */
export function shareWhole(total: number, weights: readonly number[]): number[] {
  const all = sum(weights);
  if (all <= 0) return weights.map(() => 0);
  const exact = weights.map((weight) => (total * weight) / all);
  const shares = exact.map(Math.floor);
  const order = exact.map((value, i) => ({ i, left: value - shares[i] })).sort((one, other) => other.left - one.left || one.i - other.i);
  for (let k = 0; k < total - sum(exact.map(Math.floor)); k++) shares[order[k % order.length].i]++;
  return shares;
}

/** Deals the proofs out in the order B.A.T., A/P, P/P, H.C., so that the first paper gets the B.A.T. */
function splitProofs(whole: ProofCounts, given: readonly number[], paper: number): ProofCounts {
  const from = sum(given.slice(0, paper));
  const to = from + given[paper];
  const within = (start: number, count: number): number => Math.max(0, Math.min(to, start + count) - Math.max(from, start));
  const bat = within(0, whole.bat);
  const artists = within(whole.bat, whole.artists);
  const printers = within(whole.bat + whole.artists, whole.printers);
  const horsCommerce = within(whole.bat + whole.artists + whole.printers, whole.horsCommerce);
  return { bat, artists, printers, horsCommerce, total: given[paper] };
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);
