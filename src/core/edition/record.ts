import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { asWritten, figure, lengths, list, listed, name as asName, say, sentences, type Saying } from '../../words/say.ts';
import type { NumberedEdition } from './sheets/numbering.ts';

/** What is known about the print, to be written down. Everything is optional: what is missing stays a line to fill in. */
export interface RecordFacts {
  readonly title: string;
  readonly artist?: string;
  /** Where the signature comes from, if not the artist's own hand on each sheet. */
  readonly signature?: string;
  readonly year?: number;
  readonly workshop?: string;
  readonly printer?: string;
  readonly imageMm: readonly [number, number];
  readonly papers: readonly { readonly id: string; readonly name: string; readonly sizeMm: readonly [number, number] }[];
  /** In laydown order. */
  readonly layers: readonly {
    readonly name: string;
    readonly stencil: Saying;
    readonly ink: Saying;
    /** null while the ink is open. */
    readonly recipe: Saying | null;
    readonly mesh: Saying;
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
  /** Where the job says it. */
  readonly path: string;
  readonly label: Saying;
  /** null: to be filled in by hand. */
  readonly value: Saying | null;
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
  readonly footing: Saying;
  readonly problems: readonly Problem[];
}

export interface CountRow {
  /** null: all papers together. */
  readonly paperId: string | null;
  readonly paper: Saying;
  readonly edition: number;
  readonly artists: number;
  readonly bat: number;
  readonly printers: number;
  readonly horsCommerce: number;
  readonly states: number;
  readonly trials: number;
}

const masters = {
  kept: say('record.kept'),
  cancelled: say('record.cancelled'),
  destroyed: say('record.destroyed'),
  'worn out': say('record.wornOut'),
};

/**
 * Everything a later owner, teacher or court would ask. Disclosure themes: artist, source of the signature, medium, year,
 * counts of edition, proofs and H.C., fate of the master, other editions, posthumous or not, workshop (published: statutes of
 * New York, Maryland, Hawaii, California and Georgia; not advice). Also kept: paper, layers, mesh, recipe, dates (common practice).
 */
export function documentationSheet(facts: RecordFacts, edition: NumberedEdition): DocumentationSheet {
  const counts = countRows(facts, edition);
  const field = (id: string, path: string, label: Saying, value: Saying | null, why: RecordField['why'] = 'disclosure'): RecordField => ({
    id,
    path,
    label,
    value,
    why,
  });
  const fields = [
    field('title', 'title', say('record.title'), written(facts.title)),
    field('artist', 'maker', say('record.artist'), written(facts.artist)),
    field('signature', 'edition.record.signature', say('record.signed'), written(facts.signature) ?? say('record.signedInPencil')),
    field('medium', 'layers', say('record.medium'), say('record.screenprint', { runs: facts.layers.length })),
    field('year', 'edition.year', say('record.year'), written(facts.year?.toFixed(0))),
    field('edition', 'edition', say('record.edition'), sayCounts(counts)),
    field('master', 'edition.record.master', say('record.stencils'), facts.master === undefined ? null : masters[facts.master]),
    field('other', 'edition.record.otherEditions', say('record.otherEditions'), written(facts.otherEditions)),
    field('posthumous', 'edition.record.posthumous', say('record.lifetime'), sayLifetime(facts)),
    field('workshop', 'edition.workshop', say('record.workshop'), written(facts.workshop)),
    field('printer', 'edition.record.printer', say('record.printedBy'), written(facts.printer)),
    field('image', 'image', say('record.image'), say('record.size', { size: lengths(facts.imageMm) }), 'kept'),
    field('papers', 'papers', say('record.papers'), sayPapers(facts), 'kept'),
    field('dates', 'edition.record.printedFrom', say('record.printed'), sayDates(facts), 'kept'),
    field('note', 'edition.record', say('record.note'), written(facts.note), 'kept'),
  ];
  const rejected = edition.sheets.filter((one) => one.kind === 'rejected').length;
  const spare = edition.sheets.filter((one) => one.kind === 'spare').length;
  const problems: Problem[] = fields
    .filter((one) => one.why === 'disclosure' && one.value === null)
    .map((one) => problem('note', 'record-open', one.path, say('record.lineOpen', { line: one.label }), say('record.fillIn')));
  if (facts.master === 'kept' && edition.sheets.some((one) => one.kind === 'cancellation')) {
    problems.push(
      problem('warning', 'cancellation-mismatch', 'edition.record.master', say('record.cancelledOrKept'), say('record.sayCancelled')),
    );
  }
  const printed = edition.totalImpressions;
  return {
    fields,
    layers: facts.layers,
    counts,
    rejected,
    totalImpressions: printed,
    problems,
    footing: spare > 0 ? say('record.footingSpare', { printed, rejected, spare }) : say('record.footing', { printed, rejected }),
  };
}

/** What somebody wrote; null where they wrote nothing. */
function written(text: string | undefined): Saying | null {
  return text === undefined || text.trim() === '' ? null : asWritten(text.trim());
}

function sayDates({ printedFrom: from, printedTo: to }: RecordFacts): Saying | null {
  return from && to ? say('record.dates', { from: asName(from), to: asName(to) }) : (written(from) ?? written(to));
}

function sayLifetime({ posthumous }: RecordFacts): Saying | null {
  return posthumous === undefined ? null : say(posthumous ? 'record.no' : 'record.yes');
}

function sayPapers({ papers }: RecordFacts): Saying | null {
  const said = papers.map((paper) => say('record.paperOf', { paper: asName(paper.name), size: lengths(paper.sizeMm) }));
  return said.length === 0 ? null : listed(said, 'semicolon');
}

function countRows(facts: RecordFacts, edition: NumberedEdition): CountRow[] {
  const count = (paper: string | null, kind: string): number =>
    edition.sheets.filter((one) => one.kind === kind && (paper === null || one.sheet.paper === paper)).length;
  return edition.sizes.map((size) => ({
    paperId: size.paper,
    paper:
      size.paper === null ? say('record.allPapers') : asWritten(facts.papers.find((paper) => paper.id === size.paper)?.name ?? size.paper),
    edition: size.edition,
    artists: size.artists,
    bat: size.bat,
    printers: size.printers,
    horsCommerce: size.horsCommerce,
    states: count(size.paper, 'state'),
    trials: count(size.paper, 'colour-trial'),
  }));
}

function sayCounts(rows: readonly CountRow[]): Saying {
  const said = rows.map((row) => {
    const proofs = [
      [row.artists, say('edition.markArtists')],
      [row.bat, say('edition.markBat')],
      [row.printers, say('edition.markPrinters')],
      [row.horsCommerce, say('edition.markHorsCommerce')],
    ] as const;
    const counts = list(
      [
        say('record.numbered', { n: row.edition }),
        ...proofs.filter(([n]) => n > 0).map(([n, mark]) => say('record.marked', { n, mark })),
        ...(row.states > 0 ? [say('record.states', { n: row.states })] : []),
        ...(row.trials > 0 ? [say('record.trials', { n: row.trials })] : []),
      ],
      'comma',
    );
    return rows.length > 1 ? say('record.countsOn', { paper: row.paper, counts }) : listed(counts.items, 'comma');
  });
  return listed(said, 'semicolon');
}

/** A few sentences for the last page or the back of the portfolio. */
export function colophon(facts: RecordFacts, edition: NumberedEdition): Saying {
  const { artist, year, printer, workshop, master } = facts;
  const when = facts.printedTo ?? facts.printedFrom;
  const named = (text: string | undefined): ReturnType<typeof asName> | undefined => (text ? asName(text) : undefined);
  return sentences(
    say('record.colophonTitle', { title: asName(facts.title), artist: named(artist), year: year ? figure(year) : undefined }),
    say('record.colophonMedium', {
      runs: facts.layers.length,
      papers: facts.papers.length > 0 ? list(facts.papers.map((paper) => asName(paper.name))) : undefined,
      image: lengths(facts.imageMm),
    }),
    say('record.colophonEdition', { counts: sayCounts(countRows(facts, edition)) }),
    (printer ?? workshop) ? say('record.colophonPrinted', { printer: named(printer), workshop: named(workshop), when: named(when) }) : null,
    master === 'cancelled' && say('record.colophonCancelled'),
    master === 'destroyed' && say('record.colophonDestroyed'),
  );
}

/** Steps that end an edition. The record says which was taken. common practice */
export const cancellationSteps: readonly Saying[] = [
  say('record.cutThrough'),
  say('record.pullCancellation'),
  say('record.writeCancelled'),
  say('record.sayWornOut'),
];
