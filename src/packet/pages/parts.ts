import { cautions } from '../../core/edition/index.ts';
import { say, share, type Quantity, type Saying } from '../../words/index.ts';
import type { Page } from '../pdf/page.ts';
import { pictureOf, type Picture } from '../pdf/picture.ts';
import { pointsPerMm } from '../pdf/numbers.ts';
import { usualLeading, wrap, type TextStyle } from '../pdf/type.ts';
import type { Voice } from '../voice.ts';
import { fitImage, type, type Frame, type PlannedLayer, type PlannedPaper, type Setting } from './ink/setting.ts';

/** The sheet after a run, with a hairline round it. Gives back the height it takes. */
export function drawProof(
  setting: Setting,
  page: Page,
  paper: PlannedPaper,
  run: number,
  x: number,
  y: number,
  widthMm: number,
  heightMm: number,
): { widthMm: number; heightMm: number } {
  const size = fitImage(setting.plan, widthMm, heightMm);
  page.picture(setting.proof(paper, run, size.widthMm), x, y, size.widthMm, size.heightMm);
  page.rect(x, y, size.widthMm, size.heightMm, { stroke: '#000000', lineMm: 0.15 });
  return size;
}

/** As fine as a small picture on paper shows. */
const widestPx = 420;

/** The tone of a run, small: as much of the colour on white as it covers. */
export function tonePicture({ plan }: Setting, plane: Uint8Array, srgb: string): Picture {
  const { codes } = plan;
  const step = Math.max(1, Math.ceil(codes.width / widestPx));
  const width = Math.floor(codes.width / step),
    height = Math.floor(codes.height / step);
  const ink = [1, 3, 5].map((at) => parseInt(srgb.slice(at, at + 2), 16));
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let v = 0; v < step; v++) for (let u = 0; u < step; u++) sum += plane[(y * step + v) * codes.width + x * step + u];
      const covered = sum / (step * step * 255);
      for (let c = 0; c < 3; c++) rgb[(y * width + x) * 3 + c] = Math.round(255 - covered * (255 - ink[c]));
    }
  return pictureOf({ kind: 'rgb', width, height, rgb, mmPerPx: codes.mmPerPx * step });
}

/** What stays is grey, what lets ink through is in the ink's colour (white while the ink is open); of a run of tone the film's picture. */
export function drawStencil(
  setting: Setting,
  page: Page,
  layer: PlannedLayer,
  x: number,
  y: number,
  widthMm: number,
  heightMm: number,
): { widthMm: number; heightMm: number; scale: number; x0: number; y0: number } {
  const { sheet } = layer.stencil;
  const scale = Math.min(widthMm / (sheet.maxX - sheet.minX), heightMm / (sheet.maxY - sheet.minY));
  const w = (sheet.maxX - sheet.minX) * scale,
    h = (sheet.maxY - sheet.minY) * scale;
  const at = { xMm: x - sheet.minX * scale, yMm: y - sheet.minY * scale, scale };
  page.rect(x, y, w, h, { fill: '#d4d4d4', stroke: '#000000', lineMm: 0.25 });
  if (layer.tone) {
    const { image } = setting.plan.job;
    const [wide, tall] = [image.widthMm * scale, image.heightMm * scale];
    page.picture(tonePicture(setting, layer.tone.plane, layer.swatch?.srgb ?? '#000000'), at.xMm, at.yMm, wide, tall);
    page.rect(at.xMm, at.yMm, wide, tall, { stroke: '#000000', lineMm: 0.12 });
  } else page.region(layer.stencil.prints, at, { fill: layer.swatch?.srgb ?? '#ffffff', stroke: '#000000', lineMm: 0.12 }, 0.02);
  return { widthMm: w, heightMm: h, scale, x0: at.xMm, y0: at.yMm };
}

/** A flat colour with a hairline. */
export function drawSwatch(voice: Voice, page: Page, srgb: string | null, x: number, y: number, widthMm: number, heightMm: number): void {
  if (srgb === null) {
    page.rect(x, y, widthMm, heightMm, { stroke: '#000000', lineMm: 0.4, dashMm: [2, 1.5] });
    page.text(x + widthMm / 2, y + heightMm / 2 + 1.5, voice.say('packet.open'), { ...type.body, align: 'centre' });
  } else {
    page.rect(x, y, widthMm, heightMm, { fill: srgb, stroke: '#000000', lineMm: 0.15 });
  }
}

/** Which layers lie there, as a stack: first run at the bottom, a film where there is ink, a hairline where there is none. */
export function drawStack(
  page: Page,
  layers: readonly PlannedLayer[],
  present: readonly string[],
  x: number,
  y: number,
  widthMm: number,
  heightMm: number,
): void {
  const step = heightMm / layers.length;
  layers.forEach((layer, i) => {
    const top = y + heightMm - (i + 1) * step;
    if (present.includes(layer.id)) {
      page.rect(x, top + step * 0.1, widthMm, step * 0.8, { fill: layer.swatch?.srgb ?? '#ffffff', stroke: '#000000', lineMm: 0.2 });
    } else {
      page.line(x, top + step / 2, x + widthMm, top + step / 2, 0.12);
    }
  });
}

