import { BANDS, type Spectrum } from '../../colour/index.ts';
import { chosen } from '../chosen.ts';
import type { Surface } from '../types.ts';

/** Saunderson's constants as usual for ink on paper (docs/optics.md 2; Saunderson 1942). */
const k1 = 0.04;
const k2 = 0.6;
/** Below this the film is black whatever it is; keeps logarithms finite. */
const leastInternal = 1e-4;

/** Gloss that is assumed when no reading is dark enough to tell: between the two usual geometries, 0 and k1. */
const glossUnknown = 0.02;
/** From this darkest reading on, nothing is known of the gloss. */
const paleFrom = 0.1;
const tooPaleToTell = 0.2;

/**
 * The surface for a set of readings: gloss as a share of the darkest band from 400 nm up, so that it stays below
 * every dark reading; the darkest ink still gives back a little light from within.
 * @param readings spectra of every ink (and dark overlap) that was read on this paper
 * @param fromSpectra true when they were read as spectra, false when they are smoothest spectra of colours
 */
export function defaultSurface(readings: readonly Spectrum[], fromSpectra: boolean): Surface {
  let darkest = Infinity;
  for (const r of readings) for (let i = 2; i < BANDS; i++) darkest = Math.min(darkest, r[i]);
  const { glossShare, lightWithin } = chosen;
  const share = fromSpectra ? glossShare.spectra : glossShare.colours;
  const seen = Math.min(darkest, paleFrom);
  const told = Math.max(0, share * seen, seen - lightWithin);
  if (darkest <= paleFrom) return { ks: told, k1, k2 };
  // No gloss alone is so light; what the reading tells fades out until nothing is known.
  const fade = Math.min(1, (darkest - paleFrom) / (tooPaleToTell - paleFrom));
  return { ks: told * (1 - fade) + glossUnknown * fade, k1, k2 };
}

/** Measured reflectance → what the light inside the film sees (docs/optics.md 2). */
export function internal(R: Spectrum, surface: Surface): Spectrum {
  const out = new Float64Array(R.length);
  for (let i = 0; i < R.length; i++) {
    const y = (R[i] - surface.ks) / (1 - surface.k1);
    out[i] = Math.max(y / (1 - surface.k2 + surface.k2 * y), leastInternal);
  }
  return out;
}

/** Inside → measured; the inverse of `internal`. */
export function measured(r: Spectrum, surface: Surface): Spectrum {
  const out = new Float64Array(r.length);
  const through = (1 - surface.k1) * (1 - surface.k2);
  for (let i = 0; i < r.length; i++) out[i] = surface.ks + (through * r[i]) / (1 - surface.k2 * r[i]);
  return out;
}
