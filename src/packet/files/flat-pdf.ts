import type { Voice } from '../voice.ts';
import { openBook, type FontFiles } from '../pdf/book.ts';
import type { FlatSheet, OpenLine } from './flat-sheet.ts';

/** The same sheet as one PDF page of its own size, to be plotted or printed and cut by hand: knife paths black, register marks and figures thin. */
export async function flatPdf(sheet: FlatSheet, fonts: FontFiles, voice: Voice): Promise<Uint8Array> {
  const book = await openBook(fonts, sheet.widthMm, sheet.heightMm, voice.reader.language);
  const page = book.addPage();
  const draw = (lines: readonly OpenLine[], wideMm: number): void => {
    for (const line of lines)
      for (let i = 0; i + 3 < line.length; i += 2) page.line(line[i], line[i + 1], line[i + 2], line[i + 3], wideMm);
  };
  draw(sheet.marks, 0.1);
  for (const shape of sheet.shapes) page.outlines(shape.outlines, { xMm: 0, yMm: 0 }, { stroke: '#000000', lineMm: 0.15 });
  draw(sheet.edges, 0.15);
  return book.finish(voice.tell(sheet.title), '');
}
