import { describe, expect, test } from 'vitest';
import { deltaE00, srgbFromXyz, xyzFromLab, type Lab } from '../../src/core/colour/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { movesMost, underLamp } from '../../src/core/asks/index.ts';
import { createPlanner, type Plan, type PlannedPaper } from '../../src/core/plan/index.ts';
import { groundColours, paintOverPicture } from '../../src/core/print/index.ts';
import { jobOf, offset, overlapsOf, patchOf, pressOrder, proof, type Patches, type Trial } from './overprint-jobs.ts';

/** Sets differ by their colours alone: what was cut once is remembered. */
const planner = createPlanner();

const srgbOf = (lab: Lab): readonly [number, number, number] => srgbFromXyz(xyzFromLab(lab)).rgb;

/** A picture of vertical bands of these colours, as wide as the image. */
function bands(colours: readonly (readonly number[])[], width = 120, height = 60): { width: number; height: number; rgb: Uint8Array } {
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rgb.set(colours[Math.floor((x * colours.length) / width)], (y * width + x) * 3);
  return { width, height, rgb };
}

/** The set's inks but one, printed over a sheet that carries a picture of that one. */
function overPrinted(patches: Patches, earlier: string): { readonly job: Job; readonly paper: PlannedPaper } {
  const base = jobOf(patches, { black: true });
  const job = parseJob({
    ...base,
    layers: base.layers.filter((l) => l.id !== earlier.toLowerCase()),
    papers: [{ ...base.papers[0], printed: { picture: 'earlier.png' } }],
  });
  const picture = bands([srgbOf(patches[earlier].lab)], 60);
  const plan = planner.plan({
    job,
    attachments: new Map([['earlier.png', new Uint8Array()]]),
    pictures: new Map([['earlier.png', picture]]),
  });
  return { job, paper: plan.papers[0] };
}

/** A set's inks over a sheet that carries two colours. */
function twoGrounds(trial: Trial, patches = offset.FOGRA39L): { readonly plan: Plan; readonly paper: PlannedPaper } {
  const base = jobOf(patches, trial);
  const job = parseJob({ ...base, papers: [{ ...base.papers[0], printed: { picture: 'earlier.png' } }] });
  const picture = bands([
    [230, 120, 110],
    [120, 150, 210],
  ]);
  const plan = planner.plan({
    job,
    attachments: new Map([['earlier.png', new Uint8Array()]]),
    pictures: new Map([['earlier.png', picture]]),
  });
  return { plan, paper: plan.papers[0] };
}

/** The proof shows every overlap on every ground as it is told, but for what lies between the nodes of the cube. */
function expectPainted(plan: Plan, paper: PlannedPaper): void {
  const painted = new Uint32Array(plan.codes.data.length);
  const over = paper.overPicture!;
  paintOverPicture(plan.codes, over.ground, over.cube, over.rowOfCode, painted);
  for (const [at, ground] of paper.grounds!.colours.entries()) {
    for (const one of ground.overlaps) {
      const i = plan.codes.data.findIndex((code, k) => code === one.code && paper.grounds!.regions[k] === at);
      const [r, g, b] = [1, 3, 5].map((k) => parseInt(one.srgb.slice(k, k + 2), 16));
      expect(
        Math.abs((painted[i] & 255) - r) + Math.abs(((painted[i] >> 8) & 255) - g) + Math.abs(((painted[i] >> 16) & 255) - b),
        // Between nodes that no screen shows, more is lost.
      ).toBeLessThan(one.inGamut ? 40 : 60);
    }
  }
}

describe('the colours of a printed sheet', () => {
  test('bands of a picture come back as its grounds, with their areas; grain and a faint fleck make no ground', () => {
    const { rgb } = bands([
      [220, 40, 40],
      [30, 60, 160],
      [240, 230, 200],
    ]);
    for (let i = 0; i < rgb.length; i++) rgb[i] = Math.max(0, Math.min(255, rgb[i] + ((i * 7919) % 9) - 4));
    rgb.set([0, 255, 0], 600);
    const { colours, regions } = groundColours(rgb);
    expect(colours).toHaveLength(3);
    for (const c of colours) expect(c.share).toBeCloseTo(1 / 3, 2);
    expect(new Set([regions[10], regions[60], regions[110]]).size).toBe(3);
    expect(regions[10 + 120]).toBe(regions[10]);
  });
});

