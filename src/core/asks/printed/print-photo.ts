import { deltaE00, type Lab } from '../../colour/index.ts';
import { findCorners, lensMap, type Lens } from '../../form/index.ts';
import {
  readPhoto,
  squareUp,
  type Photograph,
  type PhotoRead,
  type Point,
  type Quad,
  type Reading,
  type Squared,
} from '../../ink/index.ts';
import type { Job } from '../../job/index.ts';
import { homography, mapPoint } from '../../numeric/index.ts';
import type { Plan, PlannedOverlap, PlannedPaper } from '../../plan/index.ts';
import { cellAt, deepestCells, depthsOf, type Depths } from '../../print/index.ts';
import { fail, problem, ProblemError, type Problem } from '../../problem.ts';
import { asWritten, list, name as asName, say, type Saying } from '../../../words/say.ts';
import { jobReading } from '../ink/shelf.ts';
import { barePlaces, reallyBare, squareAt, type Square } from './bare-places.ts';

type PlanSeen = Pick<Plan, 'job' | 'codes' | 'papers' | 'layers'>;

export interface PrintPhotoAsk {
  readonly photo: Photograph;
  readonly paperId: string;
  /** Four, in pixels, clockwise as the print is read, its top left first; left out: looked for, as the whole sheet's, any way up. */
  readonly corners?: readonly Point[];
  /** Whose corners these are. */
  readonly of: 'image' | 'sheet';
  /** Of the camera, in pixels of this photograph (`lensOfCamera`): what it bends is straightened. */
  readonly lens?: Lens;
  /** Which photograph. */
  readonly place: Saying;
  /** Pixels along the longer side of the squared picture; left out: none is made. */
  readonly longPx?: number;
}

/** An overlap as a photograph of the print shows it. */
export interface SeenOverlap {
  readonly code: number;
  readonly layers: readonly string[];
  /** Where it was read. */
  readonly at: Square;
  readonly foreseen: Pick<PlannedOverlap, 'lab' | 'srgb' | 'band' | 'measured'>;
  readonly reading: Extract<Reading, { kind: 'photo' }>;
  /** ΔE00 from the colour foreseen. */
  readonly deltaE: number;
  /** More than the photograph and the forecast may be off by together. */
  readonly beyond: boolean;
}

export interface PrintPhotoAnswer {
  /** As given or found; null: none were found. */
  readonly corners: readonly Point[] | null;
  /** The same of the image and of the sheet; null where there are none. */
  readonly outlines: { readonly image: readonly Point[]; readonly sheet: readonly Point[] } | null;
  readonly squared: Squared | null;
  /** Those that differ most first; none where the paper's light could not be read. */
  readonly seen: readonly SeenOverlap[];
  /** The run by which all overlaps that have it differ, and no other does; null where there is no such run. */
  readonly suspect: string | null;
  /** Overlaps that lie nowhere broad enough. */
  readonly narrow: number;
  readonly problems: readonly Problem[];
}

/** Standard deviation → what nine in ten stay within, of a doubt in three directions (χ² of 3: √(6.251 / 3)). */
const nineInTen = 1.44;

/** The printed sheet in a photograph: squared up, its colours read as observations and held against the colours foreseen. */
export function askPrintPhoto(plan: PlanSeen, ask: PrintPhotoAsk): PrintPhotoAnswer {
  const paper = plan.papers.find((p) => p.id === ask.paperId);
  if (!paper) {
    const all = list(
      plan.papers.map((p) => asName(p.id)),
      'comma',
    );
    fail('no-such-paper', ask.place, say('asks.noSuchPaper', { paper: asName(ask.paperId) }), say('asks.useOneOf', { all }));
  }
  const depths = printedDepths(plan, paper);
  if (ask.corners) return seenFrom(plan, paper, depths, ask, ask.corners);
  const found = cornersFound(ask.photo);
  if (!found)
    return {
      corners: null,
      outlines: null,
      squared: null,
      seen: [],
      suspect: null,
      narrow: 0,
      problems: [problem('warning', 'corners-not-found', ask.place, say('asks.printNotFound'), say('asks.layPrintCorners'))],
    };
  // Nobody has said which way up it lies: that which comes nearest to the colours foreseen.
  const turned = [0, 1, 2, 3].map((turn) => {
    const corners = [...found.slice(turn), ...found.slice(0, turn)];
    const { seen } = colours(plan, paper, depths, ask, onPhotoOf(plan, ask, corners));
    return { corners, off: seen.reduce((sum, one) => sum + one.deltaE, 0) / Math.max(1, seen.length), read: seen.length > 0 };
  });
  const best = turned.reduce((most, one) => (one.read && (!most.read || one.off < most.off) ? one : most));
  return seenFrom(plan, paper, depths, ask, best.corners);
}

