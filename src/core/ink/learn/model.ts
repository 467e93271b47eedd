import { BANDS, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { filmOf } from '../film.ts';
import { internal } from '../surface.ts';
import type { Film, Ink, Surface } from '../types.ts';

/** A layer of the print that the readings come from. */
export interface LearnLayer {
  readonly id: string;
  readonly name: string;
  /** The ink as its readings give it under a surface: gloss that is learnt changes it too. */
  readonly inkUnder: (surface: Surface) => Ink;
  readonly strength: number;
  /** As planned; learning multiplies it. */
  readonly deposit: number;
}

/** What is moved by learning. */
export interface PressState {
  /** One factor per layer on the planned deposit. */
  readonly deposits: Float64Array;
  readonly ks: number;
  /** Each film on top of j others lies t^j as thick; 1 for films dried between runs. */
  readonly trapping: number;
}

/** Foresees overlaps under any state; remembers the inks of the last gloss. */
export function pressModel(
  paper: Spectrum,
  layers: readonly LearnLayer[],
  surface: Surface,
): (state: PressState, stack: readonly number[]) => Lab {
  let ksOfInks = NaN;
  let inks: Ink[] = [];
  let ground: Spectrum = paper;
  const stackNow = new Float64Array(BANDS);
  return (state, stack) => {
    if (state.ks !== ksOfInks) {
      const skin = { ...surface, ks: state.ks };
      inks = layers.map((l) => l.inkUnder(skin));
      ground = internal(paper, skin);
      ksOfInks = state.ks;
    }
    stackNow.set(ground);
    stack.forEach((layer, j) => {
      const film: Film = filmOf(inks[layer], layers[layer].strength, layers[layer].deposit * state.deposits[layer] * state.trapping ** j);
      for (let i = 0; i < BANDS; i++) stackNow[i] = film.r0[i] + (film.t2[i] * stackNow[i]) / (1 - film.r0[i] * stackNow[i]);
    });
    const { k1, k2 } = surface;
    for (let i = 0; i < BANDS; i++) stackNow[i] = state.ks + ((1 - k1) * (1 - k2) * stackNow[i]) / (1 - k2 * stackNow[i]);
    return labFromXyz(xyzAt(stackNow, 0));
  };
}
