import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { NumberedEdition } from './numbering.ts';

/** What is known about the print, to be written down. Everything is optional: what is missing stays a line to fill in. */
export interface RecordFacts {
  readonly title: string;
  readonly artist?: string;
  /** Where the signature comes from, if not the artist's own hand on each sheet. */
  readonly signature?: string;
  readonly year?: number;
  readonly workshop?: string;
  readonly printer?: string;
  readonly imageSize: string;
  readonly papers: readonly { readonly id: string; readonly name: string; readonly size: string }[];
  /** In laydown order. */
  readonly layers: readonly {
    readonly name: string;
    readonly stencil: string;
    readonly ink: string;
    readonly recipe: string;
    readonly mesh: string;
  }[];
  readonly printedFrom?: string;
  readonly printedTo?: string;
  /** What became of the stencils. */
  readonly master?: 'kept' | 'cancelled' | 'destroyed' | 'worn out';
  readonly otherEditions?: string;
  readonly posthumous?: boolean;
  readonly note?: string;
}

export interface RecordField {
  readonly id: string;
  readonly label: string;
  /** Empty: to be filled in by hand. */
  readonly value: string;
  /** disclosure: among the themes of some US states' statutes on multiples (not advice). kept: common practice. */
  readonly why: 'disclosure' | 'kept';
}

export interface DocumentationSheet {
  readonly fields: readonly RecordField[];
  readonly layers: RecordFacts['layers'];
  readonly counts: readonly CountRow[];
  readonly rejected: number;
  readonly totalImpressions: number;
  /** Words under the table. */
  readonly footing: string;
  readonly problems: readonly Problem[];
}

export interface CountRow {
  readonly paper: string;
  readonly edition: number;
  readonly artists: number;
  readonly bat: number;
  readonly printers: number;
  readonly horsCommerce: number;
  readonly states: number;
  readonly trials: number;
}

/**
 * Everything a later owner, teacher or court would ask. Disclosure themes: artist, source of the signature, medium, year,
 * counts of edition, proofs and H.C., fate of the master, other editions, posthumous or not, workshop (published: statutes of
 * New York, Maryland, Hawaii, California and Georgia; not advice). Also kept: paper, layers, mesh, recipe, dates (common practice).
 */
export function documentationSheet(facts: RecordFacts, edition: NumberedEdition): DocumentationSheet {
  const counts = countRows(facts, edition);
  const field = (id: string, label: string, value: string | undefined, why: RecordField['why'] = 'disclosure'): RecordField => ({
    id,
    label,
    value: value?.trim() ?? '',
    why,
  });
  const fields = [
    field('title', 'Title', facts.title),
    field('artist', 'Artist', facts.artist),
    field('signature', 'Signed', facts.signature ?? 'in pencil by the artist, on each sheet'),
    field('medium', 'Medium', `screenprint from cut stencils, ${facts.layers.length} ${facts.layers.length === 1 ? 'run' : 'runs'}`),
    field('year', 'Year of printing', facts.year === undefined ? '' : String(facts.year)),
    field('edition', 'Edition', sayCounts(counts)),
    field('master', 'Stencils', facts.master === undefined ? '' : `${facts.master} after printing`),
    field('other', 'Other editions', facts.otherEditions),
    field('posthumous', 'Made in the artist’s lifetime', facts.posthumous === undefined ? '' : facts.posthumous ? 'no' : 'yes'),
    field('workshop', 'Workshop', facts.workshop),
    field('printer', 'Printed by', facts.printer),
    field('image', 'Image', facts.imageSize, 'kept'),
    field('papers', 'Papers', facts.papers.map((paper) => `${paper.name}, ${paper.size}`).join('; '), 'kept'),
    field('dates', 'Printed', [facts.printedFrom, facts.printedTo].filter((date) => date).join(' to '), 'kept'),
    field('note', 'Note', facts.note, 'kept'),
  ];
  const rejected = edition.sheets.filter((one) => one.kind === 'rejected').length;
  const spare = edition.sheets.filter((one) => one.kind === 'spare').length;
  const problems: Problem[] = fields
    .filter((one) => one.why === 'disclosure' && one.value === '')
    .map((one) =>
      problem(
        'note',
        'record-open',
        `record.${one.id}`,
        `The record doesn’t say: ${one.label.toLowerCase()}.`,
        'Fill it in, by pencil or in the job.',
      ),
    );
  if (facts.master === 'kept' && edition.sheets.some((one) => one.kind === 'cancellation')) {
    problems.push(
      problem(
        'warning',
        'cancellation-mismatch',
        'record.master',
        'There is a cancellation proof, but the stencils are said to be kept.',
        'Say that they are cancelled.',
      ),
    );
  }
  return {
    fields,
    layers: facts.layers,
    counts,
    rejected,
    totalImpressions: edition.totalImpressions,
    problems,
    footing: `${edition.totalImpressions} sheets were printed in all; ${rejected} rejected${spare > 0 ? `, ${spare} good ${spare === 1 ? 'one' : 'ones'} without a number` : ''}. Whether a law asks for more is for local advice to say.`,
  };
}

