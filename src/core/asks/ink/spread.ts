import { exp } from '../../numeric/index.ts';
import { deltaE00, labFromXyz, srgbFromXyz, xyzAt, xyzFromLab, type Lab, type Spectrum } from '../../colour/index.ts';
import { overlapSpectra, type Member } from '../../ink/index.ts';
import type { Job } from '../../job/index.ts';
import { learnOnPaper, type Plan, type RunLayer } from '../../plan/index.ts';
import { seeded } from '../../random.ts';
import { inkBench, paperOf } from '../bench.ts';

/** Films of one hand from pull to pull: relative standard deviation, 0.1 to 0.2 (OPTICS section 6). */
export const usualHand = 0.15;
const shownSheets = 10;
const sampledSheets = 200;
const mostWays = 4;
/** All orders are tried up to so many layers; with more, each layer is tried in every place. */
const allOrdersUpTo = 5;
/** Ways that move the print's colours more than that are another print (common practice: 5 is another shade). */
const mostMoved = 6;

export interface SpreadAsk {
  readonly paperId?: string;
  /** Relative standard deviation of a film from pull to pull; left out: 0.15. */
  readonly hand?: number;
}

export interface SpreadOverlap {
  readonly code: number;
  readonly layers: readonly string[];
  readonly areaMm2: number;
  /** ΔE00 from the colour foreseen within which nine sheets in ten stay. */
  readonly band: number;
  /** On the ten sheets that are shown. */
  readonly srgb: readonly string[];
}

export type SpreadWay = {
  /** Mean of the bands, by area, if it were printed so. */
  readonly meanBand: number;
  /** Mean ΔE00 that the colours move, by area. */
  readonly moved: number;
} & (
  | { readonly kind: 'order'; readonly layers: readonly string[] }
  | { readonly kind: 'strength'; readonly layer: string; readonly strength: number }
);

export interface Spread {
  readonly paperId: string;
  readonly hand: number;
  readonly sheets: number;
  /** Mean of the bands, by area. */
  readonly meanBand: number;
  /** Those that vary most first. */
  readonly overlaps: readonly SpreadOverlap[];
  /** What lessens it most, for the least change of the print. */
  readonly ways: readonly SpreadWay[];
}

