import type {
  ByColour,
  KeptCamera,
  LinesAnswer,
  LinesQuestion,
  PrintPhotoAnswer,
  PrintPhotoAsk,
  SplitQuestion,
  ToneWay,
  WedgeAt,
  WedgeRead,
} from '../../core/asks/index.ts';
import type { Illuminant } from '../../core/colour/index.ts';
import type { DrawingReading } from '../../core/form/index.ts';
import type { TonePatch } from '../../core/halftone/index.ts';
import type { Job, JobCamera } from '../../core/job/index.ts';
import type { Drawn, Plan, PlannedLayer, PlannedPaper } from '../../core/plan/index.ts';
import type { Codes } from '../../core/print/index.ts';
import type { Problem } from '../../core/problem.ts';
import type { Saying } from '../../words/one-language.ts';
import type { FilmFormat, PacketPart, PagePreview, PrinterPage, StockFormat } from '../../packet/index.ts';
import type { InkQuestions } from './ink-questions.ts';
import type { Parcel } from './parcel.ts';

/** What the page shows of a paper: its picture stays in the worker, which paints proofs over it when asked (`proof`). */
export type ShownPaper = Omit<PlannedPaper, 'overPicture'> & { readonly overPicture: boolean };
export type ShownPlan = Omit<Plan, 'papers'> & {
  readonly papers: readonly ShownPaper[];
  /** Area of each of the 256 codes, mm². */
  readonly areasMm2: Float64Array;
};

export type Attachments = ReadonlyMap<string, Uint8Array>;
export interface OpenedJob {
  readonly job: Job;
  readonly attachments: Attachments;
}
export interface MadeFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/**
 * Everything the page may ask the worker: what it says (`ask`) and what comes back (`answer`). To add a question: a
 * line here, a file in `answers/`, a line in `answers/index.ts`.
 */
