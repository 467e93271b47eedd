import { calibrated, lensOfShares, type BoardSeen, type Lens } from '../form/index.ts';
import type { TakenWith } from '../image/index.ts';
import { CameraSchema, type Job, type JobCamera } from '../job/index.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Zoomed alike, and of one shape. */
const alike = 0.02,
  sameShape = 0.005;
/** Rounded to less than a thousandth of a pixel. */
const rounded = (v: number): number => Math.round(v * 1e7) / 1e7;
const near = (a: number, b: number, by: number): boolean => Math.abs(a - b) <= by * Math.max(a, b);

/** A photograph's point as the camera stored it, and the way back, for each way of holding it (CIPA DC-008, tag 0112): shares. */
const stored: Readonly<Record<number, (x: number, y: number) => readonly [number, number]>> = {
  2: (x, y) => [1 - x, y],
  3: (x, y) => [1 - x, 1 - y],
  4: (x, y) => [x, 1 - y],
  5: (x, y) => [y, x],
  6: (x, y) => [y, 1 - x],
  7: (x, y) => [1 - y, 1 - x],
  8: (x, y) => [1 - y, x],
};
const shown: typeof stored = { ...stored, 6: (x, y) => [1 - y, x], 8: (x, y) => [y, 1 - x] };

const asStoredSize = ({ width, height }: Size, orientation: number): Size =>
  orientation >= 5 ? { width: height, height: width } : { width, height };

/** A board seen in a photograph that is shown upright, as the camera stored it: all boards of a camera lie on one picture. */
export function boardAsStored(board: BoardSeen, { orientation }: TakenWith): BoardSeen {
  const turn = stored[orientation];
  if (!turn) return board;
  const size = asStoredSize(board, orientation);
  const corners = board.corners.map(({ at: [x, y], ...where }) => {
    const [sx, sy] = turn(x / board.width, y / board.height);
    return { ...where, at: [sx * size.width, sy * size.height] as const };
  });
  return { ...size, corners };
}

/** Which camera it was, as far as its photographs tell. */
const isSame = (a: Pick<JobCamera, 'name' | 'focalMm' | 'aspect'>, b: Pick<JobCamera, 'name' | 'focalMm' | 'aspect'>): boolean =>
  a.name === b.name &&
  (a.focalMm === undefined || b.focalMm === undefined ? a.focalMm === b.focalMm : near(a.focalMm, b.focalMm, alike)) &&
  near(a.aspect, b.aspect, sameShape);

const whose = ({ camera, focalMm, orientation }: TakenWith, size: Size): Pick<JobCamera, 'name' | 'focalMm' | 'aspect'> => {
  const { width, height } = asStoredSize(size, orientation);
  return { aspect: width / height, ...(camera === undefined ? {} : { name: camera }), ...(focalMm === undefined ? {} : { focalMm }) };
};

/** The camera that took this, among those whose lens is kept. */
export function cameraOf<C extends JobCamera>(cameras: readonly C[], taken: TakenWith, size: Size): C | undefined {
  const mine = whose(taken, size);
  return cameras.find((one) => isSame(one, mine));
}

/** Its lens, for a photograph that is shown upright. */
export function lensOfCamera({ lensMiddle, bend, bendFar }: JobCamera, { orientation }: TakenWith, size: Size): Lens {
  const [x, y] = lensMiddle;
  const middle = shown[orientation]?.(x, y) ?? [x, y];
  return lensOfShares({ middle, radius: 0.5, bend, more: bendFar }, size)!;
}

/** Two photographs by one camera, zoomed alike. */
export const sameCamera = (a: TakenWith, aSize: Size, b: TakenWith, bSize: Size): boolean => isSame(whose(a, aSize), whose(b, bSize));

/** As a file holds them. */
export const writeCameras = (cameras: readonly JobCamera[]): string => `${JSON.stringify({ cameras }, null, 2)}\n`;

/** Undefined where the file holds no camera. */
export function readCameras(text: string): readonly JobCamera[] | undefined {
  try {
    const { cameras } = JSON.parse(text) as { readonly cameras?: readonly unknown[] };
    const found = (cameras ?? []).map((one) => CameraSchema.parse(one));
    return found.length > 0 ? found : undefined;
  } catch {
    return undefined;
  }
}

/** With the boards that were seen (as stored): each further photograph makes the lens better. */
export interface KeptCamera extends JobCamera {
  readonly seen: readonly BoardSeen[];
}

/** A camera with one more board, each photograph once. */
export function withBoard(kept: readonly KeptCamera[], board: BoardSeen, taken: TakenWith): KeptCamera | undefined {
  const stored = boardAsStored(board, taken),
    [x, y] = stored.corners[0].at;
  const before = kept.find((one) => isSame(one, whose({ ...taken, orientation: 1 }, stored)))?.seen ?? [];
  const seen = [...before.filter(({ corners: [first] }) => first.at[0] !== x || first.at[1] !== y), stored];
  const read = cameraFrom(seen, taken);
  return read && { ...read.camera, seen };
}

export interface CameraRead {
  readonly camera: JobCamera;
  /** By how much the boards' corners lie off, pixels. */
  readonly offPx: number;
}

/** A camera's lens from boards seen with it (as stored); undefined where no board is whole enough. */
export function cameraFrom(boards: readonly BoardSeen[], taken: TakenWith): CameraRead | undefined {
  const found = calibrated(boards);
  if (!found) return undefined;
  const { middle, bend, more } = found.lens;
  const camera = {
    ...whose({ ...taken, orientation: 1 }, boards[0]),
    lensMiddle: [rounded(middle[0]), rounded(middle[1])] as [number, number],
    bend: rounded(bend),
    bendFar: rounded(more),
    boards: boards.length,
  };
  return { camera, offPx: found.offPx };
}

/** Kept with the others, in place of what was known of it. */
export function withCamera<C extends JobCamera>(cameras: readonly C[], camera: C): C[] {
  return [...cameras.filter((one) => !isSame(one, camera)), camera];
}

/** The same for a job, which carries its studio along. */
export const jobWithCamera = (job: Job, camera: JobCamera): Job => ({ ...job, cameras: withCamera(job.cameras ?? [], camera) });

export const withoutCamera = <C extends JobCamera>(cameras: readonly C[], camera: JobCamera): C[] =>
  cameras.filter((one) => !isSame(one, camera));

export function jobWithoutCamera(job: Job, camera: JobCamera): Job {
  const cameras = withoutCamera(job.cameras ?? [], camera);
  return { ...job, cameras: cameras.length > 0 ? cameras : undefined };
}