/** A box to tick, with its number inside. */
export function tickBox(page: Page, x: number, y: number, sizeMm: number, label = ''): void {
  page.rect(x, y, sizeMm, sizeMm, { stroke: '#000000', lineMm: 0.3 });
  const large = sizeMm >= 9;
  if (label !== '') page.text(x + 0.9, y + (large ? 3.9 : 2.9), label, large ? { size: 9, weight: 'semibold' } : { size: 6.5 });
}

/** What the count at the press says of a box: printed, or spoiled. */
export function tick(page: Page, x: number, y: number, sizeMm: number, what: 'tick' | 'cross'): void {
  const s = sizeMm;
  if (what === 'tick') {
    page.line(x + s * 0.2, y + s * 0.55, x + s * 0.42, y + s * 0.78, 0.5);
    page.line(x + s * 0.4, y + s * 0.78, x + s * 0.82, y + s * 0.22, 0.5);
  } else {
    page.line(x + s * 0.2, y + s * 0.2, x + s * 0.8, y + s * 0.8, 0.5);
    page.line(x + s * 0.8, y + s * 0.2, x + s * 0.2, y + s * 0.8, 0.5);
  }
}

/** A line to write on, with its name under it. Gives back the y below. */
export function writingLine(page: Page, x: number, y: number, widthMm: number, label: string, value = ''): number {
  if (value !== '') page.fit(x, y - 1.6, widthMm, value, type.strong);
  page.line(x, y, x + widthMm, y, 0.3);
  page.fit(x, y + 3.4, widthMm, label, { size: 8 });
  return y + 12;
}

/** Numbered steps: the number hangs in front. Gives back the y below. */
export function steps(
  page: Page,
  x: number,
  y: number,
  widthMm: number,
  lines: readonly string[],
  style: TextStyle = type.body,
  from = 1,
): number {
  const indent = style.size * 0.62;
  let at = y;
  lines.forEach((line, i) => {
    page.para(x, at, indent, String(i + from), { ...style, weight: 'bold' });
    at = page.para(x + indent, at, widthMm - indent, line, style) + style.size * 0.12;
  });
  return at;
}

const cautionStyle = { ...type.small, weight: 'semibold' } as const;

export const cautionHigh = (page: Pick<Page, 'faces'>, widthMm: number, text: string): number =>
  paraHigh(page, widthMm - 5, text, cautionStyle) + 2;

/** A caution: a black bar in front, so that it is seen without colour. */
export function caution(page: Page, x: number, y: number, widthMm: number, text: string): number {
  const bottom = page.para(x + 5, y, widthMm - 5, text, cautionStyle);
  page.rect(x, y - 0.6, 1.6, bottom - y - 0.4, { fill: '#000000' });
  return bottom + 2;
}

/** Label over value, in a column. Gives back the y below. */
export function fact(
  page: Page,
  x: number,
  y: number,
  widthMm: number,
  label: string,
  value: string,
  style: TextStyle = type.head,
): number {
  page.fit(x, y + 2.4, widthMm, label, { size: 8.5 });
  return page.para(x, y + 4.6, widthMm, value, style) + 2.2;
}

/** What a paragraph would take, from its top to the top of what follows. */
export function paraHigh({ faces }: Pick<Page, 'faces'>, widthMm: number, text: string, style: TextStyle): number {
  return (wrap(faces, text, widthMm, style).length * style.size * (style.leading ?? usualLeading)) / pointsPerMm;
}

/** Columns of the page's grid: six, four millimetres apart. */
export function column(frame: Frame, from: number, span: number): { x: number; width: number } {
  const gap = 4;
  const one = (frame.width - 5 * gap) / 6;
  return { x: frame.left + from * (one + gap), width: span * one + (span - 1) * gap };
}

/** The caution of this name, as core words it. */
export function cautionOf(setting: Setting, id: string): string {
  const found = cautions.find((c) => c.id === id);
  return found ? setting.tell(found.text) : '';
}

/** How far the print may fall from the forecast, in words (ΔE00; 1 is hardly seen side by side: common practice). */
export function bandInWords(band: number): Saying {
  if (band < 3) return say('recordPages.sure');
  if (band < 6) return say('recordPages.shadeOff');
  return say(band < 10 ? 'recordPages.clearlyOff' : 'recordPages.guess');
}

export function shareInWords(areaMm2: number, wholeMm2: number): Saying | Quantity {
  const part = areaMm2 / wholeMm2;
  return part >= 0.001 ? share(part, part >= 0.1 ? 0 : 1) : say('recordPages.under', { share: share(0.001, 1) });
}

/** Said where the job has nothing to draw yet. */
export function checkNone(setting: Setting, page: Page, x: number, y: number, widthMm: number): void {
  page.rect(x, y, widthMm, 40, { stroke: '#000000', lineMm: 0.3, dashMm: [2, 2] });
  page.para(x + 5, y + 6, widthMm - 10, setting.say('setUpPages.nameScreen'), type.body);
}
