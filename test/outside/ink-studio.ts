import { BANDS } from '../../src/core/colour/index.ts';
import { mixInks, type Ink, type Surface } from '../../src/core/ink/index.ts';
import { seeded, type Random } from '../../src/core/random.ts';

/** An invented shelf: pigments with one or two absorption bands of plausible width, some of them a little milky. */
export function inventedPots(
  count: number,
  seed: number,
): { readonly id: string; readonly name: string; readonly ink: Ink; readonly densityGPerMl: number }[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, n) => {
    const centre = 395 + (330 * (n + random.next() * 0.8)) / count,
      width = 32 + 38 * random.next();
    const second = 390 + 330 * random.next(),
      secondHeight = random.next() < 0.4 ? 0.8 * random.next() : 0;
    const floor = 0.01 + 0.06 * random.next(),
      milky = n % 3 === 0 ? 0.02 + 0.06 * random.next() : 0;
    const k = Float64Array.from({ length: BANDS }, (_, i) => {
      const nm = 380 + 10 * i;
      return (
        floor +
        (2 + random.next() * 0.02) * (Math.exp(-(((nm - centre) / width) ** 2)) + secondHeight * Math.exp(-(((nm - second) / 40) ** 2)))
      );
    });
    return {
      id: `pot-${n + 1}`,
      name: `Pot ${n + 1}`,
      ink: { k, s: new Float64Array(BANDS).fill(milky) },
      densityGPerMl: 1.05 + 0.1 * random.next(),
    };
  });
}

export const studioSurface: Surface = { ks: 0.006, k1: 0.04, k2: 0.6 };

export function warmPaper(): Float64Array {
  return Float64Array.from({ length: BANDS }, (_, i) => 0.72 + 0.16 * (1 - Math.exp(-i / 8)));
}

/** Up to `most` pots in random shares, the rest clear base. */
export function randomMix(
  pots: readonly { readonly ink: Ink }[],
  random: Random,
  most: number,
): { readonly ink: Ink; readonly parts: readonly { readonly pot: number; readonly share: number }[] } {
  const chosen = new Set<number>();
  const count = 1 + random.below(most);
  while (chosen.size < count) chosen.add(random.below(pots.length));
  const parts = [...chosen].map((pot) => ({ pot, share: (0.02 + 0.9 * random.next() ** 2) / count }));
  return { ink: mixInks(parts.map((p) => ({ ink: pots[p.pot].ink, share: p.share }))), parts };
}
