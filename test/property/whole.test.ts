import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buyingList, plan, type Plan } from '../../src/core/plan/index.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';

/** Whole Plans over random jobs: no two of their parts may contradict one another. */

const base = smallJob().job;
const paper = fc.record({
  widthMm: fc.integer({ min: 90, max: 200 }),
  heightMm: fc.integer({ min: 70, max: 200 }),
  count: fc.integer({ min: 4, max: 40 }),
  thicknessMm: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
  edge: fc.constantFrom('cut' as const, 'torn' as const),
  absorbency: fc.constantFrom('low' as const, 'usual' as const, 'high' as const),
});
const material = fc.record({
  washable: fc.boolean(),
  prints: fc.integer({ min: 3, max: 60 }).map((n) => [n, n * 2]),
});
const jobs = fc.record({
  papers: fc.array(paper, { minLength: 1, maxLength: 3 }),
  material,
  // Which cut each run takes, which side of it, and whether through a mesh of its own.
  runs: fc.array(fc.tuple(fc.constantFrom('ring', 'block'), fc.constantFrom('window', 'piece'), fc.boolean()), {
    minLength: 1,
    maxLength: 4,
  }),
  /** Of the extender, in what is no ink. */
  extender: fc.option(fc.double({ min: 0.05, max: 0.95, noNaN: true }), { nil: undefined }),
  sheetMm: fc.option(fc.tuple(fc.integer({ min: 95, max: 160 }), fc.integer({ min: 75, max: 140 })), { nil: undefined }),
  setUpSheets: fc.integer({ min: 0, max: 6 }),
  target: fc.integer({ min: 1, max: 4 }),
  frame: fc.tuple(fc.integer({ min: 200, max: 500 }), fc.integer({ min: 200, max: 500 })),
  squeegeeMm: fc.option(fc.integer({ min: 100, max: 190 }), { nil: undefined }),
  tapeWidthMm: fc.integer({ min: 12, max: 60 }),
  screens: fc.integer({ min: 1, max: 2 }),
  hands: fc.integer({ min: 1, max: 2 }),
  mostRunsPerDay: fc.integer({ min: 1, max: 4 }),
  screenDryMinutes: fc.integer({ min: 0, max: 60 }),
  mixing: fc.constantFrom('day-before' as const, 'same-day' as const),
});
type Wishes = typeof jobs extends fc.Arbitrary<infer W> ? W : never;

const stock = { widthMm: 700, heightMm: 500 };
function planOf(w: Wishes): Plan {
  return plan(
    smallJob({
      materials: [{ ...base.materials[0], ...w.material, stock }],
      papers: w.papers.map((p, i) => ({ ...base.papers[0], ...p, id: `p${i}`, name: `Paper ${i}` })),
      cuts: base.cuts.map((cut) => (cut.id === 'ring' && w.sheetMm ? { ...cut, sheetMm: w.sheetMm } : cut)),
      inks: [
        ...base.inks,
        { id: 'clear', name: 'Clear', from: 'clear', role: 'transparent-base', densityGPerMl: 1.04 },
        { id: 'extender', name: 'Extender', from: 'clear', role: 'extender-base', densityGPerMl: 1.2 },
      ],
      layers: w.runs.map(([cut, side, mesh], i) => ({
        id: `l${i}`,
        name: `Run ${i}`,
        cut,
        side,
        ink: i % 2 ? 'yellow' : 'blue',
        strength: 0.8,
        ...(mesh ? { mesh: { perCm: 43, threadMicrons: 80 } } : {}),
        ...(w.extender === undefined
          ? {}
          : {
              bases: [
                { ink: 'clear', share: 1 - w.extender },
                { ink: 'extender', share: w.extender },
              ],
            }),
      })),
      screen: {
        insideWidthMm: w.frame[0],
        insideHeightMm: w.frame[1],
        mesh: { perCm: 77, threadMicrons: 48 },
        squeegeeMm: w.squeegeeMm,
        tapeWidthMm: w.tapeWidthMm,
      },
      edition: { target: w.target, setUpSheets: w.setUpSheets },
      day: {
        screens: w.screens,
        hands: w.hands,
        mostRunsPerDay: w.mostRunsPerDay,
        screenDryMinutes: w.screenDryMinutes,
        mixing: w.mixing,
      },
    }),
  );
}
const over = (name: string, holds: (p: Plan, w: Wishes) => void, numRuns = 25): void =>
  test(name, () =>
    fc.assert(
      fc.property(jobs, (w) => holds(planOf(w), w)),
      { numRuns },
    ),
  );
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const round = (mm: number): number => Math.round(mm * 1000) + 0;

