// The innermost loops of the search for inks, four numbers at a time. AssemblyScript: `npm run kernels` makes ../search-wasm.ts of it.
// Everything lies at fixed places of one memory, filled and read by ../search-engine.ts; single precision, same digits everywhere.

/** Difference of two colours as core/colour tells it: Lab and Lab. */
// @ts-ignore
@external("env", "deltaE00")
declare function deltaE00(l1: f64, a1: f64, b1: f64, l2: f64, a2: f64, b2: f64): f64;

// Bands are padded to whole vectors; a row of them takes this many bytes.
const ROW: usize = 144;
const mostPots: usize = 256, mostTargets: usize = 256, mostTried: usize = 2048, mostUses: usize = 65536;

/** A pot to try: how many inks, their numbers, 16 words on their amounts. */
const POT: usize = 128;

const POTS: usize = 65536;
const FILMS: usize = POTS + mostPots * 2 * ROW;
const INSIDE: usize = FILMS + 8 * 2 * ROW;
const EYE: usize = INSIDE + ROW;
const ROWS: usize = EYE + 3 * ROW;
const XYZ: usize = ROWS + 256 * ROW;
const LAB: usize = XYZ + 3 * 1024;
const CODES: usize = LAB + 3 * 1024;
const ASKED: usize = CODES + 256;
const TARGETS: usize = ASKED + 3 * 1024;
const FIRST: usize = TARGETS + 8 * 1024;
const SECOND: usize = FIRST + mostTargets;
const EXACT: usize = SECOND + mostTargets;
const EDGES: usize = EXACT + mostTargets * 32;
const TRIED: usize = EDGES + mostTargets * mostTargets * 2;
const USES: usize = TRIED + mostTried * POT;
const END: usize = USES + mostUses * 16;

/** Where everything lies, in the order above. */
export function place(what: i32): usize {
  switch (what) {
    case 0: return POTS;
    case 1: return FILMS;
    case 2: return INSIDE;
    case 3: return EYE;
    case 4: return LAB;
    case 5: return CODES;
    case 6: return TARGETS;
    case 7: return FIRST;
    case 8: return EXACT;
    case 9: return EDGES;
    case 10: return TRIED;
    case 11: return USES;
    default: return END;
  }
}

let vectors: i32 = 0, films: i32 = 0, codes: i32 = 0, targets: i32 = 0, uses: i32 = 0;
let ks: f32 = 0, through: f32 = 0, k2: f32 = 0;
let whiteX: f32 = 1, whiteY: f32 = 1, whiteZ: f32 = 1;
let edgeScale: f64 = 0;
let lastScore: f64 = 0;

export function setGround(vectorsOfBands: i32, surfaceKs: f64, k1: f64, surfaceK2: f64, wx: f64, wy: f64, wz: f64): void {
  vectors = vectorsOfBands;
  ks = <f32>surfaceKs;
  k2 = <f32>surfaceK2;
  through = <f32>((1 - k1) * (1 - surfaceK2));
  whiteX = <f32>(1 / wx);
  whiteY = <f32>(1 / wy);
  whiteZ = <f32>(1 / wz);
}

export function setCounts(filmCount: i32, codeCount: i32): void {
  films = filmCount;
  codes = codeCount;
}

/** @param scale of the whole numbers in EDGES; 0 without edges */
export function setTargets(count: i32, scale: f64, useCount: i32): void {
  targets = count;
  edgeScale = scale;
  uses = useCount;
}

export function score(): f64 {
  return lastScore;
}

// @ts-ignore
@inline
function four(at: usize): v128 {
  return v128.load(at);
}

// @ts-ignore
@inline
function all(v: f32): v128 {
  return f32x4.splat(v);
}

/** e to the power of v, v ≤ 0. */
// @ts-ignore
@inline
function exp4(v: v128): v128 {
  const x = f32x4.max(v, all(-87));
  const n = f32x4.nearest(f32x4.mul(x, all(1.44269504)));
  const r = f32x4.sub(f32x4.sub(x, f32x4.mul(n, all(0.693359375))), f32x4.mul(n, all(-2.12194440e-4)));
  let p = all(1.9875691500e-4);
  p = f32x4.add(f32x4.mul(p, r), all(1.3981999507e-3));
  p = f32x4.add(f32x4.mul(p, r), all(8.3334519073e-3));
  p = f32x4.add(f32x4.mul(p, r), all(4.1665795894e-2));
  p = f32x4.add(f32x4.mul(p, r), all(1.6666665459e-1));
  p = f32x4.add(f32x4.mul(p, r), all(5.0000001201e-1));
  const y = f32x4.add(f32x4.add(f32x4.mul(p, f32x4.mul(r, r)), r), all(1));
  const scale = i32x4.shl(i32x4.add(i32x4.trunc_sat_f32x4_s(n), i32x4.splat(127)), 23);
  return f32x4.mul(y, scale);
}

