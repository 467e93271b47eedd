import type { Task } from '../../task.ts';
import { judged, rulesOf, type Chosen } from '../search/judge.ts';
import type { Hands } from '../search/errand.ts';
import { fieldOf } from '../prepare/masks.ts';
import { broadestBrush } from '../prepare/key.ts';
import { withBrush, type Work } from '../prepare/prepare.ts';
import type { SeparateRequest } from '../types.ts';
import { cutRulesOf, makeCuttable } from './cuttable.ts';
import type { Field } from '../kernels/relax.ts';
import { withoutNeedless } from './drawn/needless.ts';
import { steadyLines } from './drawn/steady-lines.ts';
import { cutLayers, type CutLayers } from './finish.ts';

/** A budget is kept when it is exceeded by no more than this. */
const within = 1.03;
const mostTurns = 6,
  dearest = 3000;

export interface CutWithin {
  readonly cut: CutLayers;
  /** The masks before they were cut. */
  readonly wanted: Uint8Array;
  readonly priceMm: number;
}

/**
 * Masks made cuttable and cut; as long as that asks for more than the budget allows, again with a dearer knife, and the key with a broader brush
 * where it asks for more than its share.
 * @param care 'stopped': once, whatever it asks for; 'look': once and without going over the layers again
 */
export async function cutWithin(
  request: SeparateRequest,
  prepared: Work,
  from: Chosen,
  fromPrice: number,
  care: 'usual' | 'stopped' | 'look',
  task: Task,
  hands?: Hands,
): Promise<CutWithin> {
  const { grid } = prepared,
    { overlapLab } = from.found,
    sigmaMm = care === 'look' ? 0 : (request.registerSigmaMm ?? 0);
  const rules = cutRulesOf(request, grid.mmPerPx);
  let chosen = from,
    work = prepared,
    priceMm = fromPrice;
  for (let turn = 0; ; turn++) {
    const wanted = chosen.codes,
      codes = wanted.slice();
    const field = fieldOf(work.levels[0], rulesOf(work, overlapLab, priceMm));
    // Lines hold a drawing: areas give way before them.
    if (work.lines) steadyLines(work.lines, dearerBy(field, Math.sqrt(fromPrice / priceMm)), codes, work.setup.codes);
    makeCuttable(field, codes, rules, request.cutPairs ?? false, care === 'usual' ? 1 : 0, {
      sigmaPx: sigmaMm / grid.mmPerPx,
      lightness: lightnessOf(overlapLab),
      held: work.lines?.lineOf,
    });
    if (work.lines) withoutNeedless(field, codes, work.frozen);
    const cut = await cutLayers(request, work, { ...chosen, codes }, priceMm, task, hands, care !== 'usual');
    const over = care === 'stopped' ? 1 : overBudget(request, cut);
    if (over <= within || turn === mostTurns || priceMm > dearest) return { cut, wanted, priceMm };
    // A dearer knife means shorter outlines, fewer parts and less time; outlines give way slowly, hence the power.
    priceMm *= Math.max(1.6, Math.min(8, over ** 4));
    if (keyTakesMore(cut)) work = withBrush(request, work, Math.min(broadestBrush, work.brush * Math.max(1.15, Math.min(1.6, over))));
    chosen = await judged(work, chosen.found, priceMm, sigmaMm, 0, task);
  }
}

const dearerBy = (field: Field, times: number): Field => ({ ...field, price: field.price.map((price) => price * times) });

/** Whether the key asks for more than a run's share of the knife. */
function keyTakesMore({ layers }: CutLayers): boolean {
  const minutes = layers.map((layer) => layer.stencil.knife.minutes);
  return layers.some((layer, i) => layer.key && minutes[i] * layers.length > minutes.reduce((a, b) => a + b, 0));
}

const lightnessOf = (overlapLab: Float64Array): Float32Array =>
  Float32Array.from({ length: overlapLab.length / 3 }, (_, code) => overlapLab[code * 3]);

/** Window and piece of one cut are cut once. */
function cutOnce(request: SeparateRequest, cut: CutLayers): CutLayers['layers'] {
  return request.cutPairs ? cut.layers.filter((_, i) => i % 2 === 0) : cut.layers;
}

export function metresCut(request: SeparateRequest, cut: CutLayers): number {
  return cutOnce(request, cut).reduce((sum, layer) => sum + layer.stencil.knife.metres, 0);
}

export function minutesCut(request: SeparateRequest, cut: CutLayers): number {
  return cutOnce(request, cut).reduce((sum, layer) => sum + layer.stencil.knife.minutes, 0);
}

/** By how much the dearest of the budgets is exceeded; 1 when all hold. */
export function overBudget(request: SeparateRequest, cut: CutLayers): number {
  const { metres, pieces, minutes } = request.knife ?? {};
  return Math.max(
    metres ? metresCut(request, cut) / metres : 0,
    minutes ? minutesCut(request, cut) / minutes : 0,
    pieces ? piecesCut(request, cut) / pieces : 0,
    1,
  );
}

export function piecesCut(request: SeparateRequest, cut: CutLayers): number {
  return cutOnce(request, cut).reduce((sum, layer) => sum + layer.stencil.knife.pieces, 0);
}
