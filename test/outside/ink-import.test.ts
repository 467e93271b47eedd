import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deltaE00, labFromXyz, xyzFromSpectrum, type Lab } from '../../src/core/colour/index.ts';
import { readReadings, readTyped, spectrumFromReading, type ReadFile } from '../../src/core/ink/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { tellProblem } from '../../src/words/index.ts';
import { refusalOf } from '../said.ts';

const file = (name: string): Uint8Array => readFileSync(new URL(`data/${name}`, import.meta.url));
const text = (s: string): Uint8Array => new TextEncoder().encode(s);
const codesOf = (act: () => unknown): string[] => {
  try {
    act();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.code);
    throw error;
  }
  return [];
};

/** The same readings written as CxF3, element names and structure after ISO 17972-1. */
function asCxf(read: ReadFile): string {
  const objects = read.patches.map((p, i) => {
    const r = p.reading;
    const inside =
      r.kind === 'spectrum'
        ? `<cc:ReflectanceSpectrum ColorSpecification="CS1" StartWL="380">${r.values.join(' ')}</cc:ReflectanceSpectrum>`
        : r.kind === 'xyz'
          ? `<cc:ColorCIEXYZ ColorSpecification="CS1"><cc:X>${r.xyz[0]}</cc:X><cc:Y>${r.xyz[1]}</cc:Y><cc:Z>${r.xyz[2]}</cc:Z></cc:ColorCIEXYZ>`
          : '';
    return `<cc:Object ObjectType="Measurement" Name="${p.name}" Id="o${i}"><cc:CreationDate>2024-01-01T00:00:00</cc:CreationDate><cc:ColorValues>${inside}</cc:ColorValues></cc:Object>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core"><cc:FileInformation><cc:Creator>a press room</cc:Creator></cc:FileInformation>
<cc:Resources><cc:ObjectCollection>${objects.join('\n')}</cc:ObjectCollection>
<cc:ColorSpecificationCollection><cc:ColorSpecification Id="CS1"><cc:TristimulusSpec><cc:Illuminant>D50</cc:Illuminant><cc:Observer>2_Degree</cc:Observer></cc:TristimulusSpec>
<cc:MeasurementSpec><cc:MeasurementType>Spectrum_Reflectance</cc:MeasurementType><cc:WavelengthRange StartWL="380" Increment="10"/></cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection></cc:Resources></cc:CxF>`;
}

describe('files that other programs wrote', () => {
  // Chemical proof, public domain, Debian package krita-data: spectra beside the XYZ that the measuring program worked out.
  test('a CGATS file with spectra: our XYZ agrees with the XYZ in the file', () => {
    const read = readReadings(file('proof-spectra.cgats.txt'), 'proof.txt');
    expect(read.format).toBe('cgats');
    expect(read.patches).toHaveLength(26);
    expect(read.problems).toEqual([]);
    const rows = new TextDecoder().decode(file('proof-spectra.cgats.txt')).split('BEGIN_DATA\n')[1].split('\n');
    let worst = 0;
    read.patches.forEach((p, i) => {
      expect(p.reading.kind).toBe('spectrum');
      const [X, Y, Z] = rows[i].split(/\s+/).slice(5, 8).map(Number);
      const ours = labFromXyz(xyzFromSpectrum(spectrumFromReading(p.reading, p.name)));
      worst = Math.max(worst, deltaE00(ours, labFromXyz([X / 100, Y / 100, Z / 100])));
      expect(p.amounts).toMatchObject({ CMYK_C: Number(rows[i].split(/\s+/)[1]) });
    });
    console.log(`XYZ of 26 measured spectra against another program's: worst ΔE00 ${worst.toFixed(2)}`);
    expect(worst).toBeLessThan(0.5);
  });
  // FOGRA40L characterisation data, Debian package icc-profiles-free.
  test('a CGATS file with XYZ and Lab: the two agree, and XYZ is taken', () => {
    const read = readReadings(file('offset-sc.cgats.txt'), 'offset.txt');
    expect(read.patches.length).toBeGreaterThan(30);
    expect(read.about.ORIGINATOR).toContain('Fogra');
    const rows = new TextDecoder().decode(file('offset-sc.cgats.txt')).split('BEGIN_DATA\n')[1].split('\n');
    read.patches.forEach((p, i) => {
      if (p.reading.kind !== 'xyz') throw new Error('XYZ expected');
      const lab = rows[i].trim().split(/\s+/).slice(8, 11).map(Number) as unknown as Lab;
      expect(deltaE00(labFromXyz([p.reading.xyz[0] / 100, p.reading.xyz[1] / 100, p.reading.xyz[2] / 100]), lab)).toBeLessThan(0.2);
    });
  });
  test.each(['proof-spectra.cgats.txt', 'offset-sc.cgats.txt'])('CxF and CGATS give the same numbers for %s', (name) => {
    const cgats = readReadings(file(name), name);
    const cxf = readReadings(text(asCxf(cgats)), 'same.cxf');
    expect(cxf.format).toBe('cxf');
    expect(cxf.patches.map((p) => p.reading)).toEqual(cgats.patches.map((p) => p.reading));
    expect(cxf.patches.map((p) => p.name)).toEqual(cgats.patches.map((p) => p.name));
  });
});

describe('CGATS in all its ways', () => {
  test('fields in any order, comments, quotes, several tables, rows over several lines', () => {
    const read = readReadings(
      text(`CGATS.17
# a comment
ORIGINATOR "A ""studio"" # not a comment"
BEGIN_DATA_FORMAT
LAB_B LAB_L SAMPLE_NAME
LAB_A END_DATA_FORMAT
NUMBER_OF_SETS 2
BEGIN_DATA
-44.7 55.5 "Deep blue" -38.6 # trailing words
1.5 92.4
Paper -0.7
END_DATA
BEGIN_DATA_FORMAT
SAMPLE_ID\tXYZ_X\tXYZ_Y\tXYZ_Z
END_DATA_FORMAT
BEGIN_DATA
7\t15,10\t23,39\t48,86
END_DATA`),
      'x.txt',
    );
    expect(read.about.ORIGINATOR).toBe('A "studio" # not a comment');
    expect(read.patches).toEqual([
      { name: 'Deep blue', reading: { kind: 'lab', lab: [55.5, -38.6, -44.7] } },
      { name: 'Paper', reading: { kind: 'lab', lab: [92.4, -0.7, 1.5] } },
      { name: '7', reading: { kind: 'xyz', xyz: [15.1, 23.39, 48.86] } },
    ]);
  });
  test('a file cut short gives what is there and says so', () => {
    const read = readReadings(file('proof-spectra.cgats.txt').slice(0, 5000), 'cut.txt');
    expect(read.patches.length).toBeGreaterThan(3);
    const cut = read.problems.find((p) => p.code === 'file-cut-short')!;
    expect(tellProblem(cut)).toMatch(
      /^cut\.txt, line \d+: The file ends in the middle of its readings\. What is there was read; export it again to get the rest\.$/,
    );
    expect(tellProblem(cut, { language: 'de', units: 'mm' })).toMatch(/^cut\.txt, Zeile \d+: Die Datei endet mitten in ihren Messungen\./);
  });
  test('colours for other light are told', () => {
    const read = readReadings(
      text(
        'CGATS.17\nWEIGHTING_FUNCTION "ILLUMINANT, D65"\nWEIGHTING_FUNCTION2 "OBSERVER, 10 degree"\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n1 50 0 0\nEND_DATA',
      ),
      'd65.txt',
    );
    expect(read.problems.map((p) => p.code)).toEqual(['other-light', 'other-observer']);
  });
});

describe('a spreadsheet', () => {
  test('comma, semicolon with decimal comma, tab; Lab, XYZ and spectra', () => {
    expect(readReadings(text('name,L,a,b\n"Kelp, dark",40,-20,25\n'), 'a.csv').patches).toEqual([
      { name: 'Kelp, dark', reading: { kind: 'lab', lab: [40, -20, 25] } },
    ]);
    expect(readReadings(text('Ink;X;Y;Z\nKelp;10,5;12,25;8\n'), 'b.csv').patches).toEqual([
      { name: 'Kelp', reading: { kind: 'xyz', xyz: [10.5, 12.25, 8] } },
    ]);
    const nm = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
    const read = readReadings(text(`name\t${nm.map((w) => `${w} nm`).join('\t')}\nkelp\t${nm.map(() => '40').join('\t')}\n`), 'c.csv');
    expect(read.patches[0].reading).toEqual({ kind: 'spectrum', values: new Array(36).fill(0.4) });
    expect(read.problems.map((p) => p.code)).toEqual(['spectrum-extended']);
  });
  test('a patch that can’t be is left out, and its row is named', () => {
    const read = readReadings(text('name,L,a,b\nkelp,40,-20,25\n"Sand, wet",170.5,3,18\n'), 'e.csv');
    expect(read.patches.map((p) => p.name)).toEqual(['kelp']);
    expect(read.problems.map((p) => tellProblem(p))).toEqual([
      'e.csv, row 3: L is 170.5; it has to lie between 0 (no light at all, which no surface has) and 105. The patch is left out. Check that the three numbers are L, a and b in that order.',
    ]);
  });
  test('without headings it is taken as Lab and said so', () => {
    const read = readReadings(text('kelp,40,-20,25\nsand,70,3,18'), 'd.csv');
    expect(read.patches).toHaveLength(2);
    expect(read.problems[0].code).toBe('headings-missing');
  });
});

describe('typed colours', () => {
  test.each([
    ['52 60 -3', 'lab'],
    ['L 52 a 60 b −3', 'lab'],
    ['Lab(52; 60; -3)', 'lab'],
    ['52,60,-3', 'lab'],
    ['L*=52, a*=60, b*=-3', 'lab'],
  ] as const)('%s', (typed, kind) => {
    expect(readTyped(typed, 'ink')).toEqual({ kind, lab: [52, 60, -3] });
  });
  test('XYZ and spectra', () => {
    expect(readTyped('XYZ 20.1 27 52.6', 'ink')).toEqual({ kind: 'xyz', xyz: [20.1, 27, 52.6] });
    expect(readTyped(new Array(36).fill('40').join(' '), 'ink')).toEqual({ kind: 'spectrum', values: new Array(36).fill(0.4) });
    expect(codesOf(() => readTyped('reddish', 'ink'))).toEqual(['reading-not-understood']);
    expect(refusalOf(() => readTyped('a { } $1 “red”', 'inks[0].over'))).toContain('“a { } $1 “red”” can’t be read as a colour.');
    expect(codesOf(() => readTyped('152 60 -3', 'ink'))).toEqual(['reading-out-of-range']);
  });
});

describe('broken and hostile files', () => {
  const cxf = asCxf(readReadings(file('proof-spectra.cgats.txt'), 'p'));
  test.each([
    ['an empty file', '', 'file-empty'],
    ['CGATS without a table', 'CGATS.17\nORIGINATOR "x"\n', 'no-readings'],
    ['CGATS without columns', 'CGATS.17\nBEGIN_DATA\n1 2 3\nEND_DATA', 'no-data-format'],
    ['words', 'dear printer, the red is lovely\nand so is the blue', 'no-readings'],
    ['CxF cut in the middle', cxf.slice(0, 3000), 'xml-broken'],
    [
      'a file that draws in others',
      `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY y SYSTEM "file:///etc/hostname">]>${cxf.slice(40)}`,
      'xml-doctype',
    ],
    ['an unknown entity', cxf.replace('a press room', '&bomb;'), 'xml-broken'],
    ['XML nested too deep', `<a xmlns="x">${'<b>'.repeat(100_000)}`, 'xml-too-deep'],
    ['XML without colour', '<CxF xmlns="x"><Resources/></CxF>', 'no-readings'],
    ['a picture', '\x89PNG\r\n', 'is-a-picture'],
    ['a packed file', 'PK\x03\x04abc', 'is-a-spreadsheet'],
  ])('%s', (_, content, code) => {
    const bytes = content.startsWith('\x89') ? Uint8Array.from([...content].map((c) => c.charCodeAt(0))) : text(content);
    expect(codesOf(() => readReadings(bytes, 'bad'))).toEqual([code]);
  });
  test('too large, and too many patches', () => {
    expect(codesOf(() => readReadings(new Uint8Array(33 * 1024 * 1024).fill(65), 'big'))).toEqual(['file-too-large']);
    expect(codesOf(() => readReadings(text(`L,a,b\n${'50,0,0\n'.repeat(30_000)}`), 'many'))).toEqual(['too-many-patches']);
  });
  test('any cut and any damaged byte gives readings or a message, never anything else', () => {
    const sources = [text(cxf).slice(0, 6000), file('offset-sc.cgats.txt').slice(0, 3000)];
    fc.assert(
      fc.property(fc.nat(1), fc.nat(), fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 4 }), (which, cut, harm) => {
        const bytes = Uint8Array.from(sources[which].slice(0, cut % sources[which].length));
        for (const [at, value] of harm) if (bytes.length > 0) bytes[at % bytes.length] = value;
        try {
          readReadings(bytes, 'harmed');
        } catch (error) {
          expect(error).toBeInstanceOf(ProblemError);
        }
      }),
      { numRuns: 300 },
    );
  });
});
