import { cutsByColour, drawingChoices } from '../../../../core/asks/index.ts';
import { openDrawing, regionBox, type Box } from '../../../../core/form/index.ts';
import { regionPath } from '../../../ui/region-path.ts';
import type { Work } from '../room.ts';

/** All ways of reading a drawing, each with its picture. */
export const readAsAnswer: Work<'readAs'> = async ({ bytes, name }, room) => {
  await room.ready;
  const choices = drawingChoices(openDrawing(bytes, name));
  const all = choices
    .map(({ region }) => regionBox(region))
    .reduce(
      (a: Box | null, b) =>
        a
          ? {
              minX: Math.min(a.minX, b.minX),
              minY: Math.min(a.minY, b.minY),
              maxX: Math.max(a.maxX, b.maxX),
              maxY: Math.max(a.maxY, b.maxY),
            }
          : b,
      null,
    ) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  return {
    answer: {
      box: [all.minX, all.minY, all.maxX - all.minX, all.maxY - all.minY],
      choices: choices.map(({ region, ...choice }) => ({ ...choice, path: regionPath(region) })),
    },
    transfer: [],
  };
};

/** A drawing as a set of layers, one for each colour. */
export const byColourAnswer: Work<'byColour'> = async ({ bytes, job, by }, room) => {
  await room.ready;
  return { answer: cutsByColour(job, openDrawing(bytes, by.drawing), by), transfer: [] };
};
