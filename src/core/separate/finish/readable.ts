import { blurPlane, gaussTaps } from '../kernels/blur.ts';
import type { Box } from '../../form/index.ts';
import type { Edges } from './structure.ts';

/** Something drawn in the picture that the print has not. */
export interface LostDetail {
  readonly atMm: readonly [number, number];
  /** Around it, mm on the print. */
  readonly box: Box;
  /** How wide the image would have to be for the knife to follow it. */
  readonly imageWidthMm: number;
}

/** Places are as large as a thumb is broad; so many are told, the worst first. */
const placeMm = 4,
  mostPlaces = 3;
/** A place is lost when more than this share of its lines is, and worth telling when its lines are stronger and matter more than in most of the picture. */
const lostShare = 0.5,
  strongerThan = 0.75;
/** Nothing is told of a picture that would have to become larger still. */
const mostEnlarged = 4;

/**
 * Places of the picture that matter and whose drawing is lost on the print.
 * @param lost crests of the picture that the print has not
 * @param leastMm the narrowest line that the knife can cut
 */
export function lostDetails(
  picture: Edges,
  lost: Uint8Array,
  weight: Float32Array | undefined,
  leastMm: number,
  widthMm: number,
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
    blurPlane(plane, across, down, gaussTaps(placeMm / (step * mmPerPx)), out, new Float32Array(plane.length));
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
    if (found.some(({ atMm }) => Math.hypot(atMm[0] - x, atMm[1] - y) < 4 * placeMm)) continue;
    const strokeMm = strokeWidth(picture, lost, x, y);
    const larger = Math.min(mostEnlarged, Math.max(1.25, leastMm / strokeMm));
    const reach = 2 * placeMm;
    found.push({
      atMm: [x, y],
      box: {
        minX: Math.max(0, x - reach),
        minY: Math.max(0, y - reach),
        maxX: Math.min(width * mmPerPx, x + reach),
        maxY: Math.min(height * mmPerPx, y + reach),
      },
      imageWidthMm: Math.ceil((widthMm * larger) / 10) * 10,
    });
  }
  return found;
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
