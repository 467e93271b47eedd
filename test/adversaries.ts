import { boxRegion, offsetRegion, strip, takeAway, tidy, unite, type Region } from '../src/core/form/index.ts';
import { seeded } from '../src/core/random.ts';

/** Drawings that try to get a weak stencil past the judge, about 80 mm large, by seed. */
export function adversaries(seed: number, count: number): { readonly name: string; readonly region: Region }[] {
  const random = seeded(seed);
  const between = (a: number, b: number): number => a + (b - a) * random.next();
  const turned = (region: Region, degrees: number): Region => {
    const c = Math.cos((degrees * Math.PI) / 180),
      s = Math.sin((degrees * Math.PI) / 180);
    return {
      rings: region.rings.map((ring) => Float64Array.from(ring, (v, i) => (i % 2 ? ring[i - 1] * s + v * c : v * c - ring[i + 1] * s))),
    };
  };
  const moved = (region: Region, x: number, y: number): Region => ({
    rings: region.rings.map((r) => Float64Array.from(r, (v, i) => v + (i % 2 ? y : x))),
  });
  const disc = (x: number, y: number, r: number): Region => strip([x, y, x + 0.002, y], 2 * r, 'round');
  const block = (w: number, h: number): Region => boxRegion({ minX: -w / 2, minY: -h / 2, maxX: w / 2, maxY: h / 2 });
  /** Paper drawn into a block of ink. */
  const spare = (things: readonly Region[]): Region => takeAway(block(76, 76), unite(things));
  const kinds: Record<string, () => Region> = {
    // A hair of paper that broadens outward.
    knobs: () =>
      spare(
        Array.from({ length: 9 }, (_, i) => {
          const x = -30 + 7.5 * i,
            reach = between(3, 9);
          return unite([
            strip([x, -40, x + between(-1, 1), -36 + reach], between(0.15, 1.4), 'round'),
            disc(x, -36 + reach, between(0.4, 2.5)),
          ]);
        }),
      ),
    'knobs of ink': () =>
      unite([
        block(70, 20),
        ...Array.from({ length: 9 }, (_, i) => {
          const x = -30 + 7.5 * i,
            reach = between(3, 9);
          return unite([strip([x, 5, x + between(-1, 1), 10 + reach], between(0.1, 0.95), 'round'), disc(x, 10 + reach, between(0.3, 2))]);
        }),
      ]),
    comb: () => {
      const pitch = between(0.8, 3.5),
        tooth = pitch * between(0.3, 0.7),
        long = between(3, 50);
      return unite([
        moved(block(74, 12), 0, -30),
        ...Array.from({ length: Math.floor(70 / pitch) }, (_, i) =>
          strip([-35 + i * pitch, -25, -35 + i * pitch + between(0, 0.3), -24 + long], tooth),
        ),
      ]);
    },
    // Two broad fields of paper, a neck of some width at some angle.
    necks: () => {
      const angle = between(0, 90);
      const island = unite([turned(block(24, 24), angle), turned(strip([0, 0, 40, 0], between(0.4, 2.2)), angle + between(0, 360))]);
      return takeAway(disc(0, 0, between(26, 36)), island);
    },
    'many necks': () =>
      spare([
        ...Array.from({ length: 12 }, () => {
          const x = between(-26, 26),
            y = between(-26, 26),
            a = between(0, 2 * Math.PI);
          return unite([disc(x, y, between(1, 4)), strip([x, y, x + 9 * Math.cos(a), y + 9 * Math.sin(a)], between(0.2, 2), 'round')]);
        }),
      ]),
    spiral: () => {
      const pitch = between(1.6, 6),
        line: number[] = [];
      for (let t = 0; t < 2 * Math.PI * Math.min(12, 34 / pitch); t += 0.08) {
        const r = 2 + (pitch * t) / (2 * Math.PI);
        line.push(r * Math.cos(t), r * Math.sin(t));
      }
      return strip(line, pitch * between(0.25, 0.75), 'round');
    },
    'near touches': () =>
      unite(
        Array.from({ length: 36 }, (_, i) => {
          const r = 5 + between(-0.9, 0.6);
          return disc(-27.5 + 11 * (i % 6), -27.5 + 11 * Math.floor(i / 6), r);
        }),
      ),
    // Neighbours that a hairline parts.
    mosaic: () => {
      const gap = between(0.08, 1.2),
        cells: Region[] = [];
      const at = (i: number, j: number): [number, number] => {
        const r = seeded(seed * 131 + i * 17 + j * 1009);
        return [-36 + 12 * i + (r.next() - 0.5) * 6, -36 + 12 * j + (r.next() - 0.5) * 6];
      };
      for (let j = 0; j < 6; j++)
        for (let i = 0; i < 6; i++)
          cells.push(
            offsetRegion(
              { rings: [Float64Array.of(...at(i, j), ...at(i + 1, j), ...at(i + 1, j + 1), ...at(i, j + 1))] },
              -gap / 2,
              'miter',
            ),
          );
      return unite(cells);
    },
    lace: () => {
      const pitch = between(3, 8),
        hole = pitch * between(0.3, 0.49);
      const n = Math.floor(70 / pitch);
      return unite(
        Array.from({ length: n * n }, (_, i) =>
          disc(
            -35 + pitch * ((i % n) + 0.5) + between(-0.2, 0.2),
            -35 + pitch * (Math.floor(i / n) + 0.5) + between(-0.2, 0.2),
            hole * between(0.8, 1.05),
          ),
        ),
      );
    },
    'lace of ink': () => takeAway(block(74, 74), kinds.lace()),
    rings: () => {
      const pitch = between(1.2, 5),
        share = between(0.3, 0.7);
      return unite(
        Array.from({ length: Math.floor(34 / pitch) }, (_, i) => {
          const r = pitch * (i + 1);
          return takeAway(disc(0, 0, r), disc(0, 0, r - pitch * share));
        }),
      );
    },
    // Points of all slenderness, and ones that swell again.
    stars: () => {
      const n = 5 + random.below(60),
        inner = between(4, 34),
        ring: number[] = [];
      for (let i = 0; i < 2 * n; i++) {
        const r = i % 2 ? inner : 38,
          a = (Math.PI * i) / n;
        ring.push(r * Math.cos(a), r * Math.sin(a));
      }
      return { rings: [Float64Array.from(ring)] };
    },
    'stars of paper': () => takeAway(block(78, 78), kinds.stars()),
    'wavy slit': () => {
      const line: number[] = [];
      for (let t = 0; t <= 1; t += 0.01) line.push(-34 + 68 * t, 12 * Math.sin(t * between(12, 12.2)));
      return unite([strip(line, between(0.05, 1), 'round'), moved(block(10, 10), 0, 28)]);
    },
    beads: () => {
      const out: Region[] = [];
      for (let i = 0; i < 14; i++) out.push(disc(-33 + 5 * i, 0, between(0.3, 2.6)));
      out.push(strip([-34, 0, 34, 0], between(0.1, 0.9), 'round'));
      return random.next() < 0.5 ? unite(out) : spare(out);
    },
    scribble: () => {
      const line: number[] = [0, 0];
      for (let i = 0; i < 60; i++) line.push(between(-36, 36), between(-36, 36));
      return strip(line, between(0.2, 2.5), 'round');
    },
    crossings: () => tidy([Float64Array.from({ length: 60 }, () => between(-36, 36))], 'even-odd'),
  };
  const names = Object.keys(kinds);
  return Array.from({ length: count }, (_, i) => {
    const name = names[i % names.length];
    return { name: `${name} ${i}`, region: kinds[name]() };
  });
}
