import type { Crop } from '../../../../core/separate/index.ts';

const smallest = 0.05;

export function movedCrop(crop: Crop, dx: number, dy: number): Crop {
  return { ...crop, x: within(crop.x + dx, 0, 1 - crop.width), y: within(crop.y + dy, 0, 1 - crop.height) };
}

/** The crop made so wide (share of the picture), its proportions kept; the point at (u, v) of the frame stays where it is, as far as the picture allows. */
export function sizedCrop(crop: Crop, wish: number, u = 0.5, v = 0.5): Crop {
  const tall = crop.height / crop.width;
  const width = within(wish, Math.min(smallest, crop.width), Math.min(1, 1 / tall)),
    height = width * tall;
  return {
    width,
    height,
    x: within(crop.x + u * (crop.width - width), 0, 1 - width),
    y: within(crop.y + v * (crop.height - height), 0, 1 - height),
  };
}

function within(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(Math.max(low, high), value));
}
