import type { Box, Region, Segment } from '../../core/form/index.ts';
import { greyOf, type Picture } from './picture.ts';
import { newPreview } from './preview.ts';
import { pointsPerMm, say } from './numbers.ts';
import { outline } from './outline.ts';
import { capHeight, descent, fitted, printable, textWidthMm, usualLeading, wrap, type Faces, type TextStyle } from './type.ts';

export interface Paint {
  /** #rrggbb */
  readonly fill?: string;
  readonly stroke?: string;
  /** Line width, mm. */
  readonly lineMm?: number;
  readonly dashMm?: readonly number[];
}

/** Where a drawing in mm goes on the page: page = at + scale × drawing. */
export interface Placing {
  readonly xMm: number;
  readonly yMm: number;
  readonly scale?: number;
  /** Turned a quarter clockwise on the page: for what is wider than high. */
  readonly turned?: boolean;
}

/**
 * One page: millimetres from its top left corner, y downwards. What is drawn is kept as PDF operators; `reach` is the
 * box that all marks stay within, so that nothing goes over the printer's margins unseen.
 */
export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly faces: Faces;
  readonly pictures: Map<Picture, string>;
  /** Everything is drawn larger by this; widths, heights and what is reached are told as before. */
  readonly scale: number;
  readonly operators: string[];
  reach(): Box;
  /** Paragraphs end above this line; what does not fit is cut with …, never printed over the margin. */
  floorMm: number;
  /** One line; x, y is its baseline. Gives back the width in mm. */
  text(xMm: number, yMm: number, text: string, style: TextStyle): number;
  /** One line that never gets wider than `widthMm`: smaller, then cut short. */
  fit(xMm: number, yMm: number, widthMm: number, text: string, style: TextStyle, least?: number): void;
  /** Lines broken to the width; y is the top of the first capital. Gives back the y under the last line. */
  para(xMm: number, yMm: number, widthMm: number, text: string, style: TextStyle): number;
  line(x0: number, y0: number, x1: number, y1: number, lineMm?: number, dashMm?: readonly number[]): void;
  rect(xMm: number, yMm: number, widthMm: number, heightMm: number, paint: Paint): void;
  circle(xMm: number, yMm: number, radiusMm: number, paint: Paint): void;
  /** Straight segments, `toleranceMm` on the page. */
  region(region: Region, placing: Placing, paint: Paint, toleranceMm?: number): void;
  /** Closed outlines with curves, as they are. */
  outlines(outlines: readonly (readonly Segment[])[], placing: Placing, paint: Paint): void;
  picture(picture: Picture, xMm: number, yMm: number, widthMm: number, heightMm: number): void;
  /** The page as an SVG drawing; empty where the book was opened without previews. */
  preview(): string;
  /** Draws only inside the box. */
  within(xMm: number, yMm: number, widthMm: number, heightMm: number, draw: () => void): void;
}

export interface PageWishes {
  readonly scale?: number;
  /** All colours become greys of one ink. */
  readonly black?: boolean;
  /** Kept for the screen as well. */
  readonly preview?: boolean;
}

