import { deltaE00Of } from '../colour/index.ts';

/** Colours to be met, prepared for asking many times how well a set of overlaps meets them. */
export interface Targets {
  /** 3 a colour */
  readonly lab: Float64Array;
  /** Sum is 1. */
  readonly weight: Float64Array;
  /** Per colour: L scale, then the quadratic form on (a, b): aa, ab, bb. */
  readonly form: Float64Array;
  readonly count: number;
  /** Which colours lie side by side in the picture, and what their edges cost when they are printed by different codes. */
  readonly edges?: Edges;
}

/** Pairs of colours and the price of the edge between them for each layer that it has to be cut in, as ΔE00 over the whole picture. */
export interface Edges {
  readonly a: Uint16Array;
  readonly b: Uint16Array;
  readonly price: Float64Array;
}

/**
 * Local ΔE00 around each colour as a quadratic form, good enough to tell which overlap is nearest; the difference itself
 * is then worked out exactly. Form from the CIEDE2000 weights at the colour, its stretching of a near grey among them
 * (Sharma et al. 2005); rotation left out.
 */
export function targetsOf(lab: Float64Array, weight: Float64Array): Targets {
  const count = weight.length;
  const form = new Float64Array(count * 4);
  let sum = 0;
  for (let i = 0; i < count; i++) sum += weight[i];
  for (let i = 0; i < count; i++) {
    const l = lab[i * 3], a = lab[i * 3 + 1], b = lab[i * 3 + 2];
    const c7 = Math.hypot(a, b) ** 7, stretch = 1 + 0.5 * (1 - Math.sqrt(c7 / (c7 + 25 ** 7)));
    const chroma = Math.hypot(a * stretch, b), hue = Math.atan2(b, a * stretch);
    const l50 = (l - 50) ** 2;
    const sl = 1 + (0.015 * l50) / Math.sqrt(20 + l50);
    const sc = 1 + 0.045 * chroma;
    const rad = Math.PI / 180;
    const t = 1 - 0.17 * Math.cos(hue - 30 * rad) + 0.24 * Math.cos(2 * hue) + 0.32 * Math.cos(3 * hue + 6 * rad) - 0.2 * Math.cos(4 * hue - 63 * rad);
    const sh = 1 + 0.015 * chroma * t;
    const c = Math.cos(hue), s = Math.sin(hue), u = 1 / (sc * sc), v = 1 / (sh * sh);
    form[i * 4] = 1 / (sl * sl);
    form[i * 4 + 1] = (u * c * c + v * s * s) * stretch * stretch;
    form[i * 4 + 2] = 2 * c * s * (u - v) * stretch;
    form[i * 4 + 3] = u * s * s + v * c * c;
  }
  return { lab, form, count, weight: weight.map((w) => w / sum) };
}

/**
 * Mean ΔE00 when each colour is printed by the best of the codes.
 * @param overlapLab 3 a code
 * @param stopAt gives up once the mean exceeds this
 * @param asked takes the code of each colour
 */
export function meanDifference(targets: Targets, overlapLab: Float64Array, codes: readonly number[], stopAt = Infinity, asked?: Uint8Array): number {
  const { lab, form, weight, count, edges } = targets;
  const chosen = asked ?? (edges ? new Uint8Array(count) : undefined);
  let sum = 0;
  for (let i = 0; i < count && sum < stopAt; i++) {
    const l = lab[i * 3], a = lab[i * 3 + 1], b = lab[i * 3 + 2];
    const fl = form[i * 4], faa = form[i * 4 + 1], fab = form[i * 4 + 2], fbb = form[i * 4 + 3];
    let first = 0, second = 0, least = Infinity, next = Infinity;
    for (let k = 0; k < codes.length; k++) {
      const at = codes[k] * 3;
      const dl = overlapLab[at] - l, da = overlapLab[at + 1] - a, db = overlapLab[at + 2] - b;
      const d = fl * dl * dl + faa * da * da + fab * da * db + fbb * db * db;
      if (d < least) {
        next = least;
        second = first;
        least = d;
        first = at;
      } else if (d < next) {
        next = d;
        second = at;
      }
    }
    let best = deltaE00Of(l, a, b, overlapLab[first], overlapLab[first + 1], overlapLab[first + 2]);
    // The form is near enough to tell a clear winner.
    if (next < 2 * least) {
      const other = deltaE00Of(l, a, b, overlapLab[second], overlapLab[second + 1], overlapLab[second + 2]);
      if (other < best) {
        best = other;
        first = second;
      }
    }
    if (chosen) chosen[i] = first / 3;
    sum += weight[i] * best;
  }
  return edges && chosen && sum < stopAt ? sum + edgeCost(edges, chosen) : sum;
}

