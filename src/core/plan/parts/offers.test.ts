import { expect, test } from 'vitest';
import { rectangle, unite } from '../../form/index.ts';
import { defaultMaterials, makeStencil } from '../../stencil/index.ts';
import { offersFor } from './offers.ts';

// Fine bars: paper and openings together want more than there is.
const bars = unite(Array.from({ length: 9 }, (_, i) => rectangle(30, 30 + 2.2 * i, 40, 1.1)));
const asked = {
  shape: bars,
  side: 'piece',
  aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
  sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
  material: defaultMaterials[3],
  islands: 'bridge',
} as const;

test('a stencil that does not hold gets ways out, and each of them leads out', { timeout: 120_000 }, () => {
  const refused = makeStencil(asked);
  expect(refused.certificate.holds).toBe(false);
  const offers = offersFor(asked, defaultMaterials, refused);
  expect(offers.length).toBeGreaterThan(0);
  for (const offer of offers) {
    if (offer.kind === 'firmer') {
      const material = defaultMaterials.find((m) => m.id === offer.change.materialId);
      expect(material && makeStencil({ ...asked, material }).certificate.holds).toBe(true);
    }
    if (offer.kind === 'larger') expect(offer.change.scale).toBeGreaterThan(1);
    if (offer.kind === 'close') expect(offer.areaMm2).toBeGreaterThan(0);
  }
});
