import { gaussTaps } from './blur.ts';
import { votesOf } from './length.ts';
import type { Field } from './relax.ts';
import { registerWasm } from './register-wasm.ts';

interface Exports {
  readonly memory: WebAssembly.Memory;
  setSize(width: number, height: number, layers: number, codeCount: number): void;
  setField(table: number, binOf: number, weight: number): void;
  setBare(lightness: number, least: number, most: number, slitPrice: number, linePrice: number): void;
  setMasks(codes: number, on: number, unsure: number, awake: number, stale: number, q: number, qBytes: number): void;
  setPlanes(planes: number, across: number, gain: number): void;
  setTaps(taps: number, sums: number, line: number, votes: number, radius: number): void;
  setFolding(shares: number, values: number, folds: number): void;
  blurLayer(layer: number, sure: number): void;
  gains(layer: number): void;
  costs(): number;
  flips(layer: number, price: number, most: number, straight: number, diagonal: number): number;
  around(from: number, over: number, to: number, width: number, height: number, reach: number, greatest: boolean): void;
}

/** What a field and its blurred masks are worked on with; they lie in the kernel's memory, one room at a time, and are put aside when another comes. */
export interface RegisterRoom {
  readonly field: Field;
  readonly taps: Float32Array;
  /** Blurred masks and what follows from them, while another room is in the memory. */
  aside?: Uint8Array;
  /** Not to be worked on any more: nothing needs to be put aside. */
  over?: boolean;
}

/** A room as it lies in the memory. */
export interface Desk extends Exports {
  readonly codes: Uint8Array;
  readonly awake: Uint8Array;
  readonly gain: Float32Array;
  /** Blurred mask of each layer. */
  readonly q: readonly Float32Array[];
}

interface Laid extends Desk {
  readonly masks: Uint8Array;
}

const pageBytes = 65536;
let engine: Exports | undefined;
let held: { readonly room: RegisterRoom; readonly laid: Laid } | undefined;

function started(): Exports {
  engine ??= new WebAssembly.Instance(new WebAssembly.Module(Uint8Array.from(atob(registerWasm), (c) => c.charCodeAt(0))))
    .exports as unknown as Exports;
  return engine;
}

/** Places one after the other, each begun at a whole vector. */
function places(): { take(bytes: number): number; end(): number } {
  let at = pageBytes;
  return {
    take(bytes) {
      const from = at;
      at += Math.ceil(bytes / 16) * 16;
      return from;
    },
    end: () => at,
  };
}

function enough(e: Exports, end: number): void {
  // Whole vectors are read beyond the end of a plane.
  const missing = end + 64 - e.memory.buffer.byteLength;
  if (missing > 0) e.memory.grow(Math.ceil(missing / pageBytes));
}

export function roomFor(field: Field, sigmaPx: number): RegisterRoom {
  return { field, taps: gaussTaps(sigmaPx) };
}

/** The room in the memory, whatever lay there before. */
export function deskOf(room: RegisterRoom): Desk {
  if (held?.room === room) return held.laid;
  clear();
  const laid = laidOut(started(), room);
  if (room.aside) laid.masks.set(room.aside);
  room.aside = undefined;
  held = { room, laid };
  return laid;
}

function clear(): void {
  if (held && !held.room.over) held.room.aside = held.laid.masks.slice();
  held = undefined;
}

function laidOut(e: Exports, { field, taps }: RegisterRoom): Laid {
  const { width, height, layers, binOf, table, weight, bare } = field,
    n = width * height,
    planeBytes = Math.ceil(n / 4) * 16,
    { take, end } = places();
  const at = {
    shares: take(64),
    values: take(2048),
    folds: take(256),
    votes: take(2048),
    taps: take(8 * (taps.length + 2)),
    sums: take(8 * (taps.length + 1)),
    line: take(8 * (width + taps.length)),
    q: take(planeBytes * layers),
    on: take(n),
    unsure: take(n),
    codes: take(n),
    awake: take(n),
    stale: take(n),
    planes: take(planeBytes * layers),
    across: take(planeBytes),
    gain: take(planeBytes),
    table: take(table.byteLength),
    binOf: take(binOf.byteLength),
    weight: weight ? take(planeBytes) : 0,
    lightness: bare ? take(1024) : 0,
    least: bare ? take(planeBytes) : 0,
    most: bare ? take(planeBytes) : 0,
  };
  enough(e, end());
  const { buffer } = e.memory,
    singles = (from: number, count = n): Float32Array => new Float32Array(buffer, from, count),
    bytes = (from: number, count = n): Uint8Array => new Uint8Array(buffer, from, count);
  const weights = new Float64Array(buffer, at.taps, taps.length + 2),
    sums = new Float64Array(buffer, at.sums, taps.length + 1);
  weights.set(taps);
  weights.fill(0, taps.length);
  sums[0] = 0;
  for (let t = 0; t < taps.length; t++) sums[t + 1] = sums[t] + taps[t];
  new Float64Array(buffer, at.votes, 256).set(votesOf);
  singles(at.table, table.length).set(table);
  new Uint16Array(buffer, at.binOf, n).set(binOf);
  if (weight) singles(at.weight).set(weight);
  if (bare) {
    singles(at.lightness, 256).set(bare.lightness);
    singles(at.least).set(bare.least);
    singles(at.most).set(bare.most);
  }
  const masks = bytes(at.q, at.codes - at.q);
  masks.fill(0);
  bytes(at.stale).fill(255);
  e.setSize(width, height, layers, field.codeCount);
  e.setField(at.table, at.binOf, at.weight);
  e.setBare(at.lightness, at.least, at.most, bare?.slitPrice ?? 0, bare?.linePrice ?? 0);
  e.setMasks(at.codes, at.on, at.unsure, at.awake, at.stale, at.q, planeBytes);
  e.setPlanes(at.planes, at.across, at.gain);
  e.setTaps(at.taps, at.sums, at.line, at.votes, taps.length >> 1);
  e.setFolding(at.shares, at.values, at.folds);
  return {
    ...e,
    masks,
    codes: bytes(at.codes),
    awake: bytes(at.awake),
    gain: singles(at.gain),
    q: Array.from({ length: layers }, (_, b) => singles(at.q + b * planeBytes)),
  };
}

/** The most (or least) of all values within a square around each pixel. */
export function around(values: Float32Array, width: number, height: number, reach: number, greatest: boolean): Float32Array {
  clear();
  const e = started(),
    { take, end } = places(),
    [from, over, to] = [take(values.byteLength), take(values.byteLength), take(values.byteLength)];
  enough(e, end());
  new Float32Array(e.memory.buffer, from, values.length).set(values);
  e.around(from, over, to, width, height, reach, greatest);
  return new Float32Array(e.memory.buffer, to, values.length).slice();
}
