import { expect, test } from 'vitest';
import { seeded } from '../../random.ts';
import { blurMask, blurPlane, gaussTaps } from './blur.ts';
import { outlineLengths } from './length.ts';
import { bareWatch, expectedCost, expectedCosts, registerPairStep, registerRoom, registerStep } from './register.ts';
import { relaxed, type Field } from './relax.ts';
import { thresholdRoom, thresholdSweep } from './threshold.ts';

function disc(size: number, radius: number): Uint8Array {
  return Uint8Array.from({ length: size * size }, (_, i) =>
    Math.hypot((i % size) + 0.5 - size / 2, Math.floor(i / size) + 0.5 - size / 2) < radius ? 1 : 0,
  );
}

function blocks(size: number, layers: number, seed: number): Uint8Array {
  const random = seeded(seed),
    cell = 8,
    across = Math.ceil(size / cell);
  const codes = Uint8Array.from({ length: across * across }, () => random.below(1 << layers));
  return Uint8Array.from(
    { length: size * size },
    (_, i) => codes[Math.floor(Math.floor(i / size) / cell) * across + Math.floor((i % size) / cell)],
  );
}

function fieldFor(size: number, layers: number, seed: number, price: number): Field {
  const random = seeded(seed),
    bins = 12,
    codeCount = 1 << layers;
  const table = Float32Array.from({ length: bins * codeCount }, () => 2 + 20 * random.next());
  const binOf = Uint16Array.from(blocks(size, 3, seed + 1), (v) => v % bins);
  const candidates = Uint8Array.from({ length: bins * codeCount }, (_, i) => i % codeCount);
  return {
    width: size,
    height: size,
    binOf,
    table,
    codeCount,
    layers,
    candidates,
    perBin: codeCount,
    price: new Float32Array(8).fill(price),
    frozen: 0,
  };
}

test('the length of a round outline is measured within 3 percent', () => {
  expect(outlineLengths(disc(120, 40), 120, 120, 1)[0] / (2 * Math.PI * 40)).toBeCloseTo(1, 1.5);
});

test('a slanted edge costs as much knife as a straight one', () => {
  const size = 200;
  for (const angle of [0, 17, 30, 45, 60]) {
    const c = Math.cos((angle * Math.PI) / 180),
      s = Math.sin((angle * Math.PI) / 180);
    // A band across the middle disc, so that the image's border does not count.
    const mask = Uint8Array.from({ length: size * size }, (_, i) => {
      const x = (i % size) - 100,
        y = Math.floor(i / size) - 100;
      return Math.abs(c * x + s * y) < 20 && Math.abs(c * y - s * x) < 70 ? 1 : 0;
    });
    expect(outlineLengths(mask, size, size, 1)[0]).toBeGreaterThan(360 * 0.93);
    expect(outlineLengths(mask, size, size, 1)[0]).toBeLessThan(360 * 1.08);
  }
});

test('the expected print off register agrees with printing it three hundred times', () => {
  const size = 64,
    layers = 3,
    sigma = 1.6;
  const field = fieldFor(size, layers, 3, 0),
    codes = blocks(size, layers, 8);
  const random = seeded(5);
  let sum = 0;
  const prints = 300;
  for (let print = 0; print < prints; print++) {
    const shifts = Array.from({ length: layers }, () => [random.normal() * sigma, random.normal() * sigma]);
    for (let y = 0; y < size; y++)
      for (let x = 0; x < size; x++) {
        let code = 0;
        for (let b = 0; b < layers; b++) {
          const sx = Math.max(0, Math.min(size - 1, Math.round(x - shifts[b][0]))),
            sy = Math.max(0, Math.min(size - 1, Math.round(y - shifts[b][1])));
          code |= codes[sy * size + sx] & (1 << b);
        }
        sum += field.table[field.binOf[y * size + x] * field.codeCount + code];
      }
  }
  const told = expectedCost(registerRoom(field, codes, sigma));
  // Monte Carlo with whole-pixel shifts; the trial's own bound is 2 percent.
  expect(Math.abs(told / (sum / (prints * size * size)) - 1)).toBeLessThan(0.02);
});

