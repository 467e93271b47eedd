import type { Segment } from '../../core/form/index.ts';
import type { Plan, PlannedStock } from '../../core/plan/index.ts';
import { asWritten, name as asName, say, sentences, type Saying } from '../../words/index.ts';
import { sayKerf } from '../files/cut-svg.ts';
import type { FlatSheet, OpenLine } from '../files/flat-sheet.ts';
import { penFigures } from '../files/pen-figures.ts';
import { markArmMm, registerMarks } from '../marks.ts';

/**
 * Puts the knife paths of each stencil where it lies on the stock, with register marks and the number of its run (all of them,
 * where it serves more). One that may not be cut leaves its place empty.
 */
export function layStock(plan: Plan, sheet: PlannedStock): FlatSheet {
  const marks: OpenLine[] = [];
  const shapes = sheet.placed.flatMap((placed) => {
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    const lines = layer?.written.machine;
    if (!layer || !lines) return [];
    const box = layer.stencil.sheet;
    const at = (x: number, y: number): [number, number] =>
      placed.turned ? [placed.xMm + box.maxY - y, placed.yMm + x - box.minX] : [placed.xMm + x - box.minX, placed.yMm + y - box.minY];
    for (const m of registerMarks(plan.job.image, box))
      marks.push([...at(m.x - markArmMm, m.y), ...at(m.x + markArmMm, m.y)], [...at(m.x, m.y - markArmMm), ...at(m.x, m.y + markArmMm)]);
    const high = Math.min(6, -box.minY - 3);
    const runs = plan.layers
      .filter((l) => placed.layers.includes(l.id))
      .map((l) => l.run)
      .join('-');
    if (high > 1)
      marks.push(...penFigures(runs, box.minX + 3, box.minY + 1.5, high).map((line) => pairs(line).flatMap(([x, y]) => at(x, y))));
    const outlines = lines.outlines.map((segments) =>
      segments.map((s): Segment => ({ kind: s.kind, points: pairs(s.points).flatMap(([x, y]) => at(x, y)) })),
    );
    return [{ name: say('packet.numbered', { number: placed.number, layer: asName(layer.name) }), outlines }];
  });
  return {
    widthMm: sheet.widthMm,
    heightMm: sheet.heightMm,
    title: say('packet.titled', { title: asName(plan.job.title), drawing: sheetOfStock(sheet) }),
    says: sentences(say('packet.facesMesh'), sayKerf(sheet.kerfMm), sheet.times > 1 && say('packet.cutMoreLikeIt', { n: sheet.times })),
    shapes,
    edges: sheet.edges,
    marks,
  };
}

/** `Coated paper, sheet 2`. */
export const sheetOfStock = ({ materialName, number }: PlannedStock): Saying =>
  say('packet.sheetOfStock', { material: asWritten(materialName), number });

function pairs(values: readonly number[]): [number, number][] {
  return Array.from({ length: values.length / 2 }, (_, i) => [values[i * 2], values[i * 2 + 1]]);
}
