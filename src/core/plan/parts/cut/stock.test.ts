import { describe, expect, test } from 'vitest';
import { parseJob, type JobBundle } from '../../../job/index.ts';
import { inEnglish } from '../../../../../test/said.ts';
import { plan } from '../../plan.ts';

const lab = (L: number, a: number, b: number): object => ({ kind: 'lab', lab: [L, a, b] });
const square = (x: number, y: number, size: number): number[][] => [
  [x, y],
  [x + size, y],
  [x + size, y + size],
  [x, y + size],
];

/** Image 80 × 60 with 20 mm round it: sheets of 120 × 100 mm. */
function job(material: object, layers: readonly object[], outline = [square(0, 0, 40)]): JobBundle {
  return {
    attachments: new Map(),
    job: parseJob({
      schemaVersion: 1,
      title: 'Stock',
      image: { widthMm: 80, heightMm: 60 },
      stencilMarginMm: 20,
      materials: [{ id: 'film', name: 'Film', thicknessMm: 0.12, leastBridgeMm: 2, leastOpeningMm: 1, prints: [200, 1000], ...material }],
      forms: [{ id: 'f', name: 'F', outline }],
      cuts: [
        { id: 'a', name: 'A', material: 'film', parts: [{ form: 'f', xMm: 30, yMm: 30 }] },
        { id: 'b', name: 'B', material: 'film', parts: [{ form: 'f', xMm: 45, yMm: 30 }] },
      ],
      layers,
      inks: [{ id: 'blue', name: 'Blue', from: 'one-ground', ground: lab(95, 0, 0), over: lab(40, 0, -45) }],
      papers: [{ id: 'white', name: 'White', reading: lab(95, 0, 0), widthMm: 120, heightMm: 100, count: 10 }],
      edition: { target: 4 },
    }),
  };
}
const layer = (id: string, cut: string, side: string, more: object = {}): object => ({
  id,
  name: id,
  cut,
  side,
  ink: 'blue',
  strength: 1,
  ...more,
});
const stock = (widthMm: number, heightMm: number, more: object = {}): object => ({ stock: { widthMm, heightMm, ...more } });

describe('stencils on stock', () => {
  test('without a size to buy nothing is laid out', () => expect(plan(job({}, [layer('one', 'a', 'window')])).stock).toEqual([]));
  test('two stencils share a sheet, edge to edge', () => {
    const [sheet, ...more] = plan(job(stock(240, 100), [layer('one', 'a', 'window'), layer('two', 'b', 'window')])).stock;
    expect(more).toEqual([]);
    expect(sheet.placed.map((p) => [p.xMm, p.yMm, p.widthMm, p.heightMm, p.turned])).toEqual([
      [0, 0, 120, 100, false],
      [120, 0, 120, 100, false],
    ]);
    expect(sheet.usedShare).toBeCloseTo(1);
  });
  test('a stencil is turned only where grain does not matter', () => {
    const layers = [layer('one', 'a', 'window')];
    expect(plan(job(stock(100, 130), layers)).stock[0].placed[0]).toMatchObject({ turned: true, widthMm: 100, heightMm: 120 });
    const kept = plan(job(stock(100, 130, { grainMatters: true }), layers));
    expect(kept.stock).toEqual([]);
    const refused = kept.problems.find((p) => p.code === 'stock-too-small')!;
    expect(refused).toMatchObject({ path: 'materials[0].stock', lead: { station: 'stencils', id: 'film' } });
    expect(inEnglish(refused.message)).toBe('The stencil “one” (120 × 100\u00a0mm) is larger than the stock (100 × 130\u00a0mm).');
  });
  test('one cut lies there once when the piece that drops out is the other stencil', () => {
    const both = [layer('one', 'a', 'window'), layer('two', 'a', 'piece')];
    const placed = plan(job(stock(500, 700), both)).stock[0].placed;
    expect(placed.map((p) => p.layers)).toEqual([['one', 'two']]);
  });
  test('and twice when a bridge, a spread or a kerf makes the piece another shape', () => {
    const both = [layer('one', 'a', 'window'), layer('two', 'a', 'piece')];
    const ring = [square(0, 0, 40), square(12, 12, 16)];
    expect(plan(job(stock(500, 700), both, ring)).stock[0].placed).toHaveLength(2);
    expect(plan(job({ ...stock(500, 700), kerfMm: 0.2 }, both)).stock[0].placed).toHaveLength(2);
    expect(
      plan(job(stock(500, 700), [layer('one', 'a', 'window', { spreadMm: 1 }), layer('two', 'a', 'piece')])).stock[0].placed,
    ).toHaveLength(2);
  });
  test('a material that dies soon is cut again; sheets that are alike are told once', () => {
    const dying = plan(job({ ...stock(120, 100), prints: [2, 4] }, [layer('one', 'a', 'window')]));
    expect(dying.cuts[0].timesToCut).toBeGreaterThan(1);
    expect(dying.stock).toHaveLength(1);
    expect(dying.stock[0].times).toBe(dying.cuts[0].timesToCut);
  });
  test('a kerf keeps that much room between neighbours', () => {
    const [sheet] = plan(job({ ...stock(300, 100), kerfMm: 0.3 }, [layer('one', 'a', 'window'), layer('two', 'b', 'window')])).stock;
    expect(sheet.placed[1].xMm).toBeCloseTo(120.3);
  });
});
