import { applyPaletteSync, buildPaletteSync, utils } from 'image-q';
import jpegJs from 'jpeg-js';
import { deltaE00Of } from '../src/core/colour/index.ts';
import { rasterizeInto } from '../src/core/form/index.ts';
import { readPicture, scaledLab, separate, separated, type Picture, type Separation } from '../src/core/separate/index.ts';
import { xyzFromSpectrum } from '../src/core/colour/index.ts';
import { makeStencil, defaultMaterials } from '../src/core/stencil/index.ts';
import { quietTask } from '../src/core/task.ts';
import { hireHands } from '../src/cli/threads/hands.ts';
import type { BenchRow } from './row.ts';
import { handRow } from './separate-hand.ts';
import { openPicture, openPictures } from './separate-pictures.ts';
import { benchShelf } from './separate-shelf.ts';
import { prepareReaders } from './separate-tools.ts';
import { knifePrices, registerTrial, requestFor, trial } from './separate-trial.ts';

export const title = 'A picture into stencils: mean ΔE00 ÷ that of as many flat opaque inks of any colour';

const counts = [3, 4, 5, 6];
/** All pictures, or those named in BENCH_PICTURES (comma between), for a quick look. */
const chosen = openPictures.filter((p) => !process.env.BENCH_PICTURES || process.env.BENCH_PICTURES.split(',').includes(p.name));
const two = (v: number): string => v.toFixed(2);

export async function run(): Promise<BenchRow[]> {
  await prepareReaders();
  const rows: BenchRow[] = [];
  const ratios = new Map<number, number[][]>();
  for (const { name, what } of chosen) {
    const picture = await openPicture(name);
    for (const layers of counts) {
      const start = performance.now();
      const t = await trial(picture, layers);
      const told = [...[t.free, ...t.equal].map(([ours, flat]) => ours / flat), t.free[0] / t.sameShelf];
      ratios.set(layers, [...(ratios.get(layers) ?? []), told]);
      const equal = t.equal.map(([ours, flat, metres], i) => `at ${two(metres)} m ${two(ours)} ÷ ${two(flat)} = ${two(told[i + 1])}`);
      rows.push({
        name: `${name}, ${layers} layers`,
        medianMs: performance.now() - start,
        note: `no budget ${two(t.free[0])} ÷ ${two(t.free[1])} = ${two(told[0])}; ${equal.join('; ')}; ${what}`,
      });
    }
  }
  for (const layers of counts) {
    const [free, ...equal] = [0, ...knifePrices, 0].map((_, i) => mean(ratios.get(layers)!.map((told) => told[i]))),
      single = equal.pop()!;
    rows.push({
      name: `all, ${layers} layers: mean ratio`,
      medianMs: 0,
      note: `no budget ${free.toFixed(3)} (of as many flat inks from the same shelf ${single.toFixed(3)}), ${equal.map((ratio, i) => `equal knife at a price of ${knifePrices[i]}: ${ratio.toFixed(3)}`).join(', ')}`,
    });
  }
  for (const { name } of chosen) for (const layers of [4, 6]) rows.push(await handRow(name, await openPicture(name), layers));
  rows.push(...(await registerRows()), ...(await bridgeRows()), ...(await rivalRows()), ...(await speedRows()));
  return rows;
}

function mean(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

async function registerRows(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [],
    removed: number[] = [];
  for (const { name } of chosen) {
    const start = performance.now();
    const t = await registerTrial(await openPicture(name), 4);
    removed.push(t.removed);
    rows.push({
      name: `${name}, register 0.5 mm, 4 layers`,
      medianMs: performance.now() - start,
      note: `in register ${two(t.inRegister)}, off ${two(t.unaware)}, reckoned with ${two(t.aware)}: ${Math.round(100 * t.removed)} % of what it adds removed (all layers off together: ${two(t.together)}, so traps alone could remove ${Math.round((100 * (t.unaware - t.together)) / (t.unaware - t.inRegister))} %), with ${two(t.metres[1])} m against ${two(t.metres[0])}`,
    });
  }
  rows.push({ name: 'all: register error removed', medianMs: 0, note: `${Math.round(100 * mean(removed))} %` });
  return rows;
}

/** What bridges add to the error: laid where they show least, and laid shortest. */
async function bridgeRows(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  let seen = 0,
    shortest = 0;
  for (const { name } of chosen) {
    const start = performance.now();
    const result = await separated(requestFor(await openPicture(name), 4), quietTask);
    const added = bridgesAdd(result);
    seen += added[0];
    shortest += added[1];
    rows.push({
      name: `${name}, bridges of 4 layers`,
      medianMs: performance.now() - start,
      note: `${result.figures.bridges} bridges add ΔE00 ${added[0].toFixed(3)}, shortest ones ${added[1].toFixed(3)}`,
    });
  }
  rows.push({
    name: 'all: bridges against shortest',
    medianMs: 0,
    note: `${Math.round(100 * (1 - seen / shortest))} % less visible error`,
  });
  return rows;
}

function bridgesAdd(result: Separation): [number, number] {
  const grid = { originXMm: 0, originYMm: 0, mmPerPx: result.mmPerPx, width: result.width, height: result.height };
  const planned = new Uint8Array(result.codes.length),
    shortest = new Uint8Array(result.codes.length);
  for (const layer of result.layers) {
    layer.mask.forEach((v, i) => {
      planned[i] |= v << layer.bit;
    });
    const plain = makeStencil({
      shape: layer.region,
      side: layer.side,
      aperture: result.image,
      sheet: layer.stencil.sheet,
      material: defaultMaterials.find((m) => m.id === 'film')!,
      islands: 'bridge',
    });
    rasterizeInto(shortest, layer.bit, plain.prints, grid);
  }
  const error = (codes: Uint8Array): number => {
    let sum = 0;
    codes.forEach((code, i) => {
      sum += difference(result.target, i, result.overlapLab, code);
    });
    return sum / codes.length;
  };
  const base = error(planned);
  return [error(result.codes) - base, error(shortest) - base];
}

function difference(a: ArrayLike<number>, i: number, b: ArrayLike<number>, j: number): number {
  return deltaE00Of(a[i * 3], a[i * 3 + 1], a[i * 3 + 2], b[j * 3], b[j * 3 + 1], b[j * 3 + 2]);
}

/** A palette quantiser (image-q, MIT): colours of any kind without layers, inks or knife, at N and at 2^N colours. */
async function rivalRows(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const { name } of chosen.slice(0, 3)) {
    const picture = await openPicture(name);
    const scale = 320 / Math.max(picture.width, picture.height),
      width = Math.round(picture.width * scale),
      height = Math.round(picture.height * scale);
    const paper = xyzFromSpectrum(benchShelf().paper);
    const lab = scaledLab(picture, { x: 0, y: 0, width: 1, height: 1 }, width, height, paper);
    const start = performance.now();
    const ours = await separated(requestFor(picture, 4, { rasterMm: 200 / 320 }), quietTask);
    const oursMs = performance.now() - start;
    for (const colours of [4, 16]) {
      const from = performance.now();
      const flat = quantised(picture, width, height, colours, paper);
      const rivalMs = performance.now() - from;
      let sum = 0;
      for (let i = 0; i < width * height; i++) sum += difference(lab, i, flat, i);
      rows.push({
        name: `${name}, 4 layers cut, beside ${colours} free colours`,
        medianMs: oursMs,
        rivalName: 'image-q',
        rivalMs,
        note: `mean ΔE00 ${two(ours.figures.inRegister.mean)} with bridges and least widths; quantiser ${two(sum / (width * height))}, no knife`,
      });
    }
  }
  return rows;
}

