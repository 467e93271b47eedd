import { blurPlane, gaussTaps } from '../kernels/blur.ts';
import type { Box } from '../../form/index.ts';
import { outside, type PartOnPrint } from '../prepare/faces-matter.ts';
import type { Edges } from './structure.ts';

/** Something drawn in the picture that the print has not. */
export interface LostDetail {
  /** What of a face it is; nothing where no face is known. */
  readonly part?: LostPart;
  readonly atMm: readonly [number, number];
  /** Around it, mm on the print. */
  readonly box: Box;
  /** How wide the image would have to be for the knife to follow it. */
  readonly imageWidthMm: number;
}

export type LostPart = 'eye' | 'eyes' | 'mouth' | 'dot' | 'dots';

/** Places are as large as a thumb is broad; so many are told, the worst first. */
const placeMm = 4,
  mostPlaces = 3;
/** A place is lost when more than this share of its lines is, and worth telling when its lines are stronger and matter more than in most of the picture. */
const lostShare = 0.5,
  strongerThan = 0.75;
/** Nothing is told of a picture that would have to become larger still. */
const mostEnlarged = 4;

/**
 * Places of the picture that matter and whose drawing is lost on the print: eyes and mouths first.
 * @param lost crests of the picture that the print has not
 * @param leastMm the narrowest line that the knife can cut
 */
export function lostDetails(
  picture: Edges,
  lost: Uint8Array,
  weight: Float32Array | undefined,
  leastMm: number,
  widthMm: number,
  parts: readonly PartOnPrint[] = [],
): LostDetail[] {
  const inFaces = lostParts(picture, lost, parts).map(({ part, x, y }) => ({
    ...placeAt(picture, lost, x, y, leastMm, widthMm, leastForPart),
    part,
  }));
  return [...inFaces, ...lostPlaces(picture, lost, weight, leastMm, widthMm, inFaces)].slice(0, mostPlaces);
}

/** Lines reach beyond the points that were found by so much of a part's width. */
const partReach = 0.15;
/**
 * An eye or a mouth is lost sooner than a place: two corners are no mouth. Set on a portrait at four runs (mouth seen to be lost: 0.36 to 0.68; read: up
 * to 0.33) and held by one left out (all read: up to 0.31).
 */
const lostOfPart = 0.35;
/** Lips and teeth need room beside each other: a portrait whose mouth was lost at 140 and 180 mm had it at 220 mm. */
const leastForPart = 1.5;

/** Eyes and mouths too many of whose lines are lost, faint ones as well as strong ones; both eyes of a face as one. */
function lostParts(
  { width, height, mmPerPx, crest }: Edges,
  lost: Uint8Array,
  parts: readonly PartOnPrint[],
): { readonly part: LostPart; readonly x: number; readonly y: number }[] {
  const found: { face: number; part: LostPart; x: number; y: number }[] = [];
  for (const { face, part, outlineMm } of parts) {
    const [left, right, top, bottom] = spanOf(outlineMm),
      reach = partReach * (right - left),
      at = (mm: number, most: number): number => Math.max(0, Math.min(most, Math.floor(mm / mmPerPx)));
    if (right < 0 || bottom < 0 || left > width * mmPerPx || top > height * mmPerPx) continue;
    let all = 0,
      gone = 0;
    for (let v = at(top - reach, height - 1); v <= at(bottom + reach, height - 1); v++)
      for (let u = at(left - reach, width - 1); u <= at(right + reach, width - 1); u++) {
        const i = v * width + u;
        if (!crest[i] || outside(outlineMm, (u + 0.5) * mmPerPx, (v + 0.5) * mmPerPx) > reach) continue;
        all++;
        gone += lost[i];
      }
    if (all === 0 || gone <= lostOfPart * all) continue;
    const [x, y] = [(left + right) / 2, (top + bottom) / 2],
      other = part === 'eye' ? found.find((one) => one.face === face && one.part === 'eye') : undefined,
      dots = part === 'dot' ? found.find((one) => one.part === 'dot' || one.part === 'dots') : undefined;
    // Of many dots the largest is shown: with it there is room for more.
    if (dots) dots.part = 'dots';
    else if (other) Object.assign(other, { part: 'eyes', x: (other.x + x) / 2, y: (other.y + y) / 2 });
    else found.push({ face, part, x, y });
  }
  return found;
}

