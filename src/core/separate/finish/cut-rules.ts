import type { SeparateRequest } from '../types.ts';
import type { CutRules } from './cuttable.ts';

/** A bold print has no use for parts smaller than so many times the least. */
const boldParts = 2.5;

/** Widths in pixels that knife and material demand; half a pixel more, so that the judge, who measures finer, agrees. */
export function cutRulesOf(request: SeparateRequest, mmPerPx: number): CutRules {
  const { material, knife } = request;
  const opening = Math.max(material.leastOpeningMm, knife?.leastWidthMm ?? 0),
    paper = Math.max(material.leastBridgeMm, knife?.leastWidthMm ?? 0);
  const px = (mm: number): number => mm / mmPerPx,
    large = request.way === 'bold' ? boldParts : 1;
  return {
    openingPx: px(opening) + 0.5,
    paperPx: px(paper) + 0.5,
    // Common practice: what is smaller than a few least widths square is lost in cutting or falls out in printing.
    leastInkPx: large * px(2 * opening) ** 2,
    leastIslandPx: large * px(3 * paper) ** 2,
  };
}
