import { dither } from '@cantoo/pdf-lib/upng';
import { applyPaletteSync, utils } from 'image-q';
import { prepare } from '../src/cli/assets.ts';
import { quickly } from '../src/cli/commands/picture/positive.ts';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { planOf } from '../src/cli/disk/load.ts';
import { askSplit } from '../src/core/asks/index.ts';
import { screener } from '../src/core/halftone/index.ts';
import { parseJob } from '../src/core/job/index.ts';
import { filmFile, filmOf, type ToneRun } from '../src/packet/index.ts';
import type { BenchRow } from './row.ts';

export const title = 'Tone: a split, a film positive, dots beside error diffusion';

const once = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

export async function run(): Promise<BenchRow[]> {
  await prepare();
  return [await positive(), await split(), ...dots()];
}

/** 12 megapixels of every colour, slowly changing, with a little grain. */
async function split(): Promise<BenchRow> {
  const [width, height] = [4000, 3000];
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const x = i % width,
      y = Math.floor(i / width);
    data[i * 3] = (x * 255) / width;
    data[i * 3 + 1] = (y * 255) / height;
    data[i * 3 + 2] = ((x + y) * 230) / (width + height) + ((x * 7919 + y * 104729) % 23);
  }
  const { job } = readJobAt(new URL('../examples/tide-pool/', import.meta.url).pathname);
  const wide = { ...job, image: { ...job.image, widthMm: 400, heightMm: 300 } };
  const picture = { width, height, pixels: { kind: 'srgb8', data }, format: 'PNG', problems: [] } as const;
  const inks = ['rockpool', 'shell', 'sand', 'slate'].map((id) => ({ id }));
  const before = process.cpuUsage();
  const medianMs = await once(() => askSplit(wide, picture, { inks }));
  const note = `${(process.cpuUsage(before).user / 1e6).toFixed(1)} s of processor time`;
  return { name: '12 Mpx into four inks', medianMs, rivalName: 'aim', rivalMs: 6000, note };
}

async function positive(): Promise<BenchRow> {
  const bundle = readJobAt(new URL('../examples/parrot/', import.meta.url).pathname);
  const job = parseJob({
    ...bundle.job,
    image: { widthMm: 300, heightMm: 400 },
    forms: [],
    cuts: [],
    // On the whole image, not on the small one's.
    layers: bundle.job.layers.map((layer) => ({ ...layer, cut: undefined })),
    papers: bundle.job.papers.map((p) => ({ ...p, widthMm: 340, heightMm: 440 })),
  });
  const plan = await planOf({ ...bundle, job });
  const found = plan.layers.find((l): l is ToneRun => l.tone !== null)!;
  // Every tone there is, so that no part of the film is bare for long.
  const { width } = plan.codes;
  const plane = found.tone.plane.map((_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    return Math.min(255, Math.max(0, 128 + 150 * Math.sin(x / 300) * Math.cos(y / 400) + ((x * 7919 + y * 104729) % 9)));
  });
  const layer: ToneRun = { ...found, tone: { ...found.tone, plane } };
  const film = filmOf(plan, layer, { dpi: 1200, mirrored: false, reader: { language: 'en', units: 'mm' } });
  const before = process.cpuUsage();
  const medianMs = await once(() => filmFile(film, 'png', quickly));
  const seconds = (process.cpuUsage(before).user / 1e6).toFixed(1);
  const most = Math.round(process.resourceUsage().maxRSS / 1024);
  const note = `${seconds} s of processor time, ${most} MB at most`;
  return { name: 'a positive of 300 × 400 mm at 1,200 dpi, PNG, every tone', medianMs, rivalName: 'aim', rivalMs: 4000, note };
}

const side = 1000;
const timed = (work: () => void): number => {
  work();
  const start = performance.now();
  work();
  return performance.now() - start;
};

/** A grey ramp of a megapixel as black and bare: our dots and grain, beside what general libraries and a plain matrix make of it. */
function dots(): BenchRow[] {
  const grey = Uint8Array.from({ length: side * side }, (_, i) => ((i % side) * 255) / side);
  const out = new Uint8Array(side);
  const beside = rivals(grey);
  return (['dots', 'grain'] as const).flatMap((by) => {
    const draw = screener({ by, shape: 'round', rulingPerCm: 20, angleDeg: 22.5, leastDotMicrons: 80, pixelsPerCm: 472.44 });
    const medianMs = timed(() => {
      for (let y = 0; y < side; y++) draw.row(y, grey.subarray(y * side, (y + 1) * side), out);
    });
    return beside.map((rival) => ({ name: `a megapixel of ${by}`, medianMs, ...rival }));
  });
}

/** Error diffusion by image-q (MIT), ordered dithering by the PNG library within pdf-lib (MIT), and by a matrix of 8 × 8 alone (Bayer 1973). */
function rivals(grey: Uint8Array): { readonly rivalName: string; readonly rivalMs: number }[] {
  const rgba = new Uint8Array(side * side * 4);
  for (let i = 0; i < grey.length; i++) rgba.fill(255 - grey[i], i * 4, i * 4 + 3).fill(255, i * 4 + 3, i * 4 + 4);
  const palette = new utils.Palette();
  palette.add(utils.Point.createByRGBA(0, 0, 0, 255));
  palette.add(utils.Point.createByRGBA(255, 255, 255, 255));
  const diffused = timed(() => {
    applyPaletteSync(utils.PointContainer.fromUint8Array(rgba, side, side), palette, { imageQuantization: 'floyd-steinberg' });
  });
  const ordered = 2;
  const [colours, places] = [new Uint8Array(rgba.length), new Uint8Array(grey.length)];
  const byLibrary = timed(() => dither(rgba, side, side, [0xff000000, 0xffffffff], colours, places, ordered));
  const matrix = bayer(3);
  const plain = timed(() => {
    for (let y = 0, i = 0; y < side; y++)
      for (let x = 0; x < side; x++, i++) places[i] = grey[i] > matrix[((y & 7) << 3) | (x & 7)] ? 1 : 0;
  });
  return [
    { rivalName: 'error diffusion, image-q', rivalMs: diffused },
    { rivalName: 'ordered, pdf-lib’s PNG', rivalMs: byLibrary },
    { rivalName: 'ordered, 8 × 8 by hand', rivalMs: plain },
  ];
}

/** Bayer 1973: each matrix is made of four of the one before. Thresholds 0..255. */
function bayer(doublings: number): Float64Array {
  let [n, ranks] = [1, [0]];
  for (let d = 0; d < doublings; d++, n *= 2)
    ranks = Array.from({ length: 4 * n * n }, (_, i) => {
      const [x, y] = [i % (2 * n), Math.floor(i / (2 * n))];
      return 4 * ranks[(y % n) * n + (x % n)] + [0, 2, 3, 1][(y < n ? 0 : 2) + (x < n ? 0 : 1)];
    });
  return Float64Array.from(ranks, (r) => (255 * (r + 0.5)) / (n * n));
}
