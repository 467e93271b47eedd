import { deltaE00, type Lab } from '../../../colour/index.ts';
import { common, rectangle, takeAway, type Box, type Region } from '../../../form/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import { layerCodes, proofGrid, type Codes } from '../../../print/index.ts';
import { writeCut, type CutLines, type WrittenCut } from '../../../cutfile/index.ts';
import { fail, ProblemError, type Problem } from '../../../problem.ts';
import {
  defaultMaterials,
  knifeRates,
  makeStencil,
  needsBridges,
  type CostRaster,
  type KnifeRates,
  type Material,
  type Stencil,
  type StencilRequest,
} from '../../../stencil/index.ts';
import { islandNotes, isMended, mendsOf, withCosts } from './costs.ts';
import { pick, type Memory } from '../../memory.ts';
import { offerNotes, offersFor, pricedOffers } from './offers.ts';
import { asWritten, say } from '../../../../words/say.ts';

export interface MadeStencil {
  readonly stencil: Stencil | null;
  readonly problems: readonly Problem[];
}

/** A layer with its stencil and its bit in the codes. */
export interface CutLayer {
  readonly layer: JobLayer;
  readonly stencil: Stencil;
  readonly written: WrittenCut;
  readonly bit: number;
}

/** Where a layer stands in the Job. */
const placeOf = (layer: Pick<JobLayer, 'id'>): string => `layers[#${layer.id}]`;

/** The studio's materials, or the usual ones when the job names none. */
export function materialsOf(job: Pick<Job, 'materials'>): readonly Material[] {
  if (job.materials.length === 0) return defaultMaterials;
  return job.materials.map((m) => ({
    ...m,
    name: asWritten(m.name),
    prints: m.prints ?? defaultMaterials.find((d) => d.id === m.id)?.prints ?? [2, 6],
  }));
}

export function materialOf(materials: readonly Material[], id: string | undefined): Material {
  return materials.find((m) => m.id === id) ?? materials[0];
}

/** Width that the machine takes away along each line in this material; 0 for a knife. */
export function kerfOf(job: Pick<Job, 'materials'>, materialId: string): number {
  return job.materials.find((m) => m.id === materialId)?.kerfMm ?? 0;
}

/** What a cut is cut from. */
export function materialFor(job: Pick<Job, 'materials' | 'cuts'>, cutId: string): ReturnType<typeof materialOf> {
  return materialOf(materialsOf(job), job.cuts.find((c) => c.id === cutId)?.material);
}

export function imageBox(job: Pick<Job, 'image'>): Box {
  return { minX: 0, minY: 0, maxX: job.image.widthMm, maxY: job.image.heightMm };
}

/** Where a layer's ink would pass if every island floated in its place: the drawing's own intent. */
export function idealPrints(cut: Region, side: JobLayer['side'], image: Job['image']): Region {
  const whole = rectangle(0, 0, image.widthMm, image.heightMm);
  return side === 'window' ? common(cut, whole) : takeAway(whole, cut);
}

/** Pieces are loose by nature; a window's islands are bridged unless the printmaker says otherwise. */
function islandsOf(layer: Pick<JobLayer, 'islands' | 'side'>): 'bridge' | 'loose' | 'drop' {
  return layer.islands ?? (layer.side === 'window' ? 'bridge' : 'loose');
}

/** How fast this studio cuts. */
export const ratesOf = ({ knife }: Pick<Job, 'knife'>): KnifeRates => knifeRates(knife);

/** What a stencil is made from. A layer's name, ink and strength are none of it. */
export interface StencilReads {
  readonly job: Pick<Job, 'image' | 'stencilMarginMm' | 'knife'>;
  readonly layer: Pick<JobLayer, 'id' | 'side' | 'islands' | 'pinnedBridges' | 'noBridge' | 'closings' | 'drops'>;
  readonly cut: Region;
  /** The sheet's own size; left out: the image and the job's margin. */
  readonly sheetMm?: readonly [number, number];
  readonly material: Material;
}

