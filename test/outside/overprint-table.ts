import { offset, outcomes, overlapsOf, jobOf, planned, proof, summary, type Outcome, type Summary, type Trial } from './overprint-jobs.ts';
import { seeded } from '../../src/core/random.ts';

/** A case of the table, tried on every set. */
export interface Case {
  readonly name: string;
  readonly what: string;
  readonly sets: readonly { readonly set: string; readonly outcomes: readonly Outcome[] }[];
}

const onOffset = (trial: Trial, seeds: readonly number[] = [0]): Case['sets'] =>
  Object.entries(offset).map(([set, patches], i) => ({
    set,
    outcomes: seeds.flatMap((seed) => outcomes(patches, { ...trial, seed: seed * 100 + i })),
  }));

const onProof = (trial: Trial): Case['sets'] => [{ set: 'laminated proof', outcomes: outcomes(proof, { ...trial, black: true }) }];

/** Readings taken one after the other where the tool names them. */
export function asNamed(patches: (typeof offset)[string], trial: Trial, n: number): string[] {
  let taught: string[] = [];
  while (taught.length < n) {
    const worth = planned(jobOf(patches, { ...trial, taught })).worthReading;
    if (!worth) break;
    taught = [...taught, ...worth.picks.slice(0, n - taught.length).map((p) => p.layers.join('').toUpperCase())];
  }
  return taught;
}

/** Every row that README shows, through a Job and plan(), press as the job has it by default unless said. */
export function allCases(): Case[] {
  const named = (n: number, black: boolean): Case['sets'] =>
    Object.entries(offset).map(([set, patches]) => ({
      set,
      outcomes: outcomes(patches, { black, taught: asNamed(patches, { black }, n) }),
    }));
  return [
    { name: 'dry-spectra', what: 'spectra, films dried between coats', sets: onProof({ known: 'spectrum' }) },
    { name: 'dry-lab', what: 'Lab only, films dried between coats', sets: onProof({}) },
    { name: 'lab', what: 'Lab only', sets: onOffset({}) },
    { name: 'lab-unknown', what: 'Lab only, press said to be unknown', sets: onOffset({ films: 'unknown' }) },
    { name: 'lab-wet', what: 'Lab only, press said to be wet on wet', sets: onOffset({ films: 'wet-on-wet' }) },
    { name: 'black', what: 'Lab only, with black among the inks', sets: onOffset({ black: true }) },
    { name: 'two-grounds', what: 'Lab over white and over black, with black', sets: onOffset({ black: true, known: 'two-grounds' }) },
    { name: 'dark', what: 'Lab and one measured dark overlap', sets: onOffset({ taught: ['CMY'] }) },
    { name: 'dark-black', what: 'the same, with black among the inks', sets: onOffset({ taught: ['CMY'], black: true }) },
    { name: 'named-3', what: 'Lab and three overlaps that the tool names, with black', sets: named(3, true) },
    { name: 'named-6', what: 'Lab and six overlaps that the tool names, with black', sets: named(6, true) },
    { name: 'photo', what: 'colours as uncertain as a photograph’s (ΔE00 4)', sets: onOffset({ known: 'photo' }, [1, 2, 3]) },
  ];
}

export const flat = (one: Case): Outcome[] => one.sets.flatMap((s) => s.outcomes);

/**
 * Share within their band on sets left out: the band is scaled so that nine in ten of all other sets lie within, and tried on the one
 * that is left out (conformal prediction, whole sets at a time).
 */
export function leftOut(one: Case): number {
  let within = 0,
    n = 0;
  for (const { set, outcomes: own } of one.sets) {
    const others = one.sets.filter((s) => s.set !== set).flatMap((s) => s.outcomes);
    const ratios = others.map((o) => o.off / o.band).sort((a, b) => a - b);
    const scale = ratios.length === 0 ? 1 : ratios[Math.min(ratios.length - 1, Math.ceil(0.9 * (ratios.length + 1)) - 1)];
    for (const o of own) {
      n++;
      if (o.off <= o.band * scale) within++;
    }
  }
  return within / n;
}

export interface Compared {
  readonly readings: number;
  readonly before: Summary;
  readonly named: Summary;
  readonly byChance: Summary;
  /** Sets whose left-out overlaps are worse on average than before. */
  readonly worse: readonly string[];
}

/** Overlaps that the tool names against overlaps by chance, at equal number, on what neither has read. */
export function namedAgainstChance(readings: number, black: boolean, tries: number): Compared {
  const random = seeded(11);
  const before: Outcome[] = [],
    named: Outcome[] = [],
    chance: Outcome[] = [];
  const worse: string[] = [];
  for (const [set, patches] of Object.entries(offset)) {
    const taught = asNamed(patches, { black }, readings);
    const was = outcomes(patches, { black }, taught),
      now = outcomes(patches, { black, taught });
    before.push(...was);
    named.push(...now);
    if (summary(now).mean > summary(was).mean + 0.005) worse.push(set);
    const all = overlapsOf(patches).filter((o) => black || !o.includes('K'));
    for (let k = 0; k < tries; k++) {
      const left = [...all];
      const picked = Array.from({ length: readings }, () => left.splice(random.below(left.length), 1)[0]);
      chance.push(...outcomes(patches, { black, taught: picked }));
    }
  }
  return { readings, before: summary(before), named: summary(named), byChance: summary(chance), worse };
}
