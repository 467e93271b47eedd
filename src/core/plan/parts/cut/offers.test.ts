import { describe, expect, test } from 'vitest';
import { rectangle, unite } from '../../../form/index.ts';
import { defaultMaterials, makeStencil, type Stencil, type StencilRequest } from '../../../stencil/index.ts';
import { offersFor, type OfferGround } from './offers.ts';

test('a stencil that does not hold gets ways out, and each of them leads out', { timeout: 120_000 }, () => {
  // Fine bars: paper and openings together want more than there is.
  const asked: OfferGround = {
    shape: unite(Array.from({ length: 5 }, (_, i) => rectangle(30, 30 + 2.2 * i, 40, 1.1))),
    side: 'window',
    aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
    material: defaultMaterials[3],
    islands: 'bridge',
  };
  const holds = (request: OfferGround): boolean => makeStencil(request).certificate.holds;
  const refused = makeStencil(asked);
  expect(refused.certificate.holds).toBe(false);
  const offers = offersFor(asked, defaultMaterials, refused);
  expect(offers.map((o) => o.kind)).toEqual(expect.arrayContaining(['close', 'drop', 'larger']));
  for (const offer of offers) {
    switch (offer.kind) {
      case 'close':
        expect(offer.areaMm2).toBeGreaterThan(0);
        expect(holds({ ...asked, closings: offer.change.closings })).toBe(true);
        break;
      case 'drop':
        expect(offer.areaMm2).toBeGreaterThan(0);
        expect(holds({ ...asked, drops: offer.change.drops, closings: offer.change.closings })).toBe(true);
        break;
      case 'firmer':
        expect(defaultMaterials.some((m) => m.id === offer.change.materialId)).toBe(true);
        break;
      case 'larger':
        expect(offer.change.scale).toBeGreaterThan(1);
    }
  }
});

const lattice = (pitchMm: number, lineMm: number, acrossMm = 30): OfferGround => {
  const n = Math.round(acrossMm / pitchMm),
    across = n * pitchMm + lineMm;
  return {
    shape: unite(
      Array.from({ length: n + 1 }, (_, i) => [
        rectangle(30, 30 + pitchMm * i, across, lineMm),
        rectangle(30 + pitchMm * i, 30, lineMm, across),
      ]).flat(),
    ),
    side: 'window',
    aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
    material: defaultMaterials[3],
    islands: 'bridge',
  };
};

test('a fine lattice: all that is too fine goes at one touch', { timeout: 120_000 }, () => {
  const asked = lattice(1.9, 0.6, 14);
  const drops = [{ atMm: [45, 45] as const, withinMm: 30 }];
  const whole = makeStencil({ ...asked, drops });
  expect(whole.certificate.holds).toBe(true);
  expect(whole.prints.rings).toHaveLength(1);
  // Outside the circle nothing goes.
  const elsewhere = makeStencil({ ...asked, drops: [{ atMm: [5, 5], withinMm: 3 }] });
  expect(elsewhere.certificate.holds && elsewhere.prints.rings.length === 1).toBe(false);
});

test('hairlines become as broad as a knife can cut; where they run together that is told, with a way out', { timeout: 120_000 }, () => {
  const wide = makeStencil(lattice(10, 0.12));
  expect(wide.certificate.holds).toBe(true);
  expect(wide.bridges.length).toBeGreaterThanOrEqual(9);
  expect(wide.problems.map((p) => p.code)).toContain('stencil-lines-broader');
  const close = lattice(1.5, 0.12, 12),
    run = makeStencil(close);
  expect(run.certificate.holds).toBe(true);
  expect(run.prints.rings).toHaveLength(1);
  expect(run.problems.map((p) => p.code)).toContain('stencil-much-lost');
  const larger = offersFor(close, [close.material], run).find((offer) => offer.kind === 'larger');
  expect(larger?.kind === 'larger' && larger.change.scale).toBeGreaterThanOrEqual(2);
});

describe('the work that ways out may take', () => {
  const asked = lattice(1.9, 0.6, 12);
  const { leastBridgeMm, leastOpeningMm } = asked.material;
  const plain = makeStencil({ ...asked, asAsked: true, mostEffort: 1 });
  const fault = { kind: 'neck', atMm: [35, 35], widthMm: 0.2 } as const;
  /** A refusal after so much work. */
  const refusedAfter = (effort: number): Stencil => ({
    ...plain,
    effort,
    certificate: { ...plain.certificate, holds: false, faults: [fault] },
    inTheWay: [
      { atMm: [35, 35], region: rectangle(34, 34, 2, 2) },
      { atMm: [38, 38], region: rectangle(37, 37, 2, 2) },
    ],
  });
  /** Tries that are only counted: each takes so much, or all that it may have if that is less. */
  const counting = (each: number, willHold: (request: StencilRequest) => boolean) => {
    const tries: { readonly may: number; readonly took: number; readonly request: StencilRequest }[] = [];
    const make = (request: StencilRequest): Stencil => {
      const may = request.mostEffort ?? Infinity,
        took = Math.min(each, may);
      tries.push({ may, took, request });
      return { ...plain, effort: took, problems: [], certificate: { ...plain.certificate, holds: willHold(request) && took === each } };
    };
    return { tries, make };
  };
  const allFine = ({ drops = [], closings = [], material }: StencilRequest): boolean =>
    drops.some((d) => d.withinMm !== undefined) &&
    closings.length > 0 &&
    material.leastBridgeMm === leastBridgeMm &&
    material.leastOpeningMm === leastOpeningMm;

  test('a dear refusal: the surest way out is tried first, with what it needs, and nothing after it', () => {
    const { tries, make } = counting(70_000, allFine);
    const offers = offersFor(asked, defaultMaterials, refusedAfter(120_000), make);
    expect(tries).toHaveLength(1);
    expect(tries[0].may).toBeGreaterThanOrEqual(70_000);
    expect(offers.map((o) => [o.kind, o.atMm])).toEqual([['drop', null]]);
  });

  test('a cheap refusal: as many ways out as the work allows, and no more', () => {
    const { tries, make } = counting(6_000, () => true);
    const offers = offersFor(asked, defaultMaterials, refusedAfter(20_000), make);
    expect(offers.map((o) => o.kind)).toEqual(expect.arrayContaining(['close', 'drop', 'larger']));
    expect(20_000 + tries.reduce((sum, t) => sum + t.took, 0)).toBeLessThanOrEqual(100_000);
    const { tries: few, make: dear } = counting(30_000, () => true);
    expect(offersFor(asked, defaultMaterials, refusedAfter(20_000), dear).length).toBeLessThan(offers.length);
    expect(20_000 + few.reduce((sum, t) => sum + t.took, 0)).toBeLessThanOrEqual(100_000 + 15_000);
  });

  test('where nothing leads out the tries come to an end', () => {
    const { tries, make } = counting(Infinity, () => false);
    expect(offersFor(asked, defaultMaterials, refusedAfter(60_000), make)).toEqual([]);
    expect(tries.length).toBeGreaterThan(4);
    expect(60_000 + tries.reduce((sum, t) => sum + t.took, 0)).toBeLessThanOrEqual(280_000);
  });
});
