import libraryFit from 'fit-curve';
import { expect, test } from 'vitest';
import { fitCurves } from '../../src/core/form/index.ts';
import { seeded } from '../../src/core/random.ts';

/** Lines that wander, some with steps of whole units, some that stop and turn back on themselves. */
function wandering(seed: number): [number, number][] {
  const random = seeded(seed);
  const points: [number, number][] = [];
  let x = 0, y = 0, angle = random.next() * 6;
  for (let n = 2 + random.below(120); n > 0; n--) {
    points.push([x, y]);
    angle += (random.next() - 0.5) * (seed % 3);
    const step = seed % 5 === 0 ? random.below(2) : 1;
    x += step * (seed % 2 ? Math.cos(angle) : Math.round(Math.cos(angle)));
    y += step * (seed % 2 ? Math.sin(angle) : Math.round(Math.sin(angle)));
  }
  return points;
}

test('curves are those of the published library fit-curve (0.2.0, MIT), to the last digit', () => {
  for (let seed = 1; seed <= 400; seed++) {
    const points = wandering(seed), error = [0.02, 5.76, 0.5][seed % 3];
    expect(fitCurves(points.flat(), error)).toEqual(libraryFit(points, error).map((curve) => curve.flat()));
  }
});
