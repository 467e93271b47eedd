import { BANDS, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { overGround } from '../film/film.ts';
import type { Surface } from '../types.ts';

/** Colour of a film of absorption k and scattering s over one ground, again and again without allocation. */
export type Colourist = (k: Float64Array, s: Float64Array) => Lab;

export function colourist(ground: Spectrum, surface: Surface): Colourist {
  const seen = new Float64Array(BANDS);
  const { ks, k1, k2 } = surface;
  return (k, s) => {
    for (let i = 0; i < BANDS; i++) {
      const r = overGround(k[i], s[i], ground[i]);
      seen[i] = ks + ((1 - k1) * (1 - k2) * r) / (1 - k2 * r);
    }
    return labFromXyz(xyzAt(seen, 0));
  };
}
