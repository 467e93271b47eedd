import { emptyRegion, rasterizeInto, type Box, type Region } from '../../form/index.ts';
import type { CostRaster } from '../../stencil/index.ts';
import type { Task } from '../../task.ts';
import { say } from '../../../words/say.ts';
import { rulesOf, type Chosen } from '../search/judge.ts';
import type { Hands, StencilErrand } from '../search/errand.ts';
import type { Field } from '../kernels/relax.ts';
import { energyOf, fieldOf, type MaskRules } from '../prepare/masks.ts';
import { onFaces } from './faces-on-print.ts';
import { cutRulesOf } from './cuttable.ts';
import { heldStencils, made, type Made } from './hold/held.ts';
import { closeSlits, slitCost, slitWatch } from './hold/close-slits.ts';
import { outlinesOf } from './outline.ts';
import { settleAroundBridges } from './hold/settle-bridges.ts';
import type { Work } from '../prepare/prepare.ts';
import type { SeparatedLayer, SeparateRequest } from '../types.ts';

export interface CutLayers {
  readonly layers: readonly SeparatedLayer[];
  /** The print as the stencils will make it. */
  readonly codes: Uint8Array;
}

/** What stays the same while stencils are made, made again and weighed against each other. */
interface Cutting {
  readonly request: SeparateRequest;
  readonly work: Work;
  readonly priceMm: number;
  readonly field: Field;
  /** Changed where an island is dropped, and where masks settle around bridges. */
  readonly planned: Uint8Array;
  /** One a run. */
  readonly bits: readonly number[];
  readonly faces: Uint8Array | undefined;
  readonly task: Task;
  readonly hands?: Hands;
}

/**
 * Outlines, stencils with their bridges, and the print they make.
 * @param quick without masks that settle again once bridges lie
 */
export async function cutLayers(
  request: SeparateRequest,
  work: Work,
  chosen: Chosen,
  priceMm: number,
  task: Task,
  hands?: Hands,
  quick = false,
): Promise<CutLayers> {
  const { grid, printed, layers: all } = work;
  const cutting: Cutting = {
    request,
    work,
    priceMm,
    field: fieldOf(work.levels[0], rulesOf(work, chosen.found.overlapLab, 0)),
    planned: chosen.codes.slice(),
    bits: Array.from({ length: all - printed }, (_, run) => printed + run),
    faces: onFaces(request, grid),
    task,
    hands,
  };
  await task.pause();
  const first = request.cutPairs ? await made(errandsOf(cutting), task, hands) : await hold(cutting, cutting.bits),
    held = quick || request.cutPairs ? first : await settledAgain(cutting, first, rulesOf(work, chosen.found.overlapLab, priceMm));
  const layers: SeparatedLayer[] = [];
  for (const [run, bit] of cutting.bits.entries()) {
    await task.pause();
    const recipe = chosen.found.recipes[run],
      { stencil, shape, side } = held[run];
    layers.push({
      run,
      bit,
      wish: recipe.wish,
      parts: recipe.parts,
      mask: cutting.planned.map((code) => (code >> bit) & 1),
      region: shape,
      side,
      stencil,
      key: (request.key ?? false) && run === cutting.bits.length - 1,
    });
    task.report(0.85 + (0.1 * (bit + 1)) / all, say('separate.cutting'));
  }
  return { layers, codes: printsOf(cutting, held) };
}

/** One a run, of the masks as they are planned now. */
function errandsOf({ request, work, field, planned, bits, faces }: Cutting, bridged?: Uint8Array): StencilErrand[] {
  const { grid, printed } = work,
    image: Box = { minX: 0, minY: 0, maxX: request.sizeMm.width, maxY: request.sizeMm.height },
    margin = request.marginMm ?? 40,
    sheet: Box = { minX: -margin, minY: -margin, maxX: image.maxX + margin, maxY: image.maxY + margin },
    regions = outlinesOf(planned, grid.width, grid.height, grid.mmPerPx, work.layers).map((region) => fittedToImage(region, work, image));
  return bits.map((bit, run) => {
    const partner = request.cutPairs && run % 2 === 1;
    return {
      kind: 'stencil',
      request: {
        shape: regions[partner ? bit - 1 : bit] ?? emptyRegion,
        side: partner ? 'piece' : 'window',
        aperture: image,
        sheet,
        material: request.material,
        islands: 'bridge',
        cost: inkMissed(field, planned, bit, work, faces, bridged),
        rates: request.rates,
        place: say('where.run', { n: bit - printed + 1 }),
      },
    };
  });
}

