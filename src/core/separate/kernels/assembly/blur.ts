// The innermost loops of blurring, two numbers at a time. AssemblyScript: `npm run kernels` makes ../blur-wasm.ts of it.
// Sums are double and added up in the order of the taps, so that what comes out is the same to the last bit wherever it is worked out.

/**
 * Every row of a plane: values single at `plane`, into `out` as wide.
 * @param taps double, 2 × radius + 1
 * @param line room for a row with what lies beyond its ends, double
 */
export function rows(plane: usize, out: usize, width: i32, height: i32, taps: usize, radius: i32, line: usize): void {
  const many = 2 * radius + 1,
    begin = line + ((<usize>radius) << 3);
  for (let y = 0; y < height; y++) {
    const from = plane + ((<usize>(y * width)) << 2),
      to = out + ((<usize>(y * width)) << 2);
    for (let x = 0; x < width; x++) store<f64>(begin + ((<usize>x) << 3), <f64>load<f32>(from + ((<usize>x) << 2)));
    const first = load<f64>(begin),
      last = load<f64>(begin + ((<usize>(width - 1)) << 3));
    for (let k = 0; k < radius; k++) {
      store<f64>(line + ((<usize>k) << 3), first);
      store<f64>(begin + ((<usize>(width + k)) << 3), last);
    }
    let x = 0;
    for (; x + 3 < width; x += 4) {
      let one = f64x2.splat(0),
        two = f64x2.splat(0),
        at = line + ((<usize>x) << 3);
      for (let t = 0; t < many; t++, at += 8) {
        const tap = v128.load64_splat(taps + ((<usize>t) << 3));
        one = f64x2.add(one, f64x2.mul(tap, v128.load(at)));
        two = f64x2.add(two, f64x2.mul(tap, v128.load(at + 16)));
      }
      storePairs(to + ((<usize>x) << 2), one, two);
    }
    for (; x < width; x++) {
      let sum: f64 = 0;
      for (let t = 0; t < many; t++) sum += load<f64>(taps + ((<usize>t) << 3)) * load<f64>(line + ((<usize>(x + t)) << 3));
      store<f32>(to + ((<usize>x) << 2), <f32>sum);
    }
  }
}

/** Every column, the same above and below: three pairs of rows at a time. @param taps from the middle on, double; 0 after the last one for two more */
export function columns(plane: usize, out: usize, width: i32, height: i32, taps: usize, radius: i32): void {
  const middle = load<f64>(taps),
    long = (<usize>width) << 2,
    bottom = height - 1;
  for (let y = 0; y < height; y++) {
    const here = plane + <usize>y * long,
      to = out + <usize>y * long;
    let x = 0;
    for (; x + 3 < width; x += 4) {
      const off = (<usize>x) << 2;
      let one = f64x2.mul(f64x2.splat(middle), pair(here + off)),
        two = f64x2.mul(f64x2.splat(middle), pair(here + off + 8));
      for (let t = 1; t <= radius; t += 3) {
        const w = taps + ((<usize>t) << 3),
          w1 = v128.load64_splat(w),
          w2 = v128.load64_splat(w + 8),
          w3 = v128.load64_splat(w + 16),
          a = plane + <usize>max(0, y - t) * long + off,
          b = plane + <usize>min(bottom, y + t) * long + off,
          c = plane + <usize>max(0, y - t - 1) * long + off,
          d = plane + <usize>min(bottom, y + t + 1) * long + off,
          e = plane + <usize>max(0, y - t - 2) * long + off,
          f = plane + <usize>min(bottom, y + t + 2) * long + off;
        one = f64x2.add(one, three(w1, w2, w3, a, b, c, d, e, f));
        two = f64x2.add(two, three(w1, w2, w3, a + 8, b + 8, c + 8, d + 8, e + 8, f + 8));
      }
      storePairs(to + off, one, two);
    }
    for (; x < width; x++) {
      const off = (<usize>x) << 2;
      let sum = middle * <f64>load<f32>(here + off);
      for (let t = 1; t <= radius; t += 3) sum += both(plane, off, long, bottom, y, t, taps) + both(plane, off, long, bottom, y, t + 1, taps) + both(plane, off, long, bottom, y, t + 2, taps);
      store<f32>(to + off, <f32>sum);
    }
  }
}

// @ts-ignore
@inline
function pair(at: usize): v128 {
  return f64x2.promote_low_f32x4(v128.load64_zero(at));
}

// @ts-ignore
@inline
function three(w1: v128, w2: v128, w3: v128, a: usize, b: usize, c: usize, d: usize, e: usize, f: usize): v128 {
  return f64x2.add(
    f64x2.add(f64x2.mul(w1, f64x2.add(pair(a), pair(b))), f64x2.mul(w2, f64x2.add(pair(c), pair(d)))),
    f64x2.mul(w3, f64x2.add(pair(e), pair(f))),
  );
}

// @ts-ignore
@inline
function both(plane: usize, off: usize, long: usize, bottom: i32, y: i32, t: i32, taps: usize): f64 {
  return (
    load<f64>(taps + ((<usize>t) << 3)) *
    (<f64>load<f32>(plane + <usize>max(0, y - t) * long + off) + <f64>load<f32>(plane + <usize>min(bottom, y + t) * long + off))
  );
}

// @ts-ignore
@inline
function storePairs(at: usize, one: v128, two: v128): void {
  v128.store(at, i8x16.shuffle(f32x4.demote_f64x2_zero(one), f32x4.demote_f64x2_zero(two), 0, 1, 2, 3, 4, 5, 6, 7, 16, 17, 18, 19, 20, 21, 22, 23));
}
