import { exp, expm1 } from '../../numeric/index.ts';
import { deltaE00Of, xyzAt, xyzFromLab, type Spectrum } from '../../colour/index.ts';
import { effectiveShare, internal, type Film, type Ink, type Surface } from '../../ink/index.ts';
import type { Targets, Use } from '../search/fit-score.ts';
import type { LayerRecipe, PotShare } from '../search/recipe.ts';
import { searchWasm } from './search-wasm.ts';

/** What stays the same while inks are searched. */
export interface EngineGround {
  readonly shelf: ReadonlyMap<string, Ink>;
  readonly paper: Spectrum;
  readonly surface: Surface;
  readonly deposit: number;
  /** Films already on the sheet, below everything. */
  readonly below: readonly Film[];
  /** Codes that may be printed; bits count from the first film below. */
  readonly codes: readonly number[];
  /** Overlaps worked out in half the bands: for telling many plans apart, not for settling one. */
  readonly quick?: boolean;
}

/**
 * How overlaps are judged, as mean ΔE00 over the targets: `rough` by the targets' forms alone, `exact` by ΔE00 where each target takes
 * the nearest overlap, `printed` by ΔE00 where it is given what prints where.
 */
export type Judge =
  | { readonly kind: 'rough' | 'exact'; readonly targets: Targets }
  | { readonly kind: 'printed'; readonly targets: Targets; readonly use: Use };

interface Exports {
  readonly memory: WebAssembly.Memory;
  place(what: number): number;
  setGround(vectors: number, ks: number, k1: number, k2: number, wx: number, wy: number, wz: number): void;
  setCounts(films: number, codes: number): void;
  setTargets(count: number, edgeScale: number, uses: number): void;
  score(): number;
  film(slot: number, pot: number): void;
  overlaps(from: number): void;
  assign(): void;
  judge(kind: number, stopAt: number): number;
  bestOf(at: number, count: number, kind: number, stopAt: number): number;
}

interface Engine extends Exports {
  readonly floats: Float32Array;
  readonly doubles: Float64Array;
  readonly bytes: Uint8Array;
  readonly words: Int32Array;
  readonly shorts: Int16Array;
  readonly at: Readonly<Record<(typeof places)[number], number>>;
}

const places = ['pots', 'films', 'inside', 'eye', 'lab', 'codes', 'targets', 'first', 'exact', 'edges', 'tried', 'uses', 'end'] as const;
/** More inks than this are too many to choose from. */
export const mostPots = 256;
const mostTargets = 256,
  mostTried = 2048,
  mostInPot = 15,
  mostUses = 65536;
/** Floats from one row of bands to the next, one pot or film (two rows), one colour axis. */
const row = 36,
  pair = 2 * row,
  axis = 256;
const kinds = { rough: 0, exact: 1, printed: 2 } as const;

let engine: Engine | undefined;
/** What lies in the engine's memory. */
let ground: EngineGround | undefined,
  numbers = new Map<string, number>(),
  judge: Judge | undefined;
let layers: (LayerRecipe | undefined)[] = [];

function started(): Engine {
  if (engine) return engine;
  const module = new WebAssembly.Module(Uint8Array.from(atob(searchWasm), (c) => c.charCodeAt(0)));
  const exports = new WebAssembly.Instance(module, { env: { deltaE00: deltaE00Of } }).exports as unknown as Exports;
  const { buffer } = exports.memory;
  const at = Object.fromEntries(places.map((name, i) => [name, exports.place(i)])) as Engine['at'];
  engine = {
    ...exports,
    at,
    floats: new Float32Array(buffer),
    doubles: new Float64Array(buffer),
    bytes: new Uint8Array(buffer),
    words: new Int32Array(buffer),
    shorts: new Int16Array(buffer),
  };
  return engine;
}

/** Bands as they come, or each two taken together (`mean`: averaged, otherwise added up). */
function bandsInto(to: Float32Array, at: number, values: ArrayLike<number>, quick: boolean, mean = true): void {
  to.fill(0, at, at + row);
  for (let i = 0; i < values.length; i++) {
    if (quick) to[at + (i >> 1)] += values[i] * (mean ? 0.5 : 1);
    else to[at + i] = values[i];
  }
}

