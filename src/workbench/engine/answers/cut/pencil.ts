import { pencilShape, regionBox } from '../../../../core/form/index.ts';
import type { Work } from '../room.ts';
import { outlinePoints } from './trace.ts';

/** A line drawn by hand → an outline that a knife follows; empty where the line surrounds nothing. */
export const pencilAnswer: Work<'pencil'> = ({ points, smoothMm }) => {
  const region = pencilShape(points, smoothMm);
  if (region.rings.length === 0) return Promise.resolve({ answer: { outline: [], minX: 0, minY: 0 }, transfer: [] });
  const { minX, minY } = regionBox(region);
  return Promise.resolve({ answer: { outline: outlinePoints(region), minX, minY }, transfer: [] });
};
