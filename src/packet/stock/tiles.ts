import type { Box } from '../../core/form/index.ts';

/** How a drawing at true size is spread over the printer's sheets. */
export interface Tiling {
  /** The drawing lies a quarter turn clockwise on the page: fewer sheets that way. */
  readonly turned: boolean;
  readonly columns: number;
  readonly rows: number;
  readonly overlapMm: number;
  readonly tiles: readonly Tile[];
}

export interface Tile {
  /** A1 is top left as one reads the drawing; letters go down, numbers go across. */
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** The part of the drawing on this sheet, overlaps included, in the drawing's mm. */
  readonly box: Box;
  /** Nothing of the drawing lies here: this sheet is not printed. */
  readonly empty: boolean;
}

/** What must be on the sheets, and where something is drawn. */
export interface ToTile {
  readonly extent: Box;
  /** What must not be left out where all fits one sheet without the rest of `extent`: marks and edges around the image. */
  readonly least?: Box;
  /** Whether anything is drawn in a box. Left out: everywhere. */
  readonly drawnIn?: (box: Box) => boolean;
}

/** Kept free around what must be there, so that its outermost lines are whole. */
const aroundMm = 0.6;

/**
 * Fewest sheets of the printer's paper that hold the drawing, upright or turned; neighbours overlap by at least `overlapMm`
 * and share the drawing evenly.
 * What fits one sheet without its margins is not split for them; sheets with nothing on them are marked as empty.
 * @param roomMm width and height that the printer reaches on one page
 */
export function tile(what: ToTile, roomMm: readonly [number, number], overlapMm = 10): Tiling {
  const extent = onOneSheet(what, roomMm);
  const width = extent.maxX - extent.minX,
    height = extent.maxY - extent.minY;
  const count = (size: number, room: number): number =>
    size <= room + 1e-9 ? 1 : Math.ceil((size - overlapMm) / (room - overlapMm) - 1e-9);
  const upright = count(width, roomMm[0]) * count(height, roomMm[1]);
  const lying = count(width, roomMm[1]) * count(height, roomMm[0]);
  const turned = lying < upright;
  const room = turned ? ([roomMm[1], roomMm[0]] as const) : roomMm;
  const columns = count(width, room[0]),
    rows = count(height, room[1]);
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const [minX, maxX] = span(extent.minX, width, columns, column, overlapMm);
      const [minY, maxY] = span(extent.minY, height, rows, row, overlapMm);
      const box = { minX, maxX, minY, maxY };
      const empty = columns * rows > 1 && what.drawnIn !== undefined && !what.drawnIn(box);
      tiles.push({ name: `${letters(row)}${column + 1}`, column, row, box, empty });
    }
  return { turned, columns, rows, overlapMm, tiles };
}

/** The extent, or as much of it around `least` as one sheet holds where that saves the others. */
function onOneSheet({ extent, least }: ToTile, roomMm: readonly [number, number]): Box {
  const [width, height] = [extent.maxX - extent.minX, extent.maxY - extent.minY];
  const holds = (w: number, h: number, [rw, rh]: readonly [number, number]): boolean => w <= rw + 1e-9 && h <= rh + 1e-9;
  const ways = [roomMm, [roomMm[1], roomMm[0]] as const] as const;
  if (!least || ways.some((room) => holds(width, height, room))) return extent;
  const room = ways.find((one) => holds(least.maxX - least.minX + 2 * aroundMm, least.maxY - least.minY + 2 * aroundMm, one));
  if (!room) return extent;
  const [minX, maxX] = around(extent.minX, extent.maxX, least.minX, least.maxX, room[0]);
  const [minY, maxY] = around(extent.minY, extent.maxY, least.minY, least.maxY, room[1]);
  return { minX, maxX, minY, maxY };
}

/** As far out on both sides as the room allows, and no farther than the extent. */
function around(from: number, to: number, least: number, most: number, room: number): [number, number] {
  const spare = room - (most - least);
  const before = Math.min(least - from, Math.max(spare / 2, spare - (to - most)));
  return [least - before, most + Math.min(to - most, spare - before)];
}

/** The i-th of n equal stretches that overlap by `overlap`. */
function span(from: number, size: number, n: number, i: number, overlap: number): [number, number] {
  const length = (size + (n - 1) * overlap) / n;
  const start = from + i * (length - overlap);
  return [start, start + length];
}

function letters(row: number): string {
  return row < 26 ? String.fromCharCode(65 + row) : `${letters(Math.floor(row / 26) - 1)}${letters(row % 26)}`;
}

/** The middle lines of the overlaps: where two sheets meet. In the drawing's mm. */
export function seams(tiling: Tiling): { readonly x: readonly number[]; readonly y: readonly number[] } {
  const middle = (ends: readonly (readonly [number, number])[]): number[] => ends.slice(1).map(([start], i) => (start + ends[i][1]) / 2);
  return {
    x: middle(tiling.tiles.filter((t) => t.row === 0).map((t) => [t.box.minX, t.box.maxX] as const)),
    y: middle(tiling.tiles.filter((t) => t.column === 0).map((t) => [t.box.minY, t.box.maxY] as const)),
  };
}
