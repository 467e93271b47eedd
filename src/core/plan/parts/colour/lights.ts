import { deltaE00Of, labFromXyz, labUnderLamp, lamps, xyzAt, type Illuminant, type Lab, type Spectrum } from '../../../colour/index.ts';
import { addFilm, internal, measured, overlapSpectra, type Member } from '../../../ink/index.ts';
import type { PrintedLayer } from './let-down.ts';
import type { PartingPair, PlannedLight } from '../../planned.ts';

/** Two overlaps look the same up to this ΔE00, and differ for everybody from that on (common practice: 1 is just seen side by side). */
const alikeWithin = 2,
  apartFrom = 3;
/** Lamps must make at least this difference. */
const partsBy = 1.5;
/** The broadest overlaps are compared, each with each. */
const mostCompared = 64;
const mostPairs = 6;

export interface LitAsk {
  readonly paper: Spectrum;
  readonly layers: readonly PrintedLayer[];
  /** The films as learned, or as planned: the print that is shown. */
  readonly shown: Member;
  /** Lab of all rows as shown, three each: what was learned or read moves all lights alike. */
  readonly lab: Float64Array;
  /** Overlaps whose own spectrum was read. */
  readonly read: ReadonlyMap<number, Spectrum>;
  readonly areas: Float64Array;
  readonly codeOf: (row: number) => number;
}

export interface Lit {
  readonly lights: readonly PlannedLight[];
  /** Lab of every row under every lamp, three each, in the order of `lamps`. */
  readonly labs: readonly Float64Array[];
}

/** All overlaps under every lamp but the one that prints are judged by. */
export function lightsOn(ask: LitAsk): Lit {
  const spectra = overlapSpectra(ask.paper, ask.shown.films, ask.shown.surface, ask.shown.onFilm);
  for (const [row, spectrum] of ask.read) spectra.set(spectrum, row * 36);
  const rows = 1 << ask.layers.length;
  const moved = new Float64Array(rows * 3);
  for (let row = 0; row < rows; row++) {
    const lab = labFromXyz(xyzAt(spectra, row * 36));
    for (let c = 0; c < 3; c++) moved[row * 3 + c] = ask.lab[row * 3 + c] - lab[c];
  }
  const labs = lamps.map((lamp) => {
    const out = new Float64Array(rows * 3);
    for (let row = 0; row < rows; row++) {
      const lab = labUnderLamp(xyzAt(spectra, row * 36, lamp), lamp);
      for (let c = 0; c < 3; c++) out[row * 3 + c] = settled(lab[c] + moved[row * 3 + c]);
    }
    return out;
  });
  const lights = lamps.slice(1).map((lamp, i): PlannedLight => {
    const lab = labs[i + 1];
    const overlaps: PlannedLight['overlaps'][number][] = [];
    for (let row = 0; row < rows; row++) {
      if (row > 0 && ask.areas[row] === 0) continue;
      const own: Lab = [lab[row * 3], lab[row * 3 + 1], lab[row * 3 + 2]];
      overlaps.push({ code: ask.codeOf(row), lab: own, moved: tenth(between(labs[0], row, lab, row)) });
    }
    return { lamp, overlaps };
  });
  return { lights, labs };
}

/**
 * Overlaps that look the same under one lamp and not under another, those that part most first.
 * @param members prints that may be so as well: in how many of them the two part too
 * @param ground of a printed sheet, where they lie on one
 */
export function partingOf(ask: LitAsk, { labs }: Lit, members: readonly Member[], ground: number | null = null): PartingPair[] {
  const broad = Array.from(ask.areas.keys())
    .filter((row) => ask.areas[row] > 0)
    .sort((a, b) => ask.areas[b] - ask.areas[a] || a - b)
    .slice(0, mostCompared)
    .sort((a, b) => a - b);
  const found: { a: number; b: number; alike: number; apart: number; near: number; far: number }[] = [];
  broad.forEach((a, i) => {
    for (const b of broad.slice(i + 1)) {
      // What is far apart under one lamp never comes to match under another: lamps move colours by a dozen at most.
      if (
        Math.hypot(labs[0][a * 3] - labs[0][b * 3], labs[0][a * 3 + 1] - labs[0][b * 3 + 1], labs[0][a * 3 + 2] - labs[0][b * 3 + 2]) > 16
      )
        continue;
      const off = labs.map((lab) => between(lab, a, lab, b));
      const near = Math.min(...off),
        far = Math.max(...off);
      if (near <= alikeWithin && far >= apartFrom && far - near >= partsBy)
        found.push({ a, b, alike: off.indexOf(near), apart: off.indexOf(far), near, far });
    }
  });
  found.sort((x, y) => y.far - y.near - (x.far - x.near) || x.a - y.a || x.b - y.b);
  return found.slice(0, mostPairs).map(({ a, b, alike, apart, near, far }): PartingPair => {
    let parts = 0;
    for (const member of members) {
      const [one, other] = [a, b].map((row) => ask.read.get(row) ?? stackOf(ask.paper, member, row));
      const off = (lamp: Illuminant): number =>
        deltaE00Of(...labUnderLamp(xyzAt(one, 0, lamp), lamp), ...labUnderLamp(xyzAt(other, 0, lamp), lamp));
      if (off(lamps[apart]) >= off(lamps[alike]) + 1) parts++;
    }
    return {
      codes: [ask.codeOf(a), ask.codeOf(b)],
      ground,
      alikeUnder: lamps[alike],
      apartUnder: lamps[apart],
      alikeDeltaE: tenth(near),
      apartDeltaE: tenth(far),
      chance: Math.round(100 * (parts / Math.max(1, members.length))) / 100,
    };
  });
}

/** Pairs of several grounds, those that part most first. */
export function mostParting(all: readonly PartingPair[]): PartingPair[] {
  const by = (pair: PartingPair): number => pair.apartDeltaE - pair.alikeDeltaE;
  return all.toSorted((x, y) => by(y) - by(x) || (x.ground ?? 0) - (y.ground ?? 0)).slice(0, mostPairs);
}

/** One overlap of one print that may be so as well. */
function stackOf(paper: Spectrum, { films, surface, onFilm }: Member, row: number): Spectrum {
  let ground = internal(paper, surface);
  let below = -1;
  for (let top = 0; top < films.length; top++) {
    if (!(row & (1 << top))) continue;
    ground = addFilm(ground, below < 0 || !onFilm ? films[top] : onFilm(below, top));
    below = top;
  }
  return measured(ground, surface);
}

function between(one: Float64Array, a: number, other: Float64Array, b: number): number {
  return deltaE00Of(one[a * 3], one[a * 3 + 1], one[a * 3 + 2], other[b * 3], other[b * 3 + 1], other[b * 3 + 2]);
}

const tenth = (v: number): number => Math.round(v * 10) / 10;
/** As all of the Plan's colours: engines differ in the last bits. */
const settled = (v: number): number => Math.round(v * 1e6) / 1e6;
