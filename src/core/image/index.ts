import { name as asName, say } from '../../words/say.ts';
import { fail, problem, type Problem } from '../problem.ts';
import { readHead } from './check/head.ts';
import { upright } from './orient.ts';
import { prepareDecoders, readJpeg, readWebp } from './tiff/packed.ts';
import { readPng } from './png.ts';
import { honourProfile, prepareProfiles } from './profile.ts';
import { fileAt, resave } from './check/refuse.ts';
import { readTiff } from './tiff/tiff.ts';
import type { Decoded, Picture } from './types.ts';

export type { Picture, Pixels } from './types.ts';
export type { ImageMm, SizePx } from './crop.ts';
export { mostMegapixels } from './check/head.ts';
export { cropOf, heightOfCrop, tidyCrop, tidyShare } from './crop.ts';
export { scaledCodes, type Codes } from './codes.ts';
export { scaledLab, scaledSrgb, type Crop } from './scale.ts';
export { pictureRgb } from './screen.ts';
export { findFaces, prepareFaces } from './faces/find-faces.ts';
export type { Face, FacePart } from './faces/landmarks.ts';
export { takenWith, type TakenWith } from './taken.ts';

/** Compiled modules of the readers: `@jsquash/jpeg` (mozjpeg_dec.wasm), `@jsquash/webp` (webp_dec.wasm), and `./lcms/lcms.wasm`. */
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
 * @param file its name, for messages
 * @throws ProblemError when it is no picture, damaged, CMYK, moving, or larger than 100 megapixels (refused before decoding)
 */
export async function readPicture(bytes: Uint8Array, file: string): Promise<Picture> {
  const head = readHead(bytes, file);
  const decoded = await decodeAs(head.format, bytes, file);
  if (decoded.width !== head.width || decoded.height !== head.height)
    fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName(head.format) }), resave);
  const { pixels, profile, problems } = await honourProfile(decoded.rgb, decoded.profile, file);
  const turned = upright(decoded.width, decoded.height, pixels, decoded.coverage, decoded.orientation);
  return { ...turned, format: head.format, profile, problems: [...problems, ...seeThrough(decoded, file), ...moving(decoded, file)] };
}

function decodeAs(format: Picture['format'], bytes: Uint8Array, file: string): Decoded | Promise<Decoded> {
  if (format === 'JPEG') return readJpeg(bytes, file);
  if (format === 'PNG') return readPng(bytes, file);
  return format === 'WebP' ? readWebp(bytes, file) : readTiff(bytes, file);
}

function seeThrough(decoded: Decoded, file: string): Problem[] {
  if (!decoded.coverage?.some((v) => v < 255)) return [];
  return [problem('note', 'picture-see-through', fileAt(file), say('image.seeThrough'), say('image.fillFirst'))];
}

function moving(decoded: Decoded, file: string): Problem[] {
  return decoded.animated
    ? [problem('note', 'picture-animated', fileAt(file), say('image.animatedFirst'), say('image.saveOnePicture'))]
    : [];
}
