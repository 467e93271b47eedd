import type { Box } from '../core/form/index.ts';

/** Register marks stand outside the image, in the stencil's margin: same place on every stencil, SVG, DXF and page alike. */
export interface Mark {
  readonly x: number;
  readonly y: number;
}

/** How far a mark's arms reach, and how far its middle stands off the image. */
export const markArmMm = 5;
const markOffMm = 7;

/** One mark at the middle of each side; on narrow stencil margins they come nearer to the image. */
export function registerMarks(image: { readonly widthMm: number; readonly heightMm: number }, sheet: Box): Mark[] {
  const room = Math.min(-sheet.minX, -sheet.minY, sheet.maxX - image.widthMm, sheet.maxY - image.heightMm);
  const off = Math.min(markOffMm, Math.max(0, room / 2));
  const { widthMm: w, heightMm: h } = image;
  return [
    { x: w / 2, y: -off },
    { x: w + off, y: h / 2 },
    { x: w / 2, y: h + off },
    { x: -off, y: h / 2 },
  ];
}

/** What of a stencil must be drawn at true size: the image and its marks. The sheet's own edge is cut with a ruler. */
export function drawnExtent(image: { readonly widthMm: number; readonly heightMm: number }, sheet: Box): Box {
  const reach = markOffMm + markArmMm + 1;
  return {
    minX: Math.max(sheet.minX, -reach),
    minY: Math.max(sheet.minY, -reach),
    maxX: Math.min(sheet.maxX, image.widthMm + reach),
    maxY: Math.min(sheet.maxY, image.heightMm + reach),
  };
}
