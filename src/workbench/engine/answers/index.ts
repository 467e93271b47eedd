import type { Question } from '../protocol.ts';
import { bridgeAnswer } from './bridge.ts';
import { cutFileAnswer } from './cut-file.ts';
import { digestAnswer } from './digest.ts';
import { drawingAnswer } from './drawing.ts';
import { pencilAnswer } from './pencil.ts';
import { byColourAnswer, readAsAnswer } from './read-as.ts';
import { inkAnswers } from './inks.ts';
import { openJobAnswer, saveJobAnswer } from './job.ts';
import { packetAnswer } from './packet.ts';
import { planAnswer, recolourAnswer } from './plan.ts';
import { proofAnswer } from './proof.ts';
import { otherPlanAnswer } from './other-plan.ts';
import { keepSightAnswer } from './sight.ts';
import { sheetCodesAnswer } from './sheet-codes.ts';
import { stockFileAnswer } from './stock-file.ts';
import { traceAnswer } from './trace.ts';
import type { Work } from './room.ts';

export { createRoom } from './room.ts';

/** Every question and who answers it. */
export const answers: { readonly [Q in Question]: Work<Q> } = {
  plan: planAnswer,
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
  bridge: bridgeAnswer,
  cutFile: cutFileAnswer,
  stockFile: stockFileAnswer,
  ...inkAnswers,
};
