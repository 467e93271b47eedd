import { existsSync, writeFileSync } from 'node:fs';
import { pathData, traceMask, tracePhoto, traceScan, type Photo, type Traced } from '../core/form/index.ts';
import { fail } from '../core/problem.ts';
import { readPicture, type Picture } from '../core/separate/index.ts';
import { prepare } from './assets.ts';
import type { Command } from './command.ts';
import { sayDiskError } from './folder.ts';
import { printProblems } from './load.ts';
import { numberOf, readFileBytes, textOf } from './words.ts';

export const trace: Command = {
  name: 'trace',
  usage:
    'trace PHOTO --sheet a4|letter|WxH | --scan PPI | --mask MM [--out FILE.svg] [--smooth MM] [--corners "x,y x,y x,y x,y"] [--replace]',
  summary: 'the outline of a real thing, photographed on a sheet of paper, at true size',
  help: [
    '--sheet SIZE     the paper it lies on: a4, letter, or width x height in mm; the corners are found, the perspective is taken out',
    '--corners        the sheet’s corners in pixels, top left first, clockwise, where they were not found rightly',
    '--scan PPI       a flat scan of so many pixels per inch',
    '--mask MM        a black-and-white picture, so many mm wide: black is the shape',
    '--smooth MM      smoothing may move the outline by so much (default 0.2)',
    '--out FILE       the drawing to write (default: the photo’s name with .svg)',
  ].join('\n'),
  options: {
    sheet: { type: 'string' },
    scan: { type: 'string' },
    mask: { type: 'string' },
    out: { type: 'string' },
    smooth: { type: 'string' },
    corners: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const path = call.words[0] ?? fail('no-photo', 'the command', 'Which photograph?', 'Name a JPEG, PNG, WebP or TIFF file.');
    await prepare();
    const photo = photoOf(await readPicture(readFileBytes(path), path));
    const smoothMm = numberOf(call.options['smooth'], '--smooth', 0.2, 0, 5);
    const traced = traceAs(photo, call.options, smoothMm, path);
    printProblems(traced.problems);
    const out = textOf(call.options['out']) ?? `${path.replace(/\.[^.]+$/, '')}.svg`;
    if (existsSync(out) && call.options['replace'] !== true)
      fail('file-exists', out, 'There is such a file already.', 'Choose another name with --out, or say --replace.');
    const width = traced.widthMm.toFixed(2),
      height = traced.heightMm.toFixed(2);
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n  <path fill-rule="evenodd" d="${pathData(traced.region)}"/>\n</svg>\n`;
    try {
      writeFileSync(out, svg);
    } catch (error) {
      fail('cannot-write', out, `The drawing could not be written: ${sayDiskError(error)}`, 'Choose another place with --out.');
    }
    console.log(`${out}: ${width} × ${height} mm, ${traced.region.rings.length} outlines`);
    return 0;
  },
};

function traceAs(photo: Photo, options: Parameters<Command['run']>[0]['options'], smoothMm: number, path: string): Traced {
  if (options['scan'] !== undefined) return traceScan(photo, numberOf(options['scan'], '--scan', 300, 20, 10000), { smoothMm }, path);
  if (options['mask'] !== undefined) return traceMask(photo, numberOf(options['mask'], '--mask', 100, 1, 5000), { smoothMm }, path);
  const sheet =
    textOf(options['sheet']) ??
    fail('no-sheet', '--sheet', 'Which paper does it lie on?', 'Say --sheet a4, --sheet letter, or its size in mm: --sheet 300x400.');
  const size = /^(\d+(?:[.,]\d+)?)\s*[x×]\s*(\d+(?:[.,]\d+)?)$/i.exec(sheet);
  if (sheet !== 'a4' && sheet !== 'letter' && !size)
    fail('no-such-sheet', '--sheet', `“${sheet}” is no paper size.`, 'Say a4, letter, or width x height in mm.');
  const given = textOf(options['corners']);
  const corners = given
    ?.trim()
    .split(/\s+/)
    .map((pair) => pair.split(',').map(Number) as unknown as readonly [number, number]);
  if (corners && (corners.length !== 4 || corners.some((c) => c.length !== 2 || !c.every(Number.isFinite))))
    fail(
      'bad-corners',
      '--corners',
      'Four corners are needed, each as x,y in pixels.',
      'Write --corners "120,80 2900,95 2950,3800 90,3790".',
    );
  const number = (text: string): number => Number(text.replace(',', '.'));
  return tracePhoto(
    photo,
    { sheet: size ? { widthMm: number(size[1]), heightMm: number(size[2]) } : (sheet as 'a4' | 'letter'), corners, smoothMm },
    path,
  );
}

/** Pixels as bytes; what is see-through is white, like the paper behind it. */
function photoOf({ width, height, pixels, coverage }: Picture): Photo {
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < data.length; i++) {
    const value =
      pixels.kind === 'srgb8'
        ? pixels.data[i]
        : pixels.kind === 'srgb16'
          ? pixels.data[i] >> 8
          : Math.round(255 * Math.min(1, Math.cbrt(pixels.data[i] / 32768)));
    const cover = coverage ? coverage[(i / 3) | 0] / 255 : 1;
    data[i] = value * cover + 255 * (1 - cover);
  }
  return { width, height, channels: 3, data };
}
