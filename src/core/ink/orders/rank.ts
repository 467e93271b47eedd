import { deltaE00Of, type Lab, type Spectrum } from '../../colour/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { deltaE as ofDeltaE, figure, say, type Saying } from '../../../words/say.ts';
import { quietTask, type Task } from '../../task.ts';
import { filmOf } from '../film/film.ts';
import type { Ink, Surface } from '../types.ts';
import { growTree, type StackTree } from './tree.ts';

export interface OrderLayer {
  readonly ink: Ink;
  readonly strength: number;
  readonly deposit: number;
}

/** What the printmaker wants of an order; weights of 0 leave a wish out. */
export interface OrderWishes {
  readonly nearWanted?: number;
  readonly manyColours?: number;
  readonly lightnessRange?: number;
  readonly clean?: number;
  readonly steady?: number;
}

export interface OrderAsk {
  readonly paper: Spectrum;
  readonly surface: Surface;
  /** In any order, at most 8. Everything below counts layers by their place in this list. */
  readonly layers: readonly OrderLayer[];
  readonly wanted?: readonly { readonly layers: readonly number[]; readonly lab: Lab }[];
  readonly wishes: OrderWishes;
  /** Area of each overlap by the bits of its layers; overlaps without area don't count. Left out: all count alike. */
  readonly areas?: Float64Array;
  /** Pairs `a, b`: a must be printed before b. */
  readonly before?: readonly (readonly [number, number])[];
  /** How many to return, best first. */
  readonly keep?: number;
}

export interface OrderValues {
  /** Mean ΔE00 to the wanted overlaps; 0 when nothing is wanted. */
  readonly nearWanted: number;
  /** Overlaps that differ from one another by about ΔE00 2 or more. */
  readonly manyColours: number;
  readonly lightnessRange: number;
  /** Mean chroma of the overlaps. */
  readonly clean: number;
  /** Mean ΔE00 when films come out 15 % heavier or lighter. */
  readonly steady: number;
}

export interface RankedOrder {
  /** Layers, first down first. */
  readonly order: readonly number[];
  /** 0..1, of what the best order for each wish would give. */
  readonly score: number;
  readonly values: OrderValues;
  /** What this order gives up against the best for each wish; empty when nothing. */
  readonly loses: readonly Saying[];
}

export interface OrderRanking {
  readonly orders: number;
  readonly ranked: readonly RankedOrder[];
  readonly best: OrderValues;
  readonly problems: readonly Problem[];
}

const names = ['nearWanted', 'manyColours', 'lightnessRange', 'clean', 'steady'] as const;
/** Less is better. */
const lessIsBetter = { nearWanted: true, manyColours: false, lightnessRange: false, clean: false, steady: true } as const;
const mostLayers = 8;
const depositChange = 0.15;
/** Deposits that come out heavier (+) and lighter (−), balanced over layers (rows of a Hadamard matrix). */
const patterns = [
  [1, 1, 1, 1, 1, 1, 1, 1],
  [-1, -1, -1, -1, -1, -1, -1, -1],
  [1, -1, 1, -1, 1, -1, 1, -1],
  [1, 1, -1, -1, 1, 1, -1, -1],
];

/**
 * Ranks every order of up to 8 layers by what the printmaker wants.
 * @throws ProblemError for more than 8 layers, or when the rules before/after leave no order
 */
