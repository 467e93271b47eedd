import { expect, test } from 'vitest';
import { rectangle, unite } from '../../../form/index.ts';
import { defaultMaterials, makeStencil } from '../../../stencil/index.ts';
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
  const asked = lattice(1.9, 0.6);
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
