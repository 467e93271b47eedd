import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { ProblemError } from '../../problem.ts';
import { seeded } from '../../random.ts';
import { parseJob, readJob, readJobFile, writeJob, writeJobFile } from '../index.ts';
import { manifestName } from './manifest.ts';

const job = parseJob({ schemaVersion: 1, title: 'Harbour', image: { widthMm: 200, heightMm: 100 }, later: { kept: [1, 2] } });
const drawing = strToU8(`<svg xmlns="http://www.w3.org/2000/svg">${'<path d="M0 0h9v9z"/>'.repeat(60)}</svg>`);
const random = seeded(11);
const picture = Uint8Array.from({ length: 3000 }, () => random.below(256));
const bundle = {
  job,
  attachments: new Map([
    ['boat.svg', drawing],
    ['quay.png', picture],
  ]),
};
const whole = writeJobFile(bundle);

/** What reading gives: the same job, or the code of what is wrong. */
function outcome(bytes: Uint8Array): string {
  try {
    const read = readJobFile(bytes, 'h.laydown');
    const same = [...writeJob(bundle)].every(([path, data]) => Buffer.from(writeJob(read).get(path) ?? []).equals(Buffer.from(data)));
    return same && read.attachments.size === 2 ? 'same' : 'read as something else';
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0].code;
    throw error;
  }
}

test('2,000 files with one bit flipped: the same job or a refusal, never something else', () => {
  const found = new Map<string, number>();
  for (let i = 0; i < 2000; i++) {
    const bytes = whole.slice();
    bytes[random.below(bytes.length)] ^= 1 << random.below(8);
    const what = outcome(bytes);
    found.set(what, (found.get(what) ?? 0) + 1);
  }
  expect(
    [...found.keys()]
      .sort()
      .filter(
        (k) => !['same', 'job-file-damaged', 'job-file-too-large', 'not-a-job-file', 'job-file-locked', 'job-file-changed'].includes(k),
      ),
  ).toEqual([]);
  // Only what says nothing of the job (times, who wrote it) may be flipped unseen.
  expect(found.get('same') ?? 0).toBeLessThan(300);
});

test('cut anywhere, it is refused', () => {
  for (let length = 0; length < whole.length; length += 37) expect(outcome(whole.slice(0, length))).not.toBe('same');
});

test('the list inside tells what another program changed or took away; a folder carries no list', () => {
  const files = unzipSync(whole);
  expect(Object.keys(JSON.parse(strFromU8(files[manifestName])).sha256)).toEqual(['boat.svg', 'job.json', 'quay.png']);
  expect(outcome(zipSync({ ...files, 'boat.svg': strToU8('<svg/>') }))).toBe('job-file-changed');
  const without = Object.fromEntries(Object.entries(files).filter(([name]) => name !== 'quay.png'));
  expect(outcome(zipSync(without))).toBe('job-file-changed');
  expect(outcome(zipSync(files))).toBe('same');
  expect([...readJob(new Map(Object.entries({ ...files, 'boat.svg': strToU8('<svg/>') }))).attachments.keys()].sort()).toEqual([
    'boat.svg',
    'quay.png',
  ]);
});

test('locked, swelling and overlapping files are told for what they are', () => {
  const locked = zipSync({ 'job.json': strToU8('{}') });
  const flag = [6, locked.length - 22 - new DataView(locked.buffer).getUint32(locked.length - 10, true) + 8];
  for (const at of flag) locked[at] |= 1;
  expect(outcome(locked)).toBe('job-file-locked');
  const swelling = zipSync({ 'job.json': new Uint8Array(5000) });
  const view = new DataView(swelling.buffer);
  const list = view.getUint32(swelling.length - 6, true);
  view.setUint32(22, 900_000_000, true);
  view.setUint32(list + 24, 900_000_000, true);
  expect(outcome(swelling)).toBe('job-file-damaged');
});

test('a byte order mark before the job, or UTF-16, is read', () => {
  const text = strFromU8(writeJob(bundle).get('job.json')!);
  for (const bytes of [strToU8(`\ufeff${text}`), new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'))])
    expect(readJob(new Map([['job.json', bytes]])).job).toEqual(job);
});
