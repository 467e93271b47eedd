import { describe, expect, test } from 'vitest';
import { inEnglish, refusedBy } from '../../../test/said.ts';
import { ProblemError } from '../problem.ts';
import {
  nameSize,
  readLength,
  readMass,
  readVolume,
  sayArea,
  sayFilm,
  sayInchFraction,
  sayLength,
  sayMass,
  saySize,
  sayShare,
  sayVolume,
  smallestHolding,
  tryReadLength,
} from './index.ts';

describe('lengths as printmakers write them', () => {
  test.each([
    ['7 mil', 0.1778],
    ['3/16 in', 4.7625],
    ['1 1/2"', 38.1],
    ['1½"', 38.1],
    ['1-1/2 in', 38.1],
    ['0.18 mm', 0.18],
    ['12,5 cm', 125],
    ['.5 mm', 0.5],
    ['90 µm', 0.09],
    ['90um', 0.09],
    ['1 ft 6 in', 457.2],
    ['1\' 6"', 457.2],
    ['180', 180],
    ['−3 mm', -3],
    ['-1 1/2 in', -38.1],
    ['2 m', 2000],
    ['½ in', 12.7],
    ['3 / 4 in', 19.05],
    ['72 pt', 25.4],
  ])('%s', (text, mm) => {
    expect(readLength(text, 'mm')).toBeCloseTo(mm, 9);
  });

  test('a bare number is in the unit of the Job', () => {
    expect(readLength('8 1/2', 'in')).toBeCloseTo(215.9, 9);
    expect(readLength('1,5', 'cm')).toBeCloseTo(15, 9);
  });

  test.each([
    '',
    'abc',
    '1 2 mm',
    '12 furlongs',
    '1/0 in',
    '1.2.3 mm',
    '1.234,5 mm',
    'NaN',
    'Infinity mm',
    '1e9 mm',
    '5 mm 3 cm',
    '5 mm -3 µm',
    '9'.repeat(60),
    '9'.repeat(500),
    '3 mm mm',
    '--3',
    '1/2/3 in',
    `${'1 '.repeat(35)}x`,
    '1/'.repeat(39),
  ])('“%s” is refused with advice', (text) => {
    expect(tryReadLength(text).ok).toBe(false);
    const [refused, ...more] = refusedBy(() => readLength(text, 'mm', 'screen.offContactMm'));
    expect(refused).toMatchObject({ code: 'length-unreadable', path: 'screen.offContactMm' });
    expect(inEnglish(refused.advice)).toContain('mm');
    expect(more).toEqual([]);
  });

  test.each([
    ['12 furlongs', 'Laydown knows no unit of length called “furlongs”.', '„furlongs“ ist nicht als Einheit für Länge bekannt.'],
    ['', 'There is no length here.', 'Hier steht nichts, was sich als Länge lesen lässt.'],
    ['abc', '“abc” is not a length.', '„abc“ ist nicht als Länge zu lesen.'],
    ['5 mm 3 cm', '“5 mm 3 cm” is more than one length.', '„5 mm 3 cm“ ist mehr als eine Angabe.'],
    ['1/0 in', '“1/0” is not a number.', '„1/0“ ist keine Zahl.'],
    ['1 ft 6', 'A number in “1 ft 6” has no unit.', 'In „1 ft 6“ fehlt einer Zahl die Einheit.'],
  ])('“%s”: what is wrong is named in either language, what was typed stays as typed', (text, en, de) => {
    const read = tryReadLength(text);
    expect(read.ok || inEnglish(read.message)).toBe(en);
    expect(read.ok || inEnglish(read.message, { language: 'de', units: 'mm' })).toBe(de);
  });
});

test('lengths are said short, with their unit', () => {
  expect(sayLength(180, 'mm')).toBe('180\u00a0mm');
  expect(sayLength(0.07, 'mm')).toBe('0.07\u00a0mm');
  expect(sayLength(0.0005, 'mm')).toBe('0.001\u00a0mm');
  expect(sayLength(4.7625, 'mm')).toBe('4.76\u00a0mm');
  expect(sayLength(180, 'in')).toBe('7.09\u00a0in');
  expect(sayLength(3, 'mm', 2)).toBe('3.00\u00a0mm');
  expect(sayLength(-0.0000001, 'mm')).toBe('0\u00a0mm');
  expect(sayInchFraction(4.7625)).toBe('3/16\u00a0in');
  expect(sayInchFraction(38.1)).toBe('1 1/2\u00a0in');
  expect(sayInchFraction(25.39)).toBe('1\u00a0in');
  expect(saySize(180, 240, 'mm')).toBe('180 × 240\u00a0mm');
  expect(sayFilm(24.04, 'mm')).toBe('24\u00a0µm');
  expect(sayFilm(177.8, 'in')).toBe('7\u00a0mil');
});

test('masses, volumes, areas and shares', () => {
  expect(readMass('1 lb 2 oz')).toBeCloseTo(510.29, 2);
  expect(readMass('0,5 kg')).toBeCloseTo(500, 9);
  expect(readVolume('4 fl oz')).toBeCloseTo(118.29, 2);
  expect(readVolume('2 tsp')).toBe(10);
  expect(() => readMass('4 pots')).toThrow(ProblemError);
  expect(sayMass(2.706)).toBe('2.7\u00a0g');
  expect(sayMass(1250)).toBe('1.25\u00a0kg');
  expect(sayMass(113.4, 'in')).toBe('4\u00a0oz');
  expect(sayVolume(60)).toBe('60\u00a0mL');
  expect(sayVolume(60, 'in')).toBe('2.03\u00a0fl\u00a0oz');
  expect(sayArea(43200, 'mm')).toBe('432\u00a0cm²');
  expect(sayArea(4.21, 'mm')).toBe('4.2\u00a0mm²');
  expect(sayArea(4.21, 'in')).toBe('0.007\u00a0in²');
  expect(sayShare(0.42)).toBe('42\u00a0%');
});

test('a sheet is named by its size, either way up', () => {
  expect(nameSize(420, 297)?.id).toBe('a3');
  expect(nameSize(279, 216)?.id).toBe('letter');
  expect(nameSize(300, 300)).toBeUndefined();
  expect(smallestHolding(200, 290)?.id).toBe('a4');
  expect(smallestHolding(300, 200, ['inch'])?.id).toBe('in-9x12');
  expect(smallestHolding(5000, 5000)).toBeUndefined();
});