/** The film of pot `n` of TRIED in place `slot`: Kubelka and Munk with sinh(x)/x as core/ink has it. */
export function film(slot: i32, n: i32): void {
  const to = FILMS + <usize>slot * 2 * ROW, pot = TRIED + <usize>n * POT;
  const parts = load<i32>(pot);
  for (let v: usize = 0, end = <usize>vectors * 16; v < end; v += 16) {
    let k = all(0), s = all(0);
    for (let i: usize = 1; i <= <usize>parts; i++) {
      const ink = POTS + <usize>load<i32>(pot + 4 * i) * 2 * ROW + v, amount = v128.load32_splat(pot + 64 + 4 * i);
      k = f32x4.add(k, f32x4.mul(four(ink), amount));
      s = f32x4.add(s, f32x4.mul(four(ink + ROW), amount));
    }
    const x = f32x4.sqrt(f32x4.mul(k, f32x4.add(k, f32x4.add(s, s))));
    const e = exp4(f32x4.mul(x, all(-2)));
    const series = f32x4.sub(all(1), f32x4.mul(x, f32x4.sub(all(1), f32x4.mul(x, f32x4.sub(all(0.6666667), f32x4.mul(x, all(0.3333333)))))));
    const plain = f32x4.div(f32x4.sub(all(1), e), f32x4.max(f32x4.add(x, x), all(1e-9)));
    const sinhc = v128.bitselect(series, plain, f32x4.lt(x, all(0.02)));
    const below = f32x4.add(f32x4.mul(f32x4.add(s, k), sinhc), f32x4.mul(f32x4.add(all(1), e), all(0.5)));
    const one = f32x4.div(all(1), below);
    v128.store(to + v, f32x4.mul(f32x4.mul(s, sinhc), one));
    v128.store(to + ROW + v, f32x4.mul(f32x4.mul(e, one), one));
  }
}

// @ts-ignore
@inline
function sumOf(v: v128): f32 {
  return f32x4.extract_lane(v, 0) + f32x4.extract_lane(v, 1) + (f32x4.extract_lane(v, 2) + f32x4.extract_lane(v, 3));
}

/** What the eye gets of a row seen through the surface. */
// @ts-ignore
@inline
function seen(code: i32, row: usize): void {
  let x = all(0), y = all(0), z = all(0);
  const t = all(through), one = all(1), inner = all(k2), outer = all(ks);
  for (let v: usize = 0, end = <usize>vectors * 16; v < end; v += 16) {
    const g = four(row + v);
    const r = f32x4.add(outer, f32x4.div(f32x4.mul(t, g), f32x4.sub(one, f32x4.mul(inner, g))));
    x = f32x4.add(x, f32x4.mul(r, four(EYE + v)));
    y = f32x4.add(y, f32x4.mul(r, four(EYE + ROW + v)));
    z = f32x4.add(z, f32x4.mul(r, four(EYE + 2 * ROW + v)));
  }
  const at = XYZ + <usize>code * 4;
  f32.store(at, sumOf(x) * whiteX);
  f32.store(at + 1024, sumOf(y) * whiteY);
  f32.store(at + 2048, sumOf(z) * whiteZ);
}

/** CIE 15: the cube root above 216/24389, a straight line below. Two of Halley's steps from a guess by the exponent. */
// @ts-ignore
@inline
function bent(t: v128): v128 {
  const positive = f32x4.max(t, all(1e-6));
  let y = i32x4.trunc_sat_f32x4_s(f32x4.add(f32x4.mul(f32x4.convert_i32x4_s(positive), all(0.33333334)), all(709921077)));
  for (let turn = 0; turn < 2; turn++) {
    const cube = f32x4.mul(f32x4.mul(y, y), y);
    y = f32x4.mul(y, f32x4.div(f32x4.add(cube, f32x4.add(positive, positive)), f32x4.add(f32x4.add(cube, cube), positive)));
  }
  const line = f32x4.add(f32x4.mul(t, all(7.787037)), all(0.13793103));
  return v128.bitselect(y, line, f32x4.gt(t, all(0.008856452)));
}

