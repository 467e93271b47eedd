import { deltaE00, labFromXyz, xyzAt, xyzFromLab, type Spectrum, type Xyz } from '../colour/index.ts';
import { coverSeen, curveAt, filterOf, lightShares, spectrumAtCover, toneForesight, wedgeSheet, wedgeSteps } from '../halftone/index.ts';
import {
  quadsOnPhoto,
  readPhoto,
  readReadings,
  readTyped,
  textOfReadings,
  type Photograph,
  type Reading,
  type ReadPatch,
} from '../ink/index.ts';
import { pow } from '../numeric/index.ts';
import type { Job } from '../job/index.ts';
import type { Plan, PlannedTones } from '../plan/index.ts';
import { fail, problem, ProblemError, type Problem } from '../problem.ts';
import { figure, name as asName, say, share, type Saying } from '../../words/say.ts';
import { labOfReading } from './ink/inks.ts';
import { jobReading } from './ink/shelf.ts';
import { coverScale, wedgeRows, type WedgeRow } from './tone/wedge-rows.ts';

/** Whose wedge, printed on what. */
export interface WedgeAt {
  readonly paperId: string;
  readonly layerId: string;
}

export interface WedgeRead {
  /** What stood on the film, 0..1, and what was read of it. */
  readonly steps: readonly { readonly cover: number; readonly reading: Reading }[];
  readonly problems: readonly Problem[];
}

/** A photograph's steps against each other are surer than its colours: both ends of the wedge are known. */
const sigma = 2;
/** Of a field against its twin at the other end of the sheet. */
const mostDrift = 0.06;

interface Ends {
  readonly paper: Spectrum;
  readonly solid: Spectrum;
  readonly n: number;
}

/** Paper and solid that a wedge lies between, as the plan has them. */
function endsOf(plan: Pick<Plan, 'papers' | 'layers'>, { paperId, layerId }: WedgeAt): Ends {
  const tones = plan.papers.find((p) => p.id === paperId)?.tones;
  const at = tones?.layers.indexOf(layerId) ?? -1;
  if (!tones || at < 0 || !tones.carries[at]) fail('no-tone', `layers[#${layerId}]`, say('halftone.noTone'), say('halftone.giveTone'));
  const { spectrum } = toneForesight(tones.model);
  const paper = Float64Array.from(spectrum(tones.layers.map(() => 0)));
  const solid = Float64Array.from(spectrum(tones.layers.map((_, i) => (i === at ? 1 : 0))));
  return { paper, solid, n: tones.model.n };
}

const settled = (v: number): number => Math.round(v * 1000) / 1000;

function photoReading({ paper, solid, n }: Ends, cover: number): Reading {
  const [l, a, b] = labFromXyz(xyzAt(spectrumAtCover(paper, solid, n, cover), 0));
  return { kind: 'photo', lab: [settled(l), settled(a), settled(b)], sigma };
}

/**
 * A photograph of the printed wedge page: how far each step lies from the page's own bare paper to its own solid, evened out; so neither the
 * camera's colours nor its exposure count.
 */
export function wedgeFromPhoto(plan: Pick<Plan, 'papers' | 'layers'>, at: WedgeAt, photo: Photograph, place: Saying): WedgeRead {
  const ends = endsOf(plan, at);
  const sheet = wedgeSheet();
  const quad = quadsOnPhoto(sheet.marks, photo, place);
  const paperLab = labFromXyz(xyzAt(ends.paper, 0));
  const read = readPhoto({
    photo,
    place,
    paper: sheet.bare.map(quad),
    paperLab,
    patches: sheet.fields.map((field) => ({ name: say('halftone.stepOf', { cover: share(field.cover, 0) }), quad: quad(field) })),
  });
  const light = read.patches.map(({ reading }) => xyzFromLab(reading.lab));
  const white = xyzFromLab(paperLab);
  const twins = (cover: number): Xyz[] => light.filter((_, i) => sheet.fields[i].cover === cover);
  const mean = (of: readonly Xyz[]): Xyz => [0, 1, 2].map((c) => of.reduce((sum, xyz) => sum + xyz[c], 0) / of.length) as unknown as Xyz;
  const solid = mean(twins(1));
  if (deltaE00(labFromXyz(solid), paperLab) < 8) fail('wedge-too-pale', place, say('halftone.wedgePale'), say('halftone.wedgeByNumbers'));
  const coverOf = (xyz: Xyz): number => coverSeen(ends.paper, ends.solid, ends.n, lightShares(xyz, white, solid));
  const problems: Problem[] = [...read.problems];
  let drift = 0;
  const steps = wedgeSteps
    .filter((cover) => cover < 1)
    .map((cover) => {
      const [one, other] = twins(cover).map(coverOf);
      drift = Math.max(drift, Math.abs(one - other));
      return { cover, reading: photoReading(ends, coverOf(mean(twins(cover)))) };
    });
  if (drift > mostDrift)
    problems.push(
      problem('warning', 'wedge-uneven', place, say('halftone.wedgeUneven', { by: share(drift, 0) }), say('halftone.pullEvenly')),
    );
  return { steps, problems };
}

