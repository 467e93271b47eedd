import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { name as asName, say, type Saying } from '../../../words/say.ts';
import type { Fault } from './faults.ts';
import { proofsFor } from './sheets.ts';
import type { ProofCounts, ProofWishes } from './sheets.ts';

export interface SheetFault extends Fault {
  readonly run: string;
  /** A fault that keeps the sheet out of the edition. */
  readonly rejects: boolean;
}

/** One sheet and its life. */
export interface Sheet {
  readonly id: string;
  readonly paper: string;
  /** Runs it went through, in order. */
  readonly runs: readonly string[];
  readonly faults: readonly SheetFault[];
  /** Set apart on purpose: the sheet to compare with, a state kept, a trial of other colours, a sheet to set up with. */
  readonly kept?: 'bat' | 'state' | 'colour-trial' | 'set-up' | 'cancellation';
}

export type MarkKind =
  | 'edition'
  | 'varied'
  | 'bat'
  | 'artists'
  | 'printers'
  | 'hors-commerce'
  | 'state'
  | 'colour-trial'
  | 'cancellation'
  | 'spare'
  | 'set-up'
  | 'rejected';

export interface NumberedSheet {
  readonly sheet: Sheet;
  readonly kind: MarkKind;
  /** What the pencil writes; null for sheets that are not signed. */
  readonly text: Saying | null;
  /** Within its kind (and paper, for sub-editions), from 1. */
  readonly number: number | null;
  readonly of: number | null;
}

export interface NumberedEdition {
  readonly sheets: readonly NumberedSheet[];
  /** Edition size, for each paper if they are sub-editions (null: all together). */
  readonly sizes: readonly {
    readonly paper: string | null;
    readonly edition: number;
    readonly artists: number;
    readonly bat: number;
    readonly printers: number;
    readonly horsCommerce: number;
    readonly spare: number;
  }[];
  readonly totalImpressions: number;
  readonly problems: readonly Problem[];
}

export interface NumberingInput {
  readonly sheets: readonly Sheet[];
  /** Runs a finished sheet has gone through. */
  readonly runs: readonly string[];
  /** Numbers to give; good sheets past it and past the proofs stay spare. Left out: every good sheet that is no proof. For all papers, shared out by their good sheets. */
  readonly target?: number;
  readonly proofs: ProofWishes;
  readonly papersAre: 'sub-editions' | 'varied';
  /** What was planned for each paper (`planSheets`): its numbers and its proofs. Left out: each paper has what the wishes give it. */
  readonly planned?: readonly { readonly paperId: string; readonly edition: number; readonly proofs: ProofCounts }[];
  /** The paper that all proofs are taken from; left out: any. */
  readonly proofsOn?: string;
}

/**
 * Gives every sheet exactly one mark. The B.A.T. is taken first, then the edition's numbers, then A/P, P/P, H.C.; Roman
 * numerals for all but the edition (published: museum of graphic arts), `E.V. 1/8` for a varied edition (published: college
 * print course). The order of numbers means nothing (published: collectors' forum). Another paper falls outside an edition
 * (published: labelling an original print), hence sub-editions or E.V. Throws ProblemError for a sheet met twice.
 */