function quantised(
  picture: Picture,
  width: number,
  height: number,
  colours: number,
  paper: readonly [number, number, number],
): Float32Array {
  const { data, kind } = picture.pixels;
  const rgba = new Uint8Array(width * height * 4).fill(255);
  const divisor = kind === 'srgb8' ? 1 : 257;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const s = Math.floor(((y + 0.5) * picture.height) / height) * picture.width + Math.floor(((x + 0.5) * picture.width) / width);
      const share = picture.coverage ? picture.coverage[s] / 255 : 1;
      for (let c = 0; c < 3; c++) rgba[(y * width + x) * 4 + c] = Math.round((data[s * 3 + c] / divisor) * share + 255 * (1 - share));
    }
  const points = utils.PointContainer.fromUint8Array(rgba, width, height);
  const palette = buildPaletteSync([points], { colors: colours, paletteQuantization: 'wuquant', colorDistanceFormula: 'ciede2000' });
  const out = applyPaletteSync(points, palette, { imageQuantization: 'nearest', colorDistanceFormula: 'ciede2000' }).toUint8Array();
  const rgb = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) for (let c = 0; c < 3; c++) rgb[i * 3 + c] = out[i * 4 + c];
  return scaledLab(
    { width, height, pixels: { kind: 'srgb8', data: rgb }, format: 'PNG', problems: [] },
    { x: 0, y: 0, width: 1, height: 1 },
    width,
    height,
    paper,
  );
}

/** From the bytes of a JPEG to drafts and cut stencils, 6 layers at the usual raster, on one thread and with a second one. */
async function speedRows(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const earth = await openPicture('earth');
  for (const megapixels of [1, 4, 12])
    for (const threads of [1, 2]) {
      const bytes = enlarged(earth, megapixels);
      const hands = threads > 1 ? hireHands(threads - 1) : undefined;
      const start = performance.now(),
        cpu = process.cpuUsage();
      const picture = await readPicture(bytes, 'earth.jpg');
      const read = performance.now() - start;
      const drafts = separate(requestFor(picture, 6, { rasterMm: 0.25 }), quietTask, hands);
      await drafts.next();
      const first = performance.now() - start;
      let step = await drafts.next();
      let masks = 0;
      while (!step.done) {
        masks = performance.now() - start;
        step = await drafts.next();
      }
      const used = process.cpuUsage(cpu);
      hands?.dismiss();
      rows.push({
        name: `${megapixels} megapixels, 6 layers, ${threads} thread${threads > 1 ? 's' : ''}`,
        medianMs: performance.now() - start,
        note: `CPU ${((used.user + used.system) / 1e6).toFixed(1)} s; read ${Math.round(read)} ms, first draft ${Math.round(first)} ms, masks ${Math.round(masks)} ms, then cutting, bridges and the baseline; most memory so far ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
      });
    }
  return rows;
}

function enlarged(picture: Picture, megapixels: number): Uint8Array {
  const scale = Math.sqrt((megapixels * 1e6) / (picture.width * picture.height));
  const width = Math.round(picture.width * scale),
    height = Math.round(picture.height * scale);
  const data = new Uint8Array(width * height * 4).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const s = (Math.floor(y / scale) * picture.width + Math.floor(x / scale)) * 3;
      for (let c = 0; c < 3; c++) data[(y * width + x) * 4 + c] = picture.pixels.data[s + c];
    }
  return new Uint8Array(jpegJs.encode({ width, height, data }, 90).data);
}
