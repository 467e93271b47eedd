import { pow } from '../../../numeric/index.ts';
import { labFromSpectrum, labFromXyz, srgbFromXyz, xyzFromLab, xyzFromSpectrum, type Lab, type Spectrum } from '../../../colour/index.ts';
import {
  filmOf,
  foresee,
  overlapColours,
  overlapSpectra,
  sigmaOf,
  spectrumFromReading,
  stackReflectance,
  bits,
  reach,
  readingsWorth,
  stripOf,
  type Foresight,
  type Ink,
  type Member,
  type OverlapColours,
  type Reading,
} from '../../../ink/index.ts';
import type { Job, JobBundle, JobLayer, JobPaper } from '../../../job/index.ts';
import type { Problem } from '../../../problem.ts';
import { pick, type Memory } from '../../memory.ts';
import { deepestPoints, overlapIndex, paletteOf, type Codes, type RgbPicture } from '../../../print/index.ts';
import { say, sentences } from '../../../../words/say.ts';
import { tonesOn } from '../tone/models.ts';
import type { ToneScreen } from '../tone/screens.ts';
import { isSolid } from '../tone/solid.ts';
import { bandOnGrounds, groundsUnder } from './grounds.ts';
import type { FoundInks } from './inks.ts';
import { learnOnPaper, type LearnedPaper, type LearningLayer } from './learning.ts';
import { layTheInks, type PrintedLayer, type PrintLayer, type RunLayer } from './let-down.ts';
import { lightsOn, partingOf, type LitAsk } from './lights.ts';
import { overPicture } from './over-picture.ts';
import { groundsOf } from './proof.ts';
import type { OverPicture, PlannedOverlap, PlannedPaper, Swatch, WorthReadings } from '../../planned.ts';

/** Seeded samples behind each band: enough for two figures, fast enough for a slider. */
export const bandSamples = 80;

/** Engines differ in the last bit of exp, log and powers. Millionths of a ΔE are above that noise, so the Plan says the same everywhere. */
export function settleLab(lab: Lab): Lab {
  return [settle(lab[0]), settle(lab[1]), settle(lab[2])];
}

const settle = (value: number): number => Math.round(value * 1e6) / 1e6;

export function swatchOf(R: Spectrum): Swatch {
  const xyz = xyzFromSpectrum(R);
  const { hex, inGamut } = srgbFromXyz(xyz);
  return { lab: settleLab(labFromXyz(xyz)), srgb: hex, inGamut };
}

/** One ink alone on a paper. */
export function inkSwatch(ink: Ink, paper: Spectrum, found: FoundInks): Swatch {
  return swatchOf(stackReflectance(paper, [filmOf(ink)], found.surface));
}

/** Colours of all overlaps on one paper, first-down layer in bit 0: as learned from proofs where there are any, as measured where they were read. */
export function coloursOn(
  paper: Pick<JobPaper, 'id'>,
  job: Pick<Job, 'proofReadings'>,
  found: FoundInks,
  layers: readonly PrintedLayer[],
  learned: LearnedPaper | null,
): { readonly colours: OverlapColours; readonly measured: ReadonlyMap<number, number> } | null {
  const spectrum = found.papers.get(paper.id);
  if (!spectrum) return null;
  const colours = overlapColours(
    overlapSpectra(
      spectrum,
      layers.map((l) => l.film),
      found.surface,
    ),
  );
  if (learned?.learning) for (let row = 1; row < 1 << layers.length; row++) showAs(colours, row, learned.foresee(layersOf(row, layers)));
  return { colours, measured: applyReadings(paper, job, layers, colours) };
}

/** Ids of an overlap's layers, first down first. */
export function layersOf(row: number, layers: readonly PrintedLayer[]): string[] {
  return layers.filter((_, i) => row & (1 << i)).map((l) => l.id);
}

export function codeOf(row: number, layers: readonly PrintedLayer[]): number {
  return layers.reduce((code, l, i) => (row & (1 << i) ? code | (1 << l.bit) : code), 0);
}

export function colourOf(colours: OverlapColours, row: number): Swatch {
  return {
    lab: settleLab([colours.lab[row * 3], colours.lab[row * 3 + 1], colours.lab[row * 3 + 2]]),
    srgb: `#${[0, 1, 2].map((c) => colours.rgb[row * 3 + c].toString(16).padStart(2, '0')).join('')}`,
    inGamut: colours.inGamut[row] === 1,
  };
}