/** `findCorners` reads 8 bits. */
function cornersFound(photo: Photograph): readonly Point[] | null {
  const { width, height, data } = photo;
  const eight = data instanceof Uint16Array ? Uint8Array.from(data, (v) => v >> 8) : data;
  return findCorners({ width, height, channels: 4, data: eight }) ?? null;
}

function seenFrom(plan: PlanSeen, paper: PlannedPaper, depths: Depths, ask: PrintPhotoAsk, corners: readonly Point[]): PrintPhotoAnswer {
  const onPhoto = onPhotoOf(plan, ask, corners);
  const { read, seen, narrow, problems } = colours(plan, paper, depths, ask, onPhoto);
  const mapped = (margins: Margins): Point[] => cornersOf(plan, margins).map(([x, y]) => onPhoto(x, y));
  const outlines = { image: mapped([0, 0, 0, 0]), sheet: mapped(marginsOf(plan, paper.id)) };
  const squared = ask.longPx === undefined ? null : squareUp(ask.photo, onPhoto, plan.job.image, ask.longPx, read);
  return { corners, outlines, squared, seen, suspect: suspectOf(seen), narrow, problems };
}

/** Between two shades (common practice: 5 anyone sees). */
const clearlyApart = 4;

/**
 * A photograph's doubt is mostly one cast over all of it, so that overlaps tell more against one another: a run stands out where each
 * overlap that has it differs clearly more than any that hasn't.
 */
function suspectOf(seen: readonly Pick<SeenOverlap, 'layers' | 'deltaE'>[]): string | null {
  const runs = [...new Set(seen.flatMap((one) => one.layers))];
  const found = runs.filter((run) => {
    const [its, others] = [true, false].map((has) => seen.filter((one) => one.layers.includes(run) === has).map((one) => one.deltaE));
    return its.length >= 2 && others.length >= 2 && Math.min(...its) > Math.max(...others) + clearlyApart;
  });
  return found.length === 1 ? found[0] : null;
}

/** Millimetres from the image's top left corner → pixels of the photograph. */
type OnPhoto = (xMm: number, yMm: number) => Point;

/** Plane to plane, and from there as the lens shows it. */
function onPhotoOf(plan: PlanSeen, { of, paperId, place, lens }: PrintPhotoAsk, corners: readonly Point[]): OnPhoto {
  const printed = cornersOf(plan, of === 'sheet' ? marginsOf(plan, paperId) : [0, 0, 0, 0]);
  const through = lens && lensMap(lens);
  const straight = through ? corners.map((corner) => through.straighten(corner)) : corners;
  const map = corners.length === 4 && spansASheet(corners) ? homography(printed, straight) : null;
  if (!map) fail('corners-crossed', place, say('asks.printCornersCrossed'), say('asks.layPrintCorners'));
  return through ? (x, y) => through.bend(mapPoint(map, x, y)) : (x, y) => mapPoint(map, x, y);
}

type Margins = readonly [left: number, top: number, right: number, bottom: number];

/** mm from the image's top left corner, clockwise. */
function cornersOf({ job }: PlanSeen, [left, top, right, bottom]: Margins): Point[] {
  const { widthMm: w, heightMm: h } = job.image;
  return [
    [-left, -top],
    [w + right, -top],
    [w + right, h + bottom],
    [-left, h + bottom],
  ];
}

/** All four turn the same way round, clockwise on the screen. */
function spansASheet(corners: readonly Point[]): boolean {
  return corners.every(([x, y], i) => {
    const [u, v] = corners[(i + 1) % 4],
      [p, q] = corners[(i + 2) % 4];
    return (u - x) * (q - v) - (v - y) * (p - u) > 1;
  });
}

function marginsOf({ job }: PlanSeen, paperId: string): Margins {
  const paper = job.papers.find((p) => p.id === paperId)!;
  const { widthMm, heightMm } = job.image;
  const [x, y] = paper.imageAtMm ?? [(paper.widthMm - widthMm) / 2, (paper.heightMm - heightMm) / 2];
  return [x, y, paper.widthMm - widthMm - x, paper.heightMm - heightMm - y];
}

