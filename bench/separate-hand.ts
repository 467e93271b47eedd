import { mkdirSync, writeFileSync } from 'node:fs';
import { labFromSpectrum } from '../src/core/colour/index.ts';
import {
  findFaces,
  pictureRgb,
  separated,
  veilOf,
  type Picture,
  type SeparateRequest,
  type Separation,
} from '../src/core/separate/index.ts';
import { cutRulesOf, makeCuttable } from '../src/core/separate/finish/cuttable.ts';
import { differences, meanOf } from '../src/core/separate/finish/figures.ts';
import { cutLayers } from '../src/core/separate/finish/finish.ts';
import { pictureEdges, printEdges, structureOf, type Structure } from '../src/core/separate/finish/structure.ts';
import { fieldOf, solveMasks, type MaskRules } from '../src/core/separate/prepare/masks.ts';
import { prepareWork } from '../src/core/separate/prepare/prepare.ts';
import { fewTargets } from '../src/core/separate/prepare/targets.ts';
import { rgbOf } from '../src/core/separate/search/baseline.ts';
import { flatInks, opaqueLab, stackedCodes } from '../src/core/separate/search/flat-inks.ts';
import { quietTask } from '../src/core/task.ts';
import { rgbPng } from '../src/packet/index.ts';
import type { BenchRow } from './row.ts';
import { slitShare } from './separate-slits.ts';
import { requestFor } from './separate-trial.ts';

/** A bridge longer than this is seen as a line of its own, and must be broader than this many of the least. */
const longBridgeMm = 15,
  broadFrom = 1.4;
/** Prices are looked for until the rival's minutes are as near as this, or so often. */
const nearEnough = 0.04,
  mostLooks = 5;

interface Rival {
  readonly minutes: number;
  readonly meanDeltaE: number;
  /** The same by how much each place matters, which is what both sides were made for. */
  readonly weighedDeltaE: number;
  readonly structure: Structure;
  readonly codes: Uint8Array;
  readonly rgb: Uint8Array;
}

/** What is asked of the hand's pictures: as the Picture station asks, planned for σ = 0.5 mm. */
export function handRequest(picture: Picture, layers: number, more: Partial<SeparateRequest> = {}): SeparateRequest {
  return requestFor(picture, layers, {
    rasterMm: 0.25,
    mostInPot: 2,
    registerSigmaMm: 0.5,
    importance: veilOf(picture),
    faces: findFaces(picture),
    ...more,
  });
}

/**
 * What a hand would say of the stencils: corners a metre, minutes, long bridges; what the print keeps of the drawing; and all that beside as many flat
 * opaque inks of any colour, stacked light to dark, cut under the same rules in as many minutes. With BENCH_DRAW=FOLDER the picture, ours and
 * theirs are drawn side by side into it.
 */
export async function handRow(name: string, picture: Picture, layers: number, more: Partial<SeparateRequest> = {}): Promise<BenchRow> {
  const start = performance.now(),
    request = handRequest(picture, layers, more);
  const ours = await separated(request, quietTask),
    medianMs = performance.now() - start;
  const { figures } = ours,
    all = ours.layers.flatMap((run) => run.stencil.bridges),
    least = request.material.leastBridgeMm,
    long = all.filter(({ line }) => lengthOf(line) > longBridgeMm),
    thin = long.filter(({ widthMm }) => widthMm < broadFrom * least).length;
  const rivals = await rivalsAt(request, figures.minutes),
    rival = rivals[0],
    theirs = errorAt(rivals, figures.minutes, 'meanDeltaE'),
    oursWeighed = weighedMean(differences(ours.target, ours.codes, ours.overlapLab), prepareWork(request).levels[0].weight),
    theirsWeighed = errorAt(rivals, figures.minutes, 'weighedDeltaE');
  if (process.env.BENCH_DRAW) draw(process.env.BENCH_DRAW, `${name}-${layers}${more.way ? `-${more.way}` : ''}`, ours, rival);
  const corners = ours.layers.reduce((sum, run) => sum + run.stencil.knife.corners, 0);
  const edges = ({ kept, invented }: Structure): string => `${(100 * kept).toFixed(0)}, ${(100 * invented).toFixed(0)}`;
  return {
    name: `${name}, ${layers} runs by hand`,
    medianMs,
    note: [
      `${(corners / figures.knifeMetres).toFixed(0)} corners a metre on ${figures.knifeMetres.toFixed(1)} m`,
      `${figures.minutes.toFixed(0)} min`,
      `${long.length} of ${figures.bridges} bridges over ${longBridgeMm} mm, ${thin} of them thin`,
      `edges kept, made up ${edges(figures.structure)} (stacked flat inks ${edges(rival.structure)})`,
      `slits ${(100 * slitShare(ours)).toFixed(2)} %`,
      `ΔE00 ${figures.inRegister.mean.toFixed(2)}, ÷ stacked flat inks in as many minutes ${(figures.inRegister.mean / theirs).toFixed(2)}, under the veil ${(oursWeighed / theirsWeighed).toFixed(2)}`,
    ].join('; '),
  };
}

