import type { Job } from '../../../../core/job/index.ts';
import type { Region } from '../../../../core/form/index.ts';
import type { PlannedLayer } from '../../../../core/plan/index.ts';
import type { Problem } from '../../../../core/problem.ts';
import type { Saying } from '../../../../words/one-language.ts';
import type { Draft, Separation, SeparationFigures, WayLook } from '../../../../core/separate/index.ts';

/** A raster to look at: one word a pixel (little-endian RGBA), what a canvas takes. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly words: Uint32Array<ArrayBuffer>;
}

/** A picture as read: its own size, and a small one to look at. */
export interface ReadPicture {
  readonly width: number;
  readonly height: number;
  readonly format: string;
  readonly profile: string | null;
  readonly shown: Raster;
  readonly problems: readonly Problem[];
}

export interface SeparateAsk {
  /** `job.picture` says what is asked for. */
  readonly job: Job;
  readonly paperId: string | null;
  /** The job's own layers, when they lie on the sheet already. */
  readonly over: readonly PlannedLayer[] | null;
}

export interface ShownDraft extends Pick<Draft, 'stage' | 'share' | 'meanDeltaE' | 'metres'> {
  readonly print: Raster;
}

/** One way to take the picture, drawn small. */
export interface ShownWay extends Pick<WayLook, 'way' | 'minutes' | 'metres' | 'structure'> {
  readonly print: Raster;
}

/** One run as the separation made it. */
export interface ShownRun {
  readonly run: number;
  /** What it prints. */
  readonly says: Saying;
  readonly side: 'window' | 'piece';
  readonly parts: readonly { readonly id: string; readonly name: string; readonly share: number }[];
  /** Its ink alone on the paper. */
  readonly srgb: string;
  readonly prints: Region;
  readonly metres: number;
  readonly pieces: number;
  readonly bridges: number;
  readonly minutes: number;
}

/** What the page shows of a separation; the separation itself stays in the worker, which makes a job of it when asked. */
export interface ShownSeparation
  extends Pick<
    Separation,
    'figures' | 'curve' | 'outOfReachShare' | 'detailLostDeltaE' | 'lost' | 'asDrawing' | 'stoppedEarly' | 'problems'
  > {
  readonly picture: Raster;
  readonly print: Raster;
  readonly flat: Raster;
  readonly flatFigures: SeparationFigures;
  readonly flatInks: readonly string[];
  /** 255 (1) where so. */
  readonly outOfReach: Uint8Array;
  readonly detailLost: Uint8Array;
  readonly runs: readonly ShownRun[];
  readonly priceMm: number;
}

export interface PictureQuestions {
  /** Reads a picture and keeps it. */
  readonly read: { ask: { readonly bytes: Uint8Array; readonly name: string }; answer: ReadPicture };
  /** What lies over the picture read last where it matters less by itself. Takes its time: asked for once it is to be seen. */
  readonly veil: { ask: null; answer: Raster };
  /** Makes the first sketch of what may be asked for next; `separate` goes on from it when it is asked for just that. */
  readonly prepare: { ask: SeparateAsk; answer: null };
  /** Separates the picture read last; drafts come on the way. Stopped, the best so far is cut. */
  readonly separate: { ask: SeparateAsk; answer: ShownSeparation };
  /** The ways that it can be taken, drawn small, each as it is done. */
  readonly ways: { ask: SeparateAsk; answer: null };
  /** The job with the forms, cuts, layers and pots of the separation made last; `names`: what its runs are called. */
  readonly asJob: { ask: { readonly job: Job; readonly names: readonly string[]; readonly after: boolean }; answer: Job };
}
export type PictureQuestion = keyof PictureQuestions;

export type ToPictureWorker =
  | { [Q in PictureQuestion]: { readonly id: number; readonly question: Q; readonly ask: PictureQuestions[Q]['ask'] } }[PictureQuestion]
  | { readonly id: number; readonly question: 'stop' };

export type FromPictureWorker =
  | { readonly id: number; readonly kind: 'answer'; readonly answer: PictureQuestions[PictureQuestion]['answer'] }
  | { readonly id: number; readonly kind: 'progress'; readonly share: number }
  | { readonly id: number; readonly kind: 'draft'; readonly draft: ShownDraft }
  | { readonly id: number; readonly kind: 'way'; readonly way: ShownWay }
  | { readonly id: number; readonly kind: 'failed'; readonly problems: readonly Problem[] };
