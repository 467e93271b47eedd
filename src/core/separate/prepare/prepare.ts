import { labFromSpectrum, xyzFromSpectrum } from '../../colour/index.ts';
import { rasterizeInto, type Grid } from '../../form/index.ts';
import { cutRulesOf, rulesOn } from '../finish/cuttable.ts';
import { sketchStep } from './bins.ts';
import { putBits } from '../kernels/bits.ts';
import { drawingOf, type Drawing, type DrawnLines } from './drawn/drawing.ts';
import { keyOf, keyWithin } from './key.ts';
import { asDrawn, nestedCodes } from './way.ts';
import type { Film, Ink } from '../../ink/index.ts';
import { halvedCodes, halvings, levelsOf, type Level } from './masks.ts';
import { cropOf, scaledLab, type Picture } from '../../image/index.ts';
import { filmOfRecipe, overlapLabOf, type Pot } from '../search/recipe.ts';
import type { LayerWish, SearchSetup } from '../search/search.ts';
import type { GamutIntent, ImportanceMap, SeparateRequest } from '../types.ts';

/** The picture on the knife's raster and all that stays the same during the work. */
export interface Work {
  readonly grid: Grid;
  /** Lab of the picture, relative to the paper's white. */
  readonly target: Float32Array;
  /** What is aimed at: the same, or fitted into the inks' reach. Finest first. */
  readonly levels: readonly Level[];
  readonly asDrawing: boolean;
  /** Of a drawing. */
  readonly lines?: DrawnLines;
  readonly setup: SearchSetup;
  /** Layers that lie there already; they are the lowest bits. */
  readonly printed: number;
  readonly layers: number;
  /** Bits that are decided before the masks are: what lies there already, and the key. */
  readonly frozen: number;
  readonly fixedCodes?: Uint8Array;
  /** How broad the brush is that the key is drawn with; 1 is as fine as the knife allows. */
  readonly brush: number;
  /** Window and piece of one cut, two layers each. */
  readonly paired: boolean;
  /** Share of its outline that each layer pays for. */
  readonly layerPrice: readonly number[];
}

const usualRasterMm = 0.25;
/** More pixels than this make the raster coarser: a large print is looked at from farther away. */
const mostPixels = 4_000_000;

/** The request with what matters in the picture found, which takes its time. */
export function withMatters({ matters, ...request }: SeparateRequest): SeparateRequest {
  return { ...request, ...matters?.() };
}

export function prepareWork(request: SeparateRequest): Work {
  return workOn(request, gridOf(request));
}

/** For a sketch: the picture as coarse as the last of its levels, so that no finer one has to be made before something is seen. */
export function sketchWork(request: SeparateRequest): Work {
  const fine = gridOf(request),
    // A key is drawn twice as fine: an eye is gone on the coarsest.
    halves = Math.max(0, halvings(fine.width, fine.height) - (request.key ? 1 : 0)),
    columns = fine.width >> halves;
  return halves > 0 ? workOn(request, gridOf({ ...request, rasterMm: request.sizeMm.width / columns }), sketchStep) : workOn(request, fine);
}

function gridOf({ sizeMm: { width, height }, rasterMm }: SeparateRequest): Grid {
  const wish = Math.max(rasterMm ?? usualRasterMm, Math.sqrt((width * height) / mostPixels));
  const columns = Math.max(2, Math.round(width / wish));
  const mmPerPx = width / columns;
  return { originXMm: 0, originYMm: 0, mmPerPx, width: columns, height: Math.max(2, Math.round(height / mmPerPx)) };
}

function workOn(request: SeparateRequest, grid: Grid, boxStep?: number): Work {
  const { mmPerPx } = grid;
  const choice = inksOf(request.shelf),
    shelf = new Map([...choice, ...inksOf(request.printedWith ?? [])]);
  const deposit = request.deposit ?? 1;
  const printedLayers = request.alreadyPrinted ?? [];
  const printed = printedLayers.length,
    layers = printed + request.layers;
  const below = printedLayers.map((layer) => filmOfRecipe({ wish: -1, parts: layer.parts }, shelf, deposit));
  const asIs = rasterOf(request, grid, boxStep === undefined ? lastRasters : lastSketches),
    drawing = boxStep === undefined ? drawingOn(request, grid, asIs) : undefined,
    target = drawing?.page ?? asIs;
  const wishes = Array.from({ length: request.layers }, (_, i) => request.wishes?.[i] ?? {});
  const way = request.way ?? 'near',
    key = request.key ?? false;
  if (key) wishes[request.layers - 1] = keyWish(wishes[request.layers - 1], choice, request);
  const setup: SearchSetup = {
    wishes,
    shelf: way === 'light' ? darkening(choice, request, wishes) : choice,
    below,
    deposit,
    paper: request.paper,
    surface: request.surface,
    mostInPot: Math.max(1, Math.min(3, request.mostInPot ?? 2)),
    leastShare: 0.005,
    codes: way === 'light' ? tonesOf(layers, printed, key) : codesOf(layers, printed, request.cutPairs ?? false),
  };
  const fixedCodes = printed > 0 || key ? new Uint8Array(grid.width * grid.height) : undefined;
  printedLayers.forEach((layer, bit) => rasterizeInto(fixedCodes!, bit, layer.prints, grid));
  const weight = request.importance && importanceOn(request.importance, grid);
  const drawn = key ? keyWithin({ ...grid, lab: target }, cutRulesOf(request, mmPerPx), request) : undefined;
  if (drawn) putBits(fixedCodes!, layers - 1, drawn.mask);
  const aim = asDrawn({ ...grid, lab: fittedToReach(drawing?.aim ?? target, request.intent ?? 'nearest', setup), weight }, way);
  return {
    grid,
    target,
    asDrawing: drawing !== undefined,
    lines: way === 'near' ? drawing?.lines : undefined,
    setup,
    printed,
    layers,
    frozen: ((1 << printed) - 1) | (key ? 1 << (layers - 1) : 0),
    fixedCodes,
    brush: drawn?.brush ?? 1,
    levels:
      weight || fixedCodes || way !== 'near'
        ? levelsOf(aim, grid.width, grid.height, mmPerPx, { weight, fixedCodes, boxStep })
        : plainLevels(aim, grid, boxStep),
    paired: request.cutPairs ?? false,
    layerPrice: Array.from({ length: layers }, (_, i) => (i < printed ? 0 : request.cutPairs ? 0.5 : 1)),
  };
}

