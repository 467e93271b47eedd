import type { Lab } from '../../colour/index.ts';
import type { Random } from '../../random.ts';

export interface Steps {
  readonly sl: number;
  readonly sc: number;
  readonly sh: number;
  /** Direction of the hue. */
  readonly ca: number;
  readonly cb: number;
}

/** How long a step of ΔE00 1 is along lightness, chroma and hue at a colour (the S of CIEDE2000, kL = kC = kH = 1). */
export function stepsAt(lab: Lab): Steps {
  const c = Math.hypot(lab[1], lab[2]);
  const c7 = c * c * c * c * c * c * c;
  // CIEDE2000 stretches a near grey, where steps of a are seen more.
  const g = 1 + 0.5 * (1 - Math.sqrt(c7 / (c7 + 25 ** 7)));
  const a = lab[1] * g;
  const chroma = Math.hypot(a, lab[2]);
  const h = Math.atan2(lab[2], a);
  const rad = Math.PI / 180;
  const t =
    1 - 0.17 * Math.cos(h - 30 * rad) + 0.24 * Math.cos(2 * h) + 0.32 * Math.cos(3 * h + 6 * rad) - 0.2 * Math.cos(4 * h - 63 * rad);
  const l50 = (lab[0] - 50) ** 2;
  return {
    sl: 1 + (0.015 * l50) / Math.sqrt(20 + l50),
    sc: 1 + 0.045 * chroma,
    sh: 1 + 0.015 * chroma * t,
    ca: c === 0 ? 1 : lab[1] / c,
    cb: c === 0 ? 0 : lab[2] / c,
  };
}

/** Radius inside which 68 % of a round normal cloud in three dimensions lies, in standard deviations. */
const radius68 = 1.8724;

/** Standard deviation of each of three normal numbers whose cloud keeps two thirds within ΔE00 `sigma`. */
export function spreadOf(sigma: number): number {
  return sigma / radius68;
}

/** Three normal numbers: how far a colour is off along lightness, chroma and hue, in spreads. */
export function cloudPoint(random: Random): readonly [number, number, number] {
  return [random.normal(), random.normal(), random.normal()];
}
