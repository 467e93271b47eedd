import type { JobPart } from '../../../../core/job/index.ts';
import type { PlannedForm } from '../../../../core/plan/index.ts';
import type { Box } from '../../../../core/form/index.ts';

/** A form, or an end of the measure, is caught by a line this near to it on the screen. */
export const reachPx = 7;

/** Lines a form is drawn to: upright ones by x, level ones by y; mm on the image. */
export interface SnapLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Box of one copy of a form where its part puts it. */
export function partBox(form: PlannedForm, part: Pick<JobPart, 'xMm' | 'yMm' | 'angleDeg' | 'scale' | 'mirror'>): Box {
  const turn = (part.angleDeg * Math.PI) / 180;
  const cos = Math.cos(turn) * part.scale,
    sin = Math.sin(turn) * part.scale;
  const flip = part.mirror ? -1 : 1;
  const cx = form.widthMm / 2,
    cy = form.heightMm / 2;
  let minX = Infinity,
    minY = Infinity,
    maxX = -Infinity,
    maxY = -Infinity;
  for (const ring of form.region.rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const u = (ring[i] - cx) * flip,
        v = ring[i + 1] - cy;
      const x = u * cos - v * sin,
        y = u * sin + v * cos;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return { minX: minX + part.xMm, minY: minY + part.yMm, maxX: maxX + part.xMm, maxY: maxY + part.yMm };
}

export function linesOf(boxes: readonly Box[]): SnapLines {
  const lines = (low: (b: Box) => number, high: (b: Box) => number): number[] => [
    ...new Set(boxes.flatMap((b) => [low(b), (low(b) + high(b)) / 2, high(b)]).map((v) => Math.round(v * 100) / 100)),
  ];
  return {
    x: lines(
      (b) => b.minX,
      (b) => b.maxX,
    ),
    y: lines(
      (b) => b.minY,
      (b) => b.maxY,
    ),
  };
}

export interface Snapped {
  readonly dxMm: number;
  readonly dyMm: number;
  /** Lines met, to be shown. */
  readonly x: number | null;
  readonly y: number | null;
}

/** The smallest push that brings an edge or the middle of the box onto a line, if one lies within reach. */
export function snapBox(box: Box, lines: SnapLines, reachMm: number): Snapped {
  const [dxMm, x] = nearest([box.minX, (box.minX + box.maxX) / 2, box.maxX], lines.x, reachMm);
  const [dyMm, y] = nearest([box.minY, (box.minY + box.maxY) / 2, box.maxY], lines.y, reachMm);
  return { dxMm, dyMm, x, y };
}

function nearest(places: readonly number[], lines: readonly number[], reachMm: number): readonly [number, number | null] {
  let push = 0,
    met: number | null = null,
    least = reachMm;
  for (const line of lines) {
    for (const place of places) {
      const by = line - place;
      if (Math.abs(by) < least) {
        least = Math.abs(by);
        push = by;
        met = line;
      }
    }
  }
  return [push, met];
}
