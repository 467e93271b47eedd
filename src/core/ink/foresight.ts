import { exp } from '../numeric/index.ts';
import { BANDS, deltaE00, deltaE00Of, labFromXyz, xyzAt, type Lab, type Spectrum } from '../colour/index.ts';
import { seeded, type Random } from '../random.ts';
import { say, sentences, type Saying } from '../../words/say.ts';
import { filmOf } from './film/film.ts';
import { cloudPoint, spreadOf, stepsAt } from './film/jitter.ts';
import { modelBand } from './model-band.ts';
import { overlapSpectra } from './film/overlaps.ts';
import type { Film, Ink, ReadingKind, Surface } from './types.ts';

export interface ForesightLayer {
  readonly ink: Ink;
  readonly strength: number;
  readonly deposit: number;
  /** Relative standard deviation of the film from pull to pull; hand pulls 0.1..0.2 (docs/optics.md 6). */
  readonly depositSpread?: number;
  /** Relative error of the strength by weighing and pouring. */
  readonly strengthSpread?: number;
  /** Doubt of the ink's reading, ΔE00. */
  readonly readingSigma?: number;
}

/** A print that may be so as well as the one foreseen: its films, how they lie on one another, its surface. */
export interface Member {
  readonly surface: Surface;
  readonly films: readonly Film[];
  /** A film as it lies on a certain other one; left out: all alike, by the surface's trapping. */
  readonly onFilm?: (below: number, above: number) => Film;
}

export interface ForesightAsk {
  readonly paper: Spectrum;
  readonly surface: Surface;
  /** First down first, at most 8. */
  readonly layers: readonly ForesightLayer[];
  /** The worst kind of reading among paper and inks: sets the model's own error. */
  readonly worstReading: ReadingKind;
  readonly paperSigma?: number;
  /** The sheet carries a print: one film on it is an overlap already. */
  readonly printed?: boolean;
  readonly samples?: number;
  readonly seed: number;
  /** One print for each sample; left out: drawn from the layers' own spreads, with nothing else in doubt. */
  readonly members?: readonly Member[];
  /** What is shown for each overlap (Lab, three each) where it is more than the layers alone tell, and the same by the model before that. */
  readonly shown?: { readonly lab: Float64Array; readonly byModel: Float64Array };
  /** Share of the model's own error that is left at an overlap after readings of its kin; left out: all of it. */
  readonly left?: (code: number) => { readonly light: number; readonly colour: number };
}

export interface Foresight {
  readonly samples: number;
  /** Overlaps, 2^N. */
  readonly overlaps: number;
  /** Without any error: three per overlap. */
  readonly lab: Float64Array;
  /** ΔE00 from that within which two thirds of prints fall, per overlap. */
  readonly usual: Float64Array;
  /** The same for nine in ten: the band that is promised. */
  readonly band: Float64Array;
  /** The same for nineteen in twenty. */
  readonly wide: Float64Array;
  /** Every sample: samples × overlaps × 3. */
  readonly clouds: Float64Array;
  readonly note: Saying;
}

const usualDepositSpread = 0.15;
const usualStrengthSpread = 0.03;

/**
 * Foresees every overlap with its error band, by seeded sampling of what may go wrong: readings, deposit, strength and
 * the model itself. Within one sample all overlaps share their layers' films, as on one sheet.
 */
