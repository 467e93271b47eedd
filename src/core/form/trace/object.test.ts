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

test('on a table that darkens to one side, a black and a white disc both come out at their size', () => {
  const n = 236,
    mm = 25.4 / 100;
  const picture = (lid: number): Uint8Array => {
    const data = new Uint8Array(3 * n * n);
    for (let y = 0; y < n; y++)
      for (let x = 0; x < n; x++) {
        // Grain, and light that falls to a half.
        const table = (0.22 + 0.02 * Math.sin(x / 2)) * (1 - (0.5 * y) / n);
        const light = Math.hypot(x - 150, y - 90) < 5 / mm ? 0.01 : Math.hypot(x - 60, y - 180) < 4 / mm ? lid : table;
        for (let c = 0; c < 3; c++) data[3 * (y * n + x) + c] = Math.round(255 * (light * (1 - 0.1 * c)) ** (1 / 2.2));
      }
    return data;
  };
  for (const lid of [0.9, 0.3]) {
    const { region, problems } = traceScan({ width: n, height: n, channels: 3, data: picture(lid) }, 100, {}, 'scan');
    expect(problems.map((p) => p.code)).toEqual(['scan-ground']);
    expect(region.rings).toHaveLength(2);
    expect(regionArea(region) / (Math.PI * (25 + 16))).toBeCloseTo(1, 1);
  }
});
