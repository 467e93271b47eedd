import { problem, type Problem } from '../problem.ts';
import { readHead } from './head.ts';
import { upright } from './orient.ts';
import { prepareDecoders, readJpeg, readWebp } from './packed.ts';
import { readPng } from './png.ts';
import { honourProfile, prepareProfiles } from './profile.ts';
import { readTiff } from './tiff.ts';
import type { Decoded, Picture } from './types.ts';

export type { Picture, Pixels } from './types.ts';
export { mostMegapixels } from './head.ts';
export { cropOf, heightOfCrop, tidyCrop, tidyShare } from './crop.ts';
export { scaledLab, type Crop } from './scale.ts';
export { pictureRgb } from './screen.ts';

/** Compiled modules of the readers: `@jsquash/jpeg` (mozjpeg_dec.wasm), `@jsquash/webp` (webp_dec.wasm), `lcms-wasm` (lcms.wasm). */
export interface PictureModules {
  readonly jpeg: WebAssembly.Module;
  readonly webp: WebAssembly.Module;
  readonly profiles: WebAssembly.Module;
}

/** Once, before the first `readPicture`. The caller loads and compiles: from node_modules in Node, its own assets in the browser. */
export async function preparePictures(modules: PictureModules): Promise<void> {
  await prepareDecoders(modules.jpeg, modules.webp);
  await prepareProfiles(modules.profiles);
}

/**
 * Reads a JPEG, PNG, WebP or TIFF: upright, profile honoured, transparency kept as coverage.
 * @param place file name for messages
 * @throws ProblemError when it is no picture, damaged, CMYK or larger than 200 megapixels (told before decoding)
 */
export async function readPicture(bytes: Uint8Array, place: string): Promise<Picture> {
  const head = readHead(bytes, place);
  const decoded = await decodeAs(head.format, bytes, place);
  const { pixels, profile, problems } = honourProfile(decoded.rgb, decoded.profile, place);
  const turned = upright(decoded.width, decoded.height, pixels, decoded.coverage, decoded.orientation);
  return { ...turned, format: head.format, profile, problems: [...problems, ...seeThrough(decoded, place)] };
}

function decodeAs(format: Picture['format'], bytes: Uint8Array, place: string): Decoded | Promise<Decoded> {
  if (format === 'JPEG') return readJpeg(bytes, place);
  if (format === 'PNG') return readPng(bytes, place);
  return format === 'WebP' ? readWebp(bytes, place) : readTiff(bytes, place);
}

function seeThrough(decoded: Decoded, place: string): Problem[] {
  if (!decoded.coverage?.some((v) => v < 255)) return [];
  return [
    problem(
      'note',
      'picture-see-through',
      place,
      'Parts of the picture are see-through; they stay bare paper.',
      'Fill them first if something should print there.',
    ),
  ];
}
