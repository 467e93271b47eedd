import { describe, expect, test } from 'vitest';
import { checkSheetsFor, wearOf } from './wear.ts';

const run = { group: 'a', washable: false, lasts: 20, setUp: 3, sheets: 28 };

describe('a stencil that wears out mid-run', () => {
  test('is changed before it gives out, and two sheets check the register', () => {
    // 3 + 28 = 31 pulls; after 20 the next one, with two more: 33.
    expect(wearOf([run])).toEqual([{ pulls: 33, fresh: 2, changes: [{ afterPull: 20, afterSheets: 17, stencil: 2, checkSheets: 2 }] }]);
  });
  test('one that lasts is not', () => {
    expect(wearOf([{ ...run, lasts: 31 }])).toEqual([{ pulls: 31, fresh: 1, changes: [] }]);
  });
  test('film carries what is left of its life into its next run; paper begins anew', () => {
    const film = { ...run, lasts: 50, washable: true };
    expect(wearOf([film, film])[1].changes).toMatchObject([{ afterPull: 19, afterSheets: 16 }]);
    expect(
      wearOf([
        { ...film, washable: false },
        { ...film, washable: false },
      ])[1].changes,
    ).toEqual([]);
  });
  test('every stencil prints within its life, however short', () => {
    for (let lasts = 1; lasts < 40; lasts++) {
      const [{ pulls, changes }] = wearOf([{ ...run, lasts }]);
      const ends = [...changes.map((c) => c.afterPull), pulls];
      ends.forEach((end, i) => expect(end - (ends[i - 1] ?? 0)).toBeLessThanOrEqual(lasts));
      expect(pulls).toBe(31 + changes.length * checkSheetsFor(lasts));
    }
  });
});
