import { say } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { fileAt, resave } from '../check/refuse.ts';
import { directoriesOf, isTiff, orientationOf, type Directory } from './tags.ts';
import { samplesOf, type Layout } from './tiff-blocks.ts';
import type { Decoded, Head } from '../types.ts';

/** The first directory that holds a picture with a size (TIFF 6.0: 256 width, 257 height). */
function pictureIn(bytes: Uint8Array): { readonly directory: Directory; readonly width: number; readonly height: number } | undefined {
  for (const directory of directoriesOf(bytes)) {
    const [width, height] = [256, 257].map((tag) => first(directory, tag));
    if (width && height) return { directory, width, height };
  }
  return undefined;
}

export function tiffHead(bytes: Uint8Array): Head | undefined {
  if (!isTiff(bytes)) return undefined;
  const found = pictureIn(bytes);
  return { format: 'TIFF', width: found?.width ?? 0, height: found?.height ?? 0 };
}

export function readTiff(bytes: Uint8Array, file: string): Decoded {
  const found = pictureIn(bytes);
  if (!found) fail('picture-damaged', fileAt(file), say('image.tiffWithoutImage'), resave);
  const { directory, width, height } = found;
  const layout = layoutOf(directory, width, height);
  const photometric = first(directory, 262) ?? 1;
  // TIFF 6.0 section 16: 5 = separated (CMYK); 8 = CIE Lab.
  if (photometric === 5) fail('picture-cmyk', fileAt(file), say('image.cmyk'), say('image.saveAsRgb'));
  if (!layout || !isRead(layout, photometric)) fail('picture-kind', fileAt(file), say('image.tiffKind'), say('image.saveAsRgb'));
  const samples = samplesOf(bytes, directory, layout);
  if (samples === 'packing') fail('picture-damaged', fileAt(file), say('image.tiffPacking'), say('image.saveUnpacked'));
  const profile = directory.bytes(34675);
  const shared = { width, height, orientation: orientationOf(directory), ...(profile ? { profile } : {}) };
  if (photometric === 3) {
    const palette = directory.numbers(320, 3 * 256);
    if (typeof palette !== 'object' || palette.length !== 3 << layout.bits)
      fail('picture-damaged', fileAt(file), say('image.tiffPacking'), say('image.saveUnpacked'));
    return { ...shared, rgb: coloured(samples, layout, palette) };
  }
  return { ...shared, ...inRgb(samples, layout, photometric === 0, directory) };
}

function first(directory: Directory, tag: number): number | undefined {
  const values = directory.numbers(tag, 1 << 20);
  return typeof values === 'object' ? values[0] : undefined;
}

/** How the samples lie; undefined where a field that says it is damaged, or the samples differ in kind. */
function layoutOf(directory: Directory, width: number, height: number): Layout | undefined {
  const bits = directory.numbers(258, 16) ?? [1],
    channels = first(directory, 277) ?? 1,
    kind = directory.numbers(339, 16) ?? [1];
  if (bits === 'damaged' || kind === 'damaged' || channels < 1 || channels > 8) return undefined;
  if (bits.some((b) => b !== bits[0]) || kind.some((k) => k !== 1)) return undefined;
  return {
    width,
    height,
    bits: bits[0],
    channels,
    packing: first(directory, 259) ?? 1,
    predictor: first(directory, 317) ?? 1,
    apart: (first(directory, 284) ?? 1) === 2 && channels > 1,
    photometric: first(directory, 262) ?? 1,
  };
}

/** Grey and palettes of up to eight bits, grey and RGB of sixteen; colours as JPEG stores them only inside a JPEG. */
function isRead({ bits, channels, packing, apart }: Layout, photometric: number): boolean {
  if (apart) return false;
  if (photometric === 0 || photometric === 1) return [1, 2, 4, 8, 16].includes(bits) && (bits >= 8 || channels === 1);
  if (photometric === 2) return (bits === 8 || bits === 16) && channels >= 3;
  if (photometric === 3) return [1, 2, 4, 8].includes(bits) && (bits === 8 || channels === 1);
  return photometric === 6 && packing === 7 && bits === 8 && channels === 3;
}

/** A sample of a row; fewer than eight bits are packed from the high end. */
function sampleAt(row: Uint8Array, at: number, bits: number): number {
  if (bits === 8) return row[at];
  const perByte = 8 / bits;
  return (row[(at / perByte) | 0] >> (8 - bits * (1 + (at % perByte)))) & ((1 << bits) - 1);
}

function coloured(samples: Uint8Array, { width, height, bits, channels }: Layout, palette: readonly number[]): Uint8Array {
  const rgb = new Uint8Array(width * height * 3);
  const colours = 1 << bits,
    line = Math.ceil((width * channels * bits) / 8);
  for (let y = 0, i = 0; y < height; y++) {
    const row = samples.subarray(y * line, (y + 1) * line);
    for (let x = 0; x < width; x++, i += 3) {
      const entry = sampleAt(row, x * channels, bits);
      // Sixteen bits a colour, all red ones first (TIFF 6.0, section 5).
      for (let c = 0; c < 3; c++) rgb[i + c] = palette[c * colours + entry] >> 8;
    }
  }
  return rgb;
}

function inRgb(
  samples: Uint8Array,
  layout: Layout,
  whiteIsZero: boolean,
  directory: Directory,
): { rgb: Uint8Array | Uint16Array; coverage?: Uint8Array } {
  const { width, height, bits, channels } = layout;
  const colours = channels >= 3 && layout.photometric >= 2 ? 3 : 1;
  // 338: what further samples are; 1 and 2 say how far the picture covers.
  const [extra] = channels > colours ? ((directory.numbers(338, 16) as readonly number[] | undefined) ?? [0]) : [0];
  const coverage = extra === 1 || extra === 2 ? new Uint8Array(width * height) : undefined;
  const top = bits === 16 ? 65535 : 255;
  const rgb = bits === 16 ? new Uint16Array(width * height * 3) : new Uint8Array(width * height * 3);
  const stretch = bits < 8 ? 255 / ((1 << bits) - 1) : 1;
  const line = Math.ceil((width * channels * bits) / 8);
  for (let y = 0, i = 0; y < height; y++) {
    const row = samples.subarray(y * line, (y + 1) * line);
    const at = (k: number): number =>
      bits === 16 ? (directory.little ? row[2 * k] | (row[2 * k + 1] << 8) : (row[2 * k] << 8) | row[2 * k + 1]) : sampleAt(row, k, bits);
    for (let x = 0; x < width; x++, i++) {
      for (let c = 0; c < 3; c++) {
        const value = at(x * channels + (colours === 3 ? c : 0)) * stretch;
        rgb[i * 3 + c] = whiteIsZero ? top - value : value;
      }
      if (coverage) coverage[i] = bits === 16 ? at(x * channels + colours) >> 8 : at(x * channels + colours);
    }
  }
  return coverage?.some((v) => v < 255) ? { rgb, coverage } : { rgb };
}
