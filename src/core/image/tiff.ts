import UTIF from 'utif2';
import { say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { fileAt, resave } from './refuse.ts';
import type { Decoded, Head } from './types.ts';

type Tags = Record<string, number[] | undefined>;

function standAlone(bytes: Uint8Array): ArrayBuffer {
  return bytes.slice().buffer;
}

function isTiff(b: Uint8Array): boolean {
  return (b[0] === 0x49 && b[1] === 0x49 && b[2] === 42 && b[3] === 0) || (b[0] === 0x4d && b[1] === 0x4d && b[2] === 0 && b[3] === 42);
}

/** Tags of the first image that has a size (TIFF 6.0: 256 width, 257 height). */
function imageOf(bytes: Uint8Array): { readonly image: UTIF.IFD; readonly tags: Tags; readonly buffer: ArrayBuffer } | undefined {
  const buffer = standAlone(bytes);
  try {
    const image = UTIF.decode(buffer).find((ifd) => (ifd as unknown as Tags).t256 && (ifd as unknown as Tags).t257);
    return image ? { image, tags: image as unknown as Tags, buffer } : undefined;
  } catch {
    return undefined;
  }
}

export function tiffHead(bytes: Uint8Array): Head | undefined {
  if (!isTiff(bytes)) return undefined;
  const found = imageOf(bytes);
  return { format: 'TIFF', width: found?.tags.t256?.[0] ?? 0, height: found?.tags.t257?.[0] ?? 0 };
}

/** Orientation in a block of Exif data, which is a small TIFF; 1 when it has none. */
export function orientationInExif(exif: Uint8Array): number {
  try {
    const value = (UTIF.decode(standAlone(exif))[0] as unknown as Tags).t274?.[0] ?? 1;
    return value >= 1 && value <= 8 ? value : 1;
  } catch {
    return 1;
  }
}

export function readTiff(bytes: Uint8Array, file: string): Decoded {
  const found = imageOf(bytes);
  if (!found) fail('picture-damaged', fileAt(file), say('image.tiffWithoutImage'), resave);
  const { image, tags, buffer } = found;
  const photometric = tags.t262?.[0] ?? 1;
  // TIFF 6.0 section 16: 5 = separated (CMYK); 8 = CIE Lab.
  if (photometric === 5) {
    fail('picture-cmyk', fileAt(file), say('image.cmyk'), say('image.saveAsRgb'));
  }
  if (photometric > 6) fail('picture-kind', fileAt(file), say('image.tiffKind'), say('image.saveAsRgb'));
  try {
    UTIF.decodeImage(buffer, image);
  } catch {
    fail('picture-damaged', fileAt(file), say('image.tiffPacking'), say('image.saveUnpacked'));
  }
  const { width, height } = image;
  const bits = tags.t258?.[0] ?? 1,
    channels = tags.t277?.[0] ?? 1;
  const profile = tags.t34675 ? Uint8Array.from(tags.t34675) : undefined;
  const orientation = tags.t274?.[0] ?? 1;
  const n = width * height;
  if (bits === 16 && (photometric === 1 || photometric === 2) && image.data.length >= n * channels * 2) {
    // UTIF keeps 16-bit samples as bytes in the order of the file.
    const view = new DataView(image.data.buffer, image.data.byteOffset, image.data.byteLength);
    const little = (image as unknown as { readonly isLE?: boolean }).isLE ?? bytes[0] === 0x49;
    const rgb = new Uint16Array(n * 3);
    for (let i = 0; i < n; i++)
      for (let c = 0; c < 3; c++) rgb[i * 3 + c] = view.getUint16((i * channels + (channels >= 3 ? c : 0)) * 2, little);
    return { width, height, rgb, profile, orientation };
  }
  const rgba = UTIF.toRGBA8(image);
  const rgb = new Uint8Array(n * 3),
    coverage = new Uint8Array(n);
  let see = false;
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < 3; c++) rgb[i * 3 + c] = rgba[i * 4 + c];
    coverage[i] = rgba[i * 4 + 3];
    see ||= coverage[i] < 255;
  }
  return { width, height, rgb, profile, orientation, ...(see && channels > 3 ? { coverage } : {}) };
}
