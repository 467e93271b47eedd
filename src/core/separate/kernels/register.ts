import type { Task } from '../../task.ts';
import { flipTurns } from './flip.ts';
import { outlineLengths } from './length.ts';
import { around, deskOf, roomFor, type RegisterRoom } from './register-room.ts';
import { inOrder, type Bare, type Field } from './relax.ts';

export type { RegisterRoom } from './register-room.ts';

/** A room that nobody comes back to. */
export function leave(room: RegisterRoom): void {
  room.over = true;
}

/**
 * Layers that sit off by independent shifts N(0, σ²): with each layer's mask blurred by σ, a pixel carries code s with
 * chance Π qᵢ^sᵢ (1 − qᵢ)^(1 − sᵢ), so the expected cost has a closed form and is linear in any one layer.
 */
export function registerRoom(field: Field, codes: Uint8Array, sigmaPx: number): RegisterRoom {
  const room = roomFor(field, sigmaPx),
    { codes: lying, blurLayer: blur } = deskOf(room);
  lying.set(codes);
  for (let b = 0; b < field.layers; b++) blur(b, sure);
  return room;
}

/** A layer's shares as its mask lies now. */
export function blurLayer(codes: Uint8Array, layer: number, room: RegisterRoom): void {
  const desk = deskOf(room);
  desk.codes.set(codes);
  desk.blurLayer(layer, sure);
}

/** Shares nearer to 0 or 1 than this count as sure. */
const sure = 2e-3;

/** Expected cost of every pixel, importance left out. */
export function expectedCosts(room: RegisterRoom): Float32Array {
  const { costs, gain } = deskOf(room);
  costs();
  return gain.slice();
}

/** Mean over the picture of the expected cost per pixel, weighted by importance. */
export function expectedCost(room: RegisterRoom): number {
  const { costs, gain } = deskOf(room);
  return costs() / gain.length;
}

/**
 * How often each colour group is expected to be printed by each code.
 * @param groupOf group of each box of colours
 * @returns group × code, weighted by importance
 */
export function expectedUse(field: Field, room: RegisterRoom, groupOf: Uint16Array, groups: number): Float64Array {
  const { codeCount, binOf, layers, weight } = field;
  const { q } = deskOf(room),
    out = new Float64Array(groups * codeCount);
  const chance = new Float64Array(256),
    codes = new Uint8Array(256);
  for (let i = 0; i < binOf.length; i++) {
    const row = groupOf[binOf[i]] * codeCount;
    let size = 1;
    chance[0] = weight ? weight[i] : 1;
    codes[0] = 0;
    for (let b = 0; b < layers; b++) {
      const share = q[b][i];
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
    broad = around(around(here, width, height, lines, true), width, height, lines, false);
  const most = around(here, width, height, reach, true),
    least = around(broad, width, height, reach, false);
  for (let i = 0; i < most.length; i++) {
    most[i] += seenFrom;
    least[i] -= seenFrom;
  }
  return { lightness, least, most, ...prices };
}

/** L* that a slit must be lighter than its surroundings to count. */
const seenFrom = 4;

/**
 * One layer moved to where the expected cost plus knife length is less, the others staying: an exact step for the colour part,
 * single pixels in turn for the length.
 * @returns how many pixels changed
 */
export function registerStep({ price }: Field, codes: Uint8Array, layer: number, room: RegisterRoom, turns = 3): number {
  const desk = deskOf(room);
  desk.codes.set(codes);
  desk.gains(layer);
  const changed = flipTurns(desk, layer, price[layer], turns);
  if (changed === 0) return 0;
  desk.blurLayer(layer, sure);
  codes.set(desk.codes);
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
  const desk = deskOf(room),
    { gain } = desk;
  desk.codes.set(codes);
  desk.gains(layer + 1);
  const piece = gain.slice();
  desk.gains(layer);
  for (let i = 0; i < piece.length; i++) gain[i] -= piece[i];
  const changed = flipTurns(desk, layer, price, turns);
  codes.set(desk.codes);
  for (let i = 0; i < codes.length; i++) if (codes[i] !== before[i]) codes[i] ^= 2 << layer;
  const settled = (): void => {
    for (const bit of [layer, layer + 1]) blurLayer(codes, bit, room);
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
  return expectedCost(room) + knife / codes.length;
}

/** Masks moved so that the print suffers least from layers sitting off; `codes` is changed in place. @returns the room they were settled in */
export async function settleForRegister(of: Field, codes: Uint8Array, sigmaPx: number, rounds: number, task: Task): Promise<RegisterRoom> {
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
  return room;
}
