import type { Box } from '../../../core/form/index.ts';
import { shownBy } from '../../../core/plan/index.ts';
import { cornersOf, sharpDeg, type Corner } from '../../../core/stencil/index.ts';
import { area, deltaE, listed, say, type Saying } from '../../../words/index.ts';
import { drawnExtent, registerMarks } from '../../marks.ts';
import type { Page } from '../../pdf/page.ts';
import { textWidthMm } from '../../pdf/type.ts';
import type { ToTile } from '../../stock/tiles.ts';
import { widestPlace } from '../../widest-place.ts';
import type { PlannedLayer, Setting } from '../ink/setting.ts';
import { drawnInBox, registerMark, tilingOf } from './true-size.ts';

/** The image and its marks; where the image alone fits one page, as much around it as that page holds. */
export function toTile(setting: Setting, layer: PlannedLayer): ToTile {
  const { image } = setting.plan.job;
  const chains = layer.written.knife.outlines.map((outline) => outline.flatMap((segment) => [...segment.points]));
  const least: Record<keyof Box, number> = { minX: 0, minY: 0, maxX: image.widthMm, maxY: image.heightMm };
  for (const points of chains)
    for (let i = 0; i < points.length; i += 2) {
      least.minX = Math.min(least.minX, points[i]);
      least.maxX = Math.max(least.maxX, points[i]);
      least.minY = Math.min(least.minY, points[i + 1]);
      least.maxY = Math.max(least.maxY, points[i + 1]);
    }
  const extent = drawnExtent(image, layer.stencil.sheet);
  return {
    extent: {
      minX: Math.min(extent.minX, least.minX),
      minY: Math.min(extent.minY, least.minY),
      maxX: Math.max(extent.maxX, least.maxX),
      maxY: Math.max(extent.maxY, least.maxY),
    },
    least,
    drawnIn: drawnInBox(chains),
  };
}

/** Pages that the drawing of a stencil takes. */
export function pagesOfDrawing(setting: Setting, layer: PlannedLayer): number {
  return tilingOf(setting, toTile(setting, layer)).tiles.filter((one) => !one.empty).length;
}

/** Whether even the stencil's own edge is drawn. */
export function drawsWhole(setting: Setting, layer: PlannedLayer): boolean {
  const { extent } = toTile(setting, layer);
  const { sheet } = layer.stencil;
  return extent.minX <= sheet.minX && extent.maxX >= sheet.maxX && extent.minY <= sheet.minY && extent.maxY >= sheet.maxY;
}

/** A stencil at true size: what drops out, the knife's line, bridges, numbers of pieces, marks. */
export function drawTrueSize(
  setting: Setting,
  layer: PlannedLayer,
  page: Page,
  placing: { xMm: number; yMm: number; turned?: boolean },
  at: (x: number, y: number) => [number, number],
  box: Box,
): void {
  const { stencil } = layer;
  const { image } = setting.plan.job;
  page.region(stencil.prints, placing, { fill: '#e4e4e4' }, 0.01);
  page.outlines(layer.written.knife.outlines, placing, { stroke: '#000000', lineMm: 0.25 });
  for (const corner of sharpCorners(layer)) {
    const [x, y] = at(corner.atMm[0], corner.atMm[1]);
    page.circle(x, y, 1.1, { stroke: '#000000', lineMm: 0.12 });
  }
  for (const { atMm } of stencil.knife.punched)
    for (const one of atMm) {
      const [x, y] = at(one[0], one[1]);
      page.line(x - 1.2, y, x + 1.2, y, 0.2);
      page.line(x, y - 1.2, x, y + 1.2, 0.2);
    }
  for (const bridge of stencil.bridges) {
    page.region(bridge.region, placing, { stroke: '#000000', lineMm: 0.12, dashMm: [0.8, 0.8] });
    // Its name stands beside it, out of the knife's way.
    const dx = bridge.to[0] - bridge.from[0],
      dy = bridge.to[1] - bridge.from[1];
    const off = (bridge.widthMm / 2 + 2.6) / (Math.hypot(dx, dy) || 1);
    const [x, y] = at((bridge.from[0] + bridge.to[0]) / 2 - dy * off, (bridge.from[1] + bridge.to[1]) / 2 + dx * off);
    page.text(x, y + 1, bridge.id, { size: 8, weight: 'semibold', align: 'centre' });
  }
  stencil.islands.forEach((island) => {
    if (island.handled !== 'bridged') return;
    const inside = widestPlace(island.region);
    if (!inside || inside.widthMm < 11) return;
    const [x, y] = at(inside.x, inside.y);
    page.text(x, y + 1, setting.say('cutPages.island'), { size: 8, align: 'centre', turned: placing.turned });
  });
  for (const piece of stencil.loosePieces) {
    const [x, y] = at(piece.at[0], piece.at[1]);
    page.circle(x, y, 3.4, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
    page.text(x, y + 1.7, String(piece.number), { size: 10, weight: 'bold', align: 'centre' });
  }
  const [ax, ay] = at(0, 0),
    [bx, by] = at(image.widthMm, image.heightMm);
  page.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), {
    stroke: '#000000',
    lineMm: 0.15,
    dashMm: [1, 1.5],
  });
  for (const mark of registerMarks(image, stencil.sheet)) registerMark(page, ...at(mark.x, mark.y));
  const hinge = setting.plan.job.screen?.hinge;
  const top = setting.say(hinge === undefined ? 'cutPages.topToMesh' : topAndHinge[hinge]);
  // Above the image on every sheet that shows its upper edge, clear of the mark in the middle.
  if (box.minY > -4) return;
  const [lo, hi] = [Math.max(box.minX, 0), Math.min(box.maxX, image.widthMm)];
  const middle = image.widthMm / 2;
  for (const [from, to] of [
    [lo, Math.min(hi, middle - 7)],
    [Math.max(lo, middle + 7), hi],
  ]) {
    const wide = textWidthMm(page.faces, top, { size: 8, weight: 'semibold' });
    const size = Math.min(8, (8 * (to - from)) / wide);
    if (size < 5) continue;
    const [x, y] = at((from + to) / 2, -3);
    page.text(x, y, top, { size, weight: 'semibold', align: 'centre', turned: placing.turned });
  }
}

