import FFT from 'fft.js';
import { exp, log } from '../../numeric/index.ts';
import { blurPlane, gaussTaps } from '../kernels/blur.ts';

/** The paper's own size: the measure is about things, not about detail. */
const side = 64;

/**
 * Spectral residual (X. Hou, L. Zhang: Saliency Detection: A Spectral Residual Approach, CVPR 2007): what the logarithm of the amplitudes has
 * beside its own mean over 3 × 3 frequencies, turned back with the phases, squared and blurred. Summed over planes.
 */
export function residualSaliency(planes: readonly Float32Array[], width: number, height: number): Float32Array {
  const small = new Float32Array(side * side);
  for (const plane of planes) {
    const values = new Float64Array(2 * side * side);
    shrunk(plane, width, height).forEach((v, i) => {
      values[2 * i] = v;
    });
    transform2(values, false);
    const amplitudes = Float64Array.from({ length: side * side }, (_, i) => Math.hypot(values[2 * i], values[2 * i + 1]) + 1e-9),
      levels = amplitudes.map(log);
    for (let v = 0; v < side; v++)
      for (let u = 0; u < side; u++) {
        let mean = 0;
        for (let dv = -1; dv <= 1; dv++)
          for (let du = -1; du <= 1; du++) mean += levels[((v + dv + side) % side) * side + ((u + du + side) % side)] / 9;
        const i = v * side + u,
          factor = exp(levels[i] - mean) / amplitudes[i];
        values[2 * i] *= factor;
        values[2 * i + 1] *= factor;
      }
    transform2(values, true);
    const powers = Float64Array.from({ length: side * side }, (_, i) => values[2 * i] ** 2 + values[2 * i + 1] ** 2);
    // What the plane itself has to say: a grey picture has nothing in its chroma.
    const spread = spreadOf(plane);
    const sum = powers.reduce((a, b) => a + b, 0);
    for (let i = 0; i < small.length; i++) small[i] += (powers[i] / (sum || 1)) * spread;
  }
  const soft = new Float32Array(small.length);
  blurPlane(small, side, side, gaussTaps(2.5), soft);
  return enlarged(soft, width, height);
}

function spreadOf(plane: Float32Array): number {
  let sum = 0,
    squares = 0;
  for (const v of plane) {
    sum += v;
    squares += v * v;
  }
  return Math.sqrt(Math.max(0, squares / plane.length - (sum / plane.length) ** 2));
}

function shrunk(plane: Float32Array, width: number, height: number): Float64Array {
  const out = new Float64Array(side * side);
  for (let v = 0; v < side; v++)
    for (let u = 0; u < side; u++) {
      const x0 = Math.floor((u * width) / side),
        x1 = Math.max(x0 + 1, Math.floor(((u + 1) * width) / side)),
        y0 = Math.floor((v * height) / side),
        y1 = Math.max(y0 + 1, Math.floor(((v + 1) * height) / side));
      let sum = 0;
      for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) sum += plane[y * width + x];
      out[v * side + u] = sum / ((x1 - x0) * (y1 - y0));
    }
  return out;
}

function enlarged(small: Float32Array, width: number, height: number): Float32Array {
  const out = new Float32Array(width * height);
  const place = (at: number, of: number): readonly [number, number, number] => {
    const p = Math.max(0, Math.min(side - 1, ((at + 0.5) * side) / of - 0.5)),
      low = Math.floor(p);
    return [low, Math.min(side - 1, low + 1), p - low];
  };
  for (let y = 0; y < height; y++) {
    const [v0, v1, fv] = place(y, height);
    for (let x = 0; x < width; x++) {
      const [u0, u1, fu] = place(x, width);
      const above = small[v0 * side + u0] * (1 - fu) + small[v0 * side + u1] * fu,
        below = small[v1 * side + u0] * (1 - fu) + small[v1 * side + u1] * fu;
      out[y * width + x] = above * (1 - fv) + below * fv;
    }
  }
  return out;
}

const fourier = new FFT(side);

/** Fourier transform over rows and then columns; real and imaginary parts in turn. */
function transform2(values: Float64Array, back: boolean): void {
  const line = new Float64Array(2 * side),
    out = new Float64Array(2 * side);
  for (const [step, jump] of [
    [1, side],
    [side, 1],
  ])
    for (let from = 0; from < side * jump; from += jump) {
      for (let n = 0; n < side; n++) line.set(values.subarray(2 * (from + n * step), 2 * (from + n * step) + 2), 2 * n);
      if (back) fourier.inverseTransform(out, line);
      else fourier.transform(out, line);
      for (let n = 0; n < side; n++) values.set(out.subarray(2 * n, 2 * n + 2), 2 * (from + n * step));
    }
}
