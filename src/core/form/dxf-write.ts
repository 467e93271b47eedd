import type { Segment } from './fit.ts';
import { flattenOutline } from './fit.ts';

/** One layer of a cutting file. Colour numbers are the format's own index (1 red, 3 green, 5 blue, 7 black or white). */
export interface DxfLayer {
  readonly name: 'CUT' | 'MARK' | 'FOLD';
  readonly colour: number;
  /** Closed outlines in mm, y down. */
  readonly outlines: readonly (readonly Segment[])[];
  /** Open lines in mm: x0, y0, x1, y1, … */
  readonly lines?: readonly (readonly number[])[];
}

/** Polylines leave the curves they stand for by no more than this. */
const polylineFlatMm = 0.0015;

/**
 * A DXF file (text form, format AC1015; group codes from the published DXF Reference) in millimetres, y up, with
 * 0, 0 at the lower left of a sheet `heightMm` high. Straight outlines are closed polylines; curves are exact cubic
 * splines, each outline a chain of them that closes; `curves: false` writes polylines only.
 */
export function writeDxf(layers: readonly DxfLayer[], sheet: { readonly minX: number; readonly maxY: number }, curves = true): string {
  const out: string[] = [];
  let handle = 0x100;
  const put = (code: number, value: string | number): void => {
    out.push(String(code), typeof value === 'number' && !Number.isInteger(value) ? value.toFixed(4) : String(value));
  };
  const x = (v: number): string => (v - sheet.minX).toFixed(4);
  const y = (v: number): string => (sheet.maxY - v).toFixed(4);
  put(0, 'SECTION');
  put(2, 'HEADER');
  put(9, '$ACADVER');
  put(1, 'AC1015');
  put(9, '$INSUNITS');
  put(70, 4);
  put(9, '$MEASUREMENT');
  put(70, 1);
  put(0, 'ENDSEC');
  put(0, 'SECTION');
  put(2, 'TABLES');
  put(0, 'TABLE');
  put(2, 'LAYER');
  put(70, layers.length);
  for (const layer of layers) {
    put(0, 'LAYER');
    put(5, (handle++).toString(16).toUpperCase());
    put(100, 'AcDbSymbolTableRecord');
    put(100, 'AcDbLayerTableRecord');
    put(2, layer.name);
    put(70, 0);
    put(62, layer.colour);
    put(6, 'CONTINUOUS');
  }
  put(0, 'ENDTAB');
  put(0, 'ENDSEC');
  put(0, 'SECTION');
  put(2, 'ENTITIES');
  const begin = (kind: string, layer: string, sub: string): void => {
    put(0, kind);
    put(5, (handle++).toString(16).toUpperCase());
    put(100, 'AcDbEntity');
    put(8, layer);
    put(100, sub);
  };
  const polyline = (layer: string, points: ArrayLike<number>, closed: boolean): void => {
    begin('LWPOLYLINE', layer, 'AcDbPolyline');
    put(90, points.length / 2);
    put(70, closed ? 1 : 0);
    for (let i = 0; i < points.length; i += 2) {
      put(10, x(points[i]));
      put(20, y(points[i + 1]));
    }
  };
  for (const layer of layers) {
    for (const outline of layer.outlines) {
      if (!curves || outline.every((s) => s.kind !== 'curve')) {
        for (const ring of flattenOutline([outline], polylineFlatMm).rings) polyline(layer.name, ring, true);
        continue;
      }
      writeSpline(outline, (points, knots) => {
        begin('SPLINE', layer.name, 'AcDbSpline');
        // 8: planar; 1: closed.
        put(70, 9);
        put(71, 3);
        put(72, knots.length);
        put(73, points.length / 2);
        put(74, 0);
        put(42, '0.0000001');
        put(43, '0.0000001');
        for (const k of knots) put(40, k.toFixed(1));
        for (let i = 0; i < points.length; i += 2) {
          put(10, x(points[i]));
          put(20, y(points[i + 1]));
          put(30, '0.0');
        }
      });
    }
    for (const line of layer.lines ?? []) polyline(layer.name, line, false);
  }
  put(0, 'ENDSEC');
  put(0, 'EOF');
  return `${out.join('\r\n')}\r\n`;
}

/** Lines and cubic curves as one cubic B-spline with threefold knots: the same curve exactly, corners included. */
function writeSpline(outline: readonly Segment[], write: (points: number[], knots: number[]) => void): void {
  const points: number[] = [...outline[0].points];
  const start = outline[0].points;
  const put = (handles: readonly number[]): void => void points.push(...handles);
  const lineTo = (tx: number, ty: number): void => {
    const ax = points[points.length - 2],
      ay = points[points.length - 1];
    put([ax + (tx - ax) / 3, ay + (ty - ay) / 3, ax + (2 * (tx - ax)) / 3, ay + (2 * (ty - ay)) / 3, tx, ty]);
  };
  for (const s of outline.slice(1)) {
    if (s.kind === 'curve') put(s.points);
    else lineTo(s.points[0], s.points[1]);
  }
  if (Math.hypot(points[points.length - 2] - start[0], points[points.length - 1] - start[1]) > 1e-6) lineTo(start[0], start[1]);
  const pieces = (points.length / 2 - 1) / 3;
  const knots = [0, 0, 0, 0];
  for (let i = 1; i < pieces; i++) knots.push(i, i, i);
  knots.push(pieces, pieces, pieces, pieces);
  write(points, knots);
}
