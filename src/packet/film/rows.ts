import { screener, type ScreenAsk } from '../../core/halftone/index.ts';
import type { Plan } from '../../core/plan/index.ts';
import type { Stamp } from './stamps.ts';
import { filmLayout, type FilmAsk, type FilmLayout, type ToneRun } from './layout.ts';

/** A film positive, row by row: nothing of its size is ever held. */
export interface Film {
  readonly layout: Pick<FilmLayout, 'width' | 'height' | 'pixelsPerMm'>;
  /** Bytes of a row, eight pixels each, the left one in the high bit; set where the film is black. */
  readonly lineBytes: number;
  /** As the dots come out on these pixels; null for grain. */
  readonly cell: { readonly rulingPerCm: number; readonly angleDeg: number } | null;
  /** Fills `line` with row `y`. */
  readonly row: (y: number, line: Uint8Array) => void;
}

export function filmOf(plan: Plan, layer: ToneRun, ask: FilmAsk): Film & { readonly layout: FilmLayout } {
  const layout = filmLayout(plan, layer, ask);
  const { tone } = layer;
  const { image, wedge, width, stamps } = layout;
  const screen: ScreenAsk = { ...tone, pixelsPerCm: layout.pixelsPerMm * 10 };
  const onImage = screener(screen),
    onWedge = screener(screen);
  const toneAt = placed(plan.codes.width, plan.codes.height, tone.plane, image.width, image.height);
  const covers = upsampled(plan.codes.width, plan.codes.height, tone.plane, image.width, image.height);
  const dots = new Uint8Array(image.width);
  const black = new Uint8Array(width + 8);
  const steps = new Uint8Array(wedge.width * wedge.covers.length),
    wedgeDots = new Uint8Array(steps.length);
  for (let x = 0; x < steps.length; x++) steps[x] = Math.round(255 * wedge.covers[Math.floor(x / wedge.width)]);
  const row = (y: number, line: Uint8Array): void => {
    black.fill(0);
    if (y >= image.y && y < image.y + image.height) {
      onImage.row(y - image.y, covers(y - image.y), dots, toneAt);
      black.set(dots, image.x);
    }
    if (y >= wedge.y && y < wedge.y + wedge.height) {
      onWedge.row(y - wedge.y, steps, wedgeDots);
      for (let x = 0; x < wedgeDots.length && wedge.x + x < width; x++) black[wedge.x + x] |= wedgeDots[x];
      // Every step has its edge, also the bare one.
      for (let x = 0; x <= steps.length; x += wedge.width) if (wedge.x + x < width) black[wedge.x + x] = 1;
    }
    if (y === wedge.y || y === wedge.y + wedge.height - 1) black.fill(1, wedge.x, Math.min(width, wedge.x + steps.length));
    putStamps(stamps, y, width, black);
    if (ask.mirrored) black.subarray(0, width).reverse();
    packRow(black, line);
  };
  return { layout, lineBytes: Math.ceil(width / 8), cell: onImage.cell, row };
}

/** Rows of a plane at the film's density, straight lines between its pixels both ways. The row that is handed out is used again. */
function upsampled(w: number, h: number, plane: Uint8Array, width: number, height: number): (y: number) => Uint8Array {
  const left = new Int32Array(width),
    part = new Int32Array(width);
  for (let x = 0; x < width; x++) {
    const at = Math.min(w - 1, Math.max(0, ((x + 0.5) * w) / width - 0.5));
    left[x] = Math.min(Math.max(0, w - 2), Math.floor(at));
    part[x] = w > 1 ? Math.round((at - left[x]) * 256) : 0;
  }
  const across = new Int32Array(w + 1),
    step = new Int32Array(w);
  const out = new Uint8Array(width);
  return (y) => {
    const at = Math.min(h - 1, Math.max(0, ((y + 0.5) * h) / height - 0.5));
    const top = Math.min(Math.max(0, h - 2), Math.floor(at));
    const f = h > 1 ? Math.round((at - top) * 256) : 0;
    const a = top * w,
      b = h > 1 ? a + w : a;
    for (let x = 0; x < w; x++) across[x] = plane[a + x] * (256 - f) + plane[b + x] * f + 128;
    for (let x = 0; x < w; x++) step[x] = across[x + 1] - across[x];
    for (let x = 0; x < width; x++) {
      const i = left[x];
      out[x] = (across[i] + ((step[i] * part[x] + 128) >> 8)) >> 8;
    }
    return out;
  };
}

/** The plane at any place of the film, in its pixels, by the same straight lines. */
function placed(w: number, h: number, plane: Uint8Array, width: number, height: number): (x: number, y: number) => number {
  const [across, down] = [w / width, h / height];
  return (x, y) => {
    const u = Math.min(w - 1, Math.max(0, (x + 0.5) * across - 0.5)),
      v = Math.min(h - 1, Math.max(0, (y + 0.5) * down - 0.5));
    const i = Math.max(0, Math.min(w - 2, Math.floor(u))),
      k = Math.max(0, Math.min(h - 2, Math.floor(v)));
    const a = k * w + i,
      b = h > 1 ? a + w : a,
      one = w > 1 ? 1 : 0;
    const [f, g] = [u - i, v - k];
    return (plane[a] * (1 - f) + plane[a + one] * f) * (1 - g) + (plane[b] * (1 - f) + plane[b + one] * f) * g;
  };
}

/** What stands beside the dots, on one row. */
export function putStamps(stamps: readonly Stamp[], y: number, width: number, black: Uint8Array): void {
  for (const stamp of stamps) {
    if (y < stamp.y || y >= stamp.y + stamp.height) continue;
    const from = (y - stamp.y) * stamp.width;
    const most = Math.min(stamp.width, width - stamp.x);
    for (let x = Math.max(0, -stamp.x); x < most; x++) black[stamp.x + x] |= stamp.data[from + x];
  }
}

/** A byte a pixel → a bit a pixel, the left one high. `black` is eight longer than the row. */
export function packRow(black: Uint8Array, line: Uint8Array): void {
  for (let i = 0, x = 0; i < line.length; i++, x += 8)
    line[i] =
      (black[x] << 7) |
      (black[x + 1] << 6) |
      (black[x + 2] << 5) |
      (black[x + 3] << 4) |
      (black[x + 4] << 3) |
      (black[x + 5] << 2) |
      (black[x + 6] << 1) |
      black[x + 7];
}
