import { describe, expect, test } from 'vitest';
import { deltaE00, type Lab } from '../../colour/index.ts';
import { emptyShelf, type InkShelf } from '../../ink/index.ts';
import { parseJob, type Job } from '../../job/index.ts';
import { createPlanner, type Plan } from '../../plan/index.ts';
import { refusalOf } from '../../../../test/said.ts';
import { askLeftovers, askRecipe, jarsOfShelf, shelfWithJob } from '../index.ts';

const lab = (...values: [number, number, number]): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: values });
const ground = lab(95, 0, 2);
const inks = {
  cyan: { from: 'one-ground', ground, over: lab(55, -37, -50) },
  magenta: { from: 'one-ground', ground, over: lab(48, 74, -3) },
  yellow: { from: 'one-ground', ground, over: lab(88, -5, 85) },
};

/** Stripes that cross: the last run lies on both others where it covers most, and goes through a coarser mesh. */
const job: Job = parseJob({
  schemaVersion: 1,
  title: 'Jars',
  image: { widthMm: 80, heightMm: 80 },
  forms: [{ id: 'flat', name: 'Flat', made: { kind: 'flat', widthMm: 60, heightMm: 60 } }],
  cuts: [30, 34, 50].map((xMm, i) => ({ id: `c${i}`, name: `C${i}`, parts: [{ form: 'flat', xMm, yMm: 40 }] })),
  layers: ['cyan', 'magenta', 'yellow'].map((ink, i) => ({
    id: `l${i}`,
    name: `Run ${ink}`,
    cut: `c${i}`,
    side: 'window',
    ink,
    strength: 0.4,
    ...(i === 2 ? { mesh: { perCm: 43, threadMicrons: 80 } } : {}),
  })),
  inks: [
    ...Object.entries(inks).map(([id, ink]) => ({ id, name: id, ...ink })),
    { id: 'base', name: 'Base', from: 'clear', role: 'transparent-base' },
  ],
  papers: [{ id: 'paper', name: 'Paper', reading: ground, widthMm: 100, heightMm: 100, count: 5 }],
});
const planner = createPlanner();
const planOf = (of: Job): Plan => planner.plan({ job: of, attachments: new Map() });
const labOf = (of: Job, layers: string): Lab => planOf(of).papers[0].overlaps.find((o) => o.layers.join() === layers)!.lab;

/** A run printed in parts, the rest clear. */
function poured(of: Job, layer: string, parts: readonly { readonly id: string; readonly share: number }[]): Job {
  const rest = 1 - parts.reduce((sum, p) => sum + p.share, 0);
  const mix = [...parts.map((p) => ({ ink: p.id, parts: p.share })), ...(rest > 1e-6 ? [{ ink: 'base', parts: rest }] : [])];
  return parseJob({
    ...of,
    inks: [...of.inks, { id: 'poured', name: 'Poured', from: 'mix', parts: mix }],
    layers: of.layers.map((l) => (l.id === layer ? { ...l, ink: 'poured', strength: 1 } : l)),
  });
}

describe('a recipe for a run', () => {
  test('named by its number, over what lies below it: what the recipe promises, the Plan shows', () => {
    const found = askRecipe(job, { wanted: [30, 10, 5], layer: '3', over: 'below' }, planOf(job));
    expect(found.on).toEqual({ layerId: 'l2', over: ['l0', 'l1'] });
    expect(deltaE00(labOf(poured(job, 'l2', found.best.parts), 'l0,l1,l2'), found.best.lab)).toBeLessThan(0.5);
    // A coarser mesh lays more: the same colour takes less ink than the job's screen would.
    const elsewhere = askRecipe(job, { wanted: [70, 30, 40], over: ['Run cyan'] }, planOf(job));
    const coarse = askRecipe(job, { wanted: [70, 30, 40], over: ['1'], layer: 'Run yellow' }, planOf(job));
    const ink = (of: typeof found): number => of.byPots[0].parts.reduce((sum, p) => sum + p.share, 0);
    expect(ink(coarse)).toBeLessThan(ink(elsewhere));
  });
  test('below without a run, a run or ground that is not there: refused with what there is', () => {
    expect(refusalOf(() => askRecipe(job, { wanted: [50, 0, 0], over: 'below' }))).toContain('Name the run that prints the colour.');
    expect(refusalOf(() => askRecipe(job, { wanted: [50, 0, 0], over: ['foam'] }))).toContain('Use one of: l0, l1, l2.');
    expect(refusalOf(() => askRecipe(job, { wanted: [50, 0, 0], ground: 1 }, planOf(job)))).toContain('has no ground 2');
  });
});

