import { length as mm, say, type Saying } from '../../../words/say.ts';
import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { fileAt } from '../file-at.ts';
import { simplify, tidy } from '../polygons.ts';
import { mapRegion } from '../place.ts';
import { regionArea, regionBox, ringArea } from '../region.ts';
import type { Region } from '../region.ts';
import { contours } from './contours.ts';
import { edgeLevel } from './edge-level.ts';
import { findBoard, fitBoard } from './board.ts';
import { findSheet } from './corners.ts';
import type { Photo } from './corners.ts';
import { homography, mapPoint, pow, type Homography, type Point } from '../../numeric/index.ts';
import { keptApart } from './apart.ts';
import { bent, lensMap, straighten, type Lens } from './lens.ts';
import { objectField } from './object.ts';
import { fieldOnGround, groundAtRim, lighterLiesOn } from './rim.ts';
import { smoothRing } from './smooth.ts';

export interface TraceOptions {
  /** Darker than this share of the paper's own light is the thing, not its shadow; shadows are seldom darker. */
  readonly darkShare?: number;
  /** More colourful than this (0 grey … 1) is the thing; shadows have the paper's colour. */
  readonly colourShare?: number;
  /** Smoothing may move the outline by no more than this. */
  readonly smoothMm?: number;
  /** Specks and holes smaller than this are left out. */
  readonly leastMm2?: number;
  /** Things that touch by no more than this are kept apart. */
  readonly apartMm?: number;
}

export interface SheetPhotoOptions extends TraceOptions {
  /** A4 by ISO 216, Letter 8.5 × 11 in, or a sheet of another size. */
  readonly sheet: 'a4' | 'letter' | { readonly widthMm: number; readonly heightMm: number } | { readonly squareMm: number };
  /** Of the camera, from `readBoard`; left out: as the sheet's own sides show it. */
  readonly lens?: Lens;
  /** Moved by hand: top left, top right, bottom right, bottom left as the photo shows them, pixels from the top left. */
  readonly corners?: readonly Point[];
}

export interface Traced {
  /** mm, its box's top left corner at 0, 0. */
  readonly region: Region;
  readonly widthMm: number;
  readonly heightMm: number;
  /** As found or as given, pixels. */
  readonly corners: readonly Point[];
  /** How the lens was taken out of a photograph of a sheet. */
  readonly lens?: Lens;
  readonly problems: readonly Problem[];
}

const usualDarkShare = 0.5,
  usualColourShare = 0.3;
const mmPerPx = 0.18;
const edgeMm = 3;
const leastSide = 16;
const mostPixels = 120_000_000;

/**
 * The outline of a real thing photographed on a sheet of paper, at true size: corners of the sheet found (or given),
 * perspective and the bending of the lens (seen from the sheet's sides) taken out, shadows left out. A curled sheet stays curled.
 * `file`: the photograph's name, for messages.
 */
export function tracePhoto(photo: Photo, options: SheetPhotoOptions, file: string): Traced {
  const place = fileAt(file);
  checkPhoto(photo, place);
  const { sheet } = options;
  const board = typeof sheet === 'object' && 'squareMm' in sheet ? readBoard(photo, file, options.lens) : undefined;
  const found = board ?? findSheet(photo, options.corners, options.lens);
  if (!found || found.corners.length !== 4) {
    fail('photo-no-sheet', place, say('form.noSheet'), say('form.laySheet'));
  }
  const { corners, lens } = found;
  const [a, b, c, d] = corners.map((p) => straighten(lens, p));
  const length = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
  const wide = board ? board.columns > board.rows : length(a, b) + length(d, c) > length(b, c) + length(a, d);
  const [short, long] =
    sheet === 'a4'
      ? [210, 297]
      : sheet === 'letter'
        ? [215.9, 279.4]
        : [
            ...('squareMm' in sheet ? [board!.columns * sheet.squareMm, board!.rows * sheet.squareMm] : [sheet.widthMm, sheet.heightMm]),
          ].sort((p, q) => p - q);
  if (!(short > 0)) fail('photo-sheet-size', place, say('form.sheetWithoutSize'), say('form.whichPaper'));
  const widthMm = wide ? long : short,
    heightMm = wide ? short : long;
  const toPhoto =
    board && 'squareMm' in (sheet as object)
      ? scaledBy(board.toPhoto, (sheet as { squareMm: number }).squareMm)
      : homography(
          [
            [0, 0],
            [widthMm, 0],
            [widthMm, heightMm],
            [0, heightMm],
          ],
          [a, b, c, d],
        )!;
  const width = Math.round(widthMm / mmPerPx),
    height = Math.round(heightMm / mmPerPx);
  const { bend } = lensMap(lens);
  const flat = resample(photo, width, height, (x, y) => bend(mapPoint(toPhoto, (x + 0.5) * mmPerPx, (y + 0.5) * mmPerPx)));
  const problems: Problem[] = [];
  const pxPerMm = (length(a, b) + length(c, d)) / 2 / widthMm;
  if (pxPerMm < 3)
    problems.push(problem('warning', 'photo-coarse', place, say('form.photoCoarse', { pixel: mm(1 / pxPerMm, 2) }), say('form.goNearer')));
  const edge = board ? (field: Float32Array) => edgeLevel(field, width, height, board.columns, board.rows) : undefined;
  return { ...outlineOf(flat, width, height, mmPerPx, board ? 0 : edgeMm, options, place, problems, edge), corners, lens };
}

