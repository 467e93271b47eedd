import { defaultMaterials } from '../src/core/stencil/index.ts';
import { labFromSpectrum } from '../src/core/colour/index.ts';
import type { Picture, SeparateRequest } from '../src/core/separate/index.ts';
import { chooseInks } from '../src/core/separate/search/choose-inks.ts';
import { judged, rulesOf, type Chosen } from '../src/core/separate/search/judge.ts';
import { metresOf } from '../src/core/separate/finish/figures.ts';
import { flatInks, oneInkCodes, opaqueLab } from '../src/core/separate/search/flat-inks.ts';
import { blurPlane, gaussTaps } from '../src/core/separate/kernels/blur.ts';
import { pictureCost } from '../src/core/separate/kernels/length.ts';
import { fieldOf, freeCodes, solveMasks, type MaskRules } from '../src/core/separate/prepare/masks.ts';
import { prepareWork, type Work } from '../src/core/separate/prepare/prepare.ts';
import { expectedCost, registerRoom } from '../src/core/separate/kernels/register.ts';
import { fewTargets, type FewTargets } from '../src/core/separate/prepare/targets.ts';
import { quietTask } from '../src/core/task.ts';
import { benchShelf } from './separate-shelf.ts';

/** Long side of the print and raster of the trials; half the usual raster, to get through eight pictures. */
const longMm = 200,
  rasterMm = 0.4;

export function requestFor(picture: Picture, layers: number, more: Partial<SeparateRequest> = {}): SeparateRequest {
  const scale = longMm / Math.max(picture.width, picture.height);
  return {
    picture,
    sizeMm: { width: picture.width * scale, height: picture.height * scale },
    ...benchShelf(),
    layers,
    mostInPot: 3,
    material: defaultMaterials.find((m) => m.id === 'film')!,
    seed: 1,
    rasterMm,
    ...more,
  };
}

const everyPrice = [0.03, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.4, 12.8, 25];

interface Flat {
  readonly free: number;
  readonly points: readonly { readonly metres: number; readonly error: number; readonly priceMm: number }[];
}

export interface Trial {
  readonly layers: number;
  /** Mean ΔE00 without a knife budget: ours, flat inks. */
  readonly free: readonly [number, number];
  /** The same for one ink a place, mixed from the same shelf: what overlaps bring, the reach of the inks left out. */
  readonly sameShelf: number;
  /** The same at equal knife length, and that length: for each of `knifePrices`. */
  readonly equal: readonly (readonly [number, number, number])[];
}

/** What a mm of knife may cost, ΔE00·mm: a patient hand, and the usual. */
export const knifePrices = [0.3, 2];

/** Mean ΔE00 of the predicted print against the picture, before anything is cut. */
export async function trial(picture: Picture, layers: number): Promise<Trial> {
  const work = prepareWork(requestFor(picture, layers)),
    few = fewTargets(work.levels[0].bins);
  const flat = flatOf(work, few);
  const inks = (priceMm: number): Promise<Chosen> => chooseInks(work, few, priceMm, 0, 1, 1, quietTask, () => undefined);
  const free = (await inks(0)).found.overlapLab;
  const equal: [number, number, number][] = [];
  for (const priceMm of knifePrices) {
    const { codes, found } = await judged(work, (await inks(priceMm)).found, priceMm, 0, 0, quietTask),
      metres = lengthOf(work, codes);
    equal.push([errorOf(work, codes, rulesOf(work, found.overlapLab, priceMm)), flatAt(flat, metres), metres]);
  }
  const oneInk: Work = { ...work, setup: { ...work.setup, codes: oneInkCodes(layers) } };
  const single = (await chooseInks(oneInk, few, 0, 0, 1, 1, quietTask, () => undefined)).found.overlapLab;
  const sameShelf = errorOf(work, freeCodes(fieldOf(work.levels[0], rulesOf(oneInk, single, 0))), rulesOf(oneInk, single, 0));
  return {
    layers,
    sameShelf,
    free: [errorOf(work, freeCodes(fieldOf(work.levels[0], rulesOf(work, free, 0))), rulesOf(work, free, 0)), flat.free],
    equal,
  };
}

function errorOf(work: Work, codes: Uint8Array, rules: MaskRules): number {
  const field = fieldOf(work.levels[0], { ...rules, blacksAlike: false });
  return pictureCost(codes, field.binOf, field.table, field.codeCount) / codes.length;
}

function lengthOf(work: Work, codes: Uint8Array): number {
  return metresOf(codes, work.grid.width, work.grid.height, work.layers, work.grid.mmPerPx);
}

