import { bordersOf, broadParts, partsOf, thinShares } from './parts.ts';
import { softened } from '../../kernels/blur.ts';
import { seenDarks, slopesOf, type Raster } from './is-drawn.ts';

/** A drawing as areas of one colour each. */
export interface FlatDrawing {
  readonly width: number;
  readonly height: number;
  /** Number of each pixel's colour. */
  readonly of: Uint8Array;
  /** Lab, 3 a colour. */
  readonly colours: Float64Array;
}

/** Colours nearer than this (Lab, near-blacks as one) are one: strokes of a felt pen side by side, ink that was rolled unevenly. */
const oneColour = 11;
const mostColours = 24;
/** A colour has at least this share of the picture. */
const leastShare = 2e-4;
/** Specks smaller than this are grain, mm². */
const speckMm2 = 0.5;

/**
 * Every pixel takes the colour of the flat place that it belongs to: up the slope of an edge nothing is drawn, it is only soft. Places are taken
 * together to few colours; a colour along a thin line that is another one mixed with what lies around it is that other one.
 */
export function flatDrawing(raster: Raster, mmPerPx: number, white: readonly number[]): FlatDrawing {
  const { width, height } = raster,
    soft = softened(raster.lab, width, height, 0.7),
    seen = seenDarks(soft),
    places = placesOf(slopesOf(seen, width, height), width, height);
  const { of: colourOf, centres } = fewColours(seen, places),
    of = Uint8Array.from(places, (place) => colourOf.get(place)!);
  calmed(of, width, height);
  withoutMixtures(of, width, height, centres, mixedMm / mmPerPx);
  withoutGrain(of, width, height, speckMm2 / mmPerPx ** 2);
  return { width, height, of, colours: withBarePaper(meanColours(soft, places, of, centres.length / 3), white) };
}

/** For each pixel the pixel at the foot of its slope, where the picture is flattest. */
function placesOf(slope: Float32Array, width: number, height: number): Int32Array {
  const foot = new Int32Array(slope.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      let best = i;
      for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++)
        for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
          const j = v * width + u;
          if (slope[j] < slope[best] || (slope[j] === slope[best] && j < best)) best = j;
        }
      foot[i] = best;
    }
  for (let i = 0; i < foot.length; i++) {
    let end = i;
    while (foot[end] !== end) end = foot[end];
    for (let at = i; foot[at] !== end; ) {
      const next = foot[at];
      foot[at] = end;
      at = next;
    }
  }
  return foot;
}

interface Colours {
  /** Of each place. */
  readonly of: ReadonlyMap<number, number>;
  readonly centres: Float64Array;
}

/** Colours that most places are near to, the most frequent first. */
function fewColours(seen: Float32Array, places: Int32Array): Colours {
  const areas = new Map<number, number>();
  for (const place of places) areas.set(place, (areas.get(place) ?? 0) + 1);
  const cells = new Map<number, { weight: number; readonly sum: [number, number, number] }>();
  for (const [place, area] of areas) {
    const key = [0, 1, 2].reduce((k, c) => k * 128 + Math.round(seen[place * 3 + c] / 4) + 48, 0);
    let cell = cells.get(key);
    if (!cell) cells.set(key, (cell = { weight: 0, sum: [0, 0, 0] }));
    cell.weight += area;
    for (let c = 0; c < 3; c++) cell.sum[c] += area * seen[place * 3 + c];
  }
  let left = [...cells.values()]
    .map(({ weight, sum }) => ({ weight, lab: sum.map((v) => v / weight) }))
    .sort((a, b) => b.weight - a.weight);
  const found: number[][] = [];
  while (found.length < mostColours && left.length > 0) {
    const peak = left[0].lab,
      close = left.filter(({ lab }) => apart(lab, peak) < oneColour),
      weight = close.reduce((sum, cell) => sum + cell.weight, 0);
    if (weight >= leastShare * places.length && !found.some((one) => apart(one, peak) < oneColour))
      found.push([0, 1, 2].map((c) => close.reduce((sum, cell) => sum + cell.weight * cell.lab[c], 0) / weight));
    left = left.filter(({ lab }) => apart(lab, peak) >= oneColour);
  }
  const of = new Map<number, number>();
  for (const place of areas.keys()) {
    let best = 0,
      least = Infinity;
    for (const [k, centre] of found.entries()) {
      let d = 0;
      for (let c = 0; c < 3; c++) d += (seen[place * 3 + c] - centre[c]) ** 2;
      if (d < least) {
        least = d;
        best = k;
      }
    }
    of.set(place, best);
  }
  return { of, centres: Float64Array.from(found.flat()) };
}

