import { exp, log } from '../../numeric/index.ts';
import { asWritten, length, list, name as asName, say, type Saying } from '../../../words/say.ts';
import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import type { TestPlace } from './test-sheet.ts';

/** One place of one sheet as read: how far the second run lies from the first, right and down positive. */
export interface TestReading {
  /** Order of printing, from 1. */
  readonly sheet: number;
  readonly place: string;
  readonly xMm: number;
  readonly yMm: number;
}

export interface RegisterFound {
  readonly sheets: number;
  /** Standard deviation of one layer's place, per axis: the scatter of the pair over √2, as both runs were placed alike. */
  readonly sigmaMm: { readonly x: number; readonly y: number; readonly both: number };
  /** Where the true σ lies, nineteen times in twenty, with so few sheets (chi-square, both axes together). */
  readonly sigmaRangeMm: readonly [number, number];
  /** Steady shift of the second run against the first, at the image's middle. */
  readonly driftMm: readonly [number, number];
  /** Shift that grows from sheet to sheet, mm a sheet: a stop that creeps, paper that dries. */
  readonly creepMmPerSheet: readonly [number, number];
  /** Turn of the second run: mean, and scatter of one layer; null with one place only. */
  readonly turnDeg: { readonly mean: number; readonly sigma: number } | null;
  /** Growth between the runs, percent of length; null with one place only. */
  readonly growthPercent: number | null;
  readonly problems: readonly Problem[];
}

/** What a set of read test sheets says. Each sheet: least squares for shift, small turn and growth. Throws ProblemError. */
export function readTestSheets(places: readonly TestPlace[], readings: readonly TestReading[], readsMm?: number): RegisterFound {
  const sheets = [...new Set(readings.map((reading) => reading.sheet))].sort((one, other) => one - other);
  if (sheets.length < 3)
    fail('test-sheets-few', 'register.testSheets', say('register.fewSheets', { n: sheets.length }), say('register.readMoreSheets'));
  const centre = [mean(places.map((place) => place.xMm)), mean(places.map((place) => place.yMm))];
  const fits = sheets.map((sheet) => {
    const here = readings
      .filter((reading) => reading.sheet === sheet)
      .map((reading) => {
        const place =
          places.find((one) => one.id === reading.place) ??
          fail(
            'test-place',
            say('where.testSheet', { sheet }),
            say('register.noSuchPlace', { place: asName(reading.place) }),
            say('register.placesAre', {
              places: list(
                places.map((one) => asName(one.id)),
                'comma',
              ),
            }),
          );
        if (![reading.xMm, reading.yMm].every(Number.isFinite))
          fail('test-number', whereRead(places, reading), say('register.readingMissing'), say('register.writeBoth'));
        return { px: place.xMm - centre[0], py: place.yMm - centre[1], x: reading.xMm, y: reading.yMm };
      });
    return fitSheet(here);
  });
  const xs = fits.map((fit) => fit.x);
  const ys = fits.map((fit) => fit.y);
  const creep = [slope(sheets, xs), slope(sheets, ys)] as const;
  const resid = (values: readonly number[], k: number): number => scatter(values.map((value, i) => value - k * sheets[i]));
  // Creep counts only where it stands clear of chance; otherwise it would eat part of the scatter.
  const clear = [xs, ys].map((values, axis) => Math.abs(creep[axis]) * (sheets.at(-1)! - sheets[0]) > 4 * resid(values, creep[axis]));
  const x = resid(xs, clear[0] ? creep[0] : 0) / Math.SQRT2;
  const y = resid(ys, clear[1] ? creep[1] : 0) / Math.SQRT2;
  const both = Math.sqrt((x * x + y * y) / 2);
  const turns = fits.flatMap((fit) => (fit.turnDeg === null ? [] : [fit.turnDeg]));
  const growths = fits.flatMap((fit) => (fit.growthPercent === null ? [] : [fit.growthPercent]));
  const problems: Problem[] = [];
  if (sheets.length < 8)
    problems.push(
      problem(
        'note',
        'test-sheets-few',
        'register.testSheets',
        say('register.spreadRough', { n: sheets.length }),
        say('register.tenSheets'),
      ),
    );
  if (both > 0 && readsMm !== undefined && both < readsMm / 3)
    problems.push(
      problem(
        'note',
        'test-sheet-coarse',
        'register.testSheets',
        say('register.finerThanScale', { step: length(readsMm) }),
        say('register.noWorseThan'),
      ),
    );
  clear.forEach((steady, axis) => {
    if (steady)
      problems.push(
        problem(
          'warning',
          'register-creeps',
          'register.testSheets',
          say(axis === 0 ? 'register.creepsAcross' : 'register.creepsDown', { by: length(Math.abs(creep[axis]), 3) }),
          say('register.lookForLoose'),
        ),
      );
  });
  return {
    sheets: sheets.length,
    sigmaMm: { x, y, both },
    sigmaRangeMm: sigmaRange(both, 2 * sheets.length - 2 - clear.filter(Boolean).length),
    driftMm: [mean(xs), mean(ys)],
    creepMmPerSheet: creep,
    turnDeg: turns.length === fits.length ? { mean: mean(turns), sigma: scatter(turns) / Math.SQRT2 } : null,
    growthPercent: growths.length === fits.length ? mean(growths) : null,
    problems,
  };
}

