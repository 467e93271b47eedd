import type { Illuminant, Lab } from '../colour/index.ts';
import type { Region } from '../form/index.ts';
import type { Job } from '../job/index.ts';
import type { GroundCube, LaidFilms } from '../print/index.ts';
import type { EdgeRidge, RidgeOver } from '../press/index.ts';
import type { StencilChange } from '../edition/index.ts';
import type { Saying } from '../../words/say.ts';
import type { Stencil } from '../stencil/index.ts';
import type { WrittenCut } from '../cutfile/index.ts';
import type { Learning } from './parts/colour/learning.ts';
import type { PlannedTones } from './parts/tone/models.ts';
import type { ToneScreen } from './parts/tone/screens.ts';

// What the Plan says of single things: forms, cuts, layers, mixes, inks, papers.

/** One run that a cut serves, in laydown order. */
export interface CutUse {
  readonly layerId: string;
  readonly run: number;
  readonly side: 'window' | 'piece';
  /** Which of the cut's sheets it takes: 1, 2, … up to `timesToCut`. Several where one would not last the run. */
  readonly sheets: readonly number[];
  readonly pulls: number;
  /**
   * What becomes of the last of them: `spent` with the run (paper can't be washed), `wash` and keep for the later run
   * `againInRun`, `done` (washable, not needed again).
   */
  readonly after: 'spent' | 'wash' | 'done';
  readonly againInRun?: number;
  /**
   * What closes the mesh around the image: the sheet's own border, or, for a piece that dropped out of a window and so has none,
   * tape on the paper side exactly on the image's edge.
   */
  readonly border: 'sheet' | 'tape-on-edge';
  /** The run that takes the other side of the same sheet later: what drops out (or stays) must be kept flat till then. */
  readonly keepForRun?: number;
}

/** Stencils that come from one sheet of material. */
export interface CutSet {
  /** Whose stencil is cut. */
  readonly layerId: string;
  /** Layers that its sheets serve. */
  readonly serves: readonly string[];
  readonly sheets: readonly number[];
}

