import type { Grid } from '../../form/index.ts';
import { cropOf } from '../../image/index.ts';
import { outside, span, type PartOnPrint } from '../prepare/faces-matter.ts';
import type { DrawnLines } from '../prepare/drawn/drawing.ts';
import type { SeparateRequest } from '../types.ts';

/** Outlines in shares of the picture → mm on the print. */
function onPrint({ picture, crop, sizeMm }: SeparateRequest, outline: readonly number[]): number[] {
  const part = crop ?? cropOf(undefined, picture, { widthMm: sizeMm.width, heightMm: sizeMm.height });
  return outline.map((v, i) => (i % 2 === 0 ? ((v - part.x) / part.width) * sizeMm.width : ((v - part.y) / part.height) * sizeMm.height));
}

/** Where faces lie on the print, 1 a pixel. */
export function onFaces(request: SeparateRequest, { width, height, mmPerPx }: Grid): Uint8Array | undefined {
  if (!request.faces?.length) return undefined;
  const out = new Uint8Array(width * height);
  for (const { outline } of request.faces) {
    const points = onPrint(request, outline).map((v) => v / mmPerPx),
      [x0, x1] = span(points, 0, 0, width),
      [y0, y1] = span(points, 1, 0, height);
    for (let y = y0; y <= y1; y++) for (let x = x0; x <= x1; x++) if (outside(points, x + 0.5, y + 0.5) === 0) out[y * width + x] = 1;
  }
  return out;
}

/** Eyes and mouths on the print, mm. */
export function partsOnPrint(request: SeparateRequest): PartOnPrint[] {
  return (request.faces ?? []).flatMap(({ parts }, face) =>
    parts.flatMap(({ part, outline }) =>
      part === 'eye' || part === 'mouth' ? [{ face, part, outlineMm: onPrint(request, outline) }] : [],
    ),
  );
}

/** Dots of a drawing on the print. */
export function dotsOnPrint(lines: DrawnLines | undefined, mmPerPx: number): PartOnPrint[] {
  return (lines?.dots ?? []).map((box) => {
    const [left, top, right, bottom] = box.map((v) => v * mmPerPx);
    return { face: -1, part: 'dot', outlineMm: [left, top, right, top, right, bottom, left, bottom] };
  });
}
