import { cutFile } from '../../../packet/index.ts';
import { fail } from '../../../core/problem.ts';
import { fileStem } from '../../../core/job/file-names.ts';
import type { Work } from './room.ts';

/** One stencil as a file for a cutter, at true size. What does not hold is not written. */
export const cutFileAnswer: Work<'cutFile'> = async ({ layerId, format }, room) => {
  const plan = room.last?.plan;
  const layer = plan?.layers.find((l) => l.id === layerId);
  if (!plan || !layer) fail('no-such-layer', 'stencil', 'This stencil is not planned yet.', 'Wait a moment and try again.');
  const { certificate } = layer.stencil;
  if (!certificate.holds) {
    const [x, y] = certificate.faults[0]?.atMm ?? [0, 0];
    fail(
      'stencil-does-not-hold',
      `layer “${layer.name}”`,
      `This stencil does not hold together, so its cut sheet is not written; the first place is at ${x.toFixed(0)}, ${y.toFixed(0)} mm.`,
      'Mend the places marked on the stencil first.',
    );
  }
  const { title } = plan.job;
  const text = cutFile(plan, layer, format);
  return {
    answer: { path: `${fileStem(title)}-${fileStem(layer.name)}.${format}`, bytes: new TextEncoder().encode(text), what: format },
    transfer: [],
  };
};
