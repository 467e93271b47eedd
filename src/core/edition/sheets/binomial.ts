import { exp, log, log1p } from '../../numeric/index.ts';
/** ln Γ(x + 1) − ln Γ(k + 1) − ln Γ(n − k + 1), by Stirling's series (Abramowitz & Stegun 6.1.41) after lifting small arguments. */
function logChoose(n: number, k: number): number {
  return logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
}

function logGamma(x: number): number {
  let lift = 0;
  let y = x;
  while (y < 12) {
    lift += log(y);
    y++;
  }
  const z = 1 / (y * y);
  const series = (1 / 12 - z * (1 / 360 - z * (1 / 1260 - z * (1 / 1680 - z / 1188)))) / y;
  return (y - 0.5) * log(y) - y + 0.5 * log(2 * Math.PI) + series - lift;
}

/** P(exactly k of n), each with chance p. */
export function binomialAt(n: number, k: number, p: number): number {
  if (k < 0 || k > n) return 0;
  if (p <= 0) return k === 0 ? 1 : 0;
  if (p >= 1) return k === n ? 1 : 0;
  return exp(logChoose(n, k) + k * log(p) + (n - k) * log1p(-p));
}

/** P(at least k of n). Sums the shorter tail outwards from k, so that small tails keep their digits. */
export function binomialAtLeast(n: number, k: number, p: number): number {
  if (k <= 0) return 1;
  if (k > n) return 0;
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  const odds = p / (1 - p);
  if (k > n * p) {
    let term = binomialAt(n, k, p);
    let sum = 0;
    for (let i = k; i <= n && term > sum * 1e-18; i++) {
      sum += term;
      term *= ((n - i) / (i + 1)) * odds;
    }
    return Math.min(1, sum);
  }
  let term = binomialAt(n, k - 1, p);
  let sum = 0;
  for (let i = k - 1; i >= 0 && term > sum * 1e-18; i--) {
    sum += term;
    term *= i / (n - i + 1) / odds;
  }
  return Math.max(0, 1 - sum);
}

/** The least m for which P(at most m of n) ≥ share. */
export function binomialQuantile(n: number, p: number, share: number): number {
  let low = 0;
  let high = n;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (1 - binomialAtLeast(n, middle + 1, p) >= share) high = middle;
    else low = middle + 1;
  }
  return low;
}