/** Steps as they were typed: density or Lab behind each, or a table of densities. */
export function wedgeFromText(plan: Pick<Plan, 'papers' | 'layers'>, at: WedgeAt, text: string, place: Saying): WedgeRead {
  return fromRows(plan, at, wedgeRows(text) ?? unread(place), place);
}

const unread = (place: Saying): never => fail('wedge-unread', place, say('halftone.wedgeUnread'), say('halftone.typeWedge'));

function fromRows(plan: Pick<Plan, 'papers' | 'layers'>, at: WedgeAt, rows: readonly WedgeRow[], place: Saying): WedgeRead {
  for (const { cover, step } of rows)
    if (Number.isNaN(cover)) fail('chart-cover', place, say('halftone.notACover', { text: asName(step) }), say('halftone.typeWedge'));
  const single = rows.every(({ value }) => /^-?\d*[.,]?\d+$/.test(value));
  if (!single) return whole(rows.map(({ cover, value }) => ({ cover, reading: readTyped(value, place) })));
  return fromDensities(
    endsOf(plan, at),
    rows.map(({ cover, value }) => ({ cover, density: Number(value.replace(',', '.')) })),
    place,
  );
}

/**
 * A file: steps as they are typed, a table of densities, or readings whose patches are named by their steps; or as many readings as the
 * page has, in its order.
 */
export function wedgeFromFile(plan: Pick<Plan, 'papers' | 'layers'>, at: WedgeAt, bytes: Uint8Array, fileName: string): WedgeRead {
  const place = say('where.file', { file: asName(fileName) });
  const rows = wedgeRows(textOfReadings(bytes, place));
  if (rows) return fromRows(plan, at, rows, place);
  const { patches, problems } = patchesIn(bytes, fileName, place);
  const steps = patches.map((p) => /(\d+(?:[.,]\d+)?)\s*%?$/.exec(p.name.trim())?.[1] ?? '');
  const scale = coverScale(steps);
  const covers = steps.map((step) => (step === '' ? NaN : Number(step.replace(',', '.')) / scale));
  const all = wedgeSheet().fields;
  const usual = new Set(wedgeSteps.map((c) => Math.round(c * 100)));
  // Names that only count, 1, 2, 3 …, are no steps.
  const named = covers.every((cover) => cover === 0 || usual.has(Math.round(cover * 100)));
  const order = named ? covers : [all.map((f) => f.cover), wedgeSteps].find((known) => known.length === patches.length);
  if (!order) fail('wedge-unread', place, say('halftone.wedgeUnread'), say('halftone.nameSteps', { n: all.length }));
  return { ...whole(patches.map(({ reading }: ReadPatch, i) => ({ cover: order[i], reading }))), problems };
}

/** What a table without colours lacks here is a density or Lab behind each step. */
function patchesIn(bytes: Uint8Array, fileName: string, place: Saying): ReturnType<typeof readReadings> {
  try {
    return readReadings(bytes, fileName);
  } catch (error) {
    if (error instanceof ProblemError && error.problems.some((p) => p.code === 'no-readings')) unread(place);
    throw error;
  }
}

/** Steps that say something: bare paper is known as it is. */
function whole(steps: WedgeRead['steps']): WedgeRead {
  return { steps: steps.filter(({ cover }) => cover > 0), problems: [] };
}

/** No print reads outside of these, with the paper taken as nought or not. */
const leastDensity = -0.5,
  mostDensity = 4;