/**
 * Every overlap on one paper.
 * @param layers those that print, first down first
 * @param areasMm2 of all 256 codes (open layers' bits included)
 */
function planPaper(
  paper: JobPaper,
  job: Pick<Job, 'proofReadings' | 'seed'>,
  found: FoundInks,
  layers: readonly PrintedLayer[],
  areasMm2: Float64Array,
  ground: OverPicture['ground'] | null,
  learned: LearnedPaper | null,
  deepest: ReturnType<typeof deepestPoints>,
  codes: Codes,
  screens: ReadonlyMap<string, ToneScreen>,
): PlannedPaper | null {
  const spectrum = found.papers.get(paper.id);
  const coloured = coloursOn(paper, job, found, layers, learned);
  if (!spectrum || !coloured) return null;
  const { colours, measured } = coloured;
  const bits = layers.map((l) => l.bit);
  const rows = 1 << layers.length;
  const areas = new Float64Array(rows);
  for (let code = 0; code < 256; code++) areas[overlapIndex(code, bits)] += areasMm2[code];

  const foresight = foresightOn(paper, job, found, layers, learned, bandSamples)!;
  const lit = litAsk(paper, job, found, layers, learned, colours.lab, areas);
  const lights = lightsOn(lit);
  const shown = shownPrint(found, layers, learned);
  const onGrounds =
    ground &&
    groundsUnder({
      ground,
      codes,
      paperId: paper.id,
      found,
      layers,
      shown,
      members: learned && learned.members(bandSamples, job.seed),
      seed: job.seed,
      codeOf: (row) => codeOf(row, layers),
    });
  const grounds = onGrounds?.grounds ?? null;
  const overlaps = overlapsOf(coloured, layers, areas, foresight, grounds);
  // What is read of a solid holds within its own doubt. Sampled bands are rounded where engines end their sines differently.
  const toneBands = foresight.band.map((band, row) => coloured.measured.get(row) ?? Math.round(band * 1e6) / 1e6);
  return {
    id: paper.id,
    name: paper.name,
    swatch: swatchOf(spectrum),
    overlaps,
    palette: paletteOf(colours.rgb, bits),
    progressive: layers.map((_, i) => paletteOf(colours.rgb, bits, i + 1)),
    bandNote: sentences(foresight.note, ground && say('ink.bandOverPicture')),
    lights: lights.lights,
    parting: onGrounds?.parting ?? partingOf(lit, lights, learned?.members(bandSamples, job.seed) ?? []),
    learning: learned?.learning ?? null,
    worthReading: ground ? null : worthReading(foresight, areas, [...measured.keys()], found, layers, deepest),
    grounds,
    tones: tonesOn(paper, job, found, layers, screens, learned, colours.lab, toneBands),
    overPicture: ground && overPicture(ground, shown, layers, areas),
  };
}

/** The overlaps that cover something, and the bare paper. */
function overlapsOf(
  { colours, measured }: NonNullable<ReturnType<typeof coloursOn>>,
  layers: readonly PrintedLayer[],
  areas: Float64Array,
  foresight: NonNullable<ReturnType<typeof foresightOn>>,
  grounds: PlannedPaper['grounds'],
): PlannedOverlap[] {
  return Array.from(areas.keys())
    .filter((row) => areas[row] > 0 || row === 0)
    .map((row) => {
      const onGround = grounds && bandOnGrounds(grounds, codeOf(row, layers), labAt(colours.lab, row));
      return {
        ...colourOf(colours, row),
        code: codeOf(row, layers),
        layers: layersOf(row, layers),
        band: tenth(measured.get(row) ?? onGround ?? foresight.band[row]),
        areaMm2: areas[row],
        measured: measured.has(row),
        possible: measured.has(row)
          ? [colourOf(colours, row).srgb]
          : stripOf(foresight, row).map((lab) => srgbFromXyz(xyzFromLab(lab)).hex),
      };
    });
}

const labAt = (lab: ArrayLike<number>, row: number): Lab => [lab[row * 3], lab[row * 3 + 1], lab[row * 3 + 2]];

