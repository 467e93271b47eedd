import { existsSync } from 'node:fs';
import {
  askExposure,
  photographOf,
  readRows,
  wedgeCurve,
  wedgeFromFile,
  wedgeFromPhoto,
  wedgeFromText,
  wedgeProblems,
  withExposure,
  withWedge,
  type WedgeAt,
  type WedgeRead,
} from '../../../core/asks/index.ts';
import { stripSeconds } from '../../../core/halftone/index.ts';
import type { JobBundle } from '../../../core/job/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { exposureFilm, filmFile, wedgeFilm, type FilmFormat, type ToneRun } from '../../../packet/index.ts';
import { deltaE, figure, film, list, name as asName, say, share } from '../../../words/index.ts';
import type { Call, Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { placeOf } from '../../options.ts';
import { printJson, readerOnPaper, sayHere } from '../../reader.ts';
import { json, option, replaceFile, word } from '../../say/help.ts';
import { columns } from '../../say/table.ts';
import { idsOf, numberOf, textOf, wholeOf } from '../../say/words.ts';
import { jobFileAt, writeInPlace } from '../job/done.ts';
import { quickly } from './positive.ts';

export const wedge: Command = {
  name: 'wedge',
  usage: say('help.wedgeUsage'),
  summary: say('help.wedgeSummary'),
  help: [
    say('help.wedgeText'),
    word('layer', say('help.wedgeLayer')),
    option('--out', say('help.wedgeOut'), 'file'),
    option('--strip', say('help.wedgeStrip')),
    option('--dpi N', say('help.positiveDpi')),
    option('--mirrored', say('help.positiveMirrored')),
    option('--read', say('help.wedgeRead'), 'file'),
    option('--on', say('help.wedgeOn'), 'paper'),
    option('--exposed', say('help.wedgeExposed')),
    option('--first N', say('help.wedgeFirst')),
    option('--keep', say('help.wedgeKeep')),
    json,
    replaceFile,
  ],
  prints: true,
  options: {
    out: { type: 'string' },
    strip: { type: 'boolean' },
    dpi: { type: 'string' },
    mirrored: { type: 'boolean' },
    read: { type: 'string' },
    on: { type: 'string' },
    exposed: { type: 'string' },
    first: { type: 'string' },
    keep: { type: 'boolean' },
    json: { type: 'boolean' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    const bundle = jobOf(call);
    const plan = await planOf(bundle);
    const layer = toneRunOf(plan, call.words[1]);
    const out = textOf(call.options['out']),
      read = textOf(call.options['read']),
      exposed = textOf(call.options['exposed']);
    if (out !== undefined) writeFilm(call, plan, layer, out);
    if (exposed !== undefined) tellExposure(call, bundle, plan, layer, exposed);
    if (read !== undefined) await tellWedge(call, bundle, plan, layer, read);
    if (out === undefined && read === undefined && exposed === undefined) tellCurve(call, plan, at(call, plan, layer));
    return 0;
  },
};

function toneRunOf(plan: Plan, named: string | undefined): ToneRun {
  const runs = plan.layers.filter((l): l is ToneRun => l.tone !== null);
  if (runs.length === 0) fail('no-tone', 'layers', say('halftone.noToneRun'), say('halftone.giveTone'));
  return (
    (named === undefined ? runs[0] : runs.find((l) => l.id === named || l.name === named)) ??
    fail(
      'no-such-layer',
      say('where.commandLine'),
      say('job.noSuchLayer', { layer: asName(named ?? '') }),
      say('cli.useOneOf', { all: idsOf(runs, 'or') }),
    )
  );
}

function at(call: Call, plan: Plan, layer: ToneRun): WedgeAt {
  const asked = textOf(call.options['on']);
  const paper = plan.papers.find((p) => asked === undefined || p.id === asked || p.name === asked);
  if (!paper)
    fail(
      'no-such-paper',
      placeOf('--on'),
      say('asks.noSuchPaper', { paper: asName(asked ?? '') }),
      say('cli.useOneOf', { all: idsOf(plan.papers, 'or') }),
    );
  return { paperId: paper.id, layerId: layer.id };
}

const endings = ['pdf', 'png', 'tiff'] as const;

function writeFilm(call: Call, plan: Plan, layer: ToneRun, out: string): void {
  const ending = out.slice(out.lastIndexOf('.') + 1).toLowerCase();
  const format: FilmFormat | undefined = ending === 'tif' ? 'tiff' : endings.find((one) => one === ending);
  if (!format)
    fail(
      'no-such-format',
      placeOf('--out'),
      say('cli.cannotUse', { text: asName(out) }),
      say('cli.useOneOf', {
        all: list(
          endings.map((one) => asName(`.${one}`)),
          'or',
        ),
      }),
    );
  const replace = call.options['replace'] === true;
  mustBeNew(out, replace);
  const ask = {
    dpi: wholeOf(call.options['dpi'], '--dpi', 72, 5080) ?? 1200,
    mirrored: call.options['mirrored'] === true,
    reader: readerOnPaper(call.language, plan.job),
  };
  const strip = call.options['strip'] === true;
  const made = strip ? exposureFilm(plan, layer, ask) : wedgeFilm(plan, layer, ask);
  writeNew(out, replace, () => filmFile(made, format, quickly));
  console.log(
    strip
      ? sayHere('halftone.stripWritten', { file: asName(out) })
      : sayHere('halftone.wedgeWritten', { file: asName(out), layer: asName(layer.name) }),
  );
  if (strip) tellTimes(firstOf(call));
  console.log(sayHere('halftone.filmCaution'));
}

const firstOf = (call: Call): number => numberOf(call.options['first'], '--first', 60, 0.1, 36_000);
const seconds = (s: number): ReturnType<typeof figure> => figure(s, s < 20 ? 1 : 0, false);

function tellTimes(first: number): void {
  const { had, more } = stripSeconds(first);
  console.log(sayHere('halftone.rowsAre', { first: seconds(first), more: list(more.slice(1).map(seconds), 'and') }));
  had.forEach((s, i) => console.log(`  ${sayHere('halftone.rowHad', { row: i + 1, time: seconds(s) })}`));
}

function tellExposure(call: Call, bundle: JobBundle, plan: Plan, layer: ToneRun, text: string): void {
  const found = askExposure(plan, layer.id, firstOf(call), readRows(text, placeOf('--exposed')));
  if (call.options['json'] === true) printJson(found);
  else {
    const { seconds: s, row, lightest, darkest, takenMicrons, atEnd } = found;
    console.log(
      sayHere('halftone.exposeFor', { time: seconds(s), row: row + 1, lightest: share(lightest, 0), darkest: share(darkest, 0) }),
    );
    if (atEnd) console.log(sayHere(atEnd === 'shortest' ? 'halftone.stripAtShortest' : 'halftone.stripAtLongest'));
    console.log(sayHere('halftone.leastTaken', { least: film(takenMicrons, 0) }));
    console.log(sayHere('halftone.filmCaution'));
  }
  if (call.options['keep'] !== true) return;
  writeInPlace(jobFileAt(call.words[0]), withExposure(bundle.job, plan, layer.id, found));
  if (call.options['json'] !== true) console.log(sayHere('halftone.exposureKept'));
}

async function readWedge(plan: Plan, where: WedgeAt, text: string): Promise<WedgeRead> {
  if (/^\s*\d+(?:[.,]\d+)?\s*%?\s*[:=]/.test(text) && !existsSync(text)) return wedgeFromText(plan, where, text, placeOf('--read'));
  const bytes = readFileBytes(text);
  if (/\.(?:jpe?g|png|webp|tiff?)$/i.test(text)) {
    const picture = await readPictureApart(bytes, text);
    const read = wedgeFromPhoto(plan, where, photographOf(picture), fileAt(text));
    return { ...read, problems: [...picture.problems, ...read.problems] };
  }
  const typed = new TextDecoder().decode(bytes);
  return /^\s*\d+(?:[.,]\d+)?\s*%?\s*[:=]/m.test(typed) ? wedgeFromText(plan, where, typed, fileAt(text)) : wedgeFromFile(bytes, text);
}

async function tellWedge(call: Call, bundle: JobBundle, plan: Plan, layer: ToneRun, text: string): Promise<void> {
  const where = at(call, plan, layer);
  const read = await readWedge(plan, where, text);
  printProblems(wedgeProblems(read, placeOf('--read')));
  const job = withWedge(bundle.job, where, read);
  tellCurve(call, await planOf({ ...bundle, job }), where);
  if (call.options['keep'] === true) writeInPlace(jobFileAt(call.words[0]), job);
  if (call.options['json'] === true) return;
  console.log(call.options['keep'] === true ? sayHere('halftone.wedgeKept', { n: read.steps.length }) : sayHere('halftone.wedgeNotKept'));
}

function tellCurve(call: Call, plan: Plan, { paperId, layerId }: WedgeAt): void {
  const paper = plan.papers.find((p) => p.id === paperId);
  const curve = wedgeCurve(paper?.tones, layerId);
  if (!paper || !curve) fail('no-tone', `layers[#${layerId}]`, say('halftone.noTone'), say('halftone.giveTone'));
  if (call.options['json'] === true) {
    printJson({ paper: paperId, layer: layerId, ...curve });
    return;
  }
  const layerName = plan.layers.find((l) => l.id === layerId)?.name ?? layerId;
  console.log(sayHere('halftone.curveOf', { layer: asName(layerName), paper: asName(paper.name) }));
  const percent = (v: number): string => `${Math.round(v * 100)} %`;
  for (const line of columns(
    curve.points.map((p) => [percent(p.film), percent(p.paper), '█'.repeat(Math.round(p.paper * 40))]),
    { indent: '  ', right: [0, 1] },
  ))
    console.log(line);
  const half = share(curve.points.find((p) => p.film === 0.5)?.paper ?? 0.5, 0);
  console.log(
    curve.read
      ? sayHere('halftone.curveRead', { half, n: figure(curve.n, 2), off: deltaE(curve.off ?? 0) })
      : sayHere('halftone.curveGuessed', { half }),
  );
}
