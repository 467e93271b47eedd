import { describe, expect, test } from 'vitest';
import { gramsPerOunce, millilitresPerFluidOunce, readMass, readVolume, sayMass, sayVolume, tryReadMass, tryReadVolume } from './amount.ts';
import { sayArea, sayShare } from './area.ts';
import { readLength, sayFilm, sayInchFraction, sayLength, tryReadLength } from './length.ts';
import { plainText, readNumber, sayNumber, threeFigures } from './number.ts';
import { nameSize, paperSizes, smallestHolding } from './paper-sizes.ts';

/** Non-breaking spaces as plain ones. */
const plain = (text: string): string => text.replace(/\u00a0/g, ' ');

// NIST Handbook 44, appendix C: 1 oz = 28.349523125 g, 1 US fl oz = 29.5735295625 mL, 1 in = 25.4 mm, 1 ft = 12 in.
test('what the units are', () => {
  expect(gramsPerOunce).toBeCloseTo(28.349523125, 12);
  expect(millilitresPerFluidOunce).toBeCloseTo(29.5735295625, 12);
  const [g, ml, mm] = [(text: string) => readMass(text), (text: string) => readVolume(text), (text: string) => readLength(text)];
  expect([g('3 g'), g('2 kg'), g('500 mg'), g('1 oz'), g('1 lb'), g('7')]).toEqual([
    3,
    2000,
    0.5,
    gramsPerOunce,
    expect.closeTo(453.59237, 9),
    7,
  ]);
  expect([ml('3 mL'), ml('2 cl'), ml('2 l'), ml('2 fl oz'), ml('2 tsp'), ml('2 tbsp')]).toEqual([
    3,
    20,
    2000,
    2 * millilitresPerFluidOunce,
    10,
    30,
  ]);
  expect([mm('3 mm'), mm('2 cm'), mm('2 m'), mm('2 in'), mm('1 ft'), mm('1000 mil'), mm('50 µm'), mm('72 pt')]).toEqual(
    [3, 20, 2000, 50.8, 304.8, 25.4, 0.05, 25.4].map((value) => expect.closeTo(value, 9) as unknown),
  );
  expect(tryReadMass('2', 'oz')).toEqual({ ok: true, value: 2 * gramsPerOunce });
  expect(tryReadVolume('2', 'fl oz')).toEqual({ ok: true, value: 2 * millilitresPerFluidOunce });
});

describe('what is written', () => {
  test('reads as on a ruler, with any minus and any fraction', () => {
    expect([
      readNumber('1 1/2'),
      readNumber('-1 1/2'),
      readNumber('3/4'),
      readNumber('-3/4'),
      readNumber('+2,5'),
      readNumber('2.'),
      readNumber('.5'),
    ]).toEqual([1.5, -1.5, 0.75, -0.75, 2.5, 2, 0.5]);
    for (const text of ['1/0', '', '1,2,3', 'abc', '1 2', '--1', '.']) expect(readNumber(text)).toBeNaN();
    expect(plainText(' 1½ ')).toBe('1 1/2');
    expect(plainText('½')).toBe('1/2');
    expect(plainText('−2\u00a03 ⁄ 4')).toBe('-2 3/4');
  });

  test('may be as long as a line and as large as a thousand kilometres; a sum has one sign and falling units', () => {
    const key = (text: string): unknown => {
      const read = tryReadLength(text);
      return read.ok ? read.value : read.message.key;
    };
    expect(key(`${'0'.repeat(77)} mm`)).toBe(0);
    expect(key(`${'0'.repeat(78)} mm`)).toBe('units.tooLong');
    expect([key('1000000000'), key('1000000000.5'), key('1000001 m')]).toEqual([1e9, 'units.tooLarge', 'units.tooLarge']);
    expect([
      key('1 ft 6 in'),
      key('-1 ft 6 in'),
      key('6 in 1 ft'),
      key('6 in 1 in'),
      key('1 ft -6 in'),
      key('1 ft 6'),
      key('6 1 in'),
    ]).toEqual([
      expect.closeTo(457.2, 9),
      expect.closeTo(-457.2, 9),
      'units.moreThanOne',
      'units.moreThanOne',
      'units.moreThanOne',
      'units.unitMissing',
      expect.anything(),
    ]);
  });
});