describe('overlaps on a sheet that carries an earlier print', () => {
  test('areas of all grounds add up to the overlaps’; the colours are those the proof is painted in', () => {
    const { plan, paper } = twoGrounds({});
    expect(paper.grounds!.colours).toHaveLength(2);
    for (const overlap of paper.overlaps) {
      const sum = paper.grounds!.colours.reduce((all, g) => all + (g.overlaps.find((o) => o.code === overlap.code)?.areaMm2 ?? 0), 0);
      expect(sum).toBeCloseTo(overlap.areaMm2, 6);
    }
    expectPainted(plan, paper);
  });
  test('learned films and lamps reach the proof over a picture: it is painted in the colours that its grounds are told in', () => {
    const { plan, paper } = twoGrounds({ black: true, taught: ['CMY', 'CM'] }, offset.FOGRA40L);
    expectPainted(plan, paper);
    const untaught = twoGrounds({ black: true }, offset.FOGRA40L).paper;
    const moved = paper.grounds!.colours[0].overlaps.map((one, i) => deltaE00(one.lab, untaught.grounds!.colours[0].overlaps[i].lab));
    expect(Math.max(...moved)).toBeGreaterThan(1);
    for (const lamp of ['A', 'LED-B5'] as const) {
      const lit = underLamp(paper, lamp);
      expectPainted(plan, lit);
      const off = lit.grounds!.colours.flatMap((ground, g) =>
        ground.overlaps.map((one, i) => deltaE00(one.lab, paper.grounds!.colours[g].overlaps[i].lab)),
      );
      expect(Math.max(...off), lamp).toBeGreaterThan(1);
      const most = movesMost(paper, lamp)!;
      expect(Math.abs(most.moved - Math.max(...off, deltaE00(lit.grounds!.colours[0].lab, paper.grounds!.colours[0].lab)))).toBeLessThan(
        0.2,
      );
    }
  });
  test('where the earlier print left the sheet bare, every lamp shows what it shows on a bare sheet', () => {
    const base = jobOf(proof, { black: true, known: 'spectrum' });
    const job = parseJob({ ...base, papers: [base.papers[0], { ...base.papers[0], id: 'printed', printed: { picture: 'earlier.png' } }] });
    const picture = bands([srgbOf(proof.W.lab), [200, 90, 90]]);
    const plan = planner.plan({
      job,
      attachments: new Map([['earlier.png', new Uint8Array()]]),
      pictures: new Map([['earlier.png', picture]]),
    });
    const [bare, printed] = plan.papers;
    const ground = printed.grounds!.colours.findIndex((c) => deltaE00(c.lab, proof.W.lab) < 1);
    const { lights, overlaps } = printed.grounds!.colours[ground];
    expect(lights.map((l) => l.lamp)).toEqual(bare.lights.map((l) => l.lamp));
    for (const light of lights)
      for (const one of light.overlaps.filter((o) => overlaps.some((there) => there.code === o.code)))
        expect(
          deltaE00(one.lab, bare.lights.find((l) => l.lamp === light.lamp)!.overlaps.find((o) => o.code === one.code)!.lab),
        ).toBeLessThan(0.01);
    // Pairs are told by the ground that both lie on.
    for (const pair of printed.parting) {
      expect(pair.ground).not.toBeNull();
      const there = printed.grounds!.colours[pair.ground!];
      for (const code of pair.codes) expect(there.overlaps.some((o) => o.code === code) || code === 0).toBe(true);
    }
    expect(bare.parting.every((pair) => pair.ground === null)).toBe(true);
  });
  test('measured overprints over a ground known from its picture alone lie within their bands', () => {
    let within = 0,
      all = 0,
      bandSum = 0,
      offSum = 0;
    for (const patches of Object.values(offset)) {
      for (const earlier of ['M', 'Y', 'C']) {
        const { paper } = overPrinted(patches, earlier);
        for (const one of paper.grounds!.colours[0].overlaps) {
          const layers = paper.overlaps.find((o) => o.code === one.code)!.layers;
          // Black goes down first on these presses: over an earlier print it lies on top, which is another print.
          if (layers.length === 0 || layers.includes('k')) continue;
          const name = pressOrder([earlier, ...layers.map((l) => l.toUpperCase())].join('')).join('');
          if (!overlapsOf(patches).includes(name)) continue;
          const off = deltaE00(one.lab, patchOf(patches, name).lab);
          all++;
          bandSum += one.band;
          offSum += off;
          if (off <= one.band) within++;
        }
      }
    }
    console.log(
      `over a picture: ${within} of ${all} within their bands, mean off ${(offSum / all).toFixed(1)}, mean band ${(bandSum / all).toFixed(1)}`,
    );
    expect(all).toBeGreaterThan(40);
    expect(within / all).toBeGreaterThan(0.85);
    // A band that says nothing holds always: it must not be more than two and a half times what it is off by.
    expect(bandSum).toBeLessThan(2.5 * offSum);
  });
});
