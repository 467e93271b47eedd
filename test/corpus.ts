import {
  boxRegion,
  parts,
  place,
  rasterize,
  readPathData,
  readSvg,
  regionBox,
  tidy,
  toTrueSize,
  type Box,
} from '../src/core/form/index.ts';
import { ProblemError } from '../src/core/problem.ts';
import { writePaths } from '../src/core/cutfile/index.ts';
import type { OfferGround } from '../src/core/plan/parts/cut/offers.ts';
import { defaultMaterials, makeStencil, type Stencil } from '../src/core/stencil/index.ts';

const aperture = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
const sheet = { minX: -20, minY: -20, maxX: 120, maxY: 120 };
const material = defaultMaterials[3];

export interface DrawingJudged {
  /** Code of the refusal; of the reading or of a stencil that doesn't hold. */
  readonly refused?: string;
  /** How many of its two stencils hold, as written. */
  readonly whole: number;
  readonly mended: number;
  /** Refused stencils without a way out, by side. */
  readonly stuck: readonly string[];
  /** A certificate that the written outline contradicts. */
  readonly lie?: string;
}

/** Another's look at the written paths: what it finds too narrow, in words. */
export type LookAtWritten = (d: string, cut: Box, promised: { readonly paperMm: number; readonly openingMm: number }) => readonly string[];

/** How many ways out there are of a refusal. */
export type WaysOut = (asked: OfferGround, refused: Stencil) => number;

/** A drawing, 80 mm large, as window and as piece: certificates of what is written, held against a flood fill. */
export function judgeDrawing(text: string, name: string, look?: LookAtWritten, waysOut?: WaysOut): DrawingJudged {
  let refused: string | undefined, lie: string | undefined;
  let whole = 0,
    mended = 0;
  const stuck: string[] = [];
  try {
    const shape = place(toTrueSize(readSvg(text, name).region, { widthMm: 80, heightMm: 80 }), [
      { xMm: 50, yMm: 50, angleDeg: 0, scale: 1, mirror: false },
    ]);
    for (const side of ['window', 'piece'] as const) {
      const asked = { shape, side, aperture, sheet, material, islands: 'bridge' } as const;
      const made = makeStencil(asked);
      const error = made.problems.find((p) => p.severity === 'error');
      const { data: d, certificate: written } = writePaths(made.cutLines, made, material);
      if (error) refused = `${side}: ${error.code}`;
      else if (!written.holds) refused = `${side}: not as written (${written.faults[0].kind})`;
      if (!written.holds || error) {
        if (waysOut && waysOut(asked, made) === 0) stuck.push(side);
        continue;
      }
      whole++;
      if (made.problems.some((p) => /^stencil-(strengthened|widened|closed|dropped)$/.test(p.code))) mended++;
      const pieces = floodPieces(d);
      const narrow = look?.(d, regionBox(made.cutLines), { paperMm: material.leastBridgeMm, openingMm: material.leastOpeningMm }) ?? [];
      if (narrow.length > 0) lie = `${side}: certified, but ${narrow.slice(0, 3).join('; ')}`;
      if (pieces !== 1) lie = `${side}: certified, but the written outline falls into ${pieces} pieces`;
    }
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    refused = error.problems[0].code;
  }
  return { refused, whole, mended, stuck, lie };
}

/**
 * Pieces of paper in the written outline: by the polygon library, and by plain flood fill on a finer raster of its own,
 * which leaves out specks under 0.2 mm² (the tip of a long point breaks up into single pixels).
 */
function floodPieces(d: string): number {
  const paper = tidy([...boxRegion(sheet).rings, ...readPathData(d, 0.003).rings], 'even-odd');
  const box = regionBox(paper);
  const step = 0.1,
    width = Math.round((box.maxX - box.minX) / step),
    height = Math.round((box.maxY - box.minY) / step);
  const mask = rasterize(paper, { originXMm: box.minX, originYMm: box.minY, mmPerPx: step, width, height });
  let count = 0;
  const speckPx = 0.2 / step / step;
  const stack: number[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] !== 1) continue;
    let size = 0;
    stack.push(start);
    mask[start] = 2;
    for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
      const x = p % width;
      size++;
      if (x > 0 && mask[p - 1] === 1) mask[stack[stack.push(p - 1) - 1]] = 2;
      if (x < width - 1 && mask[p + 1] === 1) mask[stack[stack.push(p + 1) - 1]] = 2;
      if (p >= width && mask[p - width] === 1) mask[stack[stack.push(p - width) - 1]] = 2;
      if (p + width < mask.length && mask[p + width] === 1) mask[stack[stack.push(p + width) - 1]] = 2;
    }
    if (size >= speckPx) count++;
  }
  return Math.max(count, parts(paper).length);
}