export interface Questions extends InkQuestions {
  /** The Plan of a job; `attachments` only when they have changed. Comes back as what changed since the last answer. */
  readonly plan: { ask: { readonly job: Job; readonly attachments?: Attachments }; answer: Parcel };
  /** The print as it is drawn, long before its Plan; null where only the Plan can show it. Asked once, before the first `plan` of a job. */
  readonly drawn: { ask: { readonly job: Job; readonly attachments?: Attachments }; answer: Drawn | null };
  /** The bench rests: what the first Plan did without is brought now, so that nothing is asked of the network later. */
  readonly rest: { ask: Record<string, never>; answer: null };
  /** Colours alone, in a few milliseconds, while a slider moves or a run is carried; null when only `plan` will do. */
  readonly recolour: { ask: { readonly job: Job; readonly paperId: string }; answer: Recolouring | null };
  /** A .laydown file, or the files of a folder → a job. */
  readonly openJob: { ask: { readonly file: Uint8Array; readonly name: string } | { readonly files: Attachments }; answer: OpenedJob };
  readonly saveJob: { ask: OpenedJob; answer: Uint8Array };
  /** Proof over a sheet that is printed already, `width` × `height` pixels, one word each; after so many runs (all if left out), as on that sheet of `register.draws` (in register if left out); under `lamp` (D50 if left out); `other`: of the version asked for last by `otherPlan`. */
  readonly proof: {
    ask: {
      readonly paperId: string;
      readonly width: number;
      readonly height: number;
      readonly runs?: number;
      readonly sheet?: number;
      readonly lamp?: Illuminant;
      readonly other?: boolean;
    };
    answer: Uint32Array;
  };
  /** Codes with every layer where it falls on one sheet of `register.draws`. */
  readonly sheetCodes: { ask: { readonly sheet: number }; answer: Codes };
  /** The printed packet of the job planned last, in the language in use. */
  readonly packet: { ask: PacketAsk; answer: MadePacket };
  /** What a drawing (SVG, or DXF by its name) holds, before it becomes a form. */
  readonly drawing: { ask: { readonly bytes: Uint8Array; readonly name: string }; answer: ReadDrawing };
  /** All ways of reading a drawing, each with its picture. */
  readonly readAs: { ask: { readonly bytes: Uint8Array; readonly name: string }; answer: DrawingReadings };
  /** A line drawn by hand, closed and calmed: the outline that a knife follows. */
  readonly pencil: {
    ask: { readonly points: readonly (readonly [number, number])[]; readonly smoothMm: number };
    answer: { readonly outline: [number, number][][]; readonly minX: number; readonly minY: number };
  };
  /** A drawing as a set of layers, one for each colour: the job with them. */
  readonly byColour: { ask: { readonly bytes: Uint8Array; readonly job: Job; readonly by: ByColour }; answer: Job };
  /** The outline of a thing on a picture; `bytes` with the first question about it only. */
  readonly trace: { ask: TraceAsk; answer: TraceAnswer };
  /** The printed sheet in a photograph, squared up and read; `bytes` with the first question about it only. */
  readonly printPhoto: {
    ask: Pick<PrintPhotoAsk, 'paperId' | 'corners' | 'of'> & {
      readonly id: number;
      readonly name: string;
      readonly bytes?: Uint8Array;
      /** Whose lenses are kept. */
      readonly cameras: readonly JobCamera[];
    };
    /** `camera`: whose lens was taken out. */
    answer: PrintPhotoAnswer & { readonly widthPx: number; readonly heightPx: number; readonly camera: JobCamera | null };
  };
  /** The checked board that a lens is read from, as a PDF. */
  readonly lensBoard: { ask: { readonly page: 'a4' | 'letter'; readonly language?: string }; answer: Uint8Array };
  /** The film of a run of tone as a file of one bit a pixel, or its wedge, or its exposure strip. */
  readonly film: {
    ask: {
      readonly layerId: string;
      readonly what?: 'image' | 'wedge' | 'strip';
      readonly format: FilmFormat;
      readonly dpi: number;
      readonly mirrored: boolean;
      readonly language: string;
    };
    answer: MadeFile;
  };
  /** Half tones of all films on one another, as they look on a screen of so many pixels a mm; null: no film of dots. */
  readonly bands: { ask: { readonly paperId: string; readonly screenPerMm: number }; answer: TonePatch | null };
  /** A picture's tone as lines that a knife can cut. */
  readonly lines: {
    ask: { readonly job: Job; readonly bytes: Uint8Array; readonly name: string; readonly question: LinesQuestion };
    answer: MadeLines;
  };
  /** What was read of a printed wedge: a photograph or a file by its name, or typed. */
  readonly wedge: {
    ask: WedgeAt & ({ readonly bytes: Uint8Array; readonly name: string } | { readonly text: string });
    answer: WedgeRead;
  };
  /** A picture of the job into runs of tone. */
  readonly split: {
    ask: { readonly job: Job; readonly bytes: Uint8Array; readonly name: string; readonly question: SplitQuestion };
    answer: MadeSplit;
  };
  /** A split's run in every way that it could be printed, with its work: `film` is the grey picture that the split made. */
  readonly toneWays: {
    ask: {
      readonly job: Job;
      readonly layerId: string;
      readonly film: Uint8Array;
      readonly paperId?: string;
      readonly materialId?: string;
    };
    answer: readonly ToneWay[];
  };
  /** Where a bridge across a stencil's opening at a place would lie. */
  readonly bridge: {
    ask: { readonly layerId: string; readonly atMm: readonly [number, number] };
    answer: { readonly fromMm: readonly [number, number]; readonly toMm: readonly [number, number] };
  };
  /** The cut sheet of one stencil; refused when it does not hold. */
  readonly cutFile: { ask: { readonly layerId: string; readonly format: 'svg' | 'dxf'; readonly language?: string }; answer: MadeFile };
  /** A sheet of stock (`plan.stock`, by its number) with the stencils laid on it, at true size (in parts for `a4` and `letter`, said in `language`); refused when one does not hold. */
  readonly stockFile: { ask: { readonly number: number; readonly format: StockFormat; readonly language?: string }; answer: MadeFile };
  /** The Plan of another version, worked out beside the one on the bench. */
  readonly otherPlan: { ask: OpenedJob; answer: ShownPlan };
  /** Keeps the Plan planned last, if it is this job's, for the next time the page opens. */
  readonly keepSight: { ask: { readonly key: string; readonly job: Job }; answer: null };
  /** A fingerprint of the Plan's codes and colours: the same job gives the same one on every machine. */
  readonly digest: { ask: Record<never, never>; answer: PlanDigest };
}
/** One run's film: the grey picture that the job keeps, and a small one to look at. */
export interface SplitFilm extends MadeFile {
  readonly layer: string;
  /** Of the image, 0..1. */
  readonly mean: number;
  /** One word a pixel (little-endian RGBA). */
  readonly shown: { readonly width: number; readonly height: number; readonly words: Uint32Array<ArrayBuffer> };
}

