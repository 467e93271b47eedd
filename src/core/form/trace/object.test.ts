import { expect, test } from 'vitest';
import { regionArea } from '../region.ts';
import { traceScan } from './trace.ts';

test('light that falls off towards a corner is no thing', () => {
  // 60 × 60 mm at 100 pixels an inch, a black disc of 10 mm in the bright middle, a pale one in the dark corner.
  const n = 236,
    mm = 25.4 / 100;
  const data = new Uint8Array(3 * n * n);
  for (let y = 0; y < n; y++)
    for (let x = 0; x < n; x++) {
      const far = Math.hypot(x, n - y) / n;
      const dark = Math.max(0, 1 - far);
      const light = 1 - 0.75 * dark * dark;
      const disc = Math.hypot(x - 150, y - 90) < 5 / mm ? 0.08 : Math.hypot(x - 50, y - 190) < 4 / mm ? 0.3 : 1;
      data.fill(255 * (light * disc) ** (1 / 2.2), 3 * (y * n + x), 3 * (y * n + x) + 3);
    }
  const { region } = traceScan({ width: n, height: n, channels: 3, data }, 100, {}, 'scan');
  expect(region.rings).toHaveLength(2);
  expect(regionArea(region) / (Math.PI * (25 + 16))).toBeCloseTo(1, 1);
});