const bitCount = Uint8Array.from({ length: 256 }, (_, code) => code.toString(2).replaceAll('0', '').length);

/** The overlaps asked for, side by side. */
const ls = new Float64Array(256), as = new Float64Array(256), bs = new Float64Array(256);

/**
 * About the same by the forms alone: half the time, for telling plans far apart. What is told at the end is never this.
 * @param asked takes the code of each colour
 */
export function roughDifference(targets: Targets, overlapLab: Float64Array, codes: readonly number[], stopAt = Infinity, asked?: Uint8Array): number {
  const { lab, form, weight, count, edges } = targets;
  const chosen = asked ?? (edges ? new Uint8Array(count) : undefined);
  const many = codes.length;
  let sum = 0;
  for (let k = 0; k < many; k++) {
    const at = codes[k] * 3;
    ls[k] = overlapLab[at];
    as[k] = overlapLab[at + 1];
    bs[k] = overlapLab[at + 2];
  }
  for (let i = 0; i < count && sum < stopAt; i++) {
    const l = lab[i * 3], a = lab[i * 3 + 1], b = lab[i * 3 + 2];
    const fl = form[i * 4], faa = form[i * 4 + 1], fab = form[i * 4 + 2], fbb = form[i * 4 + 3];
    let first = 0, least = Infinity;
    for (let k = 0; k < many; k++) {
      const dl = ls[k] - l, da = as[k] - a, db = bs[k] - b;
      const d = fl * dl * dl + da * (faa * da + fab * db) + fbb * db * db;
      if (d < least) {
        least = d;
        first = k;
      }
    }
    if (chosen) chosen[i] = codes[first];
    sum += weight[i] * Math.sqrt(least);
  }
  return edges && chosen && sum < stopAt ? sum + edgeCost(edges, chosen) : sum;
}

function edgeCost(edges: Edges, chosen: Uint8Array): number {
  let sum = 0;
  for (let k = 0; k < edges.price.length; k++) sum += edges.price[k] * bitCount[chosen[edges.a[k]] ^ chosen[edges.b[k]]];
  return sum;
}

/** Mean ΔE00 when it is given how much of each colour each code prints. @param use colour × code, sum 1 */
export function meanAsPrinted(targets: Targets, overlapLab: Float64Array, use: Use): number {
  const { lab } = targets;
  let sum = 0;
  for (let k = 0; k < use.share.length; k++) {
    const t = use.target[k] * 3, c = use.code[k] * 3;
    sum += use.share[k] * deltaE00Of(lab[t], lab[t + 1], lab[t + 2], overlapLab[c], overlapLab[c + 1], overlapLab[c + 2]);
  }
  return sum;
}

/** Which colours are printed by which code, as a list of the pairs that occur. */
export interface Use {
  readonly target: Uint16Array;
  readonly code: Uint8Array;
  readonly share: Float64Array;
}

/** Each colour by its best code. */
export function asPrinted(targets: Targets, overlapLab: Float64Array, codes: readonly number[]): Use {
  const code = new Uint8Array(targets.count);
  meanDifference(targets, overlapLab, codes, Infinity, code);
  return { target: Uint16Array.from(code, (_, i) => i), code, share: targets.weight };
}
