import { problem, type Problem } from '../problem.ts';
import { Cancelled, quietTask, type Task } from '../task.ts';
import { length, say, share as asShare, time } from '../../words/say.ts';
import { labFromSpectrum } from '../colour/index.ts';
import { rgbOf } from './search/baseline.ts';
import { curveOf, laidThrough, priceFor, type TradeOffPoint } from './prepare/budget.ts';
import { chooseInks } from './search/choose-inks.ts';
import { judged, judgedOn, refitted, rulesOf, type Chosen } from './search/judge.ts';
import { askedOf, type Hands } from './search/errand.ts';
import { cutRulesOf, makeCuttable } from './finish/cuttable.ts';
import { cutWithin, metresCut, minutesCut, overBudget, piecesCut } from './finish/budget.ts';
import type { FlatPlan } from './search/baseline.ts';
import type { CutLayers } from './finish/finish.ts';
import { differences, figuresOf, meanOf, metresOf } from './finish/figures.ts';
import { lostDetails, type LostDetail, type LostPart } from './finish/readable.ts';
import { metBy, pictureEdges, printEdges } from './finish/structure.ts';
import { binColours } from './prepare/bins.ts';
import { fieldOf, type Level } from './prepare/masks.ts';
import { dotsOnPrint, partsOnPrint } from './finish/faces-on-print.ts';
import { prepareWork, sketchWork, withMatters, type Work } from './prepare/prepare.ts';
import { usualPrice } from './prepare/way.ts';
import { checkRequest, warnings } from './prepare/request.ts';
import { firstInks } from './search/search.ts';
import { fewTargets, type FewTargets } from './prepare/targets.ts';
import type { Draft, SeparatedLayer, SeparateRequest, Separation } from './types.ts';

/**
 * A picture as stencils, inks and their order. Yields drafts that get better, the first within a second on a usual picture, and
 * returns the separation. When the task is stopped, what there is by then is cut and returned (`stoppedEarly`).
 * Same request, same seed, same result.
 * @param hands other threads that take part in searching, cutting and comparing; the result is the same without them
 * @throws ProblemError when the request makes no sense, with everything that is wrong
 */
export async function* separate(asked: SeparateRequest, task: Task, hands?: Hands): AsyncGenerator<Draft, Separation> {
  checkRequest(asked);
  task.report(0, say('separate.lookingAtPicture'));
  const rough = sketchWork(asked),
    coarsest = rough.levels.length - 1;
  const seed = asked.seed ?? 1,
    effort = asked.effort ?? 1,
    sigmaMm = asked.registerSigmaMm ?? 0;
  let priceMm = asked.knife?.priceMm ?? usualPrice[asked.way ?? 'near'];

  // The sketch is never interrupted: it is what a stop falls back on.
  const sketch = await firstInks(rough.setup, fewTargets(rough.levels[coarsest].bins, 48).targets, seed, quietTask);
  let best = await judged(rough, sketch, priceMm, 0, coarsest, quietTask);
  yield draftOf(rough, best, coarsest, 'sketch', 0.08);
  const request = withMatters(asked);
  if (asked.matters) checkRequest(request);
  const work = prepareWork(request),
    coarse = work.levels.length - 1;
  let bestLevel = coarse;
  const few = fewTargets(work.levels[0].bins);
  try {
    await chooseInks(
      work,
      few,
      priceMm,
      sigmaMm,
      seed,
      effort,
      task,
      (better) => {
        best = better;
        bestLevel = judgedOn(work);
      },
      hands,
    );
    yield draftOf(work, best, bestLevel, 'inks', 0.5);
    priceMm = await priceOfBudget(request, work, best, priceMm, task);
    const middle = Math.min(1, coarse);
    best = await refitted(work, few, await judged(work, best.found, priceMm, sigmaMm, middle, task), priceMm, sigmaMm, middle, task, 1);
    bestLevel = middle;
    yield draftOf(work, best, middle, 'masks', 0.6);
    await task.pause();
    // Inks stay as they are from here on.
    const beside = askedBeside(work, few, best, seed, task, hands);
    best = await judged(work, best.found, priceMm, sigmaMm, 0, task);
    bestLevel = 0;
    yield draftOf(work, best, 0, 'masks', 0.75);
    return yield* finished(request, work, best, priceMm, beside, false, task, hands);
  } catch (error) {
    if (!(error instanceof Cancelled)) throw error;
    // What there is by now is brought to the fine raster and cut; that takes a moment and is not asked to stop again.
    if (bestLevel > 0) best = await judged(work, best.found, priceMm, 0, 0, quietTask);
    return yield* finished(request, work, best, priceMm, askedBeside(work, few, best, seed, quietTask, hands), true, quietTask, hands);
  }
}

