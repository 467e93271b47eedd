import Papa from 'papaparse';
import { fail, problem, type Problem } from '../../problem.ts';
import { name as asName, say } from '../../../words/say.ts';
import { choosePatches, mostPatches, numberOf, wavelengthOfField, type RawPatch, type ReadFile } from './patch.ts';

const names = /^(?:name|patch|sample(?:_?(?:id|name))?|ink|colou?r|id|label|steps?|stufen?)$/i;

/**
 * Readings out of a spreadsheet: a heading row with `L a b`, `X Y Z` or wavelengths (`380`, `nm380`, …) and perhaps a
 * `name`; comma, semicolon or tab between; decimal point or comma. Without headings, a name and three numbers are
 * taken as Lab, with a warning.
 * @throws ProblemError when no column of colour is found
 */
export function readCsv(text: string, fileName: string): ReadFile {
  const file = say('where.file', { file: asName(fileName) });
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ',', '|'],
    preview: mostPatches + 2,
  });
  const rows = parsed.data.map((row) => row.map((cell) => cell.trim()));
  if (rows.length === 0) fail('file-empty', file, say('readings.fileEmpty'), say('readings.exportReadings'));
  if (rows.length > mostPatches + 1)
    fail('too-many-patches', file, say('readings.tooManyRows', { most: mostPatches }), say('readings.keepFewer'));
  const problems: Problem[] = [];
  const headAt = rows.slice(0, 20).findIndex((row) => columnsOf(row) !== undefined);
  const columns = headAt >= 0 ? columnsOf(rows[headAt])! : withoutHeadings(rows[0]);
  if (!columns) fail('no-readings', file, say('readings.noColourColumn'), say('readings.giveHeadings'));
  if (headAt < 0) problems.push(problem('warning', 'headings-missing', file, say('readings.noHeadings'), say('readings.addHeadings')));
  const raw = rows.slice(headAt + 1).map((row, i): RawPatch => {
    const cell = (at: number): number => numberOf(row[at] ?? '');
    const three = (at: readonly number[] | undefined): readonly [number, number, number] | undefined =>
      at && at.some((c) => (row[c] ?? '') !== '') ? [cell(at[0]), cell(at[1]), cell(at[2])] : undefined;
    return {
      name: (columns.name !== undefined ? row[columns.name] : '') || String(i + 1),
      place: say('readings.row', { file: asName(fileName), row: headAt + 2 + i }),
      spectrum:
        columns.spectrum.length > 0
          ? { wavelengthsNm: columns.spectrum.map(([w]) => w), values: columns.spectrum.map(([, at]) => cell(at)) }
          : undefined,
      xyz: three(columns.xyz),
      lab: three(columns.lab),
    };
  });
  const chosen = choosePatches(raw, file);
  return { format: 'csv', patches: chosen.patches, about: {}, problems: [...problems, ...chosen.problems] };
}

interface Columns {
  readonly name?: number | undefined;
  readonly spectrum: readonly (readonly [number, number])[];
  readonly xyz?: readonly number[] | undefined;
  readonly lab?: readonly number[] | undefined;
}

function columnsOf(row: readonly string[]): Columns | undefined {
  const find = (pattern: RegExp): number => row.findIndex((cell) => pattern.test(cell));
  const spectrum = row
    .map((cell, at) => [wavelengthOfField(cell), at] as const)
    .filter((c): c is readonly [number, number] => c[0] !== undefined);
  const triple = (patterns: readonly RegExp[]): readonly number[] | undefined => {
    const at = patterns.map(find);
    return at.every((c) => c >= 0) ? at : undefined;
  };
  const xyz = triple([/^(?:xyz[_ ])?x$/i, /^(?:xyz[_ ])?y$/i, /^(?:xyz[_ ])?z$/i]);
  const lab = triple([/^(?:(?:cie)?lab[_ ])?l\*?$/i, /^(?:(?:cie)?lab[_ ])?a\*?$/i, /^(?:(?:cie)?lab[_ ])?b\*?$/i]);
  const enough = spectrum.length >= 10 && spectrum[spectrum.length - 1][0] > spectrum[0][0];
  if (!xyz && !lab && !enough) return undefined;
  const name = find(names);
  return { name: name >= 0 ? name : undefined, spectrum: enough ? spectrum : [], xyz, lab };
}

function withoutHeadings(row: readonly string[]): Columns | undefined {
  const numbers = row.map((cell, at) => [numberOf(cell), at] as const).filter(([v]) => Number.isFinite(v));
  if (row.length === 3 && numbers.length === 3) return { spectrum: [], lab: [0, 1, 2] };
  if (row.length === 4 && numbers.length >= 3) return { name: 0, spectrum: [], lab: [1, 2, 3] };
  return undefined;
}
