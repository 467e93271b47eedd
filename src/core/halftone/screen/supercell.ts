/**
 * Dots at an angle that repeat exactly on a grid of pixels: `cells` cells along (p, q) pixels. Of all whole numbers within bounds those
 * that come nearest to the ruling and angle asked for.
 */
export interface Supercell {
  readonly p: number;
  readonly q: number;
  readonly cells: number;
  /** As it comes out. */
  readonly rulingPerCm: number;
  readonly angleDeg: number;
}

const mostCells = 24;

export function supercellFor(rulingPerCm: number, angleDeg: number, pixelsPerCm: number): Supercell {
  const period = pixelsPerCm / rulingPerCm;
  const turn = (angleDeg * Math.PI) / 180;
  let best: Supercell | null = null,
    least = Infinity;
  for (let cells = 1; cells <= mostCells; cells++) {
    const p = Math.round(cells * period * Math.cos(turn)),
      q = Math.round(cells * period * Math.sin(turn));
    if (p === 0 && q === 0) continue;
    const got = Math.hypot(p, q) / cells;
    const off =
      Math.abs(got / period - 1) * 10 + Math.abs(Math.atan2(q, p) - Math.atan2(Math.sin(turn), Math.cos(turn))) * 10 + cells * 1e-4;
    if (off < least) {
      least = off;
      best = { p, q, cells, rulingPerCm: pixelsPerCm / got, angleDeg: (Math.atan2(q, p) * 180) / Math.PI };
    }
  }
  return best!;
}
