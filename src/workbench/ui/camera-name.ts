import type { JobCamera } from '../../core/job/index.ts';
import { words } from '../store/words.ts';
import { sayLength } from './fields/units.ts';

/** Make, model and zoom as far as the photographs say. */
export function cameraName({ name, focalMm }: JobCamera): string {
  const w = words().forms;
  if (name === undefined) return w.cameraUnnamed;
  return focalMm === undefined ? name : w.cameraZoomed(name, sayLength(focalMm, 'mm', 1));
}
