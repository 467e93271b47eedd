import { fail, problem, type Problem } from '../../problem.ts';
import { name as asName, say, type Saying } from '../../../words/say.ts';
import { choosePatches, lightProblems, mostPatches, numberOf, wavelengthOfField, type RawPatch, type ReadFile } from './patch.ts';

const mostColumns = 2000;

/**
 * Readings in CGATS.17 text (ISO 28178): keywords, `BEGIN_DATA_FORMAT`, `BEGIN_DATA`; fields in any order, comments,
 * several tables in one file. Reads spectra, XYZ and Lab.
 * @throws ProblemError when there is no table at all
 */
export function readCgats(text: string, fileName: string): ReadFile {
  const file = say('where.file', { file: asName(fileName) });
  const at = (line: number): Saying => say('where.fileLine', { file: asName(fileName), line });
  const about: Record<string, string> = {};
  const raw: RawPatch[] = [];
  const problems: Problem[] = [];
  let fields: string[] = [];
  let tables = 0;
  const lines = splitLines(text);
  let mode: 'head' | 'format' | 'data' = 'head';
  let pending: { words: string[]; line: number } = { words: [], line: 0 };
  let promised: number | undefined;
  let foundInTable = 0;

  const closeTable = (line: number, complete: boolean): void => {
    if (!complete) problems.push(problem('warning', 'file-cut-short', at(line), say('readings.cutShort'), say('readings.exportForRest')));
    if (pending.words.length > 0) {
      problems.push(
        problem(
          'warning',
          'row-too-short',
          at(pending.line),
          say('readings.rowTooShort', { has: pending.words.length, needed: fields.length }),
          say('readings.leftOut'),
        ),
      );
    }
    if (promised !== undefined && promised !== foundInTable) {
      problems.push(
        problem(
          'warning',
          'rows-missing',
          at(line),
          say('readings.rowsMissing', { promised, found: foundInTable }),
          say('readings.checkWhole'),
        ),
      );
    }
    pending = { words: [], line: 0 };
    promised = undefined;
    foundInTable = 0;
  };

  lines.forEach((content, index) => {
    const line = index + 1;
    const words = wordsOf(content);
    if (words.length === 0) return;
    const first = words[0].text;
    if (first === 'BEGIN_DATA_FORMAT') {
      mode = 'format';
      fields = words.slice(1).map((w) => w.text);
    } else if (first === 'END_DATA_FORMAT') mode = 'head';
    else if (first === 'BEGIN_DATA') {
      mode = 'data';
      tables++;
      if (fields.length === 0) fail('no-data-format', at(line), say('readings.noColumns'), say('readings.exportWithFormat'));
    } else if (first === 'END_DATA') {
      mode = 'head';
      closeTable(line, true);
    } else if (mode === 'format') {
      for (const w of words) {
        if (w.text === 'END_DATA_FORMAT') mode = 'head';
        else fields.push(w.text);
      }
    } else if (mode === 'data') {
      // A row is as many values as there are fields, wherever the lines break.
      for (const w of words) {
        if (pending.words.length === 0) pending.line = line;
        pending.words.push(w.text);
        if (pending.words.length === fields.length) {
          foundInTable++;
          if (raw.length >= mostPatches)
            fail('too-many-patches', at(line), say('readings.tooManyPatches', { most: mostPatches }), say('readings.exportFewer'));
          raw.push(patchOf(fields, pending.words, at(pending.line), raw.length + 1));
          pending = { words: [], line: 0 };
        }
      }
    } else if (words.length >= 2 && first !== 'KEYWORD' && Object.keys(about).length < 200) {
      about[first] = words
        .slice(1)
        .map((w) => w.text)
        .join(' ');
      if (first === 'NUMBER_OF_SETS') promised = Number(words[1].text);
    }
    if (fields.length > mostColumns)
      fail('too-many-fields', at(line), say('readings.tooManyColumns', { most: mostColumns }), say('readings.notReadings'));
  });
  // TypeScript can't see that the loop above changes the mode.
  if ((mode as string) === 'data') closeTable(lines.length, false);
  if (tables === 0) fail('no-readings', file, say('readings.noTable'), say('readings.exportTable'));
  const chosen = choosePatches(raw, file);
  const light = chosen.patches.some((p) => p.reading.kind !== 'spectrum') ? lightProblems(Object.values(about).join(' '), file) : [];
  return { format: 'cgats', patches: chosen.patches, about, problems: [...problems, ...chosen.problems, ...light] };
}

const namingFields = ['SAMPLE_NAME', 'SampleName', 'SAMPLE_ID', 'SampleID', 'SAMPLE_LOC', 'STRING'];

function patchOf(fields: readonly string[], values: readonly string[], place: Saying, ordinal: number): RawPatch {
  const at = new Map(fields.map((f, i) => [f.toUpperCase(), values[i]]));
  const three = (names: readonly [string, string, string]): readonly [number, number, number] | undefined => {
    const found = names.map((n) => at.get(n));
    if (found.some((v) => v === undefined)) return undefined;
    return found.map((v) => numberOf(v!)) as unknown as readonly [number, number, number];
  };
  const nm: number[] = [],
    spectrum: number[] = [];
  const amounts: Record<string, number> = {};
  fields.forEach((field, i) => {
    const w = wavelengthOfField(field);
    if (w !== undefined) {
      nm.push(w);
      spectrum.push(numberOf(values[i]));
    } else if (/^(?:CMYK?|RGB|\d+CLR|K|GRAY)_/i.test(field)) amounts[field] = numberOf(values[i]);
    // The standard's other way to write spectra: pairs of wavelength and percent.
    else if (/^SPECTRAL_NM$/i.test(field) && /^SPECTRAL_PCT$/i.test(fields[i + 1] ?? '')) {
      nm.push(numberOf(values[i]));
      spectrum.push(numberOf(values[i + 1]));
    }
  });
  const name = namingFields.map((f) => at.get(f.toUpperCase())).find((v) => v !== undefined && v !== '') ?? String(ordinal);
  return {
    name,
    place,
    spectrum: nm.length > 0 ? { wavelengthsNm: nm, values: spectrum } : undefined,
    xyz: three(['XYZ_X', 'XYZ_Y', 'XYZ_Z']),
    lab: three(['LAB_L', 'LAB_A', 'LAB_B']),
    amounts: Object.keys(amounts).length > 0 ? amounts : undefined,
  };
}

function splitLines(text: string): string[] {
  return text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
}

/** Words of a line: quoted ones whole (a doubled quote inside is one quote), `#` begins a comment. */
function wordsOf(line: string): { readonly text: string }[] {
  const out: { text: string }[] = [];
  const pattern = /"((?:[^"]|"")*)(?:"|$)|#.*|[^\s"#]+/g;
  for (const found of line.matchAll(pattern)) {
    if (found[0].startsWith('#')) break;
    out.push({ text: found[1] !== undefined ? found[1].replaceAll('""', '"') : found[0] });
  }
  return out;
}
