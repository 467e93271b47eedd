import { expect, test } from 'vitest';
import { inUnits } from './in-units.ts';

test('what the plan says in mm is read in inches by those who work in inches; films stay as they are', () => {
  expect(inUnits('The gap runs from 3.7 to 2.3 mm over the image.', 'in')).toBe('The gap runs from 0.146 to 0.091\u00a0in over the image.');
  expect(inUnits('A frame of 307 × 443 mm inside holds it.', 'in')).toBe('A frame of 12.1 × 17.4\u00a0in inside holds it.');
  expect(inUnits('lays down about 24 µm', 'in')).toBe('lays down about 24 µm');
  expect(inUnits('The gap runs from 3.7 to 2.3 mm.', 'mm')).toBe('The gap runs from 3.7 to 2.3 mm.');
});