export function numberEdition(input: NumberingInput): NumberedEdition {
  const { sheets, papersAre } = input;
  const ids = new Set(sheets.map((sheet) => sheet.id));
  if (ids.size !== sheets.length) fail('sheet-twice', say('where.count'), say('edition.sheetTwice'), say('edition.nameSheets'));
  const problems: Problem[] = [];
  const good = sheets.filter((sheet) => isGood(sheet, input.runs));
  const groups = papersAre === 'varied' ? [null] : [...new Set(sheets.map((sheet) => sheet.paper))];
  const goodIn = (paper: string | null): Sheet[] => good.filter((sheet) => paper === null || sheet.paper === paper);
  const marks = new Map<string, Omit<NumberedSheet, 'sheet'>>();
  let targetLeft = input.target ?? Infinity;
  let goodLeft = good.length;
  const shared = (mine: readonly Sheet[]): number => {
    const target = Number.isFinite(targetLeft) ? Math.round((targetLeft * mine.length) / Math.max(1, goodLeft)) : Infinity;
    targetLeft -= target;
    goodLeft -= mine.length;
    return Number.isNaN(target) ? Infinity : target;
  };
  const sizes = groups.map((paper) => {
    const mine = goodIn(paper);
    const planned = input.planned?.find((one) => one.paperId === paper);
    const want: Wanted =
      planned && input.target !== undefined
        ? { target: planned.edition, proofs: planned.proofs }
        : { target: shared(mine), proofs: proofsIn(paper, input) };
    return { paper, ...markGroup(mine, want, input, marks) };
  });
  markOthers(sheets, marks);
  const spare = sizes.reduce((total, size) => total + size.spare, 0);
  if (good.length === 0) problems.push(problem('error', 'no-good-sheet', 'edition', say('edition.noGoodSheet'), say('edition.lookAgain')));
  if (spare > 0)
    problems.push(
      problem('note', 'spare-sheets', 'edition.target', say('edition.spareSheets', { n: spare }), say('edition.largerOrDestroy')),
    );
  const numbered = sizes.reduce((total, size) => total + size.edition, 0);
  if (input.target !== undefined && numbered < input.target && good.length > 0) {
    problems.push(
      problem(
        'warning',
        'edition-smaller',
        'edition.target',
        say('edition.fewerThanWanted', { numbered, target: input.target }),
        say('edition.writeSmaller'),
      ),
    );
  }
  return {
    sheets: sheets.map((sheet) => ({ sheet, ...marks.get(sheet.id)! })),
    sizes,
    problems,
    totalImpressions: sheets.filter((sheet) => sheet.runs.length > 0 && sheet.kept !== 'set-up').length,
  };
}

/** Through every run, nothing that rejects it, and not set apart for something else. */
export function isGood(sheet: Sheet, runs: readonly string[]): boolean {
  return (
    runs.every((run) => sheet.runs.includes(run)) &&
    !sheet.faults.some((fault) => fault.rejects) &&
    (sheet.kept === undefined || sheet.kept === 'bat')
  );
}

type Marks = Map<string, Omit<NumberedSheet, 'sheet'>>;

/** Numbers and proofs that a paper is to get: counted beforehand, or by wishes that follow the edition's size. */
interface Wanted {
  readonly target: number;
  readonly proofs: ProofCounts | ProofWishes;
}

/** Proofs that all come from one paper are none of another's. */
function proofsIn(paper: string | null, { proofs, proofsOn }: NumberingInput): ProofWishes {
  const elsewhere = paper !== null && proofsOn !== undefined && paper !== proofsOn;
  return elsewhere ? { artistsProofShare: 0, batProofs: 0, printersProofs: 0, horsCommerce: 0 } : proofs;
}

function markGroup(
  all: readonly Sheet[],
  { target, proofs }: Wanted,
  input: NumberingInput,
  marks: Marks,
): Omit<NumberedEdition['sizes'][number], 'paper'> {
  // Numbers come from the other papers first, so that the proofs are left on theirs.
  const good =
    input.proofsOn === undefined
      ? all
      : [...all.filter((sheet) => sheet.paper !== input.proofsOn), ...all.filter((sheet) => sheet.paper === input.proofsOn)];
  const chosen = good.filter((sheet) => sheet.kept === 'bat');
  const rest = good.filter((sheet) => sheet.kept !== 'bat');
  const batsWanted = 'bat' in proofs ? proofs.bat : proofs.batProofs;
  const onProofPaper = rest.filter((sheet) => input.proofsOn === undefined || sheet.paper === input.proofsOn);
  const bats = [
    ...chosen,
    ...(onProofPaper.length > 0 ? onProofPaper : rest).slice(0, Math.max(0, Math.min(batsWanted - chosen.length, rest.length - 1))),
  ];
  const left = good.filter((sheet) => !bats.includes(sheet));
  // Without a target, the edition is as large as leaves room for the proofs it asks for.
  let edition = Math.min(left.length, target);
  if (!Number.isFinite(target)) while (edition > 1 && edition + countProofs(edition, proofs).rest > left.length) edition--;
  const want = countProofs(edition, proofs);
  const artists = Math.min(want.artists, left.length - edition);
  const printers = Math.min(want.printers, left.length - edition - artists);
  const horsCommerce = Math.min(want.horsCommerce, left.length - edition - artists - printers);
  const varied = input.papersAre === 'varied';
  let next = 0;
  const give = (count: number, kind: MarkKind, text: (number: number) => Saying): void => {
    for (let number = 1; number <= count; number++) marks.set(left[next++].id, { kind, text: text(number), number, of: count });
  };
  give(edition, varied ? 'varied' : 'edition', (number) =>
    say(varied ? 'edition.markVaried' : 'edition.markEdition', { number, of: edition }),
  );
  give(artists, 'artists', (number) => proofText(say('edition.markArtists'), number, artists));
  give(printers, 'printers', (number) => proofText(say('edition.markPrinters'), number, printers));
  give(horsCommerce, 'hors-commerce', (number) => proofText(say('edition.markHorsCommerce'), number, horsCommerce));
  const spare = left.length - next;
  while (next < left.length) marks.set(left[next++].id, { kind: 'spare', text: null, number: null, of: null });
  bats.forEach((sheet, i) =>
    marks.set(sheet.id, { kind: 'bat', text: proofText(say('edition.markBat'), i + 1, bats.length), number: i + 1, of: bats.length }),
  );
  return { edition, artists, bat: bats.length, printers, horsCommerce, spare };
}

