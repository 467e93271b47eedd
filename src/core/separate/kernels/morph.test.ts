import { expect, test } from 'vitest';
import { seeded } from '../../random.ts';
import { bitsOf, bytesOf, difference, putBits, type Bits } from './bits.ts';
import { closed, dilated, eroded, opened, withoutSpecks } from './morph.ts';

const bits = (mask: Uint8Array, width: number): Bits => bitsOf(mask, 0, width, mask.length / width);

/** Masks of every width around a word's end, in patches and in dust. */
const masks = [1, 7, 31, 32, 33, 64, 70].flatMap((width) =>
  [0.02, 0.3, 0.7, 0.98].map((share) => {
    const random = seeded(width * 100 + share * 100),
      height = 23;
    const rough = Uint8Array.from({ length: 40 * 40 }, () => (random.next() < share ? 1 : 0));
    return {
      width,
      height,
      mask: Uint8Array.from(
        { length: width * height },
        (_, i) => rough[Math.floor(Math.floor(i / width) / 3) * 40 + Math.floor((i % width) / 2)] ^ (random.next() < 0.03 ? 1 : 0),
      ),
    };
  }),
);

/** By the definition: does a pixel of the mask with that value lie within the radius? */
function near(mask: Uint8Array, width: number, value: 0 | 1, radius: number): Uint8Array {
  const height = mask.length / width;
  return mask.map((_, i) => {
    const x = i % width,
      y = (i - x) / width,
      r = Math.ceil(radius);
    for (let v = Math.max(0, y - r); v <= Math.min(height - 1, y + r); v++)
      for (let u = Math.max(0, x - r); u <= Math.min(width - 1, x + r); u++) {
        if (mask[v * width + u] === value && (u - x) ** 2 + (v - y) ** 2 <= radius * radius) return 1;
      }
    return 0;
  });
}

test('a disc reaches exactly the pixels within its radius, up to the border', () => {
  for (const { mask, width } of masks)
    for (const radius of [0.5, 1.5, 2, 4.25, 9.1]) {
      expect(bytesOf(dilated(bits(mask, width), radius))).toEqual(near(mask, width, 1, radius));
      expect(bytesOf(eroded(bits(mask, width), radius))).toEqual(near(mask, width, 0, radius).map((v) => 1 - v));
    }
});

/** By the definition: parts grown pixel by pixel. */
function partOf(mask: Uint8Array, width: number, from: number): Set<number> {
  const members = new Set([from]);
  for (const p of members)
    for (const q of [p - width, p + width, ...(p % width > 0 ? [p - 1] : []), ...(p % width < width - 1 ? [p + 1] : [])])
      if (mask[q] === mask[from]) members.add(q);
  return members;
}

test('specks go and what is large enough stays, and so does paper at the border', () => {
  for (const { mask, width, height } of masks)
    for (const of of [0, 1] as const) {
      const wanted = mask.slice(),
        seen = new Set<number>();
      mask.forEach((value, i) => {
        if (value !== of || seen.has(i)) return;
        const part = [...partOf(mask, width, i)];
        const border = part.some((p) => p < width || p >= (height - 1) * width || p % width === 0 || p % width === width - 1);
        for (const p of part) {
          seen.add(p);
          if (part.length < 12 && !(of === 0 && border)) wanted[p] = 1 - value;
        }
      });
      expect(bytesOf(withoutSpecks(bits(mask, width), of, 12))).toEqual(wanted);
    }
});

test('a mask put into codes is read out of them again, and what changed is told', () => {
  for (const { mask, width, height } of masks) {
    const random = seeded(9),
      codes = Uint8Array.from(mask, () => random.below(16)),
      before = codes.slice();
    const changed = putBits(codes, 2, bits(mask, width));
    expect(codes).toEqual(before.map((code, i) => (code & ~4) | (mask[i] << 2)));
    expect(bytesOf(changed)).toEqual(before.map((code, i) => (code === codes[i] ? 0 : 1)));
    expect(difference(changed, bitsOf(codes, 7, width, height))).toBe(before.filter((code, i) => code !== codes[i]).length);
  }
});

test('opening takes away ink that no knife can cut, closing takes away paper that would tear', () => {
  const size = 40;
  const thin = Uint8Array.from({ length: size * size }, (_, i) => (i % size === 10 || (i % size > 20 && i % size < 32) ? 1 : 0));
  const after = bytesOf(opened(bits(thin, size), 2));
  expect(after[20 * size + 10]).toBe(0);
  expect(after[20 * size + 26]).toBe(1);
  expect(
    bytesOf(
      closed(
        bits(
          thin.map((v) => 1 - v),
          size,
        ),
        2,
      ),
    )[20 * size + 10],
  ).toBe(1);
});
