// npm run colours -- --choose: chooses the constants of forecasts anew without one measured set after the other, and judges on that set.
import { deltaE00 } from '../src/core/colour/index.ts';
import { chosen } from '../src/core/ink/index.ts';
import { inkBench } from '../src/core/asks/index.ts';
import type { Job } from '../src/core/job/index.ts';
import { forecastOn } from '../src/core/plan/index.ts';
import { seeded } from '../src/core/random.ts';
import { jobOf, offset, overlapsOf, patchOf, summary, type Outcome, type Trial } from '../test/outside/overprint-jobs.ts';
import { sevenJob, sevenOverlaps, sevenSets } from '../test/outside/seven-inks.ts';

type Changes = Readonly<Record<string, number>>;

/** What may be chosen, and what is tried for each; the first is what ships. */
const dried = chosen.trapping['dried-between'].colours;
const wet = chosen.trapping['wet-on-wet'].colours;
const unknown = chosen.trapping.unknown.colours;
const { colours, withBlack } = chosen.model.colours;
const knobs: readonly { readonly name: string; readonly tried: readonly number[]; readonly set: (v: number) => void }[] = [
  { name: 'dried: trapping', tried: [dried.trapping, 0.8, 0.9], set: (v) => (dried.trapping = v) },
  { name: 'dried: doubt', tried: [dried.sigma, 0.03, 0.08, 0.12], set: (v) => (dried.sigma = v) },
  { name: 'wet: trapping', tried: [wet.trapping, 0.72, 0.8], set: (v) => (wet.trapping = v) },
  { name: 'unknown: trapping', tried: [unknown.trapping, 0.76, 0.84], set: (v) => (unknown.trapping = v) },
  { name: 'dried: single films on one another', tried: [dried.pairs, 0.07, 0.1, 0.15], set: (v) => (dried.pairs = v) },
  { name: 'wet: single films on one another', tried: [wet.pairs, 0.05, 0.1], set: (v) => (wet.pairs = v) },
  { name: 'shapes of spectra', tried: [chosen.shapes, 0.17, 0.28], set: (v) => (chosen.shapes = v) },
  { name: 'film as read', tried: [chosen.filmReadSigma, 0.03, 0.08], set: (v) => (chosen.filmReadSigma = v) },
  { name: 'light within', tried: [chosen.lightWithin, 0.01, 0.02], set: (v) => (chosen.lightWithin = v) },
  { name: 'share of gloss', tried: [chosen.glossShare.colours, 0.2, 0.45], set: (v) => (chosen.glossShare.colours = v) },
  { name: 'own of one overlap', tried: [chosen.kin.own, 0.7, 2], set: (v) => (chosen.kin.own = v) },
  {
    name: 'model',
    tried: [1, 0.75, 1.3],
    set: (
      (light, colour) => (v: number) =>
        Object.assign(colours, { light: light * v, colour: colour * v })
    )(colours.light, colours.colour),
  },
  {
    name: 'model with black',
    tried: [1, 0.75, 1.3],
    set: (
      (light, colour) => (v: number) =>
        Object.assign(withBlack, { light: light * v, colour: colour * v })
    )(withBlack.light, withBlack.colour),
  },
];

const trials: Readonly<Record<string, Trial>> = {
  lab: {},
  'lab-unknown': { films: 'unknown' },
  'lab-wet': { films: 'wet-on-wet' },
  black: { black: true },
  'two-grounds': { black: true, known: 'two-grounds' },
  dark: { taught: ['CMY'] },
  'dark-black': { taught: ['CMY'], black: true },
};
const cases = Object.keys(trials);
/** Judged, never chosen on. */
const judged = ['seven', 'seven-dark'];
const sets = Object.keys(offset);

/** Overlaps by name, layer ids and what was measured, as a job without its stencils foresees them. */
function told(job: Job, overlaps: readonly { name: string; ids: readonly string[]; lab: readonly [number, number, number] }[]): Outcome[] {
  const bench = inkBench(job);
  const forecast = forecastOn(job, bench.found, bench.layers, 'paper')!;
  return overlaps.map(({ name, ids, lab }) => {
    const { lab: foreseen, band } = forecast.of(ids)!;
    return { name, off: deltaE00(foreseen, lab), band };
  });
}

function outcomesOf(name: string, set: string): Outcome[] {
  if (name.startsWith('seven')) {
    const taught = name === 'seven' ? [] : ['CMY'];
    const left = sevenOverlaps(sevenSets[set]).filter((o) => o.name !== 'CMY');
    return told(sevenJob(sevenSets[set], taught), left);
  }
  const trial = trials[name];
  const patches = offset[set];
  const left = overlapsOf(patches).filter(
    (o) =>
      !(trial.taught ?? []).some((t) => [...t].sort().join() === [...o].sort().join()) &&
      (trial.black === true || !o.includes('K')) &&
      !(trial.known === 'two-grounds' && o.length === 2 && o.startsWith('K')),
  );
  return told(
    jobOf(patches, trial),
    left.map((o) => ({ name: o, ids: [...o].map((l) => l.toLowerCase()), lab: patchOf(patches, o).lab })),
  );
}

