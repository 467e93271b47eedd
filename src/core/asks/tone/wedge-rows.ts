/** One step of a wedge as it was written down. */
export interface WedgeRow {
  /** What stood on the film, 0..1; NaN where it is no share. */
  readonly cover: number;
  readonly step: string;
  /** A density, or a colour in numbers. */
  readonly value: string;
}

const number = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const valueOf = (text: string): number => (number.test(text) ? Number(text.replace(',', '.')) : NaN);

/**
 * Steps as people write them: `5: 0.11` a line or between semicolons, or a table of steps and densities with or without headings, with
 * tabs, semicolons, commas or blanks between, decimal point or comma. Null: it is neither.
 */
export function wedgeRows(text: string): WedgeRow[] | null {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/[\r\n]+/)
    .filter((line) => line.trim() !== '' && !line.trim().startsWith('#'));
  const typed = lines
    .flatMap((line) => line.split(';'))
    .map((entry) => /^\s*(\d+(?:[.,]\d+)?)\s*%?\s*[:=]\s*(\S.*?)\s*$/.exec(entry))
    .filter((found) => found !== null);
  if (typed.length >= 2) return withCovers(typed.map(([, step, value]) => [step, value] as const));
  const rows = lines.length === 1 ? lines[0].split(';') : lines;
  const cut = (between: RegExp): string[][] =>
    rows.map((row) =>
      row
        .replace(/\s*%|"/g, '')
        .trim()
        .split(between)
        .map((cell) => cell.trim()),
    );
  for (const table of [cut(/\t/), cut(/;/), joined(cut(/,/)), cut(/,/), cut(/\s+/)]) {
    const found = densitiesIn(table);
    if (found) return withCovers(found);
  }
  return null;
}

/** `50,0,62`, where a spreadsheet wrote decimal commas with commas between: rows that rise to the solid can be nothing else. */
function joined(rows: readonly (readonly string[])[]): (readonly string[])[] {
  const whole = (row: readonly string[]): boolean => row.length === 3 && row.every((cell) => /^\d+$/.test(cell));
  const first = rows.findIndex(whole);
  if (first < 0) return [];
  const table = rows.slice(first);
  const rise = table.every((row, i) => whole(row) && (i === 0 || Number(row[0]) > Number(table[i - 1][0])));
  return rise && Number(table[table.length - 1][0]) === 100 ? table.map(([step, ...value]) => [step, value.join('.')]) : [];
}

const isDensity = /dens|dicht|^o?d$/i;
const isStep = /step|stufe|film|tone?s?$|cover|name/i;

/** A column of steps and one of densities: by their headings, or the only two there are. */
function densitiesIn(rows: readonly (readonly string[])[]): (readonly [string, string])[] | null {
  const first = rows.findIndex((row) => row.length > 1 && Number.isFinite(valueOf(row[0])));
  if (first < 0) return null;
  const heads = first > 0 ? rows[first - 1] : [];
  if (heads.length > 1 && rows[first].length > heads.length) return null;
  const density = heads.findIndex((cell) => isDensity.test(cell)),
    step = Math.max(
      0,
      heads.findIndex((cell) => isStep.test(cell)),
    );
  if (density < 0 && rows[first].length !== 2) return null;
  const at = density < 0 ? 1 : density;
  const found = rows.slice(first).map((row) => [row[step] ?? '', row[at] ?? ''] as const);
  return found.length >= 2 && found.every((cells) => cells.every((cell) => Number.isFinite(valueOf(cell)))) ? found : null;
}

/** Per cent; where no step is above 1, shares. */
function withCovers(rows: readonly (readonly [string, string])[]): WedgeRow[] {
  const whole = coverScale(rows.map(([step]) => step));
  return rows.map(([step, value]) => {
    const cover = valueOf(step) / whole;
    return { cover: cover >= 0 && cover <= 1 ? cover : NaN, step, value };
  });
}

/** What the solid is called: 100, or 1 where every step is a share. */
export function coverScale(steps: readonly string[]): 1 | 100 {
  return steps.length > 2 && steps.every((step) => valueOf(step) <= 1) ? 1 : 100;
}

/** Text that is the steps themselves, not the name of a file that holds them. */
export const isWedge = (text: string): boolean => wedgeRows(text) !== null || /^\s*\d+(?:[.,]\d+)?\s*%?\s*[:=]/.test(text);
