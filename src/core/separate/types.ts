import type { Spectrum } from '../colour/index.ts';
import type { Box, Region } from '../form/index.ts';
import type { Surface } from '../ink/index.ts';
import type { Problem } from '../problem.ts';
import type { KnifeRates, Material, Stencil } from '../stencil/index.ts';
import type { Crop, Face, Picture } from '../image/index.ts';
import type { Pot, PotShare } from './search/recipe.ts';
import type { LostDetail } from './finish/readable.ts';
import type { Structure } from './finish/structure.ts';
import type { LayerWish } from './search/search.ts';
import type { Way } from './prepare/way.ts';

/** What to do about colours the inks can't reach: leave them to the nearest overlap, or first fit one of these into their reach. */
export type GamutIntent = 'nearest' | 'lightness' | 'chroma' | 'contrast';

/** What a hand with a knife may be asked for. */
export interface KnifeBudget {
  /** All cut lines of all stencils together, those along the image's border too. Left out: `priceMm` decides. */
  readonly metres?: number;
  /** Cut-outs and loose pieces of all stencils together. */
  readonly pieces?: number;
  readonly minutes?: number;
  /** Narrowest opening and narrowest strip of paper; left out: what the material allows. */
  readonly leastWidthMm?: number;
  /** How much colour error (ΔE00·mm²) a mm of outline must save to be worth cutting; 2 if left out. */
  readonly priceMm?: number;
}

/** A layer that lies on the sheet already. */
export interface PrintedLayer {
  readonly parts: readonly PotShare[];
  /** Where its ink lies, mm from the image's top left corner. */
  readonly prints: Region;
}

/** Importance a pixel of any raster laid over the whole image: 1 is usual, 3 counts three times, 0 not at all. */
export interface ImportanceMap {
  readonly width: number;
  readonly height: number;
  readonly weight: Float32Array;
}

export interface SeparateRequest {
  readonly picture: Picture;
  /** Part of the picture to print, in shares; left out: the largest part in the middle with the image's proportions. */
  readonly crop?: Crop;
  readonly sizeMm: { readonly width: number; readonly height: number };
  /** Measured reflectance. */
  readonly paper: Spectrum;
  readonly surface: Surface;
  readonly shelf: readonly Pot[];
  /** Inks that layers already printed have in them and that are not to be used again. */
  readonly printedWith?: readonly Pot[];
  /** How many layers to cut, 1..8 with those already printed. */
  readonly layers: number;
  /** What is decided about them, first layer first; the rest is free. */
  readonly wishes?: readonly LayerWish[];
  readonly alreadyPrinted?: readonly PrintedLayer[];
  /** Layers 1 and 2, 3 and 4, … are window and piece of one cut: half the cutting. */
  readonly cutPairs?: boolean;
  /** Near to the picture if left out. */
  readonly way?: Way;
  /** What the picture is; left out: as it looks. A drawing's paper is bare, its colours flat, its lines as broad as they can be cut. */
  readonly takenAs?: 'drawing' | 'photograph';
  /** The last run is a key: the picture's darks and lines in its darkest pot, drawn before anything else. */
  readonly key?: boolean;
  readonly knife?: KnifeBudget;
  readonly material: Material;
  readonly rates?: KnifeRates;
  /** Paper or film around the image on each stencil, mm. */
  readonly marginMm?: number;
  /** How far one layer sits off by itself, standard deviation in mm; 0 plans as if nothing moved. */
  readonly registerSigmaMm?: number;
  readonly importance?: ImportanceMap;
  /** Faces in the picture: it is told when an eye or a mouth is lost. */
  readonly faces?: readonly Face[];
  /** Finds both where that takes longer than a first sketch should wait: asked after it, and then in place of them. */
  readonly matters?: () => Pick<SeparateRequest, 'importance' | 'faces'>;
  readonly intent?: GamutIntent;
  /** At most so many inks in one pot, 1..3; 2 if left out. */
  readonly mostInPot?: number;
  /** Film printed against the film the inks were read from. */
  readonly deposit?: number;
  readonly seed?: number;
  /** 1 is usual; 0.3 for a quick look, 3 to let it search long. */
  readonly effort?: number;
  /** Raster the masks are worked out on; 0.25 mm if left out. */
  readonly rasterMm?: number;
}

