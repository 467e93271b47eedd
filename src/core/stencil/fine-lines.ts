import { boxRegion, offsetRegion, regionArea, regionBox, regionPerimeter, takeAway, unite, type Box, type Region } from '../form/index.ts';
import { problem, type Problem } from '../problem.ts';
import { area, say, share, type Saying } from '../../words/say.ts';
import type { Limits } from './proof/certificate.ts';
import { spareMm } from './proof/settling.ts';
import { hairMm } from './proof/windows.ts';
import { pieces } from './raster/rings.ts';

/** Where hairlines make up more of what prints than this, the drawing is made of fine lines and means them. */
export const fineShare = 0.25;
/** Less than this is what a disc leaves in a corner. */
const cornerMm2 = 0.05;
/** More fields than this are a net. */
const manyFields = 40;

export interface FineLines {
  readonly openings: Region;
  /** Where fields print, to the middle of the lines around them. */
  readonly togetherMm2: number;
  /** Lines that became as broad as the knife needs; fields between them that are too small for paper and print with them. */
  readonly broader: number;
  readonly filled: readonly Region[];
}

/**
 * A drawing made of hairlines as a pen of the knife's width would draw it: its lines become as broad as the least opening
 * before anything is bridged, and fields between them that hold no disc of a bridge's width print. null for other drawings.
 */
export function fineLines(openings: Region, sheet: Box, limits: Limits): FineLines | null {
  const areaMm2 = regionArea(openings);
  // A quarter of it in hairlines has at least so long an outline.
  if (areaMm2 === 0 || regionPerimeter(openings) * hairMm < 2 * fineShare * areaMm2) return null;
  const half = hairMm / 2;
  const lines = pieces(takeAway(openings, offsetRegion(offsetRegion(openings, -half), half + 0.01)));
  const hairs = lines.filter((line) => regionArea(line) >= cornerMm2);
  if (hairs.reduce((sum, line) => sum + regionArea(line), 0) < fineShare * areaMm2) return null;
  const openingMm = limits.leastOpeningMm + spareMm;
  const broad = hairs.map((line) => {
    const widthMm = Math.min(hairMm, (2 * regionArea(line)) / regionPerimeter(line));
    return offsetRegion(line, (openingMm - widthMm) / 2);
  });
  const drawn = unite([openings, ...broad]);
  const fields = pieces(takeAway(boxRegion(sheet), drawn)).filter((part) => regionBox(part).minX > sheet.minX + 0.001);
  const smaller = (list: readonly Region[], mm: number): Region[] => list.filter((part) => offsetRegion(part, -mm / 2).rings.length === 0);
  const tiny = smaller(fields, limits.leastBridgeMm);
  // A net of many has no room for a bridge to each and a line beside it.
  const filled = fields.length - tiny.length > manyFields ? smaller(fields, limits.leastBridgeMm + openingMm) : tiny;
  const togetherMm2 = regionArea(unite(filled.map((part) => offsetRegion(part, openingMm / 2))));
  return {
    togetherMm2,
    openings: unite([drawn, ...filled.map((part) => offsetRegion(part, 0.006, 'miter'))]),
    broader: hairs.length,
    filled,
  };
}

/** So much of all lines together in fields that went changes the picture. */
const muchFilled = 0.3;

/** What became of fine lines; with ways out where they run together. */
export function toldLines({ broader, filled, togetherMm2, openings }: FineLines, place: string | Saying): Problem {
  const linesMm2 = regionArea(openings);
  const much = togetherMm2 > muchFilled * linesMm2;
  return problem(
    'warning',
    much ? 'stencil-much-lost' : 'stencil-lines-broader',
    place,
    filled.length === 0
      ? say('stencil.linesBroader', { n: broader })
      : say('stencil.linesTogether', { n: filled.length, area: area(togetherMm2), part: share(Math.min(1, togetherMm2 / linesMm2), 0) }),
    say(much ? 'stencil.takeAnOffer' : 'stencil.keepHairlines'),
  );
}
