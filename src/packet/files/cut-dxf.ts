import { fitOutline, writeDxf } from '../../core/form/index.ts';
import { markArmMm, registerMarks } from '../marks.ts';

type CutLayer = import('../../core/plan.ts').Plan['layers'][number];

/** A stencil as DXF in millimetres, true size: knife paths on CUT (curves fitted, closed), register marks and the sheet's edge on MARK. */
export function cutDxf(layer: CutLayer, image: { readonly widthMm: number; readonly heightMm: number }): string {
  const { sheet, cutLines } = layer.stencil;
  const arm = markArmMm;
  const marks = registerMarks(image, sheet).flatMap((m) => [[m.x - arm, m.y, m.x + arm, m.y], [m.x, m.y - arm, m.x, m.y + arm]]);
  const edge = [sheet.minX, sheet.minY, sheet.maxX, sheet.minY, sheet.maxX, sheet.maxY, sheet.minX, sheet.maxY, sheet.minX, sheet.minY];
  return writeDxf([
    { name: 'CUT', colour: 7, outlines: fitOutline(cutLines) },
    { name: 'MARK', colour: 5, outlines: [], lines: [...marks, edge] },
  ], sheet);
}
