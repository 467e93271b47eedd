import type { SubPath } from '../path.ts';

const mostDashes = 50_000;

/** Cuts flattened paths into dashes (SVG 2, section 13.5.6): an odd pattern is doubled, a negative or all-zero one means a full line. */
export function dashes(subs: readonly SubPath[], given: readonly number[], offset: number): SubPath[] {
  const pattern = given.length % 2 ? [...given, ...given] : [...given];
  const total = pattern.reduce((sum, v) => sum + v, 0);
  if (!(total > 0) || pattern.some((v) => v < 0)) return [...subs];
  const out: SubPath[] = [];
  for (const sub of subs) {
    const { points } = sub;
    const closed = sub.closed ? [...points, points[0], points[1]] : points;
    let phase = ((offset % total) + total) % total;
    let k = 0;
    while (phase >= pattern[k]) {
      phase -= pattern[k];
      k = (k + 1) % pattern.length;
    }
    let left = pattern[k] - phase;
    let now: number[] = k % 2 === 0 ? [closed[0], closed[1]] : [];
    for (let i = 2; i < closed.length; i += 2) {
      let x = closed[i - 2],
        y = closed[i - 1];
      let length = Math.hypot(closed[i] - x, closed[i + 1] - y);
      while (length > left) {
        const t = left / length;
        x += (closed[i] - x) * t;
        y += (closed[i + 1] - y) * t;
        length -= left;
        if (k % 2 === 0) {
          now.push(x, y);
          out.push({ points: now, closed: false });
          if (out.length > mostDashes) return [...subs];
          now = [];
        } else now = [x, y];
        k = (k + 1) % pattern.length;
        left = pattern[k];
      }
      left -= length;
      if (k % 2 === 0) now.push(closed[i], closed[i + 1]);
    }
    if (k % 2 === 0 && now.length >= 4) out.push({ points: now, closed: false });
  }
  return out;
}
