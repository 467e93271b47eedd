import { rasterize, regionBox } from '../../form/index.ts';
import type { Box, Grid, Region } from '../../form/index.ts';
import { smoothed } from '../raster/lines.ts';
import { covers } from '../raster/rings.ts';
import type { KnownTiles, Opened } from './opened.ts';
import { longestPoint, longestTaper, surveyWidths } from './survey.ts';
import type { ThinPlace } from './survey.ts';
import type { PointMm } from '../types.ts';

/** A place narrower than asked. */
export interface Thin {
  readonly kind: ThinPlace['kind'];
  /** Its middle, mm, x and y in turn; reaches into the broad parts that it joins. */
  readonly line: readonly number[];
  readonly atMm: PointMm;
  readonly widthMm: number;
  /** Nowhere wider than a hairline. */
  readonly hair: boolean;
  /** What discs of the least width cannot cover here. */
  readonly region: Region;
}

/** The reach of a disc in pixels comes out about half a pixel too long, from centre to centre; so much of that is taken off. */
const lenientPx = -0.4;
/** Of the raster on which thin places are measured: a fortieth of what is to be shown, where that is coarser than a twentieth of a millimetre. */
export const finestMmPerPx = (leastMm: number): number => Math.max(0.05, leastMm / 40);
/** The other way round, where raster and outline disagree. */
const strictPx = -1;
const mostPixels = 6_000_000;
/** What is nowhere wider is too fine to be meant: it closes, or is dropped. */
export const hairMm = 0.55;
/** Windows that meet are taken together up to this. */
const mostTogetherMm2 = 225;

/** A place that discs of the least width leave uncovered. */
export interface Rest {
  readonly region: Region;
  readonly box: Box;
  /** Something thin was found in it. */
  used: boolean;
}

export interface BoxedRing {
  readonly ring: Float64Array;
  readonly box: Box;
}

export const boxedRings = (region: Region): BoxedRing[] => region.rings.map((ring) => ({ ring, box: regionBox({ rings: [ring] }) }));

export interface Window {
  readonly box: Box;
  readonly rests: readonly Rest[];
}

/** Boxes around what is left, those that meet taken together. */
export function windows(rests: readonly Rest[], leastMm: number): Window[] {
  const margin = leastMm * 0.75 + 0.5;
  let open: Window[] = [];
  const closed: Window[] = [];
  const wide = rests
    .map((rest) => ({
      box: { minX: rest.box.minX - margin, minY: rest.box.minY - margin, maxX: rest.box.maxX + margin, maxY: rest.box.maxY + margin },
      rests: [rest],
    }))
    .sort((a, b) => a.box.minX - b.box.minX);
  for (let one of wide as Window[]) {
    closed.push(...open.filter((o) => o.box.maxX < one.box.minX));
    open = open.filter((o) => o.box.maxX >= one.box.minX);
    for (let k = 0; k < open.length; ) {
      const o = open[k];
      // Together only where that looks at little more than each would alone.
      const both = hull(o.box, one.box);
      if (areaOf(both) > areaOf(o.box) + areaOf(one.box) || tooLarge(both, o.box, one.box)) {
        k++;
        continue;
      }
      one = { box: both, rests: [...o.rests, ...one.rests] };
      open.splice(k, 1);
      k = 0;
    }
    open.push(one);
  }
  return [...closed, ...open];
}

/** Small windows are looked at again only where something changed; but one within another is no window of its own. */
const tooLarge = (both: Box, a: Box, b: Box): boolean => areaOf(both) > Math.max(mostTogetherMm2, areaOf(a), areaOf(b));

const areaOf = (b: Box): number => (b.maxX - b.minX) * (b.maxY - b.minY);
const hull = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});
export const meets = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
export const inBox = (b: Box, x: number, y: number): boolean => x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

/** What a look at windows is after. */
export interface Look {
  readonly rings: readonly BoxedRing[];
  readonly radiusMm: number;
  readonly leastMm: number;
  readonly longTapers: boolean;
  /** Not on the lenient side. */
  readonly strict: boolean;
  readonly seen: Seen | undefined;
}

/** The thin places of one window. */
export function looked(window: Window, look: Look): Thin[] {
  const { box, rests } = window,
    { seen } = look;
  const key = `${box.minX} ${box.minY} ${box.maxX} ${box.maxY} ${rests.length}${look.strict ? ' strict' : ''}`;
  const had = seen?.recall(key, box);
  const found = had ?? lookInto(window, look);
  if (had) for (const rest of rests) rest.used ||= had.used.has(boxKey(rest.box));
  seen?.keep(key, found);
  return found.thin;
}

