import { PDFHexString, type PDFContext, type PDFRef } from '@cantoo/pdf-lib';
import { zlibSync } from 'fflate';
import type { ProofImage } from '../proof.ts';

/** A picture for the pages: written into the file once, however many pages show it. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  embed(context: PDFContext): PDFRef;
}

/** A proof keeps its palette in the file: every overlap exactly one colour, a tenth of the size of plain RGB. */
export function pictureOf(proof: ProofImage): Picture {
  const indexed = proof.kind === 'indexed' ? proof.image : null;
  const { width: widthPx, height: heightPx } = proof.kind === 'indexed' ? proof.image : proof;
  const bytes = proof.kind === 'indexed' ? proof.image.data : proof.rgb;
  return {
    widthPx,
    heightPx,
    embed(context) {
      const colours =
        indexed &&
        context.obj(['Indexed', 'DeviceRGB', indexed.palette.length - 1, PDFHexString.fromBytes(Uint8Array.from(indexed.palette.flat()))]);
      return context.register(
        context.stream(zlibSync(bytes, { level: 4 }), {
          Type: 'XObject',
          Subtype: 'Image',
          Width: widthPx,
          Height: heightPx,
          ColorSpace: colours ?? 'DeviceRGB',
          BitsPerComponent: 8,
          Filter: 'FlateDecode',
        }),
      );
    },
  };
}
