import { srgbFromXyz, xyzFromLab } from '../../colour/index.ts';
import { toneForesight } from '../../halftone/index.ts';
import type { PlannedOverlap, PlannedPaper } from '../../plan/index.ts';

export interface ToneRamp {
  /** The topmost run of tone there: the others lie solid. */
  readonly layerId: string;
  /** sRGB in even steps of its film, from bare to solid. */
  readonly steps: readonly string[];
}

const most = 12;

/** A page that is drawn anew asks for the same ramps again. */
const known = new WeakMap<object, WeakMap<object, ToneRamp | null>>();

/** An overlap in which a tone lies prints as no single colour: its ramp, over what lies with it. Null: nothing but flat runs, as D50 shows them. */
export function overlapRamp({ tones }: Pick<PlannedPaper, 'tones'>, overlap: Pick<PlannedOverlap, 'layers' | 'srgb'>): ToneRamp | null {
  if (!tones) return null;
  const ofModel = known.get(tones.model) ?? new WeakMap<object, ToneRamp | null>();
  known.set(tones.model, ofModel);
  const ramp = ofModel.has(overlap) ? ofModel.get(overlap)! : rampOf(tones, overlap);
  ofModel.set(overlap, ramp);
  return ramp;
}

function rampOf(tones: NonNullable<PlannedPaper['tones']>, { layers, srgb }: Pick<PlannedOverlap, 'layers' | 'srgb'>): ToneRamp | null {
  const here = tones.layers.map((id) => layers.includes(id));
  const at = here.findLastIndex((there, i) => there && tones.carries[i]);
  if (at < 0) return null;
  const { lab } = toneForesight(tones.model);
  const steps = Array.from({ length: most }, (_, step) =>
    // The solid is the overlap's own colour, as it stands elsewhere.
    step === most - 1 ? srgb : srgbFromXyz(xyzFromLab(lab(here.map((there, i) => (i === at ? step / (most - 1) : there ? 1 : 0))))).hex,
  );
  return { layerId: tones.layers[at], steps };
}
