import { unite } from '../../../../core/form/index.ts';
import { fail } from '../../../../core/problem.ts';
import { say } from '../../../../words/one-language.ts';
import { crossOpening } from '../../../../core/stencil/index.ts';
import type { Work } from '../room.ts';

/** The shortest way across a stencil's opening at a place, as a bridge of the printmaker's own would lie. */
export const bridgeAnswer: Work<'bridge'> = async ({ layerId, atMm }, room) => {
  const layer = room.last?.plan.layers.find((l) => l.id === layerId);
  if (!layer) fail('no-such-layer', `layers[#${layerId}]`, say('engine.stencilNotPlanned'), say('engine.waitAndTry'));
  const { prints, bridges } = layer.stencil;
  const opening = bridges.length > 0 ? unite([prints, ...bridges.map((b) => b.region)]) : prints;
  const found = crossOpening(opening, atMm);
  if (!found) fail('no-opening-there', `layers[#${layerId}]`, say('engine.noOpening'), say('engine.pointIntoOpening'));
  return { answer: found, transfer: [] };
};