/** What the colours under other lamps are worked out from. */
export function litAsk(
  paper: JobPaper,
  job: Pick<Job, 'proofReadings'>,
  found: FoundInks,
  layers: readonly PrintedLayer[],
  learned: LearnedPaper | null,
  lab: Float64Array,
  areas: Float64Array,
): LitAsk {
  const read = new Map<number, Spectrum>();
  for (const proof of job.proofReadings) {
    if (
      proof.paper !== paper.id ||
      !isSolid(proof) ||
      proof.reading.kind !== 'spectrum' ||
      !proof.layers.every((id) => layers.some((l) => l.id === id))
    )
      continue;
    read.set(
      layers.reduce((row, l, k) => (proof.layers.includes(l.id) ? row | (1 << k) : row), 0),
      Float64Array.from(proof.reading.values),
    );
  }
  return {
    paper: found.papers.get(paper.id)!,
    layers,
    shown: shownPrint(found, layers, learned),
    lab,
    read,
    areas,
    codeOf: (row) => codeOf(row, layers),
  };
}

/** The print that is shown: its films as learned where proofs were read, else as planned. */
export function shownPrint(found: FoundInks, layers: readonly PrintedLayer[], learned: LearnedPaper | null): Member {
  return learned?.learning ? learned.best() : { films: layers.map((l) => l.film), surface: found.surface };
}

/** Prints that may be so as well as the one foreseen, all overlaps of each: what bands, strips and chances are read from. */
export function foresightOn(
  paper: Pick<JobPaper, 'id'>,
  job: Pick<Job, 'seed'>,
  found: FoundInks,
  layers: readonly PrintedLayer[],
  learned: LearnedPaper | null,
  samples: number,
): Foresight | null {
  const spectrum = found.papers.get(paper.id);
  if (!spectrum) return null;
  const rows = 1 << layers.length;
  const labs = (of: (ids: readonly string[]) => Lab): Float64Array =>
    Float64Array.from(Array.from({ length: rows }, (_, row) => of(layersOf(row, layers))).flat());
  const learning = learned?.learning;
  return foresee({
    paper: spectrum,
    surface: found.surface,
    worstReading: found.kind,
    paperSigma: found.paperSigmas.get(paper.id),
    seed: job.seed,
    // What a colour's reading is off by is in the members' inks.
    layers: layers.map((l) => ({ ink: l.pot, strength: 1, deposit: 1, readingSigma: learned && l.moves ? 0 : l.sigma })),
    ...(learned
      ? {
          members: learned.members(samples, job.seed),
          ...(learning && { shown: { lab: labs(learned.foresee), byModel: labs(learned.byModel) } }),
          left: (row: number) => leftOf(row, learned.read),
        }
      : { samples }),
  });
}

/** How much of the model's own error is left at an overlap when kin of it were read: by the nearest of them. */
function leftOf(row: number, read: readonly number[]): { readonly light: number; readonly colour: number } {
  let most = 0;
  for (const other of read) if (bits(other) > 1) most = Math.max(most, bits(row & other) / bits(row | other));
  return { light: Math.sqrt(1 - pow(most, 2 * reach.lightness)), colour: Math.sqrt(1 - pow(most, 2 * reach.colour)) };
}

function worthReading(
  foresight: Foresight,
  areas: Float64Array,
  read: readonly number[],
  found: FoundInks,
  layers: readonly PrintedLayer[],
  deepest: ReturnType<typeof deepestPoints>,
): WorthReadings | null {
  const { meanBand, picks } = readingsWorth({ foresight, areas, read, kind: found.kind });
  if (picks.length === 0) return null;
  return {
    meanBand: tenth(meanBand),
    picks: picks.flatMap((pick) => {
      const code = codeOf(pick.row, layers);
      const atMm = deepest.get(code);
      return atMm ? [{ code, layers: layersOf(pick.row, layers), atMm, meanBand: tenth(pick.meanBand) }] : [];
    }),
  };
}

export const tenth = (value: number): number => Math.round(value * 10) / 10;

function showAs(colours: OverlapColours, row: number, lab: Lab): void {
  const shown = srgbFromXyz(xyzFromLab(lab));
  colours.lab.set(lab, row * 3);
  colours.rgb.set(shown.rgb, row * 3);
  colours.inGamut[row] = shown.inGamut ? 1 : 0;
}

