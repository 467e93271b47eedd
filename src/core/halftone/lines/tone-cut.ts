import type { Region } from '../../form/index.ts';
import { hatching, hatchSide, parallelLines, rings, spiral, type GuideAsk } from './guides.ts';
import type { Direction } from './flow-field.ts';
import { flowLines } from './flow-lines.ts';
import { slitsAlong, type GuideLine, type LineRules } from './slits.ts';

/** Ways of tone by lines and holes, as they are offered. */
export const lineWays = ['parallel', 'hatch', 'flow', 'rings', 'spiral', 'holes'] as const;
export type LineWay = (typeof lineWays)[number];

export interface ToneCutAsk extends Omit<GuideAsk, 'marginMm'>, Omit<LineRules, 'longestMm'> {
  readonly way: LineWay;
  readonly angleDeg?: number;
  /** Of lines that flow: which way at a place. */
  readonly direction?: Direction;
  /** Of rings and spiral; left out: the image's middle. */
  readonly centreMm?: readonly [number, number];
  /** Of holes: the punches at hand. */
  readonly punchesMm?: readonly number[];
  /** Tone at a place, 0..1. */
  readonly cover: (xMm: number, yMm: number) => number;
}

export interface ToneCut {
  /** Openings: ink goes through them. */
  readonly region: Region;
  /** Tones that the material can hold: lighter ones run out into bare paper, darker ones stop here. */
  readonly lightest: number;
  readonly darkest: number;
}

/** Strips between openings longer than this flap under the squeegee [M]. */
const longestMm = 60;

/** Tone for a knife: openings that swell, in one piece of material. */
export function toneCut(ask: ToneCutAsk): ToneCut {
  const { pitchMm, leastOpeningMm, leastBridgeMm, widthMm, heightMm } = ask;
  if (ask.way === 'holes') return holes(ask);
  // The widest opening ends at the image's edge; lines that flow know it themselves.
  const marginMm = ask.way === 'flow' ? leastBridgeMm : Math.max(leastBridgeMm, (pitchMm - leastBridgeMm) / 2);
  const guide = { widthMm, heightMm, pitchMm, marginMm };
  const centre = ask.centreMm ?? [widthMm / 2, heightMm / 2];
  const rules: LineRules = { pitchMm, leastOpeningMm, leastBridgeMm: leastBridgeMm * 1.02, longestMm };
  const longest = ask.way === 'hatch' ? hatchSide(pitchMm) - leastBridgeMm : longestMm;
  const ends = {
    lightest: leastOpeningMm / pitchMm,
    darkest: ((pitchMm - leastBridgeMm) / pitchMm) * (longest / (longest + leastBridgeMm)),
  };
  return { region: slitsAlong(guidesOf(ask, guide, centre), ask.cover, rules), ...ends };
}

function guidesOf(
  { way, angleDeg = 0, direction, leastBridgeMm }: ToneCutAsk,
  guide: GuideAsk,
  centre: readonly [number, number],
): GuideLine[] {
  switch (way) {
    case 'hatch':
      return hatching({ ...guide, bridgeMm: leastBridgeMm * 1.02 }, angleDeg);
    case 'rings':
      return rings(guide, centre);
    case 'spiral':
      return spiral(guide, centre);
    case 'flow':
      return direction ? flowLines(guide, direction) : parallelLines(guide, angleDeg);
    default:
      return parallelLines(guide, angleDeg);
  }
}

/** Round holes in staggered rows, each of the punch whose area comes nearest to the tone over its place. */
function holes({ widthMm, heightMm, pitchMm, leastOpeningMm, leastBridgeMm, punchesMm, cover }: ToneCutAsk): ToneCut {
  const most = pitchMm - leastBridgeMm * 1.02;
  const sizes = (punchesMm ?? Array.from({ length: 6 }, (_, i) => leastOpeningMm + ((most - leastOpeningMm) * i) / 5))
    .filter((d) => d >= leastOpeningMm && d <= most)
    .sort((a, b) => a - b);
  const rowMm = (pitchMm * Math.sqrt(3)) / 2;
  const cellMm2 = pitchMm * rowMm;
  const share = (d: number): number => (Math.PI * d * d) / 4 / cellMm2;
  const found: Float64Array[] = [];
  for (let row = 0; (row + 0.5) * rowMm < heightMm; row++)
    for (let k = 0; ; k++) {
      const x = (k + (row % 2 === 0 ? 0.5 : 1)) * pitchMm,
        y = (row + 0.5) * rowMm;
      if (x > widthMm) break;
      const tone = cover(x, y);
      const best = [0, ...sizes].reduce(
        (near, d) => (Math.abs((d ? share(d) : 0) - tone) < Math.abs((near ? share(near) : 0) - tone) ? d : near),
        0,
      );
      const edge = best / 2 + leastBridgeMm;
      if (best === 0 || x < edge || y < edge || x > widthMm - edge || y > heightMm - edge) continue;
      const n = 48;
      found.push(
        Float64Array.from({ length: 2 * n }, (_, i) =>
          i % 2 === 0 ? x + (best / 2) * Math.cos((Math.PI * i) / n) : y + (best / 2) * Math.sin((Math.PI * (i - 1)) / n),
        ),
      );
    }
  return {
    region: { rings: found },
    lightest: sizes.length > 0 ? share(sizes[0]) : 0,
    darkest: sizes.length > 0 ? share(sizes[sizes.length - 1]) : 0,
  };
}
