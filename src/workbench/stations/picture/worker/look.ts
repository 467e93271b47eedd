import { pictureRgb, printing, runNames, scaledSrgb, veilOf, type Picture, type Separation } from '../../../../core/separate/index.ts';
import type { Raster, ReadPicture, ShownRun, ShownSeparation } from './protocol.ts';

/** Longest side of the picture as shown before anything is made of it. */
const longestShown = 1100;

const wordOf = (r: number, g: number, b: number): number => (0xff000000 | (b << 16) | (g << 8) | r) >>> 0;

function rgbRaster(rgb: Uint8Array, width: number, height: number): Raster {
  const words = new Uint32Array(width * height);
  for (let i = 0, k = 0; i < words.length; i++, k += 3) words[i] = wordOf(rgb[k], rgb[k + 1], rgb[k + 2]);
  return { width, height, words };
}

export function codesRaster(codes: Uint8Array, rgb: Uint8Array, width: number, height: number): Raster {
  const palette = Uint32Array.from({ length: rgb.length / 3 }, (_, c) => wordOf(rgb[c * 3], rgb[c * 3 + 1], rgb[c * 3 + 2]));
  const words = new Uint32Array(codes.length);
  for (let i = 0; i < words.length; i++) words[i] = palette[codes[i]];
  return { width, height, words };
}

export function showPicture(picture: Picture): ReadPicture {
  const k = Math.min(1, longestShown / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * k)),
    height = Math.max(1, Math.round(picture.height * k));
  return {
    width: picture.width,
    height: picture.height,
    format: picture.format,
    profile: picture.profile ?? null,
    shown: rgbRaster(scaledSrgb(picture, { x: 0, y: 0, width: 1, height: 1 }, width, height), width, height),
    problems: picture.problems,
  };
}

/** A veil over what matters less by itself: the darker, the less. Looks for faces, which takes its time. */
export function showVeil(picture: Picture): Raster {
  const { width, height, weight } = veilOf(picture);
  return {
    width,
    height,
    words: Uint32Array.from(weight, (v) => (Math.round(190 * Math.max(0, Math.min(1, 1 - v / 2))) << 24) >>> 0),
  };
}

const hex = (rgb: Uint8Array, code: number): string => `#${[0, 1, 2].map((c) => rgb[code * 3 + c].toString(16).padStart(2, '0')).join('')}`;

export function showSeparation(s: Separation, nameOf: (inkId: string) => string): ShownSeparation {
  const { width, height } = s;
  const names = runNames(s);
  const runs = printing(s.layers).map(
    (layer, i): ShownRun => ({
      run: layer.run,
      says: names[i],
      side: layer.side,
      parts: layer.parts.map(({ id, share }) => ({ id, name: nameOf(id), share })),
      srgb: hex(s.rgb, 1 << layer.bit),
      prints: layer.stencil.prints,
      metres: layer.stencil.knife.metres,
      pieces: layer.stencil.knife.pieces,
      minutes: layer.stencil.knife.minutes,
      bridges: layer.stencil.bridges.length,
    }),
  );
  const { baseline } = s;
  return {
    figures: s.figures,
    curve: s.curve,
    outOfReachShare: s.outOfReachShare,
    asDrawing: s.asDrawing,
    detailLostDeltaE: s.detailLostDeltaE,
    lost: s.lost,
    stoppedEarly: s.stoppedEarly,
    problems: s.problems,
    picture: rgbRaster(pictureRgb(s.target), width, height),
    print: codesRaster(s.codes, s.rgb, width, height),
    flat: codesRaster(baseline.codes, baseline.rgb, baseline.width, baseline.height),
    flatFigures: { inRegister: baseline.inRegister, atSigma: baseline.atSigma, metres: baseline.metres, structure: baseline.structure },
    // Opaque inks: the code of one alone has its colour.
    flatInks: Array.from({ length: baseline.inksLab.length / 3 }, (_, i) => hex(baseline.rgb, 1 << i)),
    outOfReach: s.outOfReach,
    detailLost: s.detailLost,
    runs,
    priceMm: s.setup.priceMm,
  };
}