describe('a plan hangs together', () => {
  over('all papers share their stops, and the image lies on every sheet', ({ register, job }) => {
    expect(register.stopSettings).toHaveLength(1);
    const placed = register.stops.map(({ template: { stops, cornerMm, image, sheet } }) => {
      expect(image.xMm).toBeGreaterThanOrEqual(-1e-9);
      expect(image.yMm).toBeGreaterThanOrEqual(-1e-9);
      expect(image.xMm + image.widthMm).toBeLessThanOrEqual(sheet.widthMm + 1e-9);
      expect(image.yMm + image.heightMm).toBeLessThanOrEqual(sheet.heightMm + 1e-9);
      // Every stop touches every sheet.
      for (const s of stops) {
        if (s.side === 'left') expect(s.yMm).toBeGreaterThanOrEqual(-1e-9);
        else expect(s.xMm + s.widthMm).toBeLessThanOrEqual(sheet.widthMm + 1e-9);
      }
      return JSON.stringify([
        stops.map((s) => [round(s.xMm - cornerMm[0]), round(s.yMm - cornerMm[1])]),
        [round(image.xMm - cornerMm[0]), round(image.yMm - cornerMm[1])],
      ]);
    });
    expect(placed).toHaveLength(job.papers.length);
    expect(new Set(placed).size).toBe(1);
  });

  over('no blade rides on tape, the tape closes the frame and never covers the image', ({ press: { taping } }) => {
    if (!taping) return;
    const { frame, aperture, image, strips, tapeWidthMm } = taping;
    expect(taping.side).toBe('paper');
    expect(aperture.xMm).toBeLessThanOrEqual(image.xMm);
    expect(aperture.yMm).toBeLessThanOrEqual(image.yMm);
    expect(aperture.xMm + aperture.widthMm).toBeGreaterThanOrEqual(image.xMm + image.widthMm - 1e-9);
    const inside = (x: number, y: number): boolean =>
      strips.some((s) => x > s.xMm - 1e-6 && x < s.xMm + s.widthMm + 1e-6 && y > s.yMm - 1e-6 && y < s.yMm + s.heightMm + 1e-6);
    for (let i = 0; i <= 20; i++)
      for (let k = 0; k <= 20; k++) {
        const [x, y] = [(frame.widthMm * i) / 20, (frame.heightMm * k) / 20];
        const open = x > aperture.xMm && x < aperture.xMm + aperture.widthMm && y > aperture.yMm && y < aperture.yMm + aperture.heightMm;
        if (!open) expect(inside(x, y), `${x}, ${y}`).toBe(true);
      }
    for (const s of strips) expect(Math.min(s.widthMm, s.heightMm)).toBeLessThanOrEqual(tapeWidthMm + 1e-9);
  });

  over(
    'every stencil that is used is cut and laid out, and prints within its life or a change is told',
    ({ job, layers, cuts, stock: laid }) => {
      const lasts = job.materials[0].prints![0];
      for (const layer of layers) {
        const cut = cuts.find((c) => c.id === layer.cutId)!;
        const use = cut.uses.find((u) => u.layerId === layer.id)!;
        expect(use.pulls).toBe(layer.sheetsThrough);
        for (const sheet of use.sheets) expect(sheet).toBeLessThanOrEqual(cut.timesToCut);
        expect(layer.changes.length).toBe(use.sheets.length - 1);
        const ends = [...layer.changes.map((c) => c.afterPull), layer.sheetsThrough];
        ends.forEach((end, i) => expect(end - (ends[i - 1] ?? 0)).toBeLessThanOrEqual(lasts));
        expect(cut.sets.some((s) => s.serves.includes(layer.id))).toBe(true);
        // A piece out of another run's sheet has no border of its own.
        const shared = cut.sets.find((s) => s.serves.includes(layer.id))!.layerId;
        const leader = layers.find((l) => l.id === shared)!;
        expect(use.border).toBe(layer.side === 'piece' && leader.side === 'window' ? 'tape-on-edge' : 'sheet');
      }
      for (const cut of cuts.filter((c) => c.layers.length > 0))
        for (const set of cut.sets) {
          const here = sum(laid.map((s) => s.times * s.placed.filter((p) => p.layerId === set.layerId).length));
          expect(here).toBe(Math.min(60, set.sheets.length));
        }
    },
  );

  over('there is one count of set-up sheets, of sheets and of pulls', ({ edition, layers }, w) => {
    const { sheets, setUpOfRun, pullsOfRun, wear, sheetNames, day } = edition;
    if (!sheets) return;
    layers.forEach((layer, run) => {
      expect(pullsOfRun[run]).toBe(layer.sheetsThrough);
      expect(setUpOfRun[run]).toBe(w.setUpSheets + sum(wear[run].changes.map((c) => c.checkSheets)));
      expect(pullsOfRun[run]).toBe(setUpOfRun[run] + sheets.runs[run].prepare);
      expect(day?.sheetTimes.filter((t) => t.run === layer.id).length).toBe(sheets.runs[run].prepare);
    });
    // Every sheet has a name, and its fate is wanted, spare or spoiled.
    expect(sheetNames).toHaveLength(sum(sheets.papers.map((p) => p.start)));
    for (const p of sheets.papers) expect(p.wanted).toBe(p.edition + p.proofs.total);
  });

  over('the hours of the day sum, nobody is in two places, and the one screen dries before it is taped', ({ edition, cuts }, w) => {
    const { day } = edition;
    if (!day) return;
    const work = day.steps.filter((s) => !['wait', 'rest', 'dry'].includes(s.what));
    expect(sum(work.map((s) => s.endMinutes - s.startMinutes))).toBeCloseTo(day.workMinutes, 6);
    const cutting = sum(day.steps.filter((s) => s.what === 'cut').map((s) => s.endMinutes - s.startMinutes));
    const knife = sum(cuts.map((c) => c.knifeMinutes));
    if (w.mixing === 'day-before') expect(Math.abs(cutting - knife)).toBeLessThanOrEqual(0.5);
    for (let who = 1; who <= w.hands; who++) {
      const mine = day.steps.filter((s) => s.who === who).sort((a, b) => a.startMinutes - b.startMinutes);
      mine.forEach((s, i) => i > 0 && expect(s.startMinutes).toBeGreaterThanOrEqual(mine[i - 1].endMinutes - 1e-6));
    }
    const first = new Map<string, number>();
    for (const s of day.steps) if (s.what === 'pull' && !first.has(s.run!)) first.set(s.run!, s.day);
    for (const one of new Set(first.values()))
      expect([...first.values()].filter((d) => d === one).length).toBeLessThanOrEqual(w.mostRunsPerDay);
    const onScreens = day.steps.filter((s) => s.screen);
    for (const wash of onScreens.filter((s) => s.what === 'clean'))
      for (const tape of onScreens.filter((s) => s.what === 'set-up' && s.screen!.id === wash.screen!.id))
        if (tape.startMinutes >= wash.endMinutes - 1e-6)
          expect(tape.startMinutes).toBeGreaterThanOrEqual(wash.endMinutes + w.screenDryMinutes - 1e-6);
    if (w.mixing === 'day-before')
      for (const mix of day.steps.filter((s) => s.what === 'mix')) expect(mix.day).toBeLessThan(Math.min(...first.values()));
  });

  over(
    'a run stands on a screen of its mesh; its pot comes to the whole, weighs what it says, and all of it is bought',
    (p, w) => {
      const screens = new Map<string, Set<boolean>>();
      for (const step of p.edition.day?.steps ?? []) {
        if (!step.screen || step.run === null) continue;
        const own = w.runs[Number(step.run.slice(1))][2];
        screens.set(step.screen.id, (screens.get(step.screen.id) ?? new Set()).add(own));
      }
      for (const meshes of screens.values()) expect(meshes.size).toBe(1);
      const grams = new Map<string, number>();
      for (const { mix, wetMicrons, id } of p.layers) {
        expect(wetMicrons).toBe(p.press.runs.find((run) => run.layerId === id)!.deposit.wetMicrons);
        if (!mix) continue;
        expect(sum(mix.parts.map((part) => part.share))).toBeCloseTo(1, 9);
        expect(sum(mix.parts.map((part) => part.massGrams))).toBeCloseTo(mix.totalGrams, 6);
        expect(mix.parts).toHaveLength(w.extender === undefined ? 2 : 3);
        for (const part of mix.parts) grams.set(part.inkId, (grams.get(part.inkId) ?? 0) + part.massGrams);
      }
      const bought = buyingList(p).find((group) => group.kind === 'inks')!.lines;
      for (const [ink, needed] of grams) {
        const line = bought.find((one) => JSON.stringify(one.what).includes(p.job.inks.find((k) => k.id === ink)!.name))!;
        const { grams: mass } = line.amount.values!['mass'] as { grams: number };
        expect(mass).toBeGreaterThanOrEqual(needed - 1e-6);
        expect(mass).toBeLessThan(needed + 1);
      }
      // The tape holds the narrowest of the sheets.
      const { taping } = p.press;
      for (const { stencil } of p.layers)
        if (taping) {
          expect(taping.stencil.widthMm).toBeLessThanOrEqual(stencil.sheet.maxX - stencil.sheet.minX + 1e-9);
          expect(taping.stencil.heightMm).toBeLessThanOrEqual(stencil.sheet.maxY - stencil.sheet.minY + 1e-9);
        }
    },
    15,
  );
});
