/** A straight cut: from x, y to x, y, mm from the stock's top left corner. */
export type EdgeLine = readonly [number, number, number, number];

interface SheetOfStock {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly kerfMm: number;
  readonly placed: readonly { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number }[];
}

/** Where stencils part from one another and from the offcut. Their outer edges: half a kerf outside each, met edges only once. */
export function edgesOnStock(sheet: SheetOfStock): EdgeLine[] {
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
    ...[...upright].sort(([a], [b]) => a - b).flatMap(([x, spans]) => joined(spans).map(([a, b]): EdgeLine => [x, a, x, b])),
    ...[...level].sort(([a], [b]) => a - b).flatMap(([y, spans]) => joined(spans).map(([a, b]): EdgeLine => [a, y, b, y])),
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
