import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { renameSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { inEnglish, refusedBy } from '../../../test/said.ts';
import { readJobAt } from './folder.ts';
import { checkFree, writeWhole, type Disk } from './write-folder.ts';
import { writeNew } from './write-file.ts';

let base: string;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'laydown-'));
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

const files = ['packet.pdf', 'proofs/a.png', 'cut/b.svg'].map((path) => ({ path, bytes: new TextEncoder().encode(path) }));
const fresh = { kind: 'packet', replace: false } as const,
  again = { kind: 'packet', replace: true } as const;
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
    writeWhole(out, files, fresh);
    expect(readFileSync(join(out, 'proofs/a.png'), 'utf8')).toBe('proofs/a.png');
    expect(refusal(() => writeWhole(out, files, fresh))).toMatch(/^packet-exists/);
    writeWhole(out, files.slice(0, 1), again);
    expect(existsSync(join(out, 'cut/b.svg'))).toBe(false);
    // What gave way lies beside it under the date, until the next one.
    const [, before, ...more] = readdirSync(base);
    expect([before, more]).toEqual([expect.stringMatching(/^out\.before-\d{4}-\d\d-\d\d-\d{6}$/), []]);
    expect(readFileSync(join(base, before, 'cut/b.svg'), 'utf8')).toBe('cut/b.svg');
    writeWhole(out, files, again);
    expect(readdirSync(base).length).toBe(2);
  });

  test('a folder with anybody else’s files is never replaced', () => {
    const out = join(base, 'photos');
    mkdirSync(out);
    writeFileSync(join(out, 'family.jpg'), 'x');
    expect(refusal(() => writeWhole(out, files, again))).toMatch(/^folder-in-use.*family\.jpg/);
    expect(readdirSync(out)).toEqual(['family.jpg']);
  });

  test.each([
    ['ENOSPC', 'the disk is full'],
    ['EROFS', 'the disk can only be read'],
    ['EACCES', 'you may not write or read here'],
    ['EIO', 'the system answers “EIO”'],
  ])('%s: it says so, and leaves the earlier packet as it was', (code, words) => {
    const out = join(base, 'out');
    writeWhole(out, files.slice(0, 1), fresh);
    const said = refusal(() => writeWhole(out, files, again, failingDisk(code, 2)));
    expect(said).toMatch(/^cannot-write/);
    expect(said).toContain(words);
    expect(readdirSync(base)).toEqual(['out']);
    expect(readdirSync(out).sort()).toEqual(['packet-files.txt', 'packet.pdf']);
  });

  test('where a file stands in the way it says so', () => {
    writeFileSync(join(base, 'file'), 'x');
    expect(refusal(() => writeWhole(join(base, 'file', 'out'), files, fresh))).toMatch(/^cannot-write.*a file stands/);
  });

  test('when the last step fails the earlier packet is back in its place', () => {
    const out = join(base, 'out');
    writeWhole(out, files.slice(0, 1), fresh);
    let renames = 0;
    const disk: Disk = {
      writeFileSync,
      renameSync(from, to) {
        if (++renames === 2) throw Object.assign(new Error('EIO'), { code: 'EIO' });
        renameSync(from, to);
      },
    };
    expect(refusal(() => writeWhole(out, files, again, disk))).toMatch(/^cannot-write/);
    expect(readFileSync(join(out, 'packet.pdf'), 'utf8')).toBe('packet.pdf');
    expect(readdirSync(base)).toEqual(['out']);
  });
});

describe('what is the maker’s stays the maker’s', () => {
  const out = (): string => join(base, 'out');
  const written = (): string => (writeWhole(out(), files, fresh), out());

  test('a record that was filled in, a drawing put beside, an empty folder: refused, and named', () => {
    writeFileSync(join(written(), 'packet.pdf'), 'with a pencil');
    expect(refusal(() => writeWhole(out(), files, again))).toMatch(/^files-changed.*packet\.pdf/);
    rmSync(out(), { recursive: true });
    mkdirSync(join(written(), 'notes'));
    expect(refusal(() => writeWhole(out(), files, again))).toMatch(/^folder-in-use.*notes\//);
    rmSync(join(out(), 'notes'), { recursive: true });
    symlinkSync(join(base, 'elsewhere'), join(out(), 'more'));
    expect(refusal(() => writeWhole(out(), files, again))).toMatch(/^folder-in-use.*more/);
  });

  test('a packet never goes over a job, nor into the job’s own folder; a job only over a job as it was made', () => {
    const job = [{ path: 'job.json', bytes: new TextEncoder().encode('{}') }];
    writeWhole(out(), job, { kind: 'job', replace: false });
    expect(refusal(() => writeWhole(out(), files, again))).toMatch(/^folder-has-job/);
    expect(refusal(() => checkFree(join(out(), 'packet'), { ...fresh, jobFolder: out() }))).toMatch(/^into-the-job/);
    expect(refusal(() => checkFree(out(), { ...fresh, jobFolder: out() }))).toMatch(/^into-the-job/);
    writeWhole(out(), job, { kind: 'job', replace: true });
    writeFileSync(join(out(), 'job.json'), '{ }');
    expect(refusal(() => writeWhole(out(), job, { kind: 'job', replace: true }))).toMatch(/^files-changed.*job\.json/);
    const packet = join(base, 'packet');
    writeWhole(packet, files, fresh);
    expect(refusal(() => writeWhole(packet, job, { kind: 'job', replace: true }))).toMatch(/^folder-in-use/);
  });

  test('links are not followed, and a file or folder in the way gets a sentence', () => {
    mkdirSync(join(base, 'elsewhere'));
    symlinkSync(join(base, 'elsewhere'), out());
    expect(refusal(() => writeWhole(out(), files, again))).toMatch(/^link-in-the-way/);
    symlinkSync(join(base, 'elsewhere', 'shelf.json'), join(base, 'shelf.json'));
    expect(refusal(() => writeNew(join(base, 'shelf.json'), true, () => 'x'))).toMatch(/^link-in-the-way/);
    expect(refusal(() => writeNew(join(base, 'elsewhere'), true, () => 'x'))).toMatch(/^folder-in-the-way/);
    expect(refusal(() => writeNew(join(base, 'nowhere', 'a.svg'), true, () => 'x'))).toMatch(/^cannot-write/);
    writeFileSync(join(base, 'file'), 'x');
    expect(refusal(() => checkFree(join(base, 'file'), again))).toMatch(/^file-in-the-way/);
    expect(readdirSync(join(base, 'elsewhere'))).toEqual([]);
  });

  test('what a kill left between two steps is put right at the next start', () => {
    // No process has a number as high as this.
    const gone = 2 ** 30;
    renameSync(written(), `${out()}.old-${gone}`);
    mkdirSync(`${out()}.partial-${gone}`);
    checkFree(out(), again);
    expect(readdirSync(base)).toEqual(['out']);
    expect(readFileSync(join(out(), 'packet.pdf'), 'utf8')).toBe('packet.pdf');
    writeFileSync(join(base, `.shelf.json.laydown-${gone}-0123abcd`), 'half');
    writeNew(join(base, 'shelf.json'), false, () => 'whole');
    expect(readdirSync(base)).toEqual(['out', 'shelf.json']);
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
