import type { Crop } from '../../image/index.ts';
import type { ImportanceMap } from '../types.ts';

/** A box or a brush stroke on the picture, with how often a wrong colour counts there: 1 is usual, 0 not at all. In shares of the picture; a radius in shares of its width. */
export type Mark =
  | {
      readonly kind: 'box';
      readonly weight: number;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    }
  | { readonly kind: 'stroke'; readonly weight: number; readonly radius: number; readonly points: readonly (readonly [number, number])[] };

/** What a printmaker says of a place. */
export const markWeights = { more: 4, less: 0.25, none: 0 } as const;
export type WeightName = keyof typeof markWeights;
export const weightName = (weight: number): WeightName => (weight > 1 ? 'more' : weight > 0 ? 'less' : 'none');

/** Enough to follow a brush; the separation reads it on its own raster. */
const mapWidth = 320;

/**
 * What was marked on the picture → importance over the part that is printed. Later marks lie over earlier ones; without marks nothing.
 * @param own what the picture itself says, over all of it, and how far that counts (0..1). A mark that makes a place matter more
 * keeps what is drawn there ahead of what lies between.
 */
export function importanceOf(
  marks: readonly Mark[],
  crop: Crop,
  picture: { readonly width: number; readonly height: number },
  own?: { readonly map: ImportanceMap; readonly share: number },
): ImportanceMap | undefined {
  if (marks.length === 0 && !(own && own.share > 0)) return undefined;
  const width = mapWidth,
    height = Math.max(1, Math.round((mapWidth * crop.height * picture.height) / (crop.width * picture.width)));
  const ground = new Float32Array(width * height).fill(1);
  if (own)
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const u = Math.min(own.map.width - 1, Math.floor((crop.x + ((x + 0.5) / width) * crop.width) * own.map.width)),
          v = Math.min(own.map.height - 1, Math.floor((crop.y + ((y + 0.5) / height) * crop.height) * own.map.height));
        ground[y * width + x] = 1 + own.share * (own.map.weight[Math.max(0, v) * own.map.width + Math.max(0, u)] - 1);
      }
  const weight = ground.slice();
  // Circles are round in the picture, not in its shares: distances in picture widths.
  const tall = picture.height / picture.width;
  for (const mark of marks) {
    const lies = mark.kind === 'box' ? inBox(mark) : onStroke(mark, tall);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        if (lies(crop.x + ((x + 0.5) / width) * crop.width, crop.y + ((y + 0.5) / height) * crop.height))
          weight[y * width + x] = mark.weight * (mark.weight > 1 ? Math.max(1, ground[y * width + x]) : ground[y * width + x]);
      }
  }
  return { width, height, weight };
}

type Lies = (x: number, y: number) => boolean;

function inBox({ x: left, y: top, width, height }: Mark & { kind: 'box' }): Lies {
  return (x, y) => x >= left && x <= left + width && y >= top && y <= top + height;
}

function onStroke({ points, radius }: Mark & { kind: 'stroke' }, tall: number): Lies {
  const xs = points.map((p) => p[0]),
    ys = points.map((p) => p[1] * tall);
  const box = {
    minX: Math.min(...xs) - radius,
    maxX: Math.max(...xs) + radius,
    minY: Math.min(...ys) - radius,
    maxY: Math.max(...ys) + radius,
  };
  return (x, share) => {
    const y = share * tall;
    if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return false;
    for (let i = 0; i < xs.length; i++) {
      const k = Math.max(0, i - 1);
      const dx = xs[i] - xs[k],
        dy = ys[i] - ys[k],
        long = dx * dx + dy * dy;
      const t = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - xs[k]) * dx + (y - ys[k]) * dy) / long));
      if (Math.hypot(x - xs[k] - t * dx, y - ys[k] - t * dy) <= radius) return true;
    }
    return false;
  };
}
