import { writeDxf } from '../../core/form/index.ts';
import type { Plan } from '../../core/plan/index.ts';
import type { CutLines } from '../../core/cutfile/index.ts';
import { markArmMm, registerMarks } from '../marks.ts';

/** A stencil as DXF in millimetres: CUT holds the closed knife paths; MARK the register marks and the sheet's edge, not to be cut through. */
export function cutDxf(
  layer: Plan['layers'][number],
  lines: CutLines,
  image: { readonly widthMm: number; readonly heightMm: number },
): string {
  const { sheet } = layer.stencil;
  const marks = registerMarks(image, sheet).flatMap((m) => [
    [m.x - markArmMm, m.y, m.x + markArmMm, m.y],
    [m.x, m.y - markArmMm, m.x, m.y + markArmMm],
  ]);
  const edge = [sheet.minX, sheet.minY, sheet.maxX, sheet.minY, sheet.maxX, sheet.maxY, sheet.minX, sheet.maxY, sheet.minX, sheet.minY];
  return writeDxf(
    [
      { name: 'CUT', colour: 7, outlines: lines.outlines },
      { name: 'MARK', colour: 7, outlines: [], lines: [...marks, edge] },
    ],
    sheet,
  );
}
