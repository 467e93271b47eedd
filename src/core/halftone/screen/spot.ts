import type { DotShape } from '../model/gain.ts';

/** Steps across one cell, each way. */
export const spotSteps = 128;

const spots: Record<DotShape, (u: number, v: number) => number> = {
  // The sum of two waves grows from a round dot over a chequerboard to a round hole (common practice).
  round: (u, v) => Math.cos(2 * Math.PI * u) + Math.cos(2 * Math.PI * v),
  // Dots that are longer one way join in two steps, not at once: no jump at half tone [S49].
  ellipse: (u, v) => Math.cos(2 * Math.PI * u) + 0.7 * Math.cos(2 * Math.PI * v),
  line: (u) => Math.cos(2 * Math.PI * u),
};

const known = new Map<DotShape, Float32Array>();

/**
 * Thresholds of one cell, 128 × 128, the dot's middle at its corner: ink where a coverage is above. The share of the cell that is
 * below any coverage is just that coverage, whatever the shape.
 */
export function spotThresholds(shape: DotShape): Float32Array {
  const made = known.get(shape);
  if (made) return made;
  const n = spotSteps * spotSteps;
  const height = Float32Array.from({ length: n }, (_, i) =>
    spots[shape](((i % spotSteps) + 0.5) / spotSteps, (Math.floor(i / spotSteps) + 0.5) / spotSteps),
  );
  const order = Uint32Array.from({ length: n }, (_, i) => i).sort((a, b) => height[b] - height[a] || a - b);
  const out = new Float32Array(n);
  order.forEach((at, rank) => {
    out[at] = (rank + 0.5) / n;
  });
  known.set(shape, out);
  return out;
}