/** A measured overlap is shown as measured. Returns its doubt by row. */
function applyReadings(
  paper: Pick<JobPaper, 'id'>,
  job: Pick<Job, 'proofReadings'>,
  layers: readonly PrintedLayer[],
  colours: OverlapColours,
): Map<number, number> {
  // The last reading of an overlap stands for it; what a photograph shows is more doubtful than a forecast, and only teaches.
  const last = new Map<number, { readonly reading: Reading; readonly place: string }>();
  for (const [i, proof] of job.proofReadings.entries()) {
    if (proof.paper !== paper.id || !isSolid(proof) || !proof.layers.every((id) => layers.some((l) => l.id === id))) continue;
    if (proof.reading.kind === 'photo') continue;
    const row = layers.reduce((code, l, k) => (proof.layers.includes(l.id) ? code | (1 << k) : code), 0);
    last.set(row, { reading: proof.reading, place: `proofReadings[${i}]` });
  }
  const measured = new Map<number, number>();
  for (const [row, { reading, place }] of last) {
    showAs(colours, row, labFromSpectrum(spectrumFromReading(reading, place)));
    measured.set(row, sigmaOf(reading));
  }
  return measured;
}

/** Every overlap on every paper, with what readings of printed overlaps have taught about each. */
export function planPapers(
  bundle: JobBundle & { readonly pictures?: ReadonlyMap<string, RgbPicture> },
  layers: readonly RunLayer[],
  inks: FoundInks,
  codes: Codes,
  areas: Float64Array,
  screens: ReadonlyMap<string, ToneScreen>,
  memory: Memory,
  found: (problems: readonly Problem[]) => void,
): PlannedPaper[] {
  const { job } = bundle;
  const grounds = groundsOf(bundle, inks, codes, memory);
  const read: LearnReads['job'] = pick(job, 'proofReadings');
  const known = layers.map((l) => pick(l, 'id', 'name', 'ink', 'strength', 'base', 'bases', 'filmTimes'));
  const pots = layers.map((l) => pick(l, 'id', 'ink', 'strength', 'base', 'bases', 'filmTimes'));
  const deepest = memory.part('deepest', { codes }, pointsOf);
  return job.papers.flatMap((paper): PlannedPaper[] => {
    const learned = memory.part(`learning ${paper.id}`, { paperId: paper.id, job: read, inks, layers: known }, learnFrom, 8);
    found(learned?.problems ?? []);
    const ground = grounds.get(paper.id) ?? null;
    const reads = { paper, job: pick(job, 'proofReadings', 'seed'), inks, layers: pots, areas, ground, learned, deepest, codes, screens };
    const planned = memory.part(`paper ${paper.id}`, reads, paperFrom, 8);
    return planned ? [planned] : [];
  });
}

interface LearnReads {
  readonly paperId: string;
  readonly job: Parameters<typeof learnOnPaper>[0];
  readonly inks: FoundInks;
  readonly layers: readonly LearningLayer[];
}

const learnFrom = ({ paperId, job, inks, layers }: LearnReads): LearnedPaper | null => learnOnPaper(job, layers, inks, paperId);

interface PaperReads {
  readonly paper: JobPaper;
  readonly job: Pick<Job, 'proofReadings' | 'seed'>;
  readonly inks: FoundInks;
  /** A new name colours nothing anew. */
  readonly layers: readonly (PrintLayer & Pick<JobLayer, 'id'>)[];
  readonly areas: Float64Array;
  readonly ground: OverPicture['ground'] | null;
  readonly learned: LearnedPaper | null;
  readonly deepest: ReturnType<typeof deepestPoints>;
  readonly codes: Codes;
  readonly screens: ReadonlyMap<string, ToneScreen>;
}

const pointsOf = ({ codes }: { readonly codes: Codes }): ReturnType<typeof deepestPoints> => deepestPoints(codes);

const paperFrom = ({ paper, job, inks, layers, areas, ground, learned, deepest, codes, screens }: PaperReads): PlannedPaper | null =>
  planPaper(paper, job, inks, layTheInks(layers, inks), areas, ground, learned, deepest, codes, screens);