/** How sheets of one edition differ by the hand's deposit alone, and what would lessen it: from the films that the Plan shows, learned ones where proofs were read. Seeded by the job. */
export function askSpread(plan: Plan, ask: SpreadAsk): Spread {
  const bench = inkBench(plan.job, plan);
  const { paper, spectrum } = paperOf(bench, ask.paperId);
  const hand = ask.hand ?? usualHand;
  const overlaps = (plan.papers.find((p) => p.id === paper.id)?.overlaps ?? []).filter((o) => o.layers.length > 0 && o.areaMm2 > 0);
  const layers = bench.layers.filter((l) => l.ink !== null && bench.found.inks.has(l.ink));
  const learned = learnOnPaper(plan.job, bench.layers, bench.found, paper.id);
  const rowOf = (ids: readonly string[], of: readonly RunLayer[]): number =>
    of.reduce((row, l, i) => (ids.includes(l.id) ? row | (1 << i) : row), 0);
  // Films as readings of proofs have taught them, each so many times as thick.
  const labsOf = (of: readonly RunLayer[], times?: readonly number[]): Float64Array =>
    learned ? labsOfPrint(spectrum, learned.laid(of, times)) : new Float64Array(3 << of.length);
  const own = labsOf(layers);
  const random = seeded(plan.job.seed);
  const labs: Lab[][] = overlaps.map(() => []);
  for (let sheet = 0; sheet < sampledSheets; sheet++) {
    const films = layers.map(() => exp(hand * random.normal() - (hand * hand) / 2));
    const there = labsOf(layers, films);
    overlaps.forEach((overlap, k) => {
      const at = rowOf(overlap.layers, layers) * 3;
      // What was learned or read moves every sheet alike.
      labs[k].push([0, 1, 2].map((c) => overlap.lab[c] + there[at + c] - own[at + c]) as unknown as Lab);
    });
  }
  const told = overlaps.map((overlap, k): SpreadOverlap => {
    const off = Float64Array.from(labs[k], (lab) => deltaE00(lab, overlap.lab)).sort();
    return {
      code: overlap.code,
      layers: overlap.layers,
      areaMm2: overlap.areaMm2,
      band: tenth(off[Math.floor(0.9 * off.length)]),
      srgb: labs[k].slice(0, shownSheets).map((lab) => srgbFromXyz(xyzFromLab([Math.max(0, lab[0]), lab[1], lab[2]])).hex),
    };
  });
  const whole = overlaps.reduce((sum, o) => sum + o.areaMm2, 0) || 1;
  const meanBand = tenth(told.reduce((sum, o) => sum + o.band * o.areaMm2, 0) / whole);

  // Ways are compared by first differences: far cheaper than sheets by chance, and as good for telling one from the other.
  const judge = (of: readonly RunLayer[]): { readonly steady: number; readonly labs: Float64Array } => {
    const base = labsOf(of);
    const squares = new Float64Array(base.length / 3);
    of.forEach((_, i) => {
      const thicker = labsOf(
        of,
        of.map((__, k) => (k === i ? 1 + hand : 1)),
      );
      for (let row = 0; row < squares.length; row++) squares[row] += deltaE00(at(base, row), at(thicker, row)) ** 2;
    });
    const steady = overlaps.reduce((sum, o) => sum + o.areaMm2 * Math.sqrt(squares[rowOf(o.layers, of)]), 0) / whole;
    return { steady, labs: base };
  };
  const now = judge(layers);
  const movedBy = (of: readonly RunLayer[], then: Float64Array): number =>
    overlaps.reduce((sum, o) => sum + o.areaMm2 * deltaE00(at(then, rowOf(o.layers, of)), at(now.labs, rowOf(o.layers, layers))), 0) /
    whole;
  const ways: SpreadWay[] = [];
  const weigh = (
    of: readonly RunLayer[],
    way: { kind: 'order'; layers: string[] } | { kind: 'strength'; layer: string; strength: number },
  ): void => {
    const then = judge(of);
    const moved = movedBy(of, then.labs);
    if (now.steady === 0 || then.steady > 0.97 * now.steady || moved > mostMoved) return;
    ways.push({ ...way, meanBand: tenth((meanBand * then.steady) / now.steady), moved: tenth(moved) });
  };
  for (const order of ordersOf(layers)) weigh(order, { kind: 'order', layers: order.map((l) => l.id) });
  for (const layer of layers) {
    for (const times of [0.7, 0.85, 1.2, 1.5]) {
      const strength = Math.round(Math.min(1, layer.strength * times) * 100) / 100;
      if (strength === layer.strength || strength <= 0) continue;
      weigh(
        layers.map((l) => (l.id === layer.id ? { ...l, strength } : l)),
        { kind: 'strength', layer: layer.id, strength },
      );
    }
  }
  ways.sort((a, b) => a.meanBand - b.meanBand + 0.15 * (a.moved - b.moved));
  const orders = ways.filter((w) => w.kind === 'order').slice(0, 2),
    strengths = ways.filter((w, i) => w.kind === 'strength' && ways.findIndex((o) => o.kind === 'strength' && o.layer === w.layer) === i);
  return {
    paperId: paper.id,
    hand,
    sheets: shownSheets,
    meanBand,
    overlaps: told.toSorted((a, b) => b.band - a.band || b.areaMm2 - a.areaMm2 || a.code - b.code),
    ways: [...orders, ...strengths].slice(0, mostWays),
  };
}

/** Lab of every overlap of a print, three each. */
function labsOfPrint(paper: Spectrum, { films, surface, onFilm }: Member): Float64Array {
  const spectra = overlapSpectra(paper, films, surface, onFilm);
  const out = new Float64Array((spectra.length / 36) * 3);
  for (let row = 0; row < out.length / 3; row++) out.set(labFromXyz(xyzAt(spectra, row * 36)), row * 3);
  return out;
}

const at = (labs: Float64Array, row: number): Lab => [labs[row * 3], labs[row * 3 + 1], labs[row * 3 + 2]];

/** Every order; with many layers each layer moved to every place. The order there is, is none. */
function ordersOf(layers: readonly RunLayer[]): RunLayer[][] {
  if (layers.length <= allOrdersUpTo) {
    const all: RunLayer[][] = [];
    const grow = (order: readonly RunLayer[]): void => {
      if (order.length === layers.length) all.push([...order]);
      else for (const next of layers) if (!order.includes(next)) grow([...order, next]);
    };
    grow([]);
    return all.filter((order) => order.some((l, i) => l !== layers[i]));
  }
  return layers.flatMap((layer, from) =>
    layers.flatMap((_, to) => (to === from || to === from - 1 ? [] : [layers.toSpliced(from, 1).toSpliced(to, 0, layer)])),
  );
}

/** A job with one of the ways taken. */
export function withWay(job: Job, way: SpreadWay): Job {
  if (way.kind === 'strength')
    return { ...job, layers: job.layers.map((l) => (l.id === way.layer ? { ...l, strength: way.strength } : l)) };
  const queue = way.layers.flatMap((id) => job.layers.find((l) => l.id === id) ?? []);
  return { ...job, layers: job.layers.map((l) => (way.layers.includes(l.id) ? (queue.shift() ?? l) : l)) };
}

const tenth = (v: number): number => Math.round(v * 10) / 10;
