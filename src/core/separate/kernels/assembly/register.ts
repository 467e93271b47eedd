// The innermost loops of settling masks for layers that sit off. AssemblyScript: `npm run kernels` makes ../register-wasm.ts of it.
// Sums are double and added up in one order, so that what comes out is the same to the last bit wherever it is worked out.
import { columns, rows } from './blur';

export { around } from './around';

/** What fills the room: places of `../register-room.ts`, in bytes. */
let width: i32 = 0, height: i32 = 0, layers: i32 = 0, codeCount: i32 = 0;
let table: usize = 0, binOf: usize = 0, weight: usize = 0;
let lightness: usize = 0, least: usize = 0, most: usize = 0;
let slitPrice: f64 = 0, linePrice: f64 = 0;
let codes: usize = 0, on: usize = 0, unsure: usize = 0, awake: usize = 0, stale: usize = 0;
let planes: usize = 0, across: usize = 0, gain: usize = 0, q: usize = 0, qBytes: usize = 0;
let taps: usize = 0, sums: usize = 0, line: usize = 0, votes: usize = 0, radius: i32 = 0;

/** Double: what folding works with; 8 × a share, 256 × a value. Bytes: a code each. */
let shares: usize = 0, values: usize = 0, folds: usize = 0;

export function setSize(w: i32, h: i32, layerCount: i32, count: i32): void {
  width = w;
  height = h;
  layers = layerCount;
  codeCount = count;
}

/** @param weights 0: none */
export function setField(tableAt: usize, bins: usize, weights: usize): void {
  table = tableAt;
  binOf = bins;
  weight = weights;
}

/** @param light of each code, single; 0: nobody watches */
export function setBare(light: usize, leastAt: usize, mostAt: usize, slit: f64, lines: f64): void {
  lightness = light;
  least = leastAt;
  most = mostAt;
  slitPrice = slit;
  linePrice = lines;
}

/** @param staleAt a bit for each layer whose difference has to be worked out anew at a pixel */
export function setMasks(codesAt: usize, onAt: usize, unsureAt: usize, awakeAt: usize, staleAt: usize, qAt: usize, bytes: usize): void {
  codes = codesAt;
  on = onAt;
  unsure = unsureAt;
  awake = awakeAt;
  stale = staleAt;
  q = qAt;
  qBytes = bytes;
}

/** @param planesAt one a layer, as far apart as those of q */
export function setPlanes(planesAt: usize, acrossAt: usize, gainAt: usize): void {
  planes = planesAt;
  across = acrossAt;
  gain = gainAt;
}

/** @param sumsAt of the taps up to each. @param votesAt what eight neighbours say */
export function setTaps(tapsAt: usize, sumsAt: usize, lineAt: usize, votesAt: usize, reach: i32): void {
  taps = tapsAt;
  sums = sumsAt;
  line = lineAt;
  votes = votesAt;
  radius = reach;
}

export function setFolding(sharesAt: usize, valuesAt: usize, codesAt: usize): void {
  shares = sharesAt;
  values = valuesAt;
  folds = codesAt;
}

// @ts-ignore
@inline
function add(x: i32, much: f64): void {
  const at = line + ((<usize>x) << 3);
  store<f64>(at, load<f64>(at) + much);
}

/** One layer's mask blurred into its plane of q: along a row a mask is but a few edges, and each changes only what lies within reach of it. */
function blurMask(layer: i32, to: usize): void {
  const total = load<f64>(sums + ((<usize>(2 * radius + 1)) << 3));
  for (let y = 0; y < height; y++) {
    const row = codes + <usize>(y * width);
    let value = (<i32>load<u8>(row) >> layer) & 1,
      done = 0;
    memory.fill(line, 0, (<usize>width) << 3);
    for (let edge = 1; edge < width; edge++) {
      if (((<i32>load<u8>(row + <usize>edge) >> layer) & 1) == value) continue;
      // Up to here all is seen of what came before; from here on of what comes now.
      const first = max(0, edge - radius),
        end = min(width, edge + radius);
      if (value) for (; done < edge; done++) add(done, total);
      else done = edge;
      value ^= 1;
      if (value) {
        for (let x = first; x < edge; x++) add(x, total - load<f64>(sums + ((<usize>(edge - x + radius)) << 3)));
        for (let x = edge; x < end; x++) add(x, -load<f64>(sums + ((<usize>(edge - x + radius)) << 3)));
      } else {
        for (let x = first; x < edge; x++) add(x, -(total - load<f64>(sums + ((<usize>(edge - x + radius)) << 3))));
        for (let x = edge; x < end; x++) add(x, load<f64>(sums + ((<usize>(edge - x + radius)) << 3)));
      }
    }
    if (value) for (; done < width; done++) add(done, total);
    const out = across + ((<usize>(y * width)) << 2);
    for (let x = 0; x < width; x++) store<f32>(out + ((<usize>x) << 2), <f32>load<f64>(line + ((<usize>x) << 3)));
  }
  columns(across, to, width, height, taps + ((<usize>radius) << 3), radius);
}

