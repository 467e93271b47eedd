import { beforeAll, describe, expect, test } from 'vitest';
import { prepare } from '../src/cli/assets.ts';
import { readJobAt } from '../src/cli/disk/folder.ts';
import { deltaE00 } from '../src/core/colour/index.ts';
import { regionArea } from '../src/core/form/index.ts';
import type { Job } from '../src/core/job/index.ts';
import { createPlanner, plan, readyBundle, type Plan, type ReadyBundle } from '../src/core/plan/index.ts';
import { codeAreas } from '../src/core/print/index.ts';
import { tellProblem } from '../src/words/index.ts';
import { inEnglish } from './said.ts';

let bundle: ReadyBundle;
let first: Plan;
/** Plans the job with a change; that it gives what a fresh one gives is tested below. */
const shared = createPlanner();
const folder = new URL('../examples/tide-pool', import.meta.url).pathname;
const changed = (change: Partial<Job>): ReadyBundle => ({ ...bundle, job: { ...bundle.job, ...change } });

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

/** A Plan as text, without its rasters (compared apart). */
const told = (p: Plan): string =>
  JSON.stringify({
    ...p,
    codes: null,
    job: null,
    problems: p.problems,
    papers: p.papers.map((paper) => ({
      ...paper,
      palette: [...paper.palette],
      progressive: paper.progressive.map((q) => [...q]),
      overPicture: null,
    })),
    forms: p.forms.length,
    cuts: p.cuts.map((c) => ({ ...c, region: c.region.rings.length })),
    layers: p.layers.map((l) => ({
      ...l,
      stencil: {
        bridges: l.stencil.bridges,
        certificate: l.stencil.certificate,
        knife: l.stencil.knife,
        area: regionArea(l.stencil.prints),
      },
    })),
  });

beforeAll(async () => {
  await prepare();
  bundle = await readyBundle(readJobAt(folder));
  first = shared.plan(bundle);
});

describe('tide-pool, planned', () => {
  test('nothing stands in the way of the packet, and every stencil is proven', () => {
    expect(first.problems.filter((p) => p.severity === 'error')).toEqual([]);
    expect(first.layers).toHaveLength(6);
    for (const layer of first.layers) expect(layer.stencil.certificate.holds, layer.id).toBe(true);
  });

  test('the urchin has islands and is bridged; the tide is one cut for two layers', () => {
    expect(first.layers.find((l) => l.id === 'urchin')!.stencil.bridges.length).toBeGreaterThan(0);
    const tide = first.cuts.find((c) => c.id === 'tide')!;
    expect(tide.layers).toEqual(['sky', 'water']);
    const [sky, water] = ['sky', 'water'].map((id) => first.layers.find((l) => l.id === id)!);
    const image = 180 * 240;
    // Window and piece of one cut share the image between them, but for the bridges.
    const bridges = water.stencil.bridges.reduce((sum, b) => sum + b.areaMm2, 0);
    expect(regionArea(sky.stencil.prints) + regionArea(water.stencil.prints) + bridges).toBeGreaterThan(image * 0.995);
    expect(regionArea(sky.stencil.prints) + regionArea(water.stencil.prints)).toBeLessThan(image * 1.005);
  });

  test('the areas of all overlaps are the image, on every paper', () => {
    for (const paper of first.papers)
      expect(paper.overlaps.reduce((sum, o) => sum + o.areaMm2, 0)).toBeCloseTo(
        codeAreas(first.codes).reduce((a, b) => a + b),
        3,
      );
  });

  test('the open layer has its bit but prints nothing yet; given an ink it does', () => {
    const foam = first.layers.find((l) => l.id === 'foam')!;
    expect(foam.inkId).toBeNull();
    expect(first.papers[0].overlaps.some((o) => o.layers.includes('foam'))).toBe(false);
    const tried = shared.plan(changed({ layers: bundle.job.layers.map((l) => (l.id === 'foam' ? { ...l, ink: 'slate' } : l)) }));
    const bitOf = (p: Plan): number => p.layers.find((l) => l.id === 'foam')!.bit;
    expect(bitOf(tried)).toBe(bitOf(first));
    expect(tried.papers[0].overlaps.some((o) => o.layers.includes('foam'))).toBe(true);
  });

  test('what stays in screen and pot is most of a small edition’s ink, and it is said', () => {
    const mix = first.layers[0].mix!;
    expect(mix.totalGrams).toBeGreaterThan(mix.printedGrams);
    expect(inEnglish(mix.note)).toMatch(/stay|keep/);
    expect(mix.parts.reduce((sum, p) => sum + p.massGrams, 0)).toBeCloseTo(mix.totalGrams, 6);
  });
});

