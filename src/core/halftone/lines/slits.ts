import { simplify, type Region } from '../../form/index.ts';

/** What the material holds, and how far apart the lines run. */
export interface LineRules {
  readonly pitchMm: number;
  readonly leastOpeningMm: number;
  readonly leastBridgeMm: number;
  /** An opening is interrupted at the latest after so much: strips between long openings flap under the squeegee [M]. */
  readonly longestMm: number;
}

/** A line that swells: its middle, and where along it a bridge may begin (0..1 of `longestMm`), so that neighbours' bridges do not lie side by side. */
export interface GuideLine {
  /** x, y, x, y, … at even steps. */
  readonly points: Float64Array;
  readonly stagger: number;
  /** Where lines are not evenly apart: what each point stands for, and how far its nearest neighbour is. */
  readonly spacing?: Float64Array;
  readonly room?: Float64Array;
}

/** Steps along a line. */
export const lineStepMm = 0.4;
/** Points nearer to the outline than this are left out. */
const smoothMm = 0.02;

/**
 * Openings along lines whose width follows a tone: the share of the pitch that is open is the tone, from the narrowest opening that can be cut
 * to the narrowest strip that holds. Where the tone asks for less than the narrowest, the line breaks into dashes, as many as the tone wants; it is
 * broken up by bridges.
 * @param cover tone at a place, 0..1
 */
export function slitsAlong(lines: readonly GuideLine[], cover: (x: number, y: number) => number, rules: LineRules): Region {
  const { pitchMm, leastOpeningMm, leastBridgeMm, longestMm } = rules;
  const widest = pitchMm - leastBridgeMm;
  const rings: Float64Array[] = [];
  for (const { points, stagger, spacing, room } of lines) {
    const n = points.length / 2;
    const asked = Float64Array.from({ length: n }, (_, i) => cover(points[2 * i], points[2 * i + 1]) * (spacing?.[i] ?? pitchMm));
    const width = dashed(asked, stagger, rules).map((w, i) => {
      const most = room ? room[i] - leastBridgeMm : widest;
      return w === 0 || most < leastOpeningMm ? 0 : Math.min(most, w);
    });
    const bridge = Math.ceil((leastBridgeMm * 1.05) / lineStepMm),
      longest = Math.max(2, Math.floor(longestMm / lineStepMm)),
      shortest = Math.ceil(leastOpeningMm / lineStepMm);
    // Bridges stand at even distances along the line; what lies between two of them is one opening at most.
    const phase = Math.round(stagger * longest);
    const barred = (i: number): boolean => (i + phase) % (longest + bridge) < bridge;
    for (let from = 0; from < n; ) {
      while (from < n && (width[from] === 0 || barred(from))) from++;
      let to = from;
      while (to < n && width[to] > 0 && !barred(to)) to++;
      // A gap in the tone that is narrower than a strip holds would be cut through: the opening ends earlier.
      let next = to;
      while (next < n && (width[next] === 0 || barred(next))) next++;
      const end = next < n && next - to < bridge ? Math.max(from, to - (bridge - (next - to))) : to;
      if (end - from > shortest) rings.push(slit(points, width, from, end));
      from = Math.max(to, from + 1);
    }
  }
  return simplify({ rings }, smoothMm);
}

/** Lighter tones than this share of an unbroken line of the least width stay bare. */
export const faintest = 0.25;

/**
 * Widths that can be cut. Where less is asked for than the least, the line is open for as much of its length as the tone wants: what is owed grows
 * until a dash begins, and the dash ends when as much is paid over, so that dashes and gaps stay longer than they are narrow.
 */
function dashed(asked: Float64Array, stagger: number, { leastOpeningMm, leastBridgeMm }: LineRules): Float64Array {
  const most = (1.5 * Math.max(leastOpeningMm, leastBridgeMm)) / lineStepMm / 2;
  // Neighbours begin their dashes elsewhere.
  let owed = most * (2 * stagger - 1),
    open = false;
  return asked.map((w) => {
    const share = w / leastOpeningMm;
    if (share >= 1) {
      owed = 0;
      open = true;
      return w;
    }
    if (share < faintest) {
      open = false;
      return 0;
    }
    owed += share - (open ? 1 : 0);
    if (open ? owed < -most : owed > most) open = !open;
    return open ? leastOpeningMm : 0;
  });
}

/** One opening: along one edge, and back along the other. */
function slit(points: Float64Array, width: Float64Array, from: number, to: number): Float64Array {
  const count = to - from;
  const out = new Float64Array(count * 4);
  for (let i = 0; i < count; i++) {
    const at = from + i;
    const a = Math.max(from, at - 1),
      b = Math.min(to - 1, at + 1);
    const [dx, dy] = [points[2 * b] - points[2 * a], points[2 * b + 1] - points[2 * a + 1]];
    const length = Math.hypot(dx, dy) || 1;
    const [nx, ny] = [(-dy / length) * (width[at] / 2), (dx / length) * (width[at] / 2)];
    out[2 * i] = points[2 * at] - nx;
    out[2 * i + 1] = points[2 * at + 1] - ny;
    out[out.length - 2 * i - 2] = points[2 * at] + nx;
    out[out.length - 2 * i - 1] = points[2 * at + 1] + ny;
  }
  return out;
}
