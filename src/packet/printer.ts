import { paperSizes } from '../core/units/index.ts';

/** The printer's paper, and how near to its edge it can print, mm (0 to 30). */
export interface Printer {
  readonly page: 'a4' | 'letter';
  readonly marginMm: number;
}

export function pageSize(page: Printer['page']): { readonly widthMm: number; readonly heightMm: number } {
  const found = paperSizes.find((p) => p.id === page);
  return found
    ? { widthMm: found.widthMm, heightMm: found.heightMm }
    : page === 'a4'
      ? { widthMm: 210, heightMm: 297 }
      : { widthMm: 215.9, heightMm: 279.4 };
}