function countRows(facts: RecordFacts, edition: NumberedEdition): CountRow[] {
  const count = (paper: string | null, kind: string): number =>
    edition.sheets.filter((one) => one.kind === kind && (paper === null || one.sheet.paper === paper)).length;
  return edition.sizes.map((size) => ({
    paper: size.paper === null ? 'all papers (varied)' : (facts.papers.find((paper) => paper.id === size.paper)?.name ?? size.paper),
    edition: size.edition,
    artists: size.artists,
    bat: size.bat,
    printers: size.printers,
    horsCommerce: size.horsCommerce,
    states: count(size.paper, 'state'),
    trials: count(size.paper, 'colour-trial'),
  }));
}

function sayCounts(rows: readonly CountRow[]): string {
  return rows
    .map((row) => {
      const kinds = [
        ['A/P', row.artists],
        ['B.A.T.', row.bat],
        ['P/P', row.printers],
        ['H.C.', row.horsCommerce],
        [row.states === 1 ? 'state proof' : 'state proofs', row.states],
        [row.trials === 1 ? 'colour trial' : 'colour trials', row.trials],
      ] as const;
      const parts = [`${row.edition} numbered`, ...kinds.filter(([, n]) => n > 0).map(([name, n]) => `${n} ${name}`)];
      return `${rows.length > 1 ? `${row.paper}: ` : ''}${parts.join(', ')}`;
    })
    .join('; ');
}

/** A few sentences for the last page or the back of the portfolio. */
export function colophon(facts: RecordFacts, edition: NumberedEdition): string {
  const rows = countRows(facts, edition);
  const printed = facts.printedTo ?? facts.printedFrom;
  const when = printed ? `, ${printed}` : '';
  const sentences = [
    `${facts.title}${facts.artist ? `, by ${facts.artist}` : ''}${facts.year ? `, ${facts.year}` : ''}.`,
    `Screenprint in ${inWords(facts.layers.length)} ${facts.layers.length === 1 ? 'run' : 'runs'} from cut stencils, with transparent water-based inks, on ${list(facts.papers.map((paper) => paper.name))}. Image ${facts.imageSize}.`,
    `The edition is ${sayCounts(rows)}.`,
    facts.printer && facts.workshop
      ? `Printed by ${facts.printer} at ${facts.workshop}${when}.`
      : facts.printer
        ? `Printed by ${facts.printer}${when}.`
        : facts.workshop
          ? `Printed at ${facts.workshop}${when}.`
          : '',
    facts.master === 'cancelled'
      ? 'The stencils were cancelled after printing.'
      : facts.master === 'destroyed'
        ? 'The stencils were destroyed after printing.'
        : '',
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** Steps that end an edition. The record says which was taken. common practice */
export const cancellationSteps: readonly string[] = [
  'Cut or punch a clear mark through every stencil, across the image, not at its edge.',
  'Pull one proof from each cancelled stencil, write “Cancellation proof” and keep it with the record.',
  'Write the date and “cancelled” in the record; bin or keep the pieces.',
  'Stencils that wore out or tore: say so instead, with the sheet at which they did.',
];

const inWords = (count: number): string => ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'][count] ?? String(count);
const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? 'paper') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
