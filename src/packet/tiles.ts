import type { Box } from '../core/form/index.ts';

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
}

/**
 * Fewest sheets of the printer's paper that hold the drawing, upright or turned; neighbours overlap by at least `overlapMm`
 * and share the drawing evenly.
 * @param extent what must be on the sheets
 * @param roomMm width and height that the printer reaches on one page
 */
export function tile(extent: Box, roomMm: readonly [number, number], overlapMm = 10): Tiling {
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
      tiles.push({ name: `${letters(row)}${column + 1}`, column, row, box: { minX, maxX, minY, maxY } });
    }
  return { turned, columns, rows, overlapMm, tiles };
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
