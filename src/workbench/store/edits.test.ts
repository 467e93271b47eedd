import { describe, expect, test } from 'vitest';
import { parseJob, type Job } from '../../core/job/index.ts';
import { moveLayer, withLayer, withTrials } from './edits.ts';

const layer = (id: string, ink: string | null = 'weed') => ({ id, name: id, cut: 'c', side: 'window', ink });
const job: Job = parseJob({
  schemaVersion: 1,
  title: 'Three runs',
  image: { widthMm: 10, heightMm: 10 },
  layers: [layer('sky'), layer('kelp'), layer('foam', null)],
});
const order = (j: Job): string => j.layers.map((l) => l.id).join(' ');

describe('edits of a job', () => {
  test('a run moves up and down the laydown and no farther than its ends', () => {
    expect(order(moveLayer(job, 'sky', 2))).toBe('kelp foam sky');
    expect(order(moveLayer(job, 'foam', 0))).toBe('foam sky kelp');
    expect(order(moveLayer(job, 'foam', 99))).toBe('sky kelp foam');
    expect(moveLayer(job, 'kelp', 1)).toBe(job);
  });

  test('an edit leaves the job before it as it was', () => {
    const before = JSON.stringify(job);
    const after = withLayer(job, 'kelp', { strength: 0.2 });
    expect(after.layers[1].strength).toBe(0.2);
    expect(after.layers[0]).toBe(job.layers[0]);
    expect(JSON.stringify(job)).toBe(before);
  });

  test('an ink is tried on open layers only, and only for show', () => {
    const tried = withTrials(
      job,
      new Map([
        ['foam', 'dusk'],
        ['kelp', 'dusk'],
      ]),
    );
    expect(tried.layers.map((l) => l.ink)).toEqual(['weed', 'weed', 'dusk']);
    expect(job.layers[2].ink).toBeNull();
  });
});
