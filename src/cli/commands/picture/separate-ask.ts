import type { Job, JobPicture } from '../../../core/job/index.ts';
import { potsOf } from '../../../core/asks/index.ts';
import { materialsOf } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { name as asName, say, type Names, type Saying } from '../../../words/index.ts';
import { heightOfCrop, ways, type Picture } from '../../../core/separate/index.ts';
import type { Call, Command } from '../../command.ts';
import { placeOf } from '../../options.ts';
import { cropPartOf, fewEnough, markOf, marksIn } from '../../places.ts';
import { tellHere } from '../../reader.ts';
import { idsOf, numberOf, textOf, textsOf, wholeOf } from '../../say/words.ts';

type Given = Call['options'];

/** Options that say what is asked of a picture. */
export const askOptions: Command['options'] = {
  layers: { type: 'string' },
  pots: { type: 'string' },
  layer: { type: 'string', multiple: true },
  'in-place': { type: 'string' },
  'most-in-pot': { type: 'string' },
  crop: { type: 'string' },
  mark: { type: 'string', multiple: true },
  marks: { type: 'string' },
  metres: { type: 'string' },
  minutes: { type: 'string' },
  pieces: { type: 'string' },
  least: { type: 'string' },
  price: { type: 'string' },
  material: { type: 'string' },
  sigma: { type: 'string' },
  reach: { type: 'string' },
  veil: { type: 'string' },
  way: { type: 'string' },
  'taken-as': { type: 'string' },
  key: { type: 'boolean' },
  pairs: { type: 'boolean' },
  over: { type: 'boolean' },
  effort: { type: 'string' },
  seed: { type: 'string' },
};

/** What was asked before with what the command line says over it. Throws `ProblemError`. */
export function askOf(given: Given, job: Job, before: JobPicture): JobPicture {
  const layers = wholeOf(given['layers'], '--layers', 1, 8) ?? before.layers;
  const crop = textOf(given['crop']),
    pots = textOf(given['pots']),
    marks = textOf(given['marks']),
    material = textOf(given['material']);
  return {
    ...before,
    layers,
    crop: crop === undefined ? before.crop : { ...cropPartOf(crop, placeOf('--crop')) },
    important: fewEnough([
      ...before.important,
      ...(marks === undefined ? [] : marksIn(marks)),
      ...textsOf(given['mark']).map((text) => markOf(text, placeOf('--mark'))),
    ]),
    pots:
      pots === undefined
        ? before.pots
        : pots
            .split(',')
            .filter((word) => word.trim() !== '')
            .map((word) => potNamed(job, word, '--pots')),
    wishes: wishesOf(given, job, layers, before.wishes),
    over: given['over'] === true || before.over,
    way: wayOf(textOf(given['way'])) ?? before.way,
    takenAs: takenAsOf(textOf(given['taken-as']), before.takenAs),
    key: given['key'] === true || before.key,
    cutPairs: given['pairs'] === true || before.cutPairs,
    knife: knifeOf(given, before.knife),
    material: material === undefined ? before.material : materialNamed(job, material),
    sigmaMm: given['sigma'] === undefined ? before.sigmaMm : numberOf(given['sigma'], '--sigma', 0, 0, 10),
    reach: reachOf(textOf(given['reach'])) ?? before.reach,
    veil: numberOf(given['veil'], '--veil', before.veil * 100, 0, 100) / 100,
    mostInPot: wholeOf(given['most-in-pot'], '--most-in-pot', 1, 3) ?? before.mostInPot,
    effort: numberOf(given['effort'], '--effort', before.effort, 0.05, 20),
    seed: wholeOf(given['seed'], '--seed', -2147483648, 2147483647) ?? before.seed,
  };
}

/** The image's size: as the job has it, or as given; of width and height one follows the part of the picture that is printed. */
export function imageOf(given: Given, job: Job, ask: JobPicture, picture: Picture): Job['image'] {
  if (given['width'] === undefined && given['height'] === undefined) return job.image;
  if (ask.over) fail('size-is-printed', placeOf('--over'), say('refusals.sheetIsPrinted'), say('refusals.leaveSizeOut'));
  const tall = heightOfCrop(ask.crop, picture, 1);
  const size = (name: 'width' | 'height', follows: (other: number) => number, other: 'width' | 'height'): number =>
    given[name] === undefined
      ? Math.max(1, Math.round(follows(numberOf(given[other], `--${other}`, 0, 10, 2000))))
      : numberOf(given[name], `--${name}`, 0, 10, 2000);
  return {
    ...job.image,
    widthMm: size('width', (height) => height / tall, 'height'),
    heightMm: size('height', (width) => width * tall, 'width'),
  };
}