/** Nine in ten within, and no wider: the loss of a quantile (Koenker and Bassett 1978). */
const loss = ({ off, band }: Outcome): number => (off > band ? 0.9 * (off - band) : 0.1 * (band - off));
const mean = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length;

type Table = Readonly<Record<string, Readonly<Record<string, Outcome[]>>>>;

function scoreOn(table: Table, on: readonly string[]): number {
  const each = cases.map((name) => {
    const all = on.flatMap((set) => table[name][set]);
    return mean(all.map((o) => o.off)) + 4 * mean(all.map(loss));
  });
  // Readings must make no set worse.
  const worse = (before: string, after: string): number =>
    mean(
      on.map((set) => {
        const left = new Set(table[after][set].map((o) => o.name));
        const was = table[before][set].filter((o) => left.has(o.name));
        return Math.max(0, mean(table[after][set].map((o) => o.off)) - mean(was.map((o) => o.off)));
      }),
    );
  return mean(each) + 2 * (worse('black', 'dark-black') + worse('lab', 'dark'));
}

export function chooseAnew(many: number): void {
  const random = seeded(15);
  const ships: Changes = Object.fromEntries(knobs.map((k) => [k.name, k.tried[0]]));
  // What ships, every constant moved by itself, and several moved at once.
  const designs: Changes[] = [ships];
  if (many > 1) for (const knob of knobs) for (const v of knob.tried.slice(1)) designs.push({ ...ships, [knob.name]: v });
  while (designs.length < many) {
    const moved = { ...ships } as Record<string, number>;
    for (let k = 0; k < 4; k++) {
      const knob = knobs[random.below(knobs.length)];
      moved[knob.name] = knob.tried[random.below(knob.tried.length)];
    }
    designs.push(moved);
  }
  const start = performance.now();
  const tryOut = (i: number, names: readonly string[], on: readonly string[]): Table => {
    for (const knob of knobs) knob.set(designs[i][knob.name]);
    const table = Object.fromEntries(names.map((name) => [name, Object.fromEntries(on.map((set) => [set, outcomesOf(name, set)]))]));
    for (const knob of knobs) knob.set(knob.tried[0]);
    return table;
  };
  const tables = designs.map((_, i) => tryOut(i, cases, sets));
  console.log(`${designs.length} choices on ${sets.length} sets, ${((performance.now() - start) / 1000).toFixed(0)} s`);
  const bestOn = (on: readonly string[]): number =>
    tables.reduce((best, table, i) => (scoreOn(table, on) < scoreOn(tables[best], on) - 1e-9 ? i : best), 0);
  const says = (i: number): string =>
    knobs
      .filter((k) => designs[i][k.name] !== k.tried[0])
      .map((k) => `${k.name} ${designs[i][k.name]} (ships ${k.tried[0]})`)
      .join(', ') || 'what ships';
  const all = bestOn(sets);
  console.log(
    `on all sets: ${says(all)}; score ${scoreOn(tables[all], sets).toFixed(3)}, what ships ${scoreOn(tables[0], sets).toFixed(3)}`,
  );
  const out = sets.map((set) => {
    const best = bestOn(sets.filter((other) => other !== set));
    console.log(`without ${set}: ${says(best)}`);
    return { ...tables[best], ...tryOut(best, judged, [set]) };
  });
  const shipped = { ...tables[0], ...tryOut(0, judged, sets) };
  console.log('| known about the inks | as shipped: mean / worst, within, band ÷ error | chosen without the set judged on |');
  console.log('|---|---|---|');
  for (const name of [...cases, ...judged]) {
    const line = (of: readonly Outcome[]): string => {
      const s = summary(of);
      return `${s.mean.toFixed(2)} / ${s.worst.toFixed(1)}, ${(100 * s.within).toFixed(0)} %, ${s.wide.toFixed(2)}`;
    };
    console.log(`| ${name} | ${line(sets.flatMap((set) => shipped[name][set]))} | ${line(sets.flatMap((set, i) => out[i][name][set]))} |`);
  }
  const worse = sets.map((set) => mean(shipped['seven-dark'][set].map((o) => o.off)) - mean(shipped.seven[set].map((o) => o.off)));
  console.log(`seven inks after one dark overlap, set by set: ${worse.map((v) => v.toFixed(2)).join(', ')}`);
}