export async function rankOrders(ask: OrderAsk, task: Task = quietTask): Promise<OrderRanking> {
  const n = ask.layers.length;
  if (n > mostLayers) fail('too-many-layers', 'layers', say('recipes.tooManyOrders', { n }), say('recipes.tryFewer', { most: mostLayers }));
  const films = ask.layers.map((l) => filmOf(l.ink, l.strength, l.deposit));
  const perturbed = patterns.map((signs) =>
    ask.layers.map((l, i) => filmOf(l.ink, l.strength, l.deposit * (1 + depositChange * signs[i]))),
  );
  task.report(0, say('recipes.tryingStacks'));
  const tree = growTree(ask.paper, films, perturbed, ask.surface);
  await task.pause();
  const table = await walk(tree, ask, task);
  if (table.count === 0) fail('no-order', 'layers', say('recipes.noOrder'), say('recipes.dropRule'));
  const { low, high } = extremes(table);
  const scores = new Float64Array(table.count);
  let whole = 0;
  names.forEach((name, c) => {
    const weight = ask.wishes[name] ?? 0;
    whole += weight;
    const span = high[c] - low[c];
    if (weight === 0) return;
    for (let o = 0; o < table.count; o++) {
      const part = span < 1e-9 ? 1 : (table.values[o * 5 + c] - low[c]) / span;
      scores[o] += weight * (span >= 1e-9 && lessIsBetter[name] ? 1 - part : part);
    }
  });
  const byScore = Array.from({ length: table.count }, (_, i) => i)
    .sort((a, b) => scores[b] - scores[a] || a - b)
    .slice(0, ask.keep ?? 20);
  const best = Object.fromEntries(names.map((name, c) => [name, lessIsBetter[name] ? low[c] : high[c]])) as unknown as OrderValues;
  const ranked = byScore.map((o): RankedOrder => {
    const values = Object.fromEntries(names.map((name, c) => [name, table.values[o * 5 + c]])) as unknown as OrderValues;
    return {
      order: [...table.orders.subarray(o * n, (o + 1) * n)],
      score: whole === 0 ? 1 : scores[o] / whole,
      values,
      loses: losses(values, best),
    };
  });
  const problems: Problem[] = [];
  if (n > 1 && names.every((_, c) => high[c] - low[c] < 0.05)) {
    problems.push(problem('note', 'order-changes-nothing', 'layers', say('recipes.orderChangesNothing'), say('recipes.orderByDrying')));
  }
  task.report(1);
  return { orders: table.count, ranked, best, problems };
}

interface Table {
  count: number;
  /** Five values per order, as in `names`. */
  readonly values: Float64Array;
  readonly orders: Uint8Array;
}