describe('what is said', () => {
  test('about three figures', () => {
    expect([0.5, 1, 9.99, 10, 99.9, 100, 1000, -100, -5].map(threeFigures)).toEqual([3, 2, 2, 1, 1, 0, 0, 0, 2]);
    expect([
      sayNumber(1.5, 3, false),
      sayNumber(1.5, 3, true),
      sayNumber(-0.0001, 2, true),
      sayNumber(-0.0001, 2, false),
      sayNumber(100, 0, false),
    ]).toEqual(['1.5', '1.500', '0.00', '0', '100']);
  });

  test('lengths: hundredths up to ten, tenths from there, thousandths under one; inches finer', () => {
    expect([0.1234, 0.999, 1, 1.234, 10, 12.34, 99.96, 100.26, 123.46].map((mm) => plain(sayLength(mm, 'mm')))).toEqual([
      '0.123 mm',
      '0.999 mm',
      '1 mm',
      '1.23 mm',
      '10 mm',
      '12.3 mm',
      '100 mm',
      '100.3 mm',
      '123.5 mm',
    ]);
    expect([0.1234, 1.2345, 9.996, 10.126, 12.345, 99.996, 100.26].map((inch) => plain(sayLength(inch * 25.4, 'in')))).toEqual([
      '0.123 in',
      '1.23 in',
      '10 in',
      '10.13 in',
      '12.35 in',
      '100 in',
      '100.3 in',
    ]);
    expect([plain(sayLength(12.345, 'mm', 2)), plain(sayLength(12, 'mm', 1)), plain(sayLength(25.4, 'in', 0))]).toEqual([
      '12.35 mm',
      '12.0 mm',
      '1 in',
    ]);
  });

  test('inches on a ruler', () => {
    expect([4.7625, 38.1, 25.4, 0, -4.7625, -0.1, 12.7, 0.79375].map((mm) => plain(sayInchFraction(mm)))).toEqual([
      '3/16 in',
      '1 1/2 in',
      '1 in',
      '0 in',
      '-3/16 in',
      '0 in',
      '1/2 in',
      '1/16 in',
    ]);
    expect([plain(sayInchFraction(0.79375, 32)), plain(sayInchFraction(2, 3)), plain(sayInchFraction(0.6 * 25.4, 10))]).toEqual([
      '1/32 in',
      '0 in',
      '3/5 in',
    ]);
  });

  test('films in microns or mils, no finer than a tenth', () => {
    expect([
      plain(sayFilm(24, 'mm')),
      plain(sayFilm(24.26, 'mm')),
      plain(sayFilm(124.6, 'mm')),
      plain(sayFilm(25.4, 'in')),
      plain(sayFilm(22.86, 'in')),
      plain(sayFilm(24, 'mm', 2)),
    ]).toEqual(['24 µm', '24.3 µm', '125 µm', '1 mil', '0.9 mil', '24.00 µm']);
  });

  test('areas: mm², cm² from a square centimetre, m² from a tenth of one; in²', () => {
    expect([4.24, 9.96, 10.4, 99.4, 100, 1234, 99_999, 100_000, 432_100].map((mm2) => plain(sayArea(mm2, 'mm')))).toEqual([
      '4.2 mm²',
      '10 mm²',
      '10 mm²',
      '99 mm²',
      '1 cm²',
      '12.3 cm²',
      '1000 cm²',
      '0.1 m²',
      '0.43 m²',
    ]);
    expect([0.0712, 0.1, 0.1234, 1.234, 66.96].map((inches) => plain(sayArea(inches * 25.4 ** 2, 'in')))).toEqual([
      '0.071 in²',
      '0.1 in²',
      '0.12 in²',
      '1.23 in²',
      '67 in²',
    ]);
    expect(plain(sayArea(-50, 'mm'))).toBe('-50 mm²');
  });

  test('shares: tenths of a percent under ten', () => {
    expect([0.004, 0.0999, 0.1, 0.424, -0.005, 1].map((share) => plain(sayShare(share)))).toEqual([
      '0.4 %',
      '10 %',
      '10 %',
      '42 %',
      '-0.5 %',
      '100 %',
    ]);
    expect([plain(sayShare(0.424, 1)), plain(sayShare(0.42, 1)), plain(sayShare(0.05, 0))]).toEqual(['42.4 %', '42.0 %', '5 %']);
  });

  test('masses and volumes: kilograms and litres from a thousand on', () => {
    expect([2.74, 112.4, 999, 1000, 1254].map((g) => plain(sayMass(g)))).toEqual(['2.7 g', '112 g', '999 g', '1.00 kg', '1.25 kg']);
    expect([2.74, 60, 999, 1000, 1254].map((ml) => plain(sayVolume(ml)))).toEqual(['2.7 mL', '60 mL', '999 mL', '1.00 L', '1.25 L']);
    expect([plain(sayMass(112, 'in')), plain(sayVolume(60, 'in')), plain(sayMass(gramsPerOunce * 1.2345, 'in'))]).toEqual([
      '3.95 oz',
      '2.03 fl oz',
      '1.23 oz',
    ]);
    expect([
      plain(sayMass(1254, 'mm', 1)),
      plain(sayMass(12, 'mm', 2)),
      plain(sayVolume(1254, 'mm', 1)),
      plain(sayVolume(3, 'mm', 2)),
    ]).toEqual(['1.3 kg', '12.00 g', '1.3 L', '3.00 mL']);
  });
});

