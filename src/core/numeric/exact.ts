/**
 * Exponentials and logarithms that come out the same to the last bit in every engine. The language leaves the last bits of
 * `Math.exp` and its kin to the engine (ECMA-262, Function Properties of the Math Object), and two of them give two Plans: here
 * all is made of + − × ÷ and square roots, which IEEE 754 settles. exp, log and cbrt as in fdlibm (Sun Microsystems 1993 to 2004;
 * cbrt as amended in FreeBSD's msun), within one unit in the last place; the rest from these.
 */
const bits = new Float64Array(1);
/** Low and high word: every machine that runs an engine today keeps the low one first. */
const words = new Int32Array(bits.buffer);

const ln2High = 6.9314718036912381649e-1,
  ln2Low = 1.90821492927058770002e-10,
  perLn2 = 1.442695040888963387;

/** 2 to the power of a whole number, −1022 to 1023. */
function twoTo(k: number): number {
  words[0] = 0;
  words[1] = (k + 1023) << 20;
  return bits[0];
}

function scaled(y: number, k: number): number {
  if (k > 1023) return y * 2 * twoTo(1023);
  return k >= -1021 ? y * twoTo(k) : y * twoTo(k + 1000) * twoTo(-1000);
}

/** e to the power of x. */
export function exp(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > 709.782712893384) return Infinity;
  if (x < -745.1332191019411) return 0;
  const size = Math.abs(x);
  let k = 0,
    high = 0,
    low = 0,
    r = x;
  if (size > 0.5 * Math.LN2) {
    if (size < 1.5 * Math.LN2) k = x < 0 ? -1 : 1;
    else k = Math.trunc(perLn2 * x + (x < 0 ? -0.5 : 0.5));
    high = x - k * ln2High;
    low = k * ln2Low;
    r = high - low;
  } else if (size < 2 ** -28) return 1 + x;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 + t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  if (k === 0) return 1 - ((r * c) / (c - 2) - r);
  return scaled(1 - (low - (r * c) / (2 - c) - high), k);
}

/** Natural logarithm; −∞ at 0, NaN below. */
export function log(x: number): number {
  if (x < 0 || Number.isNaN(x)) return NaN;
  if (x === 0) return -Infinity;
  if (x === Infinity) return x;
  let k = 0;
  bits[0] = x;
  if (words[1] < 0x00100000) {
    k = -54;
    bits[0] = x * 18014398509481984;
  }
  k += (words[1] >> 20) - 1023;
  const upper = words[1] & 0xfffff;
  const carry = (upper + 0x95f64) & 0x100000;
  words[1] = upper | (carry ^ 0x3ff00000);
  k += carry >> 20;
  const f = bits[0] - 1;
  if ((0xfffff & (2 + upper)) < 3) {
    if (f === 0) return k * ln2High + k * ln2Low;
    const near = f * f * (0.5 - 0.3333333333333333 * f);
    return k === 0 ? f - near : k * ln2High - (near - k * ln2Low - f);
  }
  const s = f / (2 + f),
    z = s * s,
    w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd = z * (6.66666666666673513e-1 + w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const rest = even + odd;
  if (((upper - 0x6147a) | (0x6b851 - upper)) > 0) {
    const half = 0.5 * f * f;
    return k === 0 ? f - (half - s * (half + rest)) : k * ln2High - (half - (s * (half + rest) + k * ln2Low) - f);
  }
  return k === 0 ? f - s * (f - rest) : k * ln2High - (s * (f - rest) - k * ln2Low - f);
}

/** e to the power of x, less 1, with all its digits near 0 (Kahan, in Higham 2002, 1.14.1). */
export function expm1(x: number): number {
  if (Math.abs(x) < 1e-16) return x;
  const u = exp(x);
  if (u === 1) return x;
  return u === Infinity || u < 0.5 ? u - 1 : ((u - 1) / log(u)) * x;
}

/** Natural logarithm of 1 + x, with all its digits near 0 (Kahan, in Higham 2002, problem 1.5). */
export function log1p(x: number): number {
  const u = 1 + x;
  return u === 1 ? x : u === Infinity || u <= 0 ? log(u) : (log(u) / (u - 1)) * x;
}

export const log10 = (x: number): number => log(x) / Math.LN10;

export function tanh(x: number): number {
  const e = expm1(-2 * Math.abs(x));
  return (Math.sign(x) * -e) / (e + 2);
}

/** x to the power of y, for x ≥ 0; good to some units in the last place for each power of e in it. */
export function pow(x: number, y: number): number {
  if (y === 0 || x === 1) return 1;
  return x === 0 ? (y > 0 ? 0 : Infinity) : exp(y * log(x));
}

/** The cube root. */
export function cbrt(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  const size = Math.abs(x);
  bits[0] = size;
  const small = words[1] < 0x00100000;
  if (small) bits[0] = size * 18014398509481984;
  words[1] = Math.trunc(words[1] / 3) + (small ? 696219795 : 715094163);
  words[0] = 0;
  let t = bits[0];
  let r = t * t * (t / size);
  t *=
    1.87595182427177009643 +
    r * (-1.88497979543377169875 + r * 1.62142972010535446614) +
    r * r * r * (-0.758397934778766047437 + r * 0.145996192886612446982);
  // To 23 bits, away from nothing, so that its square is exact.
  bits[0] = t;
  const low = (words[0] >>> 0) + 0x80000000;
  if (low > 0xffffffff) words[1]++;
  words[0] = (low | 0) & 0xc0000000;
  t = bits[0];
  r = size / (t * t);
  t += t * ((r - t) / (t + t + r));
  return x < 0 ? -t : t;
}
