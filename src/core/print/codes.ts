import { rasterizeInto, type Grid, type Region } from '../form/index.ts';

/** Which layers lie on each pixel: bit b set where the layer with bit b prints. Row by row from the top left. */
export interface Codes {
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly data: Uint8Array;
}

export interface CodedLayer {
  /** 0..7 */
  readonly bit: number;
  /** Where this layer's ink passes, mm from the image's top left corner. */
  readonly prints: Region;
  /** Register error of this run, mm. */
  readonly shiftMm?: readonly [number, number];
}

/** No proof needs more pixels than this; larger images get a coarser raster. */
const mostPixels = 16_000_000;

/** Pixel size for a proof of so many pixels per inch, coarser if the image is too large for it. */
export function proofGrid(widthMm: number, heightMm: number, pixelsPerInch = 300): Grid {
  const wish = 25.4 / pixelsPerInch;
  const mmPerPx = Math.max(wish, Math.sqrt((widthMm * heightMm) / mostPixels));
  return {
    originXMm: 0,
    originYMm: 0,
    mmPerPx,
    width: Math.max(1, Math.round(widthMm / mmPerPx)),
    height: Math.max(1, Math.round(heightMm / mmPerPx)),
  };
}

/** Rasterises layers at pixel centres. Ink that falls outside the image is not shown. */
export function layerCodes(layers: readonly CodedLayer[], grid: Grid): Codes {
  const data = new Uint8Array(grid.width * grid.height);
  for (const layer of layers) {
    const [dx, dy] = layer.shiftMm ?? [0, 0];
    rasterizeInto(data, layer.bit, layer.prints, { ...grid, originXMm: grid.originXMm - dx, originYMm: grid.originYMm - dy });
  }
  return { width: grid.width, height: grid.height, mmPerPx: grid.mmPerPx, data };
}

/** Replaces one layer's bit in a copy of the codes: what a moved or newly cut layer changes. */
export function withLayer(codes: Codes, layer: CodedLayer): Codes {
  const keep = ~(1 << layer.bit) & 0xff;
  const data = codes.data.map((code) => code & keep);
  const grid = {
    originXMm: -(layer.shiftMm?.[0] ?? 0),
    originYMm: -(layer.shiftMm?.[1] ?? 0),
    mmPerPx: codes.mmPerPx,
    width: codes.width,
    height: codes.height,
  };
  rasterizeInto(data, layer.bit, layer.prints, grid);
  return { ...codes, data };
}

/** Area of each of the 256 codes, mm². Their sum is the image. */
export function codeAreas(codes: Codes): Float64Array {
  const counts = new Float64Array(256);
  const { data } = codes;
  for (let i = 0; i < data.length; i++) counts[data[i]]++;
  const areaMm2 = codes.mmPerPx * codes.mmPerPx;
  return counts.map((n) => n * areaMm2);
}