function countProofs(edition: number, wanted: ProofCounts | ProofWishes): Omit<ProofCounts, 'bat' | 'total'> & { readonly rest: number } {
  const counts = 'bat' in wanted ? wanted : proofsFor(edition, wanted);
  return { ...counts, rest: counts.artists + counts.printers + counts.horsCommerce };
}

/** `A/P II/IV`; a lone proof needs no count. */
function proofText(mark: Saying, number: number, of: number): Saying {
  return of === 1 ? mark : say('edition.markOneOf', { mark, number: asName(roman(number)), of: asName(roman(of)) });
}

/** States, trials and what is not signed. A state is numbered by the runs it has seen, in Roman numerals. */
function markOthers(sheets: readonly Sheet[], marks: Marks): void {
  const others = sheets.filter((sheet) => !marks.has(sheet.id));
  const rejected = (sheet: Sheet): boolean => sheet.faults.some((fault) => fault.rejects);
  const plain = (sheet: Sheet, kind: MarkKind, text: Saying | null = null): unknown =>
    marks.set(sheet.id, { kind, text, number: null, of: null });
  const states = others.filter((sheet) => sheet.kept === 'state' && !rejected(sheet) && sheet.runs.length > 0);
  const trials = others.filter((sheet) => sheet.kept === 'colour-trial' && !rejected(sheet));
  const steps = [...new Set(states.map((sheet) => sheet.runs.length))].sort((one, other) => one - other);
  for (const sheet of others) {
    if (sheet.kept === 'set-up') plain(sheet, 'set-up');
    else if (sheet.kept === 'cancellation') plain(sheet, 'cancellation', say('edition.markCancellation'));
    else if (!states.includes(sheet) && !trials.includes(sheet)) plain(sheet, 'rejected');
  }
  for (const step of steps) {
    const same = states.filter((sheet) => sheet.runs.length === step);
    const name = asName(roman(steps.indexOf(step) + 1));
    same.forEach((sheet, i) =>
      marks.set(sheet.id, {
        kind: 'state',
        text:
          same.length === 1
            ? say('edition.markState', { step: name })
            : say('edition.markStateOneOf', { step: name, number: i + 1, of: same.length }),
        number: i + 1,
        of: same.length,
      }),
    );
  }
  trials.forEach((sheet, i) =>
    marks.set(sheet.id, {
      kind: 'colour-trial',
      text: proofText(say('edition.markTrial'), i + 1, trials.length),
      number: i + 1,
      of: trials.length,
    }),
  );
}

/** 1..3999 in Roman numerals; larger numbers stay Arabic. */
export function roman(value: number): string {
  if (!Number.isInteger(value) || value < 1 || value > 3999) return String(value);
  const signs: readonly (readonly [number, string])[] = [
    [1000, 'M'],
    [900, 'CM'],
    [500, 'D'],
    [400, 'CD'],
    [100, 'C'],
    [90, 'XC'],
    [50, 'L'],
    [40, 'XL'],
    [10, 'X'],
    [9, 'IX'],
    [5, 'V'],
    [4, 'IV'],
    [1, 'I'],
  ];
  let left = value;
  let text = '';
  for (const [size, sign] of signs) {
    while (left >= size) {
      text += sign;
      left -= size;
    }
  }
  return text;
}
