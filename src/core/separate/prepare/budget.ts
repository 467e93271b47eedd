import { exp, log } from '../../numeric/index.ts';
import { differences, meanOf, metresOf, type KnownDifferences } from '../finish/figures.ts';
import { fieldOf, settle, solveMasks, type Level, type MaskRules } from './masks.ts';

/** Prices tried on the way to a budget and for the trade-off, ΔE00·mm a mm. */
const priceLadder = [0.25, 0.7, 1.8, 4.5, 11, 28];

export interface CurvePoint {
  readonly priceMm: number;
  readonly metres: number;
}

/** Metres of knife at each price of the ladder, on a coarse level; each price starts from the masks of the one before. */
export function curveOf(levels: readonly Level[], rules: MaskRules, finest: number): (CurvePoint & { readonly codes: Uint8Array })[] {
  const level = levels[finest];
  let codes: Uint8Array | undefined;
  return priceLadder.map((priceMm) => {
    if (codes) {
      codes = codes.slice();
      settle(fieldOf(level, { ...rules, priceMm }), codes, [2], 2);
    } else codes = solveMasks(levels, { ...rules, priceMm }, finest);
    return { priceMm, codes, metres: metresOf(codes, level.width, level.height, rules.layers, level.mmPerPx, rules.layerPrice) };
  });
}

export interface TradeOffAsk {
  /** Finest first: the first is the one it is told on. */
  readonly levels: readonly Level[];
  readonly rules: MaskRules;
}

export interface TradeOffPoint extends CurvePoint {
  readonly meanDeltaE: number;
}

/** The same inks with more and less knife: colour error against metres. */
export function tradeOff({ levels, rules }: TradeOffAsk): TradeOffPoint[] {
  let known: KnownDifferences | undefined;
  return curveOf(levels, rules, 0).map(({ priceMm, metres, codes }) => {
    known = { codes, values: differences(levels[0].lab, codes, rules.overlapLab, known) };
    return { priceMm, metres, meanDeltaE: meanOf(known.values) };
  });
}

/**
 * The curve moved to where it was seen to lie: at the price that the stencils were cut at it goes through what they came out as, since cutting and
 * bridging change other masks about as much.
 */
export function laidThrough(curve: readonly TradeOffPoint[], cut: TradeOffPoint): TradeOffPoint[] {
  const points = curve.filter((p) => p.metres > 0);
  if (points.length < 2 || cut.metres <= 0) return [...curve];
  const wanted = log(cut.priceMm);
  let i = 0;
  while (i + 2 < points.length && log(points[i + 1].priceMm) < wanted) i++;
  const [a, b] = [points[i], points[i + 1]];
  const t = Math.max(-0.5, Math.min(1.5, (wanted - log(a.priceMm)) / (log(b.priceMm) - log(a.priceMm)))),
    longer = cut.metres / exp(log(a.metres) + t * (log(b.metres) - log(a.metres))),
    worse = cut.meanDeltaE - (a.meanDeltaE + t * (b.meanDeltaE - a.meanDeltaE));
  return curve.map((p) => ({ ...p, metres: p.metres * longer, meanDeltaE: Math.max(0, p.meanDeltaE + worse) }));
}

/** The price at which so many metres are cut: between the points of a curve by logarithms, beyond its ends by its last slope, but not far. */
export function priceFor(metres: number, curve: readonly CurvePoint[]): number {
  const points = curve.filter((p) => p.metres > 0).map((p) => [log(p.metres), log(p.priceMm)] as const);
  if (points.length === 0) return priceLadder[0];
  if (points.length === 1) return exp(points[0][1]);
  const wanted = log(metres);
  let i = 0;
  while (i + 2 < points.length && points[i + 1][0] > wanted) i++;
  const [x0, y0] = points[i],
    [x1, y1] = points[i + 1];
  const slope = Math.abs(x1 - x0) < 1e-9 ? 0 : (y1 - y0) / (x1 - x0);
  return exp(Math.max(log(0.02), Math.min(log(3 * priceLadder[priceLadder.length - 1]), y0 + slope * (wanted - x0))));
}
