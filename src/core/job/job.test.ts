import { strToU8, zipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inEnglish, refusalOf, refusedBy } from '../../../test/said.ts';
import { tellProblem } from '../../words/index.ts';
import { ProblemError } from '../problem.ts';
import {
  checkJob,
  jobJsonSchema,
  migrate,
  parseJob,
  parseJobText,
  readJob,
  readJobFile,
  writeJob,
  writeJobFile,
  type JobBundle,
} from './index.ts';

const small = {
  schemaVersion: 1,
  title: 'Two pebbles',
  image: { widthMm: 100, heightMm: 80 },
  forms: [
    {
      id: 'pebble',
      name: 'Pebble',
      outline: [
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
        ],
      ],
    },
  ],
  cuts: [{ id: 'pebbles', name: 'Pebbles', parts: [{ form: 'pebble', xMm: 20, yMm: 20 }] }],
  layers: [{ id: 'one', name: 'One', cut: 'pebbles', side: 'window', ink: 'sand' }],
  inks: [
    { id: 'sand', name: 'Sand', from: 'one-ground', ground: { kind: 'lab', lab: [95, 0, 0] }, over: { kind: 'lab', lab: [80, 5, 50] } },
  ],
  papers: [{ id: 'white', name: 'White', reading: { kind: 'lab', lab: [95, 0, 0] }, widthMm: 150, heightMm: 120, count: 10 }],
};
const bundleOf = (raw: unknown, attachments = new Map<string, Uint8Array>()): JobBundle => ({ job: parseJob(raw), attachments });
const codesOf = (work: () => unknown): string[] => {
  try {
    work();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.code);
    throw error;
  }
  return [];
};