/** Lab of every overlap, those that only films below place `from` make being there already. */
export function overlaps(from: i32): void {
  const end = <usize>vectors * 16;
  if (from == 0) {
    for (let v: usize = 0; v < end; v += 16) v128.store(ROWS + v, four(INSIDE + v));
    seen(0, ROWS);
  }
  for (let top = from; top < films; top++) {
    const r0 = FILMS + <usize>top * 2 * ROW, half = 1 << top;
    for (let code = 0; code < half; code++) {
      const below = ROWS + <usize>code * ROW, to = ROWS + <usize>(half + code) * ROW;
      for (let v: usize = 0; v < end; v += 16) {
        const r = four(r0 + v), g = four(below + v);
        v128.store(to + v, f32x4.add(r, f32x4.div(f32x4.mul(four(r0 + ROW + v), g), f32x4.sub(all(1), f32x4.mul(r, g)))));
      }
      seen(half + code, to);
    }
  }
  const first = from == 0 ? 0 : (1 << from) & ~3;
  for (let code = first; code < 1 << films; code += 4) {
    const at = XYZ + <usize>code * 4, to = LAB + <usize>code * 4;
    const fx = bent(four(at)), fy = bent(four(at + 1024)), fz = bent(four(at + 2048));
    v128.store(to, f32x4.sub(f32x4.mul(fy, all(116)), all(16)));
    v128.store(to + 1024, f32x4.mul(f32x4.sub(fx, fy), all(500)));
    v128.store(to + 2048, f32x4.mul(f32x4.sub(fy, fz), all(200)));
  }
  // Those that may be printed, side by side.
  for (let k = 0; k < codes; k++) {
    const at = LAB + <usize>load<u8>(CODES + k) * 4, to = ASKED + <usize>k * 4;
    f32.store(to, f32.load(at));
    f32.store(to + 1024, f32.load(at + 1024));
    f32.store(to + 2048, f32.load(at + 2048));
  }
}

// @ts-ignore
@inline
function distance(i: usize, k: usize): v128 {
  const dl = f32x4.sub(v128.load32_splat(ASKED + k), four(TARGETS + i));
  const da = f32x4.sub(v128.load32_splat(ASKED + 1024 + k), four(TARGETS + 1024 + i));
  const db = f32x4.sub(v128.load32_splat(ASKED + 2048 + k), four(TARGETS + 2048 + i));
  const onA = f32x4.mul(da, f32x4.add(f32x4.mul(four(TARGETS + 4096 + i), da), f32x4.mul(four(TARGETS + 5120 + i), db)));
  return f32x4.add(f32x4.add(f32x4.mul(f32x4.mul(four(TARGETS + 3072 + i), dl), dl), onA), f32x4.mul(f32x4.mul(four(TARGETS + 6144 + i), db), db));
}

/** By the forms alone. */
function rough(stopAt: f32): f64 {
  let sum = all(0);
  for (let i: usize = 0, end = <usize>targets * 4; i < end; i += 16) {
    let least = all(1e30);
    for (let k: usize = 0, last = <usize>codes * 4; k < last; k += 4) least = f32x4.pmin(least, distance(i, k));
    sum = f32x4.add(sum, f32x4.mul(four(TARGETS + 7168 + i), f32x4.sqrt(f32x4.max(least, all(0)))));
    if ((i & 63) == 48 && sumOf(sum) > stopAt) return Infinity;
  }
  return <f64>sumOf(sum);
}

/** The nearest two overlaps of every colour by the forms, into FIRST and SECOND; where the second is plainly farther, it is the first too. */
export function assign(): void {
  for (let i: usize = 0, end = <usize>targets * 4; i < end; i += 16) {
    let least = all(1e30), next = all(1e30), first = i32x4.splat(0), second = i32x4.splat(0), number = i32x4.splat(0);
    for (let k: usize = 0, last = <usize>codes * 4; k < last; k += 4) {
      const d = distance(i, k), nearer = f32x4.lt(d, least), near = f32x4.lt(d, next);
      second = v128.bitselect(first, v128.bitselect(number, second, near), nearer);
      next = v128.bitselect(least, f32x4.pmin(next, d), nearer);
      first = v128.bitselect(number, first, nearer);
      least = v128.bitselect(d, least, nearer);
      number = i32x4.add(number, i32x4.splat(1));
    }
    second = v128.bitselect(second, first, f32x4.lt(next, f32x4.add(least, least)));
    const to = i >> 2;
    store<u8>(FIRST + to, load<u8>(CODES + i32x4.extract_lane(first, 0)));
    store<u8>(FIRST + to + 1, load<u8>(CODES + i32x4.extract_lane(first, 1)));
    store<u8>(FIRST + to + 2, load<u8>(CODES + i32x4.extract_lane(first, 2)));
    store<u8>(FIRST + to + 3, load<u8>(CODES + i32x4.extract_lane(first, 3)));
    store<u8>(SECOND + to, load<u8>(CODES + i32x4.extract_lane(second, 0)));
    store<u8>(SECOND + to + 1, load<u8>(CODES + i32x4.extract_lane(second, 1)));
    store<u8>(SECOND + to + 2, load<u8>(CODES + i32x4.extract_lane(second, 2)));
    store<u8>(SECOND + to + 3, load<u8>(CODES + i32x4.extract_lane(second, 3)));
  }
}

