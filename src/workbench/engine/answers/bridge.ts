import { unite } from '../../../core/form/index.ts';
import { fail } from '../../../core/problem.ts';
import { crossOpening } from './cross-opening.ts';
import type { Work } from './room.ts';

/** The shortest way across a stencil's opening at a place, as a bridge of the printmaker's own would lie. */
export const bridgeAnswer: Work<'bridge'> = async ({ layerId, atMm }, room) => {
  const layer = room.last?.plan.layers.find((l) => l.id === layerId);
  if (!layer) fail('no-such-layer', 'stencil', 'This stencil is not planned yet.', 'Wait a moment and try again.');
  const { prints, bridges } = layer.stencil;
  const opening = bridges.length > 0 ? unite([prints, ...bridges.map((b) => b.region)]) : prints;
  const found = crossOpening(opening, atMm);
  if (!found)
    fail(
      'no-opening-there',
      `layer “${layer.name}”`,
      'There is no opening to bridge at this place.',
      'Point into an opening, between two parts of the paper.',
    );
  return { answer: found, transfer: [] };
};