interface Colours extends Pick<PrintPhotoAnswer, 'seen' | 'narrow' | 'problems'> {
  readonly read: PhotoRead | null;
}

/** What can't be read is said, and the picture is shown all the same. */
function colours(plan: PlanSeen, paper: PlannedPaper, depths: Depths, ask: PrintPhotoAsk, onPhoto: OnPhoto): Colours {
  const none = (...problems: Problem[]): Colours => ({ read: null, seen: [], narrow: 0, problems });
  if (paper.grounds || paper.overPicture)
    return none(problem('warning', 'sheet-printed-already', ask.place, say('asks.printOnPrinted'), say('asks.lookOnly')));
  const quadOf = ({ xMm, yMm, sideMm }: Square): Quad =>
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([u, v]) => onPhoto(xMm + (u * sideMm) / 2, yMm + (v * sideMm) / 2)) as unknown as Quad;
  const { inside, around } = barePlaces(depths, plan.job.image, marginsOf(plan, paper.id));
  const bare = reallyBare(ask.photo, { inside: inside.map(quadOf), around: around.map(quadOf) });
  const { broad, narrow } = broadOverlaps(plan, paper, depths);
  try {
    const read = readPhoto({
      photo: ask.photo,
      place: ask.place,
      paper: bare,
      paperLab: paper.swatch.lab,
      patches: broad.map(({ overlap, at }) => ({ name: namesOf(plan, overlap.layers), quad: quadOf(at) })),
    });
    const seen = broad.map(({ overlap, at }, i): SeenOverlap => {
      const { reading } = read.patches[i];
      const deltaE = deltaE00(overlap.lab, reading.lab as Lab);
      const { lab, srgb, band, measured } = overlap;
      return {
        code: overlap.code,
        layers: overlap.layers,
        at,
        foreseen: { lab, srgb, band, measured },
        reading: reading as SeenOverlap['reading'],
        deltaE,
        beyond: deltaE > Math.hypot(band, nineInTen * (reading.sigma ?? 0)),
      };
    });
    return {
      read,
      seen: seen.toSorted((a, b) => b.deltaE - a.deltaE),
      narrow,
      problems: [...read.problems, ...read.patches.flatMap((p) => p.problems)],
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return none(...error.problems);
  }
}

/** Open runs leave nothing on the sheet. */
function printedDepths({ codes }: PlanSeen, paper: PlannedPaper): Depths {
  const printed = paper.overlaps.reduce((bits, o) => bits | o.code, 0);
  return depthsOf({ ...codes, data: codes.data.map((code) => code & printed) });
}

/** Solid overlaps with the place where each lies broadest; what lies in tone is no colour of its own. */
function broadOverlaps(
  plan: PlanSeen,
  paper: PlannedPaper,
  depths: Depths,
): { readonly broad: { readonly overlap: PlannedOverlap; readonly at: Square }[]; readonly narrow: number } {
  const deepest = deepestCells(depths);
  const tones = new Set(plan.layers.filter((l) => l.tone !== null).map((l) => l.id));
  const solid = paper.overlaps.filter((o) => o.layers.length > 0 && o.areaMm2 > 0 && !o.layers.some((id) => tones.has(id)));
  const broad = solid.flatMap((overlap) => {
    const cell = deepest.get(overlap.code);
    const at = cell === undefined ? null : squareAt(cellAt(depths, cell), depths.mm[cell]);
    return at ? [{ overlap, at }] : [];
  });
  return { broad, narrow: solid.length - broad.length };
}

function namesOf(plan: PlanSeen, layers: readonly string[]): Saying {
  return asWritten(layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + '));
}

/** The job with these among its readings, in place of what an earlier photograph showed of the same overlaps. */
export function withPrintPhoto(job: Job, paperId: string, seen: readonly Pick<SeenOverlap, 'layers' | 'reading'>[], date?: string): Job {
  const keyOf = (layers: readonly string[]): string => layers.toSorted().join(' ');
  const anew = new Set(seen.map((one) => keyOf(one.layers)));
  const earlier = (r: Job['proofReadings'][number]): boolean =>
    r.paper === paperId && r.reading.kind === 'photo' && r.coverages === undefined && anew.has(keyOf(r.layers));
  return {
    ...job,
    proofReadings: [
      ...job.proofReadings.filter((r) => !earlier(r)),
      ...seen.map(({ layers, reading }) => ({
        paper: paperId,
        layers: [...layers],
        reading: jobReading(reading),
        ...(date === undefined ? {} : { date }),
      })),
    ],
  };
}
