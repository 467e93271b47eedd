import fontkit from '@cantoo/fontkit';
import type { PDFDocument } from '@cantoo/pdf-lib';

type Reader = Parameters<PDFDocument['registerFontkit']>[0];

const read = new WeakMap<Uint8Array, ReturnType<Reader['create']>>();

/**
 * What a PDF reads fonts with: a file is read once for all books. Where letters are moved closer or apart by their neighbours (GPOS, kern) is
 * left unread: no text of a PDF's is set by it, and reading it takes longer than all else about the texts of a small packet.
 */
export const fontReader: Reader = {
  create(bytes) {
    const font = read.get(bytes) ?? byWords(fontkit.create(withoutTable(withoutTable(bytes, 'GPOS'), 'kern')));
    read.set(bytes, font);
    return font;
  },
};

/** What a PDF is set with; of a run of text only its glyphs are read. */
interface Setter {
  layout(text: string, features?: object): { readonly glyphs: readonly object[] };
}

/** Words kept, then all are forgotten. */
const mostWords = 20_000;
/** Latin, Greek, Cyrillic and marks between them: no letter of one word changes another. */
const plain = /^[\u0020-\u052f\u2010-\u2030\u20a0-\u22ff]*$/;

/** Texts are tried for their width and then set, over and over the same words: each is looked up in the font once. */
function byWords<Font>(font: Font): Font {
  const setter = font as Setter,
    set = setter.layout.bind(font);
  const words = new Map<string, readonly object[]>();
  const glyphsOf = (word: string, features: object | undefined, way: string): readonly object[] => {
    const key = way + word;
    let known = words.get(key);
    if (!known) {
      if (words.size >= mostWords) words.clear();
      words.set(key, (known = set(word, features).glyphs));
    }
    return known;
  };
  setter.layout = (text, features) => {
    if (!plain.test(text)) return set(text, features);
    const way = JSON.stringify(features ?? {});
    return { glyphs: text.split(/( )/).flatMap((word) => (word === '' ? [] : glyphsOf(word, features, way))) };
  };
  return font;
}

/** The file with a table of that tag not found any more (OpenType 1.9, table directory: records of 16 bytes from byte 12). */
function withoutTable(file: Uint8Array, tag: string): Uint8Array {
  const bytes = file.slice(),
    many = (bytes[4] << 8) | bytes[5];
  for (let at = 12; at < 12 + many * 16; at += 16)
    if (String.fromCharCode(...bytes.subarray(at, at + 4)) === tag) bytes.fill(0x2d, at, at + 4);
  return bytes;
}
