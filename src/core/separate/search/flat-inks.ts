import { seeded, type Random } from '../../random.ts';
import { deltaE00Of } from '../../colour/index.ts';
import type { Targets } from './fit-score.ts';

/**
 * The plain way to print a picture: paper and so many flat opaque inks of any colour (weighted k-medians under ΔE00, the
 * paper's colour held). What every separation is measured against.
 * @returns Lab of paper and inks, 3 each, light to dark after the paper
 */
export function flatInks(targets: Targets, paperLab: readonly number[], inks: number, seed: number, starts = 10): Float64Array {
  const random = seeded(seed);
  let best: Float64Array = new Float64Array(0),
    bestScore = Infinity;
  for (let start = 0; start < starts; start++) {
    const palette = spread(targets, paperLab, inks, random);
    const score = refined(targets, palette);
    if (score < bestScore) {
      bestScore = score;
      best = palette;
    }
  }
  const rows = Array.from({ length: inks }, (_, i) => best.subarray((i + 1) * 3, (i + 2) * 3)).sort((a, b) => b[0] - a[0]);
  return Float64Array.from([...paperLab, ...rows.flatMap((row) => [...row])]);
}

/** First colours: each drawn with a chance that grows with its distance from those already there. */
function spread(targets: Targets, paperLab: readonly number[], inks: number, random: Random): Float64Array {
  const palette = new Float64Array((inks + 1) * 3);
  palette.set(paperLab);
  const far = new Float64Array(targets.count).fill(Infinity);
  for (let k = 0; k < inks; k++) {
    let sum = 0;
    for (let i = 0; i < targets.count; i++) {
      const d = difference(targets, i, palette, k);
      far[i] = Math.min(far[i], d * d);
      sum += targets.weight[i] * far[i];
    }
    let pick = random.next() * sum,
      i = 0;
    while (i + 1 < targets.count && (pick -= targets.weight[i] * far[i]) > 0) i++;
    palette.set(targets.lab.subarray(i * 3, i * 3 + 3), (k + 1) * 3);
  }
  return palette;
}

function refined(targets: Targets, palette: Float64Array): number {
  const inks = palette.length / 3 - 1;
  const owner = new Uint16Array(targets.count);
  let score = assign(targets, palette, owner);
  for (let turn = 0; turn < 30; turn++) {
    for (let k = 1; k <= inks; k++) {
      const mine: number[] = [];
      for (let i = 0; i < targets.count; i++) if (owner[i] === k) mine.push(i);
      if (mine.length === 0) continue;
      for (let c = 0; c < 3; c++) palette[k * 3 + c] = weightedMedian(mine, targets, c);
      descend(targets, palette, k, mine);
    }
    const next = assign(targets, palette, owner);
    if (next > score - 1e-4) return next;
    score = next;
  }
  return score;
}

/** The median of each axis is not yet the colour with least mean ΔE00: small steps until none helps. */
function descend(targets: Targets, palette: Float64Array, k: number, mine: readonly number[]): void {
  const cost = (): number => {
    let sum = 0;
    for (const i of mine) sum += targets.weight[i] * difference(targets, i, palette, k);
    return sum;
  };
  let now = cost();
  for (let step = 4; step > 0.2; step /= 2) {
    for (let c = 0; c < 3; c++)
      for (const sign of [1, -1]) {
        palette[k * 3 + c] += sign * step;
        const next = cost();
        if (next < now) now = next;
        else palette[k * 3 + c] -= sign * step;
      }
  }
}

function assign(targets: Targets, palette: Float64Array, owner: Uint16Array): number {
  let sum = 0;
  for (let i = 0; i < targets.count; i++) {
    let least = Infinity;
    for (let k = 0; k * 3 < palette.length; k++) {
      const d = difference(targets, i, palette, k);
      if (d < least) {
        least = d;
        owner[i] = k;
      }
    }
    sum += targets.weight[i] * least;
  }
  return sum;
}

function difference(targets: Targets, i: number, palette: Float64Array, k: number): number {
  return deltaE00Of(
    targets.lab[i * 3],
    targets.lab[i * 3 + 1],
    targets.lab[i * 3 + 2],
    palette[k * 3],
    palette[k * 3 + 1],
    palette[k * 3 + 2],
  );
}

function weightedMedian(mine: readonly number[], targets: Targets, c: number): number {
  const sorted = mine.slice().sort((a, b) => targets.lab[a * 3 + c] - targets.lab[b * 3 + c]);
  let half = sorted.reduce((sum, i) => sum + targets.weight[i], 0) / 2;
  for (const i of sorted) if ((half -= targets.weight[i]) <= 0) return targets.lab[i * 3 + c];
  return targets.lab[sorted.at(-1)! * 3 + c];
}

/** Codes of flat inks, one ink a pixel at most: bit i = ink i + 1. */
export function oneInkCodes(inks: number): number[] {
  return [0, ...Array.from({ length: inks }, (_, i) => 1 << i)];
}

/** Codes of flat inks stacked light to dark: under the one that is seen, any of those next lighter may lie too. */
export function stackedCodes(inks: number): number[] {
  const codes = [0];
  for (let top = 0; top < inks; top++) for (let from = top; from >= 0; from--) codes.push((1 << (top + 1)) - (1 << from));
  return codes;
}

/** Lab of every code when inks are opaque and printed light to dark: the last one hides what is below. 3 a code. */
export function opaqueLab(palette: Float64Array): Float64Array {
  const inks = palette.length / 3 - 1;
  const lab = new Float64Array((1 << inks) * 3);
  for (let code = 0; code < 1 << inks; code++) {
    const top = code === 0 ? 0 : 32 - Math.clz32(code);
    lab.set(palette.subarray(top * 3, top * 3 + 3), code * 3);
  }
  return lab;
}
