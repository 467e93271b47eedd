import { exp } from '../../numeric/index.ts';
/** A bell of this many times the allowed deviation is laid over the outline. */
const bellShare = 6;

/**
 * A closed outline without the unrest of pixels: the mean under a bell along the outline, taken twice so that curves do not
 * shrink (Tukey's twicing, 1977), but no point farther than `mostMm` from where it was found. Corners are rounded by no more
 * than that.
 */
export function smoothRing(ring: Float64Array, stepMm: number, mostMm: number): Float64Array {
  const found = evenly(ring, stepMm);
  const n = found.length / 2;
  if (n < 24 || !(mostMm > 0)) return ring;
  const sigma = Math.min((bellShare * mostMm) / stepMm, n / 20);
  const once = underBell(found, sigma),
    twice = underBell(once, sigma);
  return found.map((v, i) => {
    const c = i & 1,
      x = i - c;
    const dx = 2 * once[x] - twice[x] - found[x],
      dy = 2 * once[x + 1] - twice[x + 1] - found[x + 1];
    const share = Math.min(1, mostMm / Math.max(1e-12, Math.hypot(dx, dy)));
    return v + share * (c === 0 ? dx : dy);
  });
}

function underBell(points: Float64Array, sigma: number): Float64Array {
  const reach = Math.ceil(3 * sigma),
    n = points.length / 2;
  const weights = Array.from({ length: reach + 1 }, (_, k) => exp(-(k * k) / (2 * sigma * sigma)));
  const whole = weights[0] + 2 * weights.slice(1).reduce((sum, w) => sum + w, 0);
  const out = new Float64Array(points.length);
  for (let i = 0; i < n; i++) {
    let x = weights[0] * points[2 * i],
      y = weights[0] * points[2 * i + 1];
    for (let k = 1; k <= reach; k++) {
      const a = 2 * ((i + k) % n),
        b = 2 * ((i - k + n) % n);
      x += weights[k] * (points[a] + points[b]);
      y += weights[k] * (points[a + 1] + points[b + 1]);
    }
    out[2 * i] = x / whole;
    out[2 * i + 1] = y / whole;
  }
  return out;
}

/** Points at equal distances (about `stepMm`) along a closed outline. */
function evenly(ring: Float64Array, stepMm: number): Float64Array {
  const n = ring.length;
  const lengths = new Float64Array(n / 2 + 1);
  for (let i = 0; i < n; i += 2) {
    const j = (i + 2) % n;
    lengths[i / 2 + 1] = lengths[i / 2] + Math.hypot(ring[j] - ring[i], ring[j + 1] - ring[i + 1]);
  }
  const whole = lengths[n / 2],
    count = Math.max(3, Math.round(whole / stepMm));
  const out = new Float64Array(2 * count);
  for (let k = 0, i = 0; k < count; k++) {
    const at = (k * whole) / count;
    while (i + 1 < n / 2 && lengths[i + 1] <= at) i++;
    const j = (2 * i + 2) % n,
      span = lengths[i + 1] - lengths[i],
      t = span > 0 ? (at - lengths[i]) / span : 0;
    out[2 * k] = ring[2 * i] + t * (ring[j] - ring[2 * i]);
    out[2 * k + 1] = ring[2 * i + 1] + t * (ring[j + 1] - ring[2 * i + 1]);
  }
  return out;
}
