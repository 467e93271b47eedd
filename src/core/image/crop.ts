import type { Crop } from './scale.ts';

/** A picture's pixels. */
export interface SizePx {
  readonly width: number;
  readonly height: number;
}

/** The image as it will be printed. */
export interface ImageMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

const whole: Crop = { x: 0, y: 0, width: 1, height: 1 };

/** What is printed of a picture, in shares of it: the largest part with the image's proportions in the middle of what was chosen, or of the whole. */
export function cropOf(chosen: Crop | undefined, picture: SizePx, image: ImageMm): Crop {
  const crop = chosen ?? whole;
  // Share of the picture's height that a crop as wide as the picture takes.
  const tall = (picture.width / picture.height) * (image.heightMm / image.widthMm);
  const width = Math.min(crop.width, crop.height / tall),
    height = width * tall;
  return { x: crop.x + (crop.width - width) / 2, y: crop.y + (crop.height - height) / 2, width, height };
}

/** How high an image so wide becomes that prints all of a crop, mm. */
export function heightOfCrop(crop: Crop | undefined, picture: SizePx, widthMm: number): number {
  const { width, height } = crop ?? whole;
  return (widthMm * height * picture.height) / (width * picture.width);
}

/** A place as it is kept: a ten-thousandth of the picture is finer than any hand. */
export function tidyShare(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}

/** The crop as it is kept. Never beyond the picture's edge. */
export function tidyCrop(crop: Crop): Crop {
  const x = tidyShare(crop.x),
    y = tidyShare(crop.y);
  return { x, y, width: Math.min(1 - x, tidyShare(crop.width)), height: Math.min(1 - y, tidyShare(crop.height)) };
}
