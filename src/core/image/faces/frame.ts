import { whitePoints } from '../../colour/index.ts';
import { scaledLab, type Crop } from '../scale.ts';
import { pictureRgb } from '../screen.ts';
import type { Picture } from '../types.ts';
import type { Planes } from './network.ts';

/** A picture as bytes. */
export interface Picture8 {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

export function pictureOn(picture: Picture, part: Crop, width: number, height: number): Picture8 {
  return { width, height, rgb: pictureRgb(scaledLab(picture, part, width, height, whitePoints.D50)) };
}

/** As networks are shown pictures: about nought, black where there is no picture. */
export function framed({ width, height, rgb }: Picture8, across: number, down: number, mean: readonly number[], centred: boolean): Planes {
  const values = Float32Array.from({ length: across * down * 3 }, (_, i) => -mean[i % 3] / 255),
    left = centred ? Math.floor((across - width) / 2) : 0,
    top = centred ? Math.floor((down - height) / 2) : 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width * 3; x++) values[((y + top) * across + left) * 3 + x] = (rgb[y * width * 3 + x] - mean[x % 3]) / 255;
  return { width: across, height: down, depth: 3, values };
}