/** Expected colour error over the picture plus the knife's price, and masks to begin with. */
function printAndKnife(seed: number): { field: Field; codes: Uint8Array; energy: (codes: Uint8Array) => number } {
  const size = 48,
    layers = 3,
    price = 1.5;
  const field = fieldFor(size, layers, seed, price);
  const energy = (codes: Uint8Array): number => {
    let knife = 0;
    outlineLengths(codes, size, size, layers).forEach((length) => {
      knife += price * length;
    });
    return expectedCost(registerRoom(field, codes, 1.5)) * size * size + knife;
  };
  return { field, codes: blocks(size, layers, seed + 20), energy };
}

test('a layer moved for the register never makes the expected print plus its knife worse', () => {
  for (let seed = 1; seed <= 5; seed++) {
    const { field, codes, energy } = printAndKnife(seed);
    const room = registerRoom(field, codes, 1.5);
    let before = energy(codes);
    for (let turn = 0; turn < 4; turn++)
      for (let layer = 0; layer < field.layers; layer++) {
        registerStep(field, codes, layer, room);
        const after = energy(codes);
        // Blur at the border is not its own mirror image: allow for a thousandth.
        expect(after).toBeLessThanOrEqual(before * 1.001);
        before = after;
      }
  }
});

test('the expected cost of a pixel is that of every code by its chance', () => {
  const size = 24,
    layers = 5,
    field = fieldFor(size, layers, 3, 1),
    codes = blocks(size, layers, 4);
  const q = Array.from({ length: layers }, (_, b) => {
    const out = new Float32Array(codes.length);
    blurMask(codes, b, size, size, gaussTaps(1.5), out);
    return out;
  });
  expectedCosts(registerRoom(field, codes, 1.5)).forEach((told, i) => {
    let wanted = 0;
    for (let code = 0; code < 1 << layers; code++)
      wanted += q.reduce(
        (chance, share, b) => chance * ((code >> b) & 1 ? share[i] : 1 - share[i]),
        field.table[field.binOf[i] * 32 + code],
      );
    // A share under 0.2 percent counts as none, in each layer.
    expect(Math.abs(told - wanted)).toBeLessThan(layers * 2e-3 * 22);
  });
});

test('two rooms worked on in turn end as rooms made anew for every step', () => {
  const size = 40,
    layers = 5;
  const works = [1, 2].map((seed) => {
    const plain = fieldFor(size, layers, seed, 1.5),
      codes = blocks(size, layers, seed + 40),
      lightness = Float32Array.from({ length: 32 }, (_, code) => (code * 37) % 90),
      weight = Float32Array.from(codes, (_, i) => 0.5 + (i % 3));
    const bare = bareWatch(codes, size, size, lightness, 3, { slitPrice: 2, linePrice: 0.8 }),
      field: Field = seed === 1 ? { ...plain, weight } : { ...plain, bare };
    return { field, kept: codes, anew: codes.slice(), room: registerRoom(field, codes, 1.5) };
  });
  let moved = 0;
  for (let turn = 0; turn < 3; turn++)
    for (let layer = 0; layer < layers; layer++)
      for (const { field, kept, anew, room } of works) {
        moved += registerStep(field, kept, layer, room);
        registerStep(field, anew, layer, registerRoom(field, anew, 1.5));
        expect(kept).toEqual(anew);
      }
  expect(moved).toBeGreaterThan(500);
});

test('window and piece of one cut move together, and the whole gets better', () => {
  let saved = 0;
  for (let seed = 1; seed <= 5; seed++) {
    const size = 48,
      field: Field = { ...fieldFor(size, 4, seed, 1.5), paired: true };
    const codes = blocks(size, 2, seed + 20).map((two) => [5, 6, 9, 10][two]),
      room = registerRoom(field, codes, 1.5);
    const energy = (): number =>
      expectedCost(registerRoom(field, codes, 1.5)) * size * size +
      outlineLengths(codes, size, size, 4).reduce((sum, length) => sum + 1.5 * length, 0);
    const first = energy();
    for (let turn = 0; turn < 3; turn++)
      for (const layer of [0, 2]) {
        const before = energy();
        registerPairStep(field, codes, layer, room);
        expect(energy()).toBeLessThanOrEqual(before * 1.001);
      }
    expect([...codes].every((code) => [5, 6, 9, 10].includes(code))).toBe(true);
    saved += first - energy();
  }
  expect(saved).toBeGreaterThan(0);
});

