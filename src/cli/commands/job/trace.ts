import {
  mapRegion,
  openingsOf,
  pathData,
  lensInShares,
  lensOfShares,
  readBoard,
  regionBox,
  traceMask,
  tracePhoto,
  traceScan,
  type Lens,
  type Photo,
  type Traced,
} from '../../../core/form/index.ts';
import { fail } from '../../../core/problem.ts';
import type { Picture } from '../../../core/separate/index.ts';
import { figure, lengths, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { keptLensFrom } from '../../disk/lens-file.ts';
import { option, replaceFile } from '../../say/help.ts';
import { printProblems } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { sayHere } from '../../reader.ts';
import { numberOf, textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { readPictureApart } from '../../disk/read-picture.ts';

export const trace: Command = {
  name: 'trace',
  usage: say('help.traceUsage'),
  summary: say('help.traceSummary'),
  help: [
    option('--sheet', say('help.traceSheet'), 'size'),
    option('--corners "x,y x,y x,y x,y"', say('help.traceCorners')),
    option('--scan PPI', say('help.traceScan')),
    option('--mask MM', say('help.traceMask')),
    option('--board MM', say('help.traceBoard')),
    option('--lens', say('help.traceLens'), 'file'),
    option('--keep-lens', say('help.traceKeepLens'), 'file'),
    option('--apart MM', say('help.traceApart')),
    option('--openings', say('help.traceOpenings')),
    option('--smooth MM', say('help.traceSmooth')),
    option('--out', say('help.traceOut'), 'file'),
    replaceFile,
  ],
  options: {
    sheet: { type: 'string' },
    scan: { type: 'string' },
    mask: { type: 'string' },
    out: { type: 'string' },
    smooth: { type: 'string' },
    corners: { type: 'string' },
    openings: { type: 'boolean' },
    board: { type: 'string' },
    lens: { type: 'string' },
    'keep-lens': { type: 'string' },
    apart: { type: 'string' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const path = call.words[0] ?? fail('no-photo', say('where.commandLine'), say('cli.whichPhoto'), say('cli.namePicture'));
    const out = textOf(call.options['out']) ?? `${path.replace(/\.[^.]+$/, '')}.svg`,
      replace = call.options['replace'] === true;
    const keepLens = textOf(call.options['keep-lens']);
    if (keepLens === undefined) mustBeNew(out, replace);
    const photo = photoOf(await readPictureApart(readFileBytes(path), path));
    if (keepLens !== undefined) {
      const { lens, columns, rows, offPx } = readBoard(photo, path);
      writeNew(keepLens, replace, () => `${JSON.stringify({ lens: lensInShares(lens, photo) }, null, 2)}\n`);
      console.log(sayHere('inkAnswers.lensKept', { file: asName(keepLens), columns, rows, off: figure(offPx, 2) }));
      return 0;
    }
    const smoothMm = numberOf(call.options['smooth'], '--smooth', 0.2, 0, 5);
    const found = traceAs(photo, call.options, smoothMm, path);
    const traced = call.options['openings'] === true ? openingsIn(found, path) : found;
    printProblems(traced.problems);
    const width = traced.widthMm.toFixed(2),
      height = traced.heightMm.toFixed(2);
    writeNew(
      out,
      replace,
      () =>
        `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n  <path fill-rule="evenodd" d="${pathData(traced.region)}"/>\n</svg>\n`,
    );
    const size = lengths([traced.widthMm, traced.heightMm], '×', 2);
    console.log(sayHere('inkAnswers.traced', { file: asName(out), size, n: traced.region.rings.length }));
    return 0;
  },
};

/** The openings of what was traced, in its place. */
function openingsIn(found: Traced, path: string): Traced {
  const openings = openingsOf(found.region);
  if (openings.rings.length === 0) fail('no-openings', fileAt(path), say('refusals.noOpenings'), say('refusals.leaveOpenings'));
  const box = regionBox(openings);
  const region = mapRegion(openings, (x, y) => [x - box.minX, y - box.minY]);
  return { ...found, region, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
}

function lensFrom(file: string | undefined, photo: Photo): { readonly lens?: Lens } {
  return file === undefined ? {} : { lens: lensOfShares(keptLensFrom(file), photo)! };
}

function traceAs(photo: Photo, options: Parameters<Command['run']>[0]['options'], smoothMm: number, path: string): Traced {
  const apartMm = options['apart'] === undefined ? {} : { apartMm: numberOf(options['apart'], '--apart', 3, 0.2, 50) };
  const how = { smoothMm, ...apartMm };
  const lens = lensFrom(textOf(options['lens']), photo);
  if (options['board'] !== undefined)
    return tracePhoto(photo, { sheet: { squareMm: numberOf(options['board'], '--board', 25, 1, 500) }, ...lens, ...how }, path);
  if (options['scan'] !== undefined) return traceScan(photo, numberOf(options['scan'], '--scan', 300, 20, 10000), how, path);
  if (options['mask'] !== undefined) return traceMask(photo, numberOf(options['mask'], '--mask', 100, 1, 5000), how, path);
  const sheet = textOf(options['sheet']) ?? fail('no-sheet', placeOf('--sheet'), say('refusals.whichSheet'), say('refusals.writeSheet'));
  const size = /^(\d+(?:[.,]\d+)?)\s*[x×]\s*(\d+(?:[.,]\d+)?)$/i.exec(sheet);
  if (sheet !== 'a4' && sheet !== 'letter' && !size)
    fail('no-such-sheet', placeOf('--sheet'), say('refusals.noSuchSheet', { text: asName(sheet) }), say('refusals.saySheet'));
  const given = textOf(options['corners']);
  const corners = given
    ?.trim()
    .split(/\s+/)
    .map((pair) => pair.split(',').map(Number) as unknown as readonly [number, number]);
  if (corners && (corners.length !== 4 || corners.some((c) => c.length !== 2 || !c.every(Number.isFinite))))
    fail('bad-corners', placeOf('--corners'), say('refusals.fourCorners'), say('refusals.writeCorners'));
  const number = (text: string): number => Number(text.replace(',', '.'));
  return tracePhoto(
    photo,
    { sheet: size ? { widthMm: number(size[1]), heightMm: number(size[2]) } : (sheet as 'a4' | 'letter'), corners, ...lens, ...how },
    path,
  );
}

/** Pixels as bytes; what is see-through is white, like the paper behind it. */
export function photoOf({ width, height, pixels, coverage }: Picture): Photo {
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
