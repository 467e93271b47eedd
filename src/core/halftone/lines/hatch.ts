import type { GuideAsk } from './guides.ts';
import type { LineRules } from './slits.ts';

/** Lines one way; where it is darker, short strokes across between them, as wide as the lines are. */
export interface Hatch {
  /** Share of the pitch that the lines take for a tone. */
  readonly lines: (tone: number) => number;
  /** The strokes of a place between two lines, as rings. */
  readonly strokes: (ask: GuideAsk, angleDeg: number, tone: (x: number, y: number) => number) => Float64Array[];
}

/** Strokes begin where the lines are a little wider than the least that can be cut. */
const begins = 1.15;

export function hatching({ pitchMm: p, leastOpeningMm, leastBridgeMm }: Omit<LineRules, 'longestMm'>): Hatch {
  // A stroke as wide as its lines needs a bridge at both of its ends.
  const widest = p - 2 * leastBridgeMm - leastOpeningMm;
  const strokesTake = (w: number): number => (w < begins * leastOpeningMm || w > widest ? 0 : (w * (p - w - 2 * leastBridgeMm)) / (p * p));
  const table: { readonly w: number; readonly tone: number }[] = [];
  for (let i = 0; i <= 200; i++) {
    const w = (p * i) / 200;
    table.push({ w, tone: w / p + strokesTake(w) });
  }
  const width = (tone: number): number => {
    // The narrowest lines that reach the tone: strokes come in as soon as they hold.
    const found = table.find((one) => one.tone >= tone);
    return found ? found.w : p;
  };
  return {
    lines: (tone) => width(tone) / p,
    strokes: ({ widthMm, heightMm, marginMm }, angleDeg, tone) => {
      const turn = (angleDeg * Math.PI) / 180;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const reach = Math.hypot(widthMm, heightMm) / 2;
      const at = (u: number, v: number): [number, number] => [widthMm / 2 + u * c - v * s, heightMm / 2 + u * s + v * c];
      const inside = ([x, y]: readonly [number, number]): boolean =>
        x >= marginMm && y >= marginMm && x <= widthMm - marginMm && y <= heightMm - marginMm;
      const rails = (u0: number, u1: number, v: number): number => {
        let most = 0;
        for (let i = 0; i <= 8; i++) most = Math.max(most, Math.max(leastOpeningMm, width(tone(...at(u0 + ((u1 - u0) * i) / 8, v)))));
        return most;
      };
      const out: Float64Array[] = [];
      const n = Math.ceil(reach / p);
      for (let row = -n; row < n; row++)
        for (let k = -n; k <= n; k++) {
          // Every other row by half: as bricks lie.
          const u = (k + (row % 2 === 0 ? 0 : 0.5)) * p,
            v = (row + 0.5) * p;
          const w = width(tone(...at(u, v)));
          if (strokesTake(w) === 0) continue;
          const reachU = w / 2 + leastOpeningMm / 2;
          const from = v - p / 2 + rails(u - reachU, u + reachU, v - p / 2) / 2 + leastBridgeMm,
            to = v + p / 2 - rails(u - reachU, u + reachU, v + p / 2) / 2 - leastBridgeMm;
          if (to - from < leastOpeningMm) continue;
          const corners = [at(u - w / 2, from), at(u + w / 2, from), at(u + w / 2, to), at(u - w / 2, to)];
          if (corners.every(inside)) out.push(Float64Array.from(corners.flat()));
        }
      return out;
    },
  };
}
