import { expect, test } from 'vitest';
import type { Field } from '../../kernels/relax.ts';
import { settleAroundBridges } from './settle-bridges.ts';

const width = 120,
  height = 80;
/** What each code costs against a dark ground: bare, the lighter ink (bit 0), the darker (bit 1), both. */
const dark = [40, 12, 6, 0];

/** All of it is dark, at a price of a knife or without one. */
function field(price: number): Field {
  return {
    width,
    height,
    binOf: new Uint16Array(width * height),
    table: Float32Array.from(dark),
    codeCount: 4,
    layers: 2,
    candidates: Uint8Array.from([3, 2, 1, 0]),
    perBin: 4,
    price: new Float32Array(8).fill(price),
    frozen: 0,
  };
}

const rules = { openingPx: 6, paperPx: 6, leastInkPx: 60, leastIslandPx: 90 };
const bridged = (i: number): boolean => i % width >= 56 && i % width < 64;

/** The darker ink everywhere but at a bridge; the lighter nowhere yet. */
const planned = new Uint8Array(width * height).fill(2),
  prints = planned.map((code, i) => (bridged(i) ? code & ~2 : code));

test('another run prints where a bridge leaves ink out, and nowhere else', () => {
  const wanted = planned.slice();
  expect(settleAroundBridges(field(1), wanted, prints, [0, 1], rules, 0.25)).toEqual([0]);
  const strip = wanted.map((code) => code & 1);
  expect(strip.reduce((sum, v, i) => sum + (bridged(i) && v ? 1 : 0), 0)).toBeGreaterThan(0.9 * 8 * height);
  expect(strip.some((v, i) => v === 1 && Math.abs((i % width) - 60) > 16)).toBe(false);
  // The run with the bridge keeps its own mask.
  expect(wanted.every((code) => (code & 2) === 2)).toBe(true);
});

test('nothing changes where no bridge lies, or where the knife costs more than the bridge', () => {
  const wanted = planned.slice();
  expect(settleAroundBridges(field(1), wanted, planned, [0, 1], rules, 0.25)).toEqual([]);
  expect(settleAroundBridges(field(400), wanted, prints, [0, 1], rules, 0.25)).toEqual([]);
  expect(wanted).toEqual(planned);
});