/** @param bridged layers a bit each whose ink a bridge keeps away already: there it may lie again */
function hold(cutting: Cutting, some: readonly number[], bridged?: Uint8Array): Promise<Made[]> {
  const { work, planned, field, priceMm, bits, task, hands } = cutting;
  const errands = (): StencilErrand[] => errandsOf(cutting, bridged).filter((_, run) => some.includes(bits[run]));
  return heldStencils({ bits: some, planned, field, grid: work.grid, priceMm, errandsOf: errands }, task, hands);
}

function printsOf({ work, planned, bits }: Cutting, stencils: readonly Made[]): Uint8Array {
  const codes = planned.map((code) => code & ((1 << work.printed) - 1));
  for (const [run, bit] of bits.entries()) rasterizeInto(codes, bit, stencils[run].stencil.prints, work.grid);
  return codes;
}

/** The same with masks that settled around the bridges and without slits beside them, as long as the print, its knife paid for, is the better for it. */
async function settledAgain(cutting: Cutting, held: Made[], rules: MaskRules): Promise<Made[]> {
  const { request, work, planned, bits } = cutting,
    { mmPerPx, width, height } = work.grid,
    priced = fieldOf(work.levels[0], rules),
    open = bits.filter((bit) => !(work.frozen & (1 << bit))),
    cutRules = cutRulesOf(request, mmPerPx),
    lightness = Float32Array.from({ length: rules.overlapLab.length / 3 }, (_, code) => rules.overlapLab[3 * code]);
  const before = planned.slice(),
    codes = printsOf(cutting, held),
    watch = slitWatch(codes, width, height, lightness, work.target, mmPerPx),
    bridged = before.map((code, i) => code & ~codes[i]);
  const settled = settleAroundBridges(priced, planned, codes, open, cutRules, mmPerPx),
    // What they would print, were bridges to stay where they lie.
    foreseen = codes.map((code, i) => (code & work.frozen) | (planned[i] & ~work.frozen & ~bridged[i])),
    closed = closeSlits(priced, planned, foreseen, open, cutRules, watch, mmPerPx),
    changed = bits.filter((bit) => settled.includes(bit) || closed.includes(bit));
  if (changed.length === 0) return held;
  const fresh = await hold(cutting, changed, bridged),
    now = bits.map((bit, run) => (changed.includes(bit) ? fresh[changed.indexOf(bit)] : held[run])),
    cost = (of: Uint8Array): number => energyOf(priced, of, 1) + slitCost(watch, of);
  if (cost(printsOf(cutting, now)) < cost(codes)) return now;
  planned.set(before);
  return held;
}

/** Rows of pixels don't fill the image to the last hair: the outlines do. */
function fittedToImage(region: Region, { grid }: Work, image: Box): Region {
  const stretch = image.maxY / (grid.height * grid.mmPerPx);
  return { rings: region.rings.map((ring) => ring.map((v, i) => (i % 2 === 1 ? v * stretch : v))) };
}

/** A bridge across a face is seen before the face is. */
const faceSpared = 3;

/** What a bridge costs where one lies already, of the usual: the other masks have settled around it. */
const liesAlready = 0.1;

/** How much worse the print looks where this layer's ink is missing, the other layers being as they are: what a bridge costs. A line that nobody drew is seen in a quiet place too. */
function inkMissed(
  field: Field,
  codes: Uint8Array,
  bit: number,
  work: Work,
  faces: Uint8Array | undefined,
  bridged?: Uint8Array,
): CostRaster {
  const deltaE = new Float32Array(codes.length);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i];
    if (!((code >> bit) & 1)) continue;
    const row = field.binOf[i] * field.codeCount;
    deltaE[i] =
      Math.max(0, field.table[row + (code & ~(1 << bit))] - field.table[row + code]) *
      Math.max(1, field.weight?.[i] ?? 1) *
      (faces?.[i] ? faceSpared : 1) *
      (bridged && (bridged[i] >> bit) & 1 ? liesAlready : 1);
  }
  return { grid: work.grid, deltaE };
}