function stand(on: EngineGround): Engine {
  const e = started();
  if (ground === on) return e;
  const { floats, at } = e,
    quick = on.quick ?? false,
    { ks, k1, k2 } = on.surface;
  const white = xyzFromLab([100, 0, 0]);
  e.setGround(quick ? 5 : 9, ks, k1, k2, white[0], white[1], white[2]);
  bandsInto(floats, at.inside / 4, internal(on.paper, on.surface), quick);
  const eye = Array.from({ length: row }, (_, band) =>
    xyzAt(
      Float64Array.from({ length: row }, (_, i) => (i === band ? 1 : 0)),
      0,
    ),
  );
  for (let c = 0; c < 3; c++)
    bandsInto(
      floats,
      at.eye / 4 + c * row,
      eye.map((xyz) => xyz[c]),
      quick,
      false,
    );
  numbers = new Map([...on.shelf.keys()].map((id, i) => [id, i]));
  [...on.shelf.values()].forEach((ink, i) => {
    bandsInto(floats, at.pots / 4 + i * pair, ink.k, quick);
    bandsInto(floats, at.pots / 4 + i * pair + row, ink.s, quick);
  });
  on.below.forEach((film, i) => {
    bandsInto(floats, at.films / 4 + i * pair, film.r0, quick);
    bandsInto(floats, at.films / 4 + i * pair + row, film.t2, quick);
  });
  e.bytes.set(on.codes, at.codes);
  ground = on;
  layers = [];
  return e;
}

function aim(e: Engine, at: Judge): void {
  if (judge === at) return;
  const { targets } = at,
    { count } = targets;
  const use = at.kind === 'printed' ? at.use : undefined;
  if (judge?.targets !== targets) {
    if (count > mostTargets) throw new RangeError('targets');
    const { floats, doubles } = e,
      to = e.at.targets / 4;
    floats.fill(0, to, to + 8 * axis);
    doubles.fill(0, e.at.exact / 8, e.at.exact / 8 + 4 * mostTargets);
    for (let i = 0; i < count; i++) {
      for (let c = 0; c < 3; c++) floats[to + c * axis + i] = doubles[e.at.exact / 8 + i * 4 + c] = targets.lab[i * 3 + c];
      for (let c = 0; c < 4; c++) floats[to + (3 + c) * axis + i] = targets.form[i * 4 + c];
      floats[to + 7 * axis + i] = doubles[e.at.exact / 8 + i * 4 + 3] = targets.weight[i];
    }
    e.bytes.fill(0, e.at.first, e.at.first + 2 * mostTargets);
  }
  const uses = use ? use.share.length : 0;
  if (uses > mostUses) throw new RangeError('uses');
  for (let i = 0; i < uses; i++) {
    e.words[e.at.uses / 4 + i * 4] = (use!.target[i] << 8) | use!.code[i];
    e.doubles[e.at.uses / 8 + i * 2 + 1] = use!.share[i];
  }
  // Rounded up to whole vectors; the targets added weigh nothing.
  e.setTargets((count + 3) & ~3, use ? 0 : edgesInto(e, targets), uses);
  judge = at;
}

/** Prices as whole numbers of the highest one's 1/32767. @returns what one of them is worth */
function edgesInto(e: Engine, { edges }: Targets): number {
  if (!edges || edges.price.length === 0) return 0;
  const to = e.at.edges / 2;
  e.shorts.fill(0, to, to + mostTargets * mostTargets);
  const unit = edges.price.reduce((a, b) => Math.max(a, b), 0) / 32767;
  if (unit === 0) return 0;
  for (let k = 0; k < edges.price.length; k++) {
    const a = Math.min(edges.a[k], edges.b[k]),
      b = Math.max(edges.a[k], edges.b[k]);
    e.shorts[to + a * mostTargets + b] = Math.round(edges.price[k] / unit);
  }
  return unit;
}

/** The films of these recipes and their overlaps. @param open place whose film does not matter yet */
function lay(e: Engine, on: EngineGround, recipes: readonly LayerRecipe[], open = -1): void {
  const printed = on.below.length;
  if (recipes.length !== layers.length) {
    layers = new Array<undefined>(recipes.length).fill(undefined);
    e.setCounts(printed + recipes.length, on.codes.length);
  }
  let from = layers.every((layer) => layer === undefined) ? 0 : Infinity;
  for (let i = 0; i < recipes.length; i++) {
    if (layers[i] === recipes[i] || i === open) continue;
    put(e, on, 0, recipes[i].parts);
    e.film(printed + i, 0);
    layers[i] = recipes[i];
    from = Math.min(from, printed + i);
  }
  if (open >= 0) layers[open] = undefined;
  if (from < Infinity) e.overlaps(from);
}

