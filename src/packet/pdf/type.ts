import type { PDFFont } from '@cantoo/pdf-lib';

export type Weight = 'regular' | 'semibold' | 'bold';
export type Align = 'left' | 'centre' | 'right';

/** How a piece of text is set. Size in points, as printers say it; everything else on a page is mm. */
export interface TextStyle {
  readonly size: number;
  readonly weight?: Weight;
  readonly align?: Align;
  /** Line to line, as a multiple of the size. */
  readonly leading?: number;
  /** #rrggbb. Black unless there is a reason. */
  readonly colour?: string;
  /** Set a quarter turn clockwise: it reads downwards. */
  readonly turned?: boolean;
}

export type Faces = Readonly<Record<Weight, PDFFont>>;

/** Height of a capital over its baseline, share of the size (1462 of 2048 in the fonts used). */
export const capHeight = 0.714;
/** What hangs under the baseline: 600 of 2048 at most, g and p about 0.24. */
export const descent = 0.24;

/** Line to line where a style says nothing. */
export const usualLeading = 1.36;

const mmPerPoint = 25.4 / 72;

const widths = new WeakMap<PDFFont, Map<string, number>>();

export function textWidthMm(faces: Faces, text: string, style: TextStyle): number {
  const face = faces[style.weight ?? 'regular'];
  let known = widths.get(face);
  if (!known) widths.set(face, (known = new Map()));
  // Of a size of 1000: lines are tried at many sizes, and the same words stand on many pages.
  let width = known.get(text);
  if (width === undefined) known.set(text, (width = face.widthOfTextAtSize(printable(faces, text), 1000)));
  return width * (style.size / 1000) * mmPerPoint;
}

/** Characters that the fonts lack become a question mark; controls become spaces. */
export function printable(faces: Faces, text: string): string {
  const known = knownCharacters(faces);
  let out = '';
  for (const character of text.normalize('NFC')) {
    const point = character.codePointAt(0)!;
    out += point < 0x20 || (point >= 0x7f && point < 0xa0) ? ' ' : known.has(point) ? character : '?';
  }
  return out;
}

/** Letters of these texts that the fonts lack, each once. */
export function missingLetters(faces: Faces, texts: readonly string[]): string[] {
  const known = knownCharacters(faces);
  const missing = [...texts.join('').normalize('NFC')].filter((c) => c.codePointAt(0)! >= 0x20 && !known.has(c.codePointAt(0)!));
  return [...new Set(missing)];
}

const knownByFaces = new WeakMap<Faces, ReadonlySet<number>>();
function knownCharacters(faces: Faces): ReadonlySet<number> {
  let known = knownByFaces.get(faces);
  if (!known) {
    known = new Set(faces.regular.getCharacterSet());
    knownByFaces.set(faces, known);
  }
  return known;
}

/** Breaks text into lines no wider than `widthMm`. A word wider than the line is broken inside. */
export function wrap(faces: Faces, text: string, widthMm: number, style: TextStyle): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(/ +/)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (textWidthMm(faces, longer, style) <= widthMm) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      line = word;
      while (textWidthMm(faces, line, style) > widthMm && line.length > 1) {
        let cut = line.length - 1;
        while (cut > 1 && textWidthMm(faces, line.slice(0, cut), style) > widthMm) cut--;
        lines.push(line.slice(0, cut));
        line = line.slice(cut);
      }
    }
    lines.push(line);
  }
  return lines;
}

/** The text at the largest size up to the style's at which it fits one line; cut with … where even `least` is too large. */
export function fitted(
  faces: Faces,
  text: string,
  widthMm: number,
  style: TextStyle,
  least = style.size * 0.7,
): { text: string; style: TextStyle } {
  const width = textWidthMm(faces, text, style);
  if (width <= widthMm) return { text, style };
  const size = Math.max(least, Math.floor(((style.size * widthMm) / width) * 10) / 10);
  const smaller = { ...style, size };
  let cut = text;
  while (cut.length > 1 && textWidthMm(faces, cut, smaller) > widthMm) cut = `${cut.replace(/…$/, '').slice(0, -1).trimEnd()}…`;
  return { text: cut, style: smaller };
}
