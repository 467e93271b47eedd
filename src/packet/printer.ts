import { paperSizes } from '../core/units/index.ts';

/** The papers that office printers take, smallest first. */
export const printerPages = ['a4', 'letter', 'a3', 'tabloid'] as const;
export type PrinterPage = (typeof printerPages)[number];

/** The printer's paper, and how near to its edge it can print, mm (0 to 30). */
export interface Printer {
  readonly page: PrinterPage;
  readonly marginMm: number;
}

/** Letters larger by this much, for bad light and tired eyes. */
const largeType = 1.2;

export function pageSize(page: PrinterPage): { readonly widthMm: number; readonly heightMm: number } {
  const found = paperSizes.find((p) => p.id === page);
  if (!found) throw new RangeError(page);
  return { widthMm: found.widthMm, heightMm: found.heightMm };
}

/** How much larger than on a small page words and pictures stand. Drawings at true size never change. */
export function pageScale(page: PrinterPage, large = false): number {
  if (page === 'a3') return pageSize('a3').widthMm / pageSize('a4').widthMm;
  if (page === 'tabloid') return pageSize('tabloid').widthMm / pageSize('letter').widthMm;
  return large ? largeType : 1;
}
