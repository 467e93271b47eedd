import type { Segment } from '../core/form/index.ts';
import type { Plan, PlacedOnStock, PlannedStock } from '../core/plan.ts';
import type { CutLines } from './cut-lines.ts';
import { markArmMm, registerMarks } from './marks.ts';

/** x0, y0, x1, y1, … in mm. */
export type OpenLine = readonly number[];

/** A sheet of stock as it will be drawn and cut: mm from its top left corner. */
export interface StockLines {
  readonly stencils: readonly { readonly placed: PlacedOnStock; readonly name: string; readonly outlines: readonly (readonly Segment[])[] }[];
  /** Where stencils part from one another and from the offcut; shared cuts once, nothing along the stock's own edge. */
  readonly edges: readonly OpenLine[];
  /** Register marks, and each stencil's number of its run (all of them, where it serves more). */
  readonly marks: readonly OpenLine[];
}

/** Puts the knife paths of each stencil where it lies on the stock. */
export function layStock(plan: Plan, sheet: PlannedStock, linesOf: ReadonlyMap<string, CutLines>): StockLines {
  const marks: OpenLine[] = [];
  const stencils = sheet.placed.flatMap((placed) => {
    const layer = plan.layers.find((l) => l.id === placed.layerId);
    const lines = linesOf.get(placed.layerId);
    if (!layer || !lines) return [];
    const box = layer.stencil.sheet;
    const at = (x: number, y: number): [number, number] => placed.turned
      ? [placed.xMm + box.maxY - y, placed.yMm + x - box.minX] : [placed.xMm + x - box.minX, placed.yMm + y - box.minY];
    for (const m of registerMarks(plan.job.image, box)) marks.push([...at(m.x - markArmMm, m.y), ...at(m.x + markArmMm, m.y)], [...at(m.x, m.y - markArmMm), ...at(m.x, m.y + markArmMm)]);
    const high = Math.min(6, -box.minY - 3);
    const runs = plan.layers.filter((l) => placed.layers.includes(l.id)).map((l) => l.run).join('-');
    if (high > 1) marks.push(...strokes(runs, box.minX + 3, box.minY + 1.5, high).map((line) => pairs(line).flatMap(([x, y]) => at(x, y))));
    const outlines = lines.outlines.map((segments) => segments.map((s): Segment => ({ kind: s.kind, points: pairs(s.points).flatMap(([x, y]) => at(x, y)) })));
    return [{ placed, name: layer.name, outlines }];
  });
  return { stencils, edges: edgesOf(sheet), marks };
}

function pairs(values: readonly number[]): [number, number][] {
  return Array.from({ length: values.length / 2 }, (_, i) => [values[i * 2], values[i * 2 + 1]]);
}

/** The outer edges of all stencils: half a kerf outside each, met edges only once. */
function edgesOf(sheet: PlannedStock): OpenLine[] {
  const off = sheet.kerfMm / 2;
  const upright = new Map<number, [number, number][]>(), level = new Map<number, [number, number][]>();
  const add = (into: Map<number, [number, number][]>, at: number, from: number, to: number, size: number): void => {
    if (at <= off + 1e-6 || at >= size - off - 1e-6) return;
    const key = Math.round(at * 1e4) / 1e4;
    into.set(key, [...(into.get(key) ?? []), [from, to]]);
  };
  for (const p of sheet.placed) {
    const [x0, y0, x1, y1] = [p.xMm - off, p.yMm - off, p.xMm + p.widthMm + off, p.yMm + p.heightMm + off];
    const inX = (x: number): number => Math.min(sheet.widthMm, Math.max(0, x)), inY = (y: number): number => Math.min(sheet.heightMm, Math.max(0, y));
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

/** Figures as pen strokes, for machines without letters: up to seven strokes a figure, as on a plain counter. */
const strokesOf: Readonly<Record<string, string>> = { '0': 'abcdef', '1': 'bc', '2': 'abged', '3': 'abgcd', '4': 'fgbc', '5': 'afgcd', '6': 'afgedc', '7': 'abc', '8': 'abcdefg', '9': 'abcdfg', '-': 'g' };
const strokeAt: Readonly<Record<string, readonly [number, number, number, number]>> = {
  a: [0, 0, 1, 0], b: [1, 0, 1, 1], c: [1, 1, 1, 2], d: [0, 2, 1, 2], e: [0, 1, 0, 2], f: [0, 0, 0, 1], g: [0, 1, 1, 1],
};

function strokes(text: string, x: number, y: number, highMm: number): number[][] {
  const unit = highMm / 2;
  return [...text].flatMap((figure, i) => [...(strokesOf[figure] ?? '')].map((s) => {
    const [x0, y0, x1, y1] = strokeAt[s];
    const left = x + i * unit * 1.6;
    return [left + x0 * unit, y + y0 * unit, left + x1 * unit, y + y1 * unit];
  }));
}
