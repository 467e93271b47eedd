import { softened } from '../../kernels/blur.ts';
import { asSeen } from '../bins.ts';

/** A picture on some raster. */
export interface Raster {
  /** 3 a pixel. */
  readonly lab: Float32Array;
  readonly width: number;
  readonly height: number;
}

/** Looked at so coarse: paper and a scanner's grain are gone, lines are still there. */
const longSidePx = 400;
/**
 * Colour changes by less than the first a mm of a print 200 mm long where it is flat, by more than the second at an edge, Lab. Drawings have little in
 * between: felt pen, lino, ink, flat graphics and clip art 0.01 to 0.08 of the area, photographs 0.12 to 0.66 (thirteen and thirty-one looked at).
 */
const flatSlope = 3,
  edgeSlope = 12,
  mostBetween = 0.1;
/** Nor is there much of it beside the edges: drawn up to 1.0 (a photograph's quiet dark ground: 1.7). */
const mostBesideEdges = 1.3;

/** Whether a picture is drawn: areas of one colour and crisp edges, and hardly anything that is neither. */
export function isDrawn(raster: Raster): boolean {
  const { lab, width, height } = shrunk(raster, longSidePx),
    soft = softened(seenDarks(lab), width, height, 0.8),
    mmPerPx = 200 / longSidePx;
  let between = 0,
    edges = 0;
  const slope = slopesOf(soft, width, height);
  for (const v of slope) {
    if (v >= edgeSlope * mmPerPx) edges++;
    else if (v >= flatSlope * mmPerPx) between++;
  }
  return between <= mostBetween * slope.length && between <= mostBesideEdges * edges;
}

/**
 * Where it is flat a drawing is nearly everywhere so near to a few colours (Lab): up to 0.04 of it is not, and on average 1.1 lie between; of a gradient, of
 * soft shades or a photograph of dull things 0.09 and more are not, or 1.7 and more lie between.
 */
const nearColour = 5,
  mostUnlike = 0.06,
  mostOff = 1.5,
  softMm = 0.5;

/** Whether areas of one colour each say what there is to see. */
export function isLike({ lab, width, height }: Raster, flat: Float32Array, mmPerPx: number): boolean {
  const soft = softened(seenDarks(lab), width, height, softMm / mmPerPx),
    slope = slopesOf(soft, width, height),
    seen = seenDarks(flat);
  let all = 0,
    unlike = 0,
    off = 0;
  for (let i = 0; i < slope.length; i++) {
    if (slope[i] >= flatSlope * mmPerPx) continue;
    const far = Math.hypot(soft[3 * i] - seen[3 * i], soft[3 * i + 1] - seen[3 * i + 1], soft[3 * i + 2] - seen[3 * i + 2]);
    all++;
    off += far;
    if (far > nearColour) unlike++;
  }
  return unlike <= mostUnlike * all && off <= mostOff * all;
}

/** Averaged over whole pixels, so that the long side has about as many. */
export function shrunk(raster: Raster, longPx: number): Raster {
  const { lab, width, height } = raster,
    factor = Math.floor(Math.max(width, height) / longPx);
  if (factor < 2) return raster;
  const across = Math.floor(width / factor),
    down = Math.floor(height / factor),
    out = new Float32Array(across * down * 3);
  for (let y = 0; y < down * factor; y++)
    for (let x = 0; x < across * factor; x++) {
      const from = (y * width + x) * 3,
        to = (Math.floor(y / factor) * across + Math.floor(x / factor)) * 3;
      for (let c = 0; c < 3; c++) out[to + c] += lab[from + c];
    }
  const whole = factor * factor;
  return { lab: out.map((v) => v / whole), width: across, height: down };
}

/** Darker than this (L*) all is black, and of what lies below only so much is seen: an unevenly inked black has no edges in it. common practice */
const blackL = 30,
  seenOfBlack = 0.2;

/** Near-blacks nearly as one. */
export const seenDarks = (lab: Float32Array): Float32Array => asSeen(lab, blackL, seenOfBlack);

/** How steeply colour changes, Lab a pixel. */
export function slopesOf(lab: Float32Array, width: number, height: number): Float32Array {
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x,
        left = 3 * (x > 0 ? i - 1 : i),
        right = 3 * (x + 1 < width ? i + 1 : i),
        up = 3 * (y > 0 ? i - width : i),
        down = 3 * (y + 1 < height ? i + width : i);
      let sum = 0;
      for (let c = 0; c < 3; c++) sum += (lab[right + c] - lab[left + c]) ** 2 + (lab[down + c] - lab[up + c]) ** 2;
      out[i] = Math.sqrt(sum) / 2;
    }
  return out;
}
