import {
  boxRegion,
  parts,
  place,
  rasterize,
  readPathData,
  readSvg,
  regionArea,
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

/** One of a drawing's two stencils. Times are the processor's: other work on the machine must not look like a hang. */
export interface SideJudged {
  readonly side: 'window' | 'piece';
  readonly holds: boolean;
  /** Code of the refusal. */
  readonly refused?: string;
  readonly faults: number;
  /** Ways out of a refusal. */
  readonly ways?: number;
  readonly ms: number;
  readonly waysMs: number;
  /** Codes of what was told beside it. */
  readonly told: readonly string[];
}

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
  readonly readMs: number;
  readonly sides: readonly SideJudged[];
}

/** Another's look at the written paths: what it finds too narrow, in words. */
export type LookAtWritten = (d: string, cut: Box, promised: { readonly paperMm: number; readonly openingMm: number }) => readonly string[];

/** How many ways out there are of a refusal. */
export type WaysOut = (asked: OfferGround, refused: Stencil) => number;

export const spentMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** A drawing, 80 mm large, as it is asked for. */
export function asked80(text: string, name: string, side: 'window' | 'piece'): OfferGround {
  const shape = place(toTrueSize(readSvg(text, name).region, { widthMm: 80, heightMm: 80 }), [
    { xMm: 50, yMm: 50, angleDeg: 0, scale: 1, mirror: false },
  ]);
  return { shape, side, aperture, sheet, material, islands: 'bridge' };
}

export interface Judging {
  readonly look?: LookAtWritten;
  readonly waysOut?: WaysOut;
  /** False: as window only. */
  readonly pieceToo?: boolean;
}

/** A drawing, 80 mm large, as window and as piece: certificates of what is written, held against a flood fill. */
export function judgeDrawing(text: string, name: string, { look, waysOut, pieceToo = true }: Judging = {}): DrawingJudged {
  const start = spentMs();
  const sides: SideJudged[] = [];
  let refused: string | undefined, lie: string | undefined;
  let readMs = 0;
  try {
    const window = asked80(text, name, 'window');
    readMs = spentMs() - start;
    for (const asked of pieceToo ? [window, { ...window, side: 'piece' as const }] : [window]) {
      const found = judgeSide(asked, look, waysOut);
      sides.push(found.judged);
      refused = found.judged.refused ?? refused;
      lie = found.lie ?? lie;
    }
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    refused = error.problems[0].code;
  }
  return {
    refused,
    lie,
    readMs,
    sides,
    whole: sides.filter((s) => s.holds).length,
    mended: sides.filter((s) => s.holds && s.told.some((code) => mends.test(code))).length,
    stuck: sides.filter((s) => s.ways === 0).map((s) => s.side),
  };
}

const mends = /^stencil-(strengthened|widened|closed|dropped)$/;

function judgeSide(asked: OfferGround, look?: LookAtWritten, waysOut?: WaysOut): { readonly judged: SideJudged; readonly lie?: string } {
  const { side } = asked;
  const start = spentMs();
  const made = makeStencil(asked);
  const error = made.problems.find((p) => p.severity === 'error');
  const { data: d, certificate: written } = writePaths(made.cutLines, made, material);
  const ms = spentMs() - start;
  const told = made.problems.map((p) => p.code);
  const shared = { side, ms, told, faults: made.certificate.faults.length };
  if (!written.holds || error) {
    const from = spentMs();
    const ways = waysOut?.(asked, made);
    const why = error?.code ?? `not as written (${written.faults[0].kind})`;
    return { judged: { ...shared, holds: false, refused: `${side}: ${why}`, ways, waysMs: spentMs() - from } };
  }
  const judged = { ...shared, holds: true, waysMs: 0 };
  const pieces = floodPieces(d);
  if (pieces !== 1) return { judged, lie: `${side}: certified, but the written outline falls into ${pieces} pieces` };
  const narrow = look?.(d, regionBox(made.cutLines), { paperMm: material.leastBridgeMm, openingMm: material.leastOpeningMm }) ?? [];
  return { judged, lie: narrow.length > 0 ? `${side}: certified, but ${narrow.slice(0, 3).join('; ')}` : undefined };
}

/** What rounding to microns leaves where an outline meets itself: a piece of paper of 1 by 6 microns is none. */
const crumbMm2 = 0.001;

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
  return Math.max(count, parts(paper).filter((part) => regionArea(part) >= crumbMm2).length);
}
