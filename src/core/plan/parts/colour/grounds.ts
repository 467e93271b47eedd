import {
  deltaE00,
  labFromSpectrum,
  labFromXyz,
  smoothestSpectrumNear,
  srgbFromXyz,
  xyzAt,
  xyzFromLab,
  xyzFromSrgb,
  type Lab,
  type Spectrum,
} from '../../../colour/index.ts';
import { foresee, overlapSpectra, spreadOf, stepsAt, type Member } from '../../../ink/index.ts';
import { groundColours, overlapIndex, withinPaint, type Codes, type GroundColours } from '../../../print/index.ts';
import type { FoundInks } from './inks.ts';
import type { PrintedLayer } from './let-down.ts';
import { lightsOn, mostParting, partingOf, type LitAsk } from './lights.ts';
import type { PartingPair, PlannedGrounds } from '../../planned.ts';

/** Doubt of a ground that is known from a picture, ΔE00 (OPTICS section 7: photographs, 5 to 8 likely): two in three. More where the picture could not hold it. */
const pictureSigma = 6,
  clippedSigma = 10;
/** A ground that differs from the paper by less is bare paper (common practice). */
const bareWithin = 3;
/** Nine in ten of a round normal cloud lie within so many times its root mean square. */
const nineInTen = 1.443;
/** Fewer than for a bare paper: there are several grounds, and each is wide. */
const samples = 48;

export interface GroundsAsk {
  /** RGB of the earlier print under each pixel of `codes`. */
  readonly ground: Uint8Array;
  readonly codes: Codes;
  readonly found: FoundInks;
  readonly paperId: string;
  readonly layers: readonly PrintedLayer[];
  readonly shown: Member;
  /** Prints that may be so as well; null where nothing is known of them. */
  readonly members: readonly Member[] | null;
  readonly seed: number;
  readonly codeOf: (row: number) => number;
}

/** A ground stays the same while inks and orders change: its colours are found once. */
const knownColours = new WeakMap<Uint8Array, GroundColours>();

function coloursOf(ground: Uint8Array): GroundColours {
  let known = knownColours.get(ground);
  if (!known) knownColours.set(ground, (known = groundColours(ground)));
  return known;
}

/** Every overlap on each of the colours that a printed sheet is made of, with its own band and under every lamp; and what parts under lamps. */
export function groundsUnder(ask: GroundsAsk): { readonly grounds: PlannedGrounds; readonly parting: readonly PartingPair[] } {
  const { ground, codes, layers } = ask;
  const { colours, regions } = coloursOf(ground);
  const bits = layers.map((l) => l.bit);
  const rows = 1 << layers.length;
  const rowOf = Uint8Array.from({ length: 256 }, (_, code) => overlapIndex(code, bits));
  const areas = new Float64Array(colours.length * rows);
  const mm2 = codes.mmPerPx * codes.mmPerPx;
  for (let i = 0; i < regions.length; i++) areas[regions[i] * rows + rowOf[codes.data[i]]] += mm2;
  const members = ask.members?.slice(0, samples);
  const made = colours.map((colour, at) => onGround(ask, colour, at, areas.subarray(at * rows, (at + 1) * rows), members));
  return {
    grounds: { regions, colours: made.map((one) => one.colour) },
    parting: mostParting(made.flatMap((one) => one.parting)),
  };
}

/** The spectrum that stands for a ground of a printed sheet: the paper's own where it is bare. */
export function groundSpectrum(srgb: string, paper: Spectrum): Spectrum {
  const bytes = [1, 3, 5].map((at) => parseInt(srgb.slice(at, at + 2), 16)) as [number, number, number];
  const lab = labFromXyz(xyzFromSrgb([bytes[0] / 255, bytes[1] / 255, bytes[2] / 255]));
  return deltaE00(labFromSpectrum(paper), lab) < bareWithin ? paper : pictured(bytes);
}

const pictured = ([r, g, b]: readonly [number, number, number]): Spectrum =>
  smoothestSpectrumNear(withinPaint(xyzFromSrgb([r / 255, g / 255, b / 255]))).spectrum;

