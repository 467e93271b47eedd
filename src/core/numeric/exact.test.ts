import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cbrt, exp, expm1, log, log10, log1p, pow, tanh } from './exact.ts';

/** Within so many units in the last place of the engine's own. */
const near = (mine: number, own: number, ulps: number): void => {
  if (mine === own || (Number.isNaN(mine) && Number.isNaN(own))) return;
  expect(Math.abs(mine - own)).toBeLessThanOrEqual(ulps * 2.3e-16 * Math.abs(own) + ulps * 5e-324);
};
const any = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: -5, max: 5, noNaN: true }),
  fc.double({ min: 0.5, max: 2, noNaN: true }),
);

describe('near what the engine gives, which is itself within a unit or so in the last place', () => {
  test.each<[string, (x: number) => number, (x: number) => number, number]>([
    ['exp', exp, Math.exp, 2],
    ['log', log, Math.log, 2],
    ['cbrt', cbrt, Math.cbrt, 2],
    ['expm1', expm1, Math.expm1, 6],
    ['log1p', log1p, Math.log1p, 6],
    ['log10', log10, Math.log10, 4],
    ['tanh', tanh, Math.tanh, 8],
  ])('%s', (_, mine, own, ulps) => {
    fc.assert(
      fc.property(any, (x) => near(mine(x), own(x), ulps)),
      { numRuns: 3000 },
    );
    for (const x of [0, 1, -1, 1e-300, 5e-324, -5e-324, 1e308, 709.7, -745, NaN, Infinity, -Infinity]) near(mine(x), own(x), ulps);
  });

  test('pow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e3, noNaN: true }), fc.double({ min: -8, max: 8, noNaN: true }), (x, y) =>
        near(pow(x, y), x ** y, 4 + 2 * Math.abs(y * Math.log(Math.max(x, 1e-300)))),
      ),
      { numRuns: 3000 },
    );
  });
});

// The square root of e, ln 2, ln 10, the cube root of 2 and of 3 to more digits than a number holds (OEIS A019774, A002162,
// A002392, A002580, A002581): what is nearest to them.
test('well-known values to the last bit', () => {
  expect([exp(0.5), exp(0), exp(-Infinity)]).toEqual([1.6487212707001281468, 1, 0]);
  expect([log(2), log(10)]).toEqual([0.69314718055994530942, 2.302585092994045684]);
  expect([cbrt(2), cbrt(3), cbrt(-27), cbrt(1e-3)]).toEqual([1.2599210498948731648, 1.4422495703074083823, -3, 0.1]);
});