/** A layer's shares as its mask lies now, and where it prints for sure or perhaps. @param sure shares nearer to 0 or 1 than this */
export function blurLayer(layer: i32, sure: f64): void {
  const own = q + <usize>layer * qBytes,
    bit: u8 = <u8>1 << <u8>layer,
    end = <usize>(width * height),
    high = 1 - sure;
  blurMask(layer, gain);
  for (let i: usize = 0; i < end; i++) {
    const single = load<f32>(gain + (i << 2));
    // Elsewhere nothing is another than it was.
    if (single == load<f32>(own + (i << 2))) continue;
    store<f32>(own + (i << 2), single);
    store<u8>(stale + i, load<u8>(stale + i) | ~bit);
    const share = <f64>single,
      sureOn = share > high,
      a = load<u8>(on + i),
      b = load<u8>(unsure + i);
    store<u8>(on + i, sureOn ? a | bit : a & ~bit);
    store<u8>(unsure + i, !sureOn && share > sure ? b | bit : b & ~bit);
  }
}

/** What a code costs where it is lighter, or darker, than anything planned near by. */
// @ts-ignore
@inline
function bareCost(i: usize, code: i32): f64 {
  const light = <f64>load<f32>(lightness + ((<usize>code) << 2)),
    slit = light - <f64>load<f32>(most + (i << 2)),
    dark = <f64>load<f32>(least + (i << 2)) - light;
  return slit > 0 ? slitPrice * slit : dark > 0 ? linePrice * dark : 0;
}

// @ts-ignore
@inline
function costOf(row: usize, i: usize, code: i32): f64 {
  const cost = <f64>load<f32>(row + ((<usize>code) << 2));
  return lightness ? cost + bareCost(i, code) : cost;
}

/** The shares of the layers of `which` at a pixel, the lowest first, and all codes that they make with `base`. @returns how many layers */
// @ts-ignore
@inline
function opened(i: usize, which: i32): i32 {
  let count = 0,
    size: usize = 1;
  store<u8>(folds, 0);
  for (let left = which; left != 0; left &= left - 1) {
    const b = ctz(left);
    store<f64>(shares + ((<usize>count) << 3), <f64>load<f32>(q + <usize>b * qBytes + (i << 2)));
    for (let s: usize = 0; s < size; s++) store<u8>(folds + size + s, load<u8>(folds + s) | (<u8>1 << <u8>b));
    size <<= 1;
    count++;
  }
  return count;
}

// @ts-ignore
@inline
function shareOf(i: usize, bit: i32): f64 {
  return <f64>load<f32>(q + <usize>ctz(bit) * qBytes + (i << 2));
}

// Most places have few layers that may or may not print: these are worked out at once, in the order of `folded`.
// @ts-ignore
@inline
function folded1(row: usize, i: usize, base: i32, a: i32, ofA: f64): f64 {
  const low = costOf(row, i, base);
  return low + ofA * (costOf(row, i, base | a) - low);
}

// @ts-ignore
@inline
function folded2(row: usize, i: usize, base: i32, a: i32, b: i32, ofA: f64, ofB: f64): f64 {
  const low = folded1(row, i, base, b, ofB);
  return low + ofA * (folded1(row, i, base | a, b, ofB) - low);
}

/** Expected cost when `count` bits are on with their shares and the others are as in `base`. */
function folded(row: usize, i: usize, base: i32, count: i32): f64 {
  let size: usize = (<usize>1) << count;
  for (let s: usize = 0; s < size; s++) store<f64>(values + (s << 3), costOf(row, i, base | <i32>load<u8>(folds + s)));
  for (let k = count - 1; k >= 0; k--) {
    size >>= 1;
    const share = load<f64>(shares + ((<usize>k) << 3));
    for (let s: usize = 0; s < size; s++) {
      const at = values + (s << 3),
        low = load<f64>(at);
      store<f64>(at, low + share * (load<f64>(at + (size << 3)) - low));
    }
  }
  return load<f64>(values);
}

// @ts-ignore
@inline
function rowOf(i: usize): usize {
  return table + ((<usize>(<i32>load<u16>(binOf + (i << 1)) * codeCount)) << 2);
}

