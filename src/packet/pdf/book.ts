import { PDFDocument, PDFName, type PDFRef } from '@cantoo/pdf-lib';
import { quietTask, type Task } from '../../core/task.ts';
import { fontReader } from './fonts.ts';
import { newPage, type Page } from './page.ts';
import { pointsPerMm, say } from './numbers.ts';
import type { Picture } from './picture.ts';
import type { Faces, Weight } from './type.ts';

/** A whole PDF in the making: pages in order, fonts and pictures shared between them. */
export interface Book {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly faces: Faces;
  readonly pages: readonly Page[];
  /** How much larger than usual pages of words are; drawings at true size are not. */
  readonly scale: number;
  /** @param scale 1 for a drawing at true size */
  addPage(scale?: number): Page;
  /** The file. No dates and no random names: the same pages give the same bytes. */
  finish(title: string, author: string, task?: Task): Promise<Uint8Array>;
}

export interface FontFiles {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
  readonly bold: Uint8Array;
}

export interface BookWishes {
  readonly scale?: number;
  /** In black ink alone: colours become greys. */
  readonly black?: boolean;
  /** Pages are kept as pictures for the screen too. */
  readonly preview?: boolean;
}

/** @param fonts TrueType files; only the letters used end up in the PDF. @param language of the pages, for whoever has them read aloud */
export async function openBook(
  fonts: FontFiles,
  widthMm: number,
  heightMm: number,
  language: string,
  { scale = 1, black = false, preview = false }: BookWishes = {},
): Promise<Book> {
  const file = await PDFDocument.create({ updateMetadata: false });
  file.registerFontkit(fontReader);
  // No ligatures: figures and words in tables must be found again when the text is searched or copied.
  const embed = (weight: Weight): ReturnType<PDFDocument['embedFont']> =>
    file.embedFont(fonts[weight], {
      // Six letters and a plus sign mark a font with only some of its letters (ISO 32000-1, 9.6.4).
      customName: `LAYDWN+OpenSans-${weight}`,
      subset: true,
      features: { liga: false, kern: true },
    });
  const faces: Faces = { regular: await embed('regular'), semibold: await embed('semibold'), bold: await embed('bold') };
  const pages: Page[] = [];
  return {
    widthMm,
    heightMm,
    faces,
    pages,
    scale,
    addPage(one = scale) {
      const page = newPage(faces, widthMm, heightMm, { scale: one, black, preview });
      pages.push(page);
      return page;
    },
    async finish(title, author, task = quietTask) {
      const refs = new Map<Picture, PDFRef>();
      for (const page of pages) {
        const leaf = file.addPage([widthMm * pointsPerMm, heightMm * pointsPerMm]).node;
        for (const weight of ['regular', 'semibold', 'bold'] as const) leaf.setFontDictionary(PDFName.of(weight), faces[weight].ref);
        for (const [picture, name] of page.pictures) {
          const ref = refs.get(picture) ?? picture.embed(file.context, black);
          refs.set(picture, ref);
          leaf.setXObject(PDFName.of(name), ref);
        }
        leaf.addContentStream(file.context.register(file.context.flateStream(scaled(page))));
        await task.pause();
      }
      file.setTitle(title, { showInWindowTitleBar: true });
      file.setAuthor(author);
      file.setLanguage(language);
      return file.save({ useObjectStreams: true, addDefaultPage: false });
    },
  };
}

function scaled({ operators, scale }: Page): string {
  const drawn = operators.join('\n');
  return scale === 1 ? drawn : `q ${say(scale)} 0 0 ${say(scale)} 0 0 cm\n${drawn}\nQ`;
}
