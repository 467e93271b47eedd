import {
  convertRgbToXyz50,
  convertXyz50ToRgb,
  modeLrgb,
  modeOklab,
  modeOklch,
  modeRgb,
  modeXyz50,
  modeXyz65,
  toGamut,
  useMode,
} from 'culori/fn';
import type { Xyz } from './bands.ts';

useMode(modeRgb);
useMode(modeLrgb);
useMode(modeXyz50);
useMode(modeXyz65);
useMode(modeOklab);
useMode(modeOklch);

const intoSrgb = toGamut('rgb', 'oklch');

/** Half a step of 8 bits: what no screen can show is not called out of gamut. */
const slack = 0.5 / 255;

export interface Srgb {
  /** `#rrggbb` */
  readonly hex: string;
  /** Bytes. */
  readonly rgb: readonly [number, number, number];
  /** false: the screen can't show this colour; what is shown keeps its lightness and hue and gives up chroma. */
  readonly inGamut: boolean;
}

/** XYZ under D50 → sRGB (Bradford adaptation and gamut mapping as CSS Color 4 has them, by culori). */
export function srgbFromXyz(xyz: Xyz): Srgb {
  let colour = convertXyz50ToRgb({ x: xyz[0], y: xyz[1], z: xyz[2] });
  const inside = (v: number): boolean => v >= -slack && v <= 1 + slack;
  const inGamut = inside(colour.r) && inside(colour.g) && inside(colour.b);
  if (!inGamut) colour = intoSrgb(colour);
  const rgb = [byte(colour.r), byte(colour.g), byte(colour.b)] as const;
  return { hex: `#${rgb.map((v) => v.toString(16).padStart(2, '0')).join('')}`, rgb, inGamut };
}

/** sRGB 0..1 → XYZ under D50, Y of white = 1. */
export function xyzFromSrgb(rgb: readonly [number, number, number]): Xyz {
  const { x, y, z } = convertRgbToXyz50({ r: rgb[0], g: rgb[1], b: rgb[2] });
  return [settled(x), settled(y), settled(z)];
}

/** culori takes powers as the engine has them: their last bits are dropped. */
const settled = (v: number): number => Math.round(v * 1e12) / 1e12;

function byte(v: number): number {
  return Math.max(0, Math.min(255, Math.round(v * 255)));
}
