import { deltaE00, labFromXyz, xyzFromSrgb, type Lab } from '../colour/index.ts';

/** A handful of colours that a printed sheet is made of, and where each lies. */
export interface GroundColours {
  readonly colours: readonly {
    readonly srgb: readonly [number, number, number];
    readonly lab: Lab;
    /** Two thirds of what lies there is within this ΔE00 of it. */
    readonly spread: number;
    /** Of all pixels, 0..1. */
    readonly share: number;
  }[];
  /** Which of them each pixel is. */
  readonly regions: Uint8Array;
}

const mostColours = 6;
/** What differs less is one ground (common practice: 5 is another shade), and what covers less is none. */
const leastApart = 5,
  leastShare = 0.02;
const bits = 5;

/**
 * The colours of a printed ground: pixels are counted in 32 × 32 × 32 cells of sRGB; colours are chosen one by one where most is still far
 * from those there are (Gonzalez 1985, weighed by area), then moved to the middle of what is nearest to them (Lloyd 1982). No chance in it.
 */
export function groundColours(rgb: Uint8Array): GroundColours {
  const cells = new Float64Array(1 << (3 * bits));
  const sums = new Float64Array(cells.length * 3);
  const pixels = rgb.length / 3;
  const cellOf = (at: number): number => ((rgb[at] >> 3) << 10) | ((rgb[at + 1] >> 3) << 5) | (rgb[at + 2] >> 3);
  for (let i = 0; i < pixels; i++) {
    const cell = cellOf(i * 3);
    cells[cell]++;
    for (let c = 0; c < 3; c++) sums[cell * 3 + c] += rgb[i * 3 + c];
  }
  const used = Array.from(cells.keys()).filter((cell) => cells[cell] > 0);
  const points = used.map((cell) => {
    const n = cells[cell];
    const srgb = [sums[cell * 3] / n, sums[cell * 3 + 1] / n, sums[cell * 3 + 2] / n] as const;
    return { n, srgb, lab: labOf(srgb) };
  });
  const flat = (a: Lab, b: Lab): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  let centres: Lab[] = [points.reduce((most, p) => (p.n > most.n ? p : most)).lab];
  while (centres.length < mostColours) {
    let farthest: { readonly lab: Lab; readonly weight: number } | null = null;
    for (const p of points) {
      const far = Math.min(...centres.map((c) => flat(c, p.lab)));
      const weight = far < leastApart ? 0 : far * far * p.n;
      if (weight > (farthest?.weight ?? 0)) farthest = { lab: p.lab, weight };
    }
    if (!farthest) break;
    centres.push(farthest.lab);
    centres = settle(centres, points, flat);
  }
  // Grounds that are nearly one, or nearly nothing, join the nearest.
  for (let again = true; again && centres.length > 1; ) {
    again = false;
    const shares = centres.map(() => 0);
    for (const p of points) shares[nearest(centres, p.lab, flat)] += p.n / pixels;
    const small = shares.findIndex((share) => share < leastShare);
    const near = centres.findIndex((c, i) => centres.some((other, j) => j < i && deltaE00(c, other) < leastApart));
    const drop = small >= 0 ? small : near;
    if (drop >= 0) {
      centres = settle(
        centres.filter((_, i) => i !== drop),
        points,
        flat,
      );
      again = true;
    }
  }
  const ofCell = new Uint8Array(cells.length);
  const own: (typeof points)[] = centres.map(() => []);
  points.forEach((p, i) => {
    const at = nearest(centres, p.lab, flat);
    ofCell[used[i]] = at;
    own[at].push(p);
  });
  const order = centres.map((_, i) => i).sort((a, b) => weight(own[b]) - weight(own[a]) || a - b);
  const rank = order.reduce((ranks, centre, i) => ranks.fill(i, centre, centre + 1), new Uint8Array(centres.length));
  const regions = new Uint8Array(pixels);
  for (let i = 0; i < pixels; i++) regions[i] = rank[ofCell[cellOf(i * 3)]];
  return {
    regions,
    colours: order.map((at) => {
      const n = weight(own[at]);
      const srgb = [0, 1, 2].map((c) => own[at].reduce((sum, p) => sum + p.n * p.srgb[c], 0) / n) as unknown as [number, number, number];
      const lab = labOf(srgb);
      return { srgb: srgb.map(Math.round) as unknown as [number, number, number], lab, spread: within(own[at], lab, n), share: n / pixels };
    }),
  };
}

interface Point {
  readonly n: number;
  readonly lab: Lab;
}

const weight = (points: readonly Point[]): number => points.reduce((sum, p) => sum + p.n, 0);

function nearest(centres: readonly Lab[], lab: Lab, far: (a: Lab, b: Lab) => number): number {
  let best = 0;
  for (let i = 1; i < centres.length; i++) if (far(centres[i], lab) < far(centres[best], lab)) best = i;
  return best;
}

function settle(centres: readonly Lab[], points: readonly Point[], far: (a: Lab, b: Lab) => number): Lab[] {
  let now = [...centres];
  for (let round = 0; round < 8; round++) {
    const sums = now.map(() => [0, 0, 0, 0]);
    for (const p of points) {
      const sum = sums[nearest(now, p.lab, far)];
      sum[3] += p.n;
      for (let c = 0; c < 3; c++) sum[c] += p.n * p.lab[c];
    }
    now = now.map((c, i) => (sums[i][3] === 0 ? c : [sums[i][0] / sums[i][3], sums[i][1] / sums[i][3], sums[i][2] / sums[i][3]]));
  }
  return now;
}

function within(points: readonly Point[], lab: Lab, n: number): number {
  const off = points.map((p) => ({ n: p.n, off: deltaE00(p.lab, lab) })).sort((a, b) => a.off - b.off);
  let sum = 0;
  for (const one of off) if ((sum += one.n) >= 0.67 * n) return one.off;
  return 0;
}

function labOf(srgb: readonly [number, number, number]): Lab {
  return labFromXyz(xyzFromSrgb([srgb[0] / 255, srgb[1] / 255, srgb[2] / 255]));
}
