import { solveLinear } from '../../../numeric/index.ts';
import { shrunk, type Raster } from './is-drawn.ts';

/** Paper is looked for in squares of so many pixels of a raster so long. */
const longSidePx = 200,
  tilePx = 8;
/** Paper is no darker than this anywhere, nearly without colour, and of one hue all over. */
const leastL = 50,
  mostChroma = 12,
  mostTurn = 8;
/** Squares this much darker than the paper (L*) still count as paper: first widely, for a shade may fall across it, then closely. */
const windows = [30, 18, 10, 6, 4, 3.5];
/** As near to the paper's surface a pixel is paper (L*), so much of the page has to be, and so little may be lighter. */
const near = 4,
  leastPaper = 0.06,
  mostLighter = 0.01;
/**
 * Paper has a grain and light falls on it unevenly: what is the same (L*) from pixel to pixel over most of it was drawn on a screen, and its ground is a
 * colour that was chosen.
 */
const sameL = 0.02,
  mostSame = 0.5;

/**
 * A page that was scanned or photographed, its paper made bare: the light on it is taken out, a smooth surface through the lightest
 * squares, for each of the three kinds of cone as colours are told apart in Lab.
 * @param white Lab of the paper that is printed on
 * @returns nothing where no paper is seen, or where it is bare already
 */
export function onBarePaper(raster: Raster, white: readonly number[]): Float32Array | undefined {
  const coarse = shrunk(raster, longSidePx),
    tiles = lightestOf(coarse);
  let kept = tiles.filter(({ lab: [l, a, b] }) => l >= leastL && Math.hypot(a - white[1], b - white[2]) <= mostChroma);
  if (kept.length < 12) return undefined;
  const lights = kept.map(({ lab }) => lab[0]).sort((p, q) => p - q);
  let surface: Surface = [[lights[Math.floor(lights.length * 0.95)]], [0], [0]];
  for (const window of windows) {
    const close = kept.filter(({ u, v, lab }) => lab[0] > valueAt(surface[0], u, v) - window);
    if (close.length < 12) return undefined;
    const fitted = [0, 1, 2].map((c) => fitOf(close, c));
    if (fitted.some((f) => f === undefined)) return undefined;
    surface = fitted as [number[], number[], number[]];
    if (window === windows[windows.length - 1]) kept = close;
  }
  if (!isPaper(coarse, surface)) return undefined;
  return evened(raster, surface, white);
}

/** Coefficients of a smooth surface, one row each for L, a and b. */
type Surface = readonly [readonly number[], readonly number[], readonly number[]];

interface Tile {
  readonly u: number;
  readonly v: number;
  readonly lab: readonly [number, number, number];
}

/** The lighter half of each square's lightest quarter, on average. */
function lightestOf({ lab, width, height }: Raster): Tile[] {
  const tiles: Tile[] = [];
  for (let y = 0; y + tilePx <= height; y += tilePx)
    for (let x = 0; x + tilePx <= width; x += tilePx) {
      const inside: number[] = [];
      for (let v = y; v < y + tilePx; v++) for (let u = x; u < x + tilePx; u++) inside.push((v * width + u) * 3);
      inside.sort((p, q) => lab[q] - lab[p]);
      const from = inside.slice(2, 2 + (inside.length >> 2)),
        mean = (c: number): number => from.reduce((sum, i) => sum + lab[i + c], 0) / from.length;
      tiles.push({ u: (x + tilePx / 2) / width, v: (y + tilePx / 2) / height, lab: [mean(0), mean(1), mean(2)] });
    }
  return tiles;
}

const termsAt = (u: number, v: number): readonly number[] => [1, u, v, u * u, u * v, v * v];

function valueAt(coefficients: readonly number[], u: number, v: number): number {
  const terms = termsAt(u, v);
  return coefficients.reduce((sum, k, i) => sum + k * terms[i], 0);
}

