import { rasterize } from '../../raster.ts';
import { emptyRegion, regionBox, type Box, type Region } from '../../region.ts';
import { apart, hexOf, isWhite, labOf, type Rgb } from './colours.ts';
import { along, folded } from './gradient.ts';
import { dabAt, leastAlpha, onWhite, strengthOf, type Dab, type Paint } from './paint.ts';
import { windowOf, type How } from '../reading.ts';
import { ringsOf, type Scene } from './scene.ts';

/** A colour that the drawing shows, white not among them. */
export interface SeenColour {
  /** `#rrggbb` */
  readonly colour: string;
  /** Of all that is painted and not white. */
  readonly share: number;
}

export interface Seen {
  /** Which lies in front of which: back to front, as they first come. */
  readonly colours: readonly SeenColour[];
  /** White that covers something else. */
  readonly whiteOnTop: boolean;
  /** Colour covers the whole page, like a card. */
  readonly fullPage: boolean;
}

const raster = 420;
/** Less than this share of what is painted is the edge of something, not a colour of the drawing. */
const leastShare = 0.002;
/** Nearer colours (CIE 1976) would be one ink. */
const oneColour = 10;
const mostColours = 8;

/** Paints a scene on a coarse grid, bottom to top, and looks at what is left to be seen. */
export function lookAt(scene: Scene, widthMm: number, heightMm: number, how: How): Seen {
  const mmPerPx = Math.max(widthMm, heightMm) / raster;
  const width = Math.max(1, Math.round(widthMm / mmPerPx)),
    height = Math.max(1, Math.round(heightMm / mmPerPx));
  const canvas: Painting = { pixels: new Int32Array(width * height).fill(bare), width, height, mmPerPx, over: new Set(), covered: 0, how };
  paintScene(scene, canvas);
  const counts = new Map<number, number>();
  let painted = 0,
    white = 0;
  for (const value of canvas.pixels) {
    if (value === bare) continue;
    painted++;
    if (whiteValue(value)) white++;
    else counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  const inked = painted - white;
  const clusters = gathered(counts, inked);
  const order = [...canvas.over];
  const colours = clusters
    .sort((a, b) => order.indexOf(a.value) - order.indexOf(b.value))
    .map(({ value, share }) => ({ colour: hexOf(unpack(value)), share }));
  return { colours, whiteOnTop: canvas.covered > 0, fullPage: inked > 0.985 * width * height };
}

const bare = -1;
interface Painting {
  readonly pixels: Int32Array;
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  /** Colours in the order in which they first came. */
  readonly over: Set<number>;
  /** Pixels of other colours that white came to lie on. */
  covered: number;
  readonly how: How;
}

const pack = ([r, g, b]: Rgb): number => (Math.round(r) << 16) | (Math.round(g) << 8) | Math.round(b);
const unpack = (value: number): Rgb => [(value >> 16) & 255, (value >> 8) & 255, value & 255];
const whites = new Map<number, boolean>();
function whiteValue(value: number): boolean {
  let white = whites.get(value);
  if (white === undefined) {
    if (whites.size > 5000) whites.clear();
    white = isWhite(unpack(value));
    whites.set(value, white);
  }
  return white;
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function frameOf(box: Box, { mmPerPx, width, height }: Painting): Frame {
  return {
    left: Math.max(0, Math.floor(box.minX / mmPerPx)),
    top: Math.max(0, Math.floor(box.minY / mmPerPx)),
    right: Math.min(width, Math.ceil(box.maxX / mmPerPx)),
    bottom: Math.min(height, Math.ceil(box.maxY / mmPerPx)),
  };
}

function maskIn(region: Region, { left, top, right, bottom }: Frame, mmPerPx: number): Uint8Array {
  return rasterize(region, { originXMm: left * mmPerPx, originYMm: top * mmPerPx, mmPerPx, width: right - left, height: bottom - top });
}

function paintScene(scene: Scene, canvas: Painting): void {
  for (const item of scene) {
    if (!('scene' in item)) {
      paintShape(item.region, item.paint, canvas);
      continue;
    }
    const frame = frameOf(regionBox({ rings: ringsOf(item.scene) }), canvas);
    const { left, top, right, bottom } = frame;
    if (!(right > left) || !(bottom > top)) continue;
    const before = canvas.pixels.slice(top * canvas.width, bottom * canvas.width);
    paintScene(item.scene, canvas);
    const inside = maskIn(windowOf(item, canvas.how) ?? emptyRegion, frame, canvas.mmPerPx);
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++)
        if (!inside[(y - top) * (right - left) + x - left]) canvas.pixels[y * canvas.width + x] = before[(y - top) * canvas.width + x];
  }
}

function paintShape(region: Region, paint: Paint, canvas: Painting): void {
  const { pixels, mmPerPx } = canvas;
  const frame = frameOf(regionBox(region), canvas);
  const { left, top, right, bottom } = frame;
  if (!(right > left) || !(bottom > top)) return;
  const inside = maskIn(region, frame, mmPerPx);
  const flat = paint.gradient ? undefined : paint.stops[0];
  // What fades counts as its full colour as far as it would be cut, and as white beyond.
  const { full, strengthAt } = strengthOf(paint);
  const dabs = paint.gradient
    ? Array.from({ length: 17 }, (_, i): Dab => {
        const dab = dabAt(paint, i / 16);
        return full ? (strengthAt(i / 16) >= canvas.how.threshold ? full : { rgb: [255, 255, 255], alpha: dab.alpha }) : dab;
      })
    : undefined;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      if (!inside[(y - top) * (right - left) + x - left]) continue;
      const dab =
        flat ?? dabs![Math.round(16 * folded(paint.gradient!.spread, along(paint.gradient!, (x + 0.5) * mmPerPx, (y + 0.5) * mmPerPx)))];
      const p = y * canvas.width + x,
        below = pixels[p];
      if (dab.alpha < 0.5 && (below !== bare || dab.alpha <= leastAlpha)) continue;
      const value = pack(onWhite(dab));
      canvas.over.add(value);
      if (below !== bare && whiteValue(value) && !whiteValue(below)) canvas.covered++;
      pixels[p] = value;
    }
  }
}

/** Few colours out of many: the nearest two become one, which keeps the colour of the larger, until they are apart and few. */
function gathered(counts: ReadonlyMap<number, number>, total: number): { value: number; share: number }[] {
  let list = [...counts]
    .map(([value, count]) => ({ value, share: count / Math.max(1, total), most: count, lab: labOf(unpack(value)) }))
    .sort((a, b) => b.share - a.share || a.value - b.value)
    .slice(0, 200);
  for (;;) {
    let one = -1,
      two = -1,
      least = Infinity;
    for (let i = 0; i < list.length; i++) {
      for (let k = i + 1; k < list.length; k++) {
        const d = apart(list[i].lab, list[k].lab);
        if (d < least) {
          least = d;
          one = i;
          two = k;
        }
      }
    }
    if (one < 0 || (least > oneColour && list.length <= mostColours)) break;
    const a = list[one],
      b = list[two];
    const larger = a.most >= b.most ? a : b;
    list = [...list.filter((_, i) => i !== one && i !== two), { ...larger, share: a.share + b.share }];
  }
  return list.filter((c) => c.share >= leastShare).map(({ value, share }) => ({ value, share }));
}
