import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { BANDS, deltaE00, deltaE00Of, labFromSpectrum, smoothestSpectrum, xyzFromLab, type Lab } from '../src/core/colour/index.ts';
import {
  correctPot,
  filmOf,
  findRecipe,
  foresee,
  learn,
  mixInks,
  overlapColours,
  overlapSpectra,
  rankOrders,
  readReadings,
  readingsWorth,
  stripOf,
  stackReflectance,
  type Ink,
  type ProofObservation,
} from '../src/core/ink/index.ts';
import { parseJob, type Job } from '../src/core/job/index.ts';
import { findInks } from '../src/core/plan/parts/colour/inks.ts';
import { layTheInks } from '../src/core/plan/parts/colour/let-down.ts';
import { learnOnPaper } from '../src/core/plan/parts/colour/learning.ts';
import { lightsOn, partingOf } from '../src/core/plan/parts/colour/lights.ts';
import { bandSamples, coloursOn, foresightOn, litAsk } from '../src/core/plan/parts/colour/papers.ts';
import { seeded } from '../src/core/random.ts';
import { differenceCiede2000 } from 'culori';
import { inventedPots, studioSurface as surface, warmPaper } from '../test/outside/ink-studio.ts';
import { medianMs, type BenchRow } from './row.ts';

export const title = 'Ink: overlaps, orders, recipes, pots, learning';

const paper = warmPaper();
const pots = inventedPots(12, 7);
const layers = Array.from({ length: 8 }, (_, i) => ({ ink: mixInks([{ ink: pots[i].ink, share: 0.3 }]), strength: 1, deposit: 1 }));

/** The rival: a general least-squares fitter over all twelve shares at once, from three starts. */
function generalRecipe(wanted: Lab): number {
  const labOf = (x: readonly number[]): Lab => {
    const sum = x.reduce((a, b) => a + b, 0);
    return labFromSpectrum(
      stackReflectance(paper, [filmOf(mixInks(pots.map((p, i) => ({ ink: p.ink, share: sum > 1 ? x[i] / sum : x[i] }))))], surface),
    );
  };
  return Math.min(
    ...[0.02, 0.05, 0.08].map((start) => {
      const found = levenbergMarquardt(
        { x: [0, 1, 2], y: [...wanted] },
        (x: number[]) => {
          const lab = labOf(x);
          return (i: number) => lab[i];
        },
        {
          initialValues: pots.map(() => start),
          minValues: pots.map(() => 0),
          maxValues: pots.map(() => 1),
          damping: 0.1,
          gradientDifference: 1e-4,
          maxIterations: 100,
          errorTolerance: 1e-4,
        },
      );
      return deltaE00(labOf(found.parameterValues), wanted);
    }),
  );
}

/** Eight inks read as Lab on four papers (invented). */
function colourJob(): Job {
  const labs = [
    [55, -37, -50],
    [48, 74, -3],
    [89, -5, 93],
    [16, 0, 0],
    [60, 40, 40],
    [50, -40, 20],
    [70, 10, -30],
    [80, 20, 5],
  ];
  return parseJob({
    schemaVersion: 1,
    title: 'Eight inks',
    image: { widthMm: 100, heightMm: 100 },
    inks: labs.map((lab, i) => ({
      id: `ink-${i}`,
      name: `Ink ${i}`,
      from: 'one-ground',
      ground: { kind: 'lab', lab: [95, 0, -2] },
      over: { kind: 'lab', lab },
    })),
    layers: labs.map((_, i) => ({ id: `layer-${i}`, name: `Layer ${i}`, cut: 'none', side: 'window', ink: `ink-${i}`, strength: 0.7 })),
    papers: [0, 1, 2, 3].map((i) => ({
      id: `paper-${i}`,
      name: `Paper ${i}`,
      reading: { kind: 'lab', lab: [95 - i, 0, i] },
      widthMm: 100,
      heightMm: 100,
      count: 1,
    })),
  });
}

