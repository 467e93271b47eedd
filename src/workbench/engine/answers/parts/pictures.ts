import { linesAnswer } from '../cut/lines.ts';
import { traceAnswer } from '../cut/trace.ts';
import { printPhotoAnswer } from '../ink/print-photo.ts';
import { splitAnswer } from '../ink/split.ts';
import { toneWaysAnswer } from '../ink/tone-ways.ts';

/** Photographs, scans and pictures on their way into a job, or beside it. */
export const answers = {
  lines: linesAnswer,
  trace: traceAnswer,
  printPhoto: printPhotoAnswer,
  split: splitAnswer,
  toneWays: toneWaysAnswer,
};