/** One reading of the test: its sheet and place. */
export function whereRead(places: readonly TestPlace[], { sheet, place }: { readonly sheet: number; readonly place: string }): Saying {
  return say('where.testPlace', { sheet, place: places.find((one) => one.id === place)?.name ?? asWritten(place) });
}

/** Shift at the middle, turn and growth of one sheet: x = tx + g px − r py, y = ty + g py + r px (small turn, y down, clockwise). */
function fitSheet(points: readonly { readonly px: number; readonly py: number; readonly x: number; readonly y: number }[]): {
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number | null;
  readonly growthPercent: number | null;
} {
  const [mx, my, mpx, mpy] = [
    mean(points.map((p) => p.x)),
    mean(points.map((p) => p.y)),
    mean(points.map((p) => p.px)),
    mean(points.map((p) => p.py)),
  ];
  let spread = 0;
  let turn = 0;
  let growth = 0;
  for (const p of points) {
    const [dx, dy] = [p.px - mpx, p.py - mpy];
    spread += dx * dx + dy * dy;
    turn += dx * (p.y - my) - dy * (p.x - mx);
    growth += dx * (p.x - mx) + dy * (p.y - my);
  }
  const [r, g] = spread > 1 ? [turn / spread, growth / spread] : [0, 0];
  return {
    x: mx - g * mpx + r * mpy,
    y: my - g * mpy - r * mpx,
    turnDeg: spread > 1 ? (r * 180) / Math.PI : null,
    growthPercent: spread > 1 ? g * 100 : null,
  };
}

/** The interval that holds a true σ nineteen times in twenty, found as `sigmaMm` with f degrees of freedom: σ √(f / χ²). */
export function sigmaRange(sigmaMm: number, freedom: number): readonly [number, number] {
  return [sigmaMm * Math.sqrt(freedom / chiSquare(0.975, freedom)), sigmaMm * Math.sqrt(freedom / chiSquare(0.025, freedom))];
}

/** The value that chi-square stays under with this probability: the incomplete gamma series, halved into. */
function chiSquare(probability: number, freedom: number): number {
  const a = freedom / 2;
  const whole = (x: number): number => {
    let sum = 0;
    let logTerm = -log(a);
    let logGamma = 0;
    // Γ(a) for halves and wholes, down to Γ(1) or Γ(1/2).
    for (let k = a - 1; k > 0; k--) logGamma += log(k);
    if (!Number.isInteger(a)) logGamma += log(Math.PI) / 2;
    for (let n = 1; n < 2000; n++) {
      const term = exp(a * log(x) - x - logGamma + logTerm);
      sum += term;
      if (term < 1e-14 && n > x) break;
      logTerm += log(x) - log(a + n);
    }
    return sum;
  };
  let [low, high] = [1e-9, freedom / 2 + 10 * Math.sqrt(2 * freedom) + 20];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (whole(middle) < probability) low = middle;
    else high = middle;
  }
  // Found for half of it.
  return low + high;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function scatter(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / Math.max(1, values.length - 1));
}

function slope(xs: readonly number[], ys: readonly number[]): number {
  const [mx, my] = [mean(xs), mean(ys)];
  const spread = xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  return xs.reduce((sum, x, i) => sum + (x - mx) * (ys[i] - my), 0) / spread;
}
