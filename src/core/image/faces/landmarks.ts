import type { Crop } from '../scale.ts';
import type { Picture } from '../types.ts';
import { framed, pictureOn } from './frame.ts';
import { added, filtered, filteredApart, leaky, mixed, type Numbers, type Planes } from './network.ts';

export type FacePart = 'eye' | 'brow' | 'nose' | 'mouth';

/** A face and what is drawn in it, in shares of the picture: x and y in turn. */
export interface Face {
  readonly box: Crop;
  /** 0..1 */
  readonly sure: number;
  readonly parts: readonly { readonly part: FacePart; readonly outline: readonly number[] }[];
  /** From ear to ear below, and over the brows. */
  readonly outline: readonly number[];
}

const side = 112,
  means = [122.782, 117.001, 104.298];

/** Of 68 points along jaw, brows, nose, eyes and mouth (C. Sagonas and others: 300 Faces in-the-Wild Challenge, 2013). */
const partsOf68: readonly (readonly [FacePart, number, number])[] = [
  ['brow', 17, 22],
  ['brow', 22, 27],
  ['nose', 31, 36],
  ['eye', 36, 42],
  ['eye', 42, 48],
  ['mouth', 48, 60],
];
const jaw = [0, 17];
/** The forehead is as high over the brows as these are over the middle of the nose. common practice */
const forehead = 0.9;

export function landmarksIn(picture: Picture, box: Crop, sure: number, weights: Numbers): Face {
  const wide = box.width * picture.width,
    tall = box.height * picture.height,
    scale = side / Math.max(wide, tall),
    width = Math.max(1, Math.round(wide * scale)),
    height = Math.max(1, Math.round(tall * scale));
  const told = pointsOf(framed(pictureOn(picture, box, width, height), side, side, means, true), weights),
    left = Math.floor((side - width) / 2),
    top = Math.floor((side - height) / 2);
  const points = told.map((v, i) =>
    i % 2 === 0 ? box.x + ((v * side - left) / width) * box.width : box.y + ((v * side - top) / height) * box.height,
  );
  const between = (from: number, to: number): number[] => [...points.subarray(2 * from, 2 * to)];
  // Over the brows as far as they stand over the bridge of the nose, turned with the face.
  const [ux, uy] = [points[2 * 27] - points[2 * 30], points[2 * 27 + 1] - points[2 * 30 + 1]];
  const brows = between(17, 27),
    above = brows.map((v, i) => v + forehead * (i % 2 === 0 ? ux : uy));
  const back: number[] = [];
  for (let i = above.length - 2; i >= 0; i -= 2) back.push(above[i], above[i + 1]);
  return {
    box,
    sure,
    parts: partsOf68.map(([part, from, to]) => ({ part, outline: between(from, to) })),
    outline: [...between(jaw[0], jaw[1]), ...back],
  };
}

/** The network: three blocks, the second and third with filters split in two, each half as large; then the mean of each plane. */
function pointsOf(face: Planes, weights: Numbers): Float32Array {
  const rest = weights.slice(8);
  let planes = block(filtered(face, weights[0], weights[1], 2), weights.slice(2, 8));
  for (const three of [rest.slice(0, 9), rest.slice(9, 18)])
    planes = block(filteredApart(planes, three[0], three[1], three[2], 2), three.slice(3));
  const { depth, values } = planes,
    means = new Float32Array(depth),
    pixels = values.length / depth;
  for (let c = 0; c < depth; c++) {
    let sum = 0;
    for (let i = c; i < values.length; i += depth) sum += values[i];
    means[c] = sum / pixels;
  }
  const whole = mixed({ width: 1, height: 1, depth, values: means }, rest[18], rest[19]);
  return whole.values;
}

/** Two more layers, each seeing the sum of all before it (G. Huang and others: Densely Connected Convolutional Networks, 2017). */
function block(first: Planes, [apart2, mix2, bias2, apart3, mix3, bias3]: Numbers): Planes {
  const one = leaky(first, 0),
    two = filteredApart(one, apart2, mix2, bias2),
    three = filteredApart(leaky(added(one, two), 0), apart3, mix3, bias3);
  return leaky(added(one, two, three), 0);
}