describe('jars of the studio’s shelf', () => {
  const lot = (name: string, over: [number, number, number], gramsLeft: number): InkShelf['inks'][number]['lots'][number] => ({
    lot: name,
    source: { from: 'one-ground', ground, over: lab(...over) },
    gramsLeft,
  });
  const shelf: InkShelf = {
    ...emptyShelf(),
    inks: [
      { id: 'cyan', name: 'cyan', role: 'ink', densityGPerMl: 1.1, lots: [lot('May', [68, -38, 40], 80), lot('June', [55, -37, -50], 30)] },
      { id: 'rust', name: 'Rust', role: 'ink', densityGPerMl: 1.1, lots: [lot('old', [45, 40, 40], 0)] },
    ],
  };
  test('count as far as they last; a lot that the job has already is one jar, an empty one none', () => {
    const jars = jarsOfShelf(shelf, job);
    expect(jars.map((jar) => [jar.ink.id, jar.lot, jar.here, jar.leftGrams])).toEqual([
      ['cyan-2', 'May', false, 80],
      ['cyan', 'June', true, 30],
    ]);
    const mine = { ...job, inks: job.inks.map((k) => (k.id === 'cyan' ? { ...k, leftGrams: 12 } : k)) };
    expect(jarsOfShelf(shelf, mine).map((jar) => jar.ink.id)).toEqual(['cyan-2']);
  });
  test('a pot out of a jar of the shelf comes out in the Plan as promised, with less new ink than without', () => {
    const wanted: Lab = [78, -27, 29];
    const ask = { wanted, totalGrams: 100, within: 2, layer: 'l0' } as const;
    expect(refusalOf(() => askLeftovers(job, ask))).toContain('No jar has anything left');
    const { best, freshGrams, shelfInks } = askLeftovers(job, { ...ask, shelf }, planOf(job));
    expect(best!.jarGrams).toBeGreaterThan(20);
    expect(best!.newGrams).toBeLessThan(freshGrams! / 4);
    expect(shelfInks.map((k) => k.id)).toEqual(['cyan-2']);
    for (const part of best!.parts) expect(part.grams).toBeGreaterThan(0.15);
    const taken = { ...job, inks: [...job.inks, ...shelfInks] };
    const parts = best!.parts.filter((p) => p.from !== 'base');
    expect(deltaE00(labOf(poured(taken, 'l0', parts), 'l0'), wanted)).toBeLessThan(2.3);
  });
  test('what a job says is left goes onto the shelf with its inks, and is put right there later', () => {
    const left = (grams: number): Job => ({ ...job, inks: job.inks.map((k) => (k.id === 'yellow' ? { ...k, leftGrams: grams } : k)) });
    const first = shelfWithJob(null, left(40)).shelf;
    const yellow = (of: InkShelf): (number | undefined)[] => of.inks.find((k) => k.id === 'yellow')!.lots.map((l) => l.gramsLeft);
    expect(yellow(first)).toEqual([40]);
    expect(yellow(shelfWithJob(first, left(15)).shelf)).toEqual([15]);
    expect(yellow(shelfWithJob(first, job).shelf)).toEqual([40]);
  });
});
