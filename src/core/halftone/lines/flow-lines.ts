import type { GuideAsk } from './guides.ts';
import type { Direction } from './flow-field.ts';
import { lineStepMm, type GuideLine } from './slits.ts';

/** A line ends where it comes nearer to another than this share of their distance. */
const nearest = 0.8;
/** No line turns more tightly than this, in pitches: its inner edge would fold. */
const tightest = 0.75;
/** Shorter ones are left out, in pitches. */
const shortest = 0.8;
/** Farther away than this a neighbour counts no more, in pitches. */
const loneliest = 1.6;

interface Point {
  readonly x: number;
  readonly y: number;
  readonly line: number;
  /** Its place along the line, in steps. */
  readonly step: number;
}

/** Points in squares as wide as the lines are apart. */
class Near {
  private readonly cells = new Map<number, Point[]>();
  private readonly side: number;
  constructor(side: number) {
    this.side = side;
  }
  private key(i: number, k: number): number {
    return i * 100_000 + k;
  }
  add(point: Point): void {
    const key = this.key(Math.floor(point.x / this.side), Math.floor(point.y / this.side));
    const cell = this.cells.get(key);
    if (cell) cell.push(point);
    else this.cells.set(key, [point]);
  }
  /** All within `reach` squares around. */
  *around(x: number, y: number, reach = 1): Generator<Point> {
    const [i, k] = [Math.floor(x / this.side), Math.floor(y / this.side)];
    for (let a = i - reach; a <= i + reach; a++) for (let b = k - reach; b <= k + reach; b++) yield* this.cells.get(this.key(a, b)) ?? [];
  }
}

/**
 * Lines along a field of directions, evenly apart (Jobard and Lefer 1997): each new one begins a pitch beside one that is there, and ends where
 * it comes too near to another, turns too tightly, or leaves the image. Each knows how far its neighbours are.
 */
export function flowLines(ask: GuideAsk, direction: Direction): GuideLine[] {
  const { widthMm, heightMm, pitchMm, marginMm } = ask;
  const near = new Near(pitchMm);
  const made: Point[][] = [];
  // Along one line, points this far apart count as strangers.
  const own = Math.ceil((Math.PI * tightest * pitchMm) / lineStepMm);
  const inside = (x: number, y: number): boolean => x >= marginMm && y >= marginMm && x <= widthMm - marginMm && y <= heightMm - marginMm;
  const free = (x: number, y: number, least: number): boolean => {
    for (const p of near.around(x, y)) if ((p.x - x) ** 2 + (p.y - y) ** 2 < least * least) return false;
    return true;
  };
  const mostTurn = lineStepMm / (tightest * pitchMm);

  /** From a place one way; `sign` says which. */
  const follow = (x0: number, y0: number, sign: 1 | -1, before: readonly (readonly [number, number])[]): [number, number][] => {
    const out: [number, number][] = [];
    let [x, y] = [x0, y0];
    let [dx, dy] = direction(x, y).map((v) => v * sign);
    const turned = (px: number, py: number): [number, number] => {
      const [ux, uy] = direction(px, py);
      return ux * dx + uy * dy < 0 ? [-ux, -uy] : [ux, uy];
    };
    for (let s = 0; s < 20_000; s++) {
      // Midpoint (Runge 1895).
      const [mx, my] = turned(x + (dx * lineStepMm) / 2, y + (dy * lineStepMm) / 2);
      const [nx, ny] = [x + mx * lineStepMm, y + my * lineStepMm];
      if (!inside(nx, ny) || !free(nx, ny, nearest * pitchMm)) break;
      if (Math.abs(dx * my - dy * mx) > mostTurn || dx * mx + dy * my < 0) break;
      // Its own earlier part, too, when it comes round.
      const strangers = before.length + out.length - own;
      let curls = false;
      for (let i = 0; i < strangers && !curls; i++) {
        const met = i < before.length ? before[i] : out[i - before.length];
        curls = (met[0] - nx) ** 2 + (met[1] - ny) ** 2 < (nearest * pitchMm) ** 2;
      }
      if (curls) break;
      out.push([nx, ny]);
      [x, y, dx, dy] = [nx, ny, mx, my];
    }
    return out;
  };
  const begin = (x: number, y: number): boolean => {
    if (!inside(x, y) || !free(x, y, pitchMm * 0.98)) return false;
    const back = follow(x, y, -1, []).reverse();
    const forth = follow(x, y, 1, [...back, [x, y]]);
    const points = [...back, [x, y] as [number, number], ...forth];
    if (points.length * lineStepMm < shortest * pitchMm) return false;
    const line = made.length;
    const kept = points.map(([px, py], step) => ({ x: px, y: py, line, step }));
    kept.forEach((p) => near.add(p));
    made.push(kept);
    return true;
  };
  let looked = 0;
  const spread = (): void => {
    for (; looked < made.length; looked++)
      for (const p of made[looked]) {
        if (p.step % 3 !== 0) continue;
        const [dx, dy] = direction(p.x, p.y);
        begin(p.x - dy * pitchMm, p.y + dx * pitchMm);
        begin(p.x + dy * pitchMm, p.y - dx * pitchMm);
      }
  };
  begin(widthMm / 2, heightMm / 2);
  spread();
  for (let y = marginMm; y <= heightMm; y += pitchMm / 2) for (let x = marginMm; x <= widthMm; x += pitchMm / 2) if (begin(x, y)) spread();
  return made.map((line, i) => withRoom(line, near, ask, own, [0, 0.5, 0.25, 0.75][i % 4]));
}

/** How far the neighbours of each point are, on both sides: what it may take, and what it stands for. */
function withRoom(line: readonly Point[], near: Near, { widthMm, heightMm, pitchMm }: GuideAsk, own: number, stagger: number): GuideLine {
  const far = loneliest * pitchMm;
  const spacing = new Float64Array(line.length),
    room = new Float64Array(line.length);
  line.forEach((p, i) => {
    const a = line[Math.max(0, i - 1)],
      b = line[Math.min(line.length - 1, i + 1)];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    let [left, right] = [far, far];
    for (const q of near.around(p.x, p.y, 2)) {
      if (q.line === p.line && Math.abs(q.step - p.step) < own) continue;
      const [vx, vy] = [q.x - p.x, q.y - p.y];
      const d = Math.hypot(vx, vy);
      if (dx * vy - dy * vx < 0) left = Math.min(left, d);
      else right = Math.min(right, d);
    }
    // The image's edge is like a neighbour as far beyond it.
    const edge = 2 * Math.min(p.x, p.y, widthMm - p.x, heightMm - p.y);
    if (left > right) left = Math.min(left, edge);
    else right = Math.min(right, edge);
    spacing[i] = (left + right) / 2;
    room[i] = Math.min(left, right);
  });
  return {
    points: Float64Array.from(line.flatMap((p) => [p.x, p.y])),
    stagger,
    spacing: calm(spacing, pitchMm),
    room: calm(room, pitchMm),
  };
}

/** The least of what lies around, and the mean of that: smooth, and nowhere more than it was. */
function calm(values: Float64Array, pitchMm: number): Float64Array {
  const reach = Math.max(1, Math.round(pitchMm / 2 / lineStepMm));
  const over = (of: Float64Array, i: number): Float64Array => of.subarray(Math.max(0, i - reach), Math.min(of.length, i + reach + 1));
  const least = values.map((_, i) => over(values, i).reduce((a, b) => Math.min(a, b), Infinity));
  return least.map((_, i) => {
    const some = over(least, i);
    return some.reduce((a, b) => a + b, 0) / some.length;
  });
}
