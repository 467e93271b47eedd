import { say, type Saying } from '../../words/say.ts';

/** What stencils are cut from. A studio's list; all figures are its own to change. */
export interface Material {
  readonly id: string;
  /** The studio's own word as it was written; of the usual materials, which nobody named, a word of each language. */
  readonly name: Saying;
  readonly thicknessMm: number;
  /** The narrowest strip of it that holds while it is cut, laid and printed. */
  readonly leastBridgeMm: number;
  /** The narrowest line a knife can cut out of it. */
  readonly leastOpeningMm: number;
  /** Sheets it prints before it is spent: from, to. */
  readonly prints: readonly [number, number];
  /** Can be washed and used again for another layer or another day. */
  readonly washable: boolean;
}

/** What a studio has before it says otherwise: common practice (thickness, least widths); lives of newsprint and coated paper from published accounts, see docs. */
export const defaultMaterials: readonly Material[] = [
  {
    id: 'newsprint',
    name: say('stencil.newsprint'),
    thicknessMm: 0.07,
    leastBridgeMm: 3,
    leastOpeningMm: 1,
    prints: [2, 6],
    washable: false,
  },
  {
    id: 'coated-paper',
    name: say('stencil.coatedPaper'),
    thicknessMm: 0.1,
    leastBridgeMm: 2,
    leastOpeningMm: 1,
    prints: [20, 50],
    washable: false,
  },
  {
    id: 'waxed-paper',
    name: say('stencil.waxedPaper'),
    thicknessMm: 0.09,
    leastBridgeMm: 2,
    leastOpeningMm: 1,
    prints: [20, 50],
    washable: false,
  },
  {
    id: 'film',
    name: say('stencil.polyesterFilm'),
    thicknessMm: 0.125,
    leastBridgeMm: 1.5,
    leastOpeningMm: 1,
    prints: [200, 2000],
    washable: true,
  },
  { id: 'board', name: say('stencil.thinBoard'), thicknessMm: 0.5, leastBridgeMm: 2, leastOpeningMm: 1, prints: [10, 50], washable: false },
];
