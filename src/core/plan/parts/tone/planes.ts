import { labFromXyz, xyzFromSrgb } from '../../../colour/index.ts';
import { curveAt, screener, toneForesight, type ToneCurve } from '../../../halftone/index.ts';
import { layerCodes, type Codes, type RgbPicture } from '../../../print/index.ts';
import type { Region } from '../../../form/index.ts';
import type { Memory } from '../../memory.ts';
import type { PlannedTones } from './models.ts';
import type { ToneLayer, ToneScreen } from './screens.ts';

/** Half a tone all over, until a picture is given. */
const without = 0.5;

export interface ToneTask {
  readonly layer: ToneLayer;
  readonly bit: number;
  /** Where its cut lets ink through. */
  readonly prints: Region;
  readonly screen: ToneScreen;
  readonly picture: RgbPicture | null;
}

/** What each film covers on the codes' pixels, by layer. */
export function tonePlanes(codes: Codes, tasks: readonly ToneTask[], tones: PlannedTones | null, memory: Memory): Map<string, Uint8Array> {
  const size = { width: codes.width, height: codes.height, mmPerPx: codes.mmPerPx };
  return new Map(
    tasks.map(({ layer, prints, picture }) => {
      const levels = [...levelsOf(layer, tones)];
      return [
        layer.id,
        memory.part(`tone plane ${layer.id}`, { size, prints, picture, levels, flat: layer.tone.share ?? without }, makePlane, 2),
      ];
    }),
  );
}

interface PlaneReads {
  readonly size: Pick<Codes, 'width' | 'height' | 'mmPerPx'>;
  readonly prints: Region;
  readonly picture: RgbPicture | null;
  /** 256 levels of grey → what the film covers, 0..255. */
  readonly levels: readonly number[];
  readonly flat: number;
}

function makePlane({ size, prints, picture, levels, flat }: PlaneReads): Uint8Array {
  const inside = layerCodes([{ bit: 0, prints }], { ...size, originXMm: 0, originYMm: 0 }).data;
  const plane = new Uint8Array(inside.length);
  if (!picture) plane.fill(Math.round(flat * 255));
  else greyAt(picture, size.width, size.height, plane, levels);
  for (let i = 0; i < plane.length; i++) if (inside[i] === 0) plane[i] = 0;
  return plane;
}

/** A picture stretched over the image: means of the pixels under each of ours, or what lies between them where it has fewer. */
function greyAt(picture: RgbPicture, width: number, height: number, out: Uint8Array, levels: readonly number[]): void {
  const { rgb } = picture;
  const grey = (x: number, y: number): number => {
    const i = (y * picture.width + x) * 3;
    return levels[(rgb[i] * 54 + rgb[i + 1] * 183 + rgb[i + 2] * 19 + 128) >> 8];
  };
  const sx = picture.width / width,
    sy = picture.height / height;
  const wide = Math.max(1, sx),
    high = Math.max(1, sy);
  for (let y = 0; y < height; y++) {
    const cy = (y + 0.5) * sy;
    const y0 = Math.max(0, Math.round(cy - high / 2)),
      y1 = Math.min(picture.height, Math.max(y0 + 1, Math.round(cy + high / 2)));
    for (let x = 0; x < width; x++) {
      const cx = (x + 0.5) * sx;
      let sum = 0;
      if (sx >= 1 && sy >= 1) {
        const x0 = Math.max(0, Math.round(cx - wide / 2)),
          x1 = Math.min(picture.width, Math.max(x0 + 1, Math.round(cx + wide / 2)));
        for (let v = y0; v < y1; v++) for (let u = x0; u < x1; u++) sum += grey(u, v);
        sum /= (y1 - y0) * (x1 - x0);
      } else {
        const fx = Math.min(picture.width - 1, Math.max(0, cx - 0.5)),
          fy = Math.min(picture.height - 1, Math.max(0, cy - 0.5));
        const u = Math.floor(fx),
          v = Math.floor(fy);
        const u1 = Math.min(picture.width - 1, u + 1),
          v1 = Math.min(picture.height - 1, v + 1);
        const tx = fx - u,
          ty = fy - v;
        sum = (grey(u, v) * (1 - tx) + grey(u1, v) * tx) * (1 - ty) + (grey(u, v1) * (1 - tx) + grey(u1, v1) * tx) * ty;
      }
      out[y * width + x] = Math.round(sum);
    }
  }
}