/** Difference of target i to a code, as the standard has it. Targets lie in EXACT as L, a, b, weight. */
// @ts-ignore
@inline
function exactly(i: usize, code: usize): f64 {
  const t = EXACT + i * 32, c = LAB + code * 4;
  return deltaE00(f64.load(t), f64.load(t + 8), f64.load(t + 16), <f64>f32.load(c), <f64>f32.load(c + 1024), <f64>f32.load(c + 2048));
}

function exact(stopAt: f64): f64 {
  assign();
  let sum: f64 = 0;
  for (let i: usize = 0; i < <usize>targets; i++) {
    const weight = f64.load(EXACT + i * 32 + 24);
    if (weight == 0) continue;
    const first = load<u8>(FIRST + i), second = load<u8>(SECOND + i);
    let best = exactly(i, first);
    if (second != first) {
      const other = exactly(i, second);
      if (other < best) {
        best = other;
        store<u8>(FIRST + i, second);
      }
    }
    sum += weight * best;
    if (sum > stopAt) return Infinity;
  }
  return sum;
}

/** What prints where is given: USES holds colour, code (as one number) and share. */
function printed(stopAt: f64): f64 {
  let sum: f64 = 0;
  for (let at = USES, end = USES + <usize>uses * 16; at < end; at += 16) {
    const pair = <usize>load<u32>(at);
    sum += f64.load(at + 8) * exactly(pair >> 8, pair & 255);
    if (sum > stopAt) return Infinity;
  }
  return sum;
}

/** The price of the edges between colours in FIRST: for each pair as many times as layers differ. EDGES holds pairs with the second behind the first. */
function edgeCost(): f64 {
  let sum: f64 = 0;
  for (let a: usize = 0; a < <usize>targets; a++) {
    const code = i8x16.splat(<i8>load<u8>(FIRST + a));
    let row = i32x4.splat(0);
    for (let b = a & ~15; b < <usize>targets; b += 16) {
      const bits = i8x16.popcnt(v128.xor(code, four(FIRST + b))), price = EDGES + (a * mostTargets + b) * 2;
      row = i32x4.add(row, i32x4.dot_i16x8_s(i16x8.extend_low_i8x16_s(bits), four(price)));
      row = i32x4.add(row, i32x4.dot_i16x8_s(i16x8.extend_high_i8x16_s(bits), four(price + 16)));
    }
    sum += <f64>i32x4.extract_lane(row, 0) + <f64>i32x4.extract_lane(row, 1) + <f64>i32x4.extract_lane(row, 2) + <f64>i32x4.extract_lane(row, 3);
  }
  return sum * edgeScale;
}

/** How far the overlaps are from the targets. @param kind 0 rough, 1 exact, 2 as printed. @returns Infinity once it exceeds stopAt */
export function judge(kind: i32, stopAt: f64): f64 {
  if (kind == 2) return printed(stopAt);
  if (edgeScale == 0) return kind == 0 ? rough(<f32>stopAt) : exact(stopAt);
  const sum = kind == 0 ? rough(<f32>stopAt) : exact(stopAt);
  if (sum == Infinity) return sum;
  if (kind == 0) assign();
  return sum + edgeCost();
}

/** The best of the pots in TRIED for place `at`, if it is better than stopAt: its number, or −1. Its score is `score()`. The film there is used up. */
export function bestOf(at: i32, count: i32, kind: i32, stopAt: f64): i32 {
  let best = -1;
  lastScore = stopAt;
  for (let n = 0; n < count; n++) {
    film(at, n);
    overlaps(at);
    const now = judge(kind, lastScore);
    if (now < lastScore) {
      lastScore = now;
      best = n;
    }
  }
  return best;
}
