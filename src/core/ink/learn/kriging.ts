import type { Lab } from '../../colour/index.ts';
import { exp, pow, solvePositive } from '../../numeric/index.ts';
import { chosen } from '../chosen.ts';

/** What is still off at an overlap that was read, once press and films have been learnt. */
export interface Rest {
  /** Which layers lie there, by bits. */
  readonly mask: number;
  /** As the model foresees it. */
  readonly lab: Lab;
  /** Measured less foreseen. */
  readonly off: Lab;
  /** Doubt of the reading, ΔE00. */
  readonly sigma: number;
}

/** Powers by which kinship falls with the layers that two overlaps share. */
export const reach = chosen.kin;

/** How alike the model's errors are at two overlaps: by the layers they share (Jaccard's index) and how near their colours are. */
export function alike(maskA: number, labA: Lab, maskB: number, labB: Lab, power: number): number {
  const union = bits(maskA | maskB);
  if (union === 0) return 1;
  const far = Math.hypot(labA[0] - labB[0], labA[1] - labB[1], labA[2] - labB[2]);
  return pow(bits(maskA & maskB) / union, power) * exp(-far / reach.near);
}

export function bits(mask: number): number {
  let n = 0;
  for (let m = mask; m !== 0; m &= m - 1) n++;
  return n;
}

/** Rests of one overlap, read so many times, as the one reading that tells the same. */
interface Gathered extends Omit<Rest, 'sigma'> {
  /** Variance of what is its own, in units of the model's. */
  readonly own: number;
}

/**
 * Readings of one overlap differ by chance alone: their mean, weighed by how sure each is, stands for all of them and changes
 * nothing of what is carried (Rasmussen & Williams 2006, 2.2: equal places). So ten thousand readings cost no more than there are overlaps.
 */
function gathered(rests: readonly Rest[], modelSigma: number): Gathered[] {
  const groups = new Map<number, Rest[]>();
  for (const rest of rests) {
    const group = groups.get(rest.mask);
    if (group) group.push(rest);
    else groups.set(rest.mask, [rest]);
  }
  return [...groups.values()].map((group) => {
    const sure = group.map((rest) => 1 / ((rest.sigma / modelSigma) ** 2 + chosen.kin.own));
    const all = sure.reduce((sum, v) => sum + v, 0);
    const off = [0, 1, 2].map((c) => group.reduce((sum, rest, i) => sum + sure[i] * rest.off[c], 0) / all);
    return { mask: group[0].mask, lab: group[0].lab, off: [off[0], off[1], off[2]], own: 1 / all };
  });
}

/** Kriging: the rests at overlaps that were read, carried to all others by how alike their errors are. */
export function carryRests(
  read: readonly Rest[],
  /** Standard deviation of the model's own error. */
  modelSigma: number,
): (mask: number, lab: Lab) => Lab {
  if (read.length === 0) return (_, lab) => lab;
  const rests = gathered(read, modelSigma);
  const n = rests.length;
  const weightsOf = (power: number, off: (r: Gathered) => number): Float64Array => {
    const A = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        A[i * n + j] = alike(rests[i].mask, rests[i].lab, rests[j].mask, rests[j].lab, power) + (i === j ? rests[i].own : 0);
    return solvePositive(A, Float64Array.from(rests, off));
  };
  const L = weightsOf(reach.lightness, (r) => r.off[0]),
    a = weightsOf(reach.colour, (r) => r.off[1]),
    b = weightsOf(reach.colour, (r) => r.off[2]);
  return (mask, lab) => {
    let dL = 0,
      da = 0,
      db = 0;
    for (let i = 0; i < n; i++) {
      const light = alike(rests[i].mask, rests[i].lab, mask, lab, reach.lightness),
        colour = alike(rests[i].mask, rests[i].lab, mask, lab, reach.colour);
      dL += light * L[i];
      da += colour * a[i];
      db += colour * b[i];
    }
    return [Math.max(0, lab[0] + dL), lab[1] + da, lab[2] + db];
  };
}
