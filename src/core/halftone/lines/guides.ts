import { lineStepMm, type GuideLine } from './slits.ts';

export interface GuideAsk {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pitchMm: number;
  /** Left free along the image's edge, so that every line ends in paper. */
  readonly marginMm: number;
}

/** Bridges of neighbours stand half and a third of their distance apart. */
const staggerOf = (i: number): number => [0, 0.5, 0.25, 0.75][((i % 4) + 4) % 4];

/** Lines side by side at an angle. */
export function parallelLines({ widthMm, heightMm, pitchMm, marginMm }: GuideAsk, angleDeg: number): GuideLine[] {
  const turn = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const reach = Math.hypot(widthMm, heightMm) / 2;
  const rows = Math.ceil(reach / pitchMm);
  return Array.from({ length: 2 * rows + 1 }, (_, k) => k - rows).flatMap((row) =>
    inside(
      Array.from({ length: Math.ceil((2 * reach) / lineStepMm) }, (_, i): [number, number] => {
        const [u, v] = [i * lineStepMm - reach, row * pitchMm];
        return [widthMm / 2 + u * c - v * s, heightMm / 2 + u * s + v * c];
      }),
      { widthMm, heightMm, pitchMm, marginMm },
      staggerOf(row),
    ),
  );
}

/** Lines in a patch of the hatching: it is square. */
const linesAPatch = 4;
export const hatchSide = (pitchMm: number): number => linesAPatch * pitchMm;

/**
 * Hatching in two directions: patches side by side, as a basket is woven, each across its neighbours. Lines that crossed would cut out
 * what lies between them; these end before the next patch's first one.
 */
export function hatching(ask: GuideAsk & { readonly bridgeMm: number }, angleDeg: number): GuideLine[] {
  const { widthMm, heightMm, pitchMm, bridgeMm } = ask;
  const turn = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const side = hatchSide(pitchMm);
  const n = Math.ceil(Math.hypot(widthMm, heightMm) / 2 / side);
  const along = side - bridgeMm;
  const out: GuideLine[] = [];
  for (let row = -n; row <= n; row++)
    for (let column = -n; column <= n; column++)
      for (let line = 0; line < linesAPatch; line++) {
        const across = (line + 0.5) * pitchMm - side / 2;
        const points = Array.from({ length: Math.floor(along / lineStepMm) + 1 }, (_, i): [number, number] => {
          const at = i * lineStepMm - along / 2;
          const [u, v] = (row + column) % 2 === 0 ? [at, across] : [across, at];
          const [x, y] = [column * side + u, row * side + v];
          return [widthMm / 2 + x * c - y * s, heightMm / 2 + x * s + y * c];
        });
        // Half way along a bridge's distance: so short a line needs none.
        out.push(...inside(points, ask, 0.5));
      }
  return out;
}

/** Rings around a place. */
export function rings(ask: GuideAsk, [cx, cy]: readonly [number, number]): GuideLine[] {
  const reach = Math.max(...[0, ask.widthMm].flatMap((x) => [0, ask.heightMm].map((y) => Math.hypot(x - cx, y - cy))));
  return Array.from({ length: Math.ceil(reach / ask.pitchMm) }, (_, k) => (k + 1) * ask.pitchMm).flatMap((r, k) => {
    const steps = Math.max(12, Math.round((2 * Math.PI * r) / lineStepMm));
    // Begins a bridge's width after it ends: a ring that closed would let what it holds fall out.
    const points = Array.from({ length: steps }, (_, i): [number, number] => {
      const t = (2 * Math.PI * i) / steps + k * 2.4;
      return [cx + r * Math.cos(t), cy + r * Math.sin(t)];
    });
    return inside(points, ask, 0);
  });
}

/** One line from a place outwards (Archimedes): a pitch farther with every turn. */
export function spiral(ask: GuideAsk, [cx, cy]: readonly [number, number]): GuideLine[] {
  const reach = Math.max(...[0, ask.widthMm].flatMap((x) => [0, ask.heightMm].map((y) => Math.hypot(x - cx, y - cy))));
  const points: [number, number][] = [];
  for (let t = 2; (t * ask.pitchMm) / (2 * Math.PI) < reach; ) {
    const r = (t * ask.pitchMm) / (2 * Math.PI);
    points.push([cx + r * Math.cos(t), cy + r * Math.sin(t)]);
    t += lineStepMm / Math.max(r, lineStepMm);
  }
  return inside(points, ask, 0.5);
}

/** The parts of a line that lie within the image. */
function inside(points: readonly (readonly [number, number])[], { widthMm, heightMm, marginMm }: GuideAsk, stagger: number): GuideLine[] {
  const parts: GuideLine[] = [];
  let now: number[] = [];
  const close = (): void => {
    if (now.length > 8) parts.push({ points: Float64Array.from(now), stagger });
    now = [];
  };
  for (const [x, y] of points) {
    if (x < marginMm || y < marginMm || x > widthMm - marginMm || y > heightMm - marginMm) close();
    else now.push(x, y);
  }
  close();
  return parts;
}
