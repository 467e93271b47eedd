import { boardSquares } from '../../../core/form/index.ts';
import { length, say, tell, type Reader } from '../../../words/index.ts';
import { openBook, type FontFiles } from '../../pdf/book.ts';
import { pageSize } from '../../printer.ts';
import { type } from '../ink/setting.ts';

/**
 * The checked board that a camera's lens is read from, on A4 or Letter, at true size: squares in black, a line to measure,
 * and how to photograph it.
 */
export async function makeLensBoard(sheet: 'a4' | 'letter', fonts: FontFiles, reader: Reader): Promise<Uint8Array> {
  const { widthMm, heightMm } = pageSize(sheet);
  const book = await openBook(fonts, widthMm, heightMm, reader.language);
  const page = book.addPage();
  const { columns, rows, squareMm } = boardSquares;
  const left = (widthMm - columns * squareMm) / 2,
    top = 10;
  for (let row = 0; row < rows; row++)
    for (let column = row % 2; column < columns; column += 2)
      page.rect(left + column * squareMm, top + row * squareMm, squareMm, squareMm, { fill: '#000000' });
  const width = columns * squareMm,
    below = top + rows * squareMm + 5;
  page.line(left, below, left + width, below, 0.3);
  for (const x of [left, left + width]) page.line(x, below - 2, x, below + 2, 0.3);
  const square = length(squareMm);
  const y = page.para(left, below + 3.5, width, tell(say('packet.lensMeasure', { line: length(width), square }), reader), type.smallStrong);
  page.para(left, y + 0.5, width, tell(say('packet.lensHow'), reader), type.small);
  return book.finish(tell(say('packet.lensBoard'), reader), '');
}
