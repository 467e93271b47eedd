import { exp } from '../../numeric/index.ts';
import { blurWasm } from './blur-wasm.ts';

/**
 * Gaussian blur of one layer's mask, in place of nothing: reads the bit, writes shares 0..1. Beyond the border the mask
 * goes on as it is at the border, so that the image's edge costs no knife.
 */
export function gaussTaps(sigmaPx: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3 * sigmaPx));
  const taps = new Float32Array(2 * radius + 1);
  let sum = 0;
  for (let i = -radius; i <= radius; i++) sum += taps[i + radius] = exp((-i * i) / (2 * sigmaPx * sigmaPx));
  for (let i = 0; i < taps.length; i++) taps[i] /= sum;
  return taps;
}

interface Exports {
  readonly memory: WebAssembly.Memory;
  rows(plane: number, out: number, width: number, height: number, taps: number, radius: number, line: number): void;
  columns(plane: number, out: number, width: number, height: number, taps: number, radius: number): void;
}

let engine: Exports | undefined;

/** The engine's memory: two planes, the taps (and two more of nothing), a row with what lies beyond its ends. */
interface Desk {
  readonly engine: Exports;
  readonly planes: readonly [Float32Array, Float32Array];
  readonly tapsAt: number;
  readonly lineAt: number;
}

const pageBytes = 65536;

function deskFor(width: number, height: number, taps: Float32Array): Desk {
  engine ??= new WebAssembly.Instance(new WebAssembly.Module(Uint8Array.from(atob(blurWasm), (c) => c.charCodeAt(0))))
    .exports as unknown as Exports;
  const n = width * height,
    planeBytes = Math.ceil(n / 4) * 16,
    tapsAt = pageBytes + 2 * planeBytes,
    lineAt = tapsAt + 8 * (taps.length + 2),
    end = lineAt + 8 * (width + taps.length),
    { memory } = engine;
  if (end > memory.buffer.byteLength) memory.grow(Math.ceil((end - memory.buffer.byteLength) / pageBytes));
  const weights = new Float64Array(memory.buffer, tapsAt, taps.length + 2);
  weights.set(taps);
  weights.fill(0, taps.length);
  return {
    engine,
    planes: [new Float32Array(memory.buffer, pageBytes, n), new Float32Array(memory.buffer, pageBytes + planeBytes, n)],
    tapsAt,
    lineAt,
  };
}

/** The second plane's columns blurred into the first. */
function columnsOf({ engine: { columns }, planes: [to, from], tapsAt }: Desk, width: number, height: number, radius: number): Float32Array {
  columns(from.byteOffset, to.byteOffset, width, height, tapsAt + 8 * radius, radius);
  return to;
}

/** One plane blurred: its rows, then its columns into `out`. Both of width × height. */
export function blurPlane(plane: Float32Array, width: number, height: number, taps: Float32Array, out: Float32Array): void {
  const desk = deskFor(width, height, taps),
    radius = taps.length >> 1,
    [from, to] = desk.planes;
  from.set(plane);
  desk.engine.rows(from.byteOffset, to.byteOffset, width, height, desk.tapsAt, radius, desk.lineAt);
  out.set(columnsOf(desk, width, height, radius));
}

/**
 * The same of one layer's mask, without a plane of it: along a row a mask is but a few edges, and each changes only what lies within
 * reach of it.
 */
export function blurMask(codes: Uint8Array, layer: number, width: number, height: number, taps: Float32Array, out: Float32Array): void {
  const desk = deskFor(width, height, taps),
    [, across] = desk.planes,
    radius = taps.length >> 1;
  // Sums of the taps up to each: what a pixel sees of ink that begins so far to its right.
  const sums = new Float64Array(taps.length + 1),
    line = new Float64Array(width);
  for (let t = 0; t < taps.length; t++) sums[t + 1] = sums[t] + taps[t];
  const all = sums[taps.length];
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let value = (codes[row] >> layer) & 1,
      done = 0;
    line.fill(0);
    for (let edge = 1; edge < width; edge++) {
      if (((codes[row + edge] >> layer) & 1) === value) continue;
      // Up to here all is seen of what came before; from here on of what comes now.
      const first = edge - radius < 0 ? 0 : edge - radius,
        end = edge + radius < width ? edge + radius : width;
      if (value) for (; done < edge; done++) line[done] += all;
      else done = edge;
      value ^= 1;
      const step = value ? 1 : -1;
      for (let x = first; x < edge; x++) line[x] += step * (all - sums[edge - x + radius]);
      for (let x = edge; x < end; x++) line[x] -= step * sums[edge - x + radius];
    }
    if (value) for (; done < width; done++) line[done] += all;
    across.set(line, row);
  }
  out.set(columnsOf(desk, width, height, radius));
}

/** A picture's Lab, three numbers a pixel, blurred by σ in pixels. */
export function softened(lab: Float32Array, width: number, height: number, sigmaPx: number): Float32Array {
  const taps = gaussTaps(sigmaPx),
    plane = new Float32Array(width * height),
    soft = plane.slice(),
    out = new Float32Array(lab.length);
  for (let c = 0; c < 3; c++) {
    for (let i = 0; i < plane.length; i++) plane[i] = lab[i * 3 + c];
    blurPlane(plane, width, height, taps, soft);
    for (let i = 0; i < plane.length; i++) out[i * 3 + c] = soft[i];
  }
  return out;
}
