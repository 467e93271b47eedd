import { tidyCrop, tidyShare, markWeights, type Crop } from '../core/separate/index.ts';
import { mostMarks, mostStrokePoints, type PictureMark } from '../core/job/index.ts';
import { fail } from '../core/problem.ts';
import { readFileBytes } from './words.ts';

const leastCrop = 0.05;

/** `10,5,80,60`: a box on a picture in per cent of it, from the left, from the top, width and height → shares. */
export function boxOf(text: string, place: string): Crop {
  const bare = text.replace(/\s*%/g, '').trim();
  // Where spaces part the numbers, a comma within one is a decimal comma.
  const [x, y, width, height, ...more] = (/[\s;]/.test(bare) ? bare.split(/[,;]?\s+|;/) : bare.split(',')).map(percent);
  if (more.length > 0 || ![x, y, width, height].every((v) => v >= 0) || !(width > 0 && height > 0)) {
    fail(
      'bad-box',
      place,
      `“${text}” is no part of a picture.`,
      'Give four numbers, all in per cent of the picture: from the left, from the top, width, height; such as 10,5,80,60.',
    );
  }
  if (x + width > 1.0001 || y + height > 1.0001) {
    fail(
      'box-off-picture',
      place,
      `“${text}” reaches beyond the picture's edge.`,
      'From the left and width together are 100 per cent at most, and so are from the top and height.',
    );
  }
  return tidyCrop({ x, y, width, height });
}

/** The part that is printed, as `boxOf` reads it. */
export function cropPartOf(text: string, place: string): Crop {
  const crop = boxOf(text, place);
  if (crop.width < leastCrop || crop.height < leastCrop) {
    fail(
      'crop-too-small',
      place,
      `“${text}” is less than a twentieth of the picture wide or high.`,
      'Numbers are per cent of the picture: write 50 for half of it.',
    );
  }
  return crop;
}

const howToMark =
  'Write “more box 20,30,25,40” (from the left, from the top, width, height) or “less brush 5 10,20 40,25” (width of the brush, then places), all in per cent of the picture; the first word is more, less or none.';

/** `more box 20,30,25,40` or `less brush 5 10,20 40,25`, in per cent of the picture; a brush is as wide as so much of the picture's width. */
export function markOf(text: string, place: string): PictureMark {
  const [, how, shape, rest] =
    /^\s*(more|less|none)\s+(box|brush)\s+(.*\S)\s*$/is.exec(text) ??
    fail('bad-mark', place, `“${short(text)}” can't be read as a mark.`, howToMark);
  const weight = markWeights[how.toLowerCase() as keyof typeof markWeights];
  if (shape.toLowerCase() === 'box') return { kind: 'box', weight, ...boxOf(rest, place) };
  const [wide, ...pairs] = rest.replace(/\s*%/g, '').split(/[;\s]+/);
  const points = pairs.map((pair) => pair.split(',').map(percent));
  if (
    !(percent(wide) > 0 && percent(wide) <= 1) ||
    points.length === 0 ||
    !points.every((p) => p.length === 2 && p.every((v) => v >= 0 && v <= 1))
  ) {
    fail('bad-mark', place, `“${short(text)}” can't be read as a stroke of the brush on the picture.`, howToMark);
  }
  if (points.length > mostStrokePoints)
    fail('stroke-too-long', place, `The stroke has ${points.length} places; a job keeps ${mostStrokePoints}.`, 'Make two strokes of it.');
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
  const marks = lines.flatMap((line, i) => (/^\s*(#|$)/.test(line) ? [] : [markOf(line, `${path} line ${i + 1}`)]));
  if (marks.length === 0) fail('no-marks', path, 'There is no mark in this file.', howToMark);
  return marks;
}

/** As many marks as a job keeps, or told. */
export function fewEnough(marks: readonly PictureMark[]): PictureMark[] {
  if (marks.length > mostMarks)
    fail(
      'too-many-marks',
      '--mark',
      `${marks.length} marks are more than a job keeps.`,
      `Make do with ${mostMarks}: a stroke of the brush can go a long way.`,
    );
  return [...marks];
}

function percent(text: string): number {
  return text.trim() === '' ? NaN : Number(text.replace(',', '.')) / 100;
}

function short(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
