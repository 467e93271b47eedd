import { askPrintPhoto, photographOf, withPrintPhoto, type SeenOverlap } from '../../../core/asks/index.ts';
import { takenWith } from '../../../core/image/index.ts';
import type { Plan, PlannedPaper } from '../../../core/plan/index.ts';
import { fail } from '../../../core/problem.ts';
import { rgbPng } from '../../../packet/index.ts';
import { deltaE, name as asName, say, type Saying } from '../../../words/index.ts';
import type { Call } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { lensKeptFor } from '../../disk/lens-file.ts';
import { planOf, printProblems, takeJob } from '../../disk/load.ts';
import { readPictureApart } from '../../threads/read-picture.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { idsOf, labCells, labColumns, textOf } from '../../say/words.ts';
import { jobFileAt, writeInPlace } from './done.ts';
import { sayCamera } from './lens.ts';

/** A photograph of the printed sheet against the print foreseen: `laydown photo PHOTO --print JOB`. */
export async function tellPrintPhoto(call: Call, path: string, jobPath: string): Promise<number> {
  const bundle = takeJob(jobPath);
  const plan = await planOf(bundle);
  const paper = paperOf(call, plan);
  const out = textOf(call.options['out']);
  const replace = call.options['replace'] === true;
  if (out !== undefined) mustBeNew(out, replace);
  const keepIn = call.options['keep'] === true ? jobFileAt(jobPath) : null;
  const typed = textOf(call.options['corners']);
  const bytes = readFileBytes(path);
  const picture = await readPictureApart(bytes, path),
    photo = photographOf(picture);
  const { lens, camera } = lensKeptFor(textOf(call.options['lens']), bundle.job.cameras ?? [], takenWith(bytes), photo);
  const answer = askPrintPhoto(plan, {
    photo,
    paperId: paper.id,
    ...(typed === undefined ? {} : { corners: cornersOf(typed, placeOf('--corners')) }),
    ...(lens ? { lens } : {}),
    of: call.options['image'] === true ? 'image' : 'sheet',
    place: fileAt(path),
    ...(out === undefined ? {} : { longPx: 1200 }),
  });
  printProblems([...picture.problems, ...answer.problems]);
  if (out !== undefined && answer.squared) {
    const { width, height, rgb } = answer.squared;
    writeNew(out, replace, () => rgbPng(width, height, rgb, plan.job.image.widthMm / width));
  }
  // What an instrument has read needs no photograph.
  const fresh = answer.seen.filter((one) => !one.foreseen.measured);
  if (keepIn !== null && fresh.length > 0) writeInPlace(keepIn, withPrintPhoto(bundle.job, paper.id, fresh));
  if (call.options['json'] === true) {
    printJson({ ...answer, squared: undefined });
    return answer.seen.length > 0 ? 0 : 1;
  }
  if (camera) console.log(sayCamera(camera));
  tellSeen(plan, answer.seen);
  if (answer.suspect !== null) {
    const layer = plan.layers.find((l) => l.id === answer.suspect)?.name ?? answer.suspect;
    console.log(sayHere('inkAnswers.suspectRun', { layer: asName(layer) }));
  }
  if (answer.narrow > 0) console.log(sayHere('inkAnswers.tooNarrow', { n: answer.narrow }));
  if (out !== undefined && answer.squared) console.log(sayHere('inkAnswers.squaredWritten', { file: asName(out) }));
  if (answer.seen.length > 0)
    console.log(keepIn !== null ? sayHere('inkAnswers.seenKept', { n: fresh.length }) : sayHere('inkAnswers.seenNotKept'));
  return answer.seen.length > 0 ? 0 : 1;
}

/** The paper named, or the first. */
function paperOf(call: Call, plan: Plan): PlannedPaper {
  const on = textOf(call.options['on']);
  const paper = plan.papers.find((p) => on === undefined || p.id === on || p.name === on);
  if (!paper)
    fail(
      'no-such-paper',
      placeOf('--on'),
      on === undefined ? say('asks.noPaperRead') : say('asks.noSuchPaper', { paper: asName(on) }),
      plan.papers.length === 0 ? say('asks.readPaper') : say('cli.useOneOf', { all: idsOf(plan.papers, 'or') }),
    );
  return paper;
}

function tellSeen(plan: Plan, seen: readonly SeenOverlap[]): void {
  const nameOf = (id: string): string => plan.layers.find((l) => l.id === id)?.name ?? id;
  const rows = seen.map((one) => [
    one.layers.map(nameOf).join(' + '),
    ...labCells(one.reading.lab),
    sayHere('inkAnswers.doubt', { sigma: deltaE(one.reading.sigma ?? 0, 0) }),
    sayHere('inkAnswers.seenApart', { how: apart(one.deltaE), deltaE: deltaE(one.deltaE) }),
    one.foreseen.measured ? sayHere('inkAnswers.readByInstrument') : one.beyond ? sayHere('inkAnswers.beyondDoubt') : '',
  ]);
  for (const line of columns(rows, { indent: '  ', right: labColumns(1) })) console.log(line.trimEnd());
}

/** ΔE00 in words, as the bench says it. */
function apart(off: number): Saying {
  return off <= 1
    ? say('inkAnswers.hardlySeen')
    : off <= 2.5
      ? say('inkAnswers.besideSeen')
      : off <= 5
        ? say('inkAnswers.plainlySeen')
        : say('inkAnswers.anotherShade');
}

/** `120,80 2900,95 2880,3900 130,3880`: pixels, clockwise from the top left of the print. */
function cornersOf(text: string, place: Saying): (readonly [number, number])[] {
  const numbers = text
    .trim()
    .split(/[\s,;]+/)
    .map(Number);
  if (numbers.length !== 8 || numbers.some((n) => !Number.isFinite(n)))
    fail('bad-corners', place, say('cli.cannotUse', { text: asName(text) }), say('cli.writeCorners'));
  return [0, 1, 2, 3].map((i) => [numbers[i * 2], numbers[i * 2 + 1]] as const);
}