/** What having the layer at a pixel costs while the others stay: the blurred difference it makes, into the plane of gain. */
export function gains(layer: i32): void {
  const bit = 1 << layer,
    end = <usize>(width * height),
    plane = planes + <usize>layer * qBytes;
  for (let i: usize = 0; i < end; i++) {
    // What other layers print here is what it was: so is the difference.
    const old = <i32>load<u8>(stale + i);
    if ((old & bit) == 0) continue;
    store<u8>(stale + i, <u8>(old & ~bit));
    const base = <i32>load<u8>(on + i) & ~bit,
      which = <i32>load<u8>(unsure + i) & ~bit,
      row = rowOf(i);
    let difference: f64;
    if (which == 0) {
      difference = <f64>load<f32>(row + ((<usize>(base | bit)) << 2)) - <f64>load<f32>(row + ((<usize>base) << 2));
      if (lightness) difference += bareCost(i, base | bit) - bareCost(i, base);
    } else {
      const a = which & -which,
        more = which ^ a;
      if (more == 0) {
        const ofA = shareOf(i, a);
        difference = folded1(row, i, base | bit, a, ofA) - folded1(row, i, base, a, ofA);
      } else if ((more & (more - 1)) == 0) {
        const ofA = shareOf(i, a),
          ofB = shareOf(i, more);
        difference = folded2(row, i, base | bit, a, more, ofA, ofB) - folded2(row, i, base, a, more, ofA, ofB);
      } else {
        const count = opened(i, which);
        difference = folded(row, i, base | bit, count) - folded(row, i, base, count);
      }
    }
    if (weight) difference *= <f64>load<f32>(weight + (i << 2));
    store<f32>(plane + (i << 2), <f32>difference);
  }
  rows(plane, across, width, height, taps, radius, line);
  columns(across, gain, width, height, taps + ((<usize>radius) << 3), radius);
}

/** Expected cost of every pixel, importance left out, into the plane of gain. @returns their sum, importance counted */
export function costs(): f64 {
  const end = <usize>(width * height);
  let sum: f64 = 0;
  for (let i: usize = 0; i < end; i++) {
    const base = <i32>load<u8>(on + i),
      which = <i32>load<u8>(unsure + i),
      row = rowOf(i),
      cost: f32 = which == 0 ? load<f32>(row + ((<usize>base) << 2)) : <f32>folded(row, i, base, opened(i, which));
    store<f32>(gain + (i << 2), cost);
    sum += weight ? <f64>cost * <f64>load<f32>(weight + (i << 2)) : <f64>cost;
  }
  return sum;
}

// @ts-ignore
@inline
function ink(at: usize, layer: i32): i32 {
  return (<i32>load<u8>(at) >> layer) & 1;
}

/** What neighbours say at the border: those that are there, straight ones first. */
function votesAtBorder(i: usize, x: i32, y: i32, layer: i32, straight: f64, diagonal: f64): f64 {
  const up = y > 0, down = y + 1 < height, left = x > 0, right = x + 1 < width, w = <usize>width, at = codes + i;
  let sum: f64 = 0;
  if (up) sum += ink(at - w, layer) ? -straight : straight;
  if (down) sum += ink(at + w, layer) ? -straight : straight;
  if (left) sum += ink(at - 1, layer) ? -straight : straight;
  if (right) sum += ink(at + 1, layer) ? -straight : straight;
  if (up && left) sum += ink(at - w - 1, layer) ? -diagonal : diagonal;
  if (up && right) sum += ink(at - w + 1, layer) ? -diagonal : diagonal;
  if (down && left) sum += ink(at + w - 1, layer) ? -diagonal : diagonal;
  if (down && right) sum += ink(at + w + 1, layer) ? -diagonal : diagonal;
  return sum;
}

/**
 * Single pixels of one layer switched wherever that lowers gain + price × length; only those awake are looked at, and those beside a change are next time.
 * @returns how many changed
 */
export function flips(layer: i32, price: f64, mostVotes: f64, straight: f64, diagonal: f64): i32 {
  const bit: u8 = <u8>1 << <u8>layer,
    w = <usize>width;
  let changed = 0;
  for (let y = 0; y < height; y++) {
    const row = <usize>(y * width),
      inner = y > 0 && y + 1 < height;
    for (let x = 0; x < width; x++) {
      const i = row + <usize>x;
      if (x + 8 <= width && load<u64>(awake + i) == 0) {
        x += 7;
        continue;
      }
      if (load<u8>(awake + i) == 0) continue;
      store<u8>(awake + i, 0);
      const at = codes + i,
        here = <f64>load<f32>(gain + (i << 2)),
        isOn = ink(at, layer);
      // Whatever the neighbours say.
      if (isOn ? here < -mostVotes : here > mostVotes) continue;
      const inside = inner && x > 0 && x + 1 < width;
      let said: f64;
      if (inside) {
        const neighbours =
          ink(at - w, layer) |
          (ink(at + w, layer) << 1) |
          (ink(at - 1, layer) << 2) |
          (ink(at + 1, layer) << 3) |
          (ink(at - w - 1, layer) << 4) |
          (ink(at - w + 1, layer) << 5) |
          (ink(at + w - 1, layer) << 6) |
          (ink(at + w + 1, layer) << 7);
        said = load<f64>(votes + ((<usize>neighbours) << 3));
      } else said = votesAtBorder(i, x, y, layer, straight, diagonal);
      const cost = here + price * said;
      if (isOn ? cost <= 1e-6 : cost >= -1e-6) continue;
      store<u8>(at, load<u8>(at) ^ bit);
      changed++;
      const top = y > 0 ? y - 1 : y, bottom = y + 1 < height ? y + 1 : y, from = x > 0 ? x - 1 : x, to = x + 1 < width ? x + 1 : x;
      for (let j = top; j <= bottom; j++) for (let k = from; k <= to; k++) store<u8>(awake + <usize>(j * width + k), 1);
    }
  }
  return changed;
}