describe('plan(job) is pure', () => {
  test('same Job, same Plan, to the last digit', () => {
    const again = plan(bundle);
    expect(told(again)).toBe(told(first));
    expect(sameBytes(again.codes.data, first.codes.data)).toBe(true);
    const ground = (p: Plan): Uint8Array => p.papers[2].overPicture!.cube.table;
    expect(sameBytes(ground(again), ground(first))).toBe(true);
  });

  /** Six changes of one job, of its n-th layer, cut and ink. */
  const changesOf = ({ layers, cuts, papers, edition, inks }: Job, n: number): Partial<Job>[] => [
    { layers: layers.map((l, i) => (i === n ? { ...l, strength: 0.4 } : l)) },
    { cuts: cuts.map((c, i) => (i === n % cuts.length ? { ...c, parts: c.parts.map((p) => ({ ...p, xMm: p.xMm - 9 })) } : c)) },
    { layers: [...layers].reverse() },
    { papers: papers.slice(1) },
    { edition: { ...edition, target: 7 } },
    { inks: inks.map((k, i) => (i === n ? { ...k, drawdownMicrons: 40 } : k)) },
  ];
  // All of them on a small job; on tide-pool, which carries an earlier print, the one that reaches farthest.
  test.each([
    ['letters', [0, 6], 1],
    ['tide-pool', [1, 2], 3],
  ])('a planner that remembers gives what a fresh one gives, after any change: %s', async (name, [from, to], n) => {
    const own = await readyBundle(readJobAt(new URL(`../examples/${name}`, import.meta.url).pathname));
    const planner = createPlanner();
    planner.plan(own);
    for (const change of changesOf(own.job, n).slice(from, to)) {
      const now = { ...own, job: { ...own.job, ...change } };
      const remembered = planner.plan(now),
        fresh = plan(now);
      expect(told(remembered)).toBe(told(fresh));
      expect(sameBytes(remembered.codes.data, fresh.codes.data)).toBe(true);
    }
  });

  test('a change of strength cuts nothing anew where no bridge depends on it; a change of the edition touches no colour', () => {
    const planner = shared;
    const before = planner.plan(bundle);
    const target = planner.plan(changed({ edition: { ...bundle.job.edition, target: 9 } }));
    expect(target.codes).toBe(before.codes);
    expect(target.papers[0]).toBe(before.papers[0]);
    const weaker = planner.plan(changed({ layers: bundle.job.layers.map((l) => (l.id === 'pebbles' ? { ...l, strength: 0.79 } : l)) }));
    expect(weaker.layers.find((l) => l.id === 'sky')!.stencil).toBe(before.layers.find((l) => l.id === 'sky')!.stencil);
    expect(weaker.papers[0]).not.toBe(before.papers[0]);
  });

  test('another order changes no pixel’s code, only what the codes stand for', () => {
    // Bridges are laid where they are least seen, which the order may change: held still here.
    const still = changed({ layers: bundle.job.layers.map((l) => ({ ...l, bridgesBy: 'shortest' as const })) });
    const turned = changed({ layers: [...still.job.layers].reverse() });
    expect(sameBytes(shared.plan(turned).codes.data, shared.plan(still).codes.data)).toBe(true);
  });
});

