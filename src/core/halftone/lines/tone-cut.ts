import type { Region } from '../../form/index.ts';
import { hatching, hatchSide, parallelLines, rings, spiral, type GuideAsk } from './guides.ts';
import type { Direction } from './flow-field.ts';
import { flowLines } from './flow-lines.ts';
import { faintest, slitsAlong, type GuideLine, type LineRules } from './slits.ts';

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

type EndsAsk = Pick<ToneCutAsk, 'way' | 'pitchMm' | 'leastOpeningMm' | 'leastBridgeMm' | 'punchesMm'>;

/** Tones that a way of cutting can hold in a material. */
export function toneEnds(ask: EndsAsk): Pick<ToneCut, 'lightest' | 'darkest'> {
  const { way, pitchMm, leastOpeningMm, leastBridgeMm } = ask;
  if (way === 'holes') {
    const sizes = punchSizes(ask);
    const share = (d: number | undefined): number => (d === undefined ? 0 : (Math.PI * d * d) / 4 / (pitchMm * rowOf(pitchMm)));
    return { lightest: share(sizes[0]), darkest: share(sizes.at(-1)) };
  }
  return { lightest: (faintest * leastOpeningMm) / pitchMm, darkest: ((pitchMm - leastBridgeMm) / pitchMm) * openAlong(ask) };
}

/** Share of a line that is open: the rest of it are bridges. */
function openAlong({ way, pitchMm, leastBridgeMm }: EndsAsk): number {
  const longest = way === 'hatch' ? hatchSide(pitchMm) - leastBridgeMm : longestMm;
  return longest / (longest + leastBridgeMm);
}

/** Tone for a knife: openings that swell, in one piece of material. */
export function toneCut(ask: ToneCutAsk): ToneCut {
  const { pitchMm, leastOpeningMm, leastBridgeMm, widthMm, heightMm } = ask;
  if (ask.way === 'holes') return holes(ask);
  // The widest opening ends at the image's edge; lines that flow know it themselves.
  const marginMm = ask.way === 'flow' ? leastBridgeMm : Math.max(leastBridgeMm, (pitchMm - leastBridgeMm) / 2);
  const guide = { widthMm, heightMm, pitchMm, marginMm };
  const centre = ask.centreMm ?? [widthMm / 2, heightMm / 2];
  const rules: LineRules = { pitchMm, leastOpeningMm, leastBridgeMm: leastBridgeMm * 1.02, longestMm };
  // What the bridges along a line take is made good by its width.
  const along = openAlong(ask);
  const cover = (x: number, y: number): number => ask.cover(x, y) / along;
  return { region: slitsAlong(guidesOf(ask, guide, centre), cover, rules), ...toneEnds(ask) };
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

/**
 * Round holes in staggered rows, each of the punch whose area comes nearest to the tone over its place; what that is off by is passed on to the
 * holes beside and below it (as Floyd and Steinberg 1976 pass it on among pixels), so that few punches hold many tones.
 */
function holes(ask: ToneCutAsk): ToneCut {
  const { widthMm, heightMm, pitchMm, leastBridgeMm, cover } = ask;
  const sizes = [0, ...punchSizes(ask)];
  const rowMm = rowOf(pitchMm);
  const cellMm2 = pitchMm * rowMm;
  const share = (d: number): number => (Math.PI * d * d) / 4 / cellMm2;
  const found: Float64Array[] = [];
  const columns = Math.ceil(widthMm / pitchMm) + 2;
  let owed = new Float64Array(columns);
  for (let row = 0; (row + 0.5) * rowMm < heightMm; row++) {
    const below = new Float64Array(columns);
    const odd = row % 2;
    for (let k = 0; ; k++) {
      const x = (k + (odd ? 1 : 0.5)) * pitchMm,
        y = (row + 0.5) * rowMm;
      if (x > widthMm) break;
      const tone = cover(x, y);
      // White stays white.
      const wanted = tone < whiteShare ? 0 : tone + owed[k];
      const best = sizes.reduce((near, d) => (Math.abs(share(d) - wanted) < Math.abs(share(near) - wanted) ? d : near), 0);
      const off = Math.min(mostOwed, Math.max(-mostOwed, wanted - share(best)));
      owed[k + 1] += off / 2;
      below[k + odd] += off / 4;
      if (k + odd > 0) below[k + odd - 1] += off / 4;
      const edge = best / 2 + leastBridgeMm;
      if (best === 0 || x < edge || y < edge || x > widthMm - edge || y > heightMm - edge) continue;
      found.push(hole(x, y, best));
    }
    owed = below;
  }
  return {
    region: { rings: found },
    ...toneEnds(ask),
  };
}

/** Lighter than this no hole is made; and no more than this is passed on, or what dark places can't hold would run out into light ones. */
const whiteShare = 0.01,
  mostOwed = 0.1;

function hole(x: number, y: number, acrossMm: number): Float64Array {
  const n = 48;
  return Float64Array.from({ length: 2 * n }, (_, i) =>
    i % 2 === 0 ? x + (acrossMm / 2) * Math.cos((Math.PI * i) / n) : y + (acrossMm / 2) * Math.sin((Math.PI * (i - 1)) / n),
  );
}

/** Rows of holes lie as close as in a honeycomb. */
const rowOf = (pitchMm: number): number => (pitchMm * Math.sqrt(3)) / 2;

/** The punches at hand that leave a strip between two holes; where none are named, six sizes for a knife. */
function punchSizes({ pitchMm, leastOpeningMm, leastBridgeMm, punchesMm }: EndsAsk): number[] {
  const most = pitchMm - leastBridgeMm * 1.02;
  return (punchesMm ?? Array.from({ length: 6 }, (_, i) => leastOpeningMm + ((most - leastOpeningMm) * i) / 5))
    .filter((d) => d >= leastOpeningMm && d <= most)
    .sort((a, b) => a - b);
}
