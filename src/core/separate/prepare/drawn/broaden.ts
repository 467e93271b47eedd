import type { FlatDrawing } from './flat.ts';
import { bordersOf, broadParts, partsOf, thinShares, type Parts } from './parts.ts';

/** What a line must be to be cut, px. */
export interface LineRules {
  /** Narrowest line of ink, and of paper. */
  readonly inkPx: number;
  readonly paperPx: number;
  /** So much more for a line that several layers leave bare and that sit off. */
  readonly sparePx: number;
  /** Smallest parts of ink and of paper. */
  readonly leastInkPx: number;
  readonly leastIslandPx: number;
}

/** A dot is not made larger than so many times its size across: what is smaller is lost, and told. */
const mostLarger = 1.7;
/** So many times the least size, since corners go in cutting. */
const dotSpare = 1.5;
/** Up to so many times the least width it is a line, whose width wavers about the least. */
const stillLine = 1.6;
/** Smaller than this share of its width squared it is a corner that no disc reaches. */
const crumb = 0.6;
/** Of letters and figures of lines the places where lines meet are lines too. */
const mostlyThin = 0.5;
/** So many times a dot is the area that it stands free in. */
const wideArea = 40;
/** A line with less contrast than this (Lab) is a shade. */
const leastContrast = 14;
/** What is thin is a line when so much of its outline lies in broad areas, and the gap between lines otherwise. */
const inBroad = 0.5;

type Kind = 'dark' | 'light';

/** Lines and dots that a knife can't follow made as broad as it can, in their own colour, dearest first; between two of them stays what can be cut too. */
export function broadened(drawing: FlatDrawing, rules: LineRules): FlatDrawing & { readonly lineOf: Uint8Array } {
  const { width, height, colours } = drawing,
    of = drawing.of.slice(),
    lineOf = new Uint8Array(of.length);
  for (const kind of ['light', 'dark'] as const) broaden({ width, height, colours, of }, kindOf(kind, rules), lineOf);
  return { width, height, of, colours, lineOf };
}

interface Thin {
  readonly pixels: Int32Array;
  readonly colour: number;
  /** The colour that it lies on. */
  readonly ground: number;
  /** The part it is of, and whether it is all of it. */
  readonly part: number;
  readonly alone: boolean;
  readonly counts: number;
}

interface Kinds {
  readonly kind: Kind;
  readonly widthPx: number;
  readonly gapPx: number;
  readonly leastPx: number;
}

function kindOf(kind: Kind, { inkPx, paperPx, sparePx, leastInkPx, leastIslandPx }: LineRules): Kinds {
  return kind === 'dark'
    ? { kind, widthPx: inkPx, gapPx: paperPx, leastPx: leastInkPx }
    : { kind, widthPx: paperPx + sparePx, gapPx: inkPx, leastPx: leastIslandPx };
}

interface Found {
  /** Colour by colour, those that count most first. */
  readonly lines: readonly Thin[];
  readonly parts: Parts;
  /** Pixels of lines of either kind, 1 each. */
  readonly held: Uint8Array;
}

/** Lines and dots of one kind. */
function linesOf(drawing: FlatDrawing, { kind, widthPx, leastPx }: Kinds): Found {
  const { width, height, of, colours } = drawing,
    linePx = stillLine * widthPx,
    broad = broadParts(of, width, height, colours.length / 3, linePx),
    parts = partsOf(of, width, height),
    thinShare = thinShares(of, broad, colours.length / 3),
    lines: Thin[] = [],
    held = new Uint8Array(of.length);
  const take = (pixels: Int32Array, alone: boolean): void => {
    const { contrast, lighter, figure, ground } = standing(pixels, drawing, broad, thinShare);
    if (contrast < leastContrast || !figure) return;
    for (const i of pixels) held[i] = 1;
    if (lighter === (kind === 'light'))
      lines.push({ pixels, colour: of[pixels[0]], ground, part: parts.of[pixels[0]], alone, counts: contrast * pixels.length });
  };
  const thin = broad.map((v) => 1 - v);
  for (const pixels of partsOf(of, width, height, thin).pixels) {
    const alone = parts.pixels[parts.of[pixels[0]]].length === pixels.length;
    if (alone || pixels.length >= crumb * linePx * linePx) take(pixels, alone);
  }
  for (const pixels of parts.pixels) if (pixels.length < dotSpare * leastPx && !held[pixels[0]]) take(pixels, true);
  const all = new Float64Array(colours.length / 3);
  for (const { colour, counts } of lines) all[colour] += counts;
  lines.sort((a, b) => all[b.colour] - all[a.colour] || a.colour - b.colour || b.counts - a.counts || a.pixels[0] - b.pixels[0]);
  return { lines, parts, held };
}

