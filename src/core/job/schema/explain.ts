import type { z } from 'zod';
import { name as asName, say, type Key, type Names, type Saying } from '../../../words/say.ts';
import type { fields as catalogue } from '../../../words/en/core/fields.ts';
import { JobSchema } from './schema.ts';
import { nearest, shapeOf, unwrapped } from '../file/unknown.ts';

/** A field of the job, for whoever writes one by hand. */
export interface Explained {
  readonly path: string;
  readonly means: Saying;
  /** Null for what has none: a text, a choice, a group. */
  readonly unit: Names | null;
  /** What it may be, as it is written; empty for a group. */
  readonly range: string;
  /** What holds when it is left out. */
  readonly standard?: string;
  /** As it is written in the file. */
  readonly example: string;
  readonly fields: readonly { readonly name: string; readonly means: Saying }[];
}

type Schema = z.ZodType;
interface Def {
  readonly type: string;
  readonly innerType?: Schema;
  readonly element?: Schema;
  readonly items?: readonly Schema[];
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
  readonly defaultValue?: unknown;
}
const defOf = (schema: Schema): Def => schema.def as unknown as Def;

const meansOf = (field: string): Saying => say(`fields.${field as keyof typeof catalogue}` satisfies Key);

const units: readonly (readonly [RegExp, string])[] = [
  [/PerM2$/, 'cm³/m²'],
  [/NPerCm$/, 'N/cm'],
  [/GPerMl$/, 'g/ml'],
  [/^perCm$|PerCm$/, '1/cm'],
  [/Mm$/, 'mm'],
  [/Microns$/, 'µm'],
  [/Deg$/, '°'],
  [/Percent$/, '%'],
  [/^metresPerMinute$/, 'm/min'],
  [/^seconds/, 's'],
  [/^pullsPerHour/, '1/h'],
  [/(Minutes|^minutes)$/, 'min'],
  [/Hour$/, 'h'],
  [/^grams$/, 'g'],
  [/^metres$/, 'm'],
  [/^sigma$/, 'ΔE'],
  [/^(strength|share|coverages|certainty|spoilagePerRun|artistsProofShare|transfer|x|y|width|height|radius|crop)$/, '0..1'],
];

/** The unit that a field's name carries. */
function unitOf(field: string): string | null {
  return units.find(([name]) => name.test(field))?.[1] ?? null;
}

/** Examples where a type alone would give a poor one. */
const examples: Readonly<Record<string, unknown>> = {
  colours: ['#d04020'],
  id: 'kelp',
  name: 'Kelp',
  print: '7c0f2d3e',
  title: 'Tide pool',
  maker: 'A. Printer',
  language: 'de',
  widthMm: 180,
  heightMm: 240,
  thicknessMm: 0.11,
  leastBridgeMm: 2,
  leastOpeningMm: 1,
  prints: [20, 50],
  drawing: 'kelp.svg',
  picture: 'blue-moon.png',
  file: 'boat.jpg',
  note: 'Try it in any ink.',
  outline: [
    [
      [0, 0],
      [40, 0],
      [20, 30],
    ],
  ],
  material: 'film',
  form: 'kelp',
  cut: 'kelp',
  ink: 'weed',
  base: 'clear-base',
  bases: [
    { ink: 'clear-base', share: 0.7 },
    { ink: 'extender', share: 0.3 },
  ],
  punchesMm: [3, 5, 8],
  sheetMm: [250, 310],
  layer: 'kelp',
  paper: 'smooth-white',
  strength: 0.6,
  share: 0.5,
  coverages: [0.5],
  rulingPerCm: 16,
  leastDotMicrons: 150,
  xMm: 90,
  yMm: 120,
  scale: 0.7,
  count: 20,
  columns: 4,
  rows: 3,
  stepXMm: 30,
  stepYMm: 30,
  lab: [62, -38, 12],
  xyz: [30, 40, 20],
  sigma: 1,
  grams: 24,
  perCm: 77,
  threadMicrons: 48,
  openingMicrons: 80,
  openPercent: 37,
  thicknessMicrons: 80,
  theoreticalCm3PerM2: 30,
  insideWidthMm: 400,
  insideHeightMm: 500,
  offContactMm: 3,
  tensionNPerCm: 18,
  squeegeeMm: 220,
  transfer: [0.6, 0.9],
  year: 2026,
  workshop: 'Kitchen table',
  printer: 'A. Printer',
  date: '2026-05-04',
  printedFrom: '2026-05-04',
  printedTo: '2026-05-06',
  place: 'top left',
  across: 2,
  down: -1,
  humidityPercent: 50,
  imageMm: [180, 240],
  readsMm: 0.1,
  signature: 'in pencil, lower right',
  otherEditions: '',
  says: '',
  state: 'K7F-2QMB',
};

