/**
 * Outlines where a field on a pixel grid crosses `level` (marching squares, linear between pixel centres), inside (above)
 * on a constant side. The border counts as outside. x0, y0, … in pixels, centre of pixel (i, j) at (i + ½, j + ½).
 */
export function contours(field: Float32Array, width: number, height: number, level: number): Float64Array[] {
  const at = (x: number, y: number): number => (x < 0 || y < 0 || x >= width || y >= height ? level - 1 : field[y * width + x] - level);
  // Each crossing lies on an edge between two neighbouring pixels; edges have numbers: 2·cell for the one to the right,
  // 2·cell + 1 for the one below, cells counted with a border of one.
  const w = width + 2;
  const next = new Map<number, number>();
  const edge = (x: number, y: number, down: 0 | 1): number => 2 * ((y + 1) * w + x + 1) + down;
  for (let y = -1; y < height; y++) {
    for (let x = -1; x < width; x++) {
      const a = at(x, y) > 0,
        b = at(x + 1, y) > 0,
        c = at(x + 1, y + 1) > 0,
        d = at(x, y + 1) > 0;
      const kind = (a ? 8 : 0) | (b ? 4 : 0) | (c ? 2 : 0) | (d ? 1 : 0);
      if (kind === 0 || kind === 15) continue;
      const top = edge(x, y, 0),
        right = edge(x + 1, y, 1),
        bottom = edge(x, y + 1, 0),
        left = edge(x, y, 1);
      const link = (from: number, to: number): void => void next.set(from, to);
      // Going with the inside on the right.
      switch (kind) {
        case 1:
          link(bottom, left);
          break;
        case 2:
          link(right, bottom);
          break;
        case 3:
          link(right, left);
          break;
        case 4:
          link(top, right);
          break;
        case 6:
          link(top, bottom);
          break;
        case 7:
          link(top, left);
          break;
        case 8:
          link(left, top);
          break;
        case 9:
          link(bottom, top);
          break;
        case 11:
          link(right, top);
          break;
        case 12:
          link(left, right);
          break;
        case 13:
          link(bottom, right);
          break;
        case 14:
          link(left, bottom);
          break;
        case 5:
          if (at(x, y) + at(x + 1, y) + at(x + 1, y + 1) + at(x, y + 1) > 0) {
            link(top, left);
            link(bottom, right);
          } else {
            link(top, right);
            link(bottom, left);
          }
          break;
        default:
          if (at(x, y) + at(x + 1, y) + at(x + 1, y + 1) + at(x, y + 1) > 0) {
            link(left, bottom);
            link(right, top);
          } else {
            link(left, top);
            link(right, bottom);
          }
      }
    }
  }
  const rings: Float64Array[] = [];
  for (const start of next.keys()) {
    if (!next.has(start)) continue;
    const points: number[] = [];
    for (let e: number | undefined = start; e !== undefined && next.has(e); ) {
      const cell = e >> 1,
        x = (cell % w) - 1,
        y = Math.floor(cell / w) - 1,
        down = e & 1;
      const here = at(x, y),
        there = down ? at(x, y + 1) : at(x + 1, y);
      const t = here / (here - there);
      points.push(x + 0.5 + (down ? 0 : t), y + 0.5 + (down ? t : 0));
      const after: number | undefined = next.get(e);
      next.delete(e);
      e = after;
    }
    if (points.length >= 6) rings.push(Float64Array.from(points));
  }
  return rings;
}
