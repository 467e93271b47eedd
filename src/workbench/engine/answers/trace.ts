import { traceMask, tracePhoto, traceScan, type Photo, type Traced } from '../../../core/form/index.ts';
import { toRgb } from '../../../core/plan/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { readPicture } from '../../../core/separate/index.ts';
import { name as asName, say } from '../../../words/index.ts';
import { picturesReady } from '../pictures.ts';
import type { TraceAsk } from '../protocol.ts';
import type { Work } from './room.ts';

/** The photograph in work: decoded once, traced again at every change. */
let last: { readonly id: number; readonly photo: Photo } | null = null;

/** A photograph, scan or black-and-white picture → the outline of the thing on it. What stands in the way comes back beside the picture's size. */
export const traceAnswer: Work<'trace'> = async (ask) => {
  if (ask.bytes) {
    await picturesReady();
    const { width, height, rgb } = toRgb(await readPicture(ask.bytes, ask.name));
    last = { id: ask.id, photo: { width, height, channels: 3, data: rgb } };
  }
  if (!last || last.id !== ask.id)
    fail('no-photograph', say('where.file', { file: asName(ask.name) }), say('engine.photographGone'), say('engine.chooseAgain'));
  const { photo } = last;
  const size = { widthPx: photo.width, heightPx: photo.height };
  try {
    const { region, widthMm, heightMm, corners, problems } = outlineOf(photo, ask);
    const outline = region.rings.map((ring) => {
      const points: [number, number][] = [];
      for (let i = 0; i < ring.length; i += 2) points.push([Math.round(ring[i] * 1000) / 1000, Math.round(ring[i + 1] * 1000) / 1000]);
      return points;
    });
    return { answer: { ...size, corners, traced: { outline, widthMm, heightMm }, problems }, transfer: [] };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { answer: { ...size, corners: [], traced: null, problems: error.problems }, transfer: [] };
  }
};

function outlineOf(photo: Photo, { what, name, darkShare, smoothMm, leastMm2 }: TraceAsk): Traced {
  const options = { darkShare, smoothMm, leastMm2 };
  if (what.kind === 'scan') return traceScan(photo, what.pixelsPerInch, options, name);
  if (what.kind === 'mask') return traceMask(photo, what.widthMm, options, name);
  return tracePhoto(photo, { ...options, sheet: what.sheet, corners: what.corners }, name);
}