const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** A pixel that is nearly alone among its eight neighbours goes with most of them. */
function calmed(of: Uint8Array, width: number, height: number): void {
  const votes = new Uint8Array(256);
  for (let turn = 0; turn < 2; turn++) {
    const before = of.slice();
    for (let y = 1; y + 1 < height; y++)
      for (let x = 1; x + 1 < width; x++) {
        const i = y * width + x,
          own = before[i];
        if (before[i - 1] === own && before[i + 1] === own && before[i - width] === own) continue;
        const around = [i - width - 1, i - width, i - width + 1, i - 1, i, i + 1, i + width - 1, i + width, i + width + 1];
        for (const j of around) votes[before[j]]++;
        if (votes[own] <= alone) for (const j of around) if (votes[before[j]] > votes[of[i]]) of[i] = before[j];
        for (const j of around) votes[before[j]] = 0;
      }
  }
}

/** As many of nine, itself counted. */
const alone = 3;

/** Parts smaller than a speck take the colour that most of their outline borders on. */
function withoutGrain(of: Uint8Array, width: number, height: number, leastPx: number): void {
  for (const pixels of partsOf(of, width, height).pixels) {
    if (pixels.length >= leastPx) continue;
    const votes = bordersOf(pixels, of, width, height);
    let best = of[pixels[0]];
    votes.forEach((v, k) => {
      if (v > votes[best]) best = k;
    });
    for (const i of pixels) of[i] = best;
  }
}

/** A colour that is seen only along lines thinner than this is the colour of a pen made paler by the paper beside it. */
const mixedMm = 1.5,
  onlyThin = 0.85;
/** As near to the way between two other colours (Lab), and so far along it at least, it is the farther one. */
const nearMixed = 12,
  leastOfPen = 0.35;

function withoutMixtures(of: Uint8Array, width: number, height: number, centres: Float64Array, widthPx: number): void {
  const count = centres.length / 3,
    thin = thinShares(of, broadParts(of, width, height, count, widthPx), count),
    mixed = Uint8Array.from(of, (k) => (thin[k] >= onlyThin ? 1 : 0));
  for (const pixels of partsOf(of, width, height, mixed).pixels) {
    const own = of[pixels[0]],
      borders = bordersOf(pixels, of, width, height),
      ground = borders.indexOf(Math.max(...borders));
    let pen = own,
      least = nearMixed;
    for (let k = 0; k < count; k++) {
      if (k === own || k === ground) continue;
      const { along, off } = between(centres, ground, k, own);
      // A pen's own colour may be thin all over too: the most saturated of its shades is it.
      if (along < leastOfPen || along >= 1 || off >= least || apartAt(centres, ground, k) < apartAt(centres, ground, own) + 6) continue;
      pen = k;
      least = off;
    }
    if (pen === own) continue;
    for (const i of pixels) of[i] = pen;
  }
}

/** How far along the way from one colour to another a third lies, and how far beside it. */
function between(centres: Float64Array, from: number, to: number, own: number): { readonly along: number; readonly off: number } {
  let dot = 0,
    long = 0,
    far = 0;
  for (let c = 0; c < 3; c++) {
    const way = centres[3 * to + c] - centres[3 * from + c],
      here = centres[3 * own + c] - centres[3 * from + c];
    dot += way * here;
    long += way * way;
    far += here * here;
  }
  const along = long > 0 ? dot / long : 0;
  return { along, off: Math.sqrt(Math.max(0, far - along * along * long)) };
}

const apartAt = (centres: Float64Array, a: number, b: number): number =>
  Math.hypot(centres[3 * a] - centres[3 * b], centres[3 * a + 1] - centres[3 * b + 1], centres[3 * a + 2] - centres[3 * b + 2]);

/** A colour as near to the paper's as this (Lab) is the paper. */
const asPaper = 4;

function withBarePaper(colours: Float64Array, white: readonly number[]): Float64Array {
  for (let k = 0; k < colours.length; k += 3) if (apart([...colours.subarray(k, k + 3)], white) < asPaper) colours.set(white, k);
  return colours;
}

/** Every colour as its flat places are on average. */
function meanColours(lab: Float32Array, places: Int32Array, of: Uint8Array, count: number): Float64Array {
  const sums = new Float64Array(3 * count),
    counts = new Float64Array(count);
  for (let i = 0; i < of.length; i++) {
    const from = places[i] * 3;
    for (let c = 0; c < 3; c++) sums[of[i] * 3 + c] += lab[from + c];
    counts[of[i]]++;
  }
  return sums.map((v, k) => v / Math.max(1, counts[Math.floor(k / 3)]));
}
