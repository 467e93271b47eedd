import * as lcms from './lcms/lcms.js';
import { name as asName, say, sentences, type Saying } from '../../words/say.ts';
import { problem, type Problem } from '../problem.ts';
import { fileAt } from './check/refuse.ts';
import type { Pixels } from './types.ts';

let engine: lcms.Lcms | undefined;
let compiled: WebAssembly.Module | undefined;

/** Hands in the compiled colour engine; see `preparePictures`. */
export async function prepareProfiles(module: WebAssembly.Module): Promise<void> {
  compiled = module;
  engine = await lcms.instantiate({
    instantiateWasm(imports, done) {
      const instance = new WebAssembly.Instance(module, imports);
      done(instance);
      return instance.exports;
    },
  });
}

export interface Profiled {
  readonly pixels: Pixels;
  readonly profile?: string;
  readonly problems: readonly Problem[];
}

function asSrgb(rgb: Uint8Array | Uint16Array): Pixels {
  return rgb instanceof Uint16Array ? { kind: 'srgb16', data: rgb } : { kind: 'srgb8', data: rgb };
}

/**
 * Pixels with the file's profile (any RGB or grey profile, by Little CMS) → XYZ under D50, relative to white; or plain sRGB
 * where there is no profile or it is sRGB. Where a profile can't be used, a warning says so and the picture is taken as sRGB.
 */
export async function honourProfile(rgb: Uint8Array | Uint16Array, profile: Uint8Array | undefined, file: string): Promise<Profiled> {
  try {
    return transformed(rgb, profile, file);
  } catch {
    // The engine fell over a damaged profile, and its memory is in no state that may be relied on: the next picture has a new one.
    engine = undefined;
    if (compiled) await prepareProfiles(compiled);
    return asSrgbInstead(rgb, file, say('image.profileDamaged'));
  }
}

function asSrgbInstead(rgb: Uint8Array | Uint16Array, file: string, why: Saying): Profiled {
  return {
    pixels: asSrgb(rgb),
    problems: [problem('warning', 'profile-unread', fileAt(file), sentences(why, say('image.takenAsSrgb')), say('image.convertToSrgb'))],
  };
}

function transformed(rgb: Uint8Array | Uint16Array, profile: Uint8Array | undefined, file: string): Profiled {
  if (!profile) return { pixels: asSrgb(rgb), problems: [] };
  const unread = (why: Saying): Profiled => asSrgbInstead(rgb, file, why);
  if (!engine) return unread(say('image.profilesNotLoaded'));
  const source = engine.cmsOpenProfileFromMem(profile, profile.length);
  if (!source) return unread(say('image.profileDamaged'));
  const space = engine.cmsGetColorSpaceASCII(source);
  const name = engine.cmsGetProfileInfoASCII(source, lcms.cmsInfoDescription, 'en', 'US').replace(/\0+$/, '');
  const target = engine.cmsCreateXYZProfile();
  try {
    if (space !== 'RGB' && space !== 'GRAY')
      return unread(space ? say('image.profileNotRgb', { space: asName(space) }) : say('image.profileUnknown'));
    if (/sRGB/i.test(name) && space === 'RGB') return { pixels: asSrgb(rgb), problems: [] };
    const wide = rgb instanceof Uint16Array;
    const grey = space === 'GRAY';
    const format = grey ? (wide ? lcms.TYPE_GRAY_16 : lcms.TYPE_GRAY_8) : wide ? lcms.TYPE_RGB_16 : lcms.TYPE_RGB_8;
    const transform = engine.cmsCreateTransform(source, format, target, lcms.TYPE_XYZ_16, lcms.INTENT_RELATIVE_COLORIMETRIC, 0);
    if (!transform) return unread(say('image.profileUseless'));
    const n = rgb.length / 3;
    const data = new Uint16Array(n * 3);
    // In strips, so that the engine's memory stays small.
    const strip = 1 << 18;
    for (let from = 0; from < n; from += strip) {
      const count = Math.min(strip, n - from);
      const part = grey ? everyThird(rgb, from, count) : rgb.subarray(from * 3, (from + count) * 3);
      data.set(engine.cmsDoTransform(transform, part, count).subarray(0, count * 3), from * 3);
    }
    engine.cmsDeleteTransform(transform);
    return { pixels: { kind: 'xyz16', data }, profile: name, problems: [] };
  } finally {
    engine.cmsCloseProfile(source);
    engine.cmsCloseProfile(target);
  }
}

function everyThird(rgb: Uint8Array | Uint16Array, from: number, count: number): Uint8Array | Uint16Array {
  const out = rgb instanceof Uint16Array ? new Uint16Array(count) : new Uint8Array(count);
  for (let i = 0; i < count; i++) out[i] = rgb[(from + i) * 3];
  return out;
}
