import { cleanNote } from '../plain-text.ts';
import { asWritten, figure, lengths, name as asName, say, type Saying } from '../../words/say.ts';
import { sayFault } from './sheets/faults.ts';
import type { RecordFacts } from './record.ts';
import type { MarkKind, NumberedEdition, NumberedSheet } from './sheets/numbering.ts';

/** One label for the back of a sheet or its sleeve. */
export interface Label {
  readonly sheetId: string;
  readonly lines: readonly { readonly what: 'title' | 'artist' | 'mark' | 'medium'; readonly text: Saying }[];
}

/** Labels for everything that is signed, in the order of kinds and numbers. */
export function labelsFor(facts: RecordFacts, edition: NumberedEdition): Label[] {
  const order: readonly MarkKind[] = [
    'edition',
    'varied',
    'artists',
    'bat',
    'printers',
    'hors-commerce',
    'state',
    'colour-trial',
    'cancellation',
  ];
  const rank = (one: NumberedSheet): number => order.indexOf(one.kind);
  return edition.sheets
    .filter((one) => rank(one) >= 0)
    .map((one, i) => ({ one, i }))
    .sort(
      (a, b) =>
        rank(a.one) - rank(b.one) ||
        a.one.sheet.paper.localeCompare(b.one.sheet.paper, 'en') ||
        (a.one.number ?? 0) - (b.one.number ?? 0) ||
        a.i - b.i,
    )
    .map(({ one }) => ({
      sheetId: one.sheet.id,
      lines: [
        {
          what: 'title' as const,
          text: say('record.labelTitle', { title: asName(facts.title), year: facts.year ? figure(facts.year) : undefined }),
        },
        ...(facts.artist ? [{ what: 'artist' as const, text: asWritten(facts.artist) }] : []),
        ...(one.text ? [{ what: 'mark' as const, text: one.text }] : []),
        {
          what: 'medium' as const,
          text: say('record.labelMedium', { image: lengths(facts.imageMm), paper: asName(paperName(facts, one)) }),
        },
      ],
    }));
}

function paperName(facts: RecordFacts, { sheet }: NumberedSheet): string {
  return facts.papers.find((paper) => paper.id === sheet.paper)?.name ?? sheet.paper;
}

/** The register of sheets, head row first: every sheet with its life, signed or not. Heads and kinds are for programs; marks and faults are told. */
export function registerRows(facts: RecordFacts, edition: NumberedEdition, tell: (saying: Saying) => string): string[][] {
  const head = ['sheet', 'paper', 'written', 'kind', 'number', 'of', 'runs', 'faults', 'signed on', 'owner', 'note'];
  return [
    head,
    ...edition.sheets.map((one) => [
      one.sheet.id,
      paperName(facts, one),
      one.text === null ? '' : tell(one.text),
      one.kind,
      one.number === null ? '' : String(one.number),
      one.of === null ? '' : String(one.of),
      one.sheet.runs.join(' '),
      one.sheet.faults.map((fault) => `${fault.run}: ${tell(sayFault(fault))}`).join('; '),
      '',
      '',
      '',
    ]),
  ];
}

/**
 * Rows as CSV after RFC 4180: CRLF, quotes doubled. Where a spreadsheet would take a text for a formula it gets an apostrophe in front,
 * so that a title can't run as one: at the beginning, and after whatever some country's spreadsheet takes for the end of a cell.
 */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** What makes a formula, in the wide letters of East Asian keyboards too, and what may stand before it in a cell. */
const formula = /(^|[;,|\t\r\n])([\s"']*)(?=[=+\-@＝＋－＠])/g;

function cell(text: string): string {
  const plain = cleanNote(text);
  const safe = /^-?\d+([.,]\d+)?$/.test(plain) ? plain : plain.replace(formula, "$1$2'");
  return /[",;|\t\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}
