import { expect, test } from 'vitest';
import { english, tell } from '../src/words/index.ts';
import { parseJob } from '../src/core/job/file/parse.ts';
import { checkJob } from '../src/core/job/check.ts';
import { beginJob } from '../src/core/job/begin.ts';
import { isDone, markDone, stateOf, touchesDone, withCutBridges } from '../src/core/job/done.ts';
import { allFields, explainField, explainOne } from '../src/core/job/schema/explain.ts';
import { fingerprintOf } from '../src/core/job/file/fingerprint.ts';
import { jobJsonSchema } from '../src/core/job/schema/json-schema.ts';
import { starterInks } from '../src/core/asks/index.ts';
import { plan } from '../src/core/plan/index.ts';

const names = {
  title: 'T',
  form: 'Hill',
  first: 'A',
  second: 'B',
  paper: 'P',
  stock: 'S',
  note: 'N',
};
const begun = (): ReturnType<typeof parseJob> => parseJob(beginJob(names, starterInks(tell)));
const files = new Map<string, Uint8Array>();

test('every field says what it means, and its example is one that the field takes', () => {
  let fields = 0;
  for (const field of allFields()) {
    fields++;
    const explained = explainOne(field);
    expect(tell(explained.means), field.path).toMatch(/[.?]$/);
    const [value] = Object.values(JSON.parse(`{${explained.example}}`) as Record<string, unknown>);
    expect(field.schema.safeParse(value).success, `${field.path}: ${explained.example}`).toBe(true);
    if (/(Mm|Microns|Minutes|Hour|Percent|Deg)$/.test(field.name)) expect(explained.unit, field.path).not.toBeNull();
  }
  expect(fields).toBeGreaterThan(200);
});

test('the JSON Schema carries a description and an example on each field', () => {
  const walk = (node: Record<string, unknown>, path: string): void => {
    for (const [name, property] of Object.entries((node['properties'] ?? {}) as Record<string, Record<string, unknown>>)) {
      expect(typeof property['description'], `${path}.${name}`).toBe('string');
      expect(Array.isArray(property['examples']), `${path}.${name}`).toBe(true);
      walk(property, `${path}.${name}`);
    }
    if (node['items']) walk(node['items'] as Record<string, unknown>, path);
    for (const key of ['oneOf', 'anyOf']) for (const one of (node[key] ?? []) as Record<string, unknown>[]) walk(one, path);
  };
  walk(JSON.parse(jobJsonSchema()) as Record<string, unknown>, '');
});

test('a field is explained by its name, by its path, and a slip of the hand is told', () => {
  expect(explainField('layers.strength').found.map((one) => one.path)).toEqual(['layers.strength']);
  expect(explainField('strength').found.length).toBeGreaterThan(0);
  expect(explainField('strenght')).toMatchObject({ found: [], near: ['strength'] });
});

test('a field that is not known is kept, and said with the one that is meant', () => {
  const document = beginJob(names, starterInks(tell)) as { layers: Record<string, unknown>[]; papers: Record<string, unknown>[] };
  document.layers[0]['strenght'] = 0.2;
  document.papers[0]['myOwnShelf'] = 'left';
  const job = parseJob(document);
  expect((job.layers[0] as unknown as Record<string, unknown>)['strenght']).toBe(0.2);
  const said = checkJob({ job, attachments: files }).filter((p) => p.code === 'unknown-field');
  expect(said.map((p) => [p.severity, p.path])).toEqual([
    ['note', 'layers[0]'],
    ['note', 'papers[0]'],
  ]);
  expect(tell(said[0].message, english)).toContain('strenght');
  expect(tell(said[0].advice!, english)).toContain('strength');
  expect(checkJob({ job: begun(), attachments: files }).filter((p) => p.code === 'unknown-field')).toEqual([]);
});

test('the smallest job plans: two runs from one cut, no errors, no warnings about fields', () => {
  const made = plan({ job: begun(), attachments: files });
  expect(made.layers.map((l) => l.side)).toEqual(['window', 'piece']);
  expect(new Set(made.layers.map((l) => l.cutId)).size).toBe(1);
  expect(made.problems.filter((p) => p.severity === 'error')).toEqual([]);
});

test('the mark of a job changes with the work, and not with the order of fields, the log of a pot or what is done', () => {
  const job = begun();
  const mark = fingerprintOf({ job, attachments: files });
  expect(mark).toMatch(/^[2-9A-HJ-NP-Z]{3}-[2-9A-HJ-NP-Z]{4}$/);
  const turned = Object.fromEntries(Object.entries(job).reverse()) as unknown as typeof job;
  expect(fingerprintOf({ job: turned, attachments: files })).toBe(mark);
  expect(fingerprintOf({ job: markDone(job, 'below', 'pulled'), attachments: files })).toBe(mark);
  const changes: (typeof job)[] = [
    { ...job, image: { widthMm: 121, heightMm: 160 } },
    { ...job, layers: job.layers.map((l) => ({ ...l, strength: l.strength + 0.001 })) },
    { ...job, layers: [...job.layers].reverse() },
    { ...job, edition: { ...job.edition, target: 6 } },
  ];
  const marks = changes.map((one) => fingerprintOf({ job: one, attachments: files }));
  expect(new Set([mark, ...marks]).size).toBe(5);
});

test('cut is cut: a change of the shape is told, a change of the pot is not; and the other way round', () => {
  const job = markDone(markDone(begun(), 'below', 'cut'), 'below', 'mixed');
  expect(isDone(job, 'below', 'cut')).toBe(true);
  const larger = { ...job, cuts: job.cuts.map((c) => ({ ...c, parts: c.parts.map((p) => ({ ...p, scale: 1.1 })) })) };
  const weaker = { ...job, layers: job.layers.map((l) => ({ ...l, strength: 0.3 })) };
  const renamed = { ...job, layers: job.layers.map((l) => ({ ...l, name: `${l.name}!` })) };
  expect(touchesDone(job, larger)).toEqual([{ layer: 'below', kind: 'cut' }]);
  expect(touchesDone(job, weaker)).toEqual([{ layer: 'below', kind: 'mixed' }]);
  expect(touchesDone(job, renamed)).toEqual([]);
  const codes = (one: typeof job): string[] => checkJob({ job: one, attachments: files }).map((p) => p.code);
  expect(codes(larger)).toContain('cut-is-cut');
  expect(codes(weaker)).toContain('mixed-is-mixed');
  expect(codes(job).filter((c) => c.endsWith('-is-cut') || c.endsWith('-is-mixed'))).toEqual([]);
  expect(checkJob({ job: markDone(larger, 'below', 'cut', { done: false }), attachments: files }).map((p) => p.code)).not.toContain(
    'cut-is-cut',
  );
  expect(stateOf(job, 'nobody', 'cut')).toBeNull();
});

test('bridges of a finished stencil stay, whatever is changed about the pots', () => {
  const bridges = [{ fromMm: [10, 10] as [number, number], toMm: [20, 10] as [number, number], widthMm: 2 }];
  const job = markDone(begun(), 'below', 'cut', { bridges });
  expect(withCutBridges(job, job.layers[0]).pinnedBridges).toEqual(bridges);
  expect(withCutBridges(job, job.layers[1]).pinnedBridges).toBeUndefined();
});
