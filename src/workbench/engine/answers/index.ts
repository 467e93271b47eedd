import type { Question } from '../protocol.ts';
import { bridgeAnswer } from './cut/bridge.ts';
import { digestAnswer } from './digest.ts';
import { keepSightAnswer } from './ink/sight.ts';
import { proofAnswer } from './ink/proof.ts';
import { sheetCodesAnswer } from './ink/sheet-codes.ts';
import { openJobAnswer, saveJobAnswer } from './job.ts';
import { bringLater, later } from './later.ts';
import { otherPlanAnswer } from './other-plan.ts';
import { drawnAnswer, planAnswer, recolourAnswer } from './plan.ts';
import type { Work } from './room.ts';

export { createRoom } from './room.ts';

/** Every question and who answers it: what the first Plan and its proof need comes with the worker, the rest later (later.ts). */
export const answers: { readonly [Q in Question]: Work<Q> } = {
  plan: planAnswer,
  drawn: drawnAnswer,
  recolour: recolourAnswer,
  openJob: openJobAnswer,
  saveJob: saveJobAnswer,
  proof: proofAnswer,
  sheetCodes: sheetCodesAnswer,
  keepSight: keepSightAnswer,
  otherPlan: otherPlanAnswer,
  digest: digestAnswer,
  bridge: bridgeAnswer,
  rest: () => {
    void bringLater();
    return Promise.resolve({ answer: null, transfer: [] });
  },
  ...later('drawings', () => import('./parts/drawings.ts'), ['drawing', 'readAs', 'pencil', 'byColour']),
  ...later('pictures', () => import('./parts/pictures.ts'), ['trace', 'lines', 'printPhoto', 'split', 'toneWays']),
  ...later('files', () => import('./parts/files.ts'), ['packet', 'film', 'bands', 'cutFile', 'stockFile', 'lensBoard']),
  ...later('inks', () => import('./parts/inks.ts'), [
    'inks',
    'wanted',
    'readings',
    'sheetPhoto',
    'markedPhoto',
    'pictureColour',
    'recipe',
    'leftovers',
    'spread',
    'orders',
    'batch',
    'reach',
    'pot',
    'complaint',
    'again',
    'partsOf',
    'drawdowns',
    'shelf',
    'shelfInk',
    'wedge',
  ]),
};
