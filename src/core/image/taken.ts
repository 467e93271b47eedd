import { jpegSegments } from './check/head.ts';
import { asciiAt } from './check/bytes.ts';
import { directoriesOf, directoryWithin, isTiff, orientationOf } from './tiff/tags.ts';

/** What a photograph says of how it was taken: as much as is needed to know its lens again. */
export interface TakenWith {
  /** Make and model. */
  readonly camera?: string;
  /** Of the lens, as it was zoomed. */
  readonly focalMm?: number;
  /** 1..8: how the camera was held (CIPA DC-008, tag 0112). */
  readonly orientation: number;
}

/** Tags of CIPA DC-008: make, model, where the camera's own directory lies, and in it the focal length. */
const make = 0x010f,
  model = 0x0110,
  ownDirectory = 0x8769,
  focalLength = 0x920a;
const longestName = 120;

/** Read from the file itself; nothing that can't be read is guessed. */
export function takenWith(bytes: Uint8Array): TakenWith {
  const exif = exifOf(bytes);
  if (exif)
    for (const directory of directoriesOf(exif)) {
      const own = directory.numbers(ownDirectory, 1);
      const focal = typeof own === 'object' ? directoryWithin(exif, own[0])?.numbers(focalLength, 1) : undefined;
      const maker = textIn(directory.bytes(make)),
        name = textIn(directory.bytes(model));
      // Many write the make into the model as well.
      const camera = (name.toLowerCase().startsWith(maker.toLowerCase()) ? name : `${maker} ${name}`).trim().slice(0, longestName);
      const focalMm = typeof focal === 'object' && focal[0] > 0 && focal[0] < 5000 ? { focalMm: Math.round(focal[0] * 100) / 100 } : {};
      return { orientation: orientationOf(directory), ...(camera ? { camera, ...focalMm } : {}) };
    }
  return { orientation: 1 };
}

function exifOf(bytes: Uint8Array): Uint8Array | undefined {
  if (isTiff(bytes)) return bytes;
  if (bytes[0] === 0xff && bytes[1] === 0xd8) {
    for (const { marker, from, to } of jpegSegments(bytes))
      if (marker === 0xe1 && asciiAt(bytes, from) === 'Exif') return bytes.subarray(from + 6, to);
    return undefined;
  }
  if (asciiAt(bytes, 0) !== 'RIFF' || asciiAt(bytes, 8) !== 'WEBP') return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true);
    const content = bytes.subarray(at + 8, at + 8 + size);
    if (asciiAt(bytes, at) === 'EXIF') return asciiAt(content, 0) === 'Exif' ? content.subarray(6) : content;
    at += 8 + size + (size & 1);
  }
  return undefined;
}

/** Letters up to the first zero, spaces around them left out. */
function textIn(bytes: Uint8Array | undefined): string {
  const end = bytes?.indexOf(0) ?? -1;
  return [...(bytes ?? [])]
    .slice(0, end < 0 ? undefined : end)
    .map((code) => (code >= 32 && code < 127 ? String.fromCharCode(code) : ' '))
    .join('')
    .replace(/ +/g, ' ')
    .trim();
}
