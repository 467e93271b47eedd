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
  return {
    name: '12 Mpx into four inks',
    medianMs: await once(() => askSplit(wide, picture, { inks })),
    rivalName: 'aim',
    rivalMs: 6000,
  };
}

async function positive(): Promise<BenchRow> {
  const bundle = readJobAt(new URL('../examples/parrot/', import.meta.url).pathname);
  const job = parseJob({
    ...bundle.job,
    image: { widthMm: 300, heightMm: 400 },
    papers: bundle.job.papers.map((p) => ({ ...p, widthMm: 340, heightMm: 440 })),
  });
  const plan = await planOf({ ...bundle, job });
  const layer = plan.layers.find((l): l is ToneRun => l.tone !== null)!;
  const film = filmOf(plan, layer, { dpi: 1200, mirrored: false, reader: { language: 'en', units: 'mm' } });
  const medianMs = await once(() => filmFile(film, 'png', quickly));
  const most = Math.round(process.resourceUsage().maxRSS / 1024);
  return { name: 'a positive of 300 × 400 mm at 1,200 dpi, PNG', medianMs, rivalName: 'aim', rivalMs: 4000, note: `${most} MB at most` };
}

/** A grey ramp of a megapixel as black and bare: our dots and grain, and error diffusion by a general library (image-q, MIT). */
function dots(): BenchRow[] {
  const side = 1000;
  const grey = Uint8Array.from({ length: side * side }, (_, i) => ((i % side) * 255) / side);
  const out = new Uint8Array(side);
  const timed = (work: () => void): number => {
    work();
    const start = performance.now();
    work();
    return performance.now() - start;
  };
  const rgba = new Uint8Array(side * side * 4);
  for (let i = 0; i < grey.length; i++) rgba.fill(255 - grey[i], i * 4, i * 4 + 3).fill(255, i * 4 + 3, i * 4 + 4);
  const palette = new utils.Palette();
  palette.add(utils.Point.createByRGBA(0, 0, 0, 255));
  palette.add(utils.Point.createByRGBA(255, 255, 255, 255));
  const rivalMs = timed(() => {
    applyPaletteSync(utils.PointContainer.fromUint8Array(rgba, side, side), palette, { imageQuantization: 'floyd-steinberg' });
  });
  return (['dots', 'grain'] as const).map((by) => {
    const draw = screener({ by, shape: 'round', rulingPerCm: 20, angleDeg: 22.5, leastDotMicrons: 80, pixelsPerCm: 472.44 });
    return {
      name: `a megapixel of ${by}`,
      medianMs: timed(() => {
        for (let y = 0; y < side; y++) draw.row(y, grey.subarray(y * side, (y + 1) * side), out);
      }),
      rivalName: 'error diffusion, image-q',
      rivalMs,
    };
  });
}
