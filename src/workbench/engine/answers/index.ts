import type { Question } from '../protocol.ts';
import { bridgeAnswer } from './cut/bridge.ts';
import { cutFileAnswer } from './cut/cut-file.ts';
import { digestAnswer } from './digest.ts';
import { drawingAnswer } from './cut/drawing.ts';
import { bandsAnswer, filmAnswer } from './cut/film.ts';
import { linesAnswer } from './cut/lines.ts';
import { pencilAnswer } from './cut/pencil.ts';
import { byColourAnswer, readAsAnswer } from './cut/read-as.ts';
import { inkAnswers } from './ink/inks.ts';
import { openJobAnswer, saveJobAnswer } from './job.ts';
import { packetAnswer } from './packet.ts';
import { drawnAnswer, planAnswer, recolourAnswer } from './plan.ts';
import { printPhotoAnswer } from './ink/print-photo.ts';
import { proofAnswer } from './ink/proof.ts';
import { otherPlanAnswer } from './other-plan.ts';
import { keepSightAnswer } from './ink/sight.ts';
import { sheetCodesAnswer } from './ink/sheet-codes.ts';
import { splitAnswer } from './ink/split.ts';
import { toneWaysAnswer } from './ink/tone-ways.ts';
import { stockFileAnswer } from './cut/stock-file.ts';
import { lensBoardAnswer, traceAnswer } from './cut/trace.ts';
import { wedgeAnswer } from './cut/wedge.ts';
import type { Work } from './room.ts';

export { createRoom } from './room.ts';

/** Every question and who answers it. */
export const answers: { readonly [Q in Question]: Work<Q> } = {
  plan: planAnswer,
  drawn: drawnAnswer,
  recolour: recolourAnswer,
  openJob: openJobAnswer,
  saveJob: saveJobAnswer,
  proof: proofAnswer,
  sheetCodes: sheetCodesAnswer,
  packet: packetAnswer,
  keepSight: keepSightAnswer,
  otherPlan: otherPlanAnswer,
  digest: digestAnswer,
  drawing: drawingAnswer,
  readAs: readAsAnswer,
  pencil: pencilAnswer,
  byColour: byColourAnswer,
  trace: traceAnswer,
  lensBoard: lensBoardAnswer,
  film: filmAnswer,
  bands: bandsAnswer,
  wedge: wedgeAnswer,
  lines: linesAnswer,
  split: splitAnswer,
  toneWays: toneWaysAnswer,
  bridge: bridgeAnswer,
  cutFile: cutFileAnswer,
  stockFile: stockFileAnswer,
  printPhoto: printPhotoAnswer,
  ...inkAnswers,
};
