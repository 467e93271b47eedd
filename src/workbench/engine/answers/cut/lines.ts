import { askLines } from '../../../../core/asks/index.ts';
import { readPicture } from '../../../../core/image/index.ts';
import { picturesReady } from '../../pictures.ts';
import type { Work } from '../room.ts';

/** A picture's tone as lines for a knife: the job with them, and their openings. */
export const linesAnswer: Work<'lines'> = async ({ job, bytes, name, question }, room) => {
  await Promise.all([room.ready, picturesReady()]);
  const { cut, ...made } = askLines(job, await readPicture(bytes, name), question);
  return { answer: { ...made, ...cut }, transfer: [] };
};
