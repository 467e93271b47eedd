import { pow } from '../../../numeric/index.ts';
import { xyzFromSrgb } from '../../../colour/index.ts';
import type { JobBundle } from '../../../job/index.ts';
import type { RgbPicture } from '../../../print/index.ts';
import { ProblemError, type Problem } from '../../../problem.ts';
import { readPicture, type Picture } from '../../../separate/index.ts';

/** A Job whose pictures are decoded: what `plan` takes. Decoding is the one step that has to wait for something. */
export interface ReadyBundle extends JobBundle {
  readonly pictures: ReadonlyMap<string, RgbPicture>;
  readonly pictureProblems: readonly Problem[];
}

const decoded = new WeakMap<Uint8Array, Promise<{ picture: RgbPicture | null; problems: readonly Problem[] }>>();

/** Decodes the pictures that the plan looks at (sheets that carry a print, tones). A picture is decoded once. `read`: where it is done elsewhere, in a thread. */
export async function readyBundle(bundle: JobBundle, read: typeof readPicture = readPicture): Promise<ReadyBundle> {
  const pictures = new Map<string, RgbPicture>();
  const pictureProblems: Problem[] = [];
  const paths = [...bundle.job.papers.map((p) => p.printed?.picture), ...bundle.job.layers.map((l) => l.tone?.picture)];
  for (const path of new Set(paths)) {
    const bytes = path === undefined ? undefined : bundle.attachments.get(path);
    if (path === undefined || !bytes) continue;
    let work = decoded.get(bytes);
    if (!work) decoded.set(bytes, (work = decodePicture(bytes, path, read)));
    const { picture, problems } = await work;
    if (picture) pictures.set(path, picture);
    pictureProblems.push(...problems);
  }
  return { ...bundle, pictures, pictureProblems };
}

async function decodePicture(
  bytes: Uint8Array,
  path: string,
  read: typeof readPicture,
): Promise<{ picture: RgbPicture | null; problems: readonly Problem[] }> {
  try {
    const picture = await read(bytes, path);
    return { picture: toRgb(picture), problems: picture.problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { picture: null, problems: error.problems };
  }
}

/** Any picture as eight-bit sRGB. */
export function toRgb({ width, height, pixels }: Picture): RgbPicture {
  if (pixels.kind === 'srgb8') return { width, height, rgb: pixels.data };
  const rgb = new Uint8Array(pixels.data.length);
  if (pixels.kind === 'srgb16') for (let i = 0; i < rgb.length; i++) rgb[i] = pixels.data[i] >> 8;
  else xyzToSrgb(pixels.data, rgb);
  return { width, height, rgb };
}

/** XYZ under D50 (32768 = 1) → sRGB bytes, clipped. Matrix from the primaries, curve of IEC 61966-2-1 by table. */
function xyzToSrgb(xyz: Uint16Array, rgb: Uint8Array): void {
  const m = inverse([xyzFromSrgb([1, 0, 0]), xyzFromSrgb([0, 1, 0]), xyzFromSrgb([0, 0, 1])]);
  const curve = Uint8Array.from({ length: 4097 }, (_, i) =>
    Math.round(255 * (i / 4096 <= 0.0031308 ? (12.92 * i) / 4096 : 1.055 * pow(i / 4096, 1 / 2.4) - 0.055)),
  );
  for (let i = 0; i < xyz.length; i += 3) {
    for (let c = 0; c < 3; c++) {
      const linear = (m[c][0] * xyz[i] + m[c][1] * xyz[i + 1] + m[c][2] * xyz[i + 2]) / 32768;
      rgb[i + c] = curve[Math.round(Math.min(1, Math.max(0, linear)) * 4096)];
    }
  }
}

/** Rows: linear R, G, B from X, Y, Z; `columns` are the XYZ of the three primaries. */
function inverse(columns: readonly (readonly [number, number, number])[]): number[][] {
  const [[a, d, g], [b, e, h], [c, f, i]] = columns;
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [(e * i - f * h) / det, (c * h - b * i) / det, (b * f - c * e) / det],
    [(f * g - d * i) / det, (a * i - c * g) / det, (c * d - a * f) / det],
    [(d * h - e * g) / det, (b * g - a * h) / det, (a * e - b * d) / det],
  ];
}
