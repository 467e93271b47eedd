import { SaxesParser } from 'saxes';
import { fail, problem, ProblemError, type Problem } from '../../problem.ts';
import { choosePatches, lightProblems, mostPatches, numberOf, type RawPatch, type ReadFile } from './patch.ts';

const deepest = 64;

interface OpenPatch {
  name: string;
  place: string;
  spectrum?: { wavelengthsNm: number[]; values: number[] };
  specification?: string;
  startNm?: number;
  stepNm?: number;
  xyz: Record<string, number>;
  lab: Record<string, number>;
}

/**
 * Readings in CxF3 (ISO 17972-1): every Object with a reflectance spectrum, CIE XYZ or CIE Lab. Elements are known by
 * their local names, so any prefix will do. Entities and document types are refused, never followed.
 * @throws ProblemError when the file is no well-formed XML, or holds no colour
 */
export function readCxf(text: string, fileName = 'readings'): ReadFile {
  const objects: OpenPatch[] = [];
  const about: Record<string, string> = {};
  const ranges = new Map<string, { startNm: number; stepNm: number }>();
  const light = new Map<string, string>();
  const problems: Problem[] = [];
  const parser = new SaxesParser({ xmlns: true, position: true });
  const path: string[] = [];
  const place = (): string => `${fileName} line ${parser.line}`;
  let open: OpenPatch | undefined;
  let specification: string | undefined;
  let words = '';
  let broken: string | undefined;

  parser.on('doctype', () =>
    fail(
      'xml-doctype',
      place(),
      'The file declares a document type, through which other files could be drawn in.',
      'Export it again without; it was not read.',
    ),
  );
  parser.on('error', (error) => {
    broken ??= error.message;
    throw new ProblemError([
      problem(
        'error',
        'xml-broken',
        place(),
        'The file is no whole XML from here on.',
        'Export it again; it may have been cut short on its way.',
      ),
    ]);
  });
  parser.on('opentag', (tag) => {
    path.push(tag.local);
    if (path.length > deepest)
      fail('xml-too-deep', place(), 'The file is nested too deep for a file of readings.', 'Export it again from the measuring program.');
    words = '';
    const attribute = (name: string): string | undefined => Object.values(tag.attributes).find((a) => a.local === name)?.value;
    if (tag.local === 'Object') {
      if (objects.length >= mostPatches)
        fail('too-many-patches', place(), `The file has more than ${mostPatches} patches.`, 'Export only the drawdowns that are needed.');
      open = { name: attribute('Name') ?? attribute('Id') ?? String(objects.length + 1), place: place(), xyz: {}, lab: {} };
    } else if (tag.local === 'ReflectanceSpectrum' && open) {
      open.specification = attribute('ColorSpecification');
      const start = numberOf(attribute('StartWL') ?? ''),
        step = numberOf(attribute('Increment') ?? '');
      if (Number.isFinite(start)) open.startNm = start;
      if (Number.isFinite(step)) open.stepNm = step;
    } else if (tag.local === 'ColorSpecification') specification = attribute('Id');
    else if (tag.local === 'WavelengthRange' && specification !== undefined) {
      ranges.set(specification, { startNm: numberOf(attribute('StartWL') ?? ''), stepNm: numberOf(attribute('Increment') ?? '') });
    }
  });
  parser.on('text', (piece) => {
    words += piece;
  });
  parser.on('closetag', (tag) => {
    const parent = path[path.length - 2];
    if (open) {
      if (tag.local === 'ReflectanceSpectrum') open.spectrum = { wavelengthsNm: [], values: words.trim().split(/\s+/).map(numberOf) };
      else if (parent === 'ColorCIEXYZ' && /^[XYZ]$/.test(tag.local)) open.xyz[tag.local] = numberOf(words);
      else if (parent === 'ColorCIELab' && /^[LAB]$/i.test(tag.local)) open.lab[tag.local.toUpperCase()] = numberOf(words);
    } else if (/^(?:Creator|Description|CreationDate|Comment)$/.test(tag.local) && words.length < 2000) about[tag.local] ??= words.trim();
    if (/^(?:Illuminant|Observer)$/.test(tag.local)) light.set(tag.local, words.trim());
    if (tag.local === 'Object' && open) {
      objects.push(open);
      open = undefined;
    }
    if (tag.local === 'ColorSpecification') specification = undefined;
    path.pop();
    words = '';
  });
  parser.write(text).close();

  const raw = objects
    .map((o): RawPatch => {
      const range = o.specification !== undefined ? ranges.get(o.specification) : undefined;
      const startNm = o.startNm ?? range?.startNm ?? 380;
      const stepNm = o.stepNm ?? range?.stepNm ?? 10;
      const usable = o.spectrum && Number.isFinite(startNm) && stepNm > 0;
      const spectrum = usable
        ? { wavelengthsNm: o.spectrum!.values.map((_, i) => startNm + i * stepNm), values: o.spectrum!.values }
        : undefined;
      return {
        name: o.name,
        place: `${o.place} (${o.name})`,
        spectrum,
        xyz: 'X' in o.xyz && 'Y' in o.xyz && 'Z' in o.xyz ? [o.xyz.X, o.xyz.Y, o.xyz.Z] : undefined,
        lab: 'L' in o.lab && 'A' in o.lab && 'B' in o.lab ? [o.lab.L, o.lab.A, o.lab.B] : undefined,
      };
    })
    .filter((p) => p.spectrum ?? p.xyz ?? p.lab);
  if (raw.length === 0)
    fail(
      'no-readings',
      fileName,
      'There is no reflectance, XYZ or Lab in this file.',
      'Export the measured colours, not only the wanted ones of a screen.',
    );
  const chosen = choosePatches(raw);
  const lights = chosen.patches.some((p) => p.reading.kind !== 'spectrum') ? lightProblems([...light.values()].join(' '), fileName) : [];
  for (const [key, value] of light) about[key] = value;
  return { format: 'cxf', patches: chosen.patches, about, problems: [...problems, ...chosen.problems, ...lights] };
}
