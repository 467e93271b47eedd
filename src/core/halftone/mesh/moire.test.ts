import { expect, test } from 'vitest';
import { bestAngles, moireOf, worstSeen, type Raster } from './moire.ts';

const perMm = 16,
  side = 1024;

/** A raster as it is: square threads, or dots. */
function drawn({ perCm, angleDeg, oneWay }: Raster, open: number): Float64Array {
  const turn = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const f = perCm / 10 / perMm;
  return Float64Array.from({ length: side * side }, (_, i) => {
    const [x, y] = [i % side, Math.floor(i / side)];
    const u = (x * c + y * s) * f,
      v = (-x * s + y * c) * f;
    const inside = (t: number): boolean => t - Math.floor(t) < open;
    return inside(u) && (oneWay === true || inside(v)) ? 1 : 0;
  });
}

/** In-place FFT (Cooley and Tukey 1965) of a line of complex numbers. */
function fft(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j], re[i]];
      [im[i], im[j]] = [im[j], im[i]];
    }
  }
  for (let len = 2; len <= n; len <<= 1)
    for (let i = 0; i < n; i += len)
      for (let k = 0; k < len / 2; k++) {
        const angle = (-2 * Math.PI * k) / len;
        const [wr, wi] = [Math.cos(angle), Math.sin(angle)];
        const a = i + k,
          b = a + len / 2;
        const tr = re[b] * wr - im[b] * wi,
          ti = re[b] * wi + im[b] * wr;
        re[b] = re[a] - tr;
        im[b] = im[a] - ti;
        re[a] += tr;
        im[a] += ti;
      }
}

/** The strongest frequency, lines a mm, of two rasters on one another that neither has by itself and that is coarser than `below`. */
function peak(a: Float64Array, b: Float64Array, below: number): number {
  const re = a.map((v, i) => {
    const [x, y] = [i % side, Math.floor(i / side)];
    // Hann window both ways, mean taken off: what is cut at the edges makes no lines of its own.
    const window = Math.sin((Math.PI * x) / side) ** 2 * Math.sin((Math.PI * y) / side) ** 2;
    return (v * b[i] - meanOf(a) * meanOf(b)) * window;
  });
  const im = new Float64Array(re.length);
  for (let y = 0; y < side; y++) fft(re.subarray(y * side, (y + 1) * side), im.subarray(y * side, (y + 1) * side));
  const [cr, ci] = [new Float64Array(side), new Float64Array(side)];
  let best = 0,
    at = 0;
  const most = Math.ceil((below * side) / perMm);
  for (let x = 0; x <= most; x++) {
    for (let y = 0; y < side; y++) {
      cr[y] = re[y * side + x];
      ci[y] = im[y * side + x];
    }
    fft(cr, ci);
    for (let y = 0; y < side; y++) {
      const fy = y < side / 2 ? y : y - side;
      const f = (Math.hypot(x, fy) * perMm) / side;
      const power = cr[y] ** 2 + ci[y] ** 2;
      if (f > 0.06 && f < below && power > best) {
        best = power;
        at = f;
      }
    }
  }
  return at;
}
const means = new Map<Float64Array, number>();
function meanOf(of: Float64Array): number {
  let mean = means.get(of);
  if (mean === undefined) means.set(of, (mean = of.reduce((sum, v) => sum + v, 0) / of.length));
  return mean;
}

test.each<[string, Raster, Raster]>([
  ['two films 15° apart', { perCm: 16, angleDeg: 22.5 }, { perCm: 16, angleDeg: 37.5 }],
  ['two films 7.5° apart', { perCm: 16, angleDeg: 45 }, { perCm: 16, angleDeg: 52.5 }],
  ['two rulings in line', { perCm: 16, angleDeg: 10 }, { perCm: 19, angleDeg: 10 }],
  ['a fine ruling near the mesh’s own', { perCm: 34, angleDeg: 0 }, { perCm: 30, angleDeg: 4 }],
])('bands are where the spectrum of the two on one another has its peak: %s', (_, a, b) => {
  const [first] = moireOf(a, b);
  const measured = peak(drawn(a, 0.5), drawn(b, 0.6), Math.min(a.perCm, b.perCm) / 20);
  expect(1 / first.periodMm).toBeCloseTo(measured, 1.2);
});

test('best angles beat the handbook’s and the worst by what they show', () => {
  for (const n of [2, 3, 4]) {
    const ask = { rulings: Array.from({ length: n }, () => ({ perCm: 19 })), meshPerCm: 77 };
    const best = bestAngles(ask);
    expect(worstSeen(ask, best)).toBeLessThanOrEqual(worstSeen(ask, [22.5, 52.5, 82.5, 7.5].slice(0, n)) + 1e-9);
    expect(worstSeen(ask, best)).toBeLessThan(0.6 * worstSeen(ask, [0, 45, 75, 15].slice(0, n)));
  }
  const fixed = bestAngles({ rulings: [{ perCm: 16 }, { perCm: 16 }], meshPerCm: 77, fixed: [10, undefined] });
  expect(fixed[0]).toBe(10);
  expect(Math.abs(fixed[1] - 10)).toBeGreaterThan(20);
});
