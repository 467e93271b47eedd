import { expect, test } from 'vitest';
import { defaultMaterials } from '../../../stencil/index.ts';
import { quietTask } from '../../../task.ts';
import { bitsOf, bytesOf } from '../../kernels/bits.ts';
import { opened } from '../../kernels/morph.ts';
import { bareWatch } from '../../kernels/register.ts';
import type { Field } from '../../kernels/relax.ts';
import type { StencilErrand } from '../../search/errand.ts';
import { bridgeWidthMm, heldStencils, type Holding } from './held.ts';
import { bridgeLengthMm, islandsToDrop, longBridgeMm } from './islands.ts';
import { makeCuttable, type Off } from '../cuttable.ts';
import { outlinesOf } from '../outline.ts';
import { widenLines } from '../widen.ts';

const width = 160,
  height = 120,
  mmPerPx = 0.5;
const grid = { originXMm: 0, originYMm: 0, mmPerPx, width, height };
const material = defaultMaterials.find((m) => m.id === 'film')!;
const image = { minX: 0, minY: 0, maxX: width * mmPerPx, maxY: height * mmPerPx };

/** What each kind of place costs without and with the one layer's ink. */
const kinds = { ink: [30, 0], paper: [0, 30], faint: [0, 1] } as const;
const order = ['ink', 'paper', 'faint'] as const;

function fieldOf(kind: (x: number, y: number) => keyof typeof kinds, price = 1): Field {
  return {
    width,
    height,
    binOf: Uint16Array.from({ length: width * height }, (_, i) => order.indexOf(kind((i % width) + 0.5, Math.floor(i / width) + 0.5))),
    table: Float32Array.from(order.flatMap((name) => kinds[name])),
    codeCount: 2,
    layers: 1,
    candidates: Uint8Array.from([1, 0, 0, 1, 0, 1]),
    perBin: 2,
    price: new Float32Array(8).fill(price),
    frozen: 0,
  };
}

const inDisc = (x: number, y: number, cx: number, cy: number, r: number): boolean => Math.hypot(x - cx, y - cy) < r;

function holding(kind: (x: number, y: number) => keyof typeof kinds): Holding {
  const field = fieldOf(kind),
    planned = Uint8Array.from(field.binOf, (bin) => (order[bin] === 'ink' ? 1 : 0));
  const errandsOf = (): StencilErrand[] =>
    outlinesOf(planned, width, height, mmPerPx, 1).map((shape) => ({
      kind: 'stencil',
      request: {
        shape,
        side: 'window',
        aperture: image,
        sheet: { minX: -20, minY: -20, maxX: 100, maxY: 80 },
        material,
        islands: 'bridge',
      },
    }));
  return { bits: [0], planned, field, grid, priceMm: 2, errandsOf };
}

/** A spot that has to be seen, near the edge, and one that hardly shows, in the middle. */
const spots = (x: number, y: number): keyof typeof kinds => (inDisc(x, y, 20, 60, 9) ? 'paper' : inDisc(x, y, 90, 60, 7) ? 'faint' : 'ink');

test('an island goes when the print loses less by it than by the bridges that hold it', async () => {
  const work = holding(spots),
    [{ stencil }] = await heldStencils(work, quietTask);
  expect(stencil.islands.filter((island) => island.handled === 'bridged')).toHaveLength(1);
  const at = (x: number, y: number): number => work.planned[y * width + x];
  expect([at(20, 60), at(90, 60)]).toEqual([0, 1]);
  // Nothing more is to be gained.
  expect(islandsToDrop(stencil, { field: work.field, codes: work.planned, bit: 0, grid, priceMm: 2 })).toEqual([]);
});

