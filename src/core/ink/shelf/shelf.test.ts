import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../problem.ts';
import { emptyShelf, inkOfLot, lotInUse, mergeShelves, readShelf, writeShelf } from './shelf.ts';
import type { InkShelf } from './schema.ts';

const lab = (l: number, a: number, b: number): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: [l, a, b] });
const shelf: InkShelf = {
  ...emptyShelf('Low tide'),
  inks: [
    {
      id: 'kelp',
      name: 'Kelp',
      role: 'ink',
      densityGPerMl: 1.12,
      lots: [{ lot: '1', source: { from: 'one-ground', ground: lab(94, 0, 3), over: lab(50, -20, 35) } }],
    },
    { id: 'base', name: 'Clear base', role: 'transparent-base', densityGPerMl: 1.05, lots: [{ lot: '1', source: { from: 'clear' } }] },
  ],
  papers: [{ id: 'smooth', name: 'Smooth white', reading: lab(94, 0, 3) }],
  pots: [
    {
      id: 'pot-1',
      name: 'Kelp, thin',
      parts: [
        { ink: 'kelp', grams: 10 },
        { ink: 'base', grams: 90 },
      ],
      rounds: [{ added: [], reading: lab(80, -10, 15) }],
    },
  ],
};
const problemsOf = (act: () => unknown): readonly { code: string; path: string }[] => {
  try {
    act();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
  return [];
};

describe('the studio’s ink shelf', () => {
  test('goes out as a file and comes back the same, with fields it does not know', () => {
    const withMore = { ...shelf, cupboard: 'by the window' };
    expect(readShelf(writeShelf(withMore))).toEqual(withMore);
  });
  test('every fault is told with its place', () => {
    const bad = {
      ...shelf,
      inks: [
        { ...shelf.inks[0], densityGPerMl: 12 },
        { ...shelf.inks[1], id: 'No Good' },
      ],
    };
    expect(problemsOf(() => readShelf(JSON.stringify(bad), 'my.shelf')).map((p) => p.path)).toEqual([
      'my.shelf: inks[0] densityGPerMl',
      'my.shelf: inks[1] id',
    ]);
    expect(problemsOf(() => readShelf(JSON.stringify({ ...shelf, inks: [shelf.inks[0], shelf.inks[0]] }))).map((p) => p.code)).toEqual([
      'shelf-twice',
      'shelf-unknown-ink',
    ]);
  });
  test.each([
    ['{"kind":', 'shelf-broken'],
    ['', 'shelf-broken'],
    ['null', 'shelf-field'],
    ['[]', 'shelf-field'],
    [JSON.stringify({ ...shelf, schemaVersion: 7 }), 'shelf-newer'],
  ])('%s is refused', (text, code) => {
    expect(problemsOf(() => readShelf(text))[0].code).toBe(code);
  });
  test('two shelves together: lots are joined, namesakes renamed with their pots', () => {
    const other: InkShelf = {
      ...shelf,
      inks: [
        { ...shelf.inks[0], lots: [{ lot: '2', source: { from: 'clear' } }] },
        { ...shelf.inks[1], name: 'Extender', role: 'extender-base' },
      ],
      pots: [{ ...shelf.pots[0], id: 'pot-2' }],
    };
    const { shelf: both, problems } = mergeShelves(shelf, other);
    expect(both.inks.map((i) => [i.id, i.lots.length])).toEqual([
      ['kelp', 2],
      ['base', 1],
      ['base-2', 1],
    ]);
    expect(both.pots.map((p) => p.parts[1].ink)).toEqual(['base', 'base-2']);
    expect(problems.map((p) => p.code)).toEqual(['shelf-renamed']);
    expect(lotInUse(both.inks[0]).lot).toBe('2');
    expect(readShelf(writeShelf(both))).toEqual(both);
    expect(mergeShelves(shelf, shelf).shelf).toEqual(shelf);
  });
  test('a lot becomes an ink', () => {
    const found = inkOfLot(lotInUse(shelf.inks[0]), { ks: 0.005, k1: 0.04, k2: 0.6 }, 'kelp');
    expect(found.trust.how).toBe('one-ground');
    expect(Math.max(...found.ink.k)).toBeGreaterThan(0.5);
  });
});
