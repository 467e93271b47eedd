import type { Codes } from './codes.ts';

/** Where one layer fell: shift of the image's middle, and turn about it, clockwise as seen. */
export interface FallenLayer {
  readonly bit: number;
  readonly dxMm: number;
  readonly dyMm: number;
  readonly angleDeg: number;
}

/**
 * Codes of a sheet on which every layer fell a little off: each pixel looks up, layer by layer, what lay there before the
 * layer moved (nearest pixel; ink that would come from outside the image is not there). Bits of other layers are dropped.
 */
export function shiftCodes(codes: Codes, layers: readonly FallenLayer[]): Codes {
  const { width, height, mmPerPx, data } = codes;
  const out = new Uint8Array(data.length);
  const cx = width / 2,
    cy = height / 2;
  for (const { bit, dxMm, dyMm, angleDeg } of layers) {
    const mask = 1 << bit;
    // From where it lies now back to where it lay: move back, then turn back.
    const cos = Math.cos((-angleDeg * Math.PI) / 180),
      sin = Math.sin((-angleDeg * Math.PI) / 180);
    const dx = dxMm / mmPerPx,
      dy = dyMm / mmPerPx;
    for (let y = 0, to = 0; y < height; y++) {
      const py = y + 0.5 - cy - dy;
      let fx = (0.5 - cx - dx) * cos - py * sin + cx;
      let fy = (0.5 - cx - dx) * sin + py * cos + cy;
      for (let x = 0; x < width; x++, to++, fx += cos, fy += sin) {
        const ix = Math.floor(fx),
          iy = Math.floor(fy);
        if (ix >= 0 && iy >= 0 && ix < width && iy < height) out[to] |= data[iy * width + ix] & mask;
      }
    }
  }
  return { width, height, mmPerPx, data: out };
}
