import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { compareGuess, labOfHex, screenSigma, staircase, starterPatches, starterShelf, starterSigma } from '../../src/core/ink/index.ts';
import { colourInPicture, guessesOf, inkByEye, photographOf, starterInks, withGuess } from '../../src/core/asks/index.ts';
import { beginJob, parseJob, type Job } from '../../src/core/job/index.ts';
import { createPlanner } from '../../src/core/plan/index.ts';
import { seeded } from '../../src/core/random.ts';
import { english } from '../../src/words/index.ts';
import { inEnglish } from '../said.ts';
import { offset, overlapsOf, patchOf, pressOrder } from './overprint-jobs.ts';

const sets = (
  JSON.parse(readFileSync(new URL('data/starter-patches.json', import.meta.url), 'utf8')) as {
    conditions: Record<string, Record<string, Lab>>;
  }
).conditions;
const others = Object.keys(sets).filter((set) => set !== 'FOGRA39L' && set !== 'FOGRA29L');
const white: { kind: 'lab'; lab: [number, number, number]; sigma: number } = { kind: 'lab', lab: [95, 0, 2], sigma: 3 };

describe('the starter shelf, from published values', () => {
  test('says the figures of its source, patch by patch', () => {
    for (const { id, lab } of starterPatches())
      lab.forEach((v, i) => expect(Math.abs(v - (sets.FOGRA39L[id][i] + sets.FOGRA29L[id][i]) / 2), id).toBeLessThan(0.051));
  });
  test('its doubt holds on seven other papers and presses: two thirds within it, nine in ten within twice', () => {
    const off = others.flatMap((set) => starterPatches().flatMap(({ id, lab }) => (sets[set][id] ? [deltaE00(lab, sets[set][id])] : [])));
    expect(off.length).toBeGreaterThan(70);
    const within = (limit: number): number => off.filter((v) => v <= limit).length / off.length;
    expect(within(starterSigma)).toBeGreaterThan(0.67);
    expect(within(2 * starterSigma)).toBeGreaterThan(0.9);
    // And it is no wider than it must be: half as much would not hold.
    expect(within(starterSigma / 2)).toBeLessThan(0.67);
  });
  test('overlaps foreseen from it alone lie within their bands on seven other papers and presses', () => {
    let within = 0,
      all = 0;
    const missed: string[] = [];
    for (const set of others) {
      const patches = offset[set];
      const inks = starterInks(inEnglish, ['black', 'cyan', 'magenta', 'yellow']);
      const job = parseJob({
        schemaVersion: 1,
        title: 'Starter',
        image: { widthMm: 32, heightMm: 32 },
        forms: [{ id: 'square', name: 'Square', made: { kind: 'flat', widthMm: 8, heightMm: 8 } }],
        cuts: inks.slice(0, 4).map((ink, bit) => ({
          id: ink.id,
          name: ink.name,
          parts: Array.from({ length: 16 }, (_, cell) => cell)
            .filter((cell) => cell & (1 << bit))
            .map((cell) => ({ form: 'square', xMm: (cell % 4) * 8 + 4, yMm: Math.floor(cell / 4) * 8 + 4 })),
        })),
        layers: inks.slice(0, 4).map((ink) => ({
          id: 'kcmy'['black cyan magenta yellow'.split(' ').indexOf(ink.id)],
          name: ink.name,
          cut: ink.id,
          side: 'window',
          ink: ink.id,
        })),
        inks,
        papers: [{ id: 'paper', name: 'Paper', reading: { kind: 'lab', lab: patches.W.lab }, widthMm: 100, heightMm: 100, count: 1 }],
        // Offset lays no ridge along edges: a sheet as thin as none.
        materials: [{ id: 'none', name: 'No sheet', thicknessMm: 0.001, leastBridgeMm: 2, leastOpeningMm: 1, prints: [1000, 1000] }],
      });
      const plan = createPlanner().plan({ job, attachments: new Map() });
      const names = overlapsOf(patches);
      for (const overlap of plan.papers[0].overlaps) {
        const name = pressOrder(overlap.layers.join('').toUpperCase()).join('');
        if (!names.includes(name)) continue;
        all++;
        const off = deltaE00(overlap.lab, patchOf(patches, name).lab);
        if (off <= overlap.band) within++;
        else missed.push(`${set} ${name} ${off.toFixed(1)} > ${overlap.band}`);
      }
    }
    console.log(`starter: ${within} of ${all} overlaps within their bands; ${missed.join(', ')}`);
    expect(all).toBeGreaterThan(70);
    expect(within / all).toBeGreaterThan(0.85);
  });
  test('is marked as not yours, in the job and in both languages; a drawdown takes the mark away', () => {
    const shelf = starterShelf((s) => inEnglish(s, { ...english, language: 'de' }));
    expect(shelf.inks[0].name).toBe('Prozesscyan');
    expect(shelf.inks[0].note).toContain('FOGRA39L');
    const job = begun();
    const plan = createPlanner().plan({ job, attachments: new Map() });
    expect(plan.problems.filter((p) => p.code === 'ink-not-read')).toHaveLength(1);
    expect(inEnglish(plan.problems.find((p) => p.code === 'ink-not-read')!.message)).toContain('Blue and Orange');
    expect(inEnglish(plan.inks[0].trust)).toContain('Not yours');
    const read: Job = {
      ...job,
      inks: job.inks.map((ink) =>
        ink.id === 'blue' && ink.from === 'one-ground'
          ? withGuess(ink, { ...ink, known: undefined, over: { kind: 'lab', lab: [42, 0, -38] } })
          : ink,
      ),
    };
    const later = createPlanner().plan({ job: read, attachments: new Map() });
    expect(inEnglish(later.problems.find((p) => p.code === 'ink-not-read')!.message)).not.toContain('Blue');
    expect(inEnglish(later.inks.find((k) => k.id === 'blue')!.trust)).toContain('within the ± 8.0 it was given');
    expect(guessesOf(read).find((g) => g.id === 'blue')?.compared?.off).toBeCloseTo(
      deltaE00(starterPatches().find((one) => one.id === 'blue')!.lab, [42, 0, -38]),
      6,
    );
    // The reading narrows every overlap it takes part in.
    const band = (made: typeof plan): number =>
      Math.max(...made.papers[0].overlaps.filter((o) => o.layers.includes('below')).map((o) => o.band));
    expect(band(later)).toBeLessThan(band(plan));
  });
});

