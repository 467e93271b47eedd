/**
 * The board that is printed for reading a lens: as many squares as A4 and Letter both take at true size. Neither number of
 * squares equals the other, so that no board lies on its side unnoticed.
 */
export const boardSquares = { columns: 9, rows: 12, squareMm: 20 } as const;