function spanOf(outline: readonly number[]): readonly [number, number, number, number] {
  const xs = outline.filter((_, i) => i % 2 === 0),
    ys = outline.filter((_, i) => i % 2 === 1);
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
}

function lostPlaces(
  picture: Edges,
  lost: Uint8Array,
  weight: Float32Array | undefined,
  leastMm: number,
  widthMm: number,
  known: readonly LostDetail[],
): LostDetail[] {
  const { width, height, mmPerPx, slope, crest } = picture;
  const step = Math.max(1, Math.round(1 / mmPerPx)),
    across = Math.ceil(width / step),
    down = Math.ceil(height / step);
  const all = new Float32Array(across * down),
    gone = new Float32Array(across * down);
  for (let i = 0; i < crest.length; i++) {
    if (crest[i] === 0) continue;
    const to = Math.floor(Math.floor(i / width) / step) * across + Math.floor((i % width) / step),
      counts = Math.min(30, slope[i]) * (weight?.[i] ?? 1);
    all[to] += counts;
    if (lost[i]) gone[to] += counts;
  }
  const soft = (plane: Float32Array): Float32Array => {
    const out = new Float32Array(plane.length);
    blurPlane(plane, across, down, gaussTaps(placeMm / (step * mmPerPx)), out);
    return out;
  };
  const allHere = soft(all),
    goneHere = soft(gone);
  const drawn = allHere.filter((v) => v > 0).sort();
  const strong = drawn.length > 0 ? drawn[Math.floor(drawn.length * strongerThan)] : 0;
  const places = Array.from({ length: all.length }, (_, i) => i)
    .filter((i) => allHere[i] >= strong && allHere[i] > 0 && goneHere[i] > lostShare * allHere[i])
    .sort((a, b) => goneHere[b] - goneHere[a] || a - b);
  const found: LostDetail[] = [];
  for (const place of places) {
    if (found.length === mostPlaces) break;
    const x = ((place % across) + 0.5) * step * mmPerPx,
      y = (Math.floor(place / across) + 0.5) * step * mmPerPx;
    if ([...known, ...found].some(({ atMm }) => Math.hypot(atMm[0] - x, atMm[1] - y) < 4 * placeMm)) continue;
    found.push(placeAt(picture, lost, x, y, leastMm, widthMm));
  }
  return found;
}

function placeAt(picture: Edges, lost: Uint8Array, x: number, y: number, leastMm: number, widthMm: number, leastLarger = 1.25): LostDetail {
  const larger = Math.min(mostEnlarged, Math.max(leastLarger, leastMm / strokeWidth(picture, lost, x, y))),
    reach = 2 * placeMm;
  return {
    atMm: [x, y],
    box: {
      minX: Math.max(0, x - reach),
      minY: Math.max(0, y - reach),
      maxX: Math.min(picture.width * picture.mmPerPx, x + reach),
      maxY: Math.min(picture.height * picture.mmPerPx, y + reach),
    },
    imageWidthMm: Math.ceil((widthMm * larger) / 10) * 10,
  };
}

/** How wide the lines of a place are: from an edge to the next that goes the other way, half of them nearer, half farther. */
function strokeWidth({ width, height, mmPerPx, dx, dy, slope, crest }: Edges, lost: Uint8Array, x: number, y: number): number {
  const reach = Math.round((2 * placeMm) / mmPerPx),
    cx = Math.floor(x / mmPerPx),
    cy = Math.floor(y / mmPerPx),
    far = Math.round(3 / mmPerPx);
  const widths: number[] = [];
  for (let v = Math.max(0, cy - reach); v <= Math.min(height - 1, cy + reach); v++)
    for (let u = Math.max(0, cx - reach); u <= Math.min(width - 1, cx + reach); u++) {
      const i = v * width + u;
      if (!crest[i] || !lost[i]) continue;
      const [ax, ay] = [dx[i] / slope[i], dy[i] / slope[i]];
      for (let k = 2; k <= far; k++) {
        const a = Math.round(u + ax * k),
          b = Math.round(v + ay * k),
          j = b * width + a;
        if (a < 0 || b < 0 || a >= width || b >= height) break;
        if (dx[i] * dx[j] + dy[i] * dy[j] < -0.5 * slope[i] * slope[j] && slope[j] > 0.3 * slope[i]) {
          widths.push(k * mmPerPx);
          break;
        }
      }
    }
  return widths.length > 0 ? widths.sort((a, b) => a - b)[widths.length >> 1] : Infinity;
}
