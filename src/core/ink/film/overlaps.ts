import { BANDS, labFromXyz, srgbFromXyz, xyzAt, type Spectrum } from '../../colour/index.ts';
import { fail } from '../../problem.ts';
import { say } from '../../../words/say.ts';
import { thinned } from './film.ts';
import { internal } from './surface.ts';
import type { Film, Surface } from '../types.ts';

const mostFilms = 8;

/**
 * Reflectance of every overlap of up to 8 films on a paper.
 * @param paper measured reflectance
 * @param films first down first
 * @returns 2^N × 36 measured reflectances; bit i of the row's number is set where film i is printed
 */
export function overlapSpectra(
  paper: Spectrum,
  films: readonly Film[],
  surface: Surface,
  /** A film as it lies on a certain other one; left out: all alike, by the surface's trapping. */
  onFilm?: (below: number, above: number) => Film,
): Float64Array {
  if (films.length > mostFilms) {
    fail('too-many-layers', 'layers', say('ink.tooManyLayers', { n: films.length }), say('ink.fewerLayers', { most: mostFilms }));
  }
  const rows = 1 << films.length;
  const out = new Float64Array(rows * BANDS);
  out.set(internal(paper, surface));
  const { trapping = 1 } = surface;
  const alike = onFilm ? [] : films.map((film) => thinned(film, trapping));
  const onInk = onFilm ?? ((_: number, above: number): Film => alike[above]);
  // Each row is the row without its top film, plus that film: every prefix is worked out once.
  for (let row = 1; row < rows; row++) {
    const top = 31 - Math.clz32(row);
    const below = row & ~(1 << top);
    const { r0, t2 } = below === 0 ? films[top] : onInk(31 - Math.clz32(below), top);
    const from = below * BANDS,
      to = row * BANDS;
    for (let i = 0; i < BANDS; i++) {
      const g = out[from + i];
      out[to + i] = r0[i] + (t2[i] * g) / (1 - r0[i] * g);
    }
  }
  const { ks, k1, k2 } = surface;
  const through = (1 - k1) * (1 - k2);
  for (let i = 0; i < out.length; i++) out[i] = ks + (through * out[i]) / (1 - k2 * out[i]);
  return out;
}

export interface OverlapColours {
  /** Three per overlap. */
  readonly lab: Float64Array;
  /** sRGB bytes, three per overlap; mapped into gamut where they had to be. */
  readonly rgb: Uint8Array;
  /** 1 where a screen can show it. */
  readonly inGamut: Uint8Array;
}

/** Lab and sRGB of all overlaps as `overlapSpectra` gives them. */
export function overlapColours(spectra: Float64Array): OverlapColours {
  const n = spectra.length / BANDS;
  const lab = new Float64Array(n * 3),
    rgb = new Uint8Array(n * 3),
    inGamut = new Uint8Array(n);
  for (let row = 0; row < n; row++) {
    const xyz = xyzAt(spectra, row * BANDS);
    lab.set(labFromXyz(xyz), row * 3);
    const shown = srgbFromXyz(xyz);
    rgb.set(shown.rgb, row * 3);
    inGamut[row] = shown.inGamut ? 1 : 0;
  }
  return { lab, rgb, inGamut };
}
