import { exp } from '../../numeric/index.ts';
import { BANDS, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { filmOf, thinned } from '../film/film.ts';
import { internal } from '../film/surface.ts';
import type { Film, Ink, Surface } from '../types.ts';

/** A layer of the print that the readings come from. */
export interface LearnLayer {
  readonly id: string;
  readonly name: string;
  /**
   * The ink as its readings give it under a surface (gloss that is learnt changes it too), with the shape of its spectrum moved.
   * @param moved all moves of all inks; a layer reads those that `moves` names
   */
  readonly inkUnder: (surface: Surface, moved: Float64Array) => Ink;
  /** Which of the moves of spectra change this layer's ink; left out: none. */
  readonly moves?: readonly number[];
  readonly strength: number;
  /** As planned; learning multiplies it. */
  readonly deposit: number;
}

/** What is moved by learning. */
export interface PressState {
  /** One factor per layer on the planned deposit. */
  readonly deposits: Float64Array;
  readonly ks: number;
  /** A film on other films lies so many times as thick as on paper; 1 for films dried between runs. */
  readonly trapping: number;
  /** How a film lies on a certain other one, against `trapping`: ln, at below × layers + above. Empty: all alike. */
  readonly pairs: Float64Array;
  /** Shapes of spectra, in standard deviations; empty where all are known. */
  readonly moved: Float64Array;
}

export interface PressModel {
  (state: PressState, stack: readonly number[]): Lab;
  /** Film of every layer, as on paper, and the surface over all. */
  films(state: PressState): { readonly films: readonly Film[]; readonly surface: Surface };
}

interface Known {
  ks: number;
  moved: number[];
  amount: number;
  ink: Ink;
  onPaper: Film;
  /** The same on other films, by how thick it lies there. */
  onInk: Map<number, Film>;
}

/** How thick a film lies on another, against the same film on paper. */
export function thicknessOn(state: PressState, below: number, above: number, layers: number): number {
  const pair = state.pairs.length === 0 ? 0 : state.pairs[below * layers + above];
  return pair === 0 ? state.trapping : state.trapping * exp(pair);
}

function lying(one: Known, thickness: number): Film {
  const known = one.onInk.get(thickness);
  if (known) return known;
  if (one.onInk.size > 8) one.onInk.clear();
  const film = thinned(one.onPaper, thickness);
  one.onInk.set(thickness, film);
  return film;
}

/** Foresees overlaps under any state; what a state has in common with the last one is not worked out again. */
export function pressModel(paper: Spectrum, layers: readonly LearnLayer[], surface: Surface): PressModel {
  let ks = NaN;
  let skin = surface;
  let ground: Spectrum = paper;
  const known: (Known | undefined)[] = [];
  const stackNow = new Float64Array(BANDS);
  const at = (state: PressState, i: number): Known => {
    const layer = layers[i];
    const before = known[i];
    const moves = layer.moves ?? [];
    const amount = layer.deposit * state.deposits[i];
    const sameInk = before?.ks === ks && moves.every((m, k) => state.moved[m] === before.moved[k]);
    if (before && sameInk && before.amount === amount) return before;
    const ink = before && sameInk ? before.ink : layer.inkUnder(skin, state.moved);
    const now: Known = {
      ks,
      moved: moves.map((m) => state.moved[m]),
      amount,
      ink,
      onPaper: filmOf(ink, layer.strength, amount),
      onInk: new Map(),
    };
    known[i] = now;
    return now;
  };
  const under = (state: PressState): void => {
    if (state.ks === ks) return;
    ks = state.ks;
    skin = { ...surface, ks };
    ground = internal(paper, skin);
  };
  const model = (state: PressState, stack: readonly number[]): Lab => {
    under(state);
    stackNow.set(ground);
    stack.forEach((layer, j) => {
      const one = at(state, layer);
      const film = j === 0 ? one.onPaper : lying(one, thicknessOn(state, stack[j - 1], layer, layers.length));
      for (let i = 0; i < BANDS; i++) stackNow[i] = film.r0[i] + (film.t2[i] * stackNow[i]) / (1 - film.r0[i] * stackNow[i]);
    });
    const { k1, k2 } = surface;
    for (let i = 0; i < BANDS; i++) stackNow[i] = ks + ((1 - k1) * (1 - k2) * stackNow[i]) / (1 - k2 * stackNow[i]);
    return labFromXyz(xyzAt(stackNow, 0));
  };
  return Object.assign(model, {
    films: (state: PressState) => {
      under(state);
      return { films: layers.map((_, i) => at(state, i).onPaper), surface: { ...skin, trapping: state.trapping } };
    },
  });
}
