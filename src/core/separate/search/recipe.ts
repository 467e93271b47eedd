import { labFromXyz, xyzAt, type Spectrum } from '../../colour/index.ts';
import { effectiveShare, filmOfBand, overlapSpectra, type Film, type Ink, type Surface } from '../../ink/index.ts';

/** An ink on the printmaker's shelf. */
export interface Pot {
  readonly id: string;
  readonly ink: Ink;
}

/** What goes into one layer's pot: shares of shelf inks by volume, the rest clear base. */
export interface PotShare {
  readonly id: string;
  /** 0..1 */
  readonly share: number;
}

/** The printing of one layer: its pot, and at which of the N wishes it came in. */
export interface LayerRecipe {
  readonly parts: readonly PotShare[];
  /** Number of the wish this layer answers; its place in the list of recipes is its place in the laydown. */
  readonly wish: number;
}

const bands = 36;

/** Printed film of a recipe: absorption and scattering add up by volume (docs/optics.md 4). */
export function filmOfRecipe(recipe: LayerRecipe, shelf: ReadonlyMap<string, Ink>, deposit: number): Film {
  const k = new Float64Array(bands),
    s = new Float64Array(bands);
  for (const { id, share } of recipe.parts) {
    const ink = shelf.get(id)!;
    const amount = effectiveShare(ink, share) * deposit;
    for (let i = 0; i < bands; i++) {
      k[i] += amount * ink.k[i];
      s[i] += amount * ink.s[i];
    }
  }
  const r0 = new Float64Array(bands),
    t2 = new Float64Array(bands);
  for (let i = 0; i < bands; i++) {
    const film = filmOfBand(k[i], s[i]);
    r0[i] = film.r0;
    t2[i] = film.t * film.t;
  }
  return { r0, t2 };
}

/** Lab of every overlap, 3 a code; bit i = i-th film from the bottom. */
export function overlapLabOf(paper: Spectrum, films: readonly Film[], surface: Surface): Float64Array {
  return labOfSpectra(overlapSpectra(paper, films, surface));
}

function labOfSpectra(spectra: Float64Array): Float64Array {
  const lab = new Float64Array((spectra.length / bands) * 3);
  for (let row = 0; row * 3 < lab.length; row++) lab.set(labFromXyz(xyzAt(spectra, row * bands)), row * 3);
  return lab;
}