describe('proofs teach', () => {
  test('a measured overlap is shown as measured, with its own doubt', () => {
    const lab = [36, 14, -30] as const;
    const taught = shared.plan(
      changed({
        proofReadings: [{ paper: 'smooth-white', layers: ['water', 'urchin'], reading: { kind: 'lab', lab: [...lab], sigma: 0.4 } }],
      }),
    );
    const overlap = taught.papers[0].overlaps.find((o) => o.layers.join() === 'water,urchin')!;
    expect(deltaE00(overlap.lab, lab)).toBeLessThan(0.05);
    expect(overlap).toMatchObject({ measured: true, band: 0.4 });
    expect(inEnglish(taught.papers[0].learning!.words)).toMatch(/1 reading/);
    expect(taught.papers[1].learning).toBeNull();
  });

  test('several heavy overlaps move the film of the layer they share, and so what was not read', () => {
    // Simulated: the urchin printed 30 % heavier than planned.
    const heavy = shared.plan(
      changed({ layers: bundle.job.layers.map((l) => (l.id === 'urchin' ? { ...l, strength: Math.min(1, l.strength * 1.3) } : l)) }),
    );
    const read = [['urchin'], ['sky', 'urchin'], ['water', 'urchin']];
    const proofReadings = read.flatMap((layers) => {
      const overlap = heavy.papers[0].overlaps.find((o) => o.layers.join() === layers.join());
      return overlap
        ? [
            {
              paper: 'smooth-white',
              layers,
              reading: { kind: 'lab' as const, lab: [...overlap.lab] as [number, number, number], sigma: 0.3 },
            },
          ]
        : [];
    });
    expect(proofReadings.length).toBeGreaterThanOrEqual(2);
    const taught = shared.plan(changed({ proofReadings }));
    const unread = (p: Plan): readonly [number, number, number] =>
      p.papers[0].overlaps.find((o) => o.layers.join() === 'sky,kelp,urchin')!.lab;
    expect(deltaE00(unread(taught), unread(heavy))).toBeLessThan(deltaE00(unread(first), unread(heavy)));
    expect(taught.papers[0].learning!.after.mean).toBeLessThan(taught.papers[0].learning!.before.mean);
  });
});

describe('what can’t be planned', () => {
  test('a drawing that can’t be read leaves its layer out and says why; the rest is planned', () => {
    const broken: ReadyBundle = {
      ...bundle,
      attachments: new Map([...bundle.attachments, ['kelp.svg', new TextEncoder().encode('<svg><path d="M0')]]),
    };
    const made = shared.plan(broken);
    expect(made.layers.map((l) => l.id)).not.toContain('kelp');
    expect(made.layers).toHaveLength(5);
    expect(made.problems.some((p) => p.severity === 'error' && /kelp/i.test(p.path + tellProblem(p)))).toBe(true);
  });

  test('an empty job plans to an empty Plan that says what is missing', () => {
    const made = shared.plan({
      job: { ...bundle.job, forms: [], cuts: [], layers: [], inks: [], papers: [], wanted: [], screen: undefined },
      attachments: new Map(),
    });
    expect(made.layers).toEqual([]);
    expect(made.papers).toEqual([]);
    expect(made.problems.map((p) => p.code)).toEqual(expect.arrayContaining(['no-paper', 'no-layers', 'no-screen']));
  });

  test('a reading out of range is told with its place', () => {
    const made = shared.plan(
      changed({
        inks: bundle.job.inks.map((k) =>
          k.id === 'weed' && k.from === 'one-ground' ? { ...k, over: { kind: 'lab', lab: [300, 0, 0] } } : k,
        ),
      }),
    );
    expect(made.problems.find((p) => p.code === 'reading-out-of-range')?.path).toMatch(/^inks\[3\]/);
  });
});