/** The picture as a drawing if it is one or is said to be; a sketch has no time to look. */
function drawingOn(request: SeparateRequest, grid: Grid, lab: Float32Array): Drawing | undefined {
  if (request.takenAs === 'photograph') return undefined;
  const { openingPx, paperPx, leastInkPx, leastIslandPx } = cutRulesOf(request, grid.mmPerPx),
    rules = {
      inkPx: openingPx,
      paperPx,
      sparePx: (0.5 * (request.registerSigmaMm ?? 0)) / grid.mmPerPx,
      leastInkPx,
      leastIslandPx,
    };
  return drawingOf({ ...grid, lab }, grid.mmPerPx, labFromSpectrum(request.paper), rules, request.takenAs === 'drawing');
}

/** The same with the key drawn by a broader brush: there is less to cut. */
export function withBrush(request: SeparateRequest, work: Work, brush: number): Work {
  const { grid, target, layers } = work,
    fixedCodes = work.fixedCodes!.slice();
  putBits(fixedCodes, layers - 1, keyOf({ ...grid, lab: target }, rulesOn(cutRulesOf(request, grid.mmPerPx), brush)));
  let codes = fixedCodes;
  const levels = work.levels.map((level, i) => {
    if (i > 0) codes = halvedCodes(codes, work.levels[i - 1].width, level);
    return { ...level, fixedCodes: codes };
  });
  return { ...work, brush, fixedCodes, levels };
}

/** What was asked for last of each picture and of each raster: it stays the same while only inks, runs or the knife change. */
type LastRaster = WeakMap<Picture, { readonly key: string; readonly lab: Float32Array }>;
const lastRasters: LastRaster = new WeakMap(),
  lastSketches: LastRaster = new WeakMap();
const lastLevels = new WeakMap<Float32Array, { readonly levels: readonly Level[]; readonly boxStep?: number }>();

function rasterOf({ picture, crop, sizeMm, paper }: SeparateRequest, grid: Grid, rasters: LastRaster): Float32Array {
  const part = crop ?? cropOf(undefined, picture, { widthMm: sizeMm.width, heightMm: sizeMm.height }),
    white = xyzFromSpectrum(paper);
  const key = [part.x, part.y, part.width, part.height, grid.width, grid.height, ...white].join();
  const last = rasters.get(picture);
  if (last?.key === key) return last.lab;
  const lab = scaledLab(picture, part, grid.width, grid.height, white);
  rasters.set(picture, { key, lab });
  return lab;
}

function plainLevels(lab: Float32Array, { width, height, mmPerPx }: Grid, boxStep?: number): readonly Level[] {
  const last = lastLevels.get(lab);
  if (last?.boxStep === boxStep && last?.levels[0].mmPerPx === mmPerPx) return last.levels;
  const levels = levelsOf(lab, width, height, mmPerPx, { boxStep });
  lastLevels.set(lab, { levels, boxStep });
  return levels;
}

/** All overlaps; with pairs, exactly one of the two layers of a cut prints everywhere. */
function codesOf(layers: number, printed: number, pairs: boolean): number[] {
  const all = Array.from({ length: 1 << layers }, (_, i) => i);
  if (!pairs) return all;
  return all.filter((code) => {
    for (let bit = printed; bit < layers; bit += 2) if (((code >> bit) & 1) === ((code >> (bit + 1)) & 1)) return false;
    return true;
  });
}

/** Tones one inside the other over whatever lies there; a key prints where it will. */
function tonesOf(layers: number, printed: number, key: boolean): number[] {
  const tones = nestedCodes(printed, layers - printed - (key ? 1 : 0)),
    below = Array.from({ length: 1 << printed }, (_, code) => code);
  return [0, ...(key ? [1 << (layers - 1)] : [])].flatMap((over) => tones.flatMap((tone) => below.map((code) => over | tone | code)));
}