test('a spot that matters is held across the whole opening, by bridges as broad as they are long; the stencil holds', async () => {
  const [{ stencil }] = await heldStencils(
    holding((x, y) => (inDisc(x, y, 80, 60, 14) || inDisc(x, y, 18, 18, 8) ? 'paper' : 'ink')),
    quietTask,
  );
  expect(stencil.certificate.holds).toBe(true);
  const long = stencil.bridges.filter((bridge) => bridgeLengthMm(bridge) > longBridgeMm);
  expect(long.length).toBeGreaterThan(0);
  for (const bridge of long) expect(bridge.widthMm).toBeGreaterThanOrEqual(1.49 * material.leastBridgeMm);
  const short = stencil.bridges.filter((bridge) => bridgeLengthMm(bridge) < longBridgeMm - 1);
  expect(short.length).toBeGreaterThan(0);
  for (const bridge of short) expect(bridge.widthMm).toBeLessThan(1.2 * material.leastBridgeMm);
});

test('the longer a bridge the broader, within twice', () => {
  expect([10, 16, 25, 70].map((mm) => bridgeWidthMm(mm, 2))).toEqual([2, 3, 2 * (25 / 15), 4]);
});

test('a line too thin for the knife is made as broad as it can cut where the print is better with it, and left out where it is not', () => {
  const line = (_: number, y: number): boolean => y > 60 && y < 61;
  const widened = (beside: 'faint' | 'paper'): number => {
    const field = fieldOf((x, y) => (line(x, y) && x > 40 && x < 120 ? 'ink' : beside), 0.1),
      codes = Uint8Array.from(field.binOf, (bin) => (bin === 0 ? 1 : 0)),
      mask = bitsOf(codes, 0, width, height),
      cut = opened(mask, 2);
    expect(bytesOf(cut).every((v) => v === 0)).toBe(true);
    const any = widenLines(field, codes, 0, mask, cut, 1, 4);
    expect(any).toBe(bytesOf(cut).includes(1));
    return bytesOf(cut).filter((v, i) => v === 1 && i % width === 80).length;
  };
  expect(widened('faint')).toBeGreaterThanOrEqual(3);
  expect(widened('faint')).toBeLessThanOrEqual(5);
  expect(widened('paper')).toBe(0);
});

test('a slit of paper between two darks is watched, and a dark line where two inks meet; neither where it was planned', () => {
  // Left one ink, right another, and far right the paper.
  const codes = Uint8Array.from({ length: width * height }, (_, i) => (i % width < 60 ? 1 : i % width < 120 ? 2 : 0)),
    lightness = Float32Array.of(95, 40, 45, 20),
    prices = { slitPrice: 2, linePrice: 0.8 },
    { least, most, ...kept } = bareWatch(codes, width, height, lightness, 2, prices);
  const seam = 50 * width + 60,
    edge = 50 * width + 120;
  expect(lightness[0] - most[seam]).toBeGreaterThan(40);
  expect(lightness[3]).toBeLessThan(least[seam]);
  expect(lightness[1]).toBeLessThan(most[seam]);
  expect(lightness[0]).toBeLessThan(most[edge]);
  expect(kept).toEqual({ lightness, ...prices });
});

test('two inks that meet overlap where layers sit off, though the overlap is darker than either: paper between them would be seen first', () => {
  // Left the one ink, right the other; together a little darker, and the paper far lighter.
  const left = Uint16Array.from({ length: width * height }, (_, i) => (i % width < 80 ? 0 : 1)),
    field: Field = {
      width,
      height,
      binOf: left,
      table: Float32Array.from([30, 0, 9, 12, 30, 9, 0, 12]),
      codeCount: 4,
      layers: 2,
      candidates: Uint8Array.from([1, 2, 3, 0, 2, 1, 3, 0]),
      perBin: 4,
      price: new Float32Array(8).fill(1),
      frozen: 0,
    };
  const overlap = (off?: Off): number => {
    const codes = Uint8Array.from(left, (bin) => bin + 1);
    makeCuttable(field, codes, { openingPx: 2, paperPx: 2, leastInkPx: 16, leastIslandPx: 16 }, false, 1, off);
    expect(codes.includes(0)).toBe(false);
    return codes.subarray(60 * width, 61 * width).filter((code) => code === 3).length;
  };
  expect(overlap()).toBe(0);
  expect(overlap({ sigmaPx: 2, lightness: Float32Array.of(95, 53, 48, 35) })).toBeGreaterThanOrEqual(2);
});
