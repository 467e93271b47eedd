import { codeOfLight, lightFromXyz, srgbCodes, wideCodes, type RgbSpace } from '../colour/index.ts';
import { scaledLinear, scaledSrgb, type Crop } from './scale.ts';
import type { Picture } from './types.ts';

/** A picture's colours as numbers that a table can be looked up by. */
export interface Codes {
  readonly space: RgbSpace;
  /** 3 a pixel: bytes, or 0..65535 where the file's own profile had finer ones. */
  readonly rgb: Uint8Array | Uint16Array;
  /** Share of the picture that sRGB can't say. */
  readonly beyondSrgb: number;
}

/** Light that a colour may lie beyond sRGB and still count as within: what profiles lose in rounding. */
const slack = 0.001;

/**
 * A picture on a raster, as `scaledSrgb` has it, with nothing drawn to sRGB's edge: one that came through a profile of its own and goes
 * beyond sRGB is held in a space that has room for whatever can be printed.
 */
export function scaledCodes(picture: Picture, crop: Crop, width: number, height: number): Codes {
  if (picture.pixels.kind !== 'xyz16') return { space: srgbCodes, rgb: scaledSrgb(picture, crop, width, height), beyondSrgb: 0 };
  const xyz = scaledLinear(picture, crop, width, height);
  const beyond = countBeyond(xyz);
  const space = beyond > 0 ? wideCodes : srgbCodes;
  const [[rx, ry, rz], [gx, gy, gz], [bx, by, bz]] = lightFromXyz[space.name];
  const codes = Uint16Array.from({ length: 65536 }, (_, i) => Math.round(65535 * codeOfLight(i / 65535)));
  const code = (light: number): number => codes[Math.round(65535 * Math.min(1, Math.max(0, light)))];
  const rgb = new Uint16Array(xyz.length);
  for (let i = 0; i < xyz.length; i += 3) {
    const x = xyz[i],
      y = xyz[i + 1],
      z = xyz[i + 2];
    rgb[i] = code(rx * x + ry * y + rz * z);
    rgb[i + 1] = code(gx * x + gy * y + gz * z);
    rgb[i + 2] = code(bx * x + by * y + bz * z);
  }
  return { space, rgb, beyondSrgb: beyond / (width * height) };
}

function countBeyond(xyz: Float32Array): number {
  const m = lightFromXyz.sRGB;
  let beyond = 0;
  for (let i = 0; i < xyz.length; i += 3) {
    for (let c = 0; c < 3; c++) {
      const light = m[c][0] * xyz[i] + m[c][1] * xyz[i + 1] + m[c][2] * xyz[i + 2];
      if (light < -slack || light > 1 + slack) {
        beyond++;
        break;
      }
    }
  }
  return beyond;
}
