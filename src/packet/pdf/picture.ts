import { PDFHexString, type PDFContext, type PDFRef } from '@cantoo/pdf-lib';
import { zlibSync } from 'fflate';
import type { ProofImage } from '../proof.ts';

/** A picture for the pages: written into the file once, however many pages show it. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly proof: ProofImage;
  /** @param black as greys of one ink */
  embed(context: PDFContext, black?: boolean): PDFRef;
}

/** Luminance of sRGB values 0..255 as the sRGB value of a grey as light (IEC 61966-2-1; weights of ITU-R BT.709). */
export function greyOf(red: number, green: number, blue: number): number {
  const linear = (v: number): number => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
  const y = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  return 255 * (y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055);
}

/** A proof keeps its palette in the file: every overlap exactly one colour, a tenth of the size of plain RGB. */
export function pictureOf(proof: ProofImage): Picture {
  const indexed = proof.kind === 'indexed' ? proof.image : null;
  const { width: widthPx, height: heightPx } = proof.kind === 'indexed' ? proof.image : proof;
  return {
    widthPx,
    heightPx,
    proof,
    embed(context, black = false) {
      const palette = indexed?.palette.map((c) => (black ? [Math.round(greyOf(c[0], c[1], c[2]))] : [...c])) ?? [];
      const space = black ? 'DeviceGray' : 'DeviceRGB';
      const colours =
        indexed && context.obj(['Indexed', space, palette.length - 1, PDFHexString.fromBytes(Uint8Array.from(palette.flat()))]);
      const bytes = proof.kind === 'indexed' ? proof.image.data : black ? greys(proof.rgb) : proof.rgb;
      return context.register(
        context.stream(zlibSync(bytes, { level: 4 }), {
          Type: 'XObject',
          Subtype: 'Image',
          Width: widthPx,
          Height: heightPx,
          ColorSpace: colours ?? space,
          BitsPerComponent: 8,
          Filter: 'FlateDecode',
        }),
      );
    },
  };
}

function greys(rgb: Uint8Array): Uint8Array {
  const out = new Uint8Array(rgb.length / 3);
  for (let i = 0; i < out.length; i++) out[i] = Math.round(greyOf(rgb[i * 3], rgb[i * 3 + 1], rgb[i * 3 + 2]));
  return out;
}