/** The price of knife length at which the budget of metres is met, as far as a coarse look tells. */
async function priceOfBudget(request: SeparateRequest, work: Work, best: Chosen, priceMm: number, task: Task): Promise<number> {
  const metres = request.knife?.metres;
  if (metres === undefined) return priceMm;
  await task.pause();
  const middle = judgedOn(work),
    level = work.levels[middle];
  const rules = cutRulesOf(request, level.mmPerPx);
  const curve = curveOf(work.levels, rulesOf(work, best.found.overlapLab, 1), middle).map(({ priceMm: price, codes }) => {
    makeCuttable(fieldOf(level, rulesOf(work, best.found.overlapLab, price)), codes, rules, request.cutPairs ?? false);
    return { priceMm: price, metres: metresOf(codes, level.width, level.height, work.layers, level.mmPerPx, work.layerPrice) };
  });
  const inside = metres - borderMetres(best.codes, work.levels[judgedOn(work)], work);
  return priceFor(Math.max(0.1 * metres, inside), curve);
}

/** What has to be cut along the image's border because ink runs off there. */
function borderMetres(codes: Uint8Array, { width, height, mmPerPx }: Level, work: Work): number {
  let pixels = 0;
  for (let i = 0; i < codes.length; i++) {
    const x = i % width,
      y = (i - x) / width;
    const sides = (x === 0 ? 1 : 0) + (y === 0 ? 1 : 0) + (x === width - 1 ? 1 : 0) + (y === height - 1 ? 1 : 0);
    if (sides > 0) for (let b = work.printed; b < work.layers; b++) if (codes[i] & (1 << b)) pixels += sides * work.layerPrice[b];
  }
  return (pixels * mmPerPx) / 1000;
}

/** What can be told as soon as the inks are settled: what more knife and less would make of them, and flat inks beside them. */
interface ToldBeside {
  readonly curve: () => Promise<readonly TradeOffPoint[]>;
  readonly flat: () => Promise<FlatPlan>;
}

function askedBeside(work: Work, few: FewTargets, { found }: Chosen, seed: number, task: Task, hands?: Hands): ToldBeside {
  const last = work.levels.length - 1,
    from = (level: number): readonly Level[] => work.levels.slice(Math.min(level, last)),
    paperLab = labFromSpectrum(work.setup.paper);
  return {
    curve: askedOf({ kind: 'trade-off', levels: from(1), rules: rulesOf(work, found.overlapLab, 1) }, task, hands),
    flat: askedOf({ kind: 'flat', levels: from(2), targets: few.targets, paperLab, inks: work.layers, seed }, task, hands),
  };
}

async function* finished(
  request: SeparateRequest,
  work: Work,
  from: Chosen,
  fromPrice: number,
  { curve, flat }: ToldBeside,
  stoppedEarly: boolean,
  task: Task,
  hands?: Hands,
): AsyncGenerator<Draft, Separation> {
  const { grid, setup } = work;
  const sigmaMm = request.registerSigmaMm ?? 0;
  const { overlapLab } = from.found;
  const middle = Math.min(1, work.levels.length - 1);
  const { cut, wanted, priceMm } = await cutWithin(request, work, from, fromPrice, stoppedEarly ? 'stopped' : 'usual', task, hands);
  task.report(0.96, say('separate.comparing'));
  await task.pause();
  const pictureLevel = pictureAsIs(work);
  // It takes longest, so it comes first. Whoever stops wants to have it: flat inks on the coarser raster tell as much.
  const coarser = stoppedEarly && pictureLevel === work.levels[0];
  const baseline = askedOf(
    {
      kind: 'baseline',
      levels: work.levels,
      finest: coarser ? middle : 0,
      picture: coarser ? work.levels[middle] : pictureLevel,
      flat: await flat(),
      inks: work.layers,
      metres: metresOf(cut.codes, grid.width, grid.height, work.layers, grid.mmPerPx, work.layerPrice),
      sigmaMm,
      cut: cutRulesOf(request, grid.mmPerPx),
    },
    task,
    hands,
  );
  const field = fieldOf(pictureLevel, { ...rulesOf(work, overlapLab, 0), blacksAlike: false });
  const figures = figuresOf({ ...field, weight: undefined }, work.target, cut.codes, overlapLab, grid.mmPerPx, sigmaMm, work.layerPrice);
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const drawn = pictureEdges(work.target, grid.width, grid.height, grid.mmPerPx);
  const lost = lostDetails(
    drawn,
    metBy(drawn, printEdges(cut.codes, overlapLab, grid.width, grid.height, grid.mmPerPx)).lost,
    work.levels[0].weight,
    Math.max(request.material.leastOpeningMm, request.knife?.leastWidthMm ?? 0),
    request.sizeMm.width,
    [...partsOnPrint(request), ...dotsOnPrint(work.lines, grid.mmPerPx)],
  );
  const reach = reachOf(work, pictureLevel, overlapLab);
  const before = meanOf(differences(work.target, wanted, overlapLab));
  const told: Omit<Separation, 'baseline' | 'curve'> = {
    width: grid.width,
    height: grid.height,
    mmPerPx: grid.mmPerPx,
    image: { minX: 0, minY: 0, maxX: request.sizeMm.width, maxY: request.sizeMm.height },
    layers: cut.layers,
    codes: cut.codes,
    rgb: rgbOf(overlapLab),
    overlapLab,
    target: work.target,
    figures: {
      ...figures,
      knifeMetres: metresCut(request, cut),
      pieces: piecesCut(request, cut),
      bridges: sum(cut.layers.map((layer) => layer.stencil.bridges.length)),
      minutes: minutesCut(request, cut),
    },
    outOfReach: reach.mask,
    outOfReachShare: reach.share,
    detailLost: wanted.map((code, i) => (code === cut.codes[i] ? 0 : 1)),
    asDrawing: work.asDrawing,
    detailLostDeltaE: figures.inRegister.mean - before,
    lost,
    stoppedEarly,
    problems: [...lostProblems(lost), ...warnings(request), ...budgetProblems(request, cut), ...cut.layers.flatMap(stencilProblems)],
    setup: { seed: request.seed ?? 1, priceMm, shelfIds: [...setup.shelf.keys()] },
  };
  if (!stoppedEarly) yield cutDraft(told);
  return {
    ...told,
    curve: laidThrough(await curve(), { priceMm, metres: figures.metres, meanDeltaE: figures.inRegister.mean }),
    baseline: await baseline(),
  };
}