/** @param lineOf for every pixel of a line the colour that it lies on, counted from 1 */
function broaden(drawing: FlatDrawing, kinds: Kinds, lineOf: Uint8Array): void {
  const { width, height, of } = drawing,
    { widthPx, gapPx, leastPx } = kinds,
    { lines, parts, held } = linesOf(drawing, kinds),
    inside = insideOf(of, width, height),
    thinOf = new Map<number, number>();
  let room: Room | undefined,
    colour = -1;
  for (const line of lines) {
    if (line.colour !== colour) {
      colour = line.colour;
      room = roomOf(drawing, parts.of, colour, gapPx);
    }
    const grown = new Set<number>(line.pixels),
      ridge = ridgeOf(line.pixels, inside, width);
    const free = (j: number): boolean => (of[j] === line.colour ? parts.of[j] === line.part : !held[j] && room!.free(j, line.part)),
      grow = (radius: number): void => {
        for (const i of ridge)
          eachWithin(asideOf(i, radius, drawing, free), radius, width, height, (j) => {
            if (free(j)) grown.add(j);
          });
      };
    // The very disc that cutting will try to fit.
    const radius = widthPx / 2;
    grow(radius);
    if (line.alone && line.pixels.length * mostLarger ** 2 >= leastPx && standsFree(line, parts, drawing))
      for (let more = 0.5; grown.size < dotSpare * leastPx && more < widthPx; more += 0.5) grow(radius + more);
    for (const j of grown)
      if (of[j] !== line.colour) {
        of[j] = line.colour;
        held[j] = 1;
        room!.take(j, line.part);
      }
    for (const j of grown) lineOf[j] = line.ground + 1;
    const thin = (thinOf.get(line.part) ?? 0) + line.pixels.length;
    thinOf.set(line.part, thin);
    if (thin >= mostlyThin * parts.pixels[line.part].length) for (const j of parts.pixels[line.part]) lineOf[j] = line.ground + 1;
  }
}

/** Where a disc about a pixel finds most room: a line that has a neighbour on one side grows to the other. */
function asideOf(i: number, radius: number, { width, height }: FlatDrawing, free: (j: number) => boolean): number {
  let across = 0,
    down = 0;
  const x = i % width,
    y = (i - x) / width;
  eachWithin(i, radius, width, height, (j) => {
    if (free(j)) return;
    across += x - (j % width);
    down += y - Math.floor(j / width);
  });
  const far = Math.hypot(across, down);
  if (far < radius) return i;
  const u = x + Math.round(across / far),
    v = y + Math.round(down / far);
  return u >= 0 && v >= 0 && u < width && v < height ? v * width + u : i;
}

/** A dot in a wide area, not the eye of a letter. */
function standsFree({ pixels, ground }: Thin, { of: partOf, pixels: parts }: Parts, { of, width }: FlatDrawing): boolean {
  const beside = pixels.find((i) => i % width > 0 && of[i - 1] === ground);
  return beside !== undefined && parts[partOf[beside - 1]].length > wideArea * pixels.length;
}