/** A pot among those to try. */
function put(e: Engine, on: EngineGround, n: number, parts: readonly PotShare[]): void {
  const to = e.at.tried / 4 + n * 32;
  if (parts.length > mostInPot) throw new RangeError('parts');
  e.words[to] = parts.length;
  for (let k = 0; k < parts.length; k++) {
    const { id, share } = parts[k];
    e.words[to + 1 + k] = numbers.get(id)!;
    e.floats[to + 17 + k] = effectiveShare(on.shelf.get(id)!, share) * on.deposit;
  }
}

/** Lab of every overlap of the films below and these, 3 a code; single precision. */
export function quickOverlaps(on: EngineGround, recipes: readonly LayerRecipe[]): Float64Array {
  const e = stand(on);
  lay(e, on, recipes);
  return labNow(e, 1 << (on.below.length + recipes.length));
}

function labNow({ floats, at }: Engine, count: number): Float64Array {
  const out = new Float64Array(count * 3),
    from = at.lab / 4;
  for (let code = 0; code < count; code++) for (let c = 0; c < 3; c++) out[code * 3 + c] = floats[from + c * axis + code];
  return out;
}

/** By how much a logarithm is nudged to see what it does. */
const nudge = 0.02;

/**
 * The overlaps, and how the Lab of each changes with the logarithm of each share, share after share from the lowest layer up.
 * @param free tells whether a layer's shares are asked for
 */
export function shareSlopes(
  on: EngineGround,
  recipes: readonly LayerRecipe[],
  free: (recipe: LayerRecipe) => boolean,
): { readonly lab: Float64Array; readonly slopes: readonly Float64Array[] } {
  const lab = quickOverlaps(on, recipes),
    e = stand(on),
    slopes: Float64Array[] = [];
  // From the top down: what lies below stays as it is while a film is nudged.
  for (let i = recipes.length - 1; i >= 0; i--) {
    if (!free(recipes[i])) continue;
    const { parts } = recipes[i],
      full = parts.reduce((sum, p) => sum + p.share, 0) >= 1 - 1e-9;
    const of = parts.map((part, k) => {
      // A full pot stays full: what one ink gains the others lose.
      const whole = full ? 1 + part.share * expm1(nudge) : 1;
      put(
        e,
        on,
        0,
        parts.map((p, j) => ({ id: p.id, share: (p.share * (j === k ? exp(nudge) : 1)) / whole })),
      );
      e.film(on.below.length + i, 0);
      e.overlaps(on.below.length + i);
      const moved = labNow(e, lab.length / 3);
      for (let c = 0; c < moved.length; c++) moved[c] = (moved[c] - lab[c]) / nudge;
      return moved;
    });
    slopes.unshift(...of);
    put(e, on, 0, parts);
    e.film(on.below.length + i, 0);
  }
  e.overlaps(on.below.length);
  return { lab, slopes };
}

/** Mean ΔE00 as the judge has it, edges counted. @param stopAt Infinity is returned once the score exceeds this */
export function judgedScore(on: EngineGround, by: Judge, recipes: readonly LayerRecipe[], stopAt = Infinity): number {
  const e = stand(on);
  aim(e, by);
  lay(e, on, recipes);
  return e.judge(kinds[by.kind], stopAt);
}

/** Which colours these recipes print in which code. */
export function usedBy(on: EngineGround, by: Judge, recipes: readonly LayerRecipe[]): Use {
  if (by.kind === 'printed') return by.use;
  const e = stand(on),
    { targets } = by;
  aim(e, by);
  lay(e, on, recipes);
  if (by.kind === 'rough') e.assign();
  else e.judge(kinds.exact, Infinity);
  return {
    target: Uint16Array.from(targets.weight, (_, i) => i),
    code: e.bytes.slice(e.at.first, e.at.first + targets.count),
    share: targets.weight,
  };
}

/**
 * The best of several pots for one place.
 * @param at number of the recipe that is open
 * @returns which of them and its score, if it is below `stopAt`
 */
export function bestPot(
  on: EngineGround,
  by: Judge,
  recipes: readonly LayerRecipe[],
  at: number,
  pots: readonly (readonly PotShare[])[],
  stopAt: number,
): { readonly number: number; readonly score: number } | undefined {
  const e = stand(on);
  aim(e, by);
  lay(e, on, recipes, at);
  let best: { readonly number: number; readonly score: number } | undefined;
  for (let from = 0; from < pots.length; from += mostTried) {
    const some = pots.slice(from, from + mostTried);
    some.forEach((parts, n) => {
      put(e, on, n, parts);
    });
    const number = e.bestOf(on.below.length + at, some.length, kinds[by.kind], best?.score ?? stopAt);
    if (number >= 0) best = { number: from + number, score: e.score() };
  }
  return best;
}
