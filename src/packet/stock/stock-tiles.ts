import type { Box } from '../../core/form/index.ts';
import type { Plan, PlannedStock } from '../../core/plan/index.ts';
import { quietTask, type Task } from '../../core/task.ts';
import { say, sentences, type Reader } from '../../words/index.ts';
import type { FlatSheet, OpenLine } from '../files/flat-sheet.ts';
import { type, writeMarks, type TrueSizeSetting } from '../pages/ink/setting.ts';
import { drawnInBox, tileMap, tilingOf, trueSizePages } from '../pages/cut/true-size.ts';
import { openBook, type FontFiles } from '../pdf/book.ts';
import type { Page, Placing } from '../pdf/page.ts';
import { pageSize, type Printer } from '../printer.ts';
import { sheetOfStock } from './stock-lines.ts';
import { voiceOf } from '../voice.ts';

export interface TileWishes {
  readonly fonts: FontFiles;
  readonly printer: Printer;
  /** Whose language and units it speaks. */
  readonly reader: Reader;
  /** What the job was: stands at the foot of every page. */
  readonly mark: string;
  readonly black?: boolean;
  readonly task?: Task;
}

/** What is left free around what is drawn, so that its outermost lines are whole. */
const aroundMm = 2;

/**
 * A laid-out sheet of stock at true size in parts, one a page of the printer's paper, with joining marks: for a studio that has
 * no plotter. The first page says how the parts lie. What of the stock stays bare is not printed.
 */
export async function stockTiles(
  plan: Plan,
  stock: PlannedStock,
  sheet: FlatSheet,
  { fonts, printer, reader, mark, black, task = quietTask }: TileWishes,
): Promise<Uint8Array> {
  const size = pageSize(printer.page);
  const book = await openBook(fonts, size.widthMm, size.heightMm, reader.language, { black });
  const setting: TrueSizeSetting = {
    book,
    plan,
    units: reader.units,
    ...voiceOf(reader),
    marginMm: printer.marginMm,
    bare: new Set(),
    mark,
  };
  const extent = usedPart(stock);
  overview(setting, stock, sheet, extent);
  const pages = trueSizePages(setting, {
    name: sheetOfStock(stock),
    says: say('packet.printedSideToMesh'),
    extent,
    drawnIn: drawnOn(sheet),
    draw: (page, placing, at) => drawSheet(page, sheet, placing, at),
  });
  while (pages.next().done !== true) await task.pause();
  writeMarks(setting);
  return book.finish(setting.tell(sheet.title), '');
}

/** Whether a line of the sheet runs through a box: an empty part needs no page. */
function drawnOn(sheet: FlatSheet): (box: Box) => boolean {
  const drawn = drawnInBox([
    ...sheet.shapes.flatMap((shape) => shape.outlines.map((outline) => outline.flatMap((segment) => [...segment.points]))),
    ...sheet.marks,
    ...sheet.edges,
  ]);
  return (box) => drawn(box);
}

/** From the corner of the stock to where the last stencil ends. */
function usedPart({ placed, widthMm, heightMm }: PlannedStock): Box {
  const end = (ends: readonly number[], whole: number): number => Math.min(whole, Math.max(...ends, 0)) + aroundMm;
  return {
    minX: -aroundMm,
    minY: -aroundMm,
    maxX: end(
      placed.map((p) => p.xMm + p.widthMm),
      widthMm,
    ),
    maxY: end(
      placed.map((p) => p.yMm + p.heightMm),
      heightMm,
    ),
  };
}

function drawSheet(page: Page, sheet: FlatSheet, placing: Placing, at: (x: number, y: number) => [number, number]): void {
  const lines = (all: readonly OpenLine[], wideMm: number): void => {
    for (const line of all)
      for (let i = 0; i + 3 < line.length; i += 2) page.line(...at(line[i], line[i + 1]), ...at(line[i + 2], line[i + 3]), wideMm);
  };
  lines(sheet.marks, 0.12);
  for (const shape of sheet.shapes) page.outlines(shape.outlines, placing, { stroke: '#000000', lineMm: 0.25 });
  lines(sheet.edges, 0.25);
  // The stock's own edge is there already: it is only where the drawing lies.
  const [[ax, ay], [bx, by]] = [at(0, 0), at(sheet.widthMm, sheet.heightMm)];
  page.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), {
    stroke: '#000000',
    lineMm: 0.15,
    dashMm: [1, 1.5],
  });
}

/** The parts on the sheet, small, with the names they have at their feet. */
function overview(setting: TrueSizeSetting, stock: PlannedStock, sheet: FlatSheet, extent: Box): void {
  const { book, marginMm } = setting;
  const page = book.addPage();
  const left = marginMm + 4,
    width = page.widthMm - 2 * left;
  page.floorMm = page.heightMm - marginMm;
  page.fit(left, marginMm + 11, width, setting.tell(sheet.title), type.large, 12);
  const tiling = tilingOf(setting, { extent, drawnIn: drawnOn(sheet) });
  let y = page.para(
    left,
    marginMm + 19,
    width,
    setting.tell(
      tiling.tiles.length > 1
        ? sentences(
            say('cutPages.pagesToJoin', { n: tiling.tiles.filter((one) => !one.empty).length }),
            tiling.rows > 1 && tiling.columns > 1 && say('cutPages.rowsFirst'),
          )
        : say('cutPages.oneHoldsAll'),
    ),
    type.body,
  );
  y = page.para(left, y + 1, width, setting.say('cutPages.stockEdge'), type.body);
  if (stock.times > 1)
    y = page.para(left, y + 1, width, setting.say('packet.cutMoreLikeIt', { n: stock.times }), { ...type.body, weight: 'semibold' });
  y += 4;
  const room = page.heightMm - marginMm - 2 - y;
  const scale = Math.min(width / (extent.maxX - extent.minX), room / (extent.maxY - extent.minY));
  const placing = { xMm: left - extent.minX * scale, yMm: y - extent.minY * scale, scale };
  page.within(left, y, width, room, () => {
    for (const shape of sheet.shapes) page.outlines(shape.outlines, placing, { fill: '#e4e4e4', stroke: '#000000', lineMm: 0.1 });
  });
  tileMap(page, tiling, extent, left, y, width, room);
}
