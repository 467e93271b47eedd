import { writeDxf } from '../../core/form/index.ts';
import type { PlannedStock } from '../../core/plan.ts';
import { dataOf } from '../cut-lines.ts';
import type { StockLines } from '../stock-lines.ts';
import { escape, mm, sayKerf } from './cut-svg.ts';

/**
 * A sheet of stock as SVG at true size. `cut` holds the knife paths stencil by stencil, `edges` what parts the stencils: cut
 * last, so that nothing slips before. `mark` is drawn, not cut; nothing folds in a stencil, so `fold` is there and empty.
 */
export function stockSvg(sheet: PlannedStock, lines: StockLines, title: string): string {
  const [w, h] = [mm(sheet.widthMm), mm(sheet.heightMm)];
  const open = (all: StockLines['marks']): string => all.map(([x0, y0, ...rest]) => `M${mm(x0)} ${mm(y0)}L${rest.map(mm).join(' ')}`).join('');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" fill="none" stroke="#000000" stroke-width="0.1">`,
    `<title>${escape(`${title}: ${sheet.materialName}, sheet ${sheet.number}`)}</title>`,
    `<desc>Millimetres. The side you see faces the mesh.${sayKerf(sheet.kerfMm)}${sheet.times > 1 ? ` Cut ${sheet.times} sheets like this.` : ''}</desc>`,
    `<g id="mark"><path d="${open(lines.marks)}"/></g>`,
    '<g id="fold"/>',
    `<g id="cut">${lines.stencils.map((s) => `<path fill-rule="evenodd" d="${dataOf(s.outlines)}"><title>${escape(`${s.placed.number}: ${s.name}`)}</title></path>`).join('\n')}</g>`,
    `<g id="edges"><path d="${open(lines.edges)}"/></g>`,
    '</svg>', '',
  ].join('\n');
}

/** The same as DXF in millimetres: CUT (edges last), MARK, FOLD. */
export function stockDxf(sheet: PlannedStock, lines: StockLines): string {
  return writeDxf([
    { name: 'MARK', colour: 5, outlines: [], lines: lines.marks },
    { name: 'FOLD', colour: 3, outlines: [] },
    { name: 'CUT', colour: 7, outlines: lines.stencils.flatMap((s) => s.outlines), lines: lines.edges },
  ], { minX: 0, maxY: sheet.heightMm });
}
