import { SaxesParser } from 'saxes';
import { fail } from '../../problem.ts';
import { asWritten, name as asName, say, type Saying } from '../../../words/say.ts';
import { choosePatches, lightProblems, mostPatches, numberOf, type RawPatch, type ReadFile } from './patch.ts';

const deepest = 64;

interface OpenPatch {
  name: string;
  place: Saying;
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
export function readCxf(text: string, fileName: string): ReadFile {
  const file = say('where.file', { file: asName(fileName) });
  const objects: OpenPatch[] = [];
  const about: Record<string, string> = {};
  const ranges = new Map<string, { startNm: number; stepNm: number }>();
  const light = new Map<string, string>();
  const parser = new SaxesParser({ xmlns: true, position: true });
  const path: string[] = [];
  const place = (): Saying => say('where.fileLine', { file: asName(fileName), line: parser.line });
  let open: OpenPatch | undefined;
  let specification: string | undefined;
  let words = '';

  parser.on('doctype', () => fail('xml-doctype', place(), say('readings.documentType'), say('readings.exportWithout')));
  parser.on('error', () => fail('xml-broken', place(), say('readings.xmlBroken'), say('readings.exportCutShort')));
  parser.on('opentag', (tag) => {
    path.push(tag.local);
    if (path.length > deepest) fail('xml-too-deep', place(), say('readings.tooDeep'), say('readings.exportFromProgram'));
    words = '';
    const attribute = (name: string): string | undefined => Object.values(tag.attributes).find((a) => a.local === name)?.value;
    if (tag.local === 'Object') {
      if (objects.length >= mostPatches)
        fail('too-many-patches', place(), say('readings.tooManyPatches', { most: mostPatches }), say('readings.exportFewer'));
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
        place: say('readings.patchAt', { where: o.place, patch: asWritten(o.name) }),
        spectrum,
        xyz: 'X' in o.xyz && 'Y' in o.xyz && 'Z' in o.xyz ? [o.xyz.X, o.xyz.Y, o.xyz.Z] : undefined,
        lab: 'L' in o.lab && 'A' in o.lab && 'B' in o.lab ? [o.lab.L, o.lab.A, o.lab.B] : undefined,
      };
    })
    .filter((p) => p.spectrum ?? p.xyz ?? p.lab);
  if (raw.length === 0) fail('no-readings', file, say('readings.nothingMeasured'), say('readings.exportMeasured'));
  const chosen = choosePatches(raw, file);
  const lights = chosen.patches.some((p) => p.reading.kind !== 'spectrum') ? lightProblems([...light.values()].join(' '), file) : [];
  for (const [key, value] of light) about[key] = value;
  return { format: 'cxf', patches: chosen.patches, about, problems: [...chosen.problems, ...lights] };
}
