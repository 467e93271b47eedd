import { askPrintPhoto, cameraOf, lensOfCamera } from '../../../../core/asks/index.ts';
import { takenWith, type TakenWith } from '../../../../core/image/index.ts';
import type { Photograph } from '../../../../core/ink/index.ts';
import { fail } from '../../../../core/problem.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import type { Work } from '../room.ts';
import { photographOf } from './photo.ts';

/** Sharp on a large screen, and squared up in a moment. */
const longPx = 900;

/** The photograph in work: decoded once, read again at every move of a corner. */
let last: { readonly id: number; readonly photo: Promise<Photograph>; readonly taken: TakenWith } | null = null;

export const printPhotoAnswer: Work<'printPhoto'> = async ({ id, name, bytes, paperId, corners, of, cameras }, room) => {
  const place = say('where.file', { file: asName(name) });
  // Kept before it is read: a corner moved meanwhile waits for the same reading.
  if (bytes) last = { id, photo: photographOf(bytes, name), taken: takenWith(bytes) };
  if (!last || last.id !== id) fail('no-photograph', place, say('engine.photographGone'), say('engine.chooseAgain'));
  const { taken } = last,
    photo = await last.photo;
  const plan = room.last?.plan ?? fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
  const camera = cameraOf(cameras, taken, photo);
  const lens = camera ? { lens: lensOfCamera(camera, taken, photo) } : {};
  const answer = askPrintPhoto(plan, { photo, paperId, ...(corners ? { corners } : {}), ...lens, of, place, longPx });
  return {
    answer: { ...answer, widthPx: photo.width, heightPx: photo.height, camera: camera ?? null },
    transfer: answer.squared ? [answer.squared.rgb.buffer] : [],
  };
};
