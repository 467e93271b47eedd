import { signal } from '@preact/signals';
import { jobWithCamera, jobWithoutCamera, withCamera, withoutCamera, type KeptCamera } from '../../../core/asks/index.ts';
import type { Job, JobCamera } from '../../../core/job/index.ts';
import type { Bench } from '../bench.ts';
import { step } from '../words.ts';

/** Cameras whose lens was read from photographs of a board: of the studio, so kept in this browser for every job, and in the job at hand. */
const place = 'laydown-cameras';

function kept(): readonly KeptCamera[] {
  try {
    return (JSON.parse(localStorage.getItem(place) ?? '[]') ?? []) as readonly KeptCamera[];
  } catch {
    return [];
  }
}

export const keptCameras = signal<readonly KeptCamera[]>(kept());
/** More boards would no longer change a lens. */
const mostBoards = 24;

function keep(cameras: readonly KeptCamera[]): void {
  keptCameras.value = cameras;
  try {
    if (cameras.length === 0) localStorage.removeItem(place);
    else localStorage.setItem(place, JSON.stringify(cameras));
  } catch {
    // Without room they are kept as long as the page is open.
  }
}

/** As a job keeps it: the boards stay in the browser. */
const withoutBoards = ({ name, focalMm, aspect, lensMiddle, bend, bendFar, boards }: KeptCamera): JobCamera => ({
  ...(name === undefined ? {} : { name }),
  ...(focalMm === undefined ? {} : { focalMm }),
  aspect,
  lensMiddle,
  bend,
  bendFar,
  boards,
});

export function keepCamera(bench: Bench, camera: KeptCamera): void {
  keep(withCamera(keptCameras.value, { ...camera, seen: camera.seen.slice(-mostBoards) }));
  bench.edit(step('keepCamera', camera.name ?? ''), (job) => jobWithCamera(job, withoutBoards(camera)));
}

export function forgetCamera(bench: Bench, camera: JobCamera): void {
  keep(withoutCamera(keptCameras.value, camera));
  bench.edit(step('forgetCamera', camera.name ?? ''), (job) => jobWithoutCamera(job, camera));
}

/** All that the studio knows, those first that were read from most photographs. */
export const knownCameras = ({ cameras = [] }: Pick<Job, 'cameras'>): readonly JobCamera[] =>
  [...cameras, ...keptCameras.value.map(withoutBoards)].sort((a, b) => b.boards - a.boards);
