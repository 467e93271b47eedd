import { exp } from '../../numeric/index.ts';
import type { Crop } from '../scale.ts';
import type { Picture } from '../types.ts';
import { framed, pictureOn } from './frame.ts';
import { landmarksIn, type Face } from './landmarks.ts';
import { filtered, filteredApart, leaky, mixed, mostOf, type Numbers, type Planes } from './network.ts';
import { checkLength, faceNumbers, type FaceNumbers } from './weights.ts';

let bytes: Uint8Array | undefined, numbers: FaceNumbers | undefined;

/** Hands in the bytes of `faces.bin`; once, before the first `findFaces`, which is the first to need the numbers in them. */
export function prepareFaces(given: Uint8Array): void {
  checkLength(given);
  bytes = given;
  numbers = undefined;
}

/** How long a picture is drawn: a face a tenth as long is still found. The network halves five times: a cell is so many pixels. */
const side = 416,
  cellPx = 32;
/** As the network was taught: what its raster's cells stand for, and the colours' means. */
const anchors: readonly (readonly [number, number])[] = [
    [1.603231, 2.094468],
    [6.041143, 7.080126],
    [2.882459, 3.518061],
    [4.266906, 5.178857],
    [9.041765, 10.66308],
  ],
  means = [117.001, 114.697, 97.404],
  leak = 0.1;
/** Surer than this it is a face; two that share more than this much are one. */
const sureFrom = 0.5,
  oneFrom = 0.4;

const lastFaces = new WeakMap<Picture, readonly Face[]>();

/**
 * Faces in a picture with what is drawn in them, the surest first: by two small networks (`README.md` beside this file; after
 * J. Redmon, A. Farhadi: YOLO9000, 2017, with filters split in two). In shares of the picture.
 */
export function findFaces(picture: Picture): readonly Face[] {
  if (!bytes) throw new Error('prepareFaces comes before findFaces.');
  const known = lastFaces.get(picture);
  if (known) return known;
  const { detector, landmarks } = (numbers ??= faceNumbers(bytes)),
    found = boxesIn(picture, detector).map(({ box, sure }) => landmarksIn(picture, box, sure, landmarks));
  lastFaces.set(picture, found);
  return found;
}

interface Found {
  readonly box: Crop;
  readonly sure: number;
}

const sigmoid = (v: number): number => 1 / (1 + exp(-v));

function boxesIn(picture: Picture, weights: Numbers): Found[] {
  const scale = side / Math.max(picture.width, picture.height),
    width = Math.max(1, Math.round(picture.width * scale)),
    height = Math.max(1, Math.round(picture.height * scale));
  const whole = (v: number): number => Math.ceil(v / cellPx) * cellPx,
    {
      values,
      width: across,
      height: down,
      depth,
    } = detected(
      framed(pictureOn(picture, { x: 0, y: 0, width: 1, height: 1 }, width, height), whole(width), whole(height), means, false),
      weights,
    ),
    wideCell = cellPx / width,
    tallCell = cellPx / height;
  const found: Found[] = [];
  for (let cell = 0; cell < across * down; cell++)
    for (const [k, [wide, tall]] of anchors.entries()) {
      const at = cell * depth + k * 5,
        sure = sigmoid(values[at + 4]);
      if (sure <= sureFrom) continue;
      const x = ((cell % across) + sigmoid(values[at])) * wideCell,
        y = (Math.floor(cell / across) + sigmoid(values[at + 1])) * tallCell,
        w = exp(values[at + 2]) * wide * wideCell,
        h = exp(values[at + 3]) * tall * tallCell,
        left = Math.max(0, x - w / 2),
        top = Math.max(0, y - h / 2);
      found.push({ box: { x: left, y: top, width: Math.min(1, x + w / 2) - left, height: Math.min(1, y + h / 2) - top }, sure });
    }
  found.sort((a, b) => b.sure - a.sure);
  const kept: Found[] = [];
  for (const one of found)
    if (one.box.width > 0 && one.box.height > 0 && kept.every(({ box }) => shareOfBoth(box, one.box) < oneFrom)) kept.push(one);
  return kept;
}

function shareOfBoth(a: Crop, b: Crop): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x),
    down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  if (across <= 0 || down <= 0) return 0;
  return (across * down) / (a.width * a.height + b.width * b.height - across * down);
}

/** The network: a layer of filters, five split in two, each after the most of 2 × 2. */
function detected(picture: Planes, weights: Numbers): Planes {
  let planes = leaky(filtered(picture, weights[0], weights[1], 1, true), leak);
  for (let layer = 0; layer < 5; layer++) {
    const [apart, mix, bias] = weights.slice(2 + 3 * layer, 5 + 3 * layer);
    planes = leaky(filteredApart(mostOf(planes, 2), apart, mix, bias), leak);
  }
  return mixed(mostOf(planes, 1), weights[17], weights[18]);
}
