import {
  boardSeen,
  openingsOf,
  regionBox,
  traceMask,
  tracePhoto,
  traceScan,
  type Lens,
  type Photo,
  type Region,
  type Traced,
} from '../../../../core/form/index.ts';
import { cameraOf, lensOfCamera, withBoard } from '../../../../core/asks/index.ts';
import { takenWith, type TakenWith } from '../../../../core/image/index.ts';
import { toRgb } from '../../../../core/plan/index.ts';
import { fail, ProblemError } from '../../../../core/problem.ts';
import { readPicture } from '../../../../core/separate/index.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import { picturesReady } from '../../pictures.ts';
import type { TraceAsk } from '../../protocol.ts';
import type { Work } from '../room.ts';

/** The photograph in work: decoded once, traced again at every change. */
let last: { readonly id: number; readonly read: Promise<{ readonly photo: Photo; readonly taken: TakenWith }> } | null = null;

async function read(bytes: Uint8Array, name: string): Promise<{ readonly photo: Photo; readonly taken: TakenWith }> {
  await picturesReady();
  const { width, height, rgb } = toRgb(await readPicture(bytes, name));
  return { photo: { width, height, channels: 3, data: rgb }, taken: takenWith(bytes) };
}

/** A photograph, scan or black-and-white picture → the outline of the thing on it. What stands in the way comes back beside the picture's size. */
export const traceAnswer: Work<'trace'> = async (ask) => {
  // Kept before it is read: a change that comes meanwhile waits for the same reading.
  if (ask.bytes) last = { id: ask.id, read: read(ask.bytes, ask.name) };
  if (!last || last.id !== ask.id)
    fail('no-photograph', say('where.file', { file: asName(ask.name) }), say('engine.photographGone'), say('engine.chooseAgain'));
  const { photo, taken } = await last.read;
  const size = { widthPx: photo.width, heightPx: photo.height };
  const onSheet = ask.what.kind === 'photo';
  const camera = onSheet ? cameraOf(ask.cameras ?? [], taken, photo) : undefined;
  try {
    const { region: plate, corners, problems } = outlineOf(photo, ask, camera && lensOfCamera(camera, taken, photo));
    const board = ask.what.kind === 'board' ? boardSeen(photo) : undefined,
      lens = board && withBoard(ask.kept ?? [], board, taken);
    const openings = openingsOf(plate);
    const hasOpenings = openings.rings.length > 0;
    const region = ask.openings && hasOpenings ? openings : plate;
    const box = regionBox(region);
    const traced = { outline: outlinePoints(region), widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY, hasOpenings };
    return { answer: { ...size, corners, traced, ...(camera ? { camera } : {}), ...(lens ? { read: lens } : {}), problems }, transfer: [] };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { answer: { ...size, corners: [], traced: null, ...(camera ? { camera } : {}), problems: error.problems }, transfer: [] };
  }
};

/** Points from the top left corner of its box, whole microns. */
export function outlinePoints(region: Region): [number, number][][] {
  const { minX, minY } = regionBox(region);
  const micron = (mm: number): number => Math.round(mm * 1000) / 1000;
  return region.rings.map((ring) => {
    const points: [number, number][] = [];
    for (let i = 0; i < ring.length; i += 2) points.push([micron(ring[i] - minX), micron(ring[i + 1] - minY)]);
    return points;
  });
}

function outlineOf(photo: Photo, { what, name, darkShare, smoothMm, leastMm2, apartMm }: TraceAsk, lens: Lens | undefined): Traced {
  const options = { darkShare, smoothMm, leastMm2, ...(apartMm ? { apartMm } : {}) };
  if (what.kind === 'board') return tracePhoto(photo, { ...options, sheet: { squareMm: what.squareMm } }, name);
  if (what.kind === 'scan') return traceScan(photo, what.pixelsPerInch, options, name);
  if (what.kind === 'mask') return traceMask(photo, what.widthMm, options, name);
  return tracePhoto(photo, { ...options, ...(lens ? { lens } : {}), sheet: what.sheet, corners: what.corners }, name);
}
