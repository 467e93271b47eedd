import type { Lab } from '../../core/colour/index.ts';
import type { Complaint, InkShelf, MatchedAgain, PotCorrection, Quad, Reading, Recipe, ShelfInk } from '../../core/ink/index.ts';
import type { Job, JobInk } from '../../core/job/index.ts';
import type {
  BatchQuestion,
  LeftoversAnswer,
  LeftoversQuestion,
  InkSheet,
  OrdersAnswer,
  OrdersAsk,
  PotQuestion,
  Reach,
  RecipeQuestion,
  Spread,
  SpreadAsk,
  WantedNow,
} from '../../core/asks/index.ts';
import type { Batch } from '../../core/ink/index.ts';
import type { Problem } from '../../core/problem.ts';
import type { Saying } from '../../words/one-language.ts';

/** What the ink station asks the worker. All of it is about the job planned last. */
export interface InkQuestions {
  readonly inks: { ask: { readonly paperId?: string }; answer: readonly InkSheet[] };
  readonly wanted: { ask: { readonly paperId?: string }; answer: readonly WantedNow[] };
  /** A file of readings, or one typed in. */
  readonly readings: {
    ask: { readonly bytes: Uint8Array; readonly name: string } | { readonly text: string; readonly place: string };
    answer: ReadPatches;
  };
  /** A photograph of a drawdown sheet: it is found by its marks and makes an ink. */
  readonly sheetPhoto: {
    ask: {
      readonly bytes: Uint8Array;
      readonly name: string;
      readonly ink: { readonly id: string; readonly name: string };
      readonly paperLab?: Lab;
      readonly greyLab?: Lab;
    };
    answer: { readonly ink: JobInk; readonly problems: readonly Problem[] };
  };
  /** A photograph whose paper, grey card and patches were marked by hand. */
  readonly markedPhoto: {
    ask: {
      readonly bytes: Uint8Array;
      readonly name: string;
      readonly paper: readonly Quad[];
      readonly grey?: { readonly quad: Quad; readonly lab: Lab };
      readonly paperLab?: Lab;
      readonly patches: readonly { readonly name: string; readonly quad: Quad }[];
    };
    answer: ReadPatches & { readonly paper: Reading };
  };
  /** The colour of one place of a photograph, in shares of its width and height. */
  readonly pictureColour: {
    ask: { readonly bytes: Uint8Array; readonly name: string; readonly x: number; readonly y: number };
    answer: Extract<Reading, { kind: 'lab' }>;
  };
  readonly recipe: { ask: RecipeQuestion; answer: ShownRecipes };
  readonly leftovers: {
    ask: LeftoversQuestion;
    answer: LeftoversAnswer & { readonly srgb: string; readonly wantedSrgb: string };
  };
  readonly spread: { ask: SpreadAsk; answer: Spread };
  readonly orders: { ask: OrdersAsk; answer: OrdersAnswer };
  readonly batch: { ask: BatchQuestion; answer: Batch & { readonly layerId: string; readonly layerName: string; readonly srgb: string } };
  readonly reach: { ask: { readonly layer: string; readonly paperId?: string }; answer: readonly ShownReach[] };
  readonly pot: {
    ask: PotQuestion;
    answer: PotCorrection & { readonly wanted: Lab; readonly wantedSrgb: string; readonly nowSrgb: string; readonly afterSrgb: string };
  };
  readonly complaint: {
    ask: { readonly layer: string; readonly complaint: Complaint; readonly paperId?: string };
    answer: {
      readonly wantedSrgb: string;
      readonly pictures: readonly { readonly size: 'a little' | 'clearly' | 'very'; readonly srgb: string; readonly reading: Reading }[];
    };
  };
  /** New lots by ink id, as read over the paper. */
  readonly again: {
    ask: { readonly layer: string; readonly paperId?: string; readonly lots: readonly { readonly id: string; readonly over: Reading }[] };
    answer: MatchedAgain & {
      readonly wantedSrgb: string;
      readonly unchangedSrgb: string;
      readonly correctedSrgb: string;
      readonly lotInks: readonly JobInk[];
    };
  };
  readonly partsOf: {
    ask: { readonly layer: string };
    answer: readonly { readonly inkId: string; readonly name: Saying; readonly share: number }[];
  };
  readonly drawdowns: { ask: { readonly titles: readonly string[]; readonly language?: string }; answer: Uint8Array };
  /** Reads a shelf's file and puts it onto `mine`; or a job's inks onto it; or only shows what is there. */
  readonly shelf: {
    ask: {
      readonly mine: InkShelf | null;
      readonly file?: { readonly text: string; readonly name: string };
      readonly from?: Job;
      readonly date?: string;
    };
    answer: {
      readonly shelf: InkShelf;
      readonly swatches: Readonly<Record<string, string>>;
      readonly text: string;
      readonly problems: readonly Problem[];
    };
  };
  readonly shelfInk: { ask: { readonly ink: ShelfInk; readonly lot?: string }; answer: JobInk };
}

export interface ReadPatches {
  readonly patches: readonly { readonly name: string; readonly reading: Reading; readonly lab: Lab; readonly srgb: string }[];
  readonly problems: readonly Problem[];
}
export interface ShownRecipes {
  readonly recipes: readonly (Recipe & { readonly srgb: string })[];
  readonly best: number;
  readonly why: readonly Saying[];
  readonly wantedSrgb: string;
  readonly problems: readonly Problem[];
}
export interface ShownReach extends Omit<Reach, 'overlaps'> {
  readonly overlaps: readonly (Reach['overlaps'][number] & { readonly srgb: string })[];
}
