import { showPage } from './files/show-page.ts';
import { fileVoice } from './voice.ts';
import { readFileSync } from 'node:fs';
import { convertIndexedToRgb, decode } from 'fast-png';
import { beforeAll, expect, test } from 'vitest';
import type { JobBundle } from '../core/job/index.ts';
import { plan, type Plan } from '../core/plan/index.ts';
import { ProblemError } from '../core/problem.ts';
import { Cancelled } from '../core/task.ts';
import { inEnglish } from '../../test/said.ts';
import { languages } from '../words/index.ts';
import { makePacket, type PacketFile, type PacketWishes } from './index.ts';
import { openBook } from './pdf/book.ts';
import { fitted, missingLetters, printable, textWidthMm, wrap } from './pdf/type.ts';
import { hardJob, smallJob } from './packet-jobs.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
const fonts = { regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') };
const wishes: PacketWishes = { fonts, printer: { page: 'a4', marginMm: 12 } };
const textOf = (files: readonly PacketFile[], path: string): string => new TextDecoder().decode(files.find((f) => f.path === path)!.bytes);

let bundle: JobBundle;
let small: Plan;
let files: PacketFile[];
beforeAll(async () => {
  bundle = smallJob();
  small = plan(bundle);
  files = await makePacket(bundle, small, wishes);
});

test('a packet holds the book, a proof after each run, a cut file for each stencil and the tables', () => {
  expect(files.map((f) => f.path)).toEqual([
    'packet.pdf',
    'hand-out.pdf',
    'proof-strip.pdf',
    'light-and-grounds.pdf',
    'proofs/white-after-run-1.png',
    'proofs/white.png',
    'show.html',
    'cut/ring.svg',
    'cut/ring.dxf',
    'cut/block.svg',
    'cut/block.dxf',
    'overlaps.csv',
    'record.csv',
    'plan.json',
    'made-from.txt',
  ]);
  for (const file of files) {
    expect(file.bytes.length).toBeGreaterThan(file.path === 'made-from.txt' ? 8 : 50);
    expect(inEnglish(file.what)).not.toMatch(/^$|^packet\./);
  }
});

test('the page to show needs no other file, runs nothing, and takes no name for anything but words', async () => {
  const named = smallJob({ title: '<script>alert(1)</script> & "Tide"', maker: "<img src=x onerror='1'>" });
  const page = showPage(plan(named), fileVoice('de'));
  expect(page.match(/<img /g)).toHaveLength(5);
  expect(page.match(/src="data:image\/png;base64,[\w+/]+=*"/g)).toHaveLength(5);
  expect(page).not.toMatch(/<script|onerror='|https?:|url\(/);
  expect(page).toContain('&#60;script&#62;');
  expect(page).toContain('Lauf für Lauf');
  expect(page).toContain('In anderem Licht');
  const shown = decode(Buffer.from(/base64,([\w+/=]+)/.exec(page)![1], 'base64'));
  expect(shown.width / shown.height).toBeCloseTo(80 / 60, 1);
});

test('the same plan gives the same bytes, file by file', async () => {
  const again = await makePacket(smallJob(), plan(smallJob()), wishes);
  for (const [i, file] of files.entries()) expect(Buffer.compare(again[i].bytes, file.bytes), file.path).toBe(0);
});

test('the proof is the codes in the paper’s palette, at the density it was made for', () => {
  const proof = decode(files.find((f) => f.path === 'proofs/white.png')!.bytes);
  expect([proof.width, proof.height]).toEqual([small.codes.width, small.codes.height]);
  expect(proof.resolution!.x).toBe(Math.round(1000 / small.codes.mmPerPx));
  const rgb = convertIndexedToRgb(proof);
  const wrong = [...small.codes.data].filter((code, i) => {
    const [r, g, b] = rgb.subarray(i * 3);
    return ((0xff << 24) | (b << 16) | (g << 8) | r) >>> 0 !== small.papers[0].palette[code];
  });
  expect(wrong.length).toBe(0);
});

test('after run 1 the second ink is nowhere yet', () => {
  const first = decode(files.find((f) => f.path === 'proofs/white-after-run-1.png')!.bytes);
  const colours = new Set(first.palette!.map((c) => c.join()));
  expect(colours.size).toBe(2);
});

test('a name can’t run as a formula in a spreadsheet', async () => {
  const odd = smallJob({ layers: [{ id: 'ring', name: '=HYPERLINK("x")', cut: 'ring', side: 'window', ink: 'blue', strength: 1 }] });
  const made = await makePacket(odd, plan(odd), wishes);
  expect(textOf(made, 'record.csv')).not.toMatch(/(^|,)"?=/m);
  expect(textOf(made, 'cut/ring.svg')).toContain('=HYPERLINK(&quot;x&quot;)');
});

test('the plan is written out whole, rasters by their length', () => {
  const written = JSON.parse(textOf(files, 'plan.json')) as {
    codes: { data: unknown };
    papers: { overlaps: unknown[] }[];
    inks: { k: number[] }[];
  };
  expect(written.codes.data).toEqual({ kind: 'Uint8Array', values: small.codes.data.length });
  expect(written.papers[0].overlaps.length).toBe(small.papers[0].overlaps.length);
  expect(written.inks[0].k.length).toBe(36);
});

test('every margin the printer may have gives pages within it, or a clear word', async () => {
  for (const marginMm of [0, 30]) {
    for (const page of ['a4', 'letter'] as const) await makePacket(bundle, small, { fonts, printer: { page, marginMm } });
  }
  for (const marginMm of [-1, 31, Number.NaN]) {
    await expect(makePacket(bundle, small, { fonts, printer: { page: 'a4', marginMm } })).rejects.toThrow(ProblemError);
  }
}, 120_000);

test('eight layers, endless names, letters the fonts lack, 360 sheets and inches still make a packet within its margins, in every language', async () => {
  const hard = hardJob();
  const planned = plan(hard);
  for (const { id: language } of languages) {
    const made = await makePacket(hard, planned, { fonts, printer: { page: 'letter', marginMm: 12 }, language });
    expect(made[0].path).toBe('packet.pdf');
    expect(textOf(made, 'record.csv').trim().split('\r\n').length).toBe(361);
  }
}, 240_000);

test('letters that the fonts lack are told before the work starts', async () => {
  const faces = (await openBook(fonts, 210, 297, 'en')).faces;
  expect(missingLetters(faces, ['Тёплая Ωδή Äß', '海の本', '海'])).toEqual(['海', 'の', '本']);
  expect(printable(faces, 'a海\u0007b')).toBe('a? b');
});

test('text never runs past its width, however long its words', async () => {
  const { faces } = await openBook(fonts, 210, 297, 'en');
  const style = { size: 11 };
  const lines = wrap(faces, `short ${'x'.repeat(300)} and a good many more words`, 40, style);
  for (const line of lines) expect(textWidthMm(faces, line, style)).toBeLessThanOrEqual(40);
  expect(lines.join('').replace(/ /g, '')).toContain('x'.repeat(300));
  const cut = fitted(faces, 'A title that is far too long for its place', 30, style);
  expect(textWidthMm(faces, cut.text, cut.style)).toBeLessThanOrEqual(30);
  expect(cut.text.endsWith('…')).toBe(true);
});

test('a job with nothing decided yet makes a packet too', async () => {
  const empty = smallJob({ layers: [], papers: [], cuts: [], forms: [], inks: [] });
  const made = await makePacket(empty, plan(empty), wishes);
  expect(made.map((f) => f.path)).toContain('packet.pdf');
});

test('the printmaker can stop it, and hears how far it is', async () => {
  const shares: number[] = [];
  await makePacket(bundle, small, { ...wishes, task: { report: (share) => shares.push(share), pause: async () => {} } });
  expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  expect(shares.at(-1)).toBe(1);
  await expect(
    makePacket(bundle, small, {
      ...wishes,
      task: {
        report() {},
        pause: async () => {
          throw new Cancelled();
        },
      },
    }),
  ).rejects.toThrow(Cancelled);
});

test('work can be stopped after every page', async () => {
  let pauses = 0;
  const made = await makePacket(bundle, small, {
    ...wishes,
    task: {
      report() {},
      pause: async () => {
        pauses++;
      },
    },
  });
  expect(pauses).toBeGreaterThan(Number(made[0].what.values!['pages']));
});

test('parts, two files, black ink and large type: only what was asked for, within the margins', async () => {
  const paths = async (more: Partial<PacketWishes>): Promise<string[]> =>
    (await makePacket(bundle, small, { ...wishes, ...more })).map((f) => f.path).filter((path) => !path.includes('/'));
  expect(await paths({ only: ['mix', 'print'] })).toEqual(['packet.pdf', 'plan.json', 'made-from.txt']);
  expect((await paths({ split: true })).slice(0, 3)).toEqual(['table.pdf', 'press.pdf', 'hand-out.pdf']);
  const pages: string[] = [];
  await makePacket(bundle, small, { ...wishes, only: ['mix'], black: true, large: true, onPage: ({ svg }) => pages.push(svg) });
  expect(pages.length).toBeGreaterThan(0);
  for (const svg of pages)
    for (const [, hex] of svg.matchAll(/(?:fill|stroke)="#([0-9a-f]{6})"/g)) expect(new Set(hex.match(/../g)).size, hex).toBe(1);
  for (const page of ['a3', 'tabloid'] as const) await makePacket(bundle, small, { ...wishes, printer: { page, marginMm: 12 } });
}, 60_000);
