import { deltaE00Of } from '../../colour/index.ts';
import type { Field } from '../kernels/relax.ts';
import { outlineLengths } from '../kernels/length.ts';
import { pictureEdges, printEdges, structureOf } from './structure.ts';
import { registerRoom, expectedCosts } from '../kernels/register.ts';
import type { Difference, SeparationFigures } from '../types.ts';

/** ΔE00 a pixel of a print that is known already. */
export interface KnownDifferences {
  readonly codes: Uint8Array;
  readonly values: Float32Array;
}

/**
 * ΔE00 of every pixel between the picture and what is printed there.
 * @param known the same of other codes in the same colours: where both agree nothing is worked out again
 */
export function differences(target: Float32Array, codes: Uint8Array, overlapLab: Float64Array, known?: KnownDifferences): Float32Array {
  const out = known ? known.values.slice() : new Float32Array(codes.length);
  for (let i = 0; i < codes.length; i++) {
    if (known && known.codes[i] === codes[i]) continue;
    const t = i * 3,
      c = codes[i] * 3;
    out[i] = deltaE00Of(target[t], target[t + 1], target[t + 2], overlapLab[c], overlapLab[c + 1], overlapLab[c + 2]);
  }
  return out;
}

export function meanOf(values: Float32Array): number {
  let sum = 0;
  for (const v of values) sum += v;
  return sum / values.length;
}

function summed(values: Float32Array): Difference {
  const sorted = values.slice().sort();
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { mean: meanOf(values), median: at(0.5), p95: at(0.95) };
}

export function metresOf(
  codes: Uint8Array,
  width: number,
  height: number,
  layers: number,
  mmPerPx: number,
  share?: readonly number[],
): number {
  let sum = 0;
  outlineLengths(codes, width, height, layers).forEach((length, i) => {
    sum += length * (share?.[i] ?? 1);
  });
  return (sum * mmPerPx) / 1000;
}

/** Everything that is told of a print: in register, off register, knife. `field` has the picture's own colours, unmapped. */
export function figuresOf(
  field: Field,
  target: Float32Array,
  codes: Uint8Array,
  overlapLab: Float64Array,
  mmPerPx: number,
  sigmaMm: number,
  share?: readonly number[],
): SeparationFigures {
  const inRegister = summed(differences(target, codes, overlapLab));
  const off = sigmaMm > 0 ? summed(expectedCosts(registerRoom(field, codes, sigmaMm / mmPerPx))) : inRegister;
  const { width, height, layers } = field;
  return {
    inRegister,
    atSigma: { ...off, sigmaMm },
    metres: metresOf(codes, width, height, layers, mmPerPx, share),
    structure: structureOf(pictureEdges(target, width, height, mmPerPx), printEdges(codes, overlapLab, width, height, mmPerPx)),
  };
}