/** Least squares, by the normal equations. */
function fitOf(tiles: readonly Tile[], channel: number): number[] | undefined {
  const n = termsAt(0, 0).length,
    A = new Float64Array(n * n),
    b = new Float64Array(n);
  for (const { u, v, lab } of tiles) {
    const terms = termsAt(u, v);
    for (let i = 0; i < n; i++) {
      b[i] += terms[i] * lab[channel];
      for (let j = 0; j < n; j++) A[i * n + j] += terms[i] * terms[j];
    }
  }
  // Where paper lies only along a line there is no telling how it bends across: then it does not.
  for (let i = 1; i < n; i++) A[i * n + i] += i < 3 ? 1e-3 * tiles.length : 4e-3 * tiles.length;
  return solveLinear(A, b) ? [...b] : undefined;
}

function isPaper({ lab, width, height }: Raster, surface: Surface): boolean {
  if (Math.max(rangeOf(surface[1]), rangeOf(surface[2])) > mostTurn) return false;
  let paper = 0,
    lighter = 0,
    same = 0;
  for (let y = 0; y < height; y++) {
    const rows = surface.map((k) => alongRow(k, (y + 0.5) / height));
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 3,
        [l, a, b] = rows.map((row) => row((x + 0.5) / width));
      if (l < leastL - 5) return false;
      const above = lab[i] - l;
      if (above > near) lighter++;
      else if (above > -near && Math.hypot(lab[i + 1] - a, lab[i + 2] - b) < 2 * near) {
        paper++;
        if (x > 0 && Math.abs(lab[i] - lab[i - 3]) < sameL) same++;
      }
    }
  }
  const all = width * height;
  return paper >= leastPaper * all && lighter <= mostLighter * all && same <= mostSame * paper;
}

/** How far a surface rises over the page. */
function rangeOf(k: readonly number[]): number {
  const values = [0, 0.5, 1].flatMap((u) => [0, 0.5, 1].map((v) => valueAt(k, u, v)));
  return Math.max(...values) - Math.min(...values);
}

/** The surface along one row. */
function alongRow(k: readonly number[], v: number): (u: number) => number {
  const start = k[0] + k[2] * v + k[5] * v * v,
    slope = k[1] + k[4] * v,
    bend = k[3];
  return (u) => start + u * (slope + u * bend);
}

/**
 * Light that is less by a factor makes each of the three numbers that Lab is made of (CIE 15) less by its cube root: (L + 16) / 116, more than that by
 * a / 500, less by b / 200.
 */
function evened({ lab, width, height }: Raster, surface: Surface, white: readonly number[]): Float32Array {
  const out = new Float32Array(lab.length),
    whiteY = (white[0] + 16) / 116,
    whiteX = whiteY + white[1] / 500,
    whiteZ = whiteY - white[2] / 200;
  for (let y = 0, i = 0; y < height; y++) {
    const [rowL, rowA, rowB] = surface.map((k) => alongRow(k, (y + 0.5) / height));
    for (let x = 0; x < width; x++, i += 3) {
      const u = (x + 0.5) / width,
        paperY = (rowL(u) + 16) / 116,
        paperX = paperY + rowA(u) / 500,
        paperZ = paperY - rowB(u) / 200,
        // Of black nothing is lighter for more light on it.
        share = Math.max(0, Math.min(1, lab[i] / blackL)),
        hereY = (lab[i] + 16) / 116,
        fx = (hereY + lab[i + 1] / 500) * (1 + share * (whiteX / paperX - 1)),
        fy = hereY * (1 + share * (whiteY / paperY - 1)),
        fz = (hereY - lab[i + 2] / 200) * (1 + share * (whiteZ / paperZ - 1));
      out[i] = Math.min(white[0], 116 * fy - 16);
      out[i + 1] = 500 * (fx - fy);
      out[i + 2] = 200 * (fy - fz);
    }
  }
  return out;
}

const blackL = 20;
