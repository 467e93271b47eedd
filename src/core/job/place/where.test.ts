import { describe, expect, test } from 'vitest';
import { asWritten, tell } from '../../../words/index.ts';
import { problem } from '../../problem.ts';
import { jobJsonSchema } from '../schema/json-schema.ts';
import { settleProblems, whereIn } from './where.ts';

const job = {
  layers: [
    { id: 'sky', name: 'Sky', off: true },
    { id: 'kelp', name: 'Kelp', pinnedBridges: [{}] },
    { id: 'foam', name: 'Foam' },
    { id: 'sand' },
  ],
  forms: [{ id: 'frond', name: 'Frond' }],
  cuts: [{ id: 'kelp', name: 'Kelp', parts: [{ form: 'frond' }, { form: 'gone' }] }],
  inks: [
    { id: 'blue', name: 'Blue', from: 'ladder', steps: [{}] },
    { id: 'clear', name: 'Clear', from: 'clear', role: 'transparent-base' },
    { id: 'slate', name: 'Slate', from: 'mix', parts: [{ ink: 'blue' }] },
  ],
  papers: [{ id: 'white', name: 'White' }, { id: 'warm', name: 'Warm fibre', printed: {} }, {}],
  materials: [{ id: 'film', name: 'Film', stock: {} }],
  potLogs: [{ layer: 'kelp', contents: [{ ink: 'blue' }], rounds: [{ added: [{ ink: 'nowhere' }] }] }],
};
const english = (path: string): string => tell(whereIn(path, job));
const german = (path: string): string => tell(whereIn(path, job), { language: 'de', units: 'mm' });