/** What the film covers for each level of grey. A picture that says how light the print should be goes through the ink's own curve backwards. */
export function levelsOf(layer: ToneLayer, tones: PlannedTones | null): Uint8Array {
  const at = tones?.layers.indexOf(layer.id) ?? -1;
  if (layer.tone.reads === 'coverage' || !tones || at < 0) return Uint8Array.from({ length: 256 }, (_, g) => 255 - g);
  const { lab } = toneForesight(tones.model);
  const light = Float64Array.from({ length: 256 }, (_, c) => lab(tones.layers.map((__, i) => (i === at ? c / 255 : 0)))[0]);
  const [paper, solid] = [light[0], light[255]];
  return Uint8Array.from({ length: 256 }, (_, g) => {
    const wanted = solid + ((paper - solid) * labFromXyz(xyzFromSrgb([g / 255, g / 255, g / 255]))[0]) / 100;
    let best = 0;
    for (let c = 1; c < 256; c++) if (Math.abs(light[c] - wanted) < Math.abs(light[best] - wanted)) best = c;
    return best;
  });
}

/** Codes with the dots of every run of tone as they come to lie on the paper, at the proof's own density. */
export function withDots(
  codes: Codes,
  tasks: readonly ToneTask[],
  planes: ReadonlyMap<string, Uint8Array>,
  tones: PlannedTones | null,
  memory: Memory,
): Codes {
  if (tasks.length === 0) return codes;
  const dots = tasks.map(({ layer, bit, screen }) => ({
    bit,
    screen,
    plane: planes.get(layer.id)!,
    printed: [...onPaper(tones?.model.curves[tones.layers.indexOf(layer.id)])],
  }));
  return memory.part('dots', { codes, dots }, drawDots, 2);
}

/** 256 levels on the film → on the paper. */
export function onPaper(curve: ToneCurve | undefined): Uint8Array {
  return Uint8Array.from({ length: 256 }, (_, c) => (curve ? Math.round(255 * curveAt(curve, c / 255)) : c));
}

interface DotReads {
  readonly codes: Codes;
  readonly dots: readonly {
    readonly bit: number;
    readonly screen: ToneScreen;
    readonly plane: Uint8Array;
    readonly printed: readonly number[];
  }[];
}

function drawDots({ codes, dots }: DotReads): Codes {
  const data = Uint8Array.from(codes.data);
  const { width, height } = codes;
  const row = new Uint8Array(width),
    out = new Uint8Array(width);
  for (const { bit, screen, plane, printed } of dots) {
    const draw = screener({ ...screen, pixelsPerCm: 10 / codes.mmPerPx });
    for (let y = 0; y < height; y++) {
      const from = y * width;
      for (let x = 0; x < width; x++) row[x] = printed[plane[from + x]];
      draw.row(y, row, out);
      for (let x = 0; x < width; x++) data[from + x] |= out[x] << bit;
    }
  }
  return { ...codes, data };
}

/** Tone pictures that the job names and the caller decoded. */
export function pictureOf(layer: ToneLayer, pictures: ReadonlyMap<string, RgbPicture> | undefined): RgbPicture | null {
  return layer.tone.picture === undefined ? null : (pictures?.get(layer.tone.picture) ?? null);
}

/** What a film covers, and what comes to lie on the paper, over the whole image. */
export function meansOf(plane: Uint8Array, curve: ToneCurve | undefined): { readonly meanOnFilm: number; readonly meanOnPaper: number } {
  const counts = new Float64Array(256);
  for (let i = 0; i < plane.length; i++) counts[plane[i]]++;
  const printed = onPaper(curve);
  const mean = (of: (c: number) => number): number => counts.reduce((sum, n, c) => sum + n * of(c), 0) / plane.length / 255;
  return { meanOnFilm: mean((c) => c), meanOnPaper: mean((c) => printed[c]) };
}