function onGround(
  { found, paperId, layers, shown, seed, codeOf }: GroundsAsk,
  colour: GroundColours['colours'][number],
  ground: number,
  areas: Float64Array,
  members: readonly Member[] | undefined,
): { readonly colour: PlannedGrounds['colours'][number]; readonly parting: readonly PartingPair[] } {
  const [r, g, b] = colour.srgb;
  // Where the sheet is bare it is as it was read.
  const paper = found.papers.get(paperId);
  const bare = paper !== undefined && deltaE00(labFromSpectrum(paper), colour.lab) < bareWithin;
  const spectrum = bare ? paper : pictured([r, g, b]);
  const spectra = overlapSpectra(spectrum, shown.films, shown.surface, shown.onFilm);
  const lab = new Float64Array(areas.length * 3);
  for (let row = 0; row < areas.length; row++) lab.set(labFromXyz(xyzAt(spectra, row * 36)), row * 3);
  const foresight = foresee({
    paper: spectrum,
    surface: found.surface,
    // What a printed ground may be otherwise is followed through the films below.
    worstReading: bare ? found.kind : 'photo',
    paperSigma: bare ? found.paperSigmas.get(paperId) : 0,
    printed: !bare,
    seed,
    shown: { lab, byModel: lab },
    layers: layers.map((l) => ({ ink: l.pot, strength: 1, deposit: 1, readingSigma: members && l.moves ? 0 : l.sigma })),
    ...(members ? { members } : { samples }),
  });
  const clipped = colour.srgb.some((v) => v < 4 || v > 251);
  const off = bare ? null : movedBy(colour.lab, spectra, Math.hypot(clipped ? clippedSigma : pictureSigma, colour.spread), shown);
  const overlaps: PlannedGrounds['colours'][number]['overlaps'][number][] = [];
  for (let row = 0; row < areas.length; row++) {
    if (areas[row] === 0) continue;
    const own: Lab = [settled(lab[row * 3]), settled(lab[row * 3 + 1]), settled(lab[row * 3 + 2])];
    const { hex, inGamut } = srgbFromXyz(xyzFromLab(own));
    overlaps.push({
      code: codeOf(row),
      lab: own,
      srgb: hex,
      inGamut,
      band: Math.round(Math.hypot(foresight.band[row], nineInTen * (off?.[row] ?? 0)) * 10) / 10,
      areaMm2: areas[row],
    });
  }
  const hex = `#${[r, g, b].map((v) => v.toString(16).padStart(2, '0')).join('')}`;
  // A picture tells no spectra: two overlaps are compared where one ground lies under both, the likeliest there is.
  const ask: LitAsk = { paper: spectrum, layers, shown, lab, read: new Map(), areas, codeOf };
  const lit = lightsOn(ask);
  return {
    colour: {
      srgb: hex,
      lab: colour.lab.map(settled) as unknown as Lab,
      areaMm2: areas.reduce((a, v) => a + v, 0),
      overlaps,
      asRead: [settled(lab[0]), settled(lab[1]), settled(lab[2])],
      lights: lit.lights,
    },
    parting: partingOf(ask, lit, members ?? [], ground),
  };
}

/**
 * How far an overlap on a sheet that is printed already may lie from the colour shown, which is that on the bare sheet: its band
 * there; where it lies on none, as far as the nearest ground takes it, and that ground's band. Undefined where it covers nothing.
 */
export function bandOnGrounds({ colours }: PlannedGrounds, code: number, shown: Lab): number | undefined {
  const there = colours.flatMap((ground) => ground.overlaps.filter((o) => o.code === code));
  const reach = there.map((o) => {
    const off = deltaE00(o.lab, shown);
    return off < sameColour ? o.band : off + o.band;
  });
  return reach.length > 0 ? Math.min(...reach) : undefined;
}
/** A colour that differs by less is the one shown: the sheet is bare there, or as good as. */
const sameColour = 3;

/** How far each overlap moves, ΔE00 (root mean square), with a ground that is off along lightness, chroma and hue. */
function movedBy(ground: Lab, spectra: Float64Array, sigma: number, shown: Member): Float64Array {
  const rows = spectra.length / 36;
  const sums = new Float64Array(rows);
  const { sl, sc, sh, ca, cb } = stepsAt(ground);
  const by = spreadOf(sigma);
  const steps: Lab[] = [
    [by * sl, 0, 0],
    [0, by * sc * ca, by * sc * cb],
    [0, -by * sh * cb, by * sh * ca],
  ];
  for (const [l, a, b] of steps) {
    // Darker rather than lighter: nothing is brighter than white.
    const lightness = ground[0] + l > 97 ? ground[0] - l : ground[0] + l;
    const { spectrum } = smoothestSpectrumNear(xyzFromLab([Math.max(2, lightness), ground[1] + a, ground[2] + b]));
    const other = overlapSpectra(spectrum, shown.films, shown.surface, shown.onFilm);
    for (let row = 0; row < rows; row++)
      sums[row] += deltaE00(labFromXyz(xyzAt(spectra, row * 36)), labFromXyz(xyzAt(other, row * 36))) ** 2;
  }
  return sums.map(Math.sqrt);
}

/** As all of the Plan's colours: engines differ in the last bits. */
const settled = (v: number): number => Math.round(v * 1e6) / 1e6;
