import { tidyCrop, tidyShare, markWeights, type Crop } from '../core/separate/index.ts';
import { mostMarks, mostStrokePoints, type PictureMark } from '../core/job/index.ts';
import { fail } from '../core/problem.ts';
import { name as asName, say, type Saying } from '../words/index.ts';
import { fileAt, readFileBytes } from './disk/disk.ts';
import { placeOf } from './options.ts';

const leastCrop = 0.05;

/** `10,5,80,60`: a box on a picture in per cent of it, from the left, from the top, width and height → shares. */
export function boxOf(text: string, place: Saying): Crop {
  const bare = text.replace(/\s*%/g, '').trim();
  // Where spaces part the numbers, a comma within one is a decimal comma.
  const [x, y, width, height, ...more] = (/[\s;]/.test(bare) ? bare.split(/[,;]?\s+|;/) : bare.split(',')).map(percent);
  if (more.length > 0 || ![x, y, width, height].every((v) => v >= 0) || !(width > 0 && height > 0)) {
    fail('bad-box', place, say('refusals.notABox', { text: asName(text) }), say('refusals.writeBox'));
  }
  if (x + width > 1.0001 || y + height > 1.0001) {
    fail('box-off-picture', place, say('refusals.boxOff', { text: asName(text) }), say('refusals.boxWithin'));
  }
  return tidyCrop({ x, y, width, height });
}

/** The part that is printed, as `boxOf` reads it. */
export function cropPartOf(text: string, place: Saying): Crop {
  const crop = boxOf(text, place);
  if (crop.width < leastCrop || crop.height < leastCrop) {
    fail('crop-too-small', place, say('refusals.cropTooSmall', { text: asName(text) }), say('refusals.cropPerCent'));
  }
  return crop;
}

/** `more box 20,30,25,40` or `less brush 5 10,20 40,25`, in per cent of the picture; a brush is as wide as so much of the picture's width. */
export function markOf(text: string, place: Saying): PictureMark {
  const [, how, shape, rest] =
    /^\s*(more|less|none)\s+(box|brush)\s+(.*\S)\s*$/is.exec(text) ??
    fail('bad-mark', place, say('refusals.notAMark', { text: short(text) }), say('refusals.writeMark'));
  const weight = markWeights[how.toLowerCase() as keyof typeof markWeights];
  if (shape.toLowerCase() === 'box') return { kind: 'box', weight, ...boxOf(rest, place) };
  const [wide, ...pairs] = rest.replace(/\s*%/g, '').split(/[;\s]+/);
  const points = pairs.map((pair) => pair.split(',').map(percent));
  if (
    !(percent(wide) > 0 && percent(wide) <= 1) ||
    points.length === 0 ||
    !points.every((p) => p.length === 2 && p.every((v) => v >= 0 && v <= 1))
  ) {
    fail('bad-mark', place, say('refusals.notAStroke', { text: short(text) }), say('refusals.writeMark'));
  }
  if (points.length > mostStrokePoints)
    fail(
      'stroke-too-long',
      place,
      say('refusals.strokeTooLong', { n: points.length, most: mostStrokePoints }),
      say('refusals.makeTwoStrokes'),
    );
  return {
    kind: 'stroke',
    weight,
    radius: percent(wide) / 2,
    points: points.map(([x, y]): [number, number] => [tidyShare(x), tidyShare(y)]),
  };
}

/** A text file with a mark on each line; lines that begin with # are notes. */
export function marksIn(path: string): PictureMark[] {
  const lines = new TextDecoder().decode(readFileBytes(path)).split(/\r?\n/);
  const marks = lines.flatMap((line, i) =>
    /^\s*(#|$)/.test(line) ? [] : [markOf(line, say('where.fileLine', { file: asName(path), line: i + 1 }))],
  );
  if (marks.length === 0) fail('no-marks', fileAt(path), say('refusals.noMarks'), say('refusals.writeMark'));
  return marks;
}

/** As many marks as a job keeps. */
export function fewEnough(marks: readonly PictureMark[]): PictureMark[] {
  if (marks.length > mostMarks)
    fail(
      'too-many-marks',
      placeOf('--mark'),
      say('refusals.tooManyMarks', { n: marks.length }),
      say('refusals.fewerMarks', { most: mostMarks }),
    );
  return [...marks];
}

function percent(text: string): number {
  return text.trim() === '' ? NaN : Number(text.replace(',', '.')) / 100;
}

function short(text: string): ReturnType<typeof asName> {
  return asName(text.length > 60 ? `${text.slice(0, 57)}…` : text);
}
