import { expect, test } from 'vitest';
import { JobSchema } from '../../../core/job/schema/schema.ts';
import { freshId, freshName, newCut, newPart, withNewLayer, withoutPart } from './edits.ts';

const empty = JobSchema.parse({ schemaVersion: 1, title: 'Test', image: { widthMm: 100, heightMm: 100 } });

test('a second drawing of the same name gets a name of its own', () => {
  expect(freshId([], 'Blatt größe.svg')).toBe('blatt-gro-e-svg');
  expect(freshId([{ id: 'kelp' }, { id: 'kelp-2' }], 'Kelp')).toBe('kelp-3');
});

test('the same drawing brought again gives a form of another name', () => {
  expect(freshName([], 'Leaf')).toBe('Leaf');
  expect(freshName([{ name: 'Leaf' }, { name: 'Leaf 2' }], 'Leaf')).toBe('Leaf 3');
});

test('with its last form a cut goes, and the layers it served go with it', () => {
  const { job, id } = newCut(empty, 'Kelp', newPart('kelp', 50, 50));
  const printed = withNewLayer(job, id, 'window', 'Kelp')!.job;
  const wished = { ...printed, wanted: [{ layers: ['kelp'], lab: [50, 0, 0] as [number, number, number] }] };
  const bare = withoutPart(wished, id, 0);
  expect([bare.cuts.length, bare.layers.length, bare.wanted.length]).toEqual([0, 0, 0]);
});

test('a ninth layer is refused: a sheet takes eight in one laydown', () => {
  let { job } = newCut(empty, 'Kelp', newPart('kelp', 50, 50));
  for (let i = 0; i < 8; i++) job = withNewLayer(job, 'kelp', 'window', `Run ${i}`)!.job;
  expect(withNewLayer(job, 'kelp', 'piece', 'One more')).toBeNull();
});