/** The job with its runs of tone, light first; how well the picture comes back, ΔE00, and how much of it lies out of reach. */
export interface MadeSplit {
  readonly job: Job;
  readonly films: readonly SplitFilm[];
  readonly mean: number;
  readonly p95: number;
  readonly outOfReach: number;
  readonly outMean: number;
  /** Share of the picture that sRGB can't say. */
  readonly beyondSrgb: number;
  /** What all films cover together at most, in layers. */
  readonly most: number;
}

/** The job with lines, and what is open in them. */
export type MadeLines = Omit<LinesAnswer, 'cut'> & LinesAnswer['cut'];

/** What of the packet is wanted, and how it is printed. */
export interface PacketAsk {
  readonly page: PrinterPage;
  readonly only?: readonly PacketPart[];
  readonly black?: boolean;
  readonly large?: boolean;
  readonly split?: boolean;
  readonly language?: string;
}
/** The files, their pages for the screen, and which state of the job they were made from. */
export interface MadePacket {
  readonly files: readonly MadeFile[];
  readonly pages: readonly PagePreview[];
  readonly mark: string;
}
export interface TraceAsk {
  /** Tells one picture from the next. */
  readonly id: number;
  readonly name: string;
  readonly bytes?: Uint8Array;
  readonly what:
    | { readonly kind: 'board'; readonly squareMm: number }
    | { readonly kind: 'photo'; readonly sheet: 'a4' | 'letter'; readonly corners?: readonly (readonly [number, number])[] }
    | { readonly kind: 'scan'; readonly pixelsPerInch: number }
    | { readonly kind: 'mask'; readonly widthMm: number };
  /** The openings of a plate in place of the plate. */
  readonly openings?: boolean;
  /** Things that touch by no more than this are kept apart. */
  readonly apartMm?: number;
  /** Cameras whose lens is known: that of the one that took this is taken out. */
  readonly cameras?: readonly JobCamera[];
  /** Of a board: what was seen with this camera before, so that the lens is that of all. */
  readonly kept?: readonly KeptCamera[];
  readonly darkShare?: number;
  readonly smoothMm?: number;
  readonly leastMm2?: number;
}
export interface TraceAnswer {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Of the sheet, pixels: as found or as given; none when they weren't found or aren't needed. */
  readonly corners: readonly (readonly [number, number])[];
  readonly traced: {
    readonly outline: [number, number][][];
    readonly widthMm: number;
    readonly heightMm: number;
    /** It has openings, which may be what is wanted. */
    readonly hasOpenings: boolean;
  } | null;
  /** The camera whose lens was taken out. */
  readonly camera?: JobCamera;
  /** The camera as a checked board showed it, with those of earlier photographs; to be kept. */
  readonly read?: KeptCamera;
  readonly problems: readonly Problem[];
}
export interface DrawingReadings {
  /** The box of all of them on the drawing's page: x, y, width, height. */
  readonly box: readonly [number, number, number, number];
  readonly choices: readonly {
    readonly reading: DrawingReading;
    readonly colour?: string;
    readonly share?: number;
    /** Data of an SVG path, mm. */
    readonly path: string;
  }[];
}
export interface ReadDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** False: the file says no true size. */
  readonly hasPhysicalUnits: boolean;
  readonly problems: readonly Problem[];
}
/** A quick answer: goes over the Plan shown until the next whole one. */
export interface Recolouring {
  /** In the new order. */
  readonly layers: readonly Pick<PlannedLayer, 'id' | 'name' | 'run' | 'inkId' | 'strength' | 'swatch'>[];
  readonly paper: ShownPaper;
}
export interface PlanDigest {
  readonly codes: string;
  readonly labs: string;
}

export type Question = keyof Questions;
export type Ask<Q extends Question> = Questions[Q]['ask'];
export type Answer<Q extends Question> = Questions[Q]['answer'];

/** Page → worker. */
export type ToWorker =
  | { [Q in Question]: { readonly id: number; readonly question: Q; readonly ask: Ask<Q> } }[Question]
  | { readonly id: number; readonly question: 'stop' };

/** Worker → page. */
export type FromWorker =
  | { readonly id: number; readonly kind: 'answer'; readonly answer: Answer<Question> }
  | { readonly id: number; readonly kind: 'progress'; readonly share: number; readonly note?: Saying }
  | { readonly id: number; readonly kind: 'stopped' }
  | { readonly id: number; readonly kind: 'failed'; readonly problems: readonly Problem[] };
