import { say } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { seeded } from '../../random.ts';
import type { SizeMm } from '../fit.ts';

/** Where one layer of one sheet fell: shift of the image's middle, and turn about it. */
export interface LayerShift {
  readonly dxMm: number;
  readonly dyMm: number;
  /** Clockwise as seen. */
  readonly angleDeg: number;
}

export interface SheetShifts {
  readonly layers: readonly LayerShift[];
  /** Farthest that any two layers lie apart at any corner of the image. */
  readonly offMm: number;
}

export interface RegisterDraws {
  readonly sheets: readonly SheetShifts[];
  /** Indices of the worst twentieth (at least one), worst first. */
  readonly worst: readonly number[];
  readonly medianMm: number;
  /** Nineteen sheets in twenty are no farther off. */
  readonly p95Mm: number;
}

export interface ShiftSigma {
  readonly xMm: number;
  readonly yMm: number;
  readonly angleDeg: number;
}

/**
 * Seeded misregister of `n` sheets: every layer shifted (normal, `sigma`) and turned. One number for sigma: the same both
 * ways, and a turn that moves the image's corners by half of it (common practice).
 * Steady shifts of layers (`driftMm`) are added. Same seed, same sheets, everywhere.
 */
export function registerShifts(
  seed: number,
  sigma: number | ShiftSigma,
  n: number,
  options: { readonly layers?: number; readonly imageMm?: SizeMm; readonly driftMm?: readonly (readonly [number, number])[] } = {},
): RegisterDraws {
  const { layers = 2, imageMm = [180, 240] } = options;
  if (!(Number.isInteger(n) && n >= 1 && n <= 100_000 && Number.isInteger(layers) && layers >= 1 && layers <= 64)) {
    fail('shift-count', say('register.drawnSheets'), say('register.tooManyShifts'), say('register.askForFewer'));
  }
  const half = Math.hypot(imageMm[0], imageMm[1]) / 2;
  const s: ShiftSigma = typeof sigma === 'number' ? { xMm: sigma, yMm: sigma, angleDeg: ((sigma / 2 / half) * 180) / Math.PI } : sigma;
  if (![s.xMm, s.yMm, s.angleDeg].every((value) => value >= 0 && Number.isFinite(value)))
    fail('register-sigma', 'register.sigmaMm', say('register.sigmaNegative'), say('register.measureSigma'));
  const random = seeded(seed);
  const sheets = Array.from({ length: n }, (): SheetShifts => {
    const drawn = Array.from(
      { length: layers },
      (_, layer): LayerShift => ({
        dxMm: random.normal() * s.xMm + (options.driftMm?.[layer]?.[0] ?? 0),
        dyMm: random.normal() * s.yMm + (options.driftMm?.[layer]?.[1] ?? 0),
        angleDeg: random.normal() * s.angleDeg,
      }),
    );
    return { layers: drawn, offMm: farthest(drawn, imageMm) };
  });
  const order = sheets.map((_, i) => i).sort((one, other) => sheets[other].offMm - sheets[one].offMm || one - other);
  const worst = order.slice(0, Math.max(1, Math.round(n / 20)));
  const at = (share: number): number => sheets[order[n - 1 - Math.floor(share * (n - 1))]].offMm;
  return { sheets, worst, medianMm: at(0.5), p95Mm: at(0.95) };
}

function farthest(layers: readonly LayerShift[], [width, height]: SizeMm): number {
  let most = 0;
  for (const x of [-width / 2, width / 2]) {
    for (const y of [-height / 2, height / 2]) {
      const places = layers.map((layer) => cornerPlace(layer, x, y));
      for (let a = 0; a < places.length; a++) {
        for (let b = a + 1; b < places.length; b++)
          most = Math.max(most, Math.hypot(places[a][0] - places[b][0], places[a][1] - places[b][1]));
      }
    }
  }
  return most;
}

function cornerPlace(shift: LayerShift, x: number, y: number): readonly [number, number] {
  const angle = (shift.angleDeg * Math.PI) / 180;
  return [x * Math.cos(angle) - y * Math.sin(angle) + shift.dxMm, x * Math.sin(angle) + y * Math.cos(angle) + shift.dyMm];
}
