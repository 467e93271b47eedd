import { expect, test } from 'vitest';
import { moirePicture, type FilmLaid } from './moire-picture.ts';
import { bestAngles, worstSeen } from './moire.ts';
import { onPixels } from './on-pixels.ts';

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

test('a screen coarser than the dots shows no bands but those of the print', () => {
  const film = (angleDeg: number, bit: number): FilmLaid => ({
    by: 'dots',
    shape: 'round',
    rulingPerCm: 19.5,
    angleDeg,
    leastDotMicrons: 100,
    meshPerCm: 120,
    threadMicrons: 34,
    bit,
    cover: 0.5,
  });
  const words = Uint32Array.from({ length: 256 }, (_, code) => [0xffffffff, 0xff404040, 0xff404040, 0xff101010][code & 3]);
  /** From the darkest to the lightest pixel away from the edges, and the mean light. */
  const look = ({ rgb, width, height }: ReturnType<typeof onPixels>): { range: number; light: number } => {
    const inside = Array.from({ length: width * height }, (_, i) => i).filter(
      (i) => Math.abs((i % width) / width - 0.5) < 0.4 && Math.abs(Math.floor(i / width) / height - 0.5) < 0.4,
    );
    const all = inside.map((i) => rgb[i * 3]);
    return {
      range: Math.max(...all) - Math.min(...all),
      light: all.reduce((sum, v) => sum + (v / 255) ** 2.2, 0) / all.length,
    };
  };
  const pixelsPerMm = 96 / 25.4;
  const one = moirePicture([film(22.5, 0)], words, 30, 30);
  const shown = onPixels(one, pixelsPerMm);
  expect(shown.width).toBe(Math.floor(30 * pixelsPerMm));
  expect(look(one).range).toBeGreaterThan(100);
  expect(look(shown).range).toBeLessThan(12);
  expect(look(shown).light).toBeCloseTo(look(one).light, 2);
  // Two films 3.5 degrees apart do make bands, 8 mm wide.
  expect(look(onPixels(moirePicture([film(22.5, 0), film(26, 1)], words, 30, 30), pixelsPerMm)).range).toBeGreaterThan(25);
  expect(onPixels(one, 20)).toBe(one);
});