export interface PlannedForm {
  readonly id: string;
  readonly name: string;
  /** At true size, its box's top left corner at 0, 0. */
  readonly region: Region;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** One knife path in the place where it prints: the shape that both its stencils share. */
export interface PlannedCut {
  readonly id: string;
  readonly name: string;
  readonly region: Region;
  readonly materialId: string;
  /** Layers served, in laydown order. */
  readonly layers: readonly string[];
  /** Sheets of material to cut: more than one where window and piece are not one cut, or a sheet dies before its next run. */
  readonly timesToCut: number;
  readonly why: Saying;
  /** Run by run: which sheet, and what becomes of it. In laydown order. */
  readonly uses: readonly CutUse[];
  /** What comes from one sheet, for laying on stock. */
  readonly sets: readonly CutSet[];
  /** Knife work for every sheet that is cut, not for one of each. */
  readonly knifeMetres: number;
  readonly knifeMinutes: number;
}

export interface PlannedLayer {
  readonly id: string;
  readonly name: string;
  /** Place in the laydown, 1 is printed first. */
  readonly run: number;
  /** Its bit in `codes`, 0..7: given by id, so that a new order changes no code. */
  readonly bit: number;
  readonly cutId: string;
  readonly side: 'window' | 'piece';
  /** Of a run of tone: where its tone lies; nothing is cut. */
  readonly stencil: Stencil;
  /** A run of tone: how its film stands, and what it covers; null for a run that is cut. */
  readonly tone: PlannedTone | null;
  /** Its knife paths as they are drawn and written. */
  readonly written: WrittenCut;
  /** null: open. */
  readonly inkId: string | null;
  readonly strength: number;
  readonly printsMm2: number;
  /** Share of the image area that this layer prints. */
  readonly coverage: number;
  readonly wetMicrons: number;
  /** Film of this run in the colour forecast, against that of the job's screen: its own mesh, and the ridge where shapes are fine. */
  readonly filmTimes: number;
  /** Film of this layer against the drawdown its ink was read from (1 = as thick). */
  readonly deposit: number;
  /** sRGB of this layer's ink alone on the first paper, for pots and labels; null when open. */
  readonly swatch: Swatch | null;
  readonly mix: PlannedMix | null;
  readonly sheetsThrough: number;
  /** Where its stencil gives out and the next is mounted, in the order of the pulls. */
  readonly changes: readonly StencilChange[];
  /** Ridge of ink along the edges that the stencil's thickness leaves. */
  readonly ridge: EdgeRidge & RidgeOver;
}

export interface PlannedTone extends ToneScreen {
  /** What the film covers, 0..255, a byte for each pixel of `codes`; 0 where its cut lets nothing through. */
  readonly plane: Uint8Array;
  /** Mean of that over the image, and of what comes to lie on the paper. */
  readonly meanOnFilm: number;
  readonly meanOnPaper: number;
}

export interface PlannedMix {
  /** What goes into the pot. Mass in grams for this run, with what stays in screen and pot. */
  readonly parts: readonly {
    /** Empty: a base that the job doesn't list. */
    readonly inkId: string;
    readonly name: Saying;
    readonly share: number;
    readonly partsByVolume: number;
    readonly massGrams: number;
  }[];
  readonly totalGrams: number;
  readonly totalRangeGrams: readonly [number, number];
  /** Of the total: on the paper, for all sheets. */
  readonly printedGrams: number;
  /** Asked by the pace and the air; 0: none. On top of the parts. */
  readonly retarderShare: number;
  readonly retarderGrams: number;
  readonly note: Saying;
}

export interface PlannedInk {
  readonly id: string;
  readonly name: string;
  readonly role: Job['inks'][number]['role'];
  /** Alone at full strength on the first paper. */
  readonly swatch: Swatch;
  /** Absorption and scattering times thickness, per band, at strength 1 and deposit 1. */
  readonly k: Float64Array;
  readonly s: Float64Array;
  /** How far to trust it. */
  readonly trust: Saying;
}

export interface Swatch {
  readonly lab: Lab;
  readonly srgb: string;
  readonly inGamut: boolean;
}

export interface PlannedOverlap extends Swatch {
  /** Bits of `codes`. */
  readonly code: number;
  /** Layer ids, first down first. Empty: bare paper. */
  readonly layers: readonly string[];
  /** ΔE00 within which nine prints in ten fall; where it comes from is in `bandNote`. */
  readonly band: number;
  /** sRGB of colours that it may come out as, the shown one in the middle; nine prints in ten lie between the ends. One alone where it was measured. */
  readonly possible: readonly string[];
  readonly areaMm2: number;
  /** Shown as measured (from the Job's readings of proofs), or foreseen. */
  readonly measured: boolean;
}

export interface PlannedPaper {
  readonly id: string;
  readonly name: string;
  readonly swatch: Swatch;
  /** Every overlap that covers area, bare paper first, then by code in laydown order. */
  readonly overlaps: readonly PlannedOverlap[];
  /** All 256 codes → 0xAABBGGRR (little-endian RGBA), what a canvas takes. Open layers print nothing. */
  readonly palette: Uint32Array;
  /** After run 1, 2, …: same, with later layers masked. */
  readonly progressive: readonly Uint32Array[];
  readonly bandNote: Saying;
  /** The overlaps whose measurement would narrow this print's colours most, best first; null where nothing foreseen is left to read. */
  readonly worthReading: WorthReadings | null;
  /** The same print under lamps it may hang under; on a sheet that is printed already, as on the bare paper (its grounds have their own). */
  readonly lights: readonly PlannedLight[];
  /** Overlaps that look the same under one lamp and not under another. */
  readonly parting: readonly PartingPair[];
  /** What readings of printed overlaps on this paper have taught; null without any. */
  readonly learning: Learning | null;
  /** A sheet that is printed already: the handful of colours it is made of, and every overlap on each; else null. */
  readonly grounds: PlannedGrounds | null;
  /** Any tones of the runs that carry tone, with all that lies solid; null where none does. */
  readonly tones: PlannedTones | null;
  /** A sheet that is printed already: what its proof is painted from; else null. */
  readonly overPicture: OverPicture | null;
}

/** All overlaps as eyes that are used to a lamp see them. */
export interface PlannedLight {
  /** CIE 015. */
  readonly lamp: Illuminant;
  /** As in the paper's `overlaps`, with how far each moves from what it looks like under D50, ΔE00; `underLamp` makes a paper of it. */
  readonly overlaps: readonly { readonly code: number; readonly lab: Lab; readonly moved: number }[];
}

export interface PartingPair {
  readonly codes: readonly [number, number];
  /** Both lie on this ground of a printed sheet; null: on the bare paper. */
  readonly ground: number | null;
  readonly alikeUnder: Illuminant;
  readonly apartUnder: Illuminant;
  /** ΔE00 between the two under each. */
  readonly alikeDeltaE: number;
  readonly apartDeltaE: number;
  /** In how many of the prints that may be so they part as well, 0..1. */
  readonly chance: number;
}

export interface PlannedGrounds {
  /** Which of the colours lies under each pixel of `codes`. */
  readonly regions: Uint8Array;
  /** The broadest first. */
  readonly colours: readonly {
    readonly srgb: string;
    readonly lab: Lab;
    readonly areaMm2: number;
    /** Those that cover area on it; code 0: the sheet as it is. */
    readonly overlaps: readonly (Swatch & { readonly code: number; readonly band: number; readonly areaMm2: number })[];
    /** Lab of the spectrum that stands for it: that of the picture, but for what no surface has. */
    readonly asRead: Lab;
    /** The same under lamps, the sheet as it is among them (code 0). */
    readonly lights: readonly PlannedLight[];
  }[];
}

export interface WorthReadings {
  /** Mean band of the foreseen overlaps now, by area. */
  readonly meanBand: number;
  readonly picks: readonly {
    readonly code: number;
    /** Layer ids, first down first. */
    readonly layers: readonly string[];
    /** Where it lies broadest on the proof, from the image's top left corner. */
    readonly atMm: readonly [number, number];
    /** What the mean band becomes with this reading and those before it. */
    readonly meanBand: number;
  }[];
}

/** `paintOverPicture(codes, ground, cube, rowOfCode, out)` in core/print paints the proof over an earlier print. */
export interface OverPicture {
  /** RGB bytes of the ground, a triple per pixel of `codes`. */
  readonly ground: Uint8Array;
  readonly cube: GroundCube;
  /** What the cube is made of, and the rows of it that cover something: for the same under a lamp. */
  readonly laid: LaidFilms;
  readonly rows: readonly number[];
  /** All 256 codes → row of the cube; and the same after run 1, 2, …. */
  readonly rowOfCode: Uint8Array;
  readonly progressive: readonly Uint8Array[];
}
