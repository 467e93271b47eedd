import type { JobBundle } from '../../../core/job/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { length, lengths, mass, name as asName, time, type Quantity } from '../../../words/index.ts';
import type { LengthUnits } from '../../../core/units/index.ts';
import type { Book } from '../../pdf/book.ts';
import type { Page } from '../../pdf/page.ts';
import { pictureOf, type Picture } from '../../pdf/picture.ts';
import type { TextStyle } from '../../pdf/type.ts';
import { smallProof } from '../../proof.ts';
import { voiceOf, type Voice } from '../../voice.ts';

export type PlannedLayer = Plan['layers'][number];
export type PlannedPaper = Plan['papers'][number];

/** Pages in the making: rests after each, so that work can be stopped and the screen stays alive. */
export type Pages = Generator<undefined, void>;

/** Everything that a page is made from, and the voice it speaks with. */
export interface Setting extends Voice {
  readonly book: Book;
  readonly bundle: JobBundle;
  readonly plan: Plan;
  readonly units: LengthUnits;
  /** What the printer cannot reach, all round. */
  readonly marginMm: number;
  /** A date to print, or blank. */
  readonly date: string;
  /** What the job was when this was made: `fingerprintOf`. */
  readonly mark: string;
  /** The sheet after so many runs, as wide on the page as said: no finer than a printer shows. */
  proof(paper: PlannedPaper, run: number, widthMm: number): Picture;
  /** Pages that carry nothing but a drawing: only a page number at their foot. */
  readonly bare: Set<Page>;
  /** Room left under what is to be weighed up before the start. */
  under: { readonly frame: Frame; readonly y: number } | null;
  /** Page number at which each step of the work begins, filled while pages are made. */
  readonly steps: { step: number; title: string; what: string; firstPage: number }[];
}

/** What a drawing at true size is printed with. */
export type TrueSizeSetting = Pick<Setting, 'book' | 'plan' | 'units' | keyof Voice | 'marginMm' | 'bare' | 'mark'>;

/** Five sizes and no more: read at arm's length, at the press, in bad light. */
export const type = {
  huge: { size: 64, weight: 'bold' },
  large: { size: 24, weight: 'bold' },
  head: { size: 14, weight: 'bold', leading: 1.25 },
  strong: { size: 11, weight: 'bold' },
  body: { size: 11, leading: 1.4 },
  small: { size: 9, leading: 1.35 },
  smallStrong: { size: 9, weight: 'bold' },
} as const satisfies Record<string, TextStyle>;