function knifeOf(given: Given, before: JobPicture['knife']): JobPicture['knife'] {
  const amount = (name: string, low: number, high: number): number | undefined =>
    given[name] === undefined ? undefined : numberOf(given[name], `--${name}`, 0, low, high);
  const metres = amount('metres', 0.01, 10000),
    priceMm = amount('price', 0.01, 100000);
  if (metres !== undefined && priceMm !== undefined)
    fail('price-and-metres', placeOf('--price'), say('refusals.metresSetPrice'), say('refusals.metresOrPrice'));
  return {
    ...before,
    minutes: amount('minutes', 0.01, 100000) ?? before.minutes,
    pieces: wholeOf(given['pieces'], '--pieces', 1, 100000) ?? before.pieces,
    leastWidthMm: amount('least', 0.1, 50) ?? before.leastWidthMm,
    metres: priceMm === undefined ? (metres ?? before.metres) : undefined,
    priceMm: metres === undefined ? (priceMm ?? before.priceMm) : undefined,
  };
}

function wishesOf(given: Given, job: Job, layers: number, before: JobPicture['wishes']): JobPicture['wishes'] {
  const wishes = Array.from({ length: layers }, (_, i) => before[i] ?? { placeFixed: false });
  for (const text of textsOf(given['layer'])) {
    const [, number, ink, strength] =
      /^\s*(\d+)\s*=\s*([^@]*[^@\s])\s*(?:@\s*(\d+(?:[.,]\d+)?)\s*%?)?\s*$/.exec(text) ??
      fail('bad-layer', placeOf('--layer'), say('refusals.notAboutLayer', { text: asName(text) }), say('refusals.writeLayer'));
    const at = layerNumber(number, layers, '--layer');
    wishes[at] = {
      ...wishes[at],
      ink: potNamed(job, ink, '--layer'),
      strength: strength === undefined ? undefined : numberOf(strength, '--layer', 0, 1, 100) / 100,
    };
  }
  for (const number of (textOf(given['in-place']) ?? '').split(/[,;\s]+/).filter((word) => word !== '')) {
    const at = layerNumber(number, layers, '--in-place');
    wishes[at] = { ...wishes[at], placeFixed: true };
  }
  return wishes.every((wish) => wish.ink === undefined && !wish.placeFixed) ? [] : wishes;
}

/** Counted from 0. */
function layerNumber(text: string, layers: number, option: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1 || number > layers)
    fail(
      'no-such-layer',
      placeOf(option),
      say('refusals.noLayerOfNumber', { text: asName(text), n: layers }),
      say('refusals.layerFromTo', { n: layers }),
    );
  return number - 1;
}

function potNamed(job: Job, word: string, option: string): string {
  return named(potsOf(job), word, option, 'unknown-ink', (text) => say('refusals.noSuchPot', { text }));
}

function materialNamed(job: Job, word: string): string {
  const all = materialsOf(job).map((m) => ({ id: m.id, name: tellHere(m.name) }));
  return named(all, word, '--material', 'unknown-material', (text) => say('refusals.nothingCutFrom', { text }));
}

/** By id or by name. */
function named(
  all: readonly { readonly id: string; readonly name: string }[],
  word: string,
  option: string,
  code: string,
  message: (text: Names) => Saying,
): string {
  const wanted = word.trim(),
    one = all.find((it) => it.id === wanted) ?? all.find((it) => it.name.toLowerCase() === wanted.toLowerCase());
  return one?.id ?? fail(code, placeOf(option), message(asName(wanted)), say('refusals.chooseAmong', { all: idsOf(all) }));
}

function reachOf(way: string | undefined): JobPicture['reach'] | undefined {
  if (way !== undefined && way !== 'nearest' && way !== 'lightness' && way !== 'chroma' && way !== 'contrast')
    fail('bad-reach', placeOf('--reach'), say('refusals.noSuchReach', { text: asName(way) }), say('refusals.useReach'));
  return way;
}

const takings = { drawing: 'drawing', photograph: 'photograph', looks: undefined } as const;

function takenAsOf(text: string | undefined, before: JobPicture['takenAs']): JobPicture['takenAs'] {
  if (text === undefined) return before;
  const said = (Object.keys(takings) as (keyof typeof takings)[]).find((one) => one === text);
  return takings[
    said ?? fail('bad-taken-as', placeOf('--taken-as'), say('refusals.noSuchTakenAs', { text: asName(text) }), say('refusals.useTakenAs'))
  ];
}

function wayOf(way: string | undefined): JobPicture['way'] | undefined {
  if (way === undefined) return undefined;
  return (
    ways.find((one) => one === way) ??
    fail('bad-way', placeOf('--way'), say('refusals.noSuchWay', { text: asName(way) }), say('refusals.useWay'))
  );
}