/** How a thin part stands in what lies around it. */
function standing(
  pixels: Int32Array,
  { of, width, height, colours }: FlatDrawing,
  broad: Uint8Array,
  thinShare: Float64Array,
): { readonly contrast: number; readonly lighter: boolean; readonly figure: boolean; readonly ground: number } {
  const own = of[pixels[0]],
    borders = bordersOf(pixels, of, width, height);
  let all = 0,
    contrast = 0,
    lighter = 0,
    thinner = 0,
    inBroadPx = 0;
  borders.forEach((length, k) => {
    if (length === 0) return;
    all += length;
    let far = 0;
    for (let c = 0; c < 3; c++) far += (colours[3 * k + c] - colours[3 * own + c]) ** 2;
    contrast += length * Math.sqrt(far);
    lighter += length * (colours[3 * own] - colours[3 * k]);
    if (thinShare[own] > thinShare[k]) thinner += length;
  });
  for (const i of pixels) {
    const x = i % width;
    for (const j of [x > 0 ? i - 1 : i, x + 1 < width ? i + 1 : i, i >= width ? i - width : i, i + width < of.length ? i + width : i])
      if (of[j] !== own && broad[j]) inBroadPx++;
  }
  return {
    contrast: all > 0 ? contrast / all : 0,
    lighter: lighter > 0,
    ground: borders.indexOf(Math.max(...borders)),
    figure: inBroadPx >= inBroad * all || thinner > inBroad * all,
  };
}

interface Room {
  readonly free: (j: number, part: number) => boolean;
  readonly take: (j: number, part: number) => void;
}

/** Whose surroundings each pixel is in: a line grows no nearer to another part of its colour than what lies between can be cut. */
function roomOf({ of, width, height }: FlatDrawing, partOf: Int32Array, colour: number, gapPx: number): Room {
  const nobody = -1,
    several = -2,
    owner = new Int32Array(of.length).fill(nobody);
  const take = (i: number, part: number): void => {
    eachWithin(i, gapPx, width, height, (j) => {
      if (owner[j] === nobody) owner[j] = part;
      else if (owner[j] !== part) owner[j] = several;
    });
  };
  for (let i = 0; i < of.length; i++) {
    const x = i % width;
    if (
      of[i] === colour &&
      ((x > 0 && of[i - 1] !== colour) ||
        (x + 1 < width && of[i + 1] !== colour) ||
        (i >= width && of[i - width] !== colour) ||
        (i + width < of.length && of[i + width] !== colour))
    )
      take(i, partOf[i]);
  }
  return { free: (j, part) => owner[j] === nobody || owner[j] === part, take };
}

function eachWithin(i: number, radius: number, width: number, height: number, visit: (j: number) => void): void {
  const x = i % width,
    y = (i - x) / width,
    reach = Math.floor(radius);
  for (let v = -reach; v <= reach; v++) {
    if (y + v < 0 || y + v >= height) continue;
    const half = Math.floor(Math.sqrt(radius * radius - v * v));
    for (let u = Math.max(-half, -x); u <= Math.min(half, width - 1 - x); u++) visit(i + v * width + u);
  }
}

/** How far each pixel lies inside its colour, thirds of a px (chamfer 3, 4: G. Borgefors, Distance transformations in digital images, 1986). */
function insideOf(of: Uint8Array, width: number, height: number): Int32Array {
  const far = new Int32Array(of.length);
  const through = (i: number, j: number, step: number): void => {
    far[i] = Math.min(far[i], (of[j] === of[i] ? far[j] : 0) + step);
  };
  far.fill(1 << 20);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      if (x > 0) through(i, i - 1, 3);
      if (y > 0) through(i, i - width, 3);
      if (y > 0 && x > 0) through(i, i - width - 1, 4);
      if (y > 0 && x + 1 < width) through(i, i - width + 1, 4);
    }
  for (let y = height - 1, i = of.length - 1; y >= 0; y--)
    for (let x = width - 1; x >= 0; x--, i--) {
      if (x + 1 < width) through(i, i + 1, 3);
      if (y + 1 < height) through(i, i + width, 3);
      if (y + 1 < height && x + 1 < width) through(i, i + width + 1, 4);
      if (y + 1 < height && x > 0) through(i, i + width - 1, 4);
    }
  return far;
}

/** The middle of a line: pixels that lie as far inside as any beside them. */
function ridgeOf(pixels: Int32Array, inside: Int32Array, width: number): number[] {
  return [...pixels].filter((i) => {
    const x = i % width;
    for (let v = -width; v <= width; v += width)
      for (let u = x > 0 ? -1 : 0; u <= (x + 1 < width ? 1 : 0); u++)
        if (i + v + u >= 0 && i + v + u < inside.length && inside[i + v + u] > inside[i]) return false;
    return true;
  });
}