function flatOf(work: Work, few: FewTargets): Flat {
  const overlapLab = opaqueLab(flatInks(few.targets, labFromSpectrum(work.setup.paper), work.layers, 1, 20));
  const allowed = oneInkCodes(work.layers);
  const rules = (priceMm: number): MaskRules => ({ layers: work.layers, overlapLab, allowed, priceMm });
  const free = errorOf(work, freeCodes(fieldOf(work.levels[0], rules(0))), rules(0));
  return {
    free,
    points: everyPrice.map((priceMm) => {
      const codes = solveMasks(work.levels, rules(priceMm));
      return { priceMm, metres: lengthOf(work, codes), error: errorOf(work, codes, rules(priceMm)) };
    }),
  };
}

/** Flat inks' error at so many metres: between the nearest points; with more knife than they can use, their best. */
function flatAt({ points, free }: Flat, metres: number): number {
  if (metres >= points[0].metres) return Math.min(points[0].error, free + (points[0].error - free) * 0.5);
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]];
    if (metres <= a.metres && metres >= b.metres)
      return a.error + ((b.error - a.error) * (a.metres - metres)) / Math.max(1e-9, a.metres - b.metres);
  }
  return points[points.length - 1].error;
}

export interface RegisterTrial {
  readonly inRegister: number;
  readonly unaware: number;
  readonly aware: number;
  readonly metres: readonly [number, number];
  /** The unaware print if all its layers sat off together: what no trap can take away, because the edges themselves lie elsewhere. */
  readonly together: number;
  /** Share of the error that layers sitting off add, which planning for it takes away again. */
  readonly removed: number;
}

/** What reckoning with σ = 0.5 mm saves at the same knife length. */
export async function registerTrial(picture: Picture, layers: number, sigmaMm = 0.5): Promise<RegisterTrial> {
  const work = prepareWork(requestFor(picture, layers)),
    few = fewTargets(work.levels[0].bins);
  const level = work.levels[0];
  const plain = await judged(work, (await chooseInks(work, few, 1, 0, 1, 1, quietTask, () => undefined)).found, 1, 0, 0, quietTask);
  const off = ({ codes, found }: Chosen): number => {
    const field = fieldOf(level, { ...rulesOf(work, found.overlapLab, 1), blacksAlike: false });
    return expectedCost(registerRoom(field, codes, sigmaMm / level.mmPerPx));
  };
  const inRegister = errorOf(work, plain.codes, rulesOf(work, plain.found.overlapLab, 1)),
    unaware = off(plain);
  const metres = lengthOf(work, plain.codes);
  const inks = await chooseInks(work, few, 0.3, sigmaMm, 1, 1, quietTask, () => undefined);
  // Masks that reckon with the register have shorter outlines of themselves: a cheaper knife brings them up to the same length.
  const tried: Chosen[] = [];
  for (const found of [inks.found, plain.found])
    for (const priceMm of [0.02, 0.1, 0.3, 1]) tried.push(await judged(work, found, priceMm, sigmaMm, 0, quietTask));
  const within = tried.filter((chosen) => lengthOf(work, chosen.codes) <= metres * 1.02);
  const aware = (within.length > 0 ? within : tried.slice(-1)).reduce((best, chosen) => (off(chosen) < off(best) ? chosen : best));
  return {
    inRegister,
    unaware,
    aware: off(aware),
    together: offTogether(work, plain, sigmaMm),
    metres: [metres, lengthOf(work, aware.codes)],
    removed: (unaware - off(aware)) / (unaware - inRegister),
  };
}

/** Mean ΔE00 when the whole print is shifted by N(0, σ), layers in register with each other. */
function offTogether(work: Work, { codes, found }: Chosen, sigmaMm: number): number {
  const level = work.levels[0],
    { table, codeCount, binOf } = fieldOf(level, { ...rulesOf(work, found.overlapLab, 1), blacksAlike: false });
  const taps = gaussTaps(sigmaMm / level.mmPerPx),
    plane = new Float32Array(codes.length),
    share = plane.slice();
  let sum = 0;
  for (let code = 0; code < codeCount; code++) {
    for (let i = 0; i < codes.length; i++) plane[i] = codes[i] === code ? 1 : 0;
    blurPlane(plane, level.width, level.height, taps, share);
    for (let i = 0; i < codes.length; i++) sum += share[i] * table[binOf[i] * codeCount + code];
  }
  return sum / codes.length;
}