/** Densities through the ink's own filter, with the solid's and, where not taken as nought, the paper's (ISO 12647-1, Murray–Davies). */
function fromDensities(ends: Ends, rows: readonly { readonly cover: number; readonly density: number }[], place: Saying): WedgeRead {
  const odd = rows.find(({ density }) => !(density >= leastDensity && density <= mostDensity));
  if (odd) fail('wedge-density', place, say('halftone.notADensity', { density: figure(odd.density, 2, false) }), say('halftone.typeWedge'));
  const meanAt = (step: number): number | undefined => {
    const all = rows.filter(({ cover }) => cover === step);
    return all.length > 0 ? all.reduce((sum, { density }) => sum + density, 0) / all.length : undefined;
  };
  const solid = meanAt(1),
    bare = meanAt(0) ?? 0;
  if (solid === undefined || !(solid > bare + 0.05))
    fail('wedge-without-solid', place, say('halftone.wedgeNoSolid'), say('halftone.typeWedge'));
  const of = filterOf(ends.paper, ends.solid);
  const light = (density: number): number => pow(10, bare - density);
  const steps = rows
    .filter(({ cover }) => cover > 0 && cover < 1)
    .map(({ cover, density }) => {
      const seen = (1 - light(density)) / (1 - light(solid));
      return {
        cover,
        reading: photoReading(ends, coverSeen(ends.paper, ends.solid, ends.n, [{ of, share: Math.min(1, Math.max(0, seen)), weight: 1 }])),
      };
    });
  return { steps, problems: [] };
}

/** The job with these steps in place of those that the same run had on the same paper. */
export function withWedge(job: Job, { paperId, layerId }: WedgeAt, { steps }: WedgeRead, date?: string): Job {
  const kept = job.proofReadings.filter(
    (r) => !(r.paper === paperId && r.layers.length === 1 && r.layers[0] === layerId && r.coverages !== undefined),
  );
  return {
    ...job,
    proofReadings: [
      ...kept,
      ...steps.map(({ cover, reading }) => ({
        paper: paperId,
        layers: [layerId],
        coverages: [cover],
        reading: jobReading(reading),
        ...(date === undefined ? {} : { date }),
      })),
    ],
  };
}

export interface WedgeCurve {
  /** What stands on the film, and what comes to lie on the paper. */
  readonly points: readonly { readonly film: number; readonly paper: number }[];
  readonly n: number;
  /** Mean ΔE00 that is left at the steps; null: no wedge was read. */
  readonly off: number | null;
  /** Of this run: else it is taken from the mesh. */
  readonly read: boolean;
}

/** The tone curve of a run on a paper, as plan, split and films take it. */
export function wedgeCurve(tones: PlannedTones | null | undefined, layerId: string): WedgeCurve | null {
  const at = tones?.layers.indexOf(layerId) ?? -1;
  if (!tones || at < 0 || !tones.carries[at]) return null;
  const { curves, n, wedgeOff, known } = tones.model;
  return {
    points: [0, ...wedgeSteps].map((film) => ({ film, paper: curveAt(curves[at], film) })),
    n,
    off: known[at] ? wedgeOff : null,
    read: known[at],
  };
}

/** Share of the way from the first step to the last by which a step may fall behind the one before it. */
const fallsBack = 0.04;

/** What is odd about the steps of a wedge. */
export function wedgeProblems(read: WedgeRead, place: Saying): Problem[] {
  const sorted = [...read.steps]
    .sort((a, b) => a.cover - b.cover)
    .map(({ cover, reading }) => ({ cover, lab: labOfReading(reading, place) }));
  const last = sorted[sorted.length - 1]?.lab ?? [0, 0, 0];
  const left = sorted.map(({ lab }) => Math.hypot(lab[0] - last[0], lab[1] - last[1], lab[2] - last[2]));
  const back = sorted.find((_, i) => i > 0 && left[i] > left[i - 1] + fallsBack * left[0]);
  const out = [...read.problems];
  if (back)
    out.push(
      problem(
        'warning',
        'wedge-falls-back',
        place,
        say('halftone.wedgeFallsBack', { cover: share(back.cover, 0) }),
        say('halftone.readStepAgain'),
      ),
    );
  if (read.steps.filter(({ cover }) => cover < 1).length < 3)
    out.push(problem('warning', 'wedge-short', place, say('halftone.wedgeShort'), say('halftone.readMoreSteps')));
  return out;
}
