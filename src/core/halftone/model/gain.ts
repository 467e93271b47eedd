import { curveThrough, type ToneCurve } from './curve.ts';

/** How dots are drawn: round or long ones, or lines. */
export type DotShape = 'round' | 'ellipse' | 'line';

export interface GainAsk {
  /** Lines of dots a cm. */
  readonly rulingPerCm: number;
  /** How far ink runs beyond a dot's edge, all round. */
  readonly spreadMicrons: number;
  readonly shape: DotShape;
}

/**
 * Tone curve of dots whose edges run out: every edge moves outwards by the same length, so that gain goes with the length of edge on a
 * given area, up to half with the dot's edge, from there with the hole's (common practice: gain is largest near the middle and grows with the ruling).
 */
export function gainCurve({ rulingPerCm, spreadMicrons, shape }: GainAsk): ToneCurve {
  const share = (spreadMicrons * rulingPerCm) / 10000;
  const points = Array.from({ length: 19 }, (_, i): [number, number] => {
    const a = (i + 1) / 20;
    const small = Math.min(a, 1 - a);
    // Length of edge over the side of the cell: two edges of a line, the circle of a dot; a long dot has a quarter more.
    const edge = shape === 'line' ? 2 : 2 * Math.sqrt(Math.PI * small) * (shape === 'ellipse' ? 1.12 : 1);
    // A dot under its own spread; a hole closes: neither side ever passes what is left.
    return [a, Math.min(1, a + Math.min(edge * share, (1 - a) * 0.95))];
  });
  return curveThrough(points);
}

/** A ruling's gain at half tone, what studios call dot gain. */
export function gainAtHalf(ask: GainAsk): number {
  const share = (ask.spreadMicrons * ask.rulingPerCm) / 10000;
  const edge = ask.shape === 'line' ? 2 : 2 * Math.sqrt(Math.PI / 2) * (ask.shape === 'ellipse' ? 1.12 : 1);
  return Math.min(0.475, edge * share);
}
