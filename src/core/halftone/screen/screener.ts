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

export interface Screener {
  /** As the dots come out on these pixels; null for grain. */
  readonly cell: Supercell | null;
  /**
   * One row of a film: 1 where it is black.
   * @param coverage 0..255 a pixel
   */
  readonly row: (y: number, coverage: Uint8Array, out: Uint8Array) => void;
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
  const spot = spotThresholds(shape).map((t) => t * 255);
  const noise = blueNoise();
  const cellMm = 10 / cell.rulingPerCm;
  const dotMm = leastDotMicrons / 1000;
  // Area of the least dot, or width of the least line, against its cell.
  const least = 255 * Math.min(0.4, shape === 'line' ? dotMm / cellMm : (Math.PI * dotMm * dotMm) / 4 / (cellMm * cellMm));
  // Where on its supercell a pixel lies, as a step of the spot's table.
  const step = Uint8Array.from({ length: D }, (_, i) => Math.floor((i * spotSteps) / D));
  const half = D >> 1;
  const rankAt = (i: number, k: number): number =>
    noise[(((k % tileSide) + tileSide) % tileSide) * tileSide + (((i % tileSide) + tileSide) % tileSide)];
  return {
    cell,
    row: (y, coverage, out) => {
      // Exact in whole numbers: u = (x p + y q) · cells / D, v = (y p − x q) · cells / D; its remainder says where in a cell.
      let u = y * q * cells,
        v = y * p * cells;
      let ui = Math.floor(u / D),
        vi = Math.floor(v / D);
      u -= ui * D;
      v -= vi * D;
      const du = p * cells,
        dv = -q * cells;
      for (let x = 0; x < out.length; x++) {
        const c = coverage[x];
        if (c === 0) out[x] = 0;
        else if (c === 255) out[x] = 1;
        else {
          const t = spot[step[v] * spotSteps + step[u]];
          if (c < least) {
            out[x] = t < least && rankAt(ui + (u > half ? 1 : 0), vi + (v > half ? 1 : 0)) * least < c ? 1 : 0;
          } else if (255 - c < least) {
            out[x] = t > 255 - least && rankAt(ui, vi) * least < 255 - c ? 0 : 1;
          } else out[x] = t < c ? 1 : 0;
        }
        u += du;
        v += dv;
        while (u >= D) {
          u -= D;
          ui++;
        }
        while (u < 0) {
          u += D;
          ui--;
        }
        while (v >= D) {
          v -= D;
          vi++;
        }
        while (v < 0) {
          v += D;
          vi--;
        }
      }
    },
  };
}
