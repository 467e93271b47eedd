import type { Task } from '../../task.ts';
import { blurMask, blurPlane, gaussTaps } from './blur.ts';
import { flipped } from './flip.ts';
import { outlineLengths } from './length.ts';
import { around } from './morph.ts';
import { inOrder, type Bare, type Field } from './relax.ts';

/**
 * Layers that sit off by independent shifts N(0, σ²): with each layer's mask blurred by σ, a pixel carries code s with
 * chance Π qᵢ^sᵢ (1 − qᵢ)^(1 − sᵢ), so the expected cost has a closed form and is linear in any one layer.
 */
export interface RegisterRoom {
  readonly taps: Float32Array;
  /** Blurred mask of each layer. */
  readonly q: readonly Float32Array[];
  readonly plane: Float32Array;
  readonly gain: Float32Array;
  /** The layers that print a pixel for sure, a bit each, and those that may or may not. */
  readonly on: Uint8Array;
  readonly unsure: Uint8Array;
}

export function registerRoom(field: Field, codes: Uint8Array, sigmaPx: number): RegisterRoom {
  const n = codes.length;
  const room: RegisterRoom = {
    taps: gaussTaps(sigmaPx),
    q: Array.from({ length: field.layers }, () => new Float32Array(n)),
    plane: new Float32Array(n),
    gain: new Float32Array(n),
    on: new Uint8Array(n),
    unsure: new Uint8Array(n),
  };
  for (let b = 0; b < field.layers; b++) blurLayer(field, codes, b, room);
  return room;
}

export function blurLayer(field: Field, codes: Uint8Array, layer: number, room: RegisterRoom): void {
  const q = room.q[layer],
    { on, unsure } = room,
    bit = 1 << layer;
  blurMask(codes, layer, field.width, field.height, room.taps, q);
  for (let i = 0; i < q.length; i++) {
    const share = q[i],
      sureOn = share > 1 - sure;
    on[i] = sureOn ? on[i] | bit : on[i] & ~bit;
    unsure[i] = !sureOn && share > sure ? unsure[i] | bit : unsure[i] & ~bit;
  }
}

/** Shares nearer to 0 or 1 than this count as sure. */
const sure = 2e-3;

/** The layers of `which` and their shares at a pixel, the lowest first. @returns how many */
function open({ q }: RegisterRoom, i: number, which: number, layers: Uint8Array, shares: Float64Array): number {
  let count = 0;
  for (let left = which; left !== 0; left &= left - 1) {
    const b = 31 - Math.clz32(left & -left);
    layers[count] = b;
    shares[count++] = q[b][i];
  }
  return count;
}

/** Expected cost of every pixel, importance left out. */
export function expectedCosts(field: Field, room: RegisterRoom): Float32Array {
  const { table, codeCount, binOf, bare } = field;
  const values = new Float64Array(256),
    shares = new Float64Array(8),
    unsure = new Uint8Array(8);
  const out = new Float32Array(binOf.length);
  for (let i = 0; i < binOf.length; i++) {
    const base = room.on[i],
      count = open(room, i, room.unsure[i], unsure, shares);
    const row = binOf[i] * codeCount;
    out[i] = count === 0 ? table[row + base] : folded(table, row, base, unsure, shares, count, values, bare, i);
  }
  return out;
}

/** Mean over the picture of the expected cost per pixel, weighted by importance. */
export function expectedCost(field: Field, room: RegisterRoom): number {
  const costs = expectedCosts(field, room);
  let sum = 0;
  for (let i = 0; i < costs.length; i++) sum += field.weight ? costs[i] * field.weight[i] : costs[i];
  return sum / costs.length;
}

/**
 * How often each colour group is expected to be printed by each code.
 * @param groupOf group of each box of colours
 * @returns group × code, weighted by importance
 */
export function expectedUse(field: Field, room: RegisterRoom, groupOf: Uint16Array, groups: number): Float64Array {
  const { codeCount, binOf, layers, weight } = field;
  const out = new Float64Array(groups * codeCount);
  const chance = new Float64Array(256),
    codes = new Uint8Array(256);
  for (let i = 0; i < binOf.length; i++) {
    const row = groupOf[binOf[i]] * codeCount;
    let size = 1;
    chance[0] = weight ? weight[i] : 1;
    codes[0] = 0;
    for (let b = 0; b < layers; b++) {
      const share = room.q[b][i];
      if (share < sure) continue;
      if (share > 1 - sure) {
        for (let s = 0; s < size; s++) codes[s] |= 1 << b;
        continue;
      }
      for (let s = 0; s < size; s++) {
        codes[size + s] = codes[s] | (1 << b);
        chance[size + s] = chance[s] * share;
        chance[s] *= 1 - share;
      }
      size *= 2;
    }
    for (let s = 0; s < size; s++) out[row + codes[s]] += chance[s];
  }
  return out;
}

/** Expected table entry when `count` bits are on with their shares and the others are as in `base`. */
function folded(
  table: Float32Array,
  row: number,
  base: number,
  unsure: Uint8Array,
  shares: Float64Array,
  count: number,
  values: Float64Array,
  bare?: Bare,
  i = 0,
): number {
  values[0] = table[row + base] + (bare ? bareCost(bare, i, base) : 0);
  let size = 1;
  const codes = foldCodes;
  codes[0] = base;
  for (let k = 0; k < count; k++, size *= 2) {
    const bit = 1 << unsure[k];
    for (let s = 0; s < size; s++) {
      codes[size + s] = codes[s] | bit;
      values[size + s] = table[row + codes[size + s]] + (bare ? bareCost(bare, i, codes[size + s]) : 0);
    }
  }
  for (let k = count - 1; k >= 0; k--) {
    size >>= 1;
    const share = shares[k];
    for (let s = 0; s < size; s++) values[s] += share * (values[size + s] - values[s]);
  }
  return values[0];
}