const lostSaying = { eye: 'separate.eyeLost', eyes: 'separate.eyesLost', mouth: 'separate.mouthLost' } as const,
  lostPlace = { dot: 'separate.dotLost', dots: 'separate.dotsLost' } as const;

function lostProblems(lost: readonly LostDetail[]): Problem[] {
  return lost.map(({ part, atMm: [x, y], imageWidthMm }) =>
    problem(
      'note',
      'drawing-lost',
      'picture.crop',
      lostAs(part, x, y),
      say('separate.cropEnlargeOrAdd', { width: length(imageWidthMm, 0) }),
    ),
  );
}

function lostAs(part: LostPart | undefined, xMm: number, yMm: number): Problem['message'] {
  const at = { x: length(xMm, 0), y: length(yMm, 0) };
  if (part === 'dot' || part === 'dots') return say(lostPlace[part], at);
  return part ? say(lostSaying[part]) : say('separate.drawingLost', at);
}

/** A stencil that prints nothing is no mistake here: the picture gets by with fewer layers. */
function stencilProblems({ run, stencil }: SeparatedLayer): readonly Problem[] {
  return stencil.problems.map((p) =>
    p.code === 'stencil-prints-nothing'
      ? problem('note', 'layer-not-needed', say('where.run', { n: run + 1 }), say('separate.layerNotNeeded'), say('separate.oneLayerLess'))
      : p,
  );
}

/** Told when even the dearest knife asks for more than was allowed: outlines along the image's border have to be cut whatever the picture. */
function budgetProblems(request: SeparateRequest, cut: CutLayers): Problem[] {
  const over = overBudget(request, cut);
  if (over <= 1.03) return [];
  return [
    problem(
      'warning',
      'knife-budget-exceeded',
      'picture.knife',
      say('separate.budgetExceeded', {
        over: asShare(over - 1, 0),
        parts: piecesCut(request, cut),
        time: time(minutesCut(request, cut)),
      }),
      say('separate.allowMore'),
    ),
  ];
}

/** The picture itself, not fitted into any reach. */
function pictureAsIs({ levels, target }: Work): Level {
  return levels[0].lab === target ? levels[0] : { ...levels[0], bins: binColours(target), lab: target };
}

function reachOf(work: Work, level: Level, overlapLab: Float64Array): { readonly mask: Uint8Array; readonly share: number } {
  const { setup } = work;
  const field = fieldOf(level, { layers: work.layers, overlapLab, allowed: setup.codes, frozen: work.frozen, priceMm: 0 });
  const mask = new Uint8Array(field.binOf.length);
  let count = 0;
  for (let i = 0; i < mask.length; i++) {
    if (field.table[field.binOf[i] * field.codeCount + field.candidates[field.binOf[i] * field.perBin]] > 5) {
      mask[i] = 255;
      count++;
    }
  }
  return { mask, share: count / mask.length };
}

function draftOf(work: Work, chosen: Chosen, levelNumber: number, stage: Draft['stage'], share: number): Draft {
  const level = work.levels[levelNumber];
  const { overlapLab } = chosen.found;
  return {
    stage,
    share,
    width: level.width,
    height: level.height,
    mmPerPx: level.mmPerPx,
    codes: chosen.codes,
    rgb: rgbOf(overlapLab),
    meanDeltaE: meanOf(differences(level.lab, chosen.codes, overlapLab)),
    metres: metresOf(chosen.codes, level.width, level.height, work.layers, level.mmPerPx, work.layerPrice),
  };
}

/** While flat inks are still made beside it. */
function cutDraft(cut: NonNullable<Draft['cut']>): Draft {
  const { width, height, mmPerPx, codes, rgb, figures } = cut;
  return {
    stage: 'cut',
    share: 0.98,
    width,
    height,
    mmPerPx,
    codes,
    rgb,
    meanDeltaE: figures.inRegister.mean,
    metres: figures.metres,
    cut,
  };
}

/** For callers that don't watch: runs to the end. */
export async function separated(request: SeparateRequest, task: Task, hands?: Hands): Promise<Separation> {
  const drafts = separate(request, task, hands);
  for (;;) {
    const step = await drafts.next();
    if (step.done) return step.value;
  }
}
