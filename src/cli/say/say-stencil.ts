import { type Plan, ratesOf } from '../../core/plan/index.ts';
import { figure, length, name as asName, say, time, type Saying } from '../../words/index.ts';
import { sayUses } from '../../packet/index.ts';
import { knifeLength, sayHere, tellHere } from '../reader.ts';
import { pointAt, sayCost, sayIslands } from './say-islands.ts';
import { sayMends } from './say-mends.ts';

type Layer = Plan['layers'][number];

const sides = { window: say('answers.window'), piece: say('answers.piece') };
const difficulties = {
  easy: say('answers.easy'),
  steady: say('answers.steady'),
  fine: say('answers.fine'),
  trying: say('answers.trying'),
  hopeless: say('answers.hopeless'),
};

/** What a stencil is made of and what it takes to cut it. */
export function sayStencil(plan: Plan, layer: Layer): string[] {
  const { knife, certificate, bridges } = layer.stencil;
  const known = { layer: asName(layer.name), run: layer.run, side: sides[layer.side] };
  const rates = ratesOf(plan.job);
  const pace = {
    along: knifeLength(rates.metresPerMinute, 1),
    corner: figure(rates.secondsPerCorner, 1, false),
    piece: figure(rates.secondsPerPiece, 1, false),
  };
  const pair = plan.cuts.find((c) => c.id === layer.cutId);
  return [
    certificate.holds
      ? sayHere('answers.stencilHolds', { ...known, neck: length(certificate.leastNeckMm, 1) })
      : sayHere('answers.stencilFalls', { ...known, n: certificate.faults.length }),
    ...[
      say('answers.knifeWork', {
        along: knifeLength(knife.metres),
        corners: knife.corners,
        pieces: knife.pieces,
        time: time(Math.ceil(knife.minutes)),
        how: difficulties[knife.difficulty],
      }),
      plan.job.knife ? say('answers.paceOwn', pace) : say('answers.paceUsual', pace),
      ...(pair ? [say('answers.cutTimes', { cut: asName(pair.name), n: pair.timesToCut, why: pair.why })] : []),
    ].map((line) => `  ${tellHere(line)}`),
    ...(pair ? sayUses(pair) : []).map((line) => `    ${tellHere(line)}`),
    ...bridges.map((b) => {
      const cost = sayCost(b.areaMm2, b.costDeltaE);
      const values = { id: asName(b.id), at: pointAt(b.from), cost };
      return `  ${tellHere(b.pinned ? say('answers.bridgePinned', values) : say('answers.bridgeAt', values))}`;
    }),
    ...sayMends(layer.stencil).map((line) => `  ${tellHere(line)}`),
    ...sayIslands(layer.stencil).map((line) => `  ${tellHere(line)}`),
  ];
}

const faults = {
  neck: say('refusals.neck'),
  'thin-piece': say('refusals.thinPiece'),
  tongue: say('refusals.tongue'),
  opening: say('refusals.opening'),
  apart: say('refusals.apart'),
};

/** A place that keeps a stencil from holding. */
export function sayFault({ kind, widthMm, atMm }: Layer['stencil']['certificate']['faults'][number]): Saying {
  return say('refusals.faultAt', { fault: faults[kind], width: length(widthMm, 1), at: pointAt(atMm) });
}
