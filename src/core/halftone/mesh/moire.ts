import { exp, log } from '../../numeric/index.ts';
/** A raster of threads, or of dots: its lines a cm both ways, and how it is turned. */
export interface Raster {
  readonly perCm: number;
  readonly angleDeg: number;
  /** A line screen has lines one way only. */
  readonly oneWay?: boolean;
}

export interface Moire {
  /** From one band to the next. */
  readonly periodMm: number;
  /** How strong it is against the strongest there can be, 0..1. */
  readonly weight: number;
  /** Which way the bands lie across. */
  readonly angleDeg: number;
}

/** Harmonics that still show: a dot's edge is steep, a thread's is too. */
const harmonics = 4;
/**
 * Bands that two rasters make where they lie on one another: differences of their frequency vectors, all pairs of low harmonics
 * (Amidror, The Theory of the Moiré Phenomenon). The strongest that is broad enough to be seen comes first.
 */
export function moireOf(a: Raster, b: Raster): Moire[] {
  const vectors = ({ perCm, angleDeg, oneWay }: Raster): { x: number; y: number; order: number }[] => {
    const turn = (angleDeg * Math.PI) / 180;
    const [c, s] = [(perCm / 10) * Math.cos(turn), (perCm / 10) * Math.sin(turn)];
    const all: { x: number; y: number; order: number }[] = [];
    for (let i = -harmonics; i <= harmonics; i++)
      for (let k = oneWay ? 0 : -harmonics; k <= (oneWay ? 0 : harmonics); k++) {
        const order = Math.abs(i) + Math.abs(k);
        if (order > 0 && order <= harmonics) all.push({ x: i * c - k * s, y: i * s + k * c, order });
      }
    return all;
  };
  const finest = Math.min(a.perCm, b.perCm) / 10;
  const found: Moire[] = [];
  const of = vectors(b);
  for (const one of vectors(a)) {
    for (const other of of) {
      const [x, y] = [settled(one.x - other.x, 1e9), settled(one.y - other.y, 1e9)];
      const f = Math.hypot(x, y);
      // One of the pair v and −v is enough.
      if (x < 0 || (x === 0 && y < 0)) continue;
      if (f > finest / 2) continue;
      // The k-th harmonic of an edge falls off as 1/k; the eye sees broader bands more easily down to some mm.
      found.push({
        periodMm: Math.min(settled(1 / f, 1e6), 1e6),
        weight: 1 / (one.order * other.order),
        angleDeg: settled((Math.atan2(y, x) * 180) / Math.PI, 1e6),
      });
    }
  }
  return found.sort((m, n) => seen(n) - seen(m));
}

/** Sines end differently in the last digit from engine to engine: what follows from them is rounded, far below what can be seen. */
const settled = (value: number, parts: number): number => (Number.isFinite(value) ? Math.round(value * parts) / parts : value);

/** How much a band catches the eye at arm's length: fully from some 4 mm a period, where contrast is seen best (Campbell and Robson 1968), and less the finer it is. */
export function seen({ periodMm, weight }: Moire): number {
  return periodMm >= 4 ? weight : weight * exp(-0.5 * (log(periodMm / 4) / 0.6) ** 2);
}

export interface AngleAsk {
  /** Of each film, and the mesh that it is printed through. */
  readonly rulings: readonly { readonly perCm: number; readonly oneWay?: boolean; readonly meshPerCm: number }[];
  /** Angles that are decided. */
  readonly fixed?: readonly (number | undefined)[];
}

/** What the worst pair of rasters shows, mesh and films. */
export function worstSeen({ rulings }: AngleAsk, angles: readonly number[]): number {
  let worst = 0;
  rulings.forEach((one, i) => {
    const film = { ...one, angleDeg: angles[i] };
    worst = Math.max(worst, seenMost(meshOf(one), film));
    for (let k = 0; k < i; k++) worst = Math.max(worst, seenMost({ ...rulings[k], angleDeg: angles[k] }, film));
  });
  return worst;
}

/** Threads lie square to the frame. */
const meshOf = ({ meshPerCm }: { readonly meshPerCm: number }): Raster => ({ perCm: meshPerCm, angleDeg: 0 });

const seenMost = (a: Raster, b: Raster): number => {
  const [first] = moireOf(a, b);
  return first ? seen(first) : 0;
};

const stepDeg = 2.5;
/** The handbook's own angles to begin with: 22.5, 52.5, 82.5, 7.5 [S46]. */
const usual = [22.5, 52.5, 82.5, 7.5, 37.5, 67.5, 15, 75];

/** Angles that show least of all bands, by steps of 2.5° up to 90°: each film settled in turn until none moves. */
export function bestAngles(ask: AngleAsk): number[] {
  const steps = Array.from({ length: 36 }, (_, i) => i * stepDeg);
  const known = new Map<string, number>();
  const between = (a: Raster, b: Raster): number => {
    const key = `${a.perCm} ${a.oneWay} ${a.angleDeg} ${b.perCm} ${b.oneWay} ${b.angleDeg}`;
    let is = known.get(key);
    if (is === undefined) known.set(key, (is = seenMost(a, b)));
    return is;
  };
  const at = ask.rulings.map((_, i) => ask.fixed?.[i] ?? usual[i % usual.length]);
  const cost = (i: number, angleDeg: number): number => {
    const film = { ...ask.rulings[i], angleDeg };
    const all = [
      between(meshOf(film), film),
      ...at.flatMap((b, k) => (k === i ? [] : [between({ ...ask.rulings[k], angleDeg: b }, film)])),
    ];
    // The worst band first; among alike, the least of all together.
    return Math.max(...all) + 0.05 * all.reduce((sum, v) => sum + v, 0);
  };
  for (let round = 0, moved = true; round < 6 && moved; round++) {
    moved = false;
    for (let i = 0; i < at.length; i++) {
      if (ask.fixed?.[i] !== undefined) continue;
      const best = steps.reduce((least, angle) => (cost(i, angle) < cost(i, least) - 1e-9 ? angle : least), at[i]);
      if (best !== at[i]) {
        at[i] = best;
        moved = true;
      }
    }
  }
  return at;
}