const begun = (): Job =>
  parseJob(
    beginJob(
      { title: 'T', form: 'F', first: 'A', second: 'B', paper: 'P', stock: 'S', note: 'N' },
      starterInks(inEnglish, ['blue', 'orange']),
    ),
  );

describe('a colour by eye', () => {
  test('hex as published for sRGB: red, a grey, and what is none', () => {
    // sRGB red under D50 (IEC 61966-2-1 primaries, Bradford; as CSS Color 4 has it): Lab 54.29 80.80 69.89.
    labOfHex('#ff0000', '').forEach((v, i) => expect(v).toBeCloseTo([54.29, 80.8, 69.89][i], 1));
    expect(labOfHex('#777', '')[0]).toBeCloseTo(labOfHex('777777', '')[0], 9);
    for (const wrong of ['#12345', 'red', '', '#gggggg']) expect(() => labOfHex(wrong, '')).toThrow();
  });
  /** Someone who sees a drawdown and chooses with noise of their own: not the one the staircase takes for granted. */
  function person(truth: Lab, start: Lab, noise: number, seed: number): { off: number; sigma: number; answers: number } {
    const random = seeded(seed);
    const answers: number[] = [];
    for (;;) {
      const stand = staircase(start, answers);
      if (stand.done) return { off: deltaE00(stand.lab, truth), sigma: stand.sigma, answers: answers.length };
      const seen = stand.patches.map((p) => deltaE00(p.lab, truth) + noise * random.normal());
      answers.push(seen.indexOf(Math.min(...seen)));
    }
  }
  test.each([
    ['a keen eye', 0.8],
    ['a usual one', 2],
    ['a tired one', 3],
  ])('a staircase finds the drawdown within its doubt: %s', (_, noise) => {
    const random = seeded(Math.round(noise * 100));
    const tries = Array.from({ length: 12 }, (__, i) => {
      const start: Lab = [25 + 60 * random.next(), 80 * (random.next() - 0.5), 80 * (random.next() - 0.5)];
      const truth: Lab = [start[0] + 6 * random.normal(), start[1] + 6 * random.normal(), start[2] + 6 * random.normal()];
      // The screen itself is off besides: that is no part of what the choices can find.
      const screen = screenSigma / 1.87;
      const shown: Lab = [truth[0] + screen * random.normal(), truth[1] + screen * random.normal(), truth[2] + screen * random.normal()];
      const found = person(shown, start, noise, i + 1);
      return { ...found, before: deltaE00(start, truth) };
    });
    const mean = (of: (t: (typeof tries)[number]) => number): number => tries.reduce((sum, t) => sum + of(t), 0) / tries.length;
    console.log(
      `staircase, noise ${noise}: off ${mean((t) => t.off).toFixed(2)} from ${mean((t) => t.before).toFixed(2)}, ± ${mean((t) => t.sigma).toFixed(2)}, ${mean((t) => t.answers)} answers`,
    );
    expect(mean((t) => t.off)).toBeLessThan(mean((t) => t.before) / 2);
    expect(tries.filter((t) => t.off <= t.sigma).length / tries.length).toBeGreaterThan(0.67);
    expect(Math.max(...tries.map((t) => t.answers))).toBeLessThanOrEqual(14);
  });
  test('the same answers give the same colour; a staircase far off its start still arrives', () => {
    expect(staircase([50, 20, 20], [1, 3, 0])).toEqual(staircase([50, 20, 20], [1, 3, 0]));
    expect(person([70, -10, 40], [55, 10, 15], 1, 4).off).toBeLessThan(4);
  });
  test('of a photograph, the colour of the place alone, as doubtful as any light', () => {
    const data = new Uint8Array(100 * 50 * 3).fill(200);
    for (let y = 0; y < 50; y++) for (let x = 50; x < 100; x++) data.set([192, 57, 43], (y * 100 + x) * 3);
    const photo = photographOf({ width: 100, height: 50, pixels: { kind: 'srgb8', data } } as unknown as Parameters<
      typeof photographOf
    >[0]);
    const red = colourInPicture(photo, 0.75, 0.5);
    expect(deltaE00(red.lab, labOfHex('#c0392b', ''))).toBeLessThan(0.2);
    expect(red.sigma).toBe(10);
    expect(deltaE00(colourInPicture(photo, 0.2, 0.5).lab, labOfHex('#c8c8c8', ''))).toBeLessThan(0.2);
  });
  test('becomes an ink with a band as wide as its doubt; what is read later says how far off it was', () => {
    const base = begun();
    const guess = inkByEye({ id: 'blue', name: 'Blue' }, white, { kind: 'lab', lab: [40, 5, -40], sigma: 8 });
    const job: Job = { ...base, inks: base.inks.map((k) => (k.id === 'blue' ? guess : k)) };
    const plan = createPlanner().plan({ job, attachments: new Map() });
    expect(plan.papers[0].overlaps.find((o) => o.layers.join() === 'below')!.band).toBeGreaterThan(5);
    expect(inEnglish(plan.problems.find((p) => p.code === 'ink-not-read' && inEnglish(p.message).includes('by eye'))!.message)).toContain(
      'Blue',
    );
    expect(inEnglish(compareGuess([40, 5, -40], 8, [60, 30, 20]).words)).toContain('far more');
    expect(inEnglish(compareGuess([40, 5, -40], 3, [44, 5, -40]).words)).toContain('one guess in ten');
  });
});