/** Flat inks cut at several prices, the one nearest in minutes first. */
async function rivalsAt(request: SeparateRequest, minutes: number): Promise<Rival[]> {
  const found: Rival[] = [];
  let priceMm = 2;
  for (let look = 0; look < mostLooks; look++) {
    const one = await rivalAt(request, priceMm);
    found.push(one);
    if (Math.abs(one.minutes / minutes - 1) < nearEnough) break;
    const next = Math.max(0.05, priceMm * (one.minutes / minutes) ** 1.8);
    // They have only so much outline that can be cut.
    if (next < 0.1 && priceMm < 0.1) break;
    priceMm = next;
  }
  const off = (one: Rival): number => Math.abs(Math.log(one.minutes / minutes));
  return found.sort((a, b) => off(a) - off(b));
}

async function rivalAt(request: SeparateRequest, priceMm: number): Promise<Rival> {
  const work = prepareWork(request),
    { grid, levels, target, setup, layers } = work;
  const palette = flatInks(fewTargets(levels[0].bins).targets, labFromSpectrum(setup.paper), layers, 1, 20),
    overlapLab = opaqueLab(palette),
    rules: MaskRules = { layers, overlapLab, allowed: stackedCodes(layers), priceMm };
  const codes = solveMasks(levels, rules);
  makeCuttable(fieldOf(levels[0], rules), codes, cutRulesOf(request, grid.mmPerPx), false, 1, {
    sigmaPx: (request.registerSigmaMm ?? 0) / grid.mmPerPx,
    lightness: Float32Array.from({ length: overlapLab.length / 3 }, (_, code) => overlapLab[code * 3]),
  });
  const recipes = Array.from({ length: layers }, (_, wish) => ({ wish, parts: [] }));
  const cut = await cutLayers(request, work, { found: { recipes, overlapLab, score: 0 }, codes, objective: 0 }, priceMm, quietTask);
  const { width, height, mmPerPx } = grid;
  const off = differences(target, cut.codes, overlapLab);
  return {
    minutes: cut.layers.reduce((sum, layer) => sum + layer.stencil.knife.minutes, 0),
    meanDeltaE: meanOf(off),
    weighedDeltaE: weighedMean(off, levels[0].weight),
    structure: structureOf(pictureEdges(target, width, height, mmPerPx), printEdges(cut.codes, overlapLab, width, height, mmPerPx)),
    codes: cut.codes,
    rgb: rgbOf(overlapLab),
  };
}

/** The rival's error in so many minutes: between its two nearest looks, by logarithms; one look alone as it is. */
function errorAt([nearest, other]: readonly Rival[], minutes: number, error: 'meanDeltaE' | 'weighedDeltaE'): number {
  if (!other || Math.abs(nearest.minutes / minutes - 1) < nearEnough || nearest.minutes === other.minutes) return nearest[error];
  const t = Math.log(minutes / nearest.minutes) / Math.log(other.minutes / nearest.minutes);
  return nearest[error] + Math.max(-0.5, Math.min(1, t)) * (other[error] - nearest[error]);
}

function weighedMean(values: Float32Array, weight: Float32Array | undefined): number {
  if (!weight) return meanOf(values);
  let sum = 0,
    all = 0;
  for (let i = 0; i < values.length; i++) {
    sum += weight[i] * values[i];
    all += weight[i];
  }
  return sum / all;
}

function draw(folder: string, name: string, ours: Separation, rival: Rival): void {
  const { width, height, mmPerPx } = ours,
    gap = 10,
    across = 3 * width + 2 * gap,
    sheet = new Uint8Array(across * height * 3).fill(128);
  const coded = (codes: Uint8Array, rgb: Uint8Array): Uint8Array =>
    Uint8Array.from({ length: codes.length * 3 }, (_, i) => rgb[codes[Math.floor(i / 3)] * 3 + (i % 3)]);
  for (const [k, one] of [pictureRgb(ours.target), coded(ours.codes, ours.rgb), coded(rival.codes, rival.rgb)].entries())
    for (let y = 0; y < height; y++) sheet.set(one.subarray(y * width * 3, (y + 1) * width * 3), (y * across + k * (width + gap)) * 3);
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}/${name}.png`, rgbPng(across, height, sheet, mmPerPx));
}

function lengthOf(line: readonly number[]): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) sum += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]);
  return sum;
}
