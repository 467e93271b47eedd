import type { Job, JobPicture } from '../../../core/job/index.ts';
import type { Crop } from '../../../core/separate/index.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

const smallest = 0.05;

/** Share of the picture's height that a crop as wide as the picture takes to have the image's proportions. */
function tallOf(picture: Size, image: Job['image']): number {
  return (picture.width / picture.height) * (image.heightMm / image.widthMm);
}

/** The largest part in the middle that has the image's proportions: what is printed when nothing was chosen. */
export function middleCrop(picture: Size, image: Job['image']): Crop {
  return shapedCrop({ x: 0, y: 0, width: 1, height: 1 }, picture, image);
}

/** A crop of the image's proportions within another, around the same middle. */
export function shapedCrop(crop: Crop, picture: Size, image: Job['image']): Crop {
  const tall = tallOf(picture, image);
  const width = Math.min(crop.width, crop.height / tall), height = width * tall;
  return { x: crop.x + (crop.width - width) / 2, y: crop.y + (crop.height - height) / 2, width, height };
}

/** What is printed: the crop chosen, kept to the image's proportions should the image have changed since. */
export function cropOf(chosen: JobPicture['crop'], picture: Size, image: Job['image']): Crop {
  return chosen ? shapedCrop(chosen, picture, image) : middleCrop(picture, image);
}

export function movedCrop(crop: Crop, dx: number, dy: number): Crop {
  return { ...crop, x: within(crop.x + dx, 0, 1 - crop.width), y: within(crop.y + dy, 0, 1 - crop.height) };
}

/** The crop made so wide (share of the picture), its proportions kept; the point at (u, v) of the frame stays where it is, as far as the picture allows. */
export function sizedCrop(crop: Crop, wish: number, u = 0.5, v = 0.5): Crop {
  const tall = crop.height / crop.width;
  const width = within(wish, Math.min(smallest, crop.width), Math.min(1, 1 / tall)), height = width * tall;
  return { width, height, x: within(crop.x + u * (crop.width - width), 0, 1 - width), y: within(crop.y + v * (crop.height - height), 0, 1 - height) };
}

function within(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(Math.max(low, high), value));
}

/** Numbers as they are kept: a ten-thousandth of the picture is finer than any hand. Never beyond its edge. */
export function tidyCrop(crop: Crop): Crop {
  const tidy = (v: number): number => Math.round(v * 10_000) / 10_000;
  const x = tidy(crop.x), y = tidy(crop.y);
  return { x, y, width: Math.min(1 - x, tidy(crop.width)), height: Math.min(1 - y, tidy(crop.height)) };
}