interface SeenWindow {
  readonly thin: Thin[];
  /** Rests, by their boxes, in which something thin was found. */
  readonly used: ReadonlySet<string>;
}

const boxKey = (b: Box): string => `${b.minX} ${b.minY} ${b.maxX} ${b.maxY}`;

/** What was seen in the windows of a shape, and where it has changed since. */
export class Seen implements KnownTiles {
  private before = new Map<string, SeenWindow>();
  private now = new Map<string, SeenWindow>();
  private worn = new Map<string, { readonly around: Box; readonly thin: Thin[] }>();
  private changed: Box[] = [];
  private readonly tiles = new Map<string, Opened>();
  /** From now on the shape is looked at as a whole: what tiles have passed is not passed yet. */
  whole = false;
  get usedTiles(): boolean {
    return this.tiles.size > 0;
  }

  /** Pixels looked at anew, in all looks. */
  pixels = 0;

  /** Here the shape is another than at the last look. */
  touch(boxes: readonly Box[]): void {
    this.changed.push(...boxes);
    for (const [key, { around }] of this.worn) if (boxes.some((changed) => meets(changed, around))) this.worn.delete(key);
  }

  recall(key: string, box: Box): SeenWindow | undefined {
    const had = this.before.get(key);
    return had && this.changed.every((c) => !meets(c, box)) ? had : undefined;
  }

  keep(key: string, found: SeenWindow): void {
    this.now.set(key, found);
  }

  recallTile(key: string, around: Box): Opened | undefined {
    return this.changed.every((c) => !meets(c, around)) ? this.tiles.get(key) : undefined;
  }

  keepTile(key: string, found: Opened): void {
    this.tiles.set(key, found);
  }

  /** What came apart here when worn down; not asked at every look, so what has changed since is forgotten at once. */
  recallWorn(box: Box): Thin[] | undefined {
    return this.worn.get(boxKey(box))?.thin;
  }

  /** `around`: what it depends on. */
  keepWorn(box: Box, around: Box, thin: Thin[]): void {
    this.worn.set(boxKey(box), { around, thin });
  }

  /** After a look: what comes next is compared with it. */
  renew(): void {
    this.before = this.now;
    this.now = new Map();
    this.changed = [];
  }
}

function lookInto({ box, rests }: Window, { rings, radiusMm: r, leastMm, longTapers, strict, seen }: Look): SeenWindow {
  const lenient = strict ? strictPx : lenientPx;
  const step = Math.max(finestMmPerPx(leastMm), Math.sqrt(areaOf(box) / mostPixels));
  const grid: Grid = {
    originXMm: box.minX,
    originYMm: box.minY,
    mmPerPx: step,
    width: Math.ceil((box.maxX - box.minX) / step) + 1,
    height: Math.ceil((box.maxY - box.minY) / step) + 1,
  };
  if (seen) seen.pixels += grid.width * grid.height;
  const near: Region = { rings: rings.filter((one) => meets(one.box, box)).map(({ ring }) => ring) };
  const mask = rasterize(near, grid);
  const survey = surveyWidths(
    mask,
    1,
    grid.width,
    grid.height,
    r / step - lenient,
    0,
    hairMm / step,
    longTapers ? longestTaper : longestPoint,
  );
  const used = new Set<string>();
  const thin = survey.flatMap((t): Thin[] => {
    const at = middleOf(t.at, grid);
    const rest =
      rests.find((one) => inBox(one.box, ...at) && covers(one.region, ...at)) ??
      rests.find((one) => t.path.some((p) => inBox(one.box, ...middleOf(p, grid)) && covers(one.region, ...middleOf(p, grid))));
    // Another window has it whole.
    if (!rest) return [];
    rest.used = true;
    used.add(boxKey(rest.box));
    const line = smoothed(
      t.path.flatMap((p) => middleOf(p, grid)),
      0.3 * leastMm,
      step,
    );
    const widthMm = t.widthPx * step;
    // A short neck is all near what is broad: there its narrowest place tells.
    const hair = t.hair && (t.kind !== 'neck' || widthMm <= hairMm);
    return [{ kind: t.kind, line, atMm: at, widthMm, hair, region: rest.region }];
  });
  return { thin, used };
}

const middleOf = (p: number, grid: Grid): [number, number] => [
  grid.originXMm + ((p % grid.width) + 0.5) * grid.mmPerPx,
  grid.originYMm + (Math.floor(p / grid.width) + 0.5) * grid.mmPerPx,
];
