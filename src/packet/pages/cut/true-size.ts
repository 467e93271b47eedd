import type { Box } from '../../../core/form/index.ts';
import type { Page, Placing } from '../../pdf/page.ts';
import { seams, tile, type Tile, type Tiling, type ToTile } from '../../stock/tiles.ts';
import { figure, length, name as asName, type Saying } from '../../../words/index.ts';
import { type, type Pages, type TrueSizeSetting } from '../ink/setting.ts';

/** Height kept free at the foot of a true-size sheet for its name and the check line. */
const footMm = 14;
export const checkLineMm = 100;

/** A drawing in mm that is printed at true size, over as many sheets as it takes. */
export interface TrueSize {
  /** Drawn for every sheet and clipped to it. `at` turns the drawing's mm into the page's. */
  draw(page: Page, placing: Placing, at: (x: number, y: number) => [number, number], box: Box): void;
  readonly extent: Box;
  /** What must be there if the rest around it would take more sheets. */
  readonly least?: Box;
  /** Whether anything is drawn in a box: sheets with nothing are left out. */
  readonly drawnIn?: (box: Box) => boolean;
  /** `Urchin: run 5, window`. */
  readonly name: Saying;
  /** One short sentence for each sheet. */
  readonly says: Saying;
}

export function tilingOf(setting: TrueSizeSetting, what: ToTile): Tiling {
  const { book, marginMm } = setting;
  return tile(what, [book.widthMm - 2 * marginMm, book.heightMm - 2 * marginMm - footMm]);
}

/** The sheets themselves: nothing on them but the drawing, joining marks, a name and the check line. */
export function* trueSizePages(setting: TrueSizeSetting, drawing: TrueSize): Pages {
  const tiling = tilingOf(setting, drawing);
  const joins = seams(tiling);
  for (const sheet of tiling.tiles) {
    if (sheet.empty) continue;
    const page = setting.book.addPage(1);
    setting.bare.add(page);
    const { placing, at, area } = placeTile(setting, tiling, sheet);
    page.within(area.minX, area.minY, area.maxX - area.minX, area.maxY - area.minY, () => {
      drawing.draw(page, placing, at, sheet.box);
      joiningMarks(page, sheet, joins, at);
    });
    foot(setting, page, drawing, tiling, sheet);
    yield;
  }
}

function placeTile(
  setting: TrueSizeSetting,
  tiling: Tiling,
  sheet: Tile,
): { placing: Placing; at: (x: number, y: number) => [number, number]; area: Box } {
  const { marginMm } = setting;
  const { box } = sheet;
  const w = box.maxX - box.minX,
    h = box.maxY - box.minY;
  if (!tiling.turned) {
    const xMm = marginMm - box.minX,
      yMm = marginMm - box.minY;
    return {
      placing: { xMm, yMm },
      at: (x, y) => [x + xMm, y + yMm],
      area: { minX: marginMm, minY: marginMm, maxX: marginMm + w, maxY: marginMm + h },
    };
  }
  // A quarter turn clockwise: the drawing's top is on the right of the page.
  const xMm = marginMm + h + box.minY,
    yMm = marginMm - box.minX;
  return {
    placing: { xMm, yMm, turned: true },
    at: (x, y) => [xMm - y, yMm + x],
    area: { minX: marginMm, minY: marginMm, maxX: marginMm + h, maxY: marginMm + w },
  };
}

/** Along each seam: a dashed line to cut or fold at, and crossed circles that must lie on one another. */
function joiningMarks(page: Page, sheet: Tile, joins: ReturnType<typeof seams>, at: (x: number, y: number) => [number, number]): void {
  const { box } = sheet;
  const along = (from: number, to: number): number[] => {
    const n = Math.max(2, Math.round((to - from) / 70));
    return Array.from({ length: n }, (_, i) => from + ((i + 0.5) * (to - from)) / n);
  };
  const seam = (x0: number, y0: number, x1: number, y1: number): void => {
    const [a, b] = at(x0, y0),
      [c, d] = at(x1, y1);
    page.line(a, b, c, d, 0.15, [3, 2]);
  };
  const cross = (x: number, y: number): void => {
    const [cx, cy] = at(x, y);
    page.circle(cx, cy, 2, { fill: '#ffffff', stroke: '#000000', lineMm: 0.2 });
    page.line(cx - 3.2, cy, cx + 3.2, cy, 0.15);
    page.line(cx, cy - 3.2, cx, cy + 3.2, 0.15);
  };
  // Marks lie at the same places of the drawing on both sheets: spaced over the row or column that both share.
  joins.x.forEach((x, i) => {
    if (i !== sheet.column && i !== sheet.column - 1) return;
    seam(x, box.minY, x, box.maxY);
    for (const y of along(box.minY, box.maxY)) cross(x, y);
  });
  joins.y.forEach((y, i) => {
    if (i !== sheet.row && i !== sheet.row - 1) return;
    seam(box.minX, y, box.maxX, y);
    for (const x of along(box.minX, box.maxX)) cross(x, y);
  });
}