export function newPage(faces: Faces, paperWidthMm: number, paperHeightMm: number, wishes: PageWishes = {}): Page {
  const { scale = 1, black = false } = wishes;
  const [widthMm, heightMm] = [paperWidthMm / scale, paperHeightMm / scale];
  const [filled, drawn] = black ? ['g', 'G'] : ['rg', 'RG'];
  const tone = black ? grey : rgb;
  const shown = wishes.preview ? newPreview(widthMm * pointsPerMm, heightMm * pointsPerMm, black) : null;
  const operators: string[] = [];
  const pictures = new Map<Picture, string>();
  let reach: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  let clip: Box | null = null;

  const mark = (x0: number, y0: number, x1: number, y1: number): void => {
    const box = { minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) };
    const seen = clip
      ? {
          minX: Math.max(box.minX, clip.minX),
          minY: Math.max(box.minY, clip.minY),
          maxX: Math.min(box.maxX, clip.maxX),
          maxY: Math.min(box.maxY, clip.maxY),
        }
      : box;
    if (seen.minX > seen.maxX || seen.minY > seen.maxY) return;
    reach = {
      minX: Math.min(reach.minX, seen.minX),
      minY: Math.min(reach.minY, seen.minY),
      maxX: Math.max(reach.maxX, seen.maxX),
      maxY: Math.max(reach.maxY, seen.maxY),
    };
  };
  const px = (x: number): string => say(x * pointsPerMm);
  const py = (y: number): string => say((heightMm - y) * pointsPerMm);
  const len = (v: number): string => say(v * pointsPerMm);

  /** Sets colours and line, draws the path, forgets the settings. */
  const painted = (path: string, paint: Paint): void => {
    const parts = ['q'];
    if (paint.fill) parts.push(`${tone(paint.fill)} ${filled}`);
    if (paint.stroke) {
      parts.push(`${tone(paint.stroke)} ${drawn} ${len(paint.lineMm ?? 0.25)} w 0 J 1 j`);
      if (paint.dashMm) parts.push(`[${paint.dashMm.map(len).join(' ')}] 0 d`);
    }
    parts.push(path, paint.fill && paint.stroke ? 'B*' : paint.fill ? 'f*' : 'S', 'Q');
    operators.push(parts.join('\n'));
    shown?.path(path, paint.fill, paint.stroke, paint.lineMm ?? 0.25, paint.dashMm);
  };
  const half = (paint: Paint): number => (paint.stroke ? (paint.lineMm ?? 0.25) / 2 : 0);

  /** One line as it is. */
  const set: Page['text'] = (xMm, yMm, text, style) => {
    const clean = printable(faces, text);
    const width = textWidthMm(faces, clean, style);
    if (clean.trim() === '') return width;
    const back = style.align === 'right' ? width : style.align === 'centre' ? width / 2 : 0;
    const weight = style.weight ?? 'regular';
    const colour = style.colour ? `${tone(style.colour)} ${filled}` : '0 g';
    const [left, base] = style.turned ? [xMm, yMm - back] : [xMm - back, yMm];
    operators.push(
      `BT ${colour} /${weight} ${say(style.size)} Tf ${style.turned ? '0 -1 1 0' : '1 0 0 1'} ${px(left)} ${py(base)} Tm ${faces[weight].encodeText(clean).toString()} Tj ET`,
    );
    const weigh = { regular: 400, semibold: 600, bold: 700 }[weight];
    shown?.text(
      left * pointsPerMm,
      (heightMm - base) * pointsPerMm,
      clean,
      style.size,
      weigh,
      width * pointsPerMm,
      style.colour ?? '#000000',
      style.turned === true,
    );
    const sizeMm = style.size / pointsPerMm;
    if (style.turned) mark(left - descent * sizeMm, base, left + capHeight * sizeMm, base + width);
    else mark(left, base - capHeight * sizeMm, left + width, base + descent * sizeMm);
    return width;
  };

  const page: Page = {
    widthMm,
    heightMm,
    faces,
    pictures,
    operators,
    scale,
    floorMm: heightMm,
    reach: () => reach,
    preview: () => shown?.svg() ?? '',
    text: set,
    fit(xMm, yMm, width, text, style, least) {
      const fit = fitted(faces, text, width, style, least);
      set(xMm, yMm, fit.text, fit.style);
    },
    para(xMm, yMm, width, text, style) {
      const sizeMm = style.size / pointsPerMm;
      const step = sizeMm * (style.leading ?? usualLeading);
      const x = style.align === 'right' ? xMm + width : style.align === 'centre' ? xMm + width / 2 : xMm;
      const lines = wrap(faces, printableLines(faces, text), width, style);
      const room = Math.max(0, Math.floor((page.floorMm - yMm - (capHeight + descent) * sizeMm) / step + 1e-6) + 1);
      const shown = lines.slice(0, room);
      if (shown.length < lines.length && shown.length > 0)
        shown[shown.length - 1] = fitted(faces, `${shown[shown.length - 1]} …`, width, style, style.size).text;
      shown.forEach((line, i) => set(x, yMm + capHeight * sizeMm + i * step, line, style));
      return yMm + shown.length * step;
    },
    line(x0, y0, x1, y1, lineMm = 0.25, dashMm) {
      painted(`${px(x0)} ${py(y0)} m ${px(x1)} ${py(y1)} l`, { stroke: '#000000', lineMm, dashMm });
      // Butt ends: a line is only thick across its own direction.
      const along = Math.hypot(x1 - x0, y1 - y0) || 1;
      const across = { x: ((Math.abs(y1 - y0) / along) * lineMm) / 2, y: ((Math.abs(x1 - x0) / along) * lineMm) / 2 };
      mark(Math.min(x0, x1) - across.x, Math.min(y0, y1) - across.y, Math.max(x0, x1) + across.x, Math.max(y0, y1) + across.y);
    },
    rect(xMm, yMm, w, h, paint) {
      painted(`${px(xMm)} ${py(yMm + h)} ${len(w)} ${len(h)} re`, paint);
      const d = half(paint);
      mark(xMm - d, yMm - d, xMm + w + d, yMm + h + d);
    },
    circle(xMm, yMm, r, paint) {
      // Four cubics, the usual 0.5523 r handles: within 0.03 % of a circle.
      const k = 0.5523 * r;
      const c = (x1: number, y1: number, x2: number, y2: number, x: number, y: number): string =>
        `${px(x1)} ${py(y1)} ${px(x2)} ${py(y2)} ${px(x)} ${py(y)} c`;
      painted(
        [
          `${px(xMm + r)} ${py(yMm)} m`,
          c(xMm + r, yMm + k, xMm + k, yMm + r, xMm, yMm + r),
          c(xMm - k, yMm + r, xMm - r, yMm + k, xMm - r, yMm),
          c(xMm - r, yMm - k, xMm - k, yMm - r, xMm, yMm - r),
          c(xMm + k, yMm - r, xMm + r, yMm - k, xMm + r, yMm),
          'h',
        ].join(' '),
        paint,
      );
      const d = half(paint);
      mark(xMm - r - d, yMm - r - d, xMm + r + d, yMm + r + d);
    },
    region(region, placing, paint, toleranceMm) {
      page.outlines(outline(region, toleranceMm === undefined ? undefined : toleranceMm / (placing.scale ?? 1)), placing, paint);
    },
    outlines(outlines, placing, paint) {
      const s = placing.scale ?? 1;
      const at = (x: number, y: number): [number, number] =>
        placing.turned ? [placing.xMm - s * y, placing.yMm + s * x] : [placing.xMm + s * x, placing.yMm + s * y];
      const d = half(paint);
      const path = outlines.map((segments) => segments.map((seg) => pathOperator(seg, at, px, py)).join(' ') + ' h').join('\n');
      if (path === '') return;
      for (const { points } of outlines.flat())
        for (let i = 0; i < points.length; i += 2) {
          const [x, y] = at(points[i], points[i + 1]);
          mark(x - d, y - d, x + d, y + d);
        }
      painted(path, paint);
    },
    picture(picture, xMm, yMm, w, h) {
      const name = pictures.get(picture) ?? `P${pictures.size}`;
      pictures.set(picture, name);
      operators.push(`q ${len(w)} 0 0 ${len(h)} ${px(xMm)} ${py(yMm + h)} cm /${name} Do Q`);
      shown?.picture(picture, xMm * pointsPerMm, (heightMm - yMm - h) * pointsPerMm, w * pointsPerMm, h * pointsPerMm);
      mark(xMm, yMm, xMm + w, yMm + h);
    },
    within(xMm, yMm, w, h, draw) {
      const outer = clip;
      const box = { minX: xMm, minY: yMm, maxX: xMm + w, maxY: yMm + h };
      clip = outer
        ? {
            minX: Math.max(box.minX, outer.minX),
            minY: Math.max(box.minY, outer.minY),
            maxX: Math.min(box.maxX, outer.maxX),
            maxY: Math.min(box.maxY, outer.maxY),
          }
        : box;
      const path = `${px(xMm)} ${py(yMm + h)} ${len(w)} ${len(h)} re`;
      operators.push(`q ${path} W n`);
      shown?.open(path);
      draw();
      operators.push('Q');
      shown?.close();
      clip = outer;
    },
  };
  return page;
}

function printableLines(faces: Faces, text: string): string {
  return text
    .split('\n')
    .map((line) => printable(faces, line))
    .join('\n');
}

function pathOperator(
  segment: Segment,
  at: (x: number, y: number) => [number, number],
  px: (v: number) => string,
  py: (v: number) => string,
): string {
  const p = (i: number): string => {
    const [x, y] = at(segment.points[i], segment.points[i + 1]);
    return `${px(x)} ${py(y)}`;
  };
  switch (segment.kind) {
    case 'move':
      return `${p(0)} m`;
    case 'line':
      return `${p(0)} l`;
    case 'curve':
      return `${p(0)} ${p(2)} ${p(4)} c`;
  }
}

function rgb(hex: string): string {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((v) => say(v / 255)).join(' ');
}

/** As light as the colour (luminance of its sRGB values, IEC 61966-2-1), in one ink. */
function grey(hex: string): string {
  const value = Number.parseInt(hex.slice(1), 16);
  return say(greyOf(value >> 16, (value >> 8) & 255, value & 255) / 255);
}
