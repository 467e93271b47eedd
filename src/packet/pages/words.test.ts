import { expect, test } from 'vitest';
import { plan } from '../../core/plan/index.ts';
import { smallJob } from '../packet-jobs.ts';
import { materialOf } from './words.ts';

test('a job that lists no materials still says what to cut from: the usual one it was planned with', () => {
  const named = plan(smallJob({ materials: [] }));
  expect(named.layers.map((layer) => materialOf(named, layer)?.name.key)).toEqual(['stencil.polyesterFilm', 'stencil.polyesterFilm']);
  const silent = plan(smallJob({ materials: [], cuts: smallJob().job.cuts.map((cut) => ({ ...cut, material: undefined })) }));
  expect(silent.layers.map((layer) => materialOf(silent, layer)?.name.key)).toEqual(['stencil.newsprint', 'stencil.newsprint']);
});
