import { blurPlane, gaussTaps } from '../kernels/blur.ts';

/** What a print keeps of the picture's drawing, as seen at arm's length or from as far as a larger print asks for. */
export interface Structure {
  /** Share of the picture's edges that the print has too, strong ones counting more. */
  readonly kept: number;
  /** Share of the print's edges that are not in the picture. */
  readonly invented: number;
}

/**
 * The eye sees most at about four cycles a degree (F. W. Campbell, J. G. Robson: Application of Fourier analysis to the visibility of gratings,
 * 1968): at 600 mm a period of 2.6 mm, which is a Gaussian of 0.42 mm.
 */
const blurPerMm = 0.42 / 600,
  armMm = 600,
  diagonals = 1.5;
/** L* a mm of the blurred picture from which an edge is one (a step of six L*), and beyond which it counts no more. */
const leastSlope = 6,
  mostSlope = 30;
/** An edge is met by one of the other picture so near, running the same way, at least so strong beside it. */
const nearBlurs = 2.4,
  sameWay = 0.7,
  leastOfOther = 0.35;

/** Lines of a picture: slope of lightness, L* a mm, where it is a crest; 0 elsewhere. */
export interface Edges {
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly dx: Float32Array;
  readonly dy: Float32Array;
  readonly slope: Float32Array;
  readonly crest: Uint8Array;
}

export function edgesOf(lightness: Float32Array, width: number, height: number, mmPerPx: number): Edges {
  const soft = new Float32Array(lightness.length);
  blurPlane(lightness, width, height, gaussTaps(blurMm(width, height, mmPerPx) / mmPerPx), soft);
  const dx = new Float32Array(soft.length),
    dy = new Float32Array(soft.length),
    slope = new Float32Array(soft.length),
    crest = new Uint8Array(soft.length);
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1; x + 1 < width; x++) {
      const i = y * width + x;
      dx[i] = (soft[i + 1] - soft[i - 1]) / (2 * mmPerPx);
      dy[i] = (soft[i + width] - soft[i - width]) / (2 * mmPerPx);
      slope[i] = Math.hypot(dx[i], dy[i]);
    }
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1; x + 1 < width; x++) {
      const i = y * width + x,
        s = slope[i];
      if (s < leastSlope) continue;
      const across = Math.abs(dx[i]) > Math.abs(dy[i]) ? 1 : width;
      if (s >= slope[i - across] && s > slope[i + across]) crest[i] = 1;
    }
  return { width, height, mmPerPx, dx, dy, slope, crest };
}

const blurMm = (width: number, height: number, mmPerPx: number): number =>
  blurPerMm * Math.max(armMm, diagonals * Math.hypot(width, height) * mmPerPx);

/** Crests of one picture that the other has not, 1 each; and the share of all crests that it has, stronger ones counting more. */
export function metBy(edges: Edges, other: Edges): { readonly lost: Uint8Array; readonly share: number } {
  const { width, height, mmPerPx, dx, dy, slope, crest } = edges;
  const reach = Math.max(1, Math.round((nearBlurs * blurMm(width, height, mmPerPx)) / mmPerPx));
  const lost = new Uint8Array(crest.length);
  let met = 0,
    all = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (crest[i] === 0) continue;
      const counts = Math.min(mostSlope, slope[i]);
      all += counts;
      if (meets(i, x, y)) met += counts;
      else lost[i] = 1;
    }
  return { lost, share: all > 0 ? met / all : 1 };

  function meets(i: number, x: number, y: number): boolean {
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++)
      for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
        const j = v * width + u,
          there = other.slope[j];
        if (there < leastOfOther * slope[i] || (u - x) ** 2 + (v - y) ** 2 > reach * reach) continue;
        if (dx[i] * other.dx[j] + dy[i] * other.dy[j] > sameWay * slope[i] * there) return true;
      }
    return false;
  }
}

/** Boundaries found and boundaries made up, as the two sides of boundary matching (Martin, Fowlkes, Malik 2004). */
export function structureOf(picture: Edges, print: Edges): Structure {
  return { kept: metBy(picture, print).share, invented: 1 - metBy(print, picture).share };
}

/** A picture's edges are asked for with every print of it. */
const lastEdges = new WeakMap<Float32Array, { readonly mmPerPx: number; readonly edges: Edges }>();

export function pictureEdges(lab: Float32Array, width: number, height: number, mmPerPx: number): Edges {
  const last = lastEdges.get(lab);
  if (last?.mmPerPx === mmPerPx) return last.edges;
  const edges = edgesOf(
    Float32Array.from({ length: width * height }, (_, i) => lab[3 * i]),
    width,
    height,
    mmPerPx,
  );
  lastEdges.set(lab, { mmPerPx, edges });
  return edges;
}

export function printEdges(codes: Uint8Array, overlapLab: Float64Array, width: number, height: number, mmPerPx: number): Edges {
  return edgesOf(
    Float32Array.from(codes, (code) => overlapLab[3 * code]),
    width,
    height,
    mmPerPx,
  );
}
