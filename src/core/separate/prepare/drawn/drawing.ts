import { broadened, type LineRules } from './broaden.ts';
import { dotsOf } from './dots.ts';
import { flatDrawing, type FlatDrawing } from './flat.ts';
import { isDrawn, isLike, type Raster } from './is-drawn.ts';
import { bordersOf, partsOf } from './parts.ts';
import { onBarePaper } from './paper.ts';

/** A picture that was drawn, as it is taken. */
export interface Drawing {
  /** The page with its paper made bare: what the print is compared with. */
  readonly page: Float32Array;
  /** Areas of one colour each, lines and dots as broad as they can be cut: what is aimed at. */
  readonly aim: Float32Array;
  readonly lines: DrawnLines;
}

/** Where lines and dots lie. */
export interface DrawnLines {
  /** Number of each pixel's colour. */
  readonly of: Uint8Array;
  readonly colours: number;
  /** For every pixel of a line the colour that it lies on, counted from 1; 0 elsewhere. */
  readonly lineOf: Uint8Array;
  /** Each line that hangs together, with the length of its outline. */
  readonly parts: readonly { readonly pixels: Int32Array; readonly outlinePx: number }[];
  /** Small closed marks, largest first: boxes in pixels. */
  readonly dots: readonly (readonly [left: number, top: number, right: number, bottom: number])[];
}

interface Known {
  readonly key: string;
  readonly drawing: Drawing | undefined;
}

/** It stays the same while only inks, runs or the knife's price change. */
const lastDrawings = new WeakMap<Float32Array, Known>();

/**
 * A drawing is taken as whoever cuts it takes it: paper is bare, colours are flat, and what is too thin for the knife is made broader.
 * @param white Lab of the paper that is printed on
 * @param said whether whoever asks says that it is a drawing
 * @returns nothing for a photograph
 */
export function drawingOf(raster: Raster, mmPerPx: number, white: readonly number[], rules: LineRules, said = false): Drawing | undefined {
  const key = [said, mmPerPx, ...white, ...Object.values(rules)].join(),
    known = lastDrawings.get(raster.lab);
  if (known?.key === key) return known.drawing;
  const drawing = said || isDrawn(raster) ? taken(raster, mmPerPx, white, rules, said) : undefined;
  lastDrawings.set(raster.lab, { key, drawing });
  return drawing;
}

function taken(raster: Raster, mmPerPx: number, white: readonly number[], rules: LineRules, said: boolean): Drawing | undefined {
  const page = onBarePaper(raster, white) ?? raster.lab,
    flat = flatDrawing({ ...raster, lab: page }, mmPerPx, white);
  if (!said && !isLike({ ...raster, lab: page }, labOf(flat), mmPerPx)) return undefined;
  const { of, colours, lineOf } = broadened(flat, rules),
    aim = labOf({ of, colours });
  const { width, height } = raster,
    parts = partsOf(of, width, height, lineOf).pixels.map((pixels) => ({
      pixels,
      // Along pixels' edges a line of any direction is 4/π times as long, on average.
      outlinePx: (Math.PI / 4) * bordersOf(pixels, of, width, height).reduce((sum, v) => sum + v, 0),
    }));
  return { page, aim, lines: { of, colours: colours.length / 3, lineOf, parts, dots: dotsOf(flat, mmPerPx) } };
}

function labOf({ of, colours }: Pick<FlatDrawing, 'of' | 'colours'>): Float32Array {
  const lab = new Float32Array(3 * of.length);
  for (let i = 0; i < of.length; i++) for (let c = 0; c < 3; c++) lab[i * 3 + c] = colours[of[i] * 3 + c];
  return lab;
}