describe('a path, as a printmaker says it', () => {
  test.each([
    ['layers[2].ink', 'the ink of run 2 (Foam)', 'die Farbe von Lauf 2 (Foam)'],
    ['layers[#foam].ink', 'the ink of run 2 (Foam)', 'die Farbe von Lauf 2 (Foam)'],
    ['layers[0].strength', 'the strength of the layer “Sky”', 'die Stärke der Schicht „Sky“'],
    ['layers[3].name', 'the name of run 3', 'der Name von Lauf 3'],
    ['layers[1].offContactMm', 'the gap under the screen in run 1 (Kelp)', 'der Absprung von Lauf 1 (Kelp)'],
    ['layers[1].pinnedBridges[0].fromMm[1]', 'the start of bridge 1 of run 1 (Kelp)', 'der Anfang von Steg 1 von Lauf 1 (Kelp)'],
    ['screen.offContactMm', 'the gap under the screen', 'der Absprung'],
    ['screen.mesh.perCm', 'the thread count of the mesh', 'die Fadenzahl des Gewebes'],
    ['papers[1].printed.picture', 'the picture on the paper “Warm fibre”', 'das Bild auf dem Papier „Warm fibre“'],
    ['papers[1].reading.lab[2]', 'the reading of the paper “Warm fibre”, its Lab', 'der Messwert des Papiers „Warm fibre“, sein Lab'],
    ['papers[2].widthMm', 'the width of paper 3', 'die Breite von Papier 3'],
    ['inks[2].parts[0].ink', 'the ink of part 1 (Blue) of the mix “Slate”', 'die Farbe von Teil 1 (Blue) der Mischung „Slate“'],
    ['inks[#clear].densityGPerMl', 'the density of the base “Clear”', 'die Dichte der Base „Clear“'],
    ['inks[0].steps[0].over', 'the reading of strength 1 of the ink “Blue”', 'der Messwert von Stärke 1 der Farbe „Blue“'],
    [
      'cuts[0].parts[0].xMm',
      'the position across of form 1 (Frond) of the cut “Kelp”',
      'die Lage quer von Form 1 (Frond) des Schnitts „Kelp“',
    ],
    ['materials[#film].stock.widthMm', 'the width of the sheets of the material “Film”', 'die Breite der Bogen des Materials „Film“'],
    [
      'potLogs[0].rounds[0].added[0].grams',
      'the grams of ingredient 1 of drawdown 1 of the pot log of Kelp',
      'das Gewicht von Zutat 1 von Aufzug 1 des Topfprotokolls von Kelp',
    ],
    ['edition.target', 'the size of the edition', 'die Höhe der Auflage'],
    ['edition.setApart.W3', 'the sheets set apart', 'die beiseitegelegten Bogen'],
    ['papers', 'the papers', 'die Papiere'],
    ['', 'the job', 'die Arbeit'],
  ])('%s', (path, en, de) => {
    expect(english(path)).toBe(en);
    expect(german(path)).toBe(de);
  });

  test('what is no path, or leads past what is there, is said as far as it goes', () => {
    expect(english('no words of a path')).toBe('the job');
    expect(english('layers[#gone].ink')).toBe('the layers');
    expect(english('layers[9].ink')).toBe('the ink of run 4');
    expect(english('layers[2].mood')).toBe('run 2 (Foam)');
    expect(english('layers[2].constructor.name')).toBe('run 2 (Foam)');
    expect(english('toString')).toBe('the job');
    expect(tell(whereIn('layers[2].ink', { layers: 'none' }))).toBe('the ink of run 1');
  });

  test('every field of the schema has its noun, in both languages', () => {
    const paths = new Set(fieldsOf(JSON.parse(jobJsonSchema()) as Schema, ''));
    expect(paths.size).toBeGreaterThan(200);
    const broad = ['layers[0]', 'inks[0]', 'papers[0]', 'the job'];
    for (const path of paths) {
      const above = path.replace(/(\.\w+|\[0\])$/, '');
      const [en, de] = [english(path), german(path)];
      expect(broad, path).not.toContain(en);
      for (const text of [en, de]) expect(text, path).not.toMatch(/undefined|\[object|where\./);
      if (above !== path && !path.endsWith('[0]')) expect(en, `${path} is called as ${above} is`).not.toBe(english(above));
      expect(de, path).not.toBe(en);
    }
  });
});

describe('problems as they leave core', () => {
  const settled = (path: string) => settleProblems([problem('error', 'x', path, asWritten(''), asWritten(''))], job)[0];

  test('ids become numbers for programs, and each leads to where it is mended', () => {
    expect(settled('layers[#foam].ink')).toMatchObject({ path: 'layers[2].ink', lead: { station: 'laydown', id: 'foam' } });
    expect(settled('layers[#foam]')).toMatchObject({ path: 'layers[2]', lead: { station: 'stencils', part: 'layer', id: 'foam' } });
    expect(settled('layers[1].offContactMm')).toMatchObject({ lead: { station: 'press', part: 'gap', id: 'kelp' } });
    expect(settled('materials[#film].stock')).toMatchObject({
      path: 'materials[0].stock',
      lead: { station: 'stencils', part: 'material', id: 'film' },
    });
    expect(settled('papers[1].printed.picture')).toMatchObject({ lead: { station: 'press', part: 'papers', id: 'warm' } });
    expect(settled('screen')).toMatchObject({ lead: { station: 'press', part: 'screen' } });
    expect(settled('layers')).toMatchObject({ lead: { station: 'laydown' } });
    expect(settled('title').lead).toBeUndefined();
  });

  test('a place outside the job stays as it was given', () => {
    const file = { key: 'where.file', values: { file: { kind: 'name', name: 'a.svg' } } } as const;
    const p = problem('error', 'x', file, asWritten(''), asWritten(''));
    expect(settleProblems([p], job)[0]).toBe(p);
  });
});

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
}

/** Every path of a schema, the first of each list standing for all. */
function fieldsOf(schema: Schema, path: string): string[] {
  return [
    ...Object.entries(schema.properties ?? {}).flatMap(([field, of]) => {
      const at = path === '' ? field : `${path}.${field}`;
      return [at, ...fieldsOf(of, at)];
    }),
    ...(schema.items?.properties || schema.items?.oneOf || schema.items?.anyOf ? fieldsOf(schema.items, `${path}[0]`) : []),
    ...[...(schema.anyOf ?? []), ...(schema.oneOf ?? [])].flatMap((one) => fieldsOf(one, path)),
  ];
}
