import { askToneWays } from '../../../../core/asks/index.ts';
import { readPicture } from '../../../../core/image/index.ts';
import { picturesReady } from '../../pictures.ts';
import type { Work } from '../room.ts';

/** A split's run in every way that it could be printed, from its film as the job keeps it: black where ink prints. */
export const toneWaysAnswer: Work<'toneWays'> = async ({ job, layerId, film, paperId, materialId }, room, task) => {
  await Promise.all([room.ready, picturesReady()]);
  const { width, height, pixels } = await readPicture(film, `${layerId}.png`);
  const full = pixels.kind === 'srgb8' ? 255 : 65535;
  const plane = Uint8Array.from({ length: width * height }, (_, i) => Math.round(255 * (1 - pixels.data[i * 3] / full)));
  return { answer: await askToneWays({ job, layerId, plane, width, height, paperId, materialId }, task), transfer: [] };
};
