import { log, pow } from '../../numeric/index.ts';
import { BANDS, deltaE00, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { curveAt, curveThrough, rising, type ToneCurve } from './curve.ts';
import { krige, type KnownOff } from './kriged.ts';
import { meanOfOverlaps, overlapShares, rootsOf } from './neugebauer.ts';
import { fitRamps, type RampStep } from './ramps.ts';

/** As a value of its own: read through an import it costs more than the sums around it. */
const bands36 = BANDS;

export interface ToneInk {
  /** Steps of its wedge that were read, without bare paper and solid. */
  readonly ramp: readonly RampStep[];
  /** What it is taken to cover where no wedge was read; left out: it lies solid or not at all. */
  readonly usual?: ToneCurve;
}

export interface ToneAsk {
  /** 2^k × 36 reflectances; bit i of the row's number set where ink i lies. */
  readonly overlaps: Float64Array;
  /** ΔE00 within which nine in ten of each overlap's prints fall. */
  readonly bands: ArrayLike<number>;
  readonly inks: readonly ToneInk[];
  /** Share of the overlaps of two inks and more that were read. Foreseen ones come out too dark as it is (docs/optics.md 5): no gain on top of that. */
  readonly overlapsRead: number;
  /** Fields of several inks' tones that were read, each with what stood on the films. */
  readonly read: readonly { readonly coverages: readonly number[]; readonly lab: Lab }[];
}

/** What foresees any tones of several inks on one paper: data, for `toneForesight`. */
export interface ToneModel {
  readonly k: number;
  readonly n: number;
  /** Film → what lies on the paper, one an ink. */
  readonly curves: readonly ToneCurve[];
  /** Whether a wedge of the ink was read; without one, its gain is in doubt. */
  readonly known: readonly boolean[];
  /** Whether it carries tone at all. */
  readonly carries: readonly boolean[];
  /** Mean ΔE00 that is left at the wedges' steps. */
  readonly wedgeOff: number | null;
  /** How much more a dot gains on other inks. */
  readonly onInk: number;
  /** n-th roots of all overlaps' reflectances, 2^k × 36, and their bands. */
  readonly roots: Float64Array;
  readonly bands: Float64Array;
  /** 257 × 36 an ink: what it covers for each band. */
  readonly tables: readonly Float64Array[];
  /** What the model is off by where tones were read. */
  readonly off: readonly KnownOff[];
}

/** The questions that a model answers. What it hands out is its own: spectra are to be copied. */
export interface ToneForesight {
  readonly lab: (coverages: ArrayLike<number>) => Lab;
  readonly spectrum: (coverages: ArrayLike<number>) => Spectrum;
  /** ΔE00 within which nine prints in ten fall. */
  readonly band: (coverages: ArrayLike<number>) => number;
}

/** A wedge read at all bands tells more than one cover: half of what each band says beside it is taken over (docs/optics.md 11). */
const ofBands = 0.5;
/** Bands where ink and paper differ by less than this (as roots) tell nothing of the cover. */
const leastContrast = 0.02;
const levels = 256;
/** What tones themselves are off by beside what solids are: chosen on published sets (docs/optics.md 11). */
const toneBand = 1.2;
/** Of what solids may be off by, tones show this much: their errors are not all one way. Chosen likewise. */
const solidShare = 0.7;
/**
 * A dot gains more where other inks lie than on bare paper, the more so the farther light spreads (Hersch and Crété 2005 measure it for each
 * pair): this much of s (1 − s) for each e-fold of n. Chosen on FOGRA39L, FOGRA29L and TR003, judged on six other sets.
 */
const gainOnInk = 0.06;
/** Doubt of what is covered at half tone where no wedge was read: hand pulls gain 15..30 % [M]. */
const gainDoubt = 0.08;

export function toneModel(ask: ToneAsk): ToneModel {
  const k = ask.inks.length;
  const paper = ask.overlaps.subarray(0, bands36);
  const solids = ask.inks.map((_, i) => ask.overlaps.subarray((1 << i) * bands36, ((1 << i) + 1) * bands36));
  const fit = fitRamps(
    paper,
    solids,
    ask.inks.map((ink) => ink.ramp),
  );
  const { n } = fit;
  const roots = rootsOf(ask.overlaps, n);
  const curves = ask.inks.map((ink, i): ToneCurve => {
    if (ink.ramp.length === 0) return ink.usual ?? curveThrough([]);
    const sorted = ink.ramp.map((step, s) => [step.coverage, fit.covers[i][s]] as const).sort((a, b) => a[0] - b[0]);
    const covers = rising(sorted.map(([, cover]) => cover));
    return curveThrough(sorted.map(([coverage], s) => [coverage, covers[s]]));
  });
  const tables = ask.inks.map((ink, i) => shareTable(ink, curves[i], roots, i, n, fit.covers[i]));

  const allOff = fit.off.flat();
  const model: ToneModel = {
    k,
    n,
    curves,
    known: ask.inks.map((ink) => ink.ramp.length > 0),
    carries: ask.inks.map((ink) => ink.ramp.length > 0 || ink.usual !== undefined),
    wedgeOff: allOff.length > 0 ? allOff.reduce((a, b) => a + b, 0) / allOff.length : null,
    onInk: gainOnInk * log(n) * ask.overlapsRead,
    roots,
    bands: Float64Array.from(ask.bands),
    tables,
    off: [],
  };
  return ask.read.length === 0 ? model : { ...model, off: offAtReadings(ask, toneForesight(model).lab) };
}

export function toneForesight(model: ToneModel): ToneForesight {
  const { k, n, roots, tables, curves } = model;
  const shares = new Float64Array(k * bands36),
    room = new Float64Array(roots.length),
    bare = new Float64Array(k),
    R = new Float64Array(bands36);
  const spectrum = (coverages: ArrayLike<number>): Float64Array => {
    for (let i = 0; i < k; i++) {
      const at = Math.min(1, Math.max(0, coverages[i])) * levels;
      const low = Math.min(levels - 1, Math.floor(at));
      const f = at - low,
        from = low * bands36,
        table = tables[i];
      let sum = 0;
      for (let b = 0; b < bands36; b++) {
        const share = table[from + b] * (1 - f) + table[from + bands36 + b] * f;
        shares[i * bands36 + b] = share;
        sum += share;
      }
      bare[i] = 1 - sum / bands36;
    }
    for (let i = 0; i < k; i++) {
      let others = 1;
      for (let j = 0; j < k; j++) if (j !== i) others *= bare[j];
      const more = model.onInk * (1 - others);
      if (more > 0) for (let at = i * bands36; at < (i + 1) * bands36; at++) shares[at] += more * shares[at] * (1 - shares[at]);
    }
    meanOfOverlaps(roots, shares, k, n, room, R);
    return R;
  };
  // Where light spreads far, everything between dots is seen less surely.
  const farther = 0.8 + 0.3 * log(n);
  const kriged = model.off.length === 0 ? null : krige(model.off);
  const lab = (coverages: ArrayLike<number>): Lab => {
    const foreseen = labFromXyz(xyzAt(spectrum(coverages), 0));
    if (!kriged) return foreseen;
    const off = kriged.at(coverages);
    return [foreseen[0] + off[0], foreseen[1] + off[1], foreseen[2] + off[2]];
  };
  const band = (coverages: ArrayLike<number>): number => {
    const covers = curves.map((curve, i) => curveAt(curve, coverages[i]));
    const areas = overlapShares(covers, k);
    // Overlaps of one sheet err together, so their bands add up by area; a tone's own error is largest in the middle.
    const solid = solidShare * areas.reduce((sum, area, row) => sum + area * model.bands[row], 0);
    const open = covers.map((cover) => 4 * cover * (1 - cover));
    const tone =
      toneBand *
      Math.sqrt(
        Math.min(
          1,
          open.reduce((sum, o) => sum + o, 0),
        ),
      ) *
      (kriged ? kriged.left(coverages) : 1);
    const here = lab(coverages);
    let doubt = 0;
    for (let i = 0; i < k; i++) {
      if (model.known[i] || !model.carries[i] || open[i] < 1e-6) continue;
      const step = gainDoubt * open[i];
      const moved = Array.from(coverages);
      moved[i] += coverages[i] > 0.5 ? -step : step;
      doubt += (1.645 * deltaE00(lab(moved), here)) ** 2;
    }
    return farther * Math.sqrt(solid * solid + tone * tone + doubt);
  };
  return { lab, spectrum, band };
}

/** 257 × 36: what an ink covers for each band, by what stands on its film. */
function shareTable(ink: ToneInk, curve: ToneCurve, roots: Float64Array, i: number, n: number, covers: readonly number[]): Float64Array {
  const table = new Float64Array((levels + 1) * bands36);
  const solidAt = (1 << i) * bands36;
  const steps = ink.ramp.map((step, s) => ({ ...step, cover: covers[s] })).sort((a, b) => a.coverage - b.coverage);
  for (let b = 0; b < bands36; b++) {
    const contrast = roots[b] - roots[solidAt + b];
    const sure = (contrast * contrast) / (contrast * contrast + leastContrast * leastContrast);
    const beside = curveThrough(
      steps.map(({ coverage, spectrum, cover }) => {
        const seen = contrast === 0 ? cover : (roots[b] - pow(Math.max(spectrum[b], 1e-5), 1 / n)) / contrast;
        return [coverage, ofBands * sure * (Math.min(1, Math.max(0, seen)) - cover)];
      }),
      [0, 0],
    );
    for (let level = 0; level <= levels; level++) {
      const at = level / levels;
      table[level * bands36 + b] = Math.min(1, Math.max(0, curveAt(curve, at) + (steps.length > 0 ? curveAt(beside, at) : 0)));
    }
  }
  return table;
}

/** What is off at tones that were read; steps of wedges and solids stay where they are. */
function offAtReadings(ask: ToneAsk, modelLab: ToneForesight['lab']): KnownOff[] {
  const k = ask.inks.length;
  const still = [
    ...Array.from({ length: 1 << k }, (_, row) => ask.inks.map((__, i) => (row >> i) & 1)),
    ...ask.inks.flatMap((ink, i) => ink.ramp.map(({ coverage }) => ask.inks.map((_, j) => (j === i ? coverage : 0)))),
  ];
  return [
    ...still.map((coverages) => ({ coverages, off: [0, 0, 0] as const })),
    ...ask.read.map(({ coverages, lab }) => {
      const foreseen = modelLab(coverages);
      return { coverages, off: [lab[0] - foreseen[0], lab[1] - foreseen[1], lab[2] - foreseen[2]] as const };
    }),
  ];
}