const topAndHinge = {
  top: 'cutPages.topHinge',
  bottom: 'cutPages.topHingeBottom',
  left: 'cutPages.topHingeLeft',
  right: 'cutPages.topHingeRight',
} as const;

/** Where the knife must stop just so: the paper would tear on. */
export const sharpCorners = (layer: PlannedLayer): Corner[] =>
  cornersOf(layer.stencil.cutLines).filter((c) => c.inner && c.turnDeg > sharpDeg);

/** How many, how large, and how much they show in the print where that is known. */
export function whatShows(places: readonly { readonly areaMm2: number; readonly costDeltaE?: number }[]): Saying {
  const { count, areaMm2, deltaE: shown } = shownBy(places);
  return count > 0 ? say('cutPages.shows', { n: count, area: area(areaMm2), deltaE: deltaE(shown) }) : listed([places.length]);
}

/** The whole stencil small: what prints other than drawn, pieces numbered, faults ringed, marks where they stand. */
export function placingMap(
  setting: Setting,
  layer: PlannedLayer,
  page: Page,
  x: number,
  y: number,
  widthMm: number,
  heightMm: number,
): number {
  const { stencil } = layer;
  const { sheet } = stencil;
  const scale = Math.min(widthMm / (sheet.maxX - sheet.minX), heightMm / (sheet.maxY - sheet.minY));
  const w = (sheet.maxX - sheet.minX) * scale,
    h = (sheet.maxY - sheet.minY) * scale;
  const at = { xMm: x - sheet.minX * scale, yMm: y - sheet.minY * scale, scale };
  const point = (px: number, py: number): [number, number] => [at.xMm + px * scale, at.yMm + py * scale];
  page.rect(x, y, w, h, { stroke: '#000000', lineMm: 0.3 });
  page.region(stencil.prints, at, { fill: '#dcdcdc', stroke: '#000000', lineMm: 0.2 }, 0.02);
  for (const mend of stencil.mends ?? [])
    page.region(
      mend.region,
      at,
      mend.kind === 'wider' ? { fill: '#6e6e6e' } : { fill: '#ffffff', stroke: '#000000', lineMm: 0.12, dashMm: [0.4, 0.4] },
      0.02,
    );
  for (const mark of registerMarks(setting.plan.job.image, sheet)) {
    const [mx, my] = point(mark.x, mark.y);
    page.line(mx - 2, my, mx + 2, my, 0.15);
    page.line(mx, my - 2, mx, my + 2, 0.15);
  }
  for (const piece of stencil.loosePieces) {
    const [px, py] = point(piece.at[0], piece.at[1]);
    page.circle(px, py, 2.6, { fill: '#ffffff', stroke: '#000000', lineMm: 0.2 });
    page.text(px, py + 1.25, String(piece.number), { size: 7.5, weight: 'bold', align: 'centre' });
  }
  for (const bridge of stencil.bridges) {
    const [bx, by] = point((bridge.from[0] + bridge.to[0]) / 2, (bridge.from[1] + bridge.to[1]) / 2);
    page.circle(bx, by, 1.9, { stroke: '#000000', lineMm: 0.35 });
  }
  for (const fault of stencil.certificate.faults) {
    const [fx, fy] = point(fault.atMm[0], fault.atMm[1]);
    page.circle(fx, fy, 3, { stroke: '#000000', lineMm: 0.6 });
  }
  return h;
}
