/** A curve through known points: nought and one are always among them. */
export interface ToneCurve {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly slope: Float64Array;
}

/**
 * Monotone cubic through points (Fritsch and Carlson 1980): no step of a wedge is overshot, and no contour arises between two of them.
 * @param points x rising, without the ends
 * @param ends what holds at 0 and at 1
 */
export function curveThrough(points: readonly (readonly [x: number, y: number])[], ends: readonly [number, number] = [0, 1]): ToneCurve {
  const all = [[0, ends[0]] as const, ...points.filter(([x]) => x > 0 && x < 1).sort((a, b) => a[0] - b[0]), [1, ends[1]] as const];
  const x = Float64Array.from(all, (p) => p[0]),
    y = Float64Array.from(all, (p) => p[1]);
  const n = x.length;
  const secant = Float64Array.from({ length: n - 1 }, (_, i) => (y[i + 1] - y[i]) / (x[i + 1] - x[i]));
  const slope = Float64Array.from({ length: n }, (_, i) => {
    if (i === 0) return secant[0];
    if (i === n - 1) return secant[n - 2];
    const a = secant[i - 1],
      b = secant[i];
    if (a * b <= 0) return 0;
    // Weighted harmonic mean (Fritsch and Butland 1984): stays monotone without a second pass.
    const h0 = x[i] - x[i - 1],
      h1 = x[i + 1] - x[i];
    const w0 = 2 * h1 + h0,
      w1 = h1 + 2 * h0;
    return (w0 + w1) / (w0 / a + w1 / b);
  });
  return { x, y, slope };
}

export function curveAt({ x, y, slope }: ToneCurve, at: number): number {
  const last = x.length - 1;
  if (at <= 0) return y[0];
  if (at >= 1) return y[last];
  let i = 0;
  while (i < last - 1 && at > x[i + 1]) i++;
  const h = x[i + 1] - x[i];
  const t = (at - x[i]) / h;
  const u = 1 - t;
  return y[i] * (1 + 2 * t) * u * u + slope[i] * h * t * u * u + y[i + 1] * t * t * (3 - 2 * t) - slope[i + 1] * h * t * t * u;
}

/** What goes in for a curve to give `value`: by halving, the curve rises. */
export function curveInverse(curve: ToneCurve, value: number): number {
  let low = 0,
    high = 1;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (curveAt(curve, middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Points of a wedge as they can be: what a reading takes back from one step to the next is shared out between the two (pool adjacent violators). */
export function rising(values: readonly number[]): number[] {
  const pools: { sum: number; n: number }[] = [];
  for (const v of values) {
    pools.push({ sum: Math.min(1, Math.max(0, v)), n: 1 });
    while (pools.length > 1) {
      const [a, b] = pools.slice(-2);
      if (a.sum / a.n <= b.sum / b.n) break;
      pools.splice(-2, 2, { sum: a.sum + b.sum, n: a.n + b.n });
    }
  }
  return pools.flatMap(({ sum, n }) => Array.from({ length: n }, () => sum / n));
}
