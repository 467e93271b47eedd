import { decodeDrawing, readDxf, readSvg } from '../../../core/form/index.ts';
import type { Work } from './room.ts';

/** Reads a drawing as the Plan will, before it becomes a form: what is wrong with it is said at once. */
export const drawingAnswer: Work<'drawing'> = async ({ bytes, name }, room) => {
  await room.ready;
  const text = decodeDrawing(bytes);
  const { widthMm, heightMm, hasPhysicalUnits, problems } = /\.dxf$/i.test(name) ? readDxf(text, name) : readSvg(text, name);
  return { answer: { widthMm, heightMm, hasPhysicalUnits, problems }, transfer: [] };
};