/** A homography of squares as one of millimetres. */
const scaledBy = (h: Homography, mm: number): Homography => h.map((v, i) => (i % 3 === 2 ? v : v / mm)) as unknown as Homography;

export interface BoardRead {
  readonly lens: Lens;
  /** Squares between its outermost corners. */
  readonly columns: number;
  readonly rows: number;
  /** Its four outermost corners as the photograph shows them, clockwise. */
  readonly corners: readonly Point[];
  /** From squares to the straightened photograph. */
  readonly toPhoto: Homography;
  readonly offPx: number;
}

/** A checked board in a photograph: the lens, unless it is known, and where the board lies. Throws where there is none. */
export function readBoard(photo: Photo, file: string, lens?: Lens): BoardRead {
  const found = findBoard(photo);
  const fit = fitBoard(photo, found, lens);
  if (!fit || fit.offPx > mostOffPx(photo)) return fail('photo-no-board', fileAt(file), say('form.noBoard'), say('form.showBoard'));
  let columns = Math.max(...fit.corners.map((c) => c.column)),
    rows = Math.max(...fit.corners.map((c) => c.row));
  // Seen from the front, columns run right and rows down; else the grid grew mirrored and is turned over.
  let toPhoto = fit.toPhoto;
  const at = (column: number, row: number): Point => mapPoint(toPhoto, column, row);
  const [p, q, r] = [at(0, 0), at(columns, 0), at(0, rows)];
  if ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) < 0) {
    const [a, b, c, d, e, f, g, h, i] = toPhoto;
    toPhoto = [b, a, c, e, d, f, h, g, i] as unknown as Homography;
    [columns, rows] = [rows, columns];
  }
  const corners = [at(0, 0), at(columns, 0), at(columns, rows), at(0, rows)].map((point) => bent(fit.lens, point));
  return { lens: fit.lens, columns, rows, corners, toPhoto, offPx: fit.offPx };
}

/** A board that lies flat is met to a fraction of a pixel, however large the photograph. */
const mostOffPx = ({ width, height }: Photo): number => Math.max(0.6, Math.hypot(width, height) / 2500);

/** The outline of a thing on a flat scan of known resolution. */
export function traceScan(photo: Photo, pixelsPerInch: number, options: TraceOptions, file: string): Traced {
  const place = fileAt(file);
  checkPhoto(photo, place);
  if (!(pixelsPerInch >= 20 && pixelsPerInch <= 10000))
    fail('scan-resolution', place, say('form.resolutionUnknown'), say('form.giveResolution'));
  const own = 25.4 / pixelsPerInch;
  const step = Math.max(own, Math.min(mmPerPx, 4 * own));
  const width = Math.floor((photo.width * own) / step),
    height = Math.floor((photo.height * own) / step);
  const flat = resample(photo, width, height, (x, y) => [((x + 0.5) * step) / own, ((y + 0.5) * step) / own]);
  const problems: Problem[] = [];
  const field = scannedField(flat, width, height, options, place, problems);
  return { ...finish(contours(field, width, height, 0.5), step, options, place, problems), corners: [] };
}

/** Things on white paper; where the rim shows another ground, such as a table, things darker and lighter than that. */
function scannedField(
  flat: Float32Array,
  width: number,
  height: number,
  { darkShare = usualDarkShare, colourShare = usualColourShare }: TraceOptions,
  place: Saying,
  problems: Problem[],
): Float32Array {
  const onPaper = objectField(flat, width, height, 0, darkShare, colourShare);
  const ground = groundAtRim(flat, width, height);
  if (!ground || !(isThingAtRim(onPaper, width, height) || lighterLiesOn(flat, width, height, ground))) return onPaper;
  const field = fieldOnGround(flat, width, height, ground, darkShare, colourShare);
  // A sheet that is the thing itself, to its edges, stays what it was.
  if (!field.some((v) => v > 0.5)) return onPaper;
  problems.push(problem('note', 'scan-ground', place, say('form.onGround'), say('form.groundIsThing')));
  return field;
}

