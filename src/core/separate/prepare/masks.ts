import { binColours, costTable, type Bins } from './bins.ts';
import { outlineLengths, pictureCost } from '../kernels/length.ts';
import { relaxed, type Field } from '../kernels/relax.ts';
import { thresholdRoom, thresholdSweep } from '../kernels/threshold.ts';

/** One size of the picture, with its colours in boxes. */
export interface Level {
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly lab: Float32Array;
  readonly bins: Bins;
  readonly weight?: Float32Array;
  /** Bits already decided on each pixel. */
  readonly fixedCodes?: Uint8Array;
}

/** What may be printed where, and what a millimetre of knife costs. */
export interface MaskRules {
  readonly layers: number;
  readonly overlapLab: Float64Array;
  /** Codes that may be printed at all; all of them if left out. */
  readonly allowed?: readonly number[];
  /** Bits that stay as they are. */
  readonly frozen?: number;
  /** Open layers are window and piece of one cut, two by two. */
  readonly paired?: boolean;
  /** ΔE00·mm a mm of outline: how much colour error a mm of cutting must save. */
  readonly priceMm: number;
  /** Near-blacks count as one: for masks that are to be cut, not for what is told of them. */
  readonly blacksAlike?: boolean;
  /** Share of the price each layer pays, 1 if left out (0.5 for the two stencils of one cut). */
  readonly layerPrice?: readonly number[];
}

/** Coarser than about so many pixels across, nothing is told. */
const leastPx = 90,
  mostLevels = 4;

/** How often a raster is halved. */
export function halvings(width: number, height: number): number {
  let n = 0;
  while (Math.min(width >> n, height >> n) >= 2 * leastPx && n + 1 < mostLevels) n++;
  return n;
}

/** The picture and its halves, finest first. */
export function levelsOf(
  lab: Float32Array,
  width: number,
  height: number,
  mmPerPx: number,
  { boxStep, ...extra }: { weight?: Float32Array; fixedCodes?: Uint8Array; boxStep?: number } = {},
): Level[] {
  const levels: Level[] = [levelOf({ width, height, mmPerPx, lab, ...extra }, boxStep)];
  for (let n = halvings(width, height); n > 0; n--) levels.push(halved(levels.at(-1)!));
  return levels;
}

function halved(level: Level): Level {
  const width = level.width >> 1,
    height = level.height >> 1;
  const lab = new Float32Array(width * height * 3);
  const weight = level.weight && new Float32Array(width * height);
  const fixedCodes = level.fixedCodes && halvedCodes(level.fixedCodes, level.width, { width, height });
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const a = 2 * y * level.width + 2 * x,
        to = y * width + x;
      for (let c = 0; c < 3; c++) {
        lab[to * 3 + c] =
          (level.lab[a * 3 + c] +
            level.lab[(a + 1) * 3 + c] +
            level.lab[(a + level.width) * 3 + c] +
            level.lab[(a + level.width + 1) * 3 + c]) /
          4;
      }
      if (weight)
        weight[to] = (level.weight![a] + level.weight![a + 1] + level.weight![a + level.width] + level.weight![a + level.width + 1]) / 4;
    }
  return levelOf({ width, height, mmPerPx: level.mmPerPx * 2, lab, weight, fixedCodes });
}

/** Its colours are put in boxes when somebody asks for them: a sketch needs only those of the coarsest level. */
function levelOf(level: Omit<Level, 'bins'>, boxStep?: number): Level {
  let bins: Bins | undefined;
  return {
    ...level,
    get bins() {
      return (bins ??= binColours(level.lab, level.weight, boxStep));
    },
  };
}

/** What is decided, on a level of half as many pixels each way. */
export function halvedCodes(codes: Uint8Array, from: number, { width, height }: Pick<Level, 'width' | 'height'>): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(width * height);
  for (let y = 0, to = 0; y < height; y++) for (let x = 0; x < width; x++) out[to++] = codes[2 * y * from + 2 * x];
  return out;
}

/** The kernels' view of a level under rules. */
export function fieldOf(level: Level, rules: MaskRules): Field {
  const codeCount = 1 << rules.layers;
  return {
    width: level.width,
    height: level.height,
    binOf: level.bins.of,
    codeCount,
    layers: rules.layers,
    ...tablesOf(level.bins, rules, codeCount),
    price: Float32Array.from({ length: 8 }, (_, i) =>
      i < rules.layers ? (rules.priceMm / level.mmPerPx) * (rules.layerPrice?.[i] ?? 1) : 0,
    ),
    weight: level.weight,
    frozen: rules.frozen ?? 0,
    paired: rules.paired,
  };
}

interface Tables {
  readonly overlapLab: Float64Array;
  readonly allowed: readonly number[] | undefined;
  readonly blacksAlike: boolean;
  readonly table: Float32Array;
  readonly candidates: Uint8Array;
  readonly perBin: number;
}

/** The same inks are asked for at many prices: the last tables of each level are kept. */
const lastTables = new WeakMap<Bins, Tables>();

