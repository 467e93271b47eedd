import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJob, type Job } from '../job/index.ts';
import type { PlannedOverlap } from '../plan/index.ts';
import { moveLayer, withLayer } from '../../workbench/store/edits.ts';
import { changedOverlaps, differencesOf, movedRuns } from './differences.ts';

const layer = (id: string, ink: string | null = 'weed') => ({ id, name: id, cut: 'c', side: 'window', ink });
const job: Job = parseJob({
  schemaVersion: 1,
  title: 'Three runs',
  image: { widthMm: 10, heightMm: 10 },
  layers: [layer('sky'), layer('kelp'), layer('foam', null)],
  inks: [
    { from: 'clear', id: 'weed', name: 'Weed green' },
    { from: 'clear', id: 'dusk', name: 'Dusk violet' },
  ],
});

describe('what differs between two versions', () => {
  test('a job differs in nothing from itself', () => expect(differencesOf(job, job)).toEqual([]));

  test('strength, ink and a run left out are told by the name of the run', () => {
    const other = withLayer(withLayer(withLayer(job, 'kelp', { strength: 0.4 }), 'foam', { ink: 'dusk' }), 'sky', { off: true });
    expect(differencesOf(job, other)).toEqual([
      { kind: 'out', run: 'sky' },
      { kind: 'strength', run: 'kelp', from: 1, to: 0.4 },
      { kind: 'ink', run: 'foam', from: null, to: 'Dusk violet' },
    ]);
  });

  test('one shelf moved is told as one move, however many others made way', () => {
    expect(differencesOf(job, moveLayer(job, 'foam', 0))).toEqual([{ kind: 'place', run: 'foam', from: 3, to: 1 }]);
  });

  test('a run that only one of them has is told once, and is no move', () => {
    expect(differencesOf(job, { ...job, layers: job.layers.slice(1) })).toEqual([{ kind: 'only-left', run: 'sky' }]);
  });

  test('the runs told as moved are enough: the others keep their order', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(['a', 'b', 'c', 'd', 'e', 'f'], { minLength: 6 }), (after) => {
        const moved = movedRuns(['a', 'b', 'c', 'd', 'e', 'f'], after);
        const rest = after.filter((id) => !moved.includes(id));
        expect(rest).toEqual([...rest].sort());
        if (after.join('') === 'abcdef') expect(moved).toEqual([]);
      }),
    );
  });
});

describe('overlaps of two prints', () => {
  const overlap = (layers: readonly string[], lab: readonly [number, number, number], areaMm2: number): PlannedOverlap => ({
    code: 1,
    layers,
    lab,
    srgb: '#000',
    inGamut: true,
    band: 1,
    areaMm2,
    measured: false,
    possible: [],
  });

  test('the same runs in another order are the same overlap; what is seen most comes first', () => {
    const changed = changedOverlaps(
      [overlap(['sky', 'kelp'], [50, 0, 0], 10), overlap(['sky'], [80, 0, 0], 100), overlap([], [95, 0, 0], 50)],
      [
        overlap(['kelp', 'sky'], [53, 0, 0], 10),
        overlap(['sky'], [70, 0, 0], 100),
        overlap([], [95, 0, 0], 50),
        overlap(['foam'], [20, 0, 0], 1),
      ],
    );
    expect(changed.map((c) => (c.left ?? c.right)!.layers.join('+'))).toEqual(['sky', 'sky+kelp', 'foam']);
    expect(changed[0].deltaE).toBeGreaterThan(5);
    expect(changed[2]).toMatchObject({ left: null, deltaE: null });
  });

  test('a difference smaller than the forecast can tell is marked so', () => {
    const [small] = changedOverlaps([overlap(['sky'], [50, 0, 0], 10)], [overlap(['sky'], [51, 0, 0], 10)]);
    expect(small.within).toBe(true);
  });
});
