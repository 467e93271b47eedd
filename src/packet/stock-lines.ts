import type { Segment } from '../core/form/index.ts';
import type { Plan, PlannedStock } from '../core/plan/index.ts';
import { asWritten, name as asName, say, sentences, type Saying } from '../words/index.ts';
import type { CutLines } from './cut-lines.ts';
import { sayKerf } from './files/cut-svg.ts';
import type { FlatSheet, OpenLine } from './files/flat-sheet.ts';
import { penFigures } from './files/pen-figures.ts';
import { markArmMm, registerMarks } from './marks.ts';

/** Puts the knife paths of each stencil where it lies on the stock, with register marks and the number of its run (all of them, where it serves more). */
export function layStock(plan: Plan, sheet: PlannedStock, linesOf: ReadonlyMap<string, CutLines>): FlatSheet {
  const marks: OpenLine[] = [];
  const shapes = sheet.placed.flatMap((placed) => {
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    const lines = linesOf.get(placed.layerId);
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
    edges: edgesOf(sheet),
    marks,
  };
}

/** `Coated paper, sheet 2`. */
export const sheetOfStock = ({ materialName, number }: PlannedStock): Saying =>
  say('packet.sheetOfStock', { material: asWritten(materialName), number });

function pairs(values: readonly number[]): [number, number][] {
  return Array.from({ length: values.length / 2 }, (_, i) => [values[i * 2], values[i * 2 + 1]]);
}

/** Where stencils part from one another and from the offcut. Their outer edges: half a kerf outside each, met edges only once. */
function edgesOf(sheet: PlannedStock): OpenLine[] {
  const off = sheet.kerfMm / 2;
  const upright = new Map<number, [number, number][]>(),
    level = new Map<number, [number, number][]>();
  const add = (into: Map<number, [number, number][]>, at: number, from: number, to: number, size: number): void => {
    if (at <= off + 1e-6 || at >= size - off - 1e-6) return;
    const key = Math.round(at * 1e4) / 1e4;
    into.set(key, [...(into.get(key) ?? []), [from, to]]);
  };
  for (const p of sheet.placed) {
    const [x0, y0, x1, y1] = [p.xMm - off, p.yMm - off, p.xMm + p.widthMm + off, p.yMm + p.heightMm + off];
    const inX = (x: number): number => Math.min(sheet.widthMm, Math.max(0, x)),
      inY = (y: number): number => Math.min(sheet.heightMm, Math.max(0, y));
    for (const x of [x0, x1]) add(upright, x, inY(y0), inY(y1), sheet.widthMm);
    for (const y of [y0, y1]) add(level, y, inX(x0), inX(x1), sheet.heightMm);
  }
  return [
    ...[...upright].sort(([a], [b]) => a - b).flatMap(([x, spans]) => joined(spans).map(([a, b]): OpenLine => [x, a, x, b])),
    ...[...level].sort(([a], [b]) => a - b).flatMap(([y, spans]) => joined(spans).map(([a, b]): OpenLine => [a, y, b, y])),
  ];
}

function joined(spans: readonly (readonly [number, number])[]): [number, number][] {
  const out: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = out[out.length - 1];
    if (last && from <= last[1] + 1e-6) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}
