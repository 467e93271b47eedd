import Papa from 'papaparse';
import { srgbFromXyz, xyzFromLab, type Lab } from '../../colour/index.ts';
import { toneForesight } from '../../halftone/index.ts';
import type { Plan, PlannedPaper } from '../../plan/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { list, name as asName, say } from '../../../words/say.ts';

/** Fields of a chart: what the films cover, by layer, each with a name where the file gives one. */
export interface Chart {
  readonly fields: readonly { readonly name?: string; readonly covers: Readonly<Record<string, number>> }[];
  readonly problems: readonly Problem[];
}

export interface ToneField {
  readonly name?: string;
  /** By layer, those that the file leaves out at 0. */
  readonly covers: Readonly<Record<string, number>>;
  readonly lab: Lab;
  readonly srgb: string;
  readonly inGamut: boolean;
  readonly band: number;
}

/** No chart has more (as for readings). */
const mostFields = 20_000;
const nameColumn = /^(?:name|patch|sample(?:_?(?:id|name))?|label|id)$/i;

/**
 * A spreadsheet with one column a layer, by its id or its name, and what its film covers, 0 to 1; comma, semicolon or tab between.
 * @throws ProblemError where a heading names no layer, or a cover is none
 */
export function readChart(text: string, file: string, plan: Pick<Plan, 'layers'>): Chart {
  const place = say('where.file', { file: asName(file) });
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: [',', ';', '\t'],
    preview: mostFields + 2,
  });
  const [head, ...rows] = parsed.data.map((row) => row.map((cell) => cell.trim()));
  if (!head || rows.length === 0) fail('chart-empty', place, say('halftone.chartEmpty'), say('halftone.writeChart'));
  if (rows.length > mostFields)
    fail('chart-too-long', place, say('halftone.chartTooLong', { most: mostFields }), say('halftone.splitChart'));
  const ids = plan.layers.map((l) => asName(l.id));
  const columns = head.map((heading) => {
    const layer = plan.layers.find((l) => l.id === heading) ?? plan.layers.find((l) => l.name === heading);
    return layer?.id ?? (nameColumn.test(heading) ? null : heading === '' ? undefined : heading);
  });
  const unknown = columns.filter((c) => typeof c === 'string' && !plan.layers.some((l) => l.id === c)) as string[];
  if (!columns.some((c) => plan.layers.some((l) => l.id === c)))
    fail('chart-without-layers', place, say('halftone.noLayerNamed'), say('halftone.nameLayers', { ids: list(ids, 'comma') }));
  const problems = unknown.map((c) =>
    problem(
      'warning',
      'chart-column',
      place,
      say('halftone.columnUnknown', { column: asName(c) }),
      say('halftone.nameLayers', { ids: list(ids, 'comma') }),
    ),
  );
  const fields = rows.map((row, r) => {
    const covers: Record<string, number> = {};
    let name: string | undefined;
    columns.forEach((column, c) => {
      const cell = row[c] ?? '';
      if (column === null) name ??= cell;
      if (typeof column !== 'string' || unknown.includes(column)) return;
      const value = cell === '' ? 0 : Number(cell.replace(',', '.'));
      if (!(value >= 0 && value <= 1))
        fail(
          'chart-cover',
          say('where.fileLine', { file: asName(file), line: r + 2 }),
          say('halftone.notACover', { text: asName(cell) }),
          say('halftone.coverFromTo'),
        );
      covers[column] = value;
    });
    return { ...(name ? { name } : {}), covers };
  });
  return { fields, problems };
}

/** The colours of a chart's fields on one paper; null where no run carries tone, or the paper was not read. */
export function askTones({ tones }: Pick<PlannedPaper, 'tones'>, chart: Chart): ToneField[] | null {
  if (!tones) return null;
  const foresight = toneForesight(tones.model);
  const settle = (value: number): number => Math.round(value * 1000) / 1000;
  return chart.fields.map(({ name, covers }) => {
    const all = Object.fromEntries(tones.layers.map((id) => [id, covers[id] ?? 0]));
    const coverages = tones.layers.map((id) => all[id]);
    const [l, a, b] = foresight.lab(coverages);
    const lab: Lab = [settle(l), settle(a), settle(b)];
    const { hex, inGamut } = srgbFromXyz(xyzFromLab(lab));
    return {
      ...(name === undefined ? {} : { name }),
      covers: all,
      lab,
      srgb: hex,
      inGamut,
      band: Math.round(foresight.band(coverages) * 10) / 10,
    };
  });
}
