import '../../../words/all.ts';
import { afterEach, describe, expect, test } from 'vitest';
import { speak } from '../../store/words.ts';
import { sayDelta, sayLab, sayPercent } from './format.ts';
import { bareLength, bareRange, sayArea, sayFilm, sayFine, sayLength, sayMass, sayMinutes, sayNumber, saySize } from './units.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
afterEach(() => speak('en'));

describe('numbers and lengths of the page', () => {
  test('in millimetres and in inches', () => {
    expect(plain(sayLength(4.7625, 'mm'))).toBe('4.76 mm');
    expect(plain(sayLength(4.7625, 'in'))).toBe('3/16 in');
    expect(plain(saySize(180, 240, 'mm'))).toBe('180 × 240 mm');
    expect(plain(sayFine(0.04, 'mm'))).toBe('0.04 mm');
    expect(plain(sayFine(0.24, 'mm'))).toBe('0.2 mm');
    expect(plain(sayFilm(24, 'mm'))).toBe('24 µm');
    expect(plain(sayMass(113.4, 'in'))).toBe('4 oz');
    expect(plain(sayArea(43200, 'mm'))).toBe('432 cm²');
  });

  test('with the decimal mark of the language in use', () => {
    speak('de');
    expect(plain(sayLength(4.7625, 'mm'))).toBe('4,76 mm');
    expect(sayNumber(0.5, 2, true)).toBe('0,50');
    expect(sayDelta(1.25)).toBe('1,3');
    expect(plain(sayPercent(0.042))).toBe('4,2 %');
    expect(bareLength(12.5, 'mm')).toBe('12,5');
  });

  test('in a field: no unit, no noughts, as fine as the field is', () => {
    expect(bareLength(180, 'mm')).toBe('180');
    expect(bareLength(25.4, 'in')).toBe('1');
    expect([bareLength(38.1, 'in'), bareLength(-3.175, 'in'), bareLength(3, 'in')]).toEqual(['1 1/2', '-1/8', '0.118']);
    expect(bareLength(0.0705, 'mm')).toBe('0.07');
    expect(bareLength(3.14159, 'mm', 2)).toBe('3.14');
    expect(plain(bareRange(10, 5000, 'mm'))).toBe('10–5000 mm');
    expect(plain(bareRange(25.4, 254, 'in'))).toBe('1–10 in');
  });

  test('times, shares, colours', () => {
    expect(plain(sayMinutes(440))).toBe('7 h 20 min');
    expect(plain(sayPercent(0.42))).toBe('42 %');
    expect(sayPercent(0.0004)).not.toMatch(/\d{2}/);
    expect(sayLab([52.4, -3.6, 10])).toBe('52 −4 10');
  });
});
