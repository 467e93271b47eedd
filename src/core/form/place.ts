import { length, say } from '../../words/say.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { seeded } from '../random.ts';
import { unite } from './polygons.ts';
import { emptyRegion, regionBox } from './region.ts';
import type { Box, Region } from './region.ts';

/** Where one copy of a form lies: the middle of its box, then its turn (clockwise), size and mirroring (left to right, before the turn). */
export interface Placement {
  readonly xMm: number;
  readonly yMm: number;
  readonly angleDeg: number;
  readonly scale: number;
  readonly mirror: boolean;
}

/** How copies follow from one placement. */
export type Repeat =
  | { readonly kind: 'rows'; readonly columns: number; readonly rows: number; readonly stepXMm: number; readonly stepYMm: number }
  | { readonly kind: 'around'; readonly count: number; readonly centreMm: readonly [number, number]; readonly turnForms: boolean }
  | { readonly kind: 'scatter'; readonly count: number; readonly seed: number; readonly leastMm: number; readonly turn: boolean };

/** Copies of the region, united. */
export function place(region: Region, placements: readonly Placement[]): Region {
  if (!region.rings.length || !placements.length) return emptyRegion;
  const box = regionBox(region);
  const cx = (box.minX + box.maxX) / 2,
    cy = (box.minY + box.maxY) / 2;
  return unite(
    placements.map((p) => {
      const turn = (p.angleDeg * Math.PI) / 180;
      const cos = Math.cos(turn) * p.scale,
        sin = Math.sin(turn) * p.scale;
      const flip = p.mirror ? -1 : 1;
      return mapRegion(region, (x, y) => {
        const u = (x - cx) * flip,
          v = y - cy;
        return [p.xMm + u * cos - v * sin, p.yMm + u * sin + v * cos];
      });
    }),
  );
}

/** Every point moved by `map`. For moves, turns, mirrorings and sizes; rings stay proper under these. */
export function mapRegion(region: Region, map: (x: number, y: number) => readonly [number, number]): Region {
  return {
    rings: region.rings.map((ring) => {
      const out = new Float64Array(ring.length);
      for (let i = 0; i < ring.length; i += 2) {
        const [x, y] = map(ring[i], ring[i + 1]);
        out[i] = x;
        out[i + 1] = y;
      }
      return out;
    }),
  };
}

/** To a wished size (one side given, the other follows; both: the smaller scale), its box's top left corner at 0, 0. */
export function toTrueSize(region: Region, size: { readonly widthMm?: number; readonly heightMm?: number }): Region {
  const box = regionBox(region);
  const width = box.maxX - box.minX,
    height = box.maxY - box.minY;
  if (!(width > 0) || !(height > 0)) return emptyRegion;
  const byWidth = size.widthMm === undefined ? Infinity : size.widthMm / width;
  const byHeight = size.heightMm === undefined ? Infinity : size.heightMm / height;
  const scale = Math.min(byWidth, byHeight);
  const k = Number.isFinite(scale) ? scale : 1;
  return mapRegion(region, (x, y) => [(x - box.minX) * k, (y - box.minY) * k]);
}

/**
 * All copies that a repeat asks for. Rows: the placement is the first, at the top left, others step right and down.
 * Around: it is turned about the centre. Scatter: middles fall at random inside `area`, no two nearer than `leastMm`;
 * when no more fit, fewer come back and a warning says so. `path`: of the repeat, in the Job.
 */
export function repeatPlacements(
  first: Placement,
  repeat: Repeat | undefined,
  area: Box,
  path = '',
): { placements: Placement[]; problems: Problem[] } {
  if (!repeat) return { placements: [first], problems: [] };
  if (repeat.kind === 'rows') {
    const placements: Placement[] = [];
    for (let row = 0; row < repeat.rows; row++) {
      for (let column = 0; column < repeat.columns; column++) {
        placements.push({ ...first, xMm: first.xMm + column * repeat.stepXMm, yMm: first.yMm + row * repeat.stepYMm });
      }
    }
    return { placements, problems: [] };
  }
  if (repeat.kind === 'around') {
    const [cx, cy] = repeat.centreMm;
    const dx = first.xMm - cx,
      dy = first.yMm - cy;
    const placements = Array.from({ length: repeat.count }, (_, i) => {
      const turn = (2 * Math.PI * i) / repeat.count;
      const cos = Math.cos(turn),
        sin = Math.sin(turn);
      return {
        ...first,
        xMm: cx + dx * cos - dy * sin,
        yMm: cy + dx * sin + dy * cos,
        angleDeg: first.angleDeg + (repeat.turnForms ? (360 * i) / repeat.count : 0),
      };
    });
    return { placements, problems: [] };
  }
  const random = seeded(repeat.seed);
  const placements: Placement[] = [];
  let misses = 0;
  while (placements.length < repeat.count && misses < 2000) {
    const xMm = area.minX + random.next() * (area.maxX - area.minX);
    const yMm = area.minY + random.next() * (area.maxY - area.minY);
    const turn = random.next() * 360;
    if (placements.some((p) => Math.hypot(p.xMm - xMm, p.yMm - yMm) < repeat.leastMm)) {
      misses++;
      continue;
    }
    misses = 0;
    placements.push({ ...first, xMm, yMm, angleDeg: first.angleDeg + (repeat.turn ? turn : 0) });
  }
  const problems =
    placements.length === repeat.count
      ? []
      : [
          problem(
            'warning',
            'scatter-full',
            path,
            say('form.copiesLeftOut', { n: placements.length, asked: repeat.count, least: length(repeat.leastMm) }),
            say('form.fewerCopies'),
          ),
        ];
  return { placements, problems };
}
