import { regionBox, regionPerimeter, ringArea, simplify } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { ringsAround } from './cut-order.ts';
import { defaultRates, knifeMinutes } from './rates.ts';
import type { KnifeRates, KnifeWork, PointMm, Punched } from './types.ts';

const cornerDeg = 40;

export interface Corner {
  readonly atMm: PointMm;
  /** Turn of the knife in degrees; 180 would be straight back. */
  readonly turnDeg: number;
  /** Points into the paper, which tears on from there if the knife goes too far. */
  readonly inner: boolean;
}

/** Corners into the paper that turn by more than this are marked on the cut sheet. */
export const sharpDeg = 90;

/** Places where the knife must be lifted and set anew: the outline turns by more than 40°. `lines`: knife paths of a stencil, without the sheet's own edge. */
export function cornersOf(lines: Region): Corner[] {
  const corners: Corner[] = [];
  const plain = simplify(lines, 0.05);
  const around = ringsAround(plain);
  for (const [index, ring] of plain.rings.entries()) {
    const n = ring.length / 2;
    // Outermost paths bound what drops out, those inside them paper, and so on.
    const paperWithin = around[index].length % 2 === 1,
      winds = Math.sign(ringArea(ring));
    const along = (i: number): [number, number] => {
      const j = (i + 1) % n;
      return [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
    };
    for (let i = 0; i < n; i++) {
      const [ax, ay] = along((i + n - 1) % n),
        [bx, by] = along(i);
      const signed = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * (180 / Math.PI),
        turn = Math.abs(signed);
      if (turn > cornerDeg)
        corners.push({ atMm: [ring[2 * i], ring[2 * i + 1]], turnDeg: turn, inner: signed * winds > 0 !== paperWithin });
    }
  }
  return corners;
}

/** A hole this much off a punch's diameter is as good as the punch: less than sheets are placed by hand. common practice */
const punchOffMm = 0.15;

/** The circle that a ring is, or null: every point as far from the middle as the others, to the width of a knife cut. */
function circleOf(ring: Float64Array): { readonly atMm: PointMm; readonly acrossMm: number } | null {
  const n = ring.length / 2;
  if (n < 8) return null;
  const { minX, minY, maxX, maxY } = regionBox({ rings: [ring] });
  const acrossMm = (maxX - minX + maxY - minY) / 2;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  for (let i = 0; i < n; i++) if (Math.abs(2 * Math.hypot(ring[2 * i] - x, ring[2 * i + 1] - y) - acrossMm) > punchOffMm) return null;
  return { atMm: [x, y], acrossMm };
}

/** Which rings a punch at hand takes out, punch by punch. */
function punchedRings(lines: Region, punchesMm: readonly number[]): { readonly punched: Punched[]; readonly left: Region } {
  const of = new Map<number, PointMm[]>();
  const left = lines.rings.filter((ring) => {
    const circle = circleOf(ring);
    const punch = circle && punchesMm.find((p) => Math.abs(p - circle.acrossMm) <= punchOffMm);
    if (!circle || punch === null || punch === undefined) return true;
    of.set(punch, [...(of.get(punch) ?? []), circle.atMm]);
    return false;
  });
  const punched = [...of].map(([acrossMm, atMm]): Punched => ({ acrossMm, atMm })).sort((one, other) => one.acrossMm - other.acrossMm);
  return { punched, left: { rings: left } };
}

/** What cutting costs. `pieces`: cut-outs to lift and loose pieces to keep; a punch takes as long for each of its circles. */
export function knifeWork(cutLines: Region, pieces: number, rates: KnifeRates = defaultRates): KnifeWork {
  const { punched, left } =
    rates.punchesMm && rates.punchesMm.length > 0 ? punchedRings(cutLines, rates.punchesMm) : { punched: [], left: cutLines };
  const metres = regionPerimeter(left) / 1000;
  const corners = cornersOf(left).length;
  const parts = knifeMinutes({ metres, corners, pieces }, rates);
  const minutes = parts.lines + parts.corners + parts.pieces;
  // Common practice: how long a hand stays sure.
  const difficulty = minutes < 10 ? 'easy' : minutes < 25 ? 'steady' : minutes < 60 ? 'fine' : minutes < 180 ? 'trying' : 'hopeless';
  return { metres, corners, pieces, punched, minutes, difficulty };
}
