import { emptyRegion, rasterizeInto, type Box, type Region } from '../../form/index.ts';
import type { CostRaster } from '../../stencil/index.ts';
import type { Task } from '../../task.ts';
import { say } from '../../../words/say.ts';
import type { Chosen } from '../search/choose-inks.ts';
import { rulesOf } from '../search/choose-inks.ts';
import type { Hands, StencilErrand } from '../search/errand.ts';
import type { Field } from '../kernels/relax.ts';
import { fieldOf } from '../prepare/masks.ts';
import { heldStencils, made } from './held.ts';
import { outlinesOf } from './outline.ts';
import type { Work } from '../prepare/prepare.ts';
import type { SeparatedLayer, SeparateRequest } from '../types.ts';

export interface CutLayers {
  readonly layers: readonly SeparatedLayer[];
  /** The print as the stencils will make it. */
  readonly codes: Uint8Array;
}

/** Outlines, stencils with their bridges, and the print they make. */
export async function cutLayers(
  request: SeparateRequest,
  work: Work,
  chosen: Chosen,
  priceMm: number,
  task: Task,
  hands?: Hands,
): Promise<CutLayers> {
  const { grid, printed, layers: all } = work;
  const image: Box = { minX: 0, minY: 0, maxX: request.sizeMm.width, maxY: request.sizeMm.height };
  const margin = request.marginMm ?? 40;
  const sheet: Box = { minX: -margin, minY: -margin, maxX: image.maxX + margin, maxY: image.maxY + margin };
  const planned = chosen.codes.slice();
  const outlines = (): Region[] =>
    outlinesOf(planned, grid.width, grid.height, grid.mmPerPx, all).map((region) => fittedToImage(region, work, image));
  const field = fieldOf(work.levels[0], rulesOf(work, chosen.found.overlapLab, 0));
  const bits = Array.from({ length: all - printed }, (_, run) => printed + run);
  const errandsOf = (regions: readonly Region[]): StencilErrand[] =>
    bits.map((bit, run) => {
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
          cost: inkMissed(field, planned, bit, work),
          rates: request.rates,
          place: say('where.run', { n: bit - printed + 1 }),
        },
      };
    });
  await task.pause();
  const held = request.cutPairs
    ? await made(errandsOf(outlines()), task, hands)
    : await heldStencils({ bits, planned, field, grid, priceMm, errandsOf: () => errandsOf(outlines()) }, task, hands);
  const codes = planned.map((code) => code & ((1 << printed) - 1));
  const layers: SeparatedLayer[] = [];
  for (const [run, bit] of bits.entries()) {
    await task.pause();
    const recipe = chosen.found.recipes[run],
      { stencil, shape, side } = held[run];
    rasterizeInto(codes, bit, stencil.prints, grid);
    layers.push({
      run,
      bit,
      wish: recipe.wish,
      parts: recipe.parts,
      mask: planned.map((code) => (code >> bit) & 1),
      region: shape,
      side,
      stencil,
      key: (request.key ?? false) && run === bits.length - 1,
    });
    task.report(0.85 + (0.1 * (bit + 1)) / all, say('separate.cutting'));
  }
  return { layers, codes };
}

/** Rows of pixels don't fill the image to the last hair: the outlines do. */
function fittedToImage(region: Region, { grid }: Work, image: Box): Region {
  const stretch = image.maxY / (grid.height * grid.mmPerPx);
  return { rings: region.rings.map((ring) => ring.map((v, i) => (i % 2 === 1 ? v * stretch : v))) };
}

/** How much worse the print looks where this layer's ink is missing, the other layers being as they are: what a bridge costs. A line that nobody drew is seen in a quiet place too. */
function inkMissed(field: Field, codes: Uint8Array, bit: number, work: Work): CostRaster {
  const deltaE = new Float32Array(codes.length);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i];
    if (!((code >> bit) & 1)) continue;
    const row = field.binOf[i] * field.codeCount;
    deltaE[i] = Math.max(0, field.table[row + (code & ~(1 << bit))] - field.table[row + code]) * Math.max(1, field.weight?.[i] ?? 1);
  }
  return { grid: work.grid, deltaE };
}
