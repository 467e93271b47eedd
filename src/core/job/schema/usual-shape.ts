import type { Job, JobMade } from './schema.ts';

/** In the order in which they are offered. */
export const madeKinds: readonly JobMade['kind'][] = ['flat', 'band', 'circle', 'ring', 'comb', 'torn', 'wave', 'grid', 'letters'];

/** A made shape of a size that suits the image, to begin with. */
export function usualShape(kind: JobMade['kind'], { widthMm, heightMm }: Job['image']): JobMade {
  const least = Math.min(widthMm, heightMm);
  const half = Math.max(10, Math.round(least / 2));
  switch (kind) {
    case 'flat':
      return { kind, widthMm, heightMm };
    case 'band':
      return { kind, widthMm, heightMm: Math.round(heightMm / 5) };
    case 'circle':
      return { kind, acrossMm: half };
    case 'ring':
      return { kind, acrossMm: half, bandMm: Math.max(4, Math.round(half / 8)) };
    case 'comb':
      return { kind, stripes: 8, stripeMm: 6, gapMm: 6, lengthMm: half, backMm: 10 };
    case 'torn':
      return { kind, widthMm, heightMm: Math.round(heightMm / 3), edges: 'top', roughMm: 8, seed: 1 };
    case 'wave':
      return { kind, widthMm, heightMm: Math.round(heightMm / 4), edges: 'top', lengthMm: Math.round(widthMm / 4), swingMm: 10 };
    case 'grid':
      return { kind, columns: 5, rows: 5, cellMm: Math.max(4, Math.round(half / 6)), gapMm: 4 };
    case 'letters':
      return { kind, text: 'ABC', capHeightMm: Math.max(15, Math.round(least / 5)), weight: 'bold', bridgeMm: 2.5, spaceMm: 1 };
  }
}