/** A layer's cut and side → the sheet that lies under the screen. */
export function stencilOf(reads: StencilReads, cost?: CostRaster): MadeStencil {
  try {
    const stencil = makeStencil(requestOf(reads, cost));
    return { stencil, problems: stencil.problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { stencil: null, problems: error.problems };
  }
}

/** What is asked of the stencil room for a layer. */
function requestOf({ job, layer, cut, material, sheetMm }: StencilReads, cost?: CostRaster): StencilRequest {
  const image = imageBox(job);
  const usual = Math.max(job.stencilMarginMm, 5);
  const [marginX, marginY] = sheetMm
    ? [Math.max(5, (sheetMm[0] - job.image.widthMm) / 2), Math.max(5, (sheetMm[1] - job.image.heightMm) / 2)]
    : [usual, usual];
  return {
    shape: cut,
    side: layer.side,
    aperture: image,
    sheet: { minX: image.minX - marginX, minY: image.minY - marginY, maxX: image.maxX + marginX, maxY: image.maxY + marginY },
    material,
    islands: islandsOf(layer),
    pins: layer.pinnedBridges,
    forbidden: layer.noBridge,
    closings: layer.closings,
    drops: layer.drops,
    cost,
    place: placeOf(layer),
    rates: ratesOf(job),
  };
}

/** Does it fail in a way that closing, size or material may mend? */
const needsWayOut = (stencil: Stencil): boolean =>
  !stencil.certificate.holds ||
  stencil.problems.some((p) => p.code === 'stencil-much-lost') ||
  (stencil.prints.rings.length === 0 && stencil.problems.some((p) => p.code === 'stencil-closed'));

/** The lines that may be cut. The one rule: what was not proven as written is not written, by whatever way it is asked for. */
export function linesToCut(layer: { readonly id: string; readonly stencil: Stencil; readonly written: WrittenCut }): CutLines {
  const { machine, problems } = layer.written;
  if (machine) return machine;
  if (problems.length > 0) throw new ProblemError(problems);
  return fail('stencil-does-not-hold', placeOf(layer), say('stencil.notCutAsItIs'), say('stencil.takeAnOffer'));
}

/** A layer's stencil as it is written, remembered. */
export function writtenCut(job: Pick<Job, 'materials'>, layer: JobLayer, stencil: Stencil, material: Material, memory: Memory): WrittenCut {
  const kerfMm = kerfOf(job, material.id);
  const reads = {
    ...pick(stencil, 'cutLines', 'sheet', 'loosePieces'),
    proof: stencil.certificate,
    material,
    kerfMm,
    place: `${placeOf(layer)}.cut`,
  };
  return memory.part(`written ${layer.id}`, reads, writeAll);
}

type WriteReads = Omit<Parameters<typeof writeCut>[0], 'certificate'> & { readonly proof: Stencil['certificate'] };

const writeAll = ({ proof, ...lines }: WriteReads): WrittenCut => writeCut({ ...lines, certificate: proof });

/** Colours of all overlaps by code, on one paper: Lab triples, and which bits print. */
export interface CodeColours {
  readonly labOfCode: Float64Array;
}

const costMmPerPx = 0.25;

/**
 * How much worse the print would look where a layer's ink is missing, ΔE00 in whole steps (so that a small change of a
 * strength moves no bridge), mean over the papers.
 */
export function costTable(bit: number, papers: readonly CodeColours[]): Float32Array {
  const table = new Float32Array(256);
  for (let code = 0; code < 256; code++) {
    if (!(code & (1 << bit))) continue;
    let sum = 0;
    for (const { labOfCode } of papers) sum += deltaE00(labAt(labOfCode, code), labAt(labOfCode, code & ~(1 << bit)));
    table[code] = papers.length > 0 ? Math.round(sum / papers.length) : 0;
  }
  return table;
}

/** How much worse the print would look where a layer's ink is but should not be: the counterpart of `costTable`. */
export function extraTable(bit: number, papers: readonly CodeColours[]): Float32Array {
  const missing = costTable(bit, papers);
  return missing.map((_, code) => (code & (1 << bit) ? 0 : missing[code | (1 << bit)]));
}

function labAt(labOfCode: Float64Array, code: number): Lab {
  return [labOfCode[code * 3], labOfCode[code * 3 + 1], labOfCode[code * 3 + 2]];
}

/** Codes of the ideal prints at the knife's raster: what the cost of a bridge is read from. */
function idealCodes(image: Job['image'], layers: readonly { bit: number; prints: Region }[]): Codes {
  return layerCodes(layers, proofGrid(image.widthMm, image.heightMm, 25.4 / costMmPerPx));
}

function costRaster(codes: Codes, table: Float32Array): CostRaster {
  const deltaE = new Float32Array(codes.data.length);
  for (let i = 0; i < deltaE.length; i++) deltaE[i] = table[codes.data[i]];
  return { grid: { originXMm: 0, originYMm: 0, mmPerPx: codes.mmPerPx, width: codes.width, height: codes.height }, deltaE };
}

export interface StencilTask {
  readonly layer: JobLayer;
  readonly bit: number;
  readonly cut: Region;
  readonly material: Material;
  readonly sheetMm?: readonly [number, number];
}

/** What the stencils of a job have in common. */
interface Bench {
  readonly job: StencilReads['job'];
  readonly colours: readonly CodeColours[];
  readonly materials: readonly Material[];
  readonly memory: Memory;
  /** Codes of the print as drawn; made when somebody asks. */
  readonly ideal: () => Codes;
}

/** All stencils of a job, their bridges where they are shortest or least seen, with what they cost in the print. */
export function makeStencils(
  job: StencilReads['job'],
  tasks: readonly StencilTask[],
  colours: readonly CodeColours[],
  memory: Memory,
  materials: readonly Material[] = defaultMaterials,
): Map<string, MadeStencil> {
  const intent = tasks.map((t) => ({ bit: t.bit, side: t.layer.side, cut: t.cut }));
  const ideal = (): Codes => memory.part('ideal codes', { image: job.image, intent }, codesOfIntent);
  const bench = { job: pick(job, 'image', 'stencilMarginMm', 'knife'), colours, materials, memory, ideal };
  return new Map(tasks.map((task) => [task.layer.id, stencilOnBench(task, bench)]));
}

function stencilOnBench({ layer, bit, cut, material, sheetMm }: StencilTask, bench: Bench): MadeStencil {
  const { colours, memory, ideal } = bench;
  const reads = {
    job: bench.job,
    layer: pick(layer, 'id', 'side', 'islands', 'pinnedBridges', 'noBridge', 'closings', 'drops'),
    cut,
    material,
    ...(sheetMm ? { sheetMm } : {}),
  };
  const missing = [...costTable(bit, colours)];
  const inSight = layer.ink !== null && colours.length > 0;
  const leastSeen = inSight && layer.bridgesBy === 'least-seen';
  const bySight = (): MadeStencil => memory.part(`stencil by cost ${layer.id}`, { ...reads, codes: ideal(), missing }, seenStencil);
  // Where islands are sure to ask for bridges, these are looked for once, not first as if nobody saw them.
  const surely = leastSeen && memory.part(`needs bridges ${layer.id}`, reads, carriesIslands);
  const first = surely ? bySight() : memory.part(`stencil ${layer.id}`, reads, plainStencil);
  const offered = (one: MadeStencil, priced?: Pick<OfferReads, 'codes' | 'table' | 'more'>): MadeStencil =>
    one.stencil && needsWayOut(one.stencil)
      ? memory.part(`offers ${layer.id}`, { ...reads, materials: bench.materials, made: one, ...priced }, withOffers)
      : one;
  if (first.stencil && !inSight && isMended(first.stencil))
    return offered(memory.part(`mends ${layer.id}`, { chosen: first, layer: reads.layer, image: reads.job.image, cut }, unpricedStencil));
  if (!first.stencil || !inSight || !isSeen(first.stencil)) return offered(first);
  const chosen = leastSeen && !surely && first.stencil.bridges.length > 0 ? bySight() : first;
  const extra = [...extraTable(bit, colours)];
  const prices = { chosen, codes: ideal(), missing, extra, layer: reads.layer, image: reads.job.image, cut };
  return offered(memory.part(`costs ${layer.id}`, prices, pricedStencil), { codes: ideal(), table: missing, more: extra });
}

interface OfferReads extends StencilReads {
  readonly materials: readonly Material[];
  readonly made: MadeStencil;
  readonly codes?: Codes;
  /** ΔE by code where this layer's ink is missing, and where it prints in addition. */
  readonly table?: readonly number[];
  readonly more?: readonly number[];
}

/** A stencil that does not hold, with ways out and what each costs in the print. */
function withOffers({ materials, made, codes, table, more, ...reads }: OfferReads): MadeStencil {
  const stencil = made.stencil!;
  const found = offersFor(requestOf(reads), materials, stencil);
  const offers = codes && table && more ? pricedOffers(found, codes, Float32Array.from(table), Float32Array.from(more)) : found;
  const notes = offers.length > 0 ? offerNotes(offers, materials, placeOf(reads.layer)) : [];
  return { stencil: { ...stencil, offers }, problems: [...made.problems, ...notes] };
}

/** True where bridges, islands or mends make the print differ from the drawing. */
function isSeen(stencil: Stencil): boolean {
  return stencil.bridges.length + stencil.islands.length > 0 || isMended(stencil);
}

const plainStencil = (reads: StencilReads): MadeStencil => stencilOf(reads);

const carriesIslands = (reads: StencilReads): boolean => needsBridges(requestOf(reads));

interface Intent {
  readonly image: Job['image'];
  readonly intent: readonly { readonly bit: number; readonly side: JobLayer['side']; readonly cut: Region }[];
}

function codesOfIntent({ image, intent }: Intent): Codes {
  return idealCodes(
    image,
    intent.map((t) => ({ bit: t.bit, prints: idealPrints(t.cut, t.side, image) })),
  );
}

function seenStencil(reads: StencilReads & { readonly codes: Codes; readonly missing: readonly number[] }): MadeStencil {
  return stencilOf(reads, costRaster(reads.codes, Float32Array.from(reads.missing)));
}

interface PriceReads extends Pick<StencilReads, 'layer' | 'cut'> {
  readonly chosen: MadeStencil;
  readonly codes: Codes;
  readonly missing: readonly number[];
  readonly extra: readonly number[];
  readonly image: Job['image'];
}

/** The same stencil with what mending changed, while it has no ink that could tell what that costs. */
function unpricedStencil({ chosen, layer, image, cut }: Pick<PriceReads, 'chosen' | 'layer' | 'image' | 'cut'>): MadeStencil {
  const stencil = chosen.stencil!;
  return { ...chosen, stencil: { ...stencil, mends: mendsOf(stencil, idealPrints(cut, layer.side, image)) } };
}

/** The same stencil with what each bridge, island and mended place costs in the print. */
function pricedStencil({ chosen, codes, missing, extra, layer, image, cut }: PriceReads): MadeStencil {
  const [lost, gained] = [Float32Array.from(missing), Float32Array.from(extra)];
  const costed = chosen.stencil && withCosts(chosen.stencil, codes, lost, gained);
  const priced =
    costed && isMended(costed)
      ? { ...costed, mends: mendsOf(costed, idealPrints(cut, layer.side, image), { codes, missing: lost, extra: gained }) }
      : costed;
  return { stencil: priced, problems: [...chosen.problems, ...(priced ? islandNotes(priced, placeOf(layer)) : [])] };
}
