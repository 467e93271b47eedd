import type { SheetRect } from '../../ink/index.ts';

/** A film with the same row of fine tints and lines again and again: each row is uncovered longer than the one before. mm from the top left corner. */
export interface ExposureStrip {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly tints: readonly (SheetRect & { readonly cover: number })[];
  /** Lines by their width, black on bare and bare on black. */
  readonly lines: readonly (SheetRect & { readonly black: boolean })[];
  /** Where each row's number stands, and where each tint's figure stands. */
  readonly rows: readonly { readonly xMm: number; readonly yMm: number }[];
}

/** Where dots close up when it is too long, and where emulsion washes away when it is too short. */
export const stripTints: readonly number[] = [0.02, 0.03, 0.05, 0.1, 0.2, 0.5, 0.8, 0.9, 0.95, 0.97, 0.98];
export const stripRows = 8;
/** Half a stop from row to row: two rows double the light. */
export const stripFactor = Math.SQRT2;

const lineMicrons = [100, 150, 200, 300, 400];
const left = 16,
  top = 26,
  tintMm = 9,
  rowMm = 16,
  highMm = 11;

export function exposureStrip(): ExposureStrip {
  const linesAt = left + stripTints.length * tintMm + 3;
  const step = 2.6;
  const widthMm = linesAt + 2 * lineMicrons.length * step + 10,
    heightMm = top + stripRows * rowMm + 14;
  const every = Array.from({ length: stripRows }, (_, row) => top + row * rowMm);
  return {
    widthMm,
    heightMm,
    tints: every.flatMap((yMm) =>
      stripTints.map((cover, i) => ({ cover, xMm: left + i * tintMm, yMm, widthMm: tintMm - 1, heightMm: highMm })),
    ),
    lines: every.flatMap((yMm) => {
      const barMm = lineMicrons.length * step;
      const x = linesAt + barMm;
      return [
        ...lineMicrons.map((w, i) => ({ black: true, xMm: linesAt + i * step, yMm, widthMm: w / 1000, heightMm: highMm })),
        { black: true, xMm: x, yMm, widthMm: barMm, heightMm: highMm },
        ...lineMicrons.map((w, i) => ({ black: false, xMm: x + 1 + i * step, yMm: yMm + 1, widthMm: w / 1000, heightMm: highMm - 2 })),
      ];
    }),
    rows: every.map((yMm) => ({ xMm: 4, yMm })),
  };
}

/** What a washed-out row holds: the lightest tint whose dots are open, and the darkest whose emulsion still stands. */
export interface ExposedRow {
  readonly open: number;
  readonly held: number;
}

export interface ExposureFound {
  /** From 0. */
  readonly row: number;
  readonly seconds: number;
  readonly lightest: number;
  readonly darkest: number;
  /** The smallest dot and hole that the screen held, on a ruling. */
  readonly leastDotMicrons: number;
  /** The best row is an end of the strip: the best time may lie beyond. */
  readonly atEnd: 'shortest' | 'longest' | null;
}

/** Light each row had, and for how long it is uncovered beyond the row before. */
export function stripSeconds(firstSeconds: number): { readonly had: number[]; readonly more: number[] } {
  const had = Array.from({ length: stripRows }, (_, i) => firstSeconds * stripFactor ** i);
  return { had, more: had.map((s, i) => (i === 0 ? s : s - had[i - 1])) };
}

/**
 * The time that holds most: of the rows with the widest span of tones the middle one, so that a little more or less light does no harm
 * (common practice).
 * @param rows null where nothing was held
 */
export function bestExposure(firstSeconds: number, rows: readonly (ExposedRow | null)[], rulingPerCm: number): ExposureFound | null {
  const span = rows.map((r) => (r ? r.held - r.open : -1));
  const most = Math.max(...span);
  if (!(most > 0)) return null;
  const best = span.flatMap((s, i) => (s >= most - 1e-9 ? [i] : []));
  const row = best[Math.floor((best.length - 1) / 2)];
  const { open, held } = rows[row]!;
  const cellMicrons = 10000 / rulingPerCm;
  const small = Math.max(open, 1 - held);
  return {
    row,
    seconds: stripSeconds(firstSeconds).had[row],
    lightest: open,
    darkest: held,
    leastDotMicrons: Math.round(cellMicrons * Math.sqrt((4 * small) / Math.PI)),
    atEnd: best.includes(0) ? 'shortest' : best.includes(rows.length - 1) ? 'longest' : null,
  };
}
