import { deltaE00, type Lab } from '../../colour/index.ts';
import { common, rectangle, regionBox, takeAway, type Box, type Region } from '../../form/index.ts';
import type { Job, JobLayer } from '../../job/index.ts';
import { layerCodes, proofGrid, type Codes } from '../../print/index.ts';
import { fail, ProblemError, type Problem } from '../../problem.ts';
import {
  defaultMaterials,
  knifeRates,
  makeStencil,
  type CostRaster,
  type KnifeRates,
  type Material,
  type Stencil,
  type StencilRequest,
} from '../../stencil/index.ts';
import { islandNotes, isMended, mendsOf, withCosts } from './costs.ts';
import type { Memory } from '../memory.ts';
import { offerNotes, offersFor, pricedOffers } from './offers.ts';
import { asWritten, say } from '../../../words/say.ts';

export interface MadeStencil {
  readonly stencil: Stencil | null;
  readonly problems: readonly Problem[];
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

export function imageBox(job: Pick<Job, 'image'>): Box {
  return { minX: 0, minY: 0, maxX: job.image.widthMm, maxY: job.image.heightMm };
}

/** Where a layer's ink would pass if every island floated in its place: the drawing's own intent. */
export function idealPrints(cut: Region, side: JobLayer['side'], image: Job['image']): Region {
  const whole = rectangle(0, 0, image.widthMm, image.heightMm);
  return side === 'window' ? common(cut, whole) : takeAway(whole, cut);
}

/** Pieces are loose by nature; a window's islands are bridged unless the printmaker says otherwise. */
export function islandsOf(layer: Pick<JobLayer, 'islands' | 'side'>): 'bridge' | 'loose' | 'drop' {
  return layer.islands ?? (layer.side === 'window' ? 'bridge' : 'loose');
}

/** How fast this studio cuts. */
export const ratesOf = ({ knife }: Pick<Job, 'knife'>): KnifeRates => knifeRates(knife);

/** A layer's cut and side → the sheet that lies under the screen. */
export function stencilOf(
  job: Pick<Job, 'image' | 'stencilMarginMm' | 'knife'>,
  layer: JobLayer,
  cut: Region,
  material: Material,
  cost: CostRaster | undefined,
): MadeStencil {
  try {
    const stencil = makeStencil(requestOf(job, layer, cut, material, cost));
    return { stencil, problems: stencil.problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { stencil: null, problems: error.problems };
  }
}

/** What is asked of the stencil room for a layer. */
function requestOf(
  job: Pick<Job, 'image' | 'stencilMarginMm' | 'knife'>,
  layer: JobLayer,
  cut: Region,
  material: Material,
  cost: CostRaster | undefined,
): StencilRequest {
  const margin = Math.max(job.stencilMarginMm, 5);
  const image = imageBox(job);
  return {
    shape: cut,
    side: layer.side,
    aperture: image,
    sheet: { minX: image.minX - margin, minY: image.minY - margin, maxX: image.maxX + margin, maxY: image.maxY + margin },
    material,
    islands: islandsOf(layer),
    pins: layer.pinnedBridges,
    forbidden: layer.noBridge,
    closings: layer.closings?.map((c) => c.atMm),
    cost,
    place: placeOf(layer),
    rates: ratesOf(job),
  };
}

/** Does it fail in a way that closing, size or material may mend? */
const needsWayOut = (stencil: Stencil): boolean =>
  !stencil.certificate.holds || (stencil.prints.rings.length === 0 && stencil.problems.some((p) => p.code === 'stencil-closed'));

/** The one rule of what may be cut: a stencil that was not proven is not written, by whatever way it is asked for. */
export function mustHold(layer: { readonly id: string; readonly stencil: Stencil }): void {
  if (!layer.stencil.certificate.holds)
    fail('stencil-does-not-hold', placeOf(layer), say('stencil.notCutAsItIs'), say('stencil.takeAnOffer'));
}

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
export function idealCodes(image: Job['image'], layers: readonly { bit: number; prints: Region }[]): Codes {
  return layerCodes(layers, proofGrid(image.widthMm, image.heightMm, 25.4 / costMmPerPx));
}

export function costRaster(codes: Codes, table: Float32Array): CostRaster {
  const deltaE = new Float32Array(codes.data.length);
  for (let i = 0; i < deltaE.length; i++) deltaE[i] = table[codes.data[i]];
  return { grid: { originXMm: 0, originYMm: 0, mmPerPx: codes.mmPerPx, width: codes.width, height: codes.height }, deltaE };
}

export interface StencilTask {
  readonly layer: JobLayer;
  readonly bit: number;
  readonly cut: Region;
  readonly material: Material;
}

/** All stencils of a job: by shortest bridges first; where there are bridges, again by what they cost in the print. */
export function makeStencils(
  job: Pick<Job, 'image' | 'stencilMarginMm' | 'knife'>,
  tasks: readonly StencilTask[],
  colours: readonly CodeColours[],
  memory: Memory,
  materials: readonly Material[] = defaultMaterials,
): Map<string, MadeStencil> {
  const geometry = { image: job.image, stencilMarginMm: job.stencilMarginMm, knife: job.knife };
  const made = new Map<string, MadeStencil>();
  const reads = ({ layer, cut, material }: StencilTask): unknown[] => [
    geometry,
    layer.side,
    layer.islands,
    layer.pinnedBridges,
    layer.noBridge,
    layer.closings,
    cut,
    material,
  ];
  let ideal: Codes | undefined;
  for (const task of tasks) {
    const { layer, bit, cut, material } = task;
    const offered = ({ stencil: made, problems }: MadeStencil): MadeStencil => {
      if (!made || !needsWayOut(made)) return { stencil: made, problems };
      return memory.part(`offers ${layer.id}`, [...reads(task), materials, made], () => ({
        stencil: { ...made, offers: offersFor(requestOf(geometry, layer, cut, material, undefined), materials, made) },
        problems,
      }));
    };
    const plain = memory.part(`stencil ${layer.id}`, reads(task), () => stencilOf(geometry, layer, cut, material, undefined));
    const { stencil } = plain;
    if (
      !stencil ||
      layer.ink === null ||
      colours.length === 0 ||
      (stencil.bridges.length + stencil.islands.length === 0 && !isMended(stencil))
    ) {
      made.set(layer.id, offered(plain));
      continue;
    }
    ideal ??= memory.part('ideal codes', [geometry, tasks.flatMap((t) => [t.layer.id, t.bit, t.layer.side, t.cut])], () =>
      idealCodes(
        job.image,
        tasks.map((t) => ({ bit: t.bit, prints: idealPrints(t.cut, t.layer.side, job.image) })),
      ),
    );
    const codes = ideal;
    const table = costTable(bit, colours);
    const chosen =
      layer.bridgesBy === 'least-seen' && stencil.bridges.length > 0
        ? memory.part(`stencil by cost ${layer.id}`, [...reads(task), codes, [...table]], () =>
            stencilOf(geometry, layer, cut, material, costRaster(codes, table)),
          )
        : plain;
    made.set(
      layer.id,
      memory.part(`costs ${layer.id}`, [chosen, codes, [...table]], () => {
        const extra = extraTable(bit, colours);
        const costed = chosen.stencil && withCosts(chosen.stencil, codes, table, extra);
        const priced =
          costed && isMended(costed)
            ? { ...costed, mends: mendsOf(costed, idealPrints(cut, layer.side, job.image), codes, table, extra) }
            : costed;
        return { stencil: priced, problems: [...chosen.problems, ...(priced ? islandNotes(priced, placeOf(layer)) : [])] };
      }),
    );
    const costed = made.get(layer.id) as MadeStencil;
    if (!costed.stencil || !needsWayOut(costed.stencil)) continue;
    const { stencil: shown, problems } = offered(costed);
    made.set(layer.id, {
      stencil: shown && { ...shown, offers: pricedOffers(shown.offers ?? [], codes, table) },
      problems,
    });
  }
  for (const { layer } of tasks) {
    const one = made.get(layer.id);
    const offers = one?.stencil?.offers;
    if (one && offers && offers.length > 0)
      made.set(layer.id, { ...one, problems: [...one.problems, ...offerNotes(offers, materials, placeOf(layer))] });
  }
  return made;
}

/** A cut that lies wholly inside the image needs no clipping note; one that doesn't is clipped by the tape. */
export function cutIsClipped(cut: Region, image: Job['image']): boolean {
  const box = regionBox(cut);
  return box.minX < 0 || box.minY < 0 || box.maxX > image.widthMm || box.maxY > image.heightMm;
}
