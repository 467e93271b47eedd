import { describe, expect, test } from 'vitest';
import { inEnglish, refusalOf, refusedBy } from '../../../../test/said.ts';
import { seeded } from '../../random.ts';
import {
  driftAdvice,
  lineFromText,
  measuredRegister,
  ownSigma,
  registerFromLines,
  registerTestSheet,
  testScaleFor,
  readTestTable,
  sigmaAtCorner,
  testTable,
  type TestLines,
} from '../index.ts';

const imageMm = [180, 240] as const;
const places = registerTestSheet(imageMm).places.map((place) => place.id);

/** Sheets as a studio with this register would pull and read them: to the nearest 0.2 mm or 0.25 mm (half a line of the coarse scale). */
function pulled(
  seed: number,
  sheets: number,
  sigmaMm: number,
  turnDeg: number,
  driftMm: readonly [number, number] = [0, 0],
  readsMm = 0.2,
): TestLines {
  const line = (mm: number): number => (readsMm < 0.4 ? Math.round(mm / readsMm) : Math.round((2 * mm) / readsMm) / 2);
  const random = seeded(seed * 7919);
  const readings = Array.from({ length: sheets }, (_, i) => {
    const pair = (sigma: number): number => (random.normal() - random.normal()) * sigma;
    const [x, y, turn] = [driftMm[0] + pair(sigmaMm), driftMm[1] + pair(sigmaMm), (pair(turnDeg) * Math.PI) / 180];
    return registerTestSheet(imageMm).places.map((place) => ({
      sheet: i + 1,
      place: place.id,
      across: line(x - turn * (place.yMm - 120)),
      down: line(y + turn * (place.xMm - 90)),
    }));
  }).flat();
  return { imageMm, readsMm, readings };
}
const codeOf = (lines: TestLines): string => refusedBy(() => registerFromLines(lines))[0].code;

describe('test sheets read back', () => {
  test('the sheet for stops reaches past what is likely there, on far fewer slits; a reading off its scale is refused', () => {
    const stops = registerTestSheet(imageMm, testScaleFor('stops'));
    // Two placings by stops on torn edges, nineteen times in twenty: table of docs/trade.md, section 5.
    expect(stops.rangeMm).toBeGreaterThan(Math.hypot(1.5, 1.5));
    for (const run of ['first', 'second'] as const) expect(stops.lines.filter((l) => l.run === run).length).toBeLessThan(80);
    const [place] = stops.places;
    const read = (across: number): TestLines => ({
      imageMm,
      readsMm: stops.readsMm,
      readings: [1, 2, 3].map((sheet) => ({ sheet, place: place.id, across, down: 0 })),
    });
    expect(codeOf(read(7))).toBe('test-line');
    expect(() => registerFromLines(read(6))).not.toThrow();
  });

  test('nineteen times in twenty the true spread lies in the range that is given', () => {
    let inside = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const [low, high] = registerFromLines(pulled(seed, 10, 0.35, 0.03, [0, 0], 0.5)).sigmaRangeMm;
      if (low <= 0.35 && high >= 0.35) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(180);
    expect(inside).toBeLessThanOrEqual(199);
  });

  test('a steady shift comes with its direction and what to do; without one there is no advice', () => {
    const advice = driftAdvice(registerFromLines(pulled(3, 12, 0.1, 0, [0.8, -0.6])));
    expect(inEnglish(advice[0])).toMatch(/0\.\d\d\u00a0mm to the right and 0\.\d\d\u00a0mm up/);
    expect(driftAdvice(registerFromLines(pulled(3, 12, 0.1, 0)))).toEqual([]);
  });

  test('turning counts at the corners of a large image more than of a small one', () => {
    const measured = { xMm: 0.3, yMm: 0.2, turnDeg: 0.1 };
    expect(sigmaAtCorner(measured, [300, 400])).toBeCloseTo(Math.hypot(0.3, ((0.1 * Math.PI) / 180) * 250), 9);
    expect(ownSigma({ sigmaMm: 5, measured }, [30, 40])).toBeLessThan(ownSigma({ measured }, [300, 400])!);
    expect(ownSigma({ sigmaMm: 0.4 }, [30, 40])).toBe(0.4);
    const found = measuredRegister(registerFromLines(pulled(5, 20, 0.3, 0.04)));
    expect(found.turnDeg).toBeGreaterThan(0.01);
    expect(found.sheets).toBe(20);
  });

  test('a place read one way only waits; a line that is not there, a place twice, too few sheets are refused', () => {
    const lines = pulled(1, 4, 0.3, 0);
    const half = { ...lines, readings: lines.readings.map((one, i) => (i === 0 ? { ...one, down: undefined } : one)) };
    expect(registerFromLines(half).sheets).toBe(4);
    expect(codeOf({ ...lines, readings: [...lines.readings, { sheet: 9, place: places[0], across: 60, down: 0 }] })).toBe('test-line');
    const twice = { ...lines, readings: [...lines.readings, lines.readings[0]] };
    expect(codeOf(twice)).toBe('test-twice');
    expect(refusalOf(() => registerFromLines(twice))).toContain('test sheet 1, top left:');
    expect(codeOf({ ...lines, readings: lines.readings.slice(0, 8) })).toBe('test-sheets-few');
    expect(codeOf({ ...lines, readings: [...lines.readings, { sheet: 9, place: 'middle', across: 1, down: 0 }] })).toBe('test-place');
  });
});

describe('readings as they are typed', () => {
  test('a line, a half line, a minus of any kind, or millimetres from a rule', () => {
    expect(['3', '−2', '-2,5', ' 1½ ', '+4', '2.4 mm', '-0,6mm', ''].map((text) => lineFromText(text, 0.2))).toEqual([
      3,
      -2,
      -2.5,
      1.5,
      4,
      expect.closeTo(12, 9),
      expect.closeTo(-3, 9),
      null,
    ]);
    expect(lineFromText('two', 0.2)).toBeNaN();
  });

  test('the empty table comes back as it was filled in, whatever parts its columns', () => {
    const rows = testTable(registerTestSheet(imageMm).places, 3).map((row, i) => (i % 2 ? [row[0], row[1], '2', '-1'] : row));
    for (const parting of [',', ';', '\t']) {
      const read = readTestTable(rows.map((row) => row.join(parting)).join('\r\n'), 0.2, 'readings.csv');
      expect(read).toHaveLength(6);
      expect(read[0]).toEqual({ sheet: 1, place: 'top left', across: 2, down: -1 });
    }
    const refused = refusalOf(() => readTestTable('1,top left,x,1\n0,top left,1,1\n3,top left', 0.2, 'readings.csv'));
    for (const part of ['readings.csv, line 1: “x”', 'line 2: “0”', 'line 3: It has 2 of 4 columns']) expect(refused).toContain(part);
  });
});
