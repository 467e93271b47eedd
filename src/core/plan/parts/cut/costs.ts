import { parts, rasterize, regionArea, regionBox, takeAway, unite, type Region } from '../../../form/index.ts';
import type { Codes } from '../../../print/index.ts';
import { problem, type Problem } from '../../../problem.ts';
import type { Mend, Stencil } from '../../../stencil/index.ts';
import { area, deltaE, say } from '../../../../words/say.ts';

/**
 * What bridges and islands of a stencil cost in the finished print, ΔE00: `missing` by code, where this layer's ink would be
 * missing (a bridge); `extra` by code, where it would print too much (an island dropped). Bridges chosen by cost have theirs.
 */
export function withCosts(stencil: Stencil, codes: Codes, missing: Float32Array, extra: Float32Array): Stencil {
  return {
    ...stencil,
    bridges: stencil.bridges.map((b) => (b.costDeltaE === undefined ? { ...b, costDeltaE: meanOver(b.region, codes, missing) } : b)),
    islands: stencil.islands.map((island) => ({ ...island, costDeltaE: meanOver(island.region, codes, extra) })),
    loosePieces: stencil.loosePieces.map((piece) => ({ ...piece, costDeltaE: meanOver(piece.region, codes, extra) })),
  };
}

const mendCodes: ReadonlySet<string> = new Set([
  'stencil-strengthened',
  'stencil-widened',
  'stencil-closed',
  'stencil-dropped',
  'stencil-coarser',
  'stencil-lines-broader',
]);

/** Whether thin paper was made broader or left out, or narrow openings wider or closed. */
export function isMended(stencil: Stencil): boolean {
  return stencil.problems.some((p) => mendCodes.has(p.code));
}

/** Smaller than this is rounding where outlines meet. */
const leastMendMm2 = 0.1;

/** What the print looks like by code: without a layer's ink, or with more of it. */
export interface Prices {
  readonly codes: Codes;
  readonly missing: Float32Array;
  readonly extra: Float32Array;
}

/**
 * What mending changed against the `ideal` prints and, where the layer has an ink, what that costs: dearest (ΔE times area) first, else
 * largest; bridges and dropped islands are told elsewhere.
 */
export function mendsOf(stencil: Stencil, ideal: Region, prices?: Prices): Mend[] {
  if (!isMended(stencil)) return [];
  const lost = takeAway(takeAway(ideal, stencil.prints), unite(stencil.bridges.map((b) => b.region)));
  const gained = takeAway(stencil.prints, unite([ideal, ...stencil.islands.map((i) => i.region)]));
  const places = (region: Region, kind: Mend['kind'], table: Float32Array | undefined): Mend[] =>
    parts(region).flatMap((one) => {
      const areaMm2 = regionArea(one),
        box = regionBox(one);
      return areaMm2 < leastMendMm2
        ? []
        : [
            {
              kind,
              region: one,
              areaMm2,
              at: [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const,
              ...(prices && table ? { costDeltaE: meanOver(one, prices.codes, table) } : {}),
            },
          ];
    });
  const weight = ({ costDeltaE = 1, areaMm2 }: Mend): number => costDeltaE * areaMm2;
  return [...places(lost, 'broader', prices?.missing), ...places(gained, 'wider', prices?.extra)].sort((a, b) => weight(b) - weight(a));
}

/** Several places taken together. `deltaE` is the mean over their area. */
export interface Shown {
  readonly count: number;
  readonly areaMm2: number;
  readonly deltaE: number;
}

/** Places with a cost as one: how many, how large, and how much they show in the mean. */
export function shownBy(places: readonly { readonly areaMm2: number; readonly costDeltaE?: number }[]): Shown {
  const priced = places.filter((p) => p.costDeltaE !== undefined);
  const areaMm2 = priced.reduce((sum, p) => sum + p.areaMm2, 0);
  const deltaE = areaMm2 > 0 ? priced.reduce((sum, p) => sum + p.areaMm2 * (p.costDeltaE ?? 0), 0) / areaMm2 : 0;
  return { count: priced.length, areaMm2, deltaE };
}

/** Dropped islands with what they cost; and where dropping would show less than the bridges do. */
export function islandNotes(stencil: Stencil, place: string): Problem[] {
  const notes: Problem[] = [];
  const dropped = shownBy(stencil.islands.filter((i) => i.handled === 'dropped'));
  if (dropped.count > 0) {
    notes.push(
      problem(
        'note',
        'islands-dropped',
        place,
        say('plan.islandsDropped', { n: dropped.count, area: area(dropped.areaMm2), shows: deltaE(dropped.deltaE) }),
        say('plan.keepIslands'),
      ),
    );
  }
  const bridged = shownBy(stencil.islands.filter((i) => i.handled === 'bridged')),
    bridges = shownBy(stencil.bridges);
  if (bridged.count > 0 && bridges.count > 0 && bridged.areaMm2 * bridged.deltaE < bridges.areaMm2 * bridges.deltaE) {
    notes.push(
      problem(
        'note',
        'islands-cheaper-dropped',
        place,
        say('plan.islandsCheaperDropped', {
          islandsShow: deltaE(bridged.deltaE),
          islands: area(bridged.areaMm2),
          bridgesShow: deltaE(bridges.deltaE),
          bridges: area(bridges.areaMm2),
        }),
        say('plan.dropIslands'),
      ),
    );
  }
  return notes;
}

/** Mean of a table by code over the pixels of a region; 0 where it covers none. */
export function meanOver(region: Region, codes: Codes, table: Float32Array): number {
  const box = regionBox(region);
  const mm = codes.mmPerPx;
  const left = Math.max(0, Math.floor(box.minX / mm)),
    top = Math.max(0, Math.floor(box.minY / mm));
  const width = Math.min(codes.width, Math.ceil(box.maxX / mm)) - left,
    height = Math.min(codes.height, Math.ceil(box.maxY / mm)) - top;
  if (!(width > 0) || !(height > 0)) return 0;
  const inside = rasterize(region, { originXMm: left * mm, originYMm: top * mm, mmPerPx: mm, width, height });
  let sum = 0,
    n = 0;
  for (let y = 0; y < height; y++) {
    const row = (top + y) * codes.width + left;
    for (let x = 0; x < width; x++) {
      if (!inside[y * width + x]) continue;
      sum += table[codes.data[row + x]];
      n++;
    }
  }
  return n > 0 ? sum / n : 0;
}