describe('sheets', () => {
  // ISO 216 and ISO 269, their tables.
  test.each([
    [
      'A',
      [
        [841, 1189],
        [594, 841],
        [420, 594],
        [297, 420],
        [210, 297],
        [148, 210],
        [105, 148],
        [74, 105],
        [52, 74],
        [37, 52],
        [26, 37],
      ],
    ],
    [
      'B',
      [
        [1000, 1414],
        [707, 1000],
        [500, 707],
        [353, 500],
        [250, 353],
        [176, 250],
        [125, 176],
        [88, 125],
        [62, 88],
        [44, 62],
        [31, 44],
      ],
    ],
    [
      'C',
      [
        [917, 1297],
        [648, 917],
        [458, 648],
        [324, 458],
        [229, 324],
        [162, 229],
        [114, 162],
        [81, 114],
        [57, 81],
        [40, 57],
        [28, 40],
      ],
    ],
  ])('of the %s series', (family, sides) => {
    const mine = paperSizes.filter((size) => size.family === family);
    expect(mine.map((size) => [size.widthMm, size.heightMm])).toEqual(sides);
    expect(mine[4]).toMatchObject({ id: `${family.toLowerCase()}4`, name: `${family}4` });
  });

  test('of inch countries are as large as they are called', () => {
    const inch = paperSizes.filter((size) => size.family === 'inch');
    // ANSI/ASME Y14.1: A to E.
    const ansi = { letter: [8.5, 11], tabloid: [11, 17], 'ansi-c': [17, 22], 'ansi-d': [22, 34], 'ansi-e': [34, 44], legal: [8.5, 14] };
    expect(inch).toHaveLength(17);
    for (const size of inch) {
      const named = /^(\d+) × (\d+) in$/.exec(size.name);
      const [width, height] = named ? [Number(named[1]), Number(named[2])] : ansi[size.id as keyof typeof ansi];
      expect([size.widthMm, size.heightMm]).toEqual([expect.closeTo(width * 25.4, 9), expect.closeTo(height * 25.4, 9)]);
      expect(size.id).toBe(named ? `in-${named[1]}x${named[2]}` : size.id);
    }
  });

  test('are known by their sides, either way up, the nearest within 2 mm', () => {
    expect([nameSize(210, 297)?.id, nameSize(297, 210)?.id, nameSize(212, 299)?.id, nameSize(212.1, 297), nameSize(210, 299.1)]).toEqual([
      'a4',
      'a4',
      'a4',
      undefined,
      undefined,
    ]);
    // 18 × 24 in is 457.2 × 609.6, C2 458 × 648.
    expect(nameSize(458, 612, 40)?.id).toBe('in-18x24');
    expect(nameSize(458, 640, 40)?.id).toBe('c2');
    expect(nameSize(354, 500, 100)?.id).toBe('b3');
  });

  test('the smallest that holds a drawing', () => {
    expect([
      smallestHolding(210, 297)?.id,
      smallestHolding(297, 210)?.id,
      smallestHolding(211, 211)?.id,
      smallestHolding(10, 298)?.id,
      smallestHolding(2000, 1),
    ]).toEqual(['a4', 'a4', 'a3', 'a3', undefined]);
    expect(smallestHolding(215, 270, ['A', 'inch'])?.id).toBe('letter');
    expect(smallestHolding(229, 305, ['inch', 'C', 'B'])?.id).toBe('c4');
    expect(smallestHolding(460, 600, ['inch', 'A'])?.id).toBe('in-19x25');
  });
});
