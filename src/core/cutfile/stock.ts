import { fail } from '../problem.ts';
import { lengths, name as asName, say, type Saying } from '../../words/say.ts';

/** Something to be cut from stock: its box, and whether it may lie turned (not where grain matters). */
export interface ToCut {
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly mayTurn: boolean;
}

export interface Stock {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Left free along the stock's edges, and between two things. */
  readonly marginMm: number;
  readonly gapMm: number;
}

export interface LaidOut {
  readonly id: string;
  /** 1, 2, … which sheet of stock. */
  readonly sheet: number;
  /** Top left corner on it. */
  readonly xMm: number;
  readonly yMm: number;
  readonly turned: boolean;
}

interface Gap {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

type Ways = 'both' | 'upright' | 'turned';

/**
 * Lays boxes on as few sheets of stock as it finds. Greedy placing turns a box too soon or too late, so it is tried with
 * boxes turned freely, all upright and all turned (each where it fits at all); of equals the one with fewest turned is kept.
 */
export function layOnStock(things: readonly ToCut[], stock: Stock, place: string | Saying = ''): LaidOut[] {
  const tries = (['upright', 'both', 'turned'] as const).map((ways) => layBy(things, stock, place, ways));
  const sheetsOf = (laid: readonly LaidOut[]): number => laid.reduce((most, l) => Math.max(most, l.sheet), 0);
  const turnsOf = (laid: readonly LaidOut[]): number => laid.filter((l) => l.turned).length;
  return tries.reduce((best, laid) =>
    sheetsOf(laid) < sheetsOf(best) || (sheetsOf(laid) === sheetsOf(best) && turnsOf(laid) < turnsOf(best)) ? laid : best,
  );
}

/**
 * Largest first, each into the free rectangle that it fills best (free
 * rectangles overlap and are cut back after each; Jylänki 2010). Boxes, not outlines: nothing lies in another's hollow.
 */
function layBy(things: readonly ToCut[], stock: Stock, place: string | Saying, wanted: Ways): LaidOut[] {
  const { gapMm, marginMm } = stock;
  // A gap to the right of and below everything: the free area grows by one gap to make up for the last.
  const whole: Gap = { x: marginMm, y: marginMm, w: stock.widthMm - 2 * marginMm + gapMm, h: stock.heightMm - 2 * marginMm + gapMm };
  const sheets: Gap[][] = [];
  const out: LaidOut[] = [];
  const order = things
    .map((thing, i) => ({ thing, i }))
    .sort(
      (a, b) =>
        Math.max(b.thing.widthMm, b.thing.heightMm) - Math.max(a.thing.widthMm, a.thing.heightMm) ||
        b.thing.widthMm * b.thing.heightMm - a.thing.widthMm * a.thing.heightMm ||
        a.i - b.i,
    );
  for (const { thing } of order) {
    const w = thing.widthMm + gapMm,
      h = thing.heightMm + gapMm;
    const all =
      thing.mayTurn && w !== h
        ? ([
            [w, h, false],
            [h, w, true],
          ] as const)
        : ([[w, h, false]] as const);
    const fit = all.filter(([a, b]) => a <= whole.w + 1e-9 && b <= whole.h + 1e-9);
    const liked = wanted === 'both' ? fit : fit.filter(([, , turned]) => turned === (wanted === 'turned'));
    const ways = liked.length > 0 ? liked : fit;
    if (fit.length === 0) {
      fail(
        'stock-too-small',
        place,
        say('stencil.largerThanStock', {
          name: asName(thing.id),
          size: lengths([thing.widthMm, thing.heightMm], '×', 0),
          stock: lengths([stock.widthMm, stock.heightMm]),
        }),
        say('stencil.largerStock'),
      );
    }
    let best: { sheet: number; gap: Gap; w: number; h: number; turned: boolean; waste: number } | undefined;
    for (let sheet = 0; !best && sheet <= sheets.length; sheet++) {
      if (sheet === sheets.length) sheets.push([whole]);
      for (const gap of sheets[sheet]) {
        for (const [a, b, turned] of ways) {
          if (a > gap.w + 1e-9 || b > gap.h + 1e-9) continue;
          const waste = Math.min(gap.w - a, gap.h - b);
          if (!best || waste < best.waste) best = { sheet, gap, w: a, h: b, turned, waste };
        }
      }
    }
    if (!best) continue;
    const { gap, sheet } = best;
    out.push({ id: thing.id, sheet: sheet + 1, xMm: gap.x, yMm: gap.y, turned: best.turned });
    sheets[sheet] = cutBack(sheets[sheet], { x: gap.x, y: gap.y, w: best.w, h: best.h });
  }
  return out;
}

function cutBack(gaps: readonly Gap[], used: Gap): Gap[] {
  const out: Gap[] = [];
  for (const g of gaps) {
    if (used.x >= g.x + g.w - 1e-9 || used.x + used.w <= g.x + 1e-9 || used.y >= g.y + g.h - 1e-9 || used.y + used.h <= g.y + 1e-9) {
      out.push(g);
      continue;
    }
    out.push(
      { ...g, w: used.x - g.x },
      { ...g, h: used.y - g.y },
      { ...g, x: used.x + used.w, w: g.x + g.w - used.x - used.w },
      { ...g, y: used.y + used.h, h: g.y + g.h - used.y - used.h },
    );
  }
  const real = out.filter((g) => g.w > 1 && g.h > 1);
  const inside = (a: Gap, b: Gap): boolean =>
    a.x >= b.x - 1e-9 && a.y >= b.y - 1e-9 && a.x + a.w <= b.x + b.w + 1e-9 && a.y + a.h <= b.y + b.h + 1e-9;
  return real.filter((g, i) => !real.some((o, k) => k !== i && inside(g, o) && (!inside(o, g) || k < i)));
}
