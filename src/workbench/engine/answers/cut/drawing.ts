import { openDrawing } from '../../../../core/form/index.ts';
import type { Work } from '../room.ts';

/** Reads a drawing as the Plan will, before it becomes a form: what is wrong with it is said at once. */
export const drawingAnswer: Work<'drawing'> = async ({ bytes, name }, room) => {
  await room.ready;
  const { widthMm, heightMm, hasPhysicalUnits, problems } = openDrawing(bytes, name).read();
  return { answer: { widthMm, heightMm, hasPhysicalUnits, problems }, transfer: [] };
};