function tablesOf(bins: Bins, rules: MaskRules, codeCount: number): Pick<Tables, 'table' | 'candidates' | 'perBin'> {
  const known = lastTables.get(bins);
  const allowed = rules.allowed ?? Array.from({ length: codeCount }, (_, i) => i);
  const perBin = rules.frozen ? allowed.length : Math.min(allowed.length, mostCandidates);
  const blacksAlike = rules.blacksAlike ?? false;
  if (
    known &&
    known.overlapLab === rules.overlapLab &&
    known.allowed === rules.allowed &&
    known.perBin === perBin &&
    known.blacksAlike === blacksAlike
  )
    return known;
  const table = costTable(bins, rules.overlapLab, blacksAlike);
  const made = {
    overlapLab: rules.overlapLab,
    allowed: rules.allowed,
    blacksAlike,
    table,
    candidates: bestCodes(table, codeCount, allowed, perBin),
    perBin,
  };
  lastTables.set(bins, made);
  return { table, candidates: made.candidates, perBin };
}

/** Codes tried on a pixel beside its present one: with the best 16 of 64 the energy is within a thousandth of trying all. */
const mostCandidates = 16;

/** For each box its cheapest codes, cheapest first; the lower code where two cost the same. */
function bestCodes(table: Float32Array, codeCount: number, allowed: readonly number[], perBin: number): Uint8Array {
  const bins = table.length / codeCount;
  const out = new Uint8Array(bins * perBin),
    costs = new Float32Array(perBin),
    codes = Uint8Array.from(allowed).sort();
  for (let bin = 0; bin < bins; bin++) {
    const row = bin * codeCount,
      to = bin * perBin;
    for (let k = 0; k < codes.length; k++) {
      const cost = table[row + codes[k]];
      if (k >= perBin && cost >= costs[perBin - 1]) continue;
      let at = Math.min(k, perBin - 1);
      for (; at > 0 && costs[at - 1] > cost; at--) {
        costs[at] = costs[at - 1];
        out[to + at] = out[to + at - 1];
      }
      costs[at] = cost;
      out[to + at] = codes[k];
    }
  }
  return out;
}

/** Every pixel's best code by itself: no knife budget at all. */
export function freeCodes(field: Field, fixedCodes?: Uint8Array): Uint8Array {
  const { binOf, candidates, perBin, frozen } = field;
  const codes = new Uint8Array(binOf.length);
  for (let i = 0; i < codes.length; i++) {
    let k = 0;
    if (fixedCodes) while (k + 1 < perBin && (candidates[binOf[i] * perBin + k] ^ fixedCodes[i]) & frozen) k++;
    codes[i] = candidates[binOf[i] * perBin + k];
  }
  return codes;
}

export function doubled(codes: Uint8Array, from: Level, to: Level): Uint8Array {
  const out = new Uint8Array(to.width * to.height);
  for (let y = 0; y < to.height; y++) {
    const sy = Math.min(from.height - 1, y >> 1);
    for (let x = 0; x < to.width; x++) out[y * to.width + x] = codes[sy * from.width + Math.min(from.width - 1, x >> 1)];
  }
  return out;
}

/** The bits that lie there already, as they lie. */
export function withFixed(codes: Uint8Array, level: Level, frozen: number): Uint8Array {
  const { fixedCodes } = level;
  return frozen && fixedCodes ? codes.map((code, i) => (code & ~frozen) | (fixedCodes[i] & frozen)) : codes;
}

/** Energy in ΔE00·mm²: colour error over the area plus the price of all outlines. */
export function energyOf(field: Field, codes: Uint8Array, mmPerPx: number): number {
  const lengths = outlineLengths(codes, field.width, field.height, field.layers);
  let sum = pictureCost(codes, field.binOf, field.table, field.codeCount, field.weight);
  lengths.forEach((length, i) => {
    sum += length * field.price[i];
  });
  return sum * mmPerPx * mmPerPx;
}

/** Settles codes on one level: threshold dynamics from wide to narrow, then single pixels until almost nothing moves. */
export function settle(field: Field, codes: Uint8Array, wide: readonly number[], sweeps = 4): void {
  if (wide.length > 0) {
    const room = thresholdRoom(codes.length, field.layers);
    for (const sigma of wide) {
      for (let turn = 0; turn < sweeps; turn++) if (thresholdSweep(field, codes, sigma, room) < codes.length * 1e-3) break;
    }
  }
  relaxed(field, codes, 12, 5e-5);
}

/** Masks under a price of knife length, from the coarsest level up to `finest`. */
export function solveMasks(levels: readonly Level[], rules: MaskRules, finest = 0): Uint8Array {
  let codes: Uint8Array | undefined;
  for (let at = levels.length - 1; at >= finest; at--) codes = solveLevel(levels, rules, at, codes);
  return codes!;
}

/** One level of it. @param coarser masks of the level above; none on the coarsest */
export function solveLevel(levels: readonly Level[], rules: MaskRules, at: number, coarser: Uint8Array | undefined): Uint8Array {
  const level = levels[at];
  const field = fieldOf(level, rules);
  const start = coarser ? doubled(coarser, levels[at + 1], level) : freeCodes(field, level.fixedCodes);
  const codes = withFixed(start, level, rules.frozen ?? 0);
  // Wide moves pay where the raster is coarse; finer levels only follow.
  settle(field, codes, rules.priceMm > 0 ? (coarser ? (codes.length < 60_000 ? [1.2] : []) : [6, 3, 1.5]) : []);
  return codes;
}
