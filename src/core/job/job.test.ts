import { strToU8, zipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
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
        expect(p.message).not.toMatch(/invalid input|expected|received/i);
        expect(p.advice).not.toBe('');
      }
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
  });

  test('a layer naming no ink, a missing drawing, an image larger than the sheet: all in one list', () => {
    const codes = checkJob(
      bundleOf({
        ...small,
        image: { widthMm: 400, heightMm: 80 },
        forms: [{ id: 'pebble', name: 'Pebble', drawing: 'lost.svg' }],
        layers: [
          { ...small.layers[0], ink: 'nowhere' },
          { ...small.layers[0], cut: 'gone' },
        ],
      }),
    ).map((p) => p.code);
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
    expect(codesOf(() => readJobFile(bytes.slice(0, bytes.length - 30)))).toEqual(['not-a-job-file']);
    expect(codesOf(() => readJobFile(strToU8('not a zip')))).toEqual(['not-a-job-file']);
    expect(codesOf(() => readJobFile(zipSync({ 'other.txt': strToU8('x') })))).toEqual(['no-job-file']);
  });

  test('files that would climb out of the folder are left in the zip', () => {
    const bytes = zipSync({ 'job.json': strToU8(JSON.stringify(small)), '../evil.txt': strToU8('x') });
    expect([...readJobFile(bytes).attachments.keys()]).toEqual([]);
  });
});
