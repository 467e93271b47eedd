import { drawdownSheet, type DrawdownSheet } from '../../../core/ink/index.ts';
import { openBook, type FontFiles } from '../../pdf/book.ts';
import type { Page } from '../../pdf/page.ts';
import { pointsPerMm } from '../../pdf/numbers.ts';
import { english, say, tell, type Reader } from '../../../words/index.ts';

const black = '#000000';

/** Ends of a strip are marked by corners, not by a frame: a line under the ink would be read with it. */
function stripCorners(page: Page, x: number, y: number, width: number, height: number): void {
  const arm = 3,
    off = 0.6,
    line = 0.25;
  // The right ends lie on the black bar.
  for (const [cx, sx, fill] of [
    [x - off, 1, black],
    [x + width + off, -1, '#ffffff'],
  ] as const) {
    for (const [cy, sy] of [
      [y - off, 1],
      [y + height + off, -1],
    ] as const) {
      page.rect(Math.min(cx, cx + sx * arm), cy - line / 2, arm, line, { fill });
      page.rect(cx - line / 2, Math.min(cy, cy + sy * arm), line, arm, { fill });
    }
  }
}

/** Draws a drawdown sheet: marks that a photograph is found by, a black bar, a place for each strength, labels. */
export function drawdownPage(page: Page, sheet: DrawdownSheet, reader: Reader): void {
  for (const mark of sheet.marks) {
    page.rect(mark.xMm - mark.sizeMm / 2, mark.yMm - mark.sizeMm / 2, mark.sizeMm, mark.sizeMm, { fill: black });
    page.rect(mark.xMm - mark.holeMm / 2, mark.yMm - mark.holeMm / 2, mark.holeMm, mark.holeMm, { fill: '#ffffff' });
    if (mark.dotMm > 0) page.rect(mark.xMm - mark.dotMm / 2, mark.yMm - mark.dotMm / 2, mark.dotMm, mark.dotMm, { fill: black });
  }
  const { blackBar: bar, greyCard: card, checkLine: check } = sheet;
  page.rect(bar.xMm, bar.yMm, bar.widthMm, bar.heightMm, { fill: black });
  for (const strip of sheet.strips) stripCorners(page, strip.xMm, strip.yMm, strip.widthMm, strip.heightMm);
  page.rect(card.xMm, card.yMm, card.widthMm, card.heightMm, { stroke: black, lineMm: 0.2, dashMm: [2, 1.5] });
  page.line(check.xMm, check.yMm, check.xMm + check.lengthMm, check.yMm, 0.4);
  for (const x of [check.xMm, check.xMm + check.lengthMm]) page.line(x, check.yMm - 2, x, check.yMm + 2, 0.4);
  for (const label of sheet.labels) {
    const size = label.sizeMm * pointsPerMm;
    page.fit(label.xMm, label.yMm + label.sizeMm * 0.36, label.sizeMm > 4 ? 120 : label.sizeMm > 3 ? 16 : 140, tell(label.text, reader), {
      size,
      weight: label.sizeMm > 3 ? 'semibold' : 'regular',
    });
  }
}

/**
 * A drawdown sheet for each ink named, A4, to be printed at true size: the same sheet that `readSheetPhoto` reads.
 * @param titles names of the inks, a page each
 * @param shares ink to base by volume, 1 = undiluted; the usual ladder when left out
 * @throws ProblemError for more strengths than a sheet takes
 */
export async function makeDrawdownSheets(
  titles: readonly string[],
  fonts: FontFiles,
  shares?: readonly number[],
  reader: Reader = english,
): Promise<Uint8Array> {
  const sheets = (titles.length > 0 ? titles : ['']).map((title) => drawdownSheet(title, shares));
  const book = await openBook(fonts, sheets[0].widthMm, sheets[0].heightMm, reader.language);
  for (const sheet of sheets) drawdownPage(book.addPage(), sheet, reader);
  return book.finish(titles.length === 1 ? titles[0] : tell(say('ink.drawdownSheets'), reader), '');
}