function exampleOf(schema: Schema, field: string): unknown {
  const one = unwrapped(schema);
  const def = defOf(one);
  const known = examples[field];
  if (known !== undefined && one.safeParse(known).success) return known;
  const standard = standardOf(schema);
  if (standard !== undefined && def.type !== 'array' && def.type !== 'object') return standard;
  if (def.entries) return Object.values(def.entries)[0];
  if (def.values) return def.values[0];
  if (def.type === 'tuple') return (def.items ?? []).map((item) => exampleOf(item, field));
  if (def.type === 'array') {
    if (!def.element) return [];
    const element = exampleOf(def.element, field);
    const lists = [1, 2, 3, 36].map((n) => Array.from({ length: n }, () => element));
    return lists.find((list) => one.safeParse(list).success) ?? [];
  }
  const shape = shapeOf(one);
  if (shape) {
    const options = (one.def as { options?: Schema[] }).options;
    const least = options ? (shapeOf(unwrapped(options[0])) ?? shape) : shape;
    return Object.fromEntries(
      Object.entries(least)
        .filter(([, inner]) => !inner.safeParse(undefined).success)
        .map(([key, inner]) => [key, exampleOf(inner, key)]),
    );
  }
  for (const value of [true, 1, 0.5, 10, 'name', {}]) if (one.safeParse(value).success) return value;
  return null;
}

function standardOf(schema: Schema): unknown {
  let one = schema;
  for (;;) {
    const def = defOf(one);
    if (def.defaultValue !== undefined) return def.defaultValue;
    if (!def.innerType) return undefined;
    one = def.innerType;
  }
}

function rangeOf(schema: Schema): string {
  const one = unwrapped(schema);
  const def = defOf(one);
  if (def.entries) return Object.values(def.entries).join(' | ');
  if (def.values) return def.values.join(' | ');
  if (def.type === 'boolean') return 'true | false';
  const { minValue, maxValue } = one as { minValue?: number | null; maxValue?: number | null };
  const finite = (v: unknown): v is number => typeof v === 'number' && Number.isFinite(v) && Math.abs(v) < Number.MAX_SAFE_INTEGER;
  return finite(minValue) && finite(maxValue) ? `${minValue} .. ${maxValue}` : finite(minValue) ? `≥ ${minValue}` : '';
}

/** Every field with its path, once, in the order of the schema. */
export function* allFields(schema: Schema = JobSchema, path = ''): Generator<{ path: string; name: string; schema: Schema }> {
  let one = unwrapped(schema);
  for (let element = defOf(one).element; element; element = defOf(one).element) one = unwrapped(element);
  const shape = shapeOf(one);
  if (!shape) return;
  for (const [name, inner] of Object.entries(shape)) {
    const at = path === '' ? name : `${path}.${name}`;
    yield { path: at, name, schema: inner };
    yield* allFields(inner, at);
  }
}

export function explainOne({ path, name, schema }: { path: string; name: string; schema: Schema }): Explained {
  let one = unwrapped(schema);
  for (let element = defOf(one).element; element; element = defOf(one).element) one = unwrapped(element);
  const unit = unitOf(name);
  const standard = standardOf(schema);
  return {
    path,
    means: meansOf(name),
    unit: unit === null ? null : asName(unit),
    range: rangeOf(schema),
    ...(standard === undefined || typeof standard === 'object' ? {} : { standard: JSON.stringify(standard) }),
    example: JSON.stringify({ [name]: exampleOf(schema, name) }).slice(1, -1),
    fields: Object.keys(shapeOf(one) ?? {}).map((field) => ({ name: field, means: meansOf(field) })),
  };
}

const mostFound = 6;

/** A field by its name or its path; `near` where none is called so. */
export function explainField(asked: string): {
  readonly found: readonly Explained[];
  readonly near: readonly string[];
  readonly top: readonly string[];
} {
  const all = [...allFields()];
  const top = all.filter((one) => !one.path.includes('.')).map((one) => one.path);
  const plain = asked.replace(/\[[^\]]*\]/g, '').replace(/^job\.?/, '');
  if (plain === '')
    return {
      found: [
        {
          path: '',
          means: say('where.job'),
          unit: null,
          range: '',
          example: '"schemaVersion": 1',
          fields: top.map((name) => ({ name, means: meansOf(name) })),
        },
      ],
      near: [],
      top,
    };
  const exact = all.filter((one) => one.path === plain);
  const found = exact.length > 0 ? exact : all.filter((one) => one.path.endsWith(`.${plain}`) || one.name === plain);
  const once = [...new Map(found.map((one) => [one.path, one])).values()].slice(0, mostFound);
  const near = nearest(plain.split('.').at(-1) ?? plain, [...new Set(all.map((one) => one.name))]);
  return { found: once.map(explainOne), near: near === null ? [] : [near], top };
}
