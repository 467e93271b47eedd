import { log, pow } from '../../numeric/index.ts';
import { BANDS, deltaE00, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';

/** As a value of its own: read through an import it costs more than the sums around it. */
const bands36 = BANDS;

/** One step of a wedge: what stood on the film, and what was read of it. */
export interface RampStep {
  readonly coverage: number;
  readonly spectrum: Spectrum;
}

export interface FittedRamps {
  /** Yule and Nielsen's n. */
  readonly n: number;
  /** What each step covers, ramp by ramp. */
  readonly covers: readonly (readonly number[])[];
  /** ΔE00 left at each step. */
  readonly off: readonly (readonly number[])[];
}

/** Where no wedge says otherwise: the middle of nine published printing conditions' own (docs/optics.md 11). */
export const usualN = 1.8;
const nDoubt = 0.6,
  stepDoubt = 0.4;
const leastN = 1,
  mostN = 8;
const grid = 16;

/**
 * n and what each step covers, from wedges of single inks alone: for every n each step takes the cover that comes nearest to its colour,
 * and the n that leaves least is taken, held by what is usual as long as few steps were read.
 * @param solids one spectrum an ink
 */
export function fitRamps(paper: Spectrum, solids: readonly Spectrum[], ramps: readonly (readonly RampStep[])[]): FittedRamps {
  const labs = ramps.map((steps) => steps.map(({ spectrum }) => labFromXyz(xyzAt(spectrum, 0))));
  const at = (n: number): FittedRamps & { readonly cost: number } => {
    const fits = ramps.map((_, i) => fitSteps(paper, solids[i], labs[i], n));
    const off = fits.map((f) => f.map((one) => one.off));
    const cost = off.flat().reduce((sum, d) => sum + (d / stepDoubt) ** 2, 0) + (log(n / usualN) / nDoubt) ** 2;
    return { n, covers: fits.map((f) => f.map((one) => one.cover)), off, cost };
  };
  if (labs.every((l) => l.length === 0)) return at(usualN);
  const ratio = pow(mostN / leastN, 1 / grid);
  const tried = Array.from({ length: grid + 1 }, (_, i) => at(leastN * ratio ** i));
  const best = tried.reduce((least, one, i) => (one.cost < tried[least].cost ? i : least), 0);
  if (best === 0 || best === grid) return tried[best];
  const [a, b, c] = [tried[best - 1].cost, tried[best].cost, tried[best + 1].cost];
  const move = (a - c) / (2 * (a - 2 * b + c));
  const finer = at(Math.round(tried[best].n * ratio ** move * 1e4) / 1e4);
  return finer.cost < b ? finer : tried[best];
}

function fitSteps(paper: Spectrum, solid: Spectrum, labs: readonly Lab[], n: number): { readonly cover: number; readonly off: number }[] {
  const bare = paper.map((r) => pow(Math.max(r, 1e-5), 1 / n)),
    full = solid.map((r) => pow(Math.max(r, 1e-5), 1 / n));
  const room = new Float64Array(bands36);
  const labAt = (cover: number): Lab => {
    for (let b = 0; b < bands36; b++) room[b] = pow(bare[b] + cover * (full[b] - bare[b]), n);
    return labFromXyz(xyzAt(room, 0));
  };
  return labs.map((lab) => {
    const offAt = (cover: number): number => deltaE00(labAt(cover), lab);
    // The distance to a colour beside a curve has one valley: golden section.
    const golden = (Math.sqrt(5) - 1) / 2;
    let low = 0,
      high = 1;
    let x0 = high - golden,
      x1 = golden;
    let f0 = offAt(x0),
      f1 = offAt(x1);
    for (let i = 0; i < 16; i++) {
      if (f0 < f1) {
        [high, x1, f1] = [x1, x0, f0];
        x0 = high - golden * (high - low);
        f0 = offAt(x0);
      } else {
        [low, x0, f0] = [x0, x1, f1];
        x1 = low + golden * (high - low);
        f1 = offAt(x1);
      }
    }
    // Settled, as engines differ in the last bits of powers.
    const cover = Math.round(((low + high) / 2) * 1e5) / 1e5;
    return { cover, off: offAt(cover) };
  });
}
