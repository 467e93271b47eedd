import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { renameSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { inEnglish, refusedBy } from '../../test/said.ts';
import { readJobAt, writeWhole, type Disk } from './folder.ts';

let base: string;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-'));
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

const files = ['packet.pdf', 'proofs/a.png', 'cut/b.svg'].map((path) => ({ path, bytes: new TextEncoder().encode(path) }));
const refusal = (work: () => unknown): string => {
  const [{ code, message }] = refusedBy(work);
  return `${code}: ${inEnglish(message)}`;
};
const failingDisk = (code: string, atWrite: number): Disk => {
  let writes = 0;
  return {
    writeFileSync(path, bytes) {
      if (++writes === atWrite) throw Object.assign(new Error(code), { code });
      writeFileSync(path, bytes);
    },
    renameSync,
  };
};

describe('a packet is written whole or not at all', () => {
  test('into a new folder, and again only when told to replace', () => {
    const out = join(base, 'out');
    writeWhole(out, files, false);
    expect(readFileSync(join(out, 'proofs/a.png'), 'utf8')).toBe('proofs/a.png');
    expect(refusal(() => writeWhole(out, files, false))).toMatch(/^packet-exists/);
    writeWhole(out, files.slice(0, 1), true);
    expect(existsSync(join(out, 'cut/b.svg'))).toBe(false);
    expect(readdirSync(base)).toEqual(['out']);
  });

  test('a folder with anybody else’s files is never replaced', () => {
    const out = join(base, 'photos');
    mkdirSync(out);
    writeFileSync(join(out, 'family.jpg'), 'x');
    expect(refusal(() => writeWhole(out, files, true))).toMatch(/^folder-in-use.*family\.jpg/);
    expect(readdirSync(out)).toEqual(['family.jpg']);
  });

  test.each([
    ['ENOSPC', 'the disk is full'],
    ['EROFS', 'the disk can only be read'],
    ['EACCES', 'you may not write or read here'],
    ['EIO', 'the system answers “EIO”'],
  ])('%s: it says so, and leaves the earlier packet as it was', (code, words) => {
    const out = join(base, 'out');
    writeWhole(out, files.slice(0, 1), false);
    const said = refusal(() => writeWhole(out, files, true, failingDisk(code, 2)));
    expect(said).toMatch(/^cannot-write/);
    expect(said).toContain(words);
    expect(readdirSync(base)).toEqual(['out']);
    expect(readdirSync(out).sort()).toEqual(['packet-files.txt', 'packet.pdf']);
  });

  test('where a file stands in the way it says so', () => {
    writeFileSync(join(base, 'file'), 'x');
    expect(refusal(() => writeWhole(join(base, 'file', 'out'), files, false))).toMatch(/^cannot-write.*a file stands/);
  });

  test('when the last step fails the earlier packet is back in its place', () => {
    const out = join(base, 'out');
    writeWhole(out, files.slice(0, 1), false);
    let renames = 0;
    const disk: Disk = {
      writeFileSync,
      renameSync(from, to) {
        if (++renames === 2) throw Object.assign(new Error('EIO'), { code: 'EIO' });
        renameSync(from, to);
      },
    };
    expect(refusal(() => writeWhole(out, files, true, disk))).toMatch(/^cannot-write/);
    expect(readFileSync(join(out, 'packet.pdf'), 'utf8')).toBe('packet.pdf');
    expect(readdirSync(base)).toEqual(['out']);
  });
});

describe('reading a job', () => {
  test('what is not there, and a folder that is no job', () => {
    expect(refusal(() => readJobAt(join(base, 'nowhere')))).toMatch(/^no-such-job/);
    expect(refusal(() => readJobAt(base))).toMatch(/^no-job-file/);
  });

  test('hidden files stay out of it', () => {
    writeFileSync(join(base, 'job.json'), JSON.stringify({ schemaVersion: 1, title: 'x', image: { widthMm: 10, heightMm: 10 } }));
    writeFileSync(join(base, '.secret'), 'x');
    mkdirSync(join(base, 'drawings'));
    writeFileSync(join(base, 'drawings/kelp.svg'), '<svg/>');
    expect([...readJobAt(base).attachments.keys()]).toEqual(['drawings/kelp.svg']);
    expect([...readJobAt(join(base, 'job.json')).attachments.keys()]).toEqual(['drawings/kelp.svg']);
  });
});