function foot(setting: TrueSizeSetting, page: Page, drawing: TrueSize, tiling: Tiling, sheet: Tile): void {
  const { marginMm, units } = setting;
  const y = page.heightMm - marginMm - 9.8;
  const right = page.widthMm - marginMm;
  const many = tiling.tiles.length > 1;
  if (many) page.text(marginMm, y + 2.2, sheet.name, { size: 22, weight: 'bold' });
  const words = marginMm + (many ? 15 : 0);
  const line = right - checkLineMm - 1;
  page.fit(
    words,
    y - 0.6,
    line - words - 4,
    setting.say('packet.titled', { title: asName(setting.plan.job.title), drawing: drawing.name }),
    type.strong,
    7.5,
  );
  page.fit(words, y + 3.4, line - words - 4, setting.tell(drawing.says), { size: 8.5 }, 6.5);
  checkLine(
    page,
    line,
    y,
    units === 'in'
      ? setting.say('packet.onRulerInches', { millimetres: figure(checkLineMm), line: length(checkLineMm) })
      : setting.say('packet.onRuler', { line: length(checkLineMm) }),
  );
}

/** Exactly 100 mm between the inner edges of nothing: from the middle of one tick to the middle of the other. */
export function checkLine(page: Page, x: number, y: number, label: string): void {
  page.line(x, y, x + checkLineMm, y, 0.3);
  for (let i = 0; i <= 10; i++) page.line(x + i * 10, y - (i % 5 === 0 ? 3 : 1.6), x + i * 10, y, 0.25);
  page.text(x + checkLineMm / 2, y + 3.6, label, { size: 8, align: 'centre' });
}

/** A cross in a circle, at the same place on every stencil of a job. */
export function registerMark(page: Page, x: number, y: number): void {
  page.circle(x, y, 2.4, { stroke: '#000000', lineMm: 0.2 });
  page.line(x - 5, y, x + 5, y, 0.2);
  page.line(x, y - 5, x, y + 5, 0.2);
}

/** Small picture of how the sheets lie. */
export function tileMap(page: Page, tiling: Tiling, extent: Box, x: number, y: number, widthMm: number, heightMm: number): number {
  const w = extent.maxX - extent.minX,
    h = extent.maxY - extent.minY;
  const scale = Math.min(widthMm / w, heightMm / h);
  for (const sheet of tiling.tiles) {
    const left = x + (sheet.box.minX - extent.minX) * scale,
      top = y + (sheet.box.minY - extent.minY) * scale;
    const bw = (sheet.box.maxX - sheet.box.minX) * scale,
      bh = (sheet.box.maxY - sheet.box.minY) * scale;
    page.rect(left, top, bw, bh, { stroke: '#000000', lineMm: 0.25, ...(sheet.empty ? { dashMm: [1, 1] } : {}) });
    if (sheet.empty) continue;
    page.text(left + bw / 2, top + bh / 2 + 1.8, sheet.name, { size: 13, weight: 'bold', align: 'centre' });
  }
  return h * scale;
}

/** Whether one of these chains of points (x, y, x, y, …) runs through a box; by the boxes of their steps, so never a line too few. */
export function drawnInBox(chains: readonly (readonly number[])[]): (box: Box) => boolean {
  return (box) =>
    chains.some((points) => {
      for (let i = 0; i + 1 < points.length; i += 2) {
        const k = i + 3 < points.length ? i + 2 : i;
        if (
          Math.max(points[i], points[k]) >= box.minX &&
          Math.min(points[i], points[k]) <= box.maxX &&
          Math.max(points[i + 1], points[k + 1]) >= box.minY &&
          Math.min(points[i + 1], points[k + 1]) <= box.maxY
        )
          return true;
      }
      return false;
    });
}
