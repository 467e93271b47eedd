import type { BoxedRing } from './windows.ts';

/** Sides of outlines that come so near to a box: x, y, x, y. */
export function sidesNear(rings: readonly BoxedRing[], box: BoxedRing['box'], mm: number): number[] {
  const wide = { minX: box.minX - mm, minY: box.minY - mm, maxX: box.maxX + mm, maxY: box.maxY + mm };
  const sides: number[] = [];
  for (const { ring, box: own } of rings) {
    if (own.minX > wide.maxX || own.maxX < wide.minX || own.minY > wide.maxY || own.maxY < wide.minY) continue;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      if (Math.min(ring[i], ring[j]) > wide.maxX || Math.max(ring[i], ring[j]) < wide.minX) continue;
      if (Math.min(ring[i + 1], ring[j + 1]) > wide.maxY || Math.max(ring[i + 1], ring[j + 1]) < wide.minY) continue;
      sides.push(ring[j], ring[j + 1], ring[i], ring[i + 1]);
    }
  }
  return sides;
}

/** Is a point within reach of one of these sides? */
export function isNear(sides: readonly number[], x: number, y: number, mm: number): boolean {
  for (let i = 0; i < sides.length; i += 4) {
    const dx = sides[i + 2] - sides[i],
      dy = sides[i + 3] - sides[i + 1],
      length2 = dx * dx + dy * dy;
    const t = length2 > 0 ? Math.max(0, Math.min(1, ((x - sides[i]) * dx + (y - sides[i + 1]) * dy) / length2)) : 0;
    const ex = x - sides[i] - t * dx,
      ey = y - sides[i + 1] - t * dy;
    if (ex * ex + ey * ey <= mm * mm) return true;
  }
  return false;
}
