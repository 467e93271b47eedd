import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepareDrawings } from '../../../form/index.ts';
import { readJob, type Job, type JobBundle } from '../../../job/index.ts';
import { createPlanner, readyBundle, type Planner } from '../../plan.ts';
import { paintOverPicture } from '../../../print/index.ts';

let bundle: JobBundle;
let planner: Planner;
/** Makes whole Plans only. */
let other: Planner;
beforeAll(async () => {
  await prepareDrawings(readFileSync(new URL('../../../../../node_modules/@resvg/resvg-wasm/index_bg.wasm', import.meta.url)));
  const folder = new URL('../../../../../examples/tide-pool/', import.meta.url);
  bundle = readJob(new Map(readdirSync(folder).map((name) => [name, new Uint8Array(readFileSync(new URL(name, folder)))])));
  planner = createPlanner();
  other = createPlanner();
  planner.plan(bundle);
});

const changed = (change: (job: Job) => Partial<Job>): Job => ({ ...bundle.job, ...change(bundle.job) });

describe('colours while the hand moves', () => {
  const moves: Record<string, (job: Job) => Partial<Job>> = {
    'another strength': (job) => ({ layers: job.layers.map((l) => (l.id === 'kelp' ? { ...l, strength: 0.4 } : l)) }),
    'the laydown turned round': (job) => ({ layers: job.layers.toReversed() }),
    'an open run tried in an ink': (job) => ({ layers: job.layers.map((l) => (l.ink === null ? { ...l, ink: 'slate' } : l)) }),
    'a run left open': (job) => ({ layers: job.layers.map((l) => (l.id === 'water' ? { ...l, ink: null } : l)) }),
  };
  for (const [what, move] of Object.entries(moves)) {
    test(`${what}: quick colours are the Plan’s own, to the last digit`, () => {
      planner.plan(bundle);
      const job = changed(move);
      const quick = planner.recolour(job, 'warm-fibre')!;
      const whole = other.plan({ ...bundle, job });
      const paper = whole.papers.find((p) => p.id === 'warm-fibre')!;
      expect(quick.paper.palette).toEqual(paper.palette);
      expect(quick.paper.progressive).toEqual(paper.progressive);
      expect(quick.layers.map((l) => [l.id, l.run, l.inkId, l.swatch])).toEqual(whole.layers.map((l) => [l.id, l.run, l.inkId, l.swatch]));
      const labs = new Map(paper.overlaps.map((o) => [o.code, o.lab]));
      const shared = quick.paper.overlaps.filter((o) => labs.has(o.code));
      expect(shared.length).toBeGreaterThan(5);
      for (const overlap of shared) expect(overlap.lab).toEqual(labs.get(overlap.code));
    });
  }

  test('a run left out, and taken in again: every overlap has the Plan’s own colour', () => {
    const out = changed((job) => ({ layers: job.layers.map((l) => (l.id === 'water' ? { ...l, off: true } : l)) }));
    planner.plan(bundle);
    const quick = planner.recolour(out, 'warm-fibre')!;
    const whole = other.plan({ ...bundle, job: out });
    expect(quick.layers.map((l) => [l.id, l.run])).toEqual(whole.layers.map((l) => [l.id, l.run]));
    const labs = new Map(whole.papers.find((p) => p.id === 'warm-fibre')!.overlaps.map((o) => [o.layers.join(), o.lab]));
    const shared = quick.paper.overlaps.filter((o) => labs.has(o.layers.join()));
    expect(shared.length).toBeGreaterThan(5);
    for (const overlap of shared) expect(overlap.lab).toEqual(labs.get(overlap.layers.join()));
    expect(planner.recolour(bundle.job, 'warm-fibre')!.paper.palette).toEqual(
      other.plan(bundle).papers.find((p) => p.id === 'warm-fibre')!.palette,
    );
    planner.plan({ ...bundle, job: out });
    expect(planner.recolour(bundle.job, 'warm-fibre'), 'its stencil is not known').toBeNull();
  });

  test('over an earlier print the quick proof is the Plan’s to a few levels', async () => {
    const printed = await readyBundle(bundle);
    const id = bundle.job.papers.find((p) => p.printed)!.id;
    planner.plan(printed);
    const job = changed(moves['another strength']);
    const quick = planner.recolour(job, id)!;
    const whole = other.plan({ ...printed, job });
    const [soon, then] = [quick.paper, whole.papers.find((p) => p.id === id)!].map(({ overPicture }) => {
      const { ground, cube, rowOfCode } = overPicture!;
      const out = new Uint32Array(whole.codes.data.length);
      paintOverPicture(whole.codes, ground, cube, rowOfCode, out);
      return new Uint8Array(out.buffer);
    });
    const off = soon.reduce((sum, level, i) => sum + Math.abs(level - then[i]), 0) / soon.length;
    expect(off).toBeGreaterThan(0);
    expect(off).toBeLessThan(1.5);
    expect(soon.reduce((worst, level, i) => Math.max(worst, Math.abs(level - then[i])), 0)).toBeLessThan(26);
  });

  test('what needs a new stencil is left to the whole Plan', () => {
    planner.plan(bundle);
    expect(
      planner.recolour(
        changed((job) => ({ layers: job.layers.slice(1) })),
        'smooth-white',
      ),
    ).toBeNull();
    expect(
      planner.recolour(
        changed((job) => ({ cuts: job.cuts.map((c) => ({ ...c, parts: c.parts.map((p) => ({ ...p, xMm: p.xMm + 1 })) })) })),
        'smooth-white',
      ),
    ).toBeNull();
    expect(planner.recolour(bundle.job, 'no-such-paper')).toBeNull();
  });
});
