import { expect, test } from 'vitest';
import { textInInches, textsWithLengths } from './index.ts';

const inch = (text: string): string => textInInches(text).replaceAll('\u00a0', ' ');

test('lengths in a sentence are said in inches: one, a range, a size, a place', () => {
  expect(inch('The gap runs from 3.7 to 2.3 mm.')).toBe('The gap runs from 0.146 to 0.091 in.');
  expect(inch('A frame of 307 × 443 mm holds it.')).toBe('A frame of 12.1 × 17.4 in holds it.');
  expect(inch('One place was too thin (first at 40, 73 mm).')).toBe('One place was too thin (first at 1.575, 2.874 in).');
  expect(inch('Tape 1, 25.4 mm from the edge; run 3, 2 mm off')).toBe('Tape 1, 1.000 in from the edge; run 3, 0.079 in off');
  expect(inch('Ink prints over 645 mm² more')).toBe('Ink prints over 1 in² more');
  expect(inch('Tape 16 strips (5.5 m); 14 cm; they overlap by 0.0 mm')).toBe('Tape 16 strips (217 in); 5.512 in; they overlap by 0 in');
  expect(textInInches('Der Spalt geht von 3,7 bis 2,3 mm', { decimal: ',' })).toBe('Der Spalt geht von 0,146 bis 0,091\u00a0in');
});

test('what is no length, is said in both, or was written by the printmaker stays', () => {
  for (const text of ['lays down about 24 µm', '12 mmol', '5 minutes', '3 min', '100 mm = 3.94 in on the ruler?', '77/cm', '4 min'])
    expect(textInInches(text)).toBe(text);
  const note = 'trap 2 mm';
  expect(textsWithLengths({ layers: [{ note }, { note: 'soft' }], title: 'A 3 mm print' })).toEqual(['A 3 mm print', note]);
  expect(inch(`Look for: ${note}, gap 2.54 mm`)).toContain('0.100 in');
  expect(textInInches(`Look for: ${note}, gap 2.54 mm`, { written: [note] })).toBe(`Look for: ${note}, gap 0.100\u00a0in`);
});
