import { describe, expect, test } from 'vitest';
import { ProblemError, type Problem } from '../../problem.ts';
import { inEnglish } from '../../../../test/said.ts';
import { tellPlace } from '../../../words/index.ts';
import { emptyShelf, inkOfLot, lotInUse, mergeShelves, readShelf, writeShelf } from './shelf.ts';
import type { InkShelf, ShelfLot } from './schema.ts';

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
const problemsOf = (act: () => unknown): readonly Problem[] => {
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
  test('every fault names its place', () => {
    const bad = {
      ...shelf,
      inks: [
        { ...shelf.inks[0], densityGPerMl: 12 },
        { ...shelf.inks[1], id: 'No Good' },
      ],
    };
    expect(problemsOf(() => readShelf(JSON.stringify(bad), 'my.shelf')).map((p) => tellPlace(p))).toEqual([
      'my.shelf: ink 1 (Kelp), “densityGPerMl”',
      'my.shelf: ink 2 (Clear base), “id”',
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
  const sky = { ...shelf.inks[0], id: 'sky' };
  test.each([
    [{ ...shelf, studio: undefined, inks: 'none' }, 'my.shelf: “inks” This should be a list, not “none”.'],
    [{ ...shelf, inks: [{ ...sky, name: undefined }] }, 'my.shelf: ink 1, “name” This is missing.'],
    [{ ...shelf, inks: [{ ...sky, name: '' }] }, 'my.shelf: ink 1, “name” This must not be empty.'],
    [
      { ...shelf, inks: [{ ...sky, role: 'glue' }] },
      'my.shelf: ink 1 (Kelp), “role” This can be ink, transparent-base, extender-base or retarder, but not “glue”.',
    ],
    [{ ...shelf, inks: [{ ...sky, lots: [] }] }, 'my.shelf: ink 1 (Kelp), “lots” There are too few here: at least 1 is needed.'],
    [
      { ...shelf, inks: [{ ...sky, lots: [{ lot: 'May', source: { from: 'one-ground', ground: lab(94, 0, 3) } }] }] },
      'my.shelf: ink 1 (Kelp), lot 1 (May), “source over” This is missing.',
    ],
    [
      { ...shelf, papers: [{ ...shelf.papers[0], reading: { kind: 'spectrum', values: [0.5] } }] },
      'my.shelf: paper 1 (Smooth white), “reading values” There must be exactly 36 here.',
    ],
    [
      { ...shelf, pots: [{ ...shelf.pots[0], parts: [{ ink: 'kelp', grams: 0 }] }] },
      'my.shelf: pot 1 (Kelp, thin), part 1, “grams” This must be more than 0, and it is 0.',
    ],
  ])('a wrong field is named as a printmaker finds it: %#', (bad, says) => {
    expect(
      problemsOf(() => readShelf(JSON.stringify(bad), 'my.shelf'))
        .map((p) => `${tellPlace(p)} ${inEnglish(p.message)}`)
        .join('\n'),
    ).toContain(says);
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
    const milky: ShelfLot = {
      lot: 'May',
      source: { from: 'one-ground', ground: { kind: 'lab', lab: [50, 0, 0] }, over: { kind: 'lab', lab: [80, 0, 0] } },
    };
    const [lighter] = inkOfLot(milky, { ks: 0.005, k1: 0.04, k2: 0.6 }, 'Chalk').problems;
    expect(lighter.code).toBe('ink-lighter-than-ground');
    expect(tellPlace(lighter)).toBe('Chalk, lot May, ink on its ground');
  });
});
