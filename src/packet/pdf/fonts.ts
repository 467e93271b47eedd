import fontkit from '@cantoo/fontkit';
import type { PDFDocument } from '@cantoo/pdf-lib';

type Reader = Parameters<PDFDocument['registerFontkit']>[0];

const read = new WeakMap<Uint8Array, ReturnType<Reader['create']>>();

/**
 * What a PDF reads fonts with: a file is read once for all books. Where letters are moved closer or apart by their neighbours (GPOS) is left
 * unread: no text of a PDF's is set by it, and reading it takes longer than all else about the texts of a small packet.
 */
export const fontReader: Reader = {
  create(bytes) {
    const font = read.get(bytes) ?? fontkit.create(withoutTable(bytes, 'GPOS'));
    read.set(bytes, font);
    return font;
  },
};

/** The file with a table of that tag not found any more (OpenType 1.9, table directory: records of 16 bytes from byte 12). */
function withoutTable(file: Uint8Array, tag: string): Uint8Array {
  const bytes = file.slice(),
    many = (bytes[4] << 8) | bytes[5];
  for (let at = 12; at < 12 + many * 16; at += 16)
    if (String.fromCharCode(...bytes.subarray(at, at + 4)) === tag) bytes.fill(0x2d, at, at + 4);
  return bytes;
}