async function walk(tree: StackTree, ask: OrderAsk, task: Task): Promise<Table> {
  const n = tree.layers;
  let factorial = 1;
  for (let i = 2; i <= n; i++) factorial *= i;
  const table: Table = { count: 0, values: new Float64Array(factorial * 5), orders: new Uint8Array(factorial * n) };
  const rows = 1 << n;
  const counts = (mask: number): boolean => ask.areas === undefined || ask.areas[mask] > 0;
  const wanted = new Map((ask.wanted ?? []).map((w) => [w.layers.reduce((m, l) => m | (1 << l), 0), w.lab]));
  const wantedOff = new Float64Array(tree.nodes);
  for (let node = 0; node < tree.nodes; node++) {
    const lab = wanted.get(tree.mask[node]);
    if (lab) wantedOff[node] = deltaE00Of(lab[0], lab[1], lab[2], tree.lab[node * 3], tree.lab[node * 3 + 1], tree.lab[node * 3 + 2]);
  }
  const weightOf = Float64Array.from({ length: rows }, (_, mask) => (counts(mask) ? (ask.areas?.[mask] ?? 1) : 0));
  const wholeWeight = weightOf.reduce((a, b) => a + b, 0) || 1;
  const needs = new Uint8Array(n);
  for (const [a, b] of ask.before ?? []) needs[b] |= 1 << a;

  // stacks[d]: the nodes of all overlaps of the first d layers of the order.
  const stacks = Array.from({ length: n + 1 }, (_, d) => new Int32Array(1 << d));
  const stamp = new Int32Array(tree.cells);
  const order: number[] = [];
  const place = (layer: number, depth: number, sums: Sums): Sums => {
    const from = stacks[depth],
      to = stacks[depth + 1];
    const half = 1 << depth;
    let { off, clean, steady, lightest, darkest, colours } = sums;
    for (let i = 0; i < half; i++) {
      const below = from[i];
      const node = tree.child[below * n + layer];
      to[i] = below;
      to[half + i] = node;
      const weight = weightOf[tree.mask[node]];
      if (weight === 0) continue;
      off += wantedOff[node];
      clean += weight * tree.chroma[node];
      steady += weight * tree.sensitivity[node];
      const light = tree.lab[node * 3];
      if (light > lightest) lightest = light;
      if (light < darkest) darkest = light;
      if (stamp[tree.cell[node]]++ === 0) colours++;
    }
    return { off, clean, steady, lightest, darkest, colours };
  };
  const unplace = (depth: number): void => {
    const to = stacks[depth + 1];
    for (let i = 1 << depth; i < 2 << depth; i++) if (weightOf[tree.mask[to[i]]] !== 0) stamp[tree.cell[to[i]]]--;
  };
  const descend = (depth: number, used: number, sums: Sums): void => {
    if (depth === n) {
      const at = table.count++ * 5;
      table.values[at] = wanted.size === 0 ? 0 : sums.off / wanted.size;
      table.values[at + 1] = sums.colours;
      table.values[at + 2] = Math.max(0, sums.lightest - sums.darkest);
      table.values[at + 3] = sums.clean / wholeWeight;
      table.values[at + 4] = sums.steady / wholeWeight;
      table.orders.set(order, (table.count - 1) * n);
      return;
    }
    for (let layer = 0; layer < n; layer++) {
      if (used & (1 << layer) || (needs[layer] & used) !== needs[layer]) continue;
      const now = place(layer, depth, sums);
      order.push(layer);
      descend(depth + 1, used | (1 << layer), now);
      order.pop();
      unplace(depth);
    }
  };
  stacks[0][0] = 0;
  const bare = weightOf[0] > 0;
  if (bare) stamp[tree.cell[0]]++;
  const start: Sums = {
    off: bare ? wantedOff[0] : 0,
    clean: weightOf[0] * tree.chroma[0],
    steady: 0,
    colours: bare ? 1 : 0,
    lightest: bare ? tree.lab[0] : -Infinity,
    darkest: bare ? tree.lab[0] : Infinity,
  };
  if (n === 0) {
    descend(0, 0, start);
    return table;
  }
  // The first layer here, so that the work can pause between them.
  for (let layer = 0; layer < n; layer++) {
    if (needs[layer] !== 0) continue;
    const now = place(layer, 0, start);
    order.push(layer);
    descend(1, 1 << layer, now);
    order.pop();
    unplace(0);
    task.report((layer + 1) / (n + 1), say('recipes.tryingOrders'));
    await task.pause();
  }
  return table;
}

interface Sums {
  readonly off: number;
  readonly clean: number;
  readonly steady: number;
  readonly lightest: number;
  readonly darkest: number;
  readonly colours: number;
}

function extremes(table: Table): { readonly low: number[]; readonly high: number[] } {
  const low = names.map(() => Infinity),
    high = names.map(() => -Infinity);
  for (let o = 0; o < table.count; o++) {
    for (let c = 0; c < 5; c++) {
      low[c] = Math.min(low[c], table.values[o * 5 + c]);
      high[c] = Math.max(high[c], table.values[o * 5 + c]);
    }
  }
  return { low, high };
}

function losses(values: OrderValues, best: OrderValues): Saying[] {
  const out: Saying[] = [];
  const off = values.nearWanted - best.nearWanted;
  const colours = best.manyColours - values.manyColours;
  const range = best.lightnessRange - values.lightnessRange;
  const chroma = best.clean - values.clean;
  const moved = values.steady - best.steady;
  if (off > 0.3) out.push(say('recipes.losesWanted', { by: ofDeltaE(off) }));
  if (colours >= 1) out.push(say('recipes.losesColours', { n: colours }));
  if (range > 0.5) out.push(say('recipes.losesRange', { by: figure(range, 1) }));
  if (chroma > 0.5) out.push(say('recipes.losesChroma', { by: figure(chroma, 1) }));
  if (moved > 0.1) out.push(say('recipes.losesSteadiness', { by: ofDeltaE(moved) }));
  return out;
}