type Sheet = Pick<SeparateRequest, 'deposit' | 'paper' | 'surface'>;
const solid = (ink: Ink, { deposit }: Sheet): Film =>
  filmOfRecipe({ wish: 0, parts: [{ id: 'one', share: 1 }] }, new Map([['one', ink]]), deposit ?? 1);
/** Where the lightness of the lower film, and of both, stands in the Lab of two films' overlaps. */
const below = 3,
  onBoth = 9;
const aloneLight = (ink: Ink, sheet: Sheet): number => overlapLabOf(sheet.paper, [solid(ink, sheet)], sheet.surface)[below];

/** The last run, in the darkest pot unless another is wished for. */
function keyWish(wish: LayerWish, shelf: ReadonlyMap<string, Ink>, sheet: Sheet): LayerWish {
  if (wish.ink !== undefined) return { ...wish, placeFixed: true };
  const [darkest] = [...shelf].map(([id, ink]) => ({ id, light: aloneLight(ink, sheet) })).sort((a, b) => a.light - b.light);
  return { ink: darkest.id, strength: 1, placeFixed: true };
}

/** The pots that make what lies under them darker: a covering white laid on a shadow would be a light. All of them where that leaves none. */
function darkening(shelf: Map<string, Ink>, sheet: Sheet, wishes: readonly LayerWish[]): Map<string, Ink> {
  const dark = solid(
    [...shelf.values()].reduce((best, ink) => (aloneLight(ink, sheet) < aloneLight(best, sheet) ? ink : best)),
    sheet,
  );
  const kept = [...shelf].filter(([id, ink]) => {
    const lab = overlapLabOf(sheet.paper, [dark, solid(ink, sheet)], sheet.surface);
    return wishes.some((wish) => wish.ink === id) || lab[onBoth] < lab[below] + mostLift;
  });
  return kept.length > 0 ? new Map(kept) : shelf;
}

/** L* that a pot may lift the darkest one by. */
const mostLift = 6;

function inksOf(pots: readonly Pot[]): Map<string, Ink> {
  return new Map(pots.map((pot) => [pot.id, pot.ink]));
}

function importanceOn(map: ImportanceMap, grid: Grid): Float32Array {
  const out = new Float32Array(grid.width * grid.height);
  for (let y = 0; y < grid.height; y++)
    for (let x = 0; x < grid.width; x++) {
      const sx = Math.min(map.width - 1, Math.floor(((x + 0.5) * map.width) / grid.width)),
        sy = Math.min(map.height - 1, Math.floor(((y + 0.5) * map.height) / grid.height));
      // Nothing counts for nothing at all: some weight keeps the knife quiet where the picture does not matter.
      out[y * grid.width + x] = Math.max(0.02, Math.min(20, map.weight[sy * map.width + sx]));
    }
  return out;
}

/**
 * The picture fitted into what the shelf can print: lightness squeezed towards the paper (chroma, contrast) so that the picture's
 * darks reach the darkest overlap, chroma scaled down (lightness, contrast) so that its strongest colours are within those of the pots.
 */
function fittedToReach(target: Float32Array, intent: GamutIntent, setup: SearchSetup): Float32Array {
  if (intent === 'nearest') return target;
  const white = labFromSpectrum(setup.paper)[0];
  const films = [...setup.shelf.keys()].map((id) => filmOfRecipe({ wish: 0, parts: [{ id, share: 1 }] }, setup.shelf, setup.deposit));
  const single = films.map((film) => overlapLabOf(setup.paper, [film], setup.surface).subarray(3, 6));
  const darkFirst = films.map((film, i) => ({ film, light: single[i][0] })).sort((a, b) => a.light - b.light);
  const stack = overlapLabOf(
    setup.paper,
    darkFirst.slice(0, 2).map((d) => d.film),
    setup.surface,
  );
  const darkest = Math.min(...stack.filter((_, i) => i % 3 === 0));
  const strongest = Math.max(...single.map((lab) => Math.hypot(lab[1], lab[2])));
  const n = target.length / 3;
  const lights = Float32Array.from({ length: n }, (_, i) => target[i * 3]).sort();
  const chromas = Float32Array.from({ length: n }, (_, i) => Math.hypot(target[i * 3 + 1], target[i * 3 + 2])).sort();
  const dark = lights[Math.floor(n * 0.01)],
    strong = chromas[Math.floor(n * 0.99)];
  const squeeze = intent === 'lightness' ? 1 : Math.min(1, (white - darkest) / Math.max(1, white - dark));
  const fade = intent === 'chroma' ? 1 : Math.min(1, strongest / Math.max(1, strong)) * (intent === 'contrast' ? squeeze : 1);
  const out = target.slice();
  for (let i = 0; i < out.length; i += 3) {
    out[i] = white - (white - out[i]) * squeeze;
    out[i + 1] *= fade;
    out[i + 2] *= fade;
  }
  return out;
}
