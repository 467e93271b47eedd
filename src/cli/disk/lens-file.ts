import { cameraOf, lensOfCamera, readCameras } from '../../core/asks/index.ts';
import type { Lens } from '../../core/form/index.ts';
import type { TakenWith } from '../../core/image/index.ts';
import type { JobCamera } from '../../core/job/index.ts';
import { fail } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
import { fileAt, readFileBytes } from './disk.ts';

interface Kept {
  readonly lens?: Lens;
  readonly camera?: JobCamera;
}

/** The lens a photograph was taken with: of a file as `lens` writes it, or of the cameras the job knows; of neither, none. */
export function lensKeptFor(
  file: string | undefined,
  known: readonly JobCamera[],
  taken: TakenWith,
  photo: { readonly width: number; readonly height: number },
): Kept {
  const camera = file === undefined ? cameraOf(known, taken, photo) : cameraIn(file, taken, photo);
  return camera ? { lens: lensOfCamera(camera, taken, photo), camera } : {};
}

/** A file that was named is meant, even where the photograph does not say which camera it was. */
function cameraIn(file: string, taken: TakenWith, photo: { readonly width: number; readonly height: number }): JobCamera {
  const cameras = readCameras(new TextDecoder().decode(readFileBytes(file)));
  if (!cameras) return fail('not-a-lens', fileAt(file), say('refusals.notALens'), say('refusals.keepLens'));
  return cameraOf(cameras, taken, photo) ?? cameras[0];
}
