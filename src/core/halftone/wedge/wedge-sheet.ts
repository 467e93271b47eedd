import type { SheetMark, SheetRect } from '../../ink/index.ts';

export interface WedgeField extends SheetRect {
  /** What stands on the film, 0..1. */
  readonly cover: number;
}

/** A film with every step of a tone, to be printed in one ink and read. mm from the top left corner. */
export interface WedgeSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Square rings around these centres, clockwise from the top left; the first has a dot inside. They print in the ink itself. */
  readonly marks: readonly (SheetMark & { readonly sizeMm: number; readonly holeMm: number; readonly dotMm: number })[];
  readonly fields: readonly WedgeField[];
  /** Left bare: where a photograph's light is evened out. */
  readonly bare: readonly SheetRect[];
}

/** Fine where dots are lost and where holes close; the last is the solid. */
export const wedgeSteps: readonly number[] = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];

const columns = 4,
  fieldMm = 18,
  pitchMm = 27,
  left = 24,
  top = 30;
const markMm = 11;

/**
 * Every step stands twice, the second time from the other end: what the pull or the light does from one side of the sheet to the other
 * falls out of their mean.
 */
export function wedgeSheet(): WedgeSheet {
  const covers = [...wedgeSteps, ...[...wedgeSteps].reverse()];
  const rows = Math.ceil(covers.length / columns);
  const widthMm = 2 * left + (columns - 1) * pitchMm + fieldMm,
    heightMm = top + (rows - 1) * pitchMm + fieldMm + 24;
  const at = (i: number): { xMm: number; yMm: number } => ({
    xMm: left + (i % columns) * pitchMm,
    yMm: top + Math.floor(i / columns) * pitchMm,
  });
  const fields = covers.map((cover, i) => ({ cover, ...at(i), widthMm: fieldMm, heightMm: fieldMm }));
  const gap = pitchMm - fieldMm;
  // Between the fields of a row, and beside its ends: clear of the figures that stand under them.
  const bare = Array.from({ length: rows }, (_, row) => top + row * pitchMm + 2).flatMap((yMm) =>
    Array.from({ length: columns + 1 }, (_, column) => ({
      xMm: left + column * pitchMm - gap + 1.5,
      yMm,
      widthMm: gap - 3,
      heightMm: fieldMm - 4,
    })),
  );
  const inset = 4 + markMm / 2;
  const marks = (
    [
      [inset, inset],
      [widthMm - inset, inset],
      [widthMm - inset, heightMm - inset],
      [inset, heightMm - inset],
    ] as const
  ).map(([xMm, yMm], i) => ({ xMm, yMm, sizeMm: markMm, holeMm: 6.5, dotMm: i === 0 ? 2.8 : 0 }));
  return { widthMm, heightMm, marks, fields, bare };
}