export async function run(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const films = layers.map((l) => filmOf(l.ink));
  const papers = [0, 1, 2, 3].map((i) => paper.map((v) => v * (1 - 0.05 * i)));
  rows.push({
    name: 'all 256 overlaps of 8 layers on 4 papers, with Lab and screen colour',
    medianMs: await medianMs(() => papers.map((p) => overlapColours(overlapSpectra(p, films, surface)))),
  });
  const studio = colourJob();
  const found = findInks(studio, null);
  const laid = layTheInks(studio.layers, found);
  const even = new Float64Array(256).fill(1);
  rows.push({
    name: 'the same with bands, possible colours, lamps and what is worth reading, from inks read as Lab',
    // Inks found anew, so that nothing is remembered from the round before.
    medianMs: await medianMs(() => {
      const inks = findInks(studio, null);
      return studio.papers.map((p) => {
        const learned = learnOnPaper(studio, studio.layers, inks, p.id);
        const { colours } = coloursOn(p, studio, inks, laid, learned)!;
        const foresight = foresightOn(p, studio, inks, laid, learned, bandSamples)!;
        const lit = litAsk(p, studio, inks, laid, learned, colours.lab, even);
        const strips = Array.from({ length: 256 }, (_, row) => stripOf(foresight, row));
        const lights = lightsOn(lit);
        return [
          strips,
          partingOf(lit, lights, learned?.members(bandSamples, 1) ?? []),
          readingsWorth({ foresight, areas: even, read: [], kind: 'lab' }),
        ];
      });
    }),
    rivalMs: await medianMs(() =>
      studio.papers.map((p) => {
        const inks = findInks(studio, null);
        return [
          coloursOn(p, studio, inks, laid, null),
          foresee({
            paper: inks.papers.get(p.id)!,
            surface: inks.surface,
            worstReading: 'lab',
            seed: 1,
            samples: bandSamples,
            layers: laid.map((l) => ({ ink: l.pot, strength: 1, deposit: 1 })),
          }),
        ];
      }),
    ),
    rivalName: 'with bands from films varied alone',
    note: 'aim: ratio ≤ 2',
  });
  const naive = await medianMs(() => {
    let sum = 0;
    for (let code = 0; code < 256; code++)
      sum += labFromSpectrum(
        stackReflectance(
          paper,
          films.filter((_, i) => code & (1 << i)),
          surface,
        ),
      )[0];
    return sum;
  });
  rows.push({
    name: 'all 256 overlaps as spectra and Lab, shared prefixes',
    medianMs: await medianMs(() => {
      const spectra = overlapSpectra(paper, films, surface);
      let sum = 0;
      for (let code = 0; code < 256; code++) sum += labFromSpectrum(spectra.subarray(code * BANDS, (code + 1) * BANDS))[0];
      return sum;
    }),
    rivalName: 'each overlap by itself',
    rivalMs: naive,
  });
  rows.push({
    name: 'every order of 8 layers (40,320), five wishes',
    medianMs: await medianMs(() => rankOrders({ paper, surface, layers, wishes: { clean: 1, manyColours: 1, steady: 1 } }), {
      least: 3,
      budgetMs: 3000,
    }),
  });
  rows.push({
    name: 'bands of all 256 overlaps, 200 samples',
    medianMs: await medianMs(() => foresee({ paper, surface, layers, worstReading: 'lab', seed: 1 })),
  });

  const random = seeded(12);
  const targets = Array.from({ length: 6 }, () => {
    const chosen = [random.below(12), random.below(12)];
    return labFromSpectrum(
      stackReflectance(paper, [filmOf(mixInks(chosen.map((c) => ({ ink: pots[c].ink, share: 0.05 + 0.2 * random.next() }))))], surface),
    );
  });
  let ours = 0,
    theirs = 0;
  const recipeMs = await medianMs(() =>
    targets.forEach((wanted) => (ours = Math.max(ours, findRecipe({ wanted, paper, surface, pots, nearEnough: 0.5 }).best.deltaE))),
  );
  const rivalMs = await medianMs(() => targets.forEach((wanted) => (theirs = Math.max(theirs, generalRecipe(wanted)))), {
    least: 1,
    most: 2,
    budgetMs: 100,
  });
  rows.push({
    name: 'a recipe among 12 pots, at most 3 of them',
    medianMs: recipeMs / targets.length,
    rivalName: 'general least-squares fitter over all 12 (ml-levenberg-marquardt)',
    rivalMs: rivalMs / targets.length,
    note: `worst ΔE00 of six targets: ${ours.toFixed(2)}, rival ${theirs.toFixed(2)} and with up to 12 pots`,
  });

  const contents = [
    { id: pots[1].id, grams: 8 },
    { id: pots[6].id, grams: 14 },
    { id: pots[9].id, grams: 30 },
  ];
  const reading = stackReflectance(
    paper,
    [filmOf(mixInks(contents.map((c) => ({ ink: pots.find((p) => p.id === c.id)!.ink, share: c.grams / 160 }))))],
    surface,
  );
  const wanted: Lab = labFromSpectrum(reading).map((v, i) => v + [3, 2, -3][i]) as unknown as Lab;
  rows.push({
    name: 'saving a pot from a shelf of 12',
    medianMs: await medianMs(() =>
      correctPot({ wanted, ground: paper, surface, contents, rounds: [{ added: [], reading }], shelf: pots, within: 1 }),
    ),
  });

  const observations = Array.from({ length: 12 }, (_, i): ProofObservation => {
    const stack = [i % 6, 6 + (i % 2)];
    const lab = labFromSpectrum(
      stackReflectance(
        paper,
        stack.map((l) => filmOf(layers[l].ink, 1, 1 + 0.1 * Math.sin(i + l))),
        surface,
      ),
    );
    return { stack, lab, sigma: 0.4, place: `${i}` };
  });
  const inkUnder = layers.map((l) => (): Ink => l.ink);
  rows.push({
    name: 'a learning step: 12 readings, 8 layers',
    medianMs: await medianMs(() =>
      learn({
        paper,
        surface,
        layers: layers.map((_, i) => ({ id: `${i}`, name: `${i}`, inkUnder: inkUnder[i], strength: 1, deposit: 1 })),
        observations,
      }),
    ),
  });

  rows.push({ name: 'smoothest spectrum of a colour', medianMs: await medianMs(() => smoothestSpectrum(xyzFromLab([55, -38, -44]))) });
  const labs = Array.from({ length: 20_000 }, () => random.next() * 100);
  const rival = differenceCiede2000();
  rows.push({
    name: 'CIEDE2000, 20,000 pairs',
    medianMs: await medianMs(() => {
      let sum = 0;
      for (let i = 0; i + 5 < labs.length; i++) sum += deltaE00Of(labs[i], labs[i + 1], labs[i + 2], labs[i + 3], labs[i + 4], labs[i + 5]);
      return sum;
    }),
    rivalName: 'culori',
    rivalMs: await medianMs(() => {
      let sum = 0;
      for (let i = 0; i + 5 < labs.length; i++)
        sum += rival(
          { mode: 'lab65', l: labs[i], a: labs[i + 1], b: labs[i + 2] },
          { mode: 'lab65', l: labs[i + 3], a: labs[i + 4], b: labs[i + 5] },
        );
      return sum;
    }),
  });
  const big = new TextEncoder().encode(
    `CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${Array.from({ length: 36 }, (_, i) => `SPEC_${380 + 10 * i}`).join(' ')}\nEND_DATA_FORMAT\nBEGIN_DATA\n${Array.from({ length: 2000 }, (_, n) => `${n} ${Array.from({ length: 36 }, (__, i) => (20 + i).toFixed(3)).join(' ')}`).join('\n')}\nEND_DATA\n`,
  );
  rows.push({ name: 'reading a CGATS file of 2,000 spectra', medianMs: await medianMs(() => readReadings(big, 'big.txt')) });
  return rows;
}
