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
  const { rgb, width: w, height: h } = picture;
  const table = Uint8Array.from(levels);
  const grey = new Uint8Array(w * h);
  for (let i = 0, at = 0; i < grey.length; i++, at += 3) grey[i] = table[(rgb[at] * 54 + rgb[at + 1] * 183 + rgb[at + 2] * 19 + 128) >> 8];
  const across = spanOf(w, width),
    down = spanOf(h, height);
  const finer = w >= width && h >= height;
  for (let y = 0, o = 0; y < height; y++) {
    const top = down.from[y] * w,
      bottom = (finer ? down.to[y] : Math.min(h - 1, down.from[y] + 1)) * w;
    const fy = down.part[y];
    for (let x = 0; x < width; x++, o++) {
      const left = across.from[x];
      if (finer) {
        const right = across.to[x];
        let sum = 0;
        for (let row = top; row < bottom; row += w) for (let i = row + left; i < row + right; i++) sum += grey[i];
        out[o] = Math.round((sum * w) / ((bottom - top) * (right - left)));
      } else {
        const right = Math.min(w - 1, left + 1);
        const fx = across.part[x];
        const a = grey[top + left] + (grey[top + right] - grey[top + left]) * fx,
          b = grey[bottom + left] + (grey[bottom + right] - grey[bottom + left]) * fx;
        out[o] = a + (b - a) * fy + 0.5;
      }
    }
  }
}

/** Where each of `to` pixels lies on `from` of them: those under it where there are more, else the one before its middle and how far past it. */
function spanOf(from: number, to: number): { readonly from: Int32Array; readonly to: Int32Array; readonly part: Float64Array } {
  const step = from / to;
  const span = { from: new Int32Array(to), to: new Int32Array(to), part: new Float64Array(to) };
  for (let i = 0; i < to; i++) {
    if (step >= 1) {
      span.from[i] = Math.min(from - 1, Math.round(i * step));
      span.to[i] = Math.min(from, Math.max(span.from[i] + 1, Math.round((i + 1) * step)));
    }
    const at = Math.min(from - 1, Math.max(0, (i + 0.5) * step - 0.5));
    if (step < 1) span.from[i] = Math.floor(at);
    span.part[i] = step < 1 ? at - Math.floor(at) : 0;
  }
  return span;
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
