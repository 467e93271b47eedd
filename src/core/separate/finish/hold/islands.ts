import { rasterizeInto, regionBox, type Grid, type Region } from '../../../form/index.ts';
import type { Bridge, Stencil } from '../../../stencil/index.ts';
import type { Field } from '../../kernels/relax.ts';

/** A bridge longer than this is seen as a line of its own, and is made broader (`bridgeWidthMm`): it counts as much more. common practice */
export const longBridgeMm = 15;

/** By how much at least. */
const longCounts = 2.5;

export interface IslandLook {
  readonly field: Field;
  readonly codes: Uint8Array;
  readonly bit: number;
  readonly grid: Grid;
  /** ΔE00·mm a mm of cut: a bridge has two sides, and an island its outline. */
  readonly priceMm: number;
}

/**
 * Islands that the print is better without: ink prints there instead of paper, when that costs the print less than the bridges that
 * hold them. What hangs on an island goes with it or not at all.
 * @returns regions where ink may print
 */
export function islandsToDrop(stencil: Stencil, look: IslandLook): Region[] {
  const islands = stencil.islands.filter((island) => island.handled === 'bridged');
  if (islands.length === 0) return [];
  const { grid } = look;
  const owner = new Int16Array(grid.width * grid.height).fill(-1);
  const losses = islands.map(({ region }, k) => {
    let sum = 0;
    eachPixel(region, grid, (i) => {
      owner[i] = k;
      sum += worseBy(look, i, look.codes[i] | (1 << look.bit));
    });
    return sum * grid.mmPerPx ** 2;
  });
  let held = stencil.bridges.map((bridge) => ({ ends: endsOf(bridge, owner, grid), cost: bridgeCost(bridge, look) }));
  const gone = new Set<number>();
  for (let again = true; again; ) {
    again = false;
    for (let k = 0; k < islands.length && !again; k++) {
      const neighbours = new Set(held.filter(({ ends }) => ends.includes(k)).flatMap(({ ends }) => ends));
      for (const beyond of neighbours) {
        if (beyond === k) continue;
        const hangs = hangingFrom(k, beyond, held);
        if (hangs === null) continue;
        const own = held.filter(({ ends }) => ends.some((end) => hangs.has(end)));
        const loss = [...hangs].reduce((sum, island) => sum + losses[island], 0);
        if (loss >= own.reduce((sum, { cost }) => sum + cost, 0)) continue;
        for (const island of hangs) gone.add(island);
        held = held.filter((link) => !own.includes(link));
        again = true;
        break;
      }
    }
  }
  return [...gone].map((k) => islands[k].region);
}

interface Link {
  readonly ends: readonly number[];
  readonly cost: number;
}

/** The sheet around, as an end of a bridge. */
const sheetEnd = -1;

/** The islands that hang on `beyond` by island `k` and by nothing else; null when the sheet holds them on another way. */
function hangingFrom(k: number, beyond: number, held: readonly Link[]): Set<number> | null {
  const found = new Set([k]),
    open = [k];
  for (let island = open.pop(); island !== undefined; island = open.pop())
    for (const { ends } of held) {
      if (!ends.includes(island)) continue;
      for (const end of ends) {
        if (found.has(end) || (island === k && end === beyond)) continue;
        if (end === sheetEnd || end === beyond) return null;
        found.add(end);
        open.push(end);
      }
    }
  return found;
}

/** How much worse one pixel would be with another code, by its importance. @param least as much as it counts at least: a line nobody drew is seen anywhere */
function worseBy({ field, codes }: IslandLook, i: number, code: number, least = 0): number {
  const row = field.binOf[i] * field.codeCount;
  return (field.table[row + code] - field.table[row + codes[i]]) * Math.max(least, field.weight?.[i] ?? 1);
}

function bridgeCost(bridge: Bridge, look: IslandLook): number {
  let sum = 0;
  eachPixel(bridge.region, look.grid, (i) => {
    sum += Math.max(0, worseBy(look, i, look.codes[i] & ~(1 << look.bit), 1));
  });
  const long = bridgeLengthMm(bridge);
  return (sum * look.grid.mmPerPx ** 2 + 2 * long * look.priceMm) * (long > longBridgeMm ? Math.max(longCounts, long / longBridgeMm) : 1);
}

export function bridgeLengthMm({ line }: Bridge): number {
  let sum = 0;
  for (let i = 2; i < line.length; i += 2) sum += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]);
  return sum;
}

/** The islands at a bridge's two ends; −1 is the sheet around. */
function endsOf({ from, to }: Bridge, owner: Int16Array, { mmPerPx, width, height }: Grid): number[] {
  const reach = 3;
  return [from, to].map(([x, y]) => {
    const u = Math.floor(x / mmPerPx),
      v = Math.floor(y / mmPerPx);
    let found = sheetEnd,
      nearest = Infinity;
    for (let dv = -reach; dv <= reach; dv++)
      for (let du = -reach; du <= reach; du++) {
        if (u + du < 0 || v + dv < 0 || u + du >= width || v + dv >= height) continue;
        const k = owner[(v + dv) * width + u + du],
          d = du * du + dv * dv;
        if (k >= 0 && d < nearest) {
          nearest = d;
          found = k;
        }
      }
    return found;
  });
}

/** Every pixel whose middle a region covers. */
export function eachPixel(region: Region, grid: Grid, visit: (i: number) => void): void {
  const { minX, minY, maxX, maxY } = regionBox(region),
    left = Math.max(0, Math.floor((minX - grid.originXMm) / grid.mmPerPx)),
    top = Math.max(0, Math.floor((minY - grid.originYMm) / grid.mmPerPx)),
    width = Math.min(grid.width, Math.ceil((maxX - grid.originXMm) / grid.mmPerPx)) - left,
    height = Math.min(grid.height, Math.ceil((maxY - grid.originYMm) / grid.mmPerPx)) - top;
  if (!(width > 0 && height > 0)) return;
  const box: Grid = {
    originXMm: grid.originXMm + left * grid.mmPerPx,
    originYMm: grid.originYMm + top * grid.mmPerPx,
    mmPerPx: grid.mmPerPx,
    width,
    height,
  };
  const inside = new Uint8Array(width * height);
  rasterizeInto(inside, 0, region, box);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) if (inside[y * width + x]) visit((top + y) * grid.width + left + x);
}
