// For watching slits, and for marks in a picture: part of `register.ts`.

/** The most (or least) of all values within a square around each pixel: of a plane `from`, by way of `over`, into `to`. */
export function around(from: usize, over: usize, to: usize, w: i32, h: i32, reach: i32, greatest: bool): void {
  for (let y = 0; y < h; y++) {
    const row = from + ((<usize>(y * w)) << 2),
      out = over + ((<usize>(y * w)) << 2);
    for (let x = 0; x < w; x++) {
      const last = min(w - 1, x + reach);
      let value = load<f32>(row + ((<usize>x) << 2));
      for (let k = max(0, x - reach); k <= last; k++) {
        const other = load<f32>(row + ((<usize>k) << 2));
        value = greatest ? max(value, other) : min(value, other);
      }
      store<f32>(out + ((<usize>x) << 2), value);
    }
  }
  for (let y = 0; y < h; y++) {
    const first = max(0, y - reach),
      last = min(h - 1, y + reach),
      out = to + ((<usize>(y * w)) << 2);
    memory.copy(out, over + ((<usize>(y * w)) << 2), (<usize>w) << 2);
    for (let k = first; k <= last; k++) {
      const row = over + ((<usize>(k * w)) << 2);
      let x = 0;
      for (; x + 3 < w; x += 4) {
        const at = (<usize>x) << 2,
          a = v128.load(out + at),
          b = v128.load(row + at);
        v128.store(out + at, greatest ? f32x4.max(a, b) : f32x4.min(a, b));
      }
      for (; x < w; x++) {
        const at = (<usize>x) << 2,
          a = load<f32>(out + at),
          b = load<f32>(row + at);
        store<f32>(out + at, greatest ? max(a, b) : min(a, b));
      }
    }
  }
}