describe('the Job document', () => {
  test('fields that Laydown does not know come back as they were', () => {
    const job = parseJob({ ...small, mood: 'windy', layers: [{ ...small.layers[0], scribble: { x: 1 } }] });
    const again = parseJobText(JSON.stringify(job));
    expect(again['mood']).toBe('windy');
    expect(again.layers[0]['scribble']).toEqual({ x: 1 });
  });

  test('every error is told at once, each with its place and advice', () => {
    try {
      parseJob({
        schemaVersion: 1,
        image: { widthMm: -1 },
        layers: [{ id: 'A b', name: 'x', cut: 'c', side: 'lid', ink: null, strength: 3 }],
      });
      expect.unreachable();
    } catch (error) {
      const { problems } = error as ProblemError;
      expect(problems.map((p) => p.path)).toEqual(
        expect.arrayContaining(['title', 'image.widthMm', 'image.heightMm', 'layers[0].id', 'layers[0].side', 'layers[0].strength']),
      );
      for (const p of problems) {
        expect(inEnglish(p.message)).not.toMatch(/invalid input|expected|received/i);
        expect(inEnglish(p.advice)).not.toBe('');
      }
    }
  });

  test.each([
    [{ title: undefined }, 'the title of the job: This is missing. Write it in; docs/job-schema.json lists every field.'],
    [{ title: 7 }, 'the title of the job: This should be a text, not “7”. Correct it; docs/job-schema.json lists every field.'],
    [{ title: '' }, 'the title of the job: This must not be empty. Write it in; docs/job-schema.json lists every field.'],
    [{ units: 'ell' }, 'the units of the job: This can be mm or in, but not “ell”. Use one of the words it allows.'],
    [
      { layers: [{ ...small.layers[0], strength: 20 }] },
      'the strength of run 1 (One): This is a share of one whole, and it is 20. Write shares as a number from 0 to 1: 20 % is written 0.2.',
    ],
    [
      { layers: [{ ...small.layers[0], strength: -1 }] },
      'the strength of run 1 (One): This must be at least 0, and it is -1. Use a larger value.',
    ],
    [{ edition: { certainty: 1 } }, 'the certainty of the edition: This must be less than 1, and it is 1. Use a smaller value.'],
    [
      { image: { widthMm: 9000, heightMm: 80 } },
      'the width of the image: This must be at most 5000 mm, and it is 9000 mm. Use a smaller value.',
    ],
    [
      { inks: [{ id: 'sand', name: 'Sand' }] },
      'how the ink “Sand” was read: This is missing. It can be one-ground, two-grounds, ladder, mix or clear. Use one of the words it allows.',
    ],
    [
      { papers: [{ ...small.papers[0], reading: { kind: 'spectrum', values: [1] } }] },
      'the reading of the paper “White”, its spectrum: There must be exactly 36 here. Add what is missing, or take out what is too much.',
    ],
    [
      { papers: [{ ...small.papers[0], count: 1.5 }] },
      'the number of sheets of the paper “White”: This should be a whole number, not “1.5”. Correct it; docs/job-schema.json lists every field.',
    ],
    [
      { forms: [{ id: 'Pebble No. 1', name: 'Pebble' }] },
      'the short name of the form “Pebble”: A short name is made of small letters, digits, points, - and _, and begins with a letter or a digit. Correct it in the job.',
    ],
    [
      { forms: [{ id: 'p', name: 'Pebble', drawing: '../p.svg' }] },
      'the drawing of the form “Pebble”: This must be a file inside the job’s folder. Correct it in the job.',
    ],
  ])('what is expected is said, with where it is: %j', (wrong, says) => {
    expect(refusalOf(() => parseJob({ ...small, ...wrong })).replaceAll('\u00a0', ' ')).toBe(says);
    for (const p of refusedBy(() => parseJob({ ...small, ...wrong }))) {
      expect(tellProblem(p, { language: 'de', units: 'mm' })).not.toMatch(/undefined|\[object|job\./);
    }
  });

  test('a job of a newer Laydown is refused by name, not misread', () => {
    expect(codesOf(() => parseJob({ ...small, schemaVersion: 99 }))).toEqual(['job-newer']);
    expect(codesOf(() => parseJob({ title: 'no version' }))).toEqual(['job-without-version']);
  });

  test('migrations run in order and keep what they do not know', () => {
    const chain = [
      { from: 1, step: (d: Record<string, unknown>) => ({ ...d, one: true }) },
      { from: 2, step: (d: Record<string, unknown>) => ({ ...d, two: d['one'] }) },
    ];
    expect(migrate({ schemaVersion: 1, extra: 5 }, 3, chain)).toEqual({ schemaVersion: 3, extra: 5, one: true, two: true });
    expect(codesOf(() => migrate({ schemaVersion: 1 }, 3, chain.slice(1)))).toEqual(['job-version-gap']);
  });

  test('text that is cut short is refused with advice', () => {
    expect(codesOf(() => parseJobText('{"schemaVersion": 1, "title": "Tid'))).toEqual(['job-not-json']);
    expect(codesOf(() => parseJobText('[1,2]'))).toEqual(['job-not-an-object']);
    expect(refusalOf(() => parseJobText('{\n"schemaVersion": 1,\n"title" "Tid"}', 'tide/job.json'))).toContain('tide/job.json, line 3: ');
  });

  test('a layer naming no ink, a missing drawing, an image larger than the sheet: all in one list', () => {
    const problems = checkJob(
      bundleOf({
        ...small,
        image: { widthMm: 400, heightMm: 80 },
        forms: [{ id: 'pebble', name: 'Pebble', drawing: 'lost.svg' }],
        layers: [
          { ...small.layers[0], ink: 'nowhere' },
          { ...small.layers[0], cut: 'gone' },
        ],
      }),
    );
    const codes = problems.map((p) => p.code);
    expect(problems.map((p) => tellProblem(p).replaceAll('\u00a0', ' '))).toEqual(
      expect.arrayContaining([
        'the ink of run 1 (One): The layer “One” is printed with “nowhere”, an ink the job doesn’t have. Use one of these: sand; or leave it open.',
        'the drawing of the form “Pebble”: The file “lost.svg” is not in the job’s folder. Put the file back there, or choose another.',
        'the short name of run 2 (One): “one” is already the short name of run 1 (One). Give each a short name of its own.',
        'the paper “White”: The image (400 × 80 mm) hangs 125.0 mm over the edge of “White” (150 × 120 mm). Make the image smaller, move it on the sheet, or take a larger sheet.',
      ]),
    );
    expect(codes).toEqual(expect.arrayContaining(['no-such-ink', 'attachment-missing', 'image-off-sheet', 'no-such-cut', 'name-twice']));
  });

  test('a mix that contains itself is found', () => {
    const mix = (id: string, of: string) => ({ id, name: id, from: 'mix', parts: [{ ink: of, parts: 1 }] });
    expect(
      checkJob(bundleOf({ ...small, inks: [...small.inks, mix('a', 'b'), mix('b', 'a')] })).filter((p) => p.code === 'mix-of-itself'),
    ).toHaveLength(2);
  });

  test('an attachment may not climb out of the job folder', () => {
    for (const drawing of ['../../etc/passwd', '/etc/passwd', 'a/../../b.svg', 'c:\\x.svg']) {
      expect(codesOf(() => parseJob({ ...small, forms: [{ id: 'f', name: 'F', drawing }] }))).toEqual(['job-invalid-format']);
    }
    expect(parseJob({ ...small, forms: [{ id: 'f', name: 'F', drawing: 'drawings/kelp..old.svg' }] }).forms[0].drawing).toBe(
      'drawings/kelp..old.svg',
    );
  });
});

test('docs/job-schema.json is what the schema says (npm run schema)', () => {
  expect(readFileSync(new URL('../../../docs/job-schema.json', import.meta.url), 'utf8')).toBe(jobJsonSchema());
});

describe('a job as a file', () => {
  test('folder → .laydown → folder loses nothing, and the same job gives the same bytes', () => {
    const bundle = bundleOf(small, new Map([['drawings/kelp.svg', strToU8('<svg/>')]]));
    const bytes = writeJobFile(bundle);
    expect(writeJobFile(bundle)).toEqual(bytes);
    const back = readJobFile(bytes);
    expect(back.job).toEqual(bundle.job);
    expect([...back.attachments]).toEqual([...bundle.attachments]);
    expect(readJob(writeJob(back)).job).toEqual(bundle.job);
  });

  test('a .laydown cut short or of another kind is refused', () => {
    const bytes = writeJobFile(bundleOf(small));
    expect(codesOf(() => readJobFile(bytes.slice(0, bytes.length - 30)))).toEqual(['job-file-damaged']);
    expect(codesOf(() => readJobFile(strToU8('not a zip')))).toEqual(['not-a-job-file']);
    expect(codesOf(() => readJobFile(zipSync({ 'other.txt': strToU8('x') })))).toEqual(['no-job-file']);
  });

  test('files that would climb out of the folder are left in the zip', () => {
    const bytes = zipSync({ 'job.json': strToU8(JSON.stringify(small)), '../evil.txt': strToU8('x') });
    expect([...readJobFile(bytes).attachments.keys()]).toEqual([]);
  });
});