/** Where the words of a page stand. */
export interface Frame {
  readonly page: Page;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

/** The same before a page is begun: to see what will fit. */
export function roomOf({ book, marginMm }: Pick<Setting, 'book' | 'marginMm'>): Omit<Frame, 'page'> {
  const [wide, high, margin] = [book.widthMm, book.heightMm, marginMm].map((mm) => mm / book.scale);
  const left = margin + spineMm + spineGapMm,
    right = wide - margin - 2;
  return { left, right, width: right - left, top: margin + 21, bottom: high - margin - 9 };
}

/** Width of the spine at the left edge of each page, and the gap to the words. */
const spineMm = 9;
const spineGapMm = 7;

/**
 * A page with its head, foot and spine. The spine is the laydown itself: one box a run, first run at the bottom, black
 * for the runs this page is about; fanning the packet finds a run.
 */
export function startPage(
  setting: Setting,
  head: { readonly step?: number; readonly title: string; readonly side?: string; readonly runs?: readonly number[] },
): Frame {
  const { book, plan } = setting;
  const page = book.addPage();
  const marginMm = setting.marginMm / page.scale;
  const left = marginMm + spineMm + spineGapMm;
  const right = page.widthMm - marginMm - 2;
  const bottom = page.heightMm - marginMm - 9;
  const baseline = marginMm + 9;
  page.floorMm = bottom + 1;
  if (head.step !== undefined) page.text(marginMm, baseline, String(head.step), type.large);
  const sideWidth = head.side ? Math.min(70, (right - left) * 0.4) : 0;
  page.fit(left, baseline, right - left - sideWidth - 4, head.title, type.large, 14);
  if (head.side) page.fit(right, baseline, sideWidth, head.side, { ...type.body, align: 'right' });
  page.rect(left, baseline + 4, right - left, 0.8, { fill: '#000000' });
  drawSpine(
    page,
    marginMm,
    bottom,
    plan.layers.map((l) => l.run),
    head.runs ?? [],
  );
  return { page, left, right, width: right - left, top: baseline + 12, bottom };
}

/** Feet are written last, when the number of pages is known. */
export function writeFeet(setting: Setting): void {
  const { book, plan } = setting;
  book.pages.forEach((page, i) => {
    const marginMm = setting.marginMm / page.scale;
    const y = page.heightMm - marginMm - 1.5;
    const right = page.widthMm - marginMm - 2;
    const left = marginMm + spineMm + spineGapMm;
    if (!setting.bare.has(page)) page.fit(left, y, (right - left) * 0.5, plan.job.title, { size: 8 });
    page.text(right, y, setting.say('packet.pageOfJob', { mark: asName(setting.mark), page: i + 1, pages: book.pages.length }), {
      size: 8,
      align: 'right',
    });
  });
}

/** The same for a file of drawings alone. */
export function writeMarks(setting: TrueSizeSetting): void {
  const { pages } = setting.book;
  pages.forEach((page, i) => {
    const y = page.heightMm - setting.marginMm - 1.5;
    page.text(
      page.widthMm - setting.marginMm - 2,
      y,
      setting.say('packet.pageOfJob', { mark: asName(setting.mark), page: i + 1, pages: pages.length }),
      { size: 8, align: 'right' },
    );
  });
}

function drawSpine(page: Page, x: number, bottom: number, runs: readonly number[], black: readonly number[]): void {
  const height = 13,
    step = 14.5;
  runs.forEach((run, i) => {
    const y = bottom - height - i * step;
    const on = black.includes(run);
    page.rect(x + 0.15, y, spineMm - 0.3, height, on ? { fill: '#000000' } : { stroke: '#000000', lineMm: 0.3 });
    page.text(x + spineMm / 2, y + height / 2 + 2, String(run), {
      size: 15,
      weight: on ? 'bold' : 'regular',
      align: 'centre',
      colour: on ? '#ffffff' : '#000000',
    });
  });
}

/** Begins a step of the work: it gets a line in the contents. */
export function beginStep(setting: Setting, step: number, title: string, what: string): void {
  setting.steps.push({ step, title, what, firstPage: setting.book.pages.length + 1 });
}

export function newSetting(
  parts: Omit<Setting, 'proof' | 'steps' | 'under' | 'units' | 'bare' | keyof Voice> & { readonly language: string },
): Setting {
  const { plan } = parts;
  const made = new Map<string, Picture>();
  return {
    ...parts,
    ...voiceOf({ language: parts.language, units: plan.job.units }),
    units: plan.job.units,
    steps: [],
    under: null,
    bare: new Set(),
    proof(paper, run, widthMm) {
      // About 200 pixels an inch of the page: finer than an office printer shows a flat colour's edge.
      const every = Math.max(1, Math.floor(((plan.codes.width / widthMm) * 25.4) / 200));
      const key = `${paper.id} ${run} ${every}`;
      const known = made.get(key);
      if (known) return known;
      const picture = pictureOf(smallProof(plan, paper, run, every));
      made.set(key, picture);
      return picture;
    },
  };
}

export const lengthIn = (voice: Pick<Voice, 'show'>, mm: number, digits?: number): string => voice.show(length(mm, digits));
export const sizeIn = (voice: Pick<Voice, 'show'>, widthMm: number, heightMm: number): string => voice.show(lengths([widthMm, heightMm]));

/** A mass as somebody weighs it in (to a tenth of a gram while it is small), or about how much it is. */
export function massIn({ units }: Pick<Setting, 'units'>, grams: number, how: 'weighed' | 'about'): Quantity & { kind: 'mass' } {
  if (units === 'in') return mass(grams, how === 'weighed' ? 2 : 1);
  return mass(grams, grams >= 1000 ? undefined : how === 'weighed' && grams < 20 ? 1 : 0);
}

/** How long something will take about: whole minutes, five by five from an hour on. */
export function roughly(minutes: number): Quantity & { kind: 'time' } {
  return time(minutes < 60 ? Math.max(1, Math.round(minutes)) : Math.round(minutes / 5) * 5);
}

/** The size a picture of the whole image takes inside a box. */
export function fitImage(plan: Plan, widthMm: number, heightMm: number): { widthMm: number; heightMm: number; scale: number } {
  const { image } = plan.job;
  const scale = Math.min(widthMm / image.widthMm, heightMm / image.heightMm);
  return { widthMm: image.widthMm * scale, heightMm: image.heightMm * scale, scale };
}