test('a blurred plane is the sum of its neighbours by their taps, rows first; beyond the border it goes on as it is there', () => {
  for (const [width, height] of [
    [1, 1],
    [1, 6],
    [11, 7],
  ])
    for (const sigma of [0.4, 2.5]) {
      const plane = Float32Array.from({ length: width * height }, (_, i) => (i * 7919) % 13),
        taps = gaussTaps(sigma),
        radius = taps.length >> 1;
      const within = (v: number, size: number): number => Math.max(0, Math.min(size - 1, v));
      const along = (from: Float32Array, at: (i: number, k: number) => number): Float32Array =>
        from.map((_, i) => taps.reduce((sum, tap, t) => sum + tap * from[at(i, t - radius)], 0));
      const rows = along(plane, (i, k) => i - (i % width) + within((i % width) + k, width)),
        wanted = along(rows, (i, k) => within(Math.floor(i / width) + k, height) * width + (i % width));
      const told = new Float32Array(plane.length);
      blurPlane(plane, width, height, taps, told);
      told.forEach((v, i) => expect(v).toBeCloseTo(wanted[i], 4));
    }
});

test('a mask blurred by its edges is the mask blurred as a plane', () => {
  for (const size of [1, 9, 50])
    for (const sigma of [0.4, 1.5, 6]) {
      const codes = blocks(size, 3, size + 1),
        room = (): Float32Array => new Float32Array(size * size);
      const plane = room(),
        wanted = room(),
        told = room();
      for (let layer = 0; layer < 3; layer++) {
        codes.forEach((code, i) => {
          plane[i] = (code >> layer) & 1;
        });
        blurPlane(plane, size, size, gaussTaps(sigma), wanted);
        blurMask(codes, layer, size, size, gaussTaps(sigma), told);
        expect(told).toEqual(wanted);
      }
    }
});

test('sweeps and single pixels never choose a code that costs more, and leave what is frozen', () => {
  const size = 40,
    layers = 3,
    frozen = 2;
  for (let seed = 1; seed <= 5; seed++) {
    const plain = fieldFor(size, layers, seed, 1.5),
      codes = blocks(size, layers, seed + 30),
      before = codes.slice();
    // Best first, as a field of masks has them.
    const candidates = plain.candidates.slice();
    for (let row = 0; row < candidates.length; row += plain.perBin)
      candidates.subarray(row, row + plain.perBin).sort((a, b) => plain.table[row + a] - plain.table[row + b]);
    const field = { ...plain, candidates, frozen };
    const cost = (): number => {
      let sum = 0;
      outlineLengths(codes, size, size, layers).forEach((length) => {
        sum += 1.5 * length;
      });
      return sum + codes.reduce((total, code, i) => total + field.table[field.binOf[i] * field.codeCount + code], 0);
    };
    thresholdSweep(field, codes, 2, thresholdRoom(codes.length, layers));
    const swept = cost();
    relaxed(field, codes, 60, 0);
    expect(cost()).toBeLessThanOrEqual(swept);
    expect(codes.map((code) => code & frozen)).toEqual(before.map((code) => code & frozen));
    // No pixel by itself could be bettered: tried with every code, not only with those before the bound says stop.
    for (let i = 0; i < codes.length; i += 7) {
      const here = codes[i],
        now = cost();
      for (let code = 0; code < 1 << layers; code++)
        if (((code ^ here) & frozen) === 0) {
          codes[i] = code;
          expect(cost()).toBeGreaterThan(now - 1e-3);
        }
      codes[i] = here;
    }
  }
});
