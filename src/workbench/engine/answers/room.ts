import wasmUrl from '@resvg/resvg-wasm/index_bg.wasm?url';
import boldUrl from '../../../../assets/OpenSans-Bold.ttf?url';
import regularUrl from '../../../../assets/OpenSans-Regular.ttf?url';
import semiboldUrl from '../../../../assets/OpenSans-Semibold.ttf?url';
import { prepareDrawings, prepareLetters } from '../../../core/form/index.ts';
import type { Job } from '../../../core/job/index.ts';
import { createPlanner, type Plan, type PlannedPaper, type Planner } from '../../../core/plan/index.ts';
import type { Task } from '../../../core/task.ts';
import { fetchPart } from '../fetch-part.ts';
import { createPacker, type Packer } from '../parcel.ts';
import { createKnownBytes } from '../known-bytes.ts';
import type { Answer, Ask, Attachments, Question } from '../protocol.ts';

/** What the worker keeps between questions. */
export interface Room {
  readonly planner: Planner;
  readonly packer: Packer;
  /** What drawings are read with; fetched once. */
  readonly ready: Promise<void>;
  readonly fonts: Promise<Fonts>;
  readonly knownBytes: (fresh: Attachments) => Attachments;
  attachments: Attachments;
  last: { readonly job: Job; readonly plan: Plan } | null;
  /** The paper in sight as it was recoloured since `last`. */
  quick: PlannedPaper | null;
}
export interface Fonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
  readonly bold: Uint8Array;
}

export type Work<Q extends Question> = (ask: Ask<Q>, room: Room, task: Task) => Promise<{ answer: Answer<Q>; transfer: Transferable[] }>;

export function createRoom(): Room {
  const fonts = loadFonts();
  return {
    planner: createPlanner(),
    packer: createPacker(),
    ready: Promise.all([fetchPart(wasmUrl).then(prepareDrawings), fonts.then(prepareLetters)]).then(() => undefined),
    fonts,
    knownBytes: createKnownBytes(),
    attachments: new Map(),
    last: null,
    quick: null,
  };
}

async function loadFonts(): Promise<Fonts> {
  const [regular, semibold, bold] = await Promise.all([regularUrl, semiboldUrl, boldUrl].map(fetchPart));
  return { regular, semibold, bold };
}
