import { expect, test } from 'vitest';
import { bestAngles, worstSeen } from './moire.ts';

test('best angles beat the handbook’s and the worst by what they show', () => {
  for (const n of [2, 3, 4]) {
    const ask = { rulings: Array.from({ length: n }, () => ({ perCm: 19, meshPerCm: 77 })) };
    const best = bestAngles(ask);
    expect(worstSeen(ask, best)).toBeLessThanOrEqual(worstSeen(ask, [22.5, 52.5, 82.5, 7.5].slice(0, n)) + 1e-9);
    expect(worstSeen(ask, best)).toBeLessThan(0.6 * worstSeen(ask, [0, 45, 75, 15].slice(0, n)));
  }
  const fixed = bestAngles({
    rulings: [
      { perCm: 16, meshPerCm: 77 },
      { perCm: 16, meshPerCm: 77 },
    ],
    fixed: [10, undefined],
  });
  expect(fixed[0]).toBe(10);
  expect(Math.abs(fixed[1] - 10)).toBeGreaterThan(20);
});

test('each film is turned against the mesh that it is printed through itself', () => {
  // Rulings a third of their own mesh make the broadest bands with it when they lie along it.
  const rulings = [
    { perCm: 16, meshPerCm: 48 },
    { perCm: 30, meshPerCm: 90 },
  ];
  const own = bestAngles({ rulings });
  const first = bestAngles({ rulings: rulings.map((r) => ({ ...r, meshPerCm: 48 })) });
  expect(worstSeen({ rulings }, own)).toBeLessThanOrEqual(worstSeen({ rulings }, first) + 1e-12);
  expect(worstSeen({ rulings }, [0, 0])).toBeGreaterThan(2 * worstSeen({ rulings }, own));
});
