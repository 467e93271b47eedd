import { boxCutter, boxRegion, emptyRegion, offsetRegion, regionArea, simplify, takeAway, unite } from '../../form/index.ts';
import type { Box, Region } from '../../form/index.ts';

/** A shape shrunk by a radius, and what discs of that radius cannot cover. */
export interface Opened {
  readonly core: Region;
  readonly rest: Region;
}

/** Points of an outline, and of a shrunk one, that lie no farther than this off the line without them are left out. */
const outlineMm = 0.005;
const coreMm = 0.003;

export function opened(shape: Region, radiusMm: number): Opened {
  // Outlines with every micron of a curve in them take several times as long to shrink and grow, and prove no more.
  const outline = simplify(shape, outlineMm);
  const core = offsetRegion(outline, -radiusMm);
  return { core, rest: takeAway(outline, offsetRegion(simplify(core, coreMm), radiusMm + 2 * coreMm)) };
}

const tileMm = 12;
/** A disc reaches two radii; what is cut off straight lies beyond. */
const beyondMm = 0.3;

/** What was found in each tile, where nothing has changed since. */
export interface KnownTiles {
  /** `around`: what it depends on. */
  recallTile(key: string, around: Box): Opened | undefined;
  keepTile(key: string, found: Opened): void;
}

/**
 * The same, tile by tile: a long outline takes less than half as long, for no sweep has to cross all of it, and between one look
 * and the next only tiles in which something has changed are worked out anew. Where tiles meet it may be some microns off: for
 * mending; what is proven is looked at as a whole.
 */
export function openedInTiles(shape: Region, box: Box, radiusMm: number, known: KnownTiles): Opened {
  const cut = boxCutter(shape),
    by = 2 * radiusMm + beyondMm;
  const found: { readonly tile: Box; readonly opened: Opened }[] = [];
  const plain: Region[] = [];
  for (let j = Math.floor(box.minY / tileMm); j * tileMm < box.maxY; j++)
    for (let i = Math.floor(box.minX / tileMm); i * tileMm < box.maxX; i++) {
      const tile = { minX: i * tileMm, minY: j * tileMm, maxX: (i + 1) * tileMm, maxY: (j + 1) * tileMm };
      const key = `${i} ${j}`;
      const around = { minX: tile.minX - by, minY: tile.minY - by, maxX: tile.maxX + by, maxY: tile.maxY + by };
      let here = known.recallTile(key, around);
      if (!here) known.keepTile(key, (here = openedTile(cut(around), around, tile, radiusMm)));
      if (here === whole) plain.push(boxRegion(tile));
      else if (here !== nothing) found.push({ tile, opened: here });
    }
  return {
    core: joined(
      found.map(({ tile, opened: o }) => ({ tile, region: o.core })),
      plain,
    ),
    rest: joined(found.map(({ tile, opened: o }) => ({ tile, region: o.rest }))),
  };
}

/** Tiles without an outline in or about them: all shape, or none. */
const whole: Opened = { core: emptyRegion, rest: emptyRegion },
  nothing: Opened = { core: emptyRegion, rest: emptyRegion };

function openedTile(near: Region, around: Box, tile: Box, radiusMm: number): Opened {
  if (near.rings.length === 0) return nothing;
  if (near.rings.length === 1 && near.rings[0].length === 8 && Math.abs(regionArea(near) - areaOf(around)) < sideMm2) return whole;
  const number = numberOf(near),
    known = lastTiles.get(number);
  if (known && known.radiusMm === radiusMm && sameBox(known.tile, tile) && sameRings(known.near, near)) return known.found;
  const here = opened(near, radiusMm),
    found = { core: boxCutter(here.core)(tile), rest: boxCutter(here.rest)(tile) };
  if (lastTiles.size >= mostTiles) lastTiles.clear();
  lastTiles.set(number, { near, tile, radiusMm, found });
  return found;
}

/** What was found of a tile, whichever stencil it was of: made again with another bridge, most of it is the same. */
interface LastTile {
  readonly near: Region;
  readonly tile: Box;
  readonly radiusMm: number;
  readonly found: Opened;
}

/** By a number that says nearly all of an outline. Nothing but a shorter way to the same tile. */
const lastTiles = new Map<number, LastTile>();
const mostTiles = 8192;

/** FNV-1a over whole microns. */
function numberOf({ rings }: Region): number {
  let sum = 0x811c9dc5;
  for (const ring of rings) {
    sum = Math.imul(sum ^ ring.length, 0x01000193);
    for (let i = 0; i < ring.length; i++) sum = Math.imul(sum ^ ((ring[i] * 1000) | 0), 0x01000193);
  }
  return sum;
}

const sameBox = (a: Box, b: Box): boolean => a.minX === b.minX && a.minY === b.minY && a.maxX === b.maxX && a.maxY === b.maxY;

function sameRings(a: Region, b: Region): boolean {
  return (
    a.rings.length === b.rings.length &&
    a.rings.every((ring, r) => {
      const other = b.rings[r];
      if (ring.length !== other.length) return false;
      for (let i = 0; i < ring.length; i++) if (ring[i] !== other[i]) return false;
      return true;
    })
  );
}

const areaOf = (b: Box): number => (b.maxX - b.minX) * (b.maxY - b.minY);
/** Sides in whole microns leave no more of a box. */
const sideMm2 = 0.1;

/** Tiles put together: what ends at the side of one goes on in the next. `plain`: whole tiles. */
function joined(tiles: readonly { readonly tile: Box; readonly region: Region }[], plain: readonly Region[] = []): Region {
  const within: Float64Array[] = [],
    cutOff: Float64Array[] = [];
  for (const { tile, region } of tiles) for (const ring of region.rings) (meetsSide(ring, tile) ? cutOff : within).push(ring);
  return { rings: [...within, ...unite([{ rings: cutOff }, ...plain]).rings] };
}

function meetsSide(ring: Float64Array, { minX, minY, maxX, maxY }: Box): boolean {
  for (let i = 0; i < ring.length; i += 2)
    if (ring[i] <= minX || ring[i] >= maxX || ring[i + 1] <= minY || ring[i + 1] >= maxY) return true;
  return false;
}
