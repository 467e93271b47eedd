import { offsetRegion, tidy, type Region, type Segment } from '../form/index.ts';
import { problem, type Problem } from '../problem.ts';
import type { Certificate, Material } from '../stencil/index.ts';
import { length, lengths, list, say, type Saying } from '../../words/say.ts';
import { writePaths, type StencilLines } from './write-paths.ts';

/** Knife paths as they are drawn: one fit for page, SVG and DXF. Nearer than a hand can cut, so the proof keeps its pixels. */
export interface CutLines {
  readonly outlines: readonly (readonly Segment[])[];
  /** The `d` of an SVG path, mm. */
  readonly data: string;
}

/** A stencil as it is written. */
export interface WrittenCut {
  /** Width that the machine takes away along each line, mm; 0 for a knife. */
  readonly kerfMm: number;
  /** The line itself: what a hand cuts, and what the pages draw. */
  readonly knife: CutLines;
  /** What goes into a file; with a kerf, half of it inside what drops out. null: not proven as written, so no file is made. */
  readonly machine: CutLines | null;
  readonly problems: readonly Problem[];
}

export interface ToWrite extends StencilLines {
  readonly material: Material;
  readonly kerfMm: number;
  /** Where the Job says the cut. */
  readonly place: string;
}

/**
 * A stencil's knife paths as they will be written, proven on the written text: fitted with curves where that holds, else point
 * by point. With a kerf they are proven for what is left when that is gone. A stencil that does not hold has lines to look
 * at and none to cut; one that holds as drawn but not as written is a problem too.
 */
export function writeCut({ material, kerfMm, place, ...stencil }: ToWrite): WrittenCut {
  const { outlines, data, certificate } = writePaths(stencil.cutLines, stencil, material);
  const knife: CutLines = { outlines, data };
  const unproven = (problems: readonly Problem[]): WrittenCut => ({ kerfMm, knife, machine: null, problems });
  // What does not hold as drawn is told with the stencil.
  if (!stencil.certificate.holds) return unproven([]);
  if (!certificate.holds) return unproven([weak(certificate, place)]);
  if (kerfMm <= 0) return { kerfMm: 0, knife, machine: knife, problems: [] };
  const inside = insideBy(stencil, kerfMm);
  if (!inside)
    return unproven([
      problem('error', 'kerf-too-wide', place, say('stencil.kerfTooWide', { kerf: length(kerfMm) }), say('stencil.finerTool')),
    ]);
  // On the line as written paper is broader by one kerf than it will be, and openings narrower.
  const cut = writePaths(inside, stencil, {
    ...material,
    leastBridgeMm: material.leastBridgeMm + kerfMm,
    leastOpeningMm: Math.max(0.05, material.leastOpeningMm - kerfMm),
  });
  if (!cut.certificate.holds) return unproven([weak(cut.certificate, place)]);
  return { kerfMm, knife, machine: { outlines: cut.outlines, data: cut.data }, problems: [] };
}

function weak({ faults }: Certificate, place: string): Problem {
  const places = faults.slice(0, 3).map((f): Saying => say('stencil.weakAt', { at: lengths(f.atMm, ',', 0), width: length(f.widthMm, 1) }));
  return problem(
    'error',
    'cut-file-weak',
    place,
    say('stencil.weakAsWritten', { places: list(places, 'semicolon') }),
    say('stencil.enlargeThere'),
  );
}

/** What drops out, smaller by half the kerf all round: the machine takes the rest. null where something would vanish or fall apart. */
function insideBy({ cutLines }: StencilLines, kerfMm: number): Region | null {
  const openings = tidy(cutLines.rings, 'even-odd');
  const inside = offsetRegion(openings, -kerfMm / 2);
  return inside.rings.length === openings.rings.length ? inside : null;
}
