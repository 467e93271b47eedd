import { name as asName, say, type Saying } from '../../../words/say.ts';
import { ProblemError, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { readNumber } from '../../units/index.ts';
import type { TestLines } from './tested.ts';
import type { TestPlace } from './test-sheet.ts';

type Reading = TestLines['readings'][number];

/** What stands in a field for readings: a line of the scale (`-2`, `2,5`), or `2.4 mm` measured with a rule; null: nothing yet. NaN: neither. */
export function lineFromText(text: string, readsMm: number): number | null {
  const bare = text.trim().replaceAll('−', '-').replace(/^\+/, '');
  if (bare === '') return null;
  const mm = /^(.*\d)\s*mm$/i.exec(bare);
  const negative = (mm ? mm[1] : bare).startsWith('-');
  const number = readNumber((mm ? mm[1] : bare).replace(/^-\s*/, ''));
  return (negative ? -1 : 1) * (mm ? number / readsMm : number);
}

/** An empty table to take to the sheets: a row for every place of every sheet. */
export function testTable(places: readonly TestPlace[], sheets: number): string[][] {
  return [
    ['sheet', 'place', 'across', 'down'],
    ...Array.from({ length: sheets }, (_, i) => places.map((place) => [String(i + 1), place.id, '', ''])).flat(),
  ];
}

/** Rows sheet, place, across, down, parted by commas, semicolons or tabs. Throws every problem found, with its line. */
export function readTestTable(text: string, readsMm: number, fileName: string): Reading[] {
  const problems: Problem[] = [];
  const readings: Reading[] = [];
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const parting = ['\t', ';', ','].find((mark) => lines.some((line) => line.includes(mark))) ?? ',';
  const bad = (row: number, message: Saying): unknown =>
    problems.push(
      problem('error', 'test-table', say('where.fileLine', { file: asName(fileName), line: row + 1 }), message, say('register.writeTable')),
    );
  lines.forEach((line, row) => {
    const cells = line.split(parting).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, '$1')
        .replace(/^'/, ''),
    );
    if (line.trim() === '' || line.startsWith('#') || /^sheet$/i.test(cells[0])) return;
    const sheet = Number(cells[0]);
    if (cells.length < 4) return void bad(row, say('register.columnsMissing', { n: cells.length }));
    if (!(Number.isInteger(sheet) && sheet >= 1 && sheet <= 1000))
      return void bad(row, say('register.notASheet', { written: asName(cells[0]) }));
    const [across, down] = [cells[2], cells[3]].map((cell) => lineFromText(cell, readsMm));
    if (Number.isNaN(across) || Number.isNaN(down))
      return void bad(row, say('register.notALine', { written: asName(Number.isNaN(across) ? cells[2] : cells[3]) }));
    if (across !== null || down !== null)
      readings.push({ sheet, place: cells[1], ...(across === null ? {} : { across }), ...(down === null ? {} : { down }) });
  });
  if (problems.length > 0) throw new ProblemError(problems);
  return readings;
}