/** What a code costs where it is lighter, or darker, than anything planned near by. */
function bareCost({ lightness, least, most, slitPrice, linePrice }: Bare, i: number, code: number): number {
  const light = lightness[code],
    slit = light - most[i],
    line = least[i] - light;
  return slit > 0 ? slitPrice * slit : line > 0 ? linePrice * line : 0;
}

/**
 * A watch on places that turn lighter than all that is planned around them: there the eye sees a slit of paper, not an edge that lies
 * a little elsewhere. And on those that turn darker than all: a line where two inks overlap that nobody drew.
 * @param lightness of each code
 * @param reachPx how far layers sit off
 */
export function bareWatch(
  codes: Uint8Array,
  width: number,
  height: number,
  lightness: Float32Array,
  reachPx: number,
  prices: Pick<Bare, 'slitPrice' | 'linePrice'>,
): Bare {
  const reach = Math.max(1, Math.round(reachPx));
  const here = Float32Array.from(codes, (code) => lightness[code]);
  // A dark line narrower than layers sit off is such an overlap itself, and no measure.
  const lines = Math.max(1, Math.round(reach / 2)),
    broad = around(around(here, width, height, lines, Math.max), width, height, lines, Math.min);
  const most = around(here, width, height, reach, Math.max),
    least = around(broad, width, height, reach, Math.min);
  for (let i = 0; i < most.length; i++) {
    most[i] += seenFrom;
    least[i] -= seenFrom;
  }
  return { lightness, least, most, ...prices };
}

/** L* that a slit must be lighter than its surroundings to count. */
const seenFrom = 4;

const foldCodes = new Uint8Array(256);

/** What having the layer at a pixel costs while the others stay: the blurred difference it makes, into `room.gain`. */
function gainOf(field: Field, layer: number, room: RegisterRoom): void {
  const { table, codeCount, binOf, weight, width, height, bare } = field;
  const { plane, gain, taps } = room;
  const values = new Float64Array(256),
    shares = new Float64Array(8),
    unsure = new Uint8Array(8);
  const bit = 1 << layer;
  for (let i = 0; i < binOf.length; i++) {
    const base = room.on[i] & ~bit,
      count = open(room, i, room.unsure[i] & ~bit, unsure, shares);
    const row = binOf[i] * codeCount;
    const difference =
      count === 0
        ? table[row + (base | bit)] - table[row + base] + (bare ? bareCost(bare, i, base | bit) - bareCost(bare, i, base) : 0)
        : folded(table, row, base | bit, unsure, shares, count, values, bare, i) -
          folded(table, row, base, unsure, shares, count, values, bare, i);
    plane[i] = weight ? difference * weight[i] : difference;
  }
  blurPlane(plane, width, height, taps, gain);
}

/**
 * One layer moved to where the expected cost plus knife length is less, the others staying: an exact step for the colour part,
 * single pixels in turn for the length.
 * @returns how many pixels changed
 */
export function registerStep(field: Field, codes: Uint8Array, layer: number, room: RegisterRoom, turns = 3): number {
  gainOf(field, layer, room);
  const changed = flipped(field, codes, layer, room.gain, field.price[layer], turns);
  if (changed > 0) blurLayer(field, codes, layer, room);
  return changed;
}

/**
 * The same for window and piece of one cut, moved together: what the one gains the other loses. That counts how both change at
 * one place only roughly, so the step is taken back if the whole is no better.
 * @param layer the lower one of the two
 */
export function registerPairStep(field: Field, codes: Uint8Array, layer: number, room: RegisterRoom, turns = 3): number {
  const before = codes.slice(),
    price = field.price[layer] + field.price[layer + 1],
    cost = registerObjective(field, codes, room);
  gainOf(field, layer + 1, room);
  const piece = room.gain.slice();
  gainOf(field, layer, room);
  for (let i = 0; i < piece.length; i++) room.gain[i] -= piece[i];
  const changed = flipped(field, codes, layer, room.gain, price, turns);
  for (let i = 0; i < codes.length; i++) if (codes[i] !== before[i]) codes[i] ^= 2 << layer;
  const settled = (): void => {
    for (const bit of [layer, layer + 1]) blurLayer(field, codes, bit, room);
  };
  settled();
  if (changed === 0 || registerObjective(field, codes, room) <= cost) return changed;
  codes.set(before);
  settled();
  return 0;
}

/** Expected cost and price of all outlines, a pixel. */
export function registerObjective(field: Field, codes: Uint8Array, room: RegisterRoom): number {
  let knife = 0;
  outlineLengths(codes, field.width, field.height, field.layers).forEach((length, i) => {
    knife += length * field.price[i];
  });
  return expectedCost(field, room) + knife / codes.length;
}

/** Masks moved so that the print suffers least from layers sitting off; `codes` is changed in place. */
export async function settleForRegister(of: Field, codes: Uint8Array, sigmaPx: number, rounds: number, task: Task): Promise<void> {
  const field = inOrder(of),
    room = registerRoom(field, codes, sigmaPx);
  for (let round = 0; round < rounds; round++) {
    let changed = 0;
    for (let layer = 0; layer < field.layers; layer++) {
      if (field.frozen & (1 << layer)) continue;
      await task.pause();
      if (field.paired) changed += registerPairStep(field, codes, layer++, room);
      else changed += registerStep(field, codes, layer, room);
    }
    if (changed < codes.length * 1e-4) break;
  }
}
