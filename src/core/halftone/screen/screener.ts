import type { DotShape } from '../model/gain.ts';
import { blueNoise, tileSide } from './blue-noise.ts';
import { spotSteps, spotThresholds } from './spot.ts';
import { supercellFor, type Supercell } from './supercell.ts';

export interface ScreenAsk {
  readonly by: 'dots' | 'grain';
  readonly shape: DotShape;
  readonly rulingPerCm: number;
  readonly angleDeg: number;
  /** Nothing smaller is drawn, neither dot nor hole. */
  readonly leastDotMicrons: number;
  readonly pixelsPerCm: number;
}

export type ToneAt = (x: number, y: number) => number;

export interface Screener {
  /** As the dots come out on these pixels; null for grain. */
  readonly cell: Supercell | null;
  /**
   * One row of a film: 1 where it is black.
   * @param coverage 0..255 a pixel
   * @param toneAt coverage at any place of the film, in its pixels: with it, dots and holes of the least size are drawn whole or not at all
   * where a tone changes within them; left out: by each pixel's own
   */
  readonly row: (y: number, coverage: Uint8Array, out: Uint8Array, toneAt?: ToneAt) => void;
}

/**
 * Tone → dots or grain, row by row, without a state from row to row. Where a tone asks for smaller dots than the screen holds, dots keep
 * the least size and become fewer, evenly spread; holes alike.
 */
export function screener(ask: ScreenAsk): Screener {
  return ask.by === 'grain' ? grain(ask) : dots(ask);
}

function grain({ leastDotMicrons, pixelsPerCm }: ScreenAsk): Screener {
  const side = Math.max(1, Math.round((leastDotMicrons * pixelsPerCm) / 10000));
  const thresholds = blueNoise().map((t) => t * 255);
  return {
    cell: null,
    row: (y, coverage, out) => {
      const from = (Math.floor(y / side) % tileSide) * tileSide;
      for (let x = 0, grains = 0, left = side; x < out.length; x++) {
        out[x] = coverage[x] > thresholds[from + grains] ? 1 : 0;
        if (--left === 0) {
          left = side;
          grains = (grains + 1) % tileSide;
        }
      }
    },
  };
}

function dots({ shape, rulingPerCm, angleDeg, leastDotMicrons, pixelsPerCm }: ScreenAsk): Screener {
  const cell = supercellFor(rulingPerCm, angleDeg, pixelsPerCm);
  const { p, q, cells } = cell;
  const D = p * p + q * q;
  // Black where the coverage is above: solid is above all of them, bare above none.
  const spot = Uint8Array.from(spotThresholds(shape), (t) => Math.floor(t * 255));
  const noise = blueNoise();
  const cellMm = 10 / cell.rulingPerCm;
  const dotMm = leastDotMicrons / 1000;
  // Area of the least dot, or width of the least line, against its cell.
  const least = 255 * Math.min(0.4, shape === 'line' ? dotMm / cellMm : (Math.PI * dotMm * dotMm) / 4 / (cellMm * cellMm));
  const most = 255 - least;
  // Where in its cell a pixel lies, as steps of the spot's table: reckoned, for a table as long as D would not stay near the processor.
  const scale = spotSteps / D;
  const rankAt = (i: number, k: number): number =>
    noise[(((k % tileSide) + tileSide) % tileSide) * tileSide + (((i % tileSide) + tileSide) % tileSide)];
  const rest = (n: number): number => ((n % D) + D) % D;
  /** Which dot, or which hole between four, a pixel belongs to, as a rank among its like. */
  const rank = (x: number, y: number, dot: boolean): number => {
    const half = dot ? 0.5 : 0;
    return rankAt(Math.floor(((x * p + y * q) * cells) / D + half), Math.floor(((y * p - x * q) * cells) / D + half));
  };
  /** Whether the dot, or the hole, that a pixel belongs to is there: by the tone in its middle. Neighbours along a row mostly ask for the same one. */
  const last = { i: NaN, k: NaN, dot: false, toneAt: undefined as ToneAt | undefined, there: false };
  const isThere = (x: number, y: number, dot: boolean, toneAt: ToneAt): boolean => {
    const half = dot ? 0.5 : 0;
    const i = Math.floor(((x * p + y * q) * cells) / D + half),
      k = Math.floor(((y * p - x * q) * cells) / D + half);
    if (last.i === i && last.k === k && last.dot === dot && last.toneAt === toneAt) return last.there;
    const [u, v] = [i + 0.5 - half, k + 0.5 - half];
    const tone = toneAt((u * p - v * q) / cells, (u * q + v * p) / cells);
    const open = dot ? tone : 255 - tone;
    last.i = i;
    last.k = k;
    last.dot = dot;
    last.toneAt = toneAt;
    return (last.there = open >= least || rankAt(i, k) * least < open);
  };
  const pale = Math.ceil(2 * least),
    deep = Math.floor(255 - 2 * least);
  const du = rest(p * cells),
    dv = rest(-q * cells);
  /** Where tones are so light or so dark that dots of the least size are there or not. */
  const faint = (x: number, y: number, t: number, c: number, toneAt: ToneAt | undefined): number => {
    if (c < least) return t < least && (toneAt ? isThere(x, y, true, toneAt) : rank(x, y, true) * least < c) ? 1 : 0;
    if (c > most) return t >= most && (toneAt ? isThere(x, y, false, toneAt) : rank(x, y, false) * least < 255 - c) ? 0 : 1;
    if (t < c) return c < pale && toneAt && !isThere(x, y, true, toneAt) ? 0 : 1;
    return c > deep && toneAt && !isThere(x, y, false, toneAt) ? 1 : 0;
  };
  return {
    cell,
    row: (y, coverage, out, toneAt) => {
      // Exact in whole numbers: u = (x p + y q) · cells / D, v = (y p − x q) · cells / D; the remainder says where in a cell.
      let u = rest(y * q * cells),
        v = rest(y * p * cells);
      for (let x = 0, n = out.length; x < n; ) {
        const c = coverage[x];
        if (c === 0 || c === 255) {
          // Bare and solid stretches are passed in one step.
          let end = x + 1;
          while (end < n && coverage[end] === c) end++;
          out.fill(c & 1, x, end);
          u = (u + du * (end - x)) % D;
          v = (v + dv * (end - x)) % D;
          x = end;
          continue;
        }
        const t = spot[(((v * scale) | 0) << 7) | ((u * scale) | 0)];
        out[x] = c >= pale && c <= deep ? (t - c) >>> 31 : faint(x, y, t, c, toneAt);
        x++;
        // Round the cell, without a branch that nobody can foresee.
        u += du;
        u -= D & ((D - 1 - u) >> 31);
        v += dv;
        v -= D & ((D - 1 - v) >> 31);
      }
    },
  };
}