/** Whether most of the rim would be taken for the thing. */
function isThingAtRim(field: Float32Array, width: number, height: number): boolean {
  const deep = Math.max(2, Math.round(Math.min(width, height) / 40));
  let seen = 0,
    thing = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (x >= deep && y >= deep && x < width - deep && y < height - deep) continue;
      seen++;
      if (field[y * width + x] > 0.5) thing++;
    }
  return thing > seen / 2;
}

/** The dark parts of a black-and-white picture, `widthMm` wide. */
export function traceMask(
  photo: Photo,
  widthMm: number,
  options: Pick<TraceOptions, 'smoothMm' | 'leastMm2' | 'apartMm'>,
  file: string,
): Traced {
  const place = fileAt(file);
  checkPhoto(photo, place);
  if (!(widthMm > 0)) fail('mask-size', place, say('form.maskWithoutSize'), say('form.giveTrueWidth'));
  const step = widthMm / photo.width;
  const field = new Float32Array(photo.width * photo.height);
  for (let p = 0; p < field.length; p++) {
    const i = p * photo.channels;
    const seen = photo.channels === 4 ? photo.data[i + 3] / 255 : 1;
    field[p] = seen * (1 - (0.2126 * photo.data[i] + 0.7152 * photo.data[i + 1] + 0.0722 * photo.data[i + 2]) / 255);
  }
  return { ...finish(contours(field, photo.width, photo.height, 0.5), step, options, place, []), corners: [] };
}

function checkPhoto(photo: Photo, place: Saying): void {
  const { width, height } = photo;
  if (!(Math.min(width, height) >= leastSide) || width * height > mostPixels || photo.data.length < width * height * photo.channels) {
    fail(
      'photo-size',
      place,
      say('form.photoSize', { width, height }),
      say('form.photoSizes', { least: leastSide, most: mostPixels / 1e6 }),
    );
  }
}

/** RGB in linear light on a new grid; the mean of four samples per pixel, each between its neighbours. */
function resample(photo: Photo, width: number, height: number, where: (x: number, y: number) => Point): Float32Array {
  // IEC 61966-2-1.
  const linear = Float32Array.from({ length: 256 }, (_, i) => (i / 255 <= 0.04045 ? i / 255 / 12.92 : pow((i / 255 + 0.055) / 1.055, 2.4)));
  const out = new Float32Array(width * height * 3);
  const { data, channels } = photo;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const o = (y * width + x) * 3;
      for (let sub = 0; sub < 4; sub++) {
        const [px, py] = where(x + (sub & 1 ? 0.25 : -0.25), y + (sub & 2 ? 0.25 : -0.25));
        const fx = Math.max(0, Math.min(photo.width - 1.001, px - 0.5)),
          fy = Math.max(0, Math.min(photo.height - 1.001, py - 0.5));
        const ix = Math.floor(fx),
          iy = Math.floor(fy),
          tx = fx - ix,
          ty = fy - iy;
        const i = (iy * photo.width + ix) * channels,
          right = i + channels,
          below = i + photo.width * channels;
        for (let c = 0; c < 3; c++) {
          out[o + c] +=
            0.25 *
            ((linear[data[i + c]] * (1 - tx) + linear[data[right + c]] * tx) * (1 - ty) +
              (linear[data[below + c]] * (1 - tx) + linear[data[below + channels + c]] * tx) * ty);
        }
      }
    }
  }
  return out;
}

function outlineOf(
  flat: Float32Array,
  width: number,
  height: number,
  step: number,
  borderMm: number,
  options: TraceOptions,
  place: Saying,
  problems: Problem[],
  levelOf: (field: Float32Array) => number = () => 0.5,
): Omit<Traced, 'corners'> {
  const field = objectField(
    flat,
    width,
    height,
    Math.round(borderMm / step),
    options.darkShare ?? usualDarkShare,
    options.colourShare ?? usualColourShare,
  );
  return finish(contours(field, width, height, levelOf(field)), step, options, place, problems);
}

function finish(
  rings: readonly Float64Array[],
  step: number,
  options: TraceOptions,
  place: Saying,
  problems: Problem[],
): Omit<Traced, 'corners'> {
  const least = options.leastMm2 ?? 4;
  const kept = rings.map((ring) => ring.map((v) => v * step)).filter((ring) => Math.abs(ringArea(ring)) >= least);
  const smoothMm = options.smoothMm ?? 0.03;
  const whole = simplify(
    tidy(
      kept.map((ring) => smoothRing(ring, step, smoothMm * 0.9)),
      'even-odd',
    ),
    Math.max(0.005, smoothMm * 0.1),
  );
  const region = options.apartMm ? keptApart(whole, options.apartMm, least) : whole;
  if (!(regionArea(region) > 0)) fail('photo-nothing-found', place, say('form.nothingFound'), say('form.evenLight'));
  const box = regionBox(region);
  return {
    region: mapRegion(region, (x, y) => [x - box.minX, y - box.minY]),
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    problems,
  };
}
