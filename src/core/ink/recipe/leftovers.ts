import { BANDS, deltaE00Of, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { addFilm, effectiveShare, overGround, thinned } from '../film/film.ts';
import { internal } from '../film/surface.ts';
import type { Film, Ink, Surface } from '../types.ts';

export interface Jar {
  readonly id: string;
  readonly name: string;
  readonly ink: Ink;
  readonly densityGPerMl: number;
  readonly leftGrams: number;
}

export interface LeftoversAsk {
  readonly wanted: Lab;
  /** Measured. */
  readonly paper: Spectrum;
  /** Films already printed, first down first. */
  readonly under?: readonly Film[];
  readonly surface: Surface;
  /** How thick the film lies, against that on paper (what lies under it may be in `paper`). */
  readonly deposit?: number;
  readonly jars: readonly Jar[];
  /** Ink that would have to be opened; as much of it as is wanted. */
  readonly pots: readonly Omit<Jar, 'leftGrams'>[];
  /** What fills the rest; a clear one when left out. */
  readonly base?: Omit<Jar, 'leftGrams'>;
  readonly totalGrams: number;
  /** ΔE00 that is near enough. */
  readonly within: number;
  /** The least share that can be weighed; none when left out. */
  readonly leastShare?: number;
}

export interface LeftoverPart {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
  /** Of the pot's volume. */
  readonly share: number;
  /** Out of a jar; else new ink, or base. */
  readonly from: 'jar' | 'new' | 'base';
}

export interface FromLeftovers {
  readonly parts: readonly LeftoverPart[];
  /** Ink that has to be opened for it, without base. */
  readonly newGrams: number;
  readonly jarGrams: number;
  readonly baseGrams: number;
  readonly lab: Lab;
  readonly deltaE: number;
}

/** Base is cheap, but it is new as well: a jar that fits is better than another let down. */
const baseCounts = 0.1;
const mostJars = 2,
  mostNew = 2;

/**
 * The pot nearest to a wanted colour that takes the least new ink: so much as there is from jars, the rest new ink and base. Null where
 * nothing comes near enough; then `nearest` says how near.
 */
export function fromLeftovers(ask: LeftoversAsk): { readonly best: FromLeftovers | null; readonly nearest: FromLeftovers | null } {
  const under = ask.under ?? [];
  const trapping = ask.surface.trapping ?? 1;
  const ground = under.reduce(
    (below, film, j) => addFilm(below, j === 0 ? film : thinned(film, trapping)),
    internal(ask.paper, ask.surface),
  );
  const base = ask.base ?? { id: '', name: '', densityGPerMl: 1.05, ink: { k: new Float64Array(BANDS), s: new Float64Array(BANDS) } };
  const all = [...ask.jars, ...ask.pots];
  // A jar's share of the volume, at most: as heavy as what is left of it, in the lightest pot that may come of it.
  const millilitres = ask.totalGrams / Math.min(base.densityGPerMl, ...all.map((one) => one.densityGPerMl));
  const limit = all.map((one, i) => (i < ask.jars.length ? Math.min(1, ask.jars[i].leftGrams / one.densityGPerMl / millilitres) : 1));
  const labOf = colours(ask, all, base.ink, ground, (ask.deposit ?? 1) * (under.length > 0 ? trapping : 1));
  let best: Found | null = null,
    nearest: Found | null = null;
  const consider = (which: readonly number[]): Found => {
    const found = search(
      which,
      which.map((i) => limit[i]),
      which.map((i) => (i < ask.jars.length ? 0 : 1)),
      labOf,
      ask,
    );
    if ((ask.jars.length === 0 || which.some((i) => i < ask.jars.length)) && (!nearest || found.deltaE < nearest.deltaE)) nearest = found;
    if (found.deltaE <= ask.within + 1e-6 && (!best || found.cost < best.cost - 1e-9)) best = found;
    return found;
  };
  const jarSets = [
    [],
    ...subsets(
      ask.jars.map((_, i) => i),
      mostJars,
    ),
  ];
  const news = ask.pots.map((_, i) => ask.jars.length + i);
  const scored = jarSets.map((jars) => ({
    jars,
    cost: Math.min(...[[], ...news.map((n) => [n])].map((more) => scoreOf(consider([...jars, ...more]), ask.within))),
  }));
  // Two new inks only beside the jars that did best with one.
  scored.sort((a, b) => a.cost - b.cost || a.jars.length - b.jars.length);
  for (const { jars } of scored.slice(0, 2))
    for (const pair of subsets(news, mostNew).filter((s) => s.length === 2)) consider([...jars, ...pair]);
  return { best: best && told(best, ask, all, base), nearest: nearest && told(nearest, ask, all, base) };
}

interface Found {
  readonly which: readonly number[];
  readonly shares: readonly number[];
  readonly lab: Lab;
  readonly deltaE: number;
  /** New ink and a little of the base, of the pot's volume. */
  readonly cost: number;
}

const scoreOf = (found: Found, within: number): number => found.cost + 10 * Math.max(0, found.deltaE - within);

type Colours = (shares: readonly number[], which: readonly number[]) => Lab;

function colours(ask: LeftoversAsk, all: readonly { readonly ink: Ink }[], rest: Ink, ground: Spectrum, thick: number): Colours {
  const { ks, k1, k2 } = ask.surface;
  const through = (1 - k1) * (1 - k2);
  const seen = new Float64Array(BANDS);
  return (shares, which) => {
    const left = Math.max(0, 1 - shares.reduce((a, b) => a + b, 0));
    for (let i = 0; i < BANDS; i++) {
      let K = left * rest.k[i],
        S = left * rest.s[i];
      for (let p = 0; p < which.length; p++) {
        const { ink } = all[which[p]];
        const amount = ink.gamma === undefined ? shares[p] : effectiveShare(ink, shares[p]);
        K += amount * ink.k[i];
        S += amount * ink.s[i];
      }
      const r = overGround(K * thick, S * thick, ground[i]);
      seen[i] = ks + (through * r) / (1 - k2 * r);
    }
    return labFromXyz(xyzAt(seen, 0));
  };
}

/**
 * Shares of a few jars and inks: pattern search (Hooke and Jeeves 1961) on what is new, with being too far off weighed far above it. From
 * jars as full as they may be, and from little of everything.
 */
function search(
  which: readonly number[],
  limits: readonly number[],
  isNew: readonly number[],
  labOf: Colours,
  { wanted, within, leastShare = 0 }: LeftoversAsk,
): Found {
  const measure = (shares: readonly number[]): Found => {
    const lab = labOf(shares, which);
    const deltaE = deltaE00Of(wanted[0], wanted[1], wanted[2], lab[0], lab[1], lab[2]);
    const fresh = shares.reduce((sum, v, i) => sum + v * isNew[i], 0);
    const cost = fresh + baseCounts * Math.max(0, 1 - shares.reduce((a, b) => a + b, 0));
    return { which, shares, lab, deltaE, cost };
  };
  const jars = isNew.filter((n) => n === 0).length || 1;
  const starts = [
    limits.map((limit, i) => (isNew[i] ? 0.02 : Math.min(limit, 0.98 / jars))),
    limits.map((limit, i) => (isNew[i] ? 0.05 : Math.min(limit, 0.15 / jars))),
  ];
  const ways = directions(which.length);
  let best: Found | null = null;
  for (const start of starts) {
    let at = measure(inside(start, limits));
    for (let step = 0.2; step > 0.0005; step /= 2) {
      for (let turn = 0; turn < 6; turn++) {
        let moved = false;
        for (const way of ways) {
          const next = measure(
            inside(
              at.shares.map((v, i) => v + step * (way[i] ?? 0)),
              limits,
            ),
          );
          if (scoreOf(next, within) < scoreOf(at, within) - 1e-7) {
            at = next;
            moved = true;
          }
        }
        if (!moved) break;
      }
    }
    if (!best || scoreOf(at, within) < scoreOf(best, within)) best = at;
  }
  // What no scale shows is left out, and what the pot is without it is said.
  const weighed = best!.shares.map((share) => (share < leastShare ? 0 : share));
  return measure(weighed);
}

/** Along one share; and two together, in several ratios, because the colour holds them together. */
function directions(n: number): number[][] {
  const out: number[][] = [];
  for (let i = 0; i < n; i++) {
    for (const sign of [1, -1]) {
      out.push(Array.from({ length: n }, (_, k) => (k === i ? sign : 0)));
      for (let j = 0; j < n; j++)
        if (j !== i)
          for (const ratio of [-1, -0.3, -0.08, 0.08, 0.3])
            out.push(Array.from({ length: n }, (_, k) => (k === i ? sign : k === j ? sign * ratio : 0)));
    }
  }
  return out;
}

function inside(shares: readonly number[], limits: readonly number[]): number[] {
  const held = shares.map((v, i) => Math.max(0, Math.min(limits[i], v)));
  const sum = held.reduce((a, b) => a + b, 0);
  return sum > 1 ? held.map((v) => v / sum) : held;
}

function told(found: Found, ask: LeftoversAsk, all: readonly Omit<Jar, 'leftGrams'>[], base: Omit<Jar, 'leftGrams'>): FromLeftovers {
  const rest = Math.max(0, 1 - found.shares.reduce((a, b) => a + b, 0));
  const volumes = [
    ...found.which.map((i, p) => ({
      one: all[i],
      share: found.shares[p],
      from: i < ask.jars.length ? ('jar' as const) : ('new' as const),
    })),
    { one: base, share: rest, from: 'base' as const },
  ].filter(({ share }) => share > 0.0005);
  const weight = volumes.reduce((sum, { one, share }) => sum + share * one.densityGPerMl, 0);
  const parts = volumes.map(
    ({ one, share, from }): LeftoverPart => ({
      id: one.id,
      name: one.name,
      share,
      from,
      grams: (ask.totalGrams * share * one.densityGPerMl) / weight,
    }),
  );
  const of = (from: LeftoverPart['from']): number => parts.reduce((sum, p) => sum + (p.from === from ? p.grams : 0), 0);
  return { parts, newGrams: of('new'), jarGrams: of('jar'), baseGrams: of('base'), lab: found.lab, deltaE: found.deltaE };
}

function subsets(items: readonly number[], most: number): number[][] {
  const out: number[][] = [];
  const grow = (from: number, chosen: readonly number[]): void => {
    if (chosen.length > 0) out.push([...chosen]);
    if (chosen.length === most) return;
    for (let i = from; i < items.length; i++) grow(i + 1, [...chosen, items[i]]);
  };
  grow(0, []);
  return out;
}
