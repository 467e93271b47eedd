import { cutFile } from '../../../../packet/index.ts';
import { fail } from '../../../../core/problem.ts';
import { lengths, say } from '../../../../words/one-language.ts';
import { fileStem } from '../../../../core/job/index.ts';
import type { Work } from '../room.ts';

/** One stencil as a file for a cutter, at true size. What does not hold is not written. */
export const cutFileAnswer: Work<'cutFile'> = async ({ layerId, format, language }, room) => {
  const plan = room.last?.plan;
  const layer = plan?.layers.find((l) => l.id === layerId);
  const place = `layers[#${layerId}]`;
  if (!plan || !layer) fail('no-such-layer', place, say('engine.stencilNotPlanned'), say('engine.waitAndTry'));
  const { certificate } = layer.stencil;
  if (!certificate.holds) {
    const at = lengths(certificate.faults[0]?.atMm ?? [0, 0], ',', 0);
    fail('stencil-does-not-hold', place, say('engine.doesNotHold', { at }), say('engine.mendPlaces'));
  }
  const { title } = plan.job;
  const text = cutFile(plan, layer, format, language);
  return {
    answer: { path: `${fileStem(title)}-${fileStem(layer.name)}.${format}`, bytes: new TextEncoder().encode(text) },
    transfer: [],
  };
};
