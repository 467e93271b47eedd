import { quietTask, type Task } from '../task.ts';
import { checkRequest } from './prepare/request.ts';
import { rgbOf } from './search/baseline.ts';
import { judged } from './search/judge.ts';
import { bestOfPool, firstInks, inkPool } from './search/search.ts';
import { quickly } from './search/moves.ts';
import { cutWithin, metresCut, minutesCut } from './finish/budget.ts';
import { differences, meanOf } from './finish/figures.ts';
import { pictureEdges, printEdges, structureOf, type Structure } from './finish/structure.ts';
import { prepareWork, withMatters } from './prepare/prepare.ts';
import { fewTargets } from './prepare/targets.ts';
import { usualPrice, ways, type Way } from './prepare/way.ts';
import type { SeparateRequest } from './types.ts';

/** One way to take a picture, drawn small. */
export interface WayLook {
  readonly way: Way;
  readonly width: number;
  readonly height: number;
  readonly codes: Uint8Array;
  /** Colour of each code on a screen, sRGB bytes, 3 a code. */
  readonly rgb: Uint8Array;
  readonly metres: number;
  readonly minutes: number;
  readonly structure: Structure;
  readonly meanDeltaE: number;
}

/** Fine enough for what the knife is asked for to come out within a fifth, coarse enough to be there soon. */
const lookPixels = 110_000,
  finestMm = 0.4,
  starts = 4,
  kicks = 12;

/** The ways that this request can be taken, one after the other, each cut for what it asks of the knife. Not searched for long: what is made of it comes out nearer. */
export async function* lookAtWays(asked: SeparateRequest, task: Task): AsyncGenerator<WayLook, void> {
  const request = withMatters(asked);
  for (const way of ways) if (!(request.cutPairs && way === 'light')) yield await lookAt({ ...request, way }, task);
}

async function lookAt(asked: SeparateRequest, task: Task): Promise<WayLook> {
  const { width, height } = asked.sizeMm,
    way = asked.way ?? 'near';
  const request: SeparateRequest = { ...asked, rasterMm: Math.max(finestMm, Math.sqrt((width * height) / lookPixels)) };
  checkRequest(request);
  await task.pause();
  const work = prepareWork(request),
    seed = request.seed ?? 1,
    priceMm = request.knife?.priceMm ?? usualPrice[way];
  const { targets } = fewTargets(work.levels[work.levels.length - 1].bins, 48);
  const first = await firstInks(work.setup, targets, seed, quietTask);
  await task.pause();
  const pool = await inkPool(quickly(work.setup), targets, seed, starts, kicks, task, [first.recipes]);
  const found = await bestOfPool(work.setup, targets, pool.slice(0, 2), task);
  const chosen = await judged(work, found, priceMm, 0, 0, task);
  const { cut } = await cutWithin(request, work, chosen, priceMm, 'look', task);
  const { grid, target } = work;
  return {
    way,
    width: grid.width,
    height: grid.height,
    codes: cut.codes,
    rgb: rgbOf(found.overlapLab),
    metres: metresCut(request, cut),
    minutes: minutesCut(request, cut),
    structure: structureOf(
      pictureEdges(target, grid.width, grid.height, grid.mmPerPx),
      printEdges(cut.codes, found.overlapLab, grid.width, grid.height, grid.mmPerPx),
    ),
    meanDeltaE: meanOf(differences(target, cut.codes, found.overlapLab)),
  };
}
