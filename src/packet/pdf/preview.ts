import { indexedPng, rgbPng } from '../files/png.ts';
import type { Picture } from './picture.ts';
import { greyOf } from './picture.ts';

/**
 * A page for the screen, drawn from the same paths as the PDF: an SVG in points, y upwards as in the PDF. Letters come from the
 * fonts at hand, set as wide as in the file.
 */
export interface Preview {
  path(path: string, fill: string | undefined, stroke: string | undefined, lineMm: number, dashMm?: readonly number[]): void;
  text(xPt: number, yPt: number, text: string, sizePt: number, weight: number, widthPt: number, colour: string, turned: boolean): void;
  picture(picture: Picture, xPt: number, yPt: number, widthPt: number, heightPt: number): void;
  open(clipPath: string): void;
  close(): void;
  /** The whole page. */
  svg(): string;
}

const pt = 72 / 25.4;

export function newPreview(widthPt: number, heightPt: number, black: boolean): Preview {
  const parts: string[] = [];
  const defs: string[] = [];
  const pictures = new Map<Picture, string>();
  let clips = 0;
  const tone = (hex: string | undefined): string => (hex === undefined ? 'none' : black ? grey(hex) : hex);
  return {
    path(path, fill, stroke, lineMm, dashMm) {
      const dash = dashMm ? ` stroke-dasharray="${dashMm.map((one) => short(one * pt)).join(' ')}"` : '';
      const line = stroke ? ` stroke="${tone(stroke)}" stroke-width="${short(lineMm * pt)}"${dash}` : '';
      parts.push(`<path d="${svgPath(path)}" fill="${tone(fill)}" fill-rule="evenodd"${line}/>`);
    },
    text(x, y, text, size, weight, width, colour, turned) {
      const matrix = turned ? `0 -1 -1 0 ${short(x)} ${short(y)}` : `1 0 0 -1 ${short(x)} ${short(y)}`;
      const wide = text.length > 1 && width > 0 ? ` textLength="${short(width)}" lengthAdjust="spacingAndGlyphs"` : '';
      parts.push(
        `<text transform="matrix(${matrix})" font-size="${short(size)}" font-weight="${weight}" fill="${tone(colour)}"${wide}>${escaped(text)}</text>`,
      );
    },
    picture(picture, x, y, w, h) {
      let id = pictures.get(picture);
      if (id === undefined) {
        id = `p${pictures.size}`;
        pictures.set(picture, id);
        defs.push(
          `<image id="${id}" width="1" height="1" preserveAspectRatio="none" style="image-rendering:pixelated" href="${pngOf(picture, black)}"/>`,
        );
      }
      parts.push(`<use href="#${id}" transform="matrix(${short(w)} 0 0 ${short(-h)} ${short(x)} ${short(y + h)})"/>`);
    },
    open(path) {
      clips++;
      defs.push(`<clipPath id="c${clips}"><path d="${svgPath(path)}"/></clipPath>`);
      parts.push(`<g clip-path="url(#c${clips})">`);
    },
    close: () => void parts.push('</g>'),
    svg: () =>
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(widthPt)} ${short(heightPt)}" font-family="Open Sans, Noto Sans, sans-serif"><defs>${defs.join('')}</defs>` +
      `<rect width="100%" height="100%" fill="#fff"/><g transform="matrix(1 0 0 -1 0 ${short(heightPt)})">${parts.join('')}</g></svg>`,
  };
}

/** Operators of a PDF path (m, l, c, h, re: ISO 32000-1, 8.5.2) as the data of an SVG path. */
function svgPath(path: string): string {
  let out = '';
  let held: string[] = [];
  for (const word of path.split(/\s+/)) {
    if (word === 'm' || word === 'l' || word === 'c') out += `${word === 'm' ? 'M' : word === 'l' ? 'L' : 'C'}${held.join(' ')}`;
    else if (word === 'h') out += 'Z';
    else if (word === 're') {
      const [x, y, w, h] = held;
      out += `M${x} ${y}h${w}v${h}h${-Number(w)}Z`;
    } else {
      if (word !== '') held.push(word);
      continue;
    }
    held = [];
  }
  return out;
}

const short = (value: number): string => String(Math.round(value * 100) / 100);

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function grey(hex: string): string {
  const value = Number.parseInt(hex.slice(1), 16);
  const one = Math.round(greyOf(value >> 16, (value >> 8) & 255, value & 255));
  return `rgb(${one},${one},${one})`;
}

function pngOf({ proof }: Picture, black: boolean): string {
  const flat = (c: readonly [number, number, number]): [number, number, number] => {
    const one = Math.round(greyOf(c[0], c[1], c[2]));
    return [one, one, one];
  };
  let bytes: Uint8Array;
  if (proof.kind === 'indexed') bytes = indexedPng(black ? { ...proof.image, palette: proof.image.palette.map(flat) } : proof.image, 1);
  else {
    const rgb = black ? Uint8Array.from(proof.rgb) : proof.rgb;
    for (let i = 0; black && i < rgb.length; i += 3) rgb.set(flat([rgb[i], rgb[i + 1], rgb[i + 2]]), i);
    bytes = rgbPng(proof.width, proof.height, rgb, 1);
  }
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return `data:image/png;base64,${btoa(text)}`;
}
