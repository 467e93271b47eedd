import { askSplit, type SplitAnswer, type SplitQuestion } from '../../../core/asks/index.ts';
import type { Crop } from '../../../core/image/index.ts';
import { checkJob, writeJob, type JobBundle } from '../../../core/job/index.ts';
import { plan } from '../../../core/plan/index.ts';
import { deltaE, figure, name as asName, say, share } from '../../../words/index.ts';
import { greyPng } from '../../../packet/index.ts';
import type { Command } from '../../command.ts';
import { printProblems } from '../../disk/load.ts';
import { writeWhole } from '../../disk/write-folder.ts';
import { printJson, sayHere } from '../../reader.ts';
import { json, option } from '../../say/help.ts';
import { numberOf, textOf } from '../../say/words.ts';
import { takeWays, tellWays, waysAsked, waysFigures } from './split-ways.ts';
import { oneOf, pictureAsk, pictureHelp, pictureOptions } from './picture-ask.ts';

const shapes = ['round', 'ellipse', 'line'] as const,
  ways = ['dots', 'grain'] as const,
  reaches = ['nearest', 'lightness', 'chroma', 'contrast'] as const;

export const split: Command = {
  name: 'split',
  usage: say('help.splitUsage'),
  summary: say('help.splitSummary'),
  help: [
    ...pictureHelp,
    option('--inks', say('help.splitInks'), 'inks'),
    option('--on', say('help.separateOn'), 'paper'),
    option('--limit P', say('help.splitLimit')),
    option('--grey P', say('help.splitGrey')),
    option('--reach', say('help.separateReach'), 'way'),
    option('--by', say('help.splitBy'), 'way'),
    option('--shape', say('help.splitShape'), 'way'),
    option('--ruling N', say('help.splitRuling')),
    option('--ways', say('help.splitWays')),
    option('--material', say('help.splitMaterial'), 'material'),
    option('--as', say('help.splitAs'), 'way'),
    json,
  ],
  options: {
    ...pictureOptions,
    inks: { type: 'string' },
    on: { type: 'string' },
    limit: { type: 'string' },
    grey: { type: 'string' },
    reach: { type: 'string' },
    by: { type: 'string' },
    shape: { type: 'string' },
    ruling: { type: 'string' },
    ways: { type: 'boolean' },
    as: { type: 'string' },
    material: { type: 'string' },
    json: { type: 'boolean' },
  },
  async run(call) {
    const given = call.options;
    const as = textOf(given['as']);
    const wanted = given['ways'] === true || as !== undefined ? waysAsked(as ?? 'film') : null;
    const { bundle, picture, crop, job: sized, out, wish } = await pictureAsk(call);
    const answer = await askSplit(sized, picture, questionOf(given, crop));
    const ways = wanted && (await takeWays(answer, wanted, { paperId: textOf(given['on']), materialId: textOf(given['material']) }));
    const job = ways?.job ?? answer.job;
    const kept = answer.films.filter(({ layer }) => job.layers.some((l) => l.id === layer && l.tone));
    const files = kept.map(({ path: file, plane }) => ({
      path: file,
      bytes: greyPng(answer.width, answer.height, plane, answer.mmPerPx),
    }));
    const used = new Set(job.papers.flatMap((p) => (p.printed ? [p.printed.picture] : [])));
    const made: JobBundle = {
      job,
      attachments: new Map([
        ...[...bundle.attachments].filter(([name]) => used.has(name)),
        ...files.map((f) => [f.path, f.bytes] as const),
      ]),
    };
    writeWhole(
      out,
      [...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })),
      wish,
    );
    if (given['json'] === true) printJson({ ...figuresOf(answer), ...(ways ? { runs: waysFigures(ways.runs) } : {}) });
    else {
      tell(answer, made);
      if (ways) tellWays(ways.runs);
      console.log(sayHere('halftone.splitWritten', { folder: asName(out) }));
    }
    printProblems([...picture.problems, ...checkJob(made).filter((p) => p.severity === 'error')]);
    return 0;
  },
};

type Given = Parameters<Command['run']>[0]['options'];

function questionOf(given: Given, crop: Crop | undefined): SplitQuestion {
  const percent = (name: string, high: number): number | undefined =>
    given[name] === undefined ? undefined : numberOf(String(given[name]).replace('%', ''), `--${name}`, 0, 0, high) / 100;
  const tone = {
    by: oneOf(given, 'by', ways),
    shape: oneOf(given, 'shape', shapes),
    rulingPerCm: given['ruling'] === undefined ? undefined : numberOf(given['ruling'], '--ruling', 16, 2, 100),
  };
  return {
    inks: (textOf(given['inks']) ?? '')
      .split(',')
      .map((text) => text.trim())
      .filter((text) => text !== '')
      .map((text) => {
        const [id, strength] = text.split('@');
        return strength === undefined ? { id } : { id, strength: numberOf(strength.replace('%', ''), '--inks', 100, 1, 100) / 100 };
      }),
    paperId: textOf(given['on']),
    crop,
    limit: percent('limit', 600),
    greyShare: percent('grey', 100),
    reach: oneOf(given, 'reach', reaches),
    tone: Object.fromEntries(Object.entries(tone).filter(([, v]) => v !== undefined)),
  };
}

function figuresOf({ job, films, split: made, beyondSrgb, model, width, height }: SplitAnswer): Record<string, unknown> {
  const round = (v: number): number => Number(v.toFixed(3));
  return {
    layers: job.layers.map((l, i) => ({
      id: l.id,
      ink: l.ink,
      mean: round(films[i].mean),
    })),
    width,
    height,
    n: round(model.n),
    mean: round(made.mean),
    p95: round(made.p95),
    outOfReach: round(made.outOfReach),
    outMean: round(made.outMean),
    mostCover: round(made.most),
    beyondSrgb: round(beyondSrgb),
  };
}

function tell({ films, split: made, beyondSrgb }: SplitAnswer, bundle: JobBundle): void {
  const planned = plan(bundle);
  for (const layer of planned.layers) {
    const mean = share(films.find((film) => film.layer === layer.id)?.mean ?? 0, 0);
    const tone = layer.tone;
    if (!tone) continue;
    console.log(
      `${layer.run}. ${
        tone.by === 'grain'
          ? sayHere('halftone.splitGrain', { layer: asName(layer.name), mean })
          : sayHere('halftone.splitRun', {
              layer: asName(layer.name),
              mean,
              ruling: figure(tone.rulingPerCm, 1, false),
              angle: figure(tone.angleDeg, 1, false),
            })
      }`,
    );
  }
  if (beyondSrgb > 0.0005) console.log(sayHere('halftone.splitWide', { share: share(beyondSrgb, 1) }));
  if (made.outOfReach < 0.995) console.log(sayHere('halftone.splitBack', { mean: deltaE(made.mean), p95: deltaE(made.p95) }));
  if (made.outOfReach > 0.005) console.log(sayHere('halftone.splitOut', { share: share(made.outOfReach, 0), mean: deltaE(made.outMean) }));
  console.log(sayHere('halftone.splitMost', { most: share(made.most, 0) }));
}