export function foresee(ask: ForesightAsk): Foresight {
  const samples = ask.members?.length ?? ask.samples ?? 200;
  const n = 1 << ask.layers.length;
  const random = seeded(ask.seed);
  const own = labsOf(
    overlapSpectra(
      ask.paper,
      ask.layers.map((l) => filmOf(l.ink, l.strength, l.deposit)),
      ask.surface,
    ),
  );
  const lab = ask.shown?.lab ?? own,
    byModel = ask.shown?.byModel ?? own;
  const clouds = new Float64Array(samples * n * 3);
  // Steps of ΔE00 are taken where the overlap is foreseen; they hardly change within its band.
  const steps = Array.from({ length: n }, (_, code) => stepsAt([lab[code * 3], lab[code * 3 + 1], lab[code * 3 + 2]]));
  const off3 = [0, 0, 0];
  const blacks = ask.layers.reduce((mask, _, i) => (lab[(1 << i) * 3] < blackFrom ? mask | (1 << i) : mask), 0);
  const models = [false, true].map((black) => modelBand(ask.worstReading, ask.layers.length + (ask.printed ? 1 : 0), black));
  const left = Array.from({ length: n }, (_, code) => ask.left?.(code) ?? all);
  for (let s = 0; s < samples; s++) {
    const member = ask.members?.[s] ?? drawMember(ask, random);
    const doubts = ask.layers.map((l) => ({ point: cloudPoint(random), spread: spreadOf(l.readingSigma ?? 0.3) }));
    const paperDoubt = { point: cloudPoint(random), spread: spreadOf(ask.paperSigma ?? 0.3) };
    const spectra = overlapSpectra(ask.paper, member.films, member.surface, member.onFilm);
    for (let code = 0; code < n; code++) {
      const colour = labFromXyz(xyzAt(spectra, code * BANDS));
      off3.fill(0);
      let count = 0;
      for (let i = 0; i < doubts.length; i++) {
        if (!(code & (1 << i))) continue;
        count++;
        add(off3, doubts[i].point, doubts[i].spread);
      }
      // The paper's own doubt shows less the more ink lies on it.
      add(off3, paperDoubt.point, paperDoubt.spread / (1 + count));
      // Bare paper and a single ink are as read; only what is foreseen carries the model's error.
      if (count > (ask.printed ? 0 : 1)) {
        const [light, chroma, hue] = cloudPoint(random);
        const model = models[code & blacks ? 1 : 0];
        off3[0] += light * model.light * left[code].light;
        off3[1] += chroma * model.colour * left[code].colour;
        off3[2] += hue * model.colour * left[code].colour;
      }
      const { sl, sc, sh, ca, cb } = steps[code];
      const at = (s * n + code) * 3,
        k = code * 3;
      clouds[at] = colour[0] + lab[k] - byModel[k] + off3[0] * sl;
      clouds[at + 1] = colour[1] + lab[k + 1] - byModel[k + 1] + off3[1] * sc * ca - off3[2] * sh * cb;
      clouds[at + 2] = colour[2] + lab[k + 2] - byModel[k + 2] + off3[1] * sc * cb + off3[2] * sh * ca;
    }
  }
  const usual = new Float64Array(n),
    band = new Float64Array(n),
    wide = new Float64Array(n);
  const off = new Float64Array(samples);
  const within = (share: number): number => off[Math.min(samples - 1, Math.floor(samples * share))];
  for (let code = 0; code < n; code++) {
    for (let s = 0; s < samples; s++) {
      const at = (s * n + code) * 3;
      off[s] = deltaE00Of(lab[code * 3], lab[code * 3 + 1], lab[code * 3 + 2], clouds[at], clouds[at + 1], clouds[at + 2]);
    }
    off.sort();
    usual[code] = within(0.68);
    band[code] = within(0.9);
    wide[code] = within(0.95);
  }
  return { samples, overlaps: n, lab, usual, band, wide, clouds, note: sentences(say('ink.bandSamples', { n: samples }), models[0].note) };
}

/** Lightness below which a single ink counts as a black: its overlaps are dark, and their hues hard to foresee. */
const blackFrom = 40;

const all = { light: 1, colour: 1 };

/** Films varied by pull and pot alone. */
function drawMember(ask: ForesightAsk, random: Random): Member {
  const films = ask.layers.map((l) => {
    const spread = l.depositSpread ?? usualDepositSpread,
      weighing = l.strengthSpread ?? usualStrengthSpread;
    const deposit = l.deposit * exp(spread * random.normal() - (spread * spread) / 2);
    const strength = Math.min(1, l.strength * exp(weighing * random.normal()));
    return filmOf(l.ink, strength, deposit);
  });
  return { films, surface: ask.surface };
}

function add(sum: number[], point: readonly [number, number, number], spread: number): void {
  sum[0] += point[0] * spread;
  sum[1] += point[1] * spread;
  sum[2] += point[2] * spread;
}

/** The band of one overlap; `foresee` gives all at once and for less. */
export function errorBand(ask: ForesightAsk & { readonly code: number }): {
  readonly usual: number;
  readonly band: number;
  readonly wide: number;
  readonly note: Saying;
} {
  const all = foresee(ask);
  return { usual: all.usual[ask.code], band: all.band[ask.code], wide: all.wide[ask.code], note: all.note };
}

/** How likely two overlaps of one sheet look the same (ΔE00 below 2), 0..1. */
export function chanceAlike(foresight: Foresight, codeA: number, codeB: number, within = 2): number {
  const { clouds, overlaps, samples } = foresight;
  let alike = 0;
  for (let s = 0; s < samples; s++) {
    const a = (s * overlaps + codeA) * 3,
      b = (s * overlaps + codeB) * 3;
    if (deltaE00Of(clouds[a], clouds[a + 1], clouds[a + 2], clouds[b], clouds[b + 1], clouds[b + 2]) < within) alike++;
  }
  return alike / samples;
}

/** How likely an overlap comes within so much of a wanted colour, 0..1. */
export function chanceMet(foresight: Foresight, code: number, wanted: Lab, within: number): number {
  let met = 0;
  for (let s = 0; s < foresight.samples; s++) {
    const at = (s * foresight.overlaps + code) * 3;
    const c = foresight.clouds;
    if (deltaE00([c[at], c[at + 1], c[at + 2]], wanted) <= within) met++;
  }
  return met / foresight.samples;
}

/** A chance in words that a printmaker would use. */
export function chanceInWords(chance: number): Saying {
  if (chance >= 0.95) return say('ink.almostSurely');
  if (chance >= 0.75) return say('ink.likely');
  if (chance >= 0.45) return say('ink.asLikelyAsNot');
  if (chance >= 0.15) return say('ink.unlikely');
  return say('ink.hardly');
}

function labsOf(spectra: Float64Array): Float64Array {
  const n = spectra.length / BANDS;
  const out = new Float64Array(n * 3);
  for (let i = 0; i < n; i++) out.set(labFromXyz(xyzAt(spectra, i * BANDS)), i * 3);
  return out;
}
