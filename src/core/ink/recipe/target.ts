import { BANDS, labFromXyz, xyzAt, type Lab, type Spectrum } from '../../colour/index.ts';
import { effectiveShare, overGround } from '../film/film.ts';
import { stepsAt } from '../film/jitter.ts';
import type { Ink, Surface } from '../types.ts';

/** Works out the colour of a film of mixed inks over a ground, again and again without allocation. */
export interface Mixer {
  /** Lab of shares of the pots (rest clear) over the ground, into `out`. */
  labInto(shares: ArrayLike<number>, pots: readonly number[], out: Float64Array): void;
}

/**
 * @param ground internal reflectance of what is printed already
 * @param rest what fills the pot beside the inks: a base of its own, or nothing
 */
export function mixer(inks: readonly Ink[], ground: Spectrum, surface: Surface, deposit: number, rest: Ink | undefined): Mixer {
  const { ks, k1, k2 } = surface;
  const through = (1 - k1) * (1 - k2);
  const seen = new Float64Array(BANDS);
  return {
    labInto(shares, pots, out) {
      let left = 1;
      for (let p = 0; p < pots.length; p++) left -= shares[p];
      left = Math.max(0, left);
      for (let i = 0; i < BANDS; i++) {
        let K = rest ? left * rest.k[i] : 0,
          S = rest ? left * rest.s[i] : 0;
        for (let p = 0; p < pots.length; p++) {
          const ink = inks[pots[p]];
          const amount = ink.gamma === undefined ? shares[p] : effectiveShare(ink, shares[p]);
          K += amount * ink.k[i];
          S += amount * ink.s[i];
        }
        const r = overGround(K * deposit, S * deposit, ground[i]);
        seen[i] = ks + (through * r) / (1 - k2 * r);
      }
      const lab = labFromXyz(xyzAt(seen, 0));
      out[0] = lab[0];
      out[1] = lab[1];
      out[2] = lab[2];
    },
  };
}

/** Turns Lab differences at a wanted colour into three numbers whose square sum is about ΔE00². */
export function residualAt(wanted: Lab): (lab: ArrayLike<number>, out: Float64Array) => void {
  const { sl, sc, sh, ca, cb } = stepsAt(wanted);
  return (lab, out) => {
    const da = lab[1] - wanted[1],
      db = lab[2] - wanted[2];
    out[0] = (lab[0] - wanted[0]) / sl;
    out[1] = (da * ca + db * cb) / sc;
    out[2] = (-da * cb + db * ca) / sh;
  };
}
