import { figure, length, list, say, share, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import type { SizeMm } from '../fit.ts';
import { readTestSheets, whereRead } from './test-reading.ts';
import type { RegisterFound } from './test-reading.ts';
import { registerTestSheet, shiftOfLine } from './test-sheet.ts';

/** Test sheets as read at the table: which lines of the scales meet. */
export interface TestLines {
  readonly imageMm: SizeMm;
  readonly readsMm: number;
  readonly readings: readonly { readonly sheet: number; readonly place: string; readonly across?: number; readonly down?: number }[];
}

/** A studio's register in its parts, for one layer. */
export interface MeasuredRegister {
  readonly xMm: number;
  readonly yMm: number;
  readonly turnDeg: number;
  readonly sheets?: number;
}

/** The register that these lines tell of. A place that was read only one way yet is left out. Throws ProblemError. */
export function registerFromLines({ imageMm, readsMm, readings }: TestLines): RegisterFound {
  const sheet = registerTestSheet(imageMm, { readsMm });
  const lines = Math.round(sheet.rangeMm / readsMm);
  const whole = readings.flatMap((one) => {
    if (one.across === undefined || one.down === undefined) return [];
    for (const line of [one.across, one.down]) {
      // Half a line past the last one still meets it best; what lies farther off was not read on this scale.
      if (!(Math.abs(line) <= lines + 0.5))
        fail(
          'test-line',
          whereRead(sheet.places, one),
          say('register.noSuchLine', { line: figure(line, 2, false) }),
          say('register.linesRun', { most: lines }),
        );
    }
    return [{ sheet: one.sheet, place: one.place, xMm: shiftOfLine(one.across, readsMm), yMm: shiftOfLine(one.down, readsMm) }];
  });
  const seen = new Set<string>();
  for (const one of whole) {
    const key = `${one.sheet} ${one.place}`;
    if (seen.has(key)) fail('test-twice', whereRead(sheet.places, one), say('register.readTwice'), say('register.keepOneReading'));
    seen.add(key);
  }
  return readTestSheets(sheet.places, whole, readsMm);
}

export function measuredRegister(found: RegisterFound): MeasuredRegister {
  const round = (value: number, digits: number): number => Number(value.toFixed(digits));
  return {
    xMm: round(found.sigmaMm.x, 3),
    yMm: round(found.sigmaMm.y, 3),
    turnDeg: round(found.turnDeg?.sigma ?? 0, 4),
    sheets: found.sheets,
  };
}

/** One σ for the place of the image where it is worst: its corner, with the larger axis and the turn together. */
export function sigmaAtCorner(measured: MeasuredRegister, [width, height]: SizeMm): number {
  const turnMm = (measured.turnDeg * Math.PI * Math.hypot(width, height)) / 360;
  return Math.hypot(Math.max(measured.xMm, measured.yMm), turnMm);
}

/** Steps for the hands: what to do about a steady shift or turn between two runs. Empty: nothing stands clear of chance. */
export function driftAdvice(found: RegisterFound): readonly Saying[] {
  const advice: Saying[] = [];
  const chance = (2 * Math.SQRT2 * found.sigmaMm.both) / Math.sqrt(found.sheets);
  const [x, y] = found.driftMm;
  const shift = [
    ...(Math.abs(x) > chance ? [say(x > 0 ? 'register.toRight' : 'register.toLeft', { by: length(Math.abs(x), 2) })] : []),
    ...(Math.abs(y) > chance ? [say(y > 0 ? 'register.downwards' : 'register.upwards', { by: length(Math.abs(y), 2) })] : []),
  ];
  if (shift.length > 0) advice.push(say('register.steadyShift', { shift: list(shift) }));
  const turn = found.turnDeg;
  if (turn && Math.abs(turn.mean) > (2 * Math.SQRT2 * turn.sigma) / Math.sqrt(found.sheets) && Math.abs(turn.mean) > 0.005) {
    const degrees = figure(Math.abs(turn.mean), 3);
    advice.push(say(turn.mean > 0 ? 'register.turnedClockwise' : 'register.turnedAnticlockwise', { degrees }));
  }
  if (found.growthPercent !== null && Math.abs(found.growthPercent) > 0.03) {
    const by = share(Math.abs(found.growthPercent) / 100, 2);
    advice.push(say(found.growthPercent > 0 ? 'register.printsLarger' : 'register.printsSmaller', { by }));
  }
  return advice;
}