/** ΔE00 to the picture over all pixels. */
export interface Difference {
  readonly mean: number;
  readonly median: number;
  readonly p95: number;
}

export interface SeparationFigures {
  readonly inRegister: Difference;
  /** The same when every layer sits off by the studio's register error. */
  readonly atSigma: Difference & { readonly sigmaMm: number };
  /** Outlines inside the image as the raster measures them: what plan and baseline are compared by. */
  readonly metres: number;
  /** What the print keeps of the picture's drawing. */
  readonly structure: Structure;
}

/** Something to look at while the work goes on, and where it would stop if stopped now. */
export interface Draft {
  readonly stage: 'sketch' | 'inks' | 'masks' | 'cut';
  readonly share: number;
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  /** Bit i of a pixel: the i-th layer from the bottom prints there. */
  readonly codes: Uint8Array;
  /** Colour of each code on a screen, sRGB bytes, 3 a code. */
  readonly rgb: Uint8Array;
  readonly meanDeltaE: number;
  readonly metres: number;
  /** Once it is cut: all but what it is compared with. */
  readonly cut?: Omit<Separation, 'baseline' | 'curve'>;
}

export interface SeparatedLayer {
  /** Place in the laydown from the bottom, those already printed left out; 0 is printed first. */
  readonly run: number;
  /** Bit in `codes`. */
  readonly bit: number;
  /** Number of the wish it answers. */
  readonly wish: number;
  /** What goes into the pot by volume; the rest is clear base. */
  readonly parts: readonly PotShare[];
  /** 1 where the plan wants ink, before cutting. */
  readonly mask: Uint8Array;
  /** The cut: outline that stencil and partner share. */
  readonly region: Region;
  readonly side: 'window' | 'piece';
  readonly stencil: Stencil;
  /** The run that holds the drawing. */
  readonly key: boolean;
}

export interface Separation {
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly image: Box;
  readonly layers: readonly SeparatedLayer[];
  /** The print as the stencils (with their bridges) will make it. */
  readonly codes: Uint8Array;
  readonly rgb: Uint8Array;
  /** Lab of each code, 3 a code. */
  readonly overlapLab: Float64Array;
  /** The picture on this raster, Lab, 3 a pixel: paper's white is its white. */
  readonly target: Float32Array;
  /** `knifeMetres`: all cut lines of the stencils, those along the image's border too; window and piece of one cut counted once. */
  readonly figures: SeparationFigures & {
    readonly knifeMetres: number;
    readonly pieces: number;
    readonly bridges: number;
    readonly minutes: number;
  };
  readonly baseline: Baseline;
  /** The same inks with less and more knife: mean ΔE00 against metres. */
  readonly curve: readonly { readonly metres: number; readonly meanDeltaE: number; readonly priceMm: number }[];
  /** 255 where no overlap of these inks comes nearer than ΔE00 5. */
  readonly outOfReach: Uint8Array;
  readonly outOfReachShare: number;
  /** Pixels whose overlap changed between masks and cut stencils. */
  readonly detailLost: Uint8Array;
  /** ΔE00 that cutting, bridging and smoothing added to the masks. */
  readonly detailLostDeltaE: number;
  /** Whether the picture was taken as a drawing. */
  readonly asDrawing: boolean;
  /** Places that matter and whose drawing the print has lost, the worst first. */
  readonly lost: readonly LostDetail[];
  readonly stoppedEarly: boolean;
  /** What it takes to get the same again. */
  readonly setup: { readonly seed: number; readonly priceMm: number; readonly shelfIds: readonly string[] };
  readonly problems: readonly Problem[];
}

/** The same picture from paper and as many flat opaque inks of any colour, cut with as much knife. */
export interface Baseline extends SeparationFigures {
  readonly width: number;
  readonly height: number;
  readonly codes: Uint8Array;
  readonly rgb: Uint8Array;
  readonly inksLab: Float64Array;
}
