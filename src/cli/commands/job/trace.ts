import { boardAsStored, cameraFrom, writeCameras } from '../../../core/asks/index.ts';
import {
  boardSeen,
  mapRegion,
  openingsOf,
  pathData,
  readBoard,
  regionBox,
  traceMask,
  tracePhoto,
  traceScan,
  type Lens,
  type Photo,
  type Traced,
} from '../../../core/form/index.ts';
import { takenWith, type TakenWith } from '../../../core/image/index.ts';
import { fail } from '../../../core/problem.ts';
import { figure, lengths, name as asName, say } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { lensKeptFor } from '../../disk/lens-file.ts';
import { option, replaceFile } from '../../say/help.ts';
import { printProblems, takeJob } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { sayHere } from '../../reader.ts';
import { numberOf, textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { photoOf } from '../../disk/photo-of.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { sayCamera } from './lens.ts';

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
    option('--with', say('help.traceWith'), 'job'),
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
    with: { type: 'string' },
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
    const bytes = readFileBytes(path);
    const photo = photoOf(await readPictureApart(bytes, path));
    if (keepLens !== undefined) {
      const { columns, rows, offPx } = readBoard(photo, path);
      const taken = takenWith(bytes);
      const { camera } = cameraFrom([boardAsStored(boardSeen(photo)!, taken)], taken)!;
      writeNew(keepLens, replace, () => writeCameras([camera]));
      console.log(sayHere('inkAnswers.lensKept', { file: asName(keepLens), columns, rows, off: figure(offPx, 2) }));
      return 0;
    }
    const smoothMm = numberOf(call.options['smooth'], '--smooth', 0.2, 0, 5);
    const found = traceAs(photo, takenWith(bytes), call.options, smoothMm, path);
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

/** The camera's lens: of the file that was named, or of the job's cameras if one of them took this photograph. */
function lensFrom(options: Parameters<Command['run']>[0]['options'], photo: Photo, taken: TakenWith): { readonly lens?: Lens } {
  const job = textOf(options['with']);
  const { lens, camera } = lensKeptFor(textOf(options['lens']), job === undefined ? [] : (takeJob(job).job.cameras ?? []), taken, photo);
  if (job !== undefined && options['lens'] === undefined) console.log(camera ? sayCamera(camera) : sayHere('inkAnswers.noCameraKept'));
  return lens ? { lens } : {};
}

function traceAs(
  photo: Photo,
  taken: TakenWith,
  options: Parameters<Command['run']>[0]['options'],
  smoothMm: number,
  path: string,
): Traced {
  const apartMm = options['apart'] === undefined ? {} : { apartMm: numberOf(options['apart'], '--apart', 3, 0.2, 50) };
  const how = { smoothMm, ...apartMm };
  const lens = options['scan'] === undefined && options['mask'] === undefined ? lensFrom(options, photo, taken) : {};
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
