import { labFromSpectrum, type Lab, type Spectrum } from '../../../colour/index.ts';
import {
  clearInk,
  compareGuess,
  defaultSurface,
  inkFromLadder,
  inkOverOneGround,
  inkOverTwoGrounds,
  mixInks,
  modesOf,
  modesPerInk,
  movedInk,
  sharesOfParts,
  sigmaOf,
  spectrumFromReading,
  trappingKnown,
  type GuessCompared,
  type Ink,
  type InkFound,
  type InkModes,
  type Reading,
  type ReadingKind,
  type Surface,
  type TrappingKnown,
} from '../../../ink/index.ts';
import type { Job, JobInk } from '../../../job/index.ts';
import { attempt, problem, ProblemError, type Problem } from '../../../problem.ts';
import { say, sentences, type Saying } from '../../../../words/say.ts';
import { pick, type Memory } from '../../memory.ts';

/** All inks of a job as films, and the surface they were read through. */
export interface FoundInks {
  readonly surface: Surface;
  /** At strength 1; one print's deposit already applied where the drawdown's thickness is known. */
  readonly inks: ReadonlyMap<string, Ink>;
  readonly trust: ReadonlyMap<string, Saying>;
  /** Print film ÷ drawdown film. */
  readonly deposits: ReadonlyMap<string, number>;
  readonly papers: ReadonlyMap<string, Spectrum>;
  /** The least sure kind of reading used: it decides the band. */
  readonly kind: ReadingKind;
  /** Doubt of each ink's readings, and of each paper's, ΔE00. */
  readonly inkSigmas: ReadonlyMap<string, number>;
  readonly paperSigmas: ReadonlyMap<string, number>;
  /** The darkest reflectance read anywhere from 400 nm up: gloss stays below it. */
  readonly darkest: number;
  /** How films lie on one another before anything is read. */
  readonly trapping: TrappingKnown;
  /** Ways in which spectra behind the colours that were read may differ, all inks together; and which of them an ink has a part in. */
  readonly moves: number;
  readonly movesOf: ReadonlyMap<string, readonly number[]>;
  /** An ink as its readings give it under another surface, with its spectrum moved so. */
  readonly inkUnder: (id: string, surface: Surface, moved: Float64Array) => Ink;
  readonly problems: readonly Problem[];
}

/** What inks are found from. */
export interface InkReads {
  readonly press?: Job['press'] | undefined;
  readonly inks: Job['inks'];
  readonly papers: readonly Pick<Job['papers'][number], 'id' | 'reading'>[];
}

const surest: readonly ReadingKind[] = ['spectrum', 'xyz', 'lab', 'photo'];

/**
 * Readings of a job → inks. A reading that can't be is a problem with its place; its ink stays clear.
 * @param through the surface to read them through; left out: worked out from the readings themselves
 */
export function findInks(job: InkReads, wetMicrons: number | null, through?: Surface): FoundInks {
  const problems: Problem[] = [];
  let kind: ReadingKind = 'spectrum';
  const read = (reading: Reading, place: string): Spectrum | null => {
    if (surest.indexOf(reading.kind) > surest.indexOf(kind)) kind = reading.kind;
    return attempt(problems, () => spectrumFromReading(reading, place));
  };

  // What nobody read is as unsure as a photograph, and not by its own colour alone: film and paper were others too.
  if (job.inks.some((ink) => ink.known !== undefined && ink.from !== 'clear')) kind = 'photo';
  const papers = new Map<string, Spectrum>();
  const paperSigmas = new Map(job.papers.map((p) => [p.id, sigmaOf(p.reading)]));
  const inkSigmas = new Map(job.inks.map((ink) => [ink.id, Math.max(0.3, ...readingsOf(ink, '').map(({ reading }) => sigmaOf(reading)))]));
  job.papers.forEach((paper, i) => {
    const spectrum = read(paper.reading, `papers[${i}].reading`);
    if (spectrum) papers.set(paper.id, spectrum);
  });
  const spectra = new Map(
    job.inks.map((ink, i) => [ink.id, readingsOf(ink, `inks[${i}]`).map(({ reading, place }) => read(reading, place))]),
  );
  const ofInks = [...spectra.values()].flat().filter((s) => s !== null);
  const trapping = trappingKnown(job.press?.films ?? 'dried-between', kind);
  const surface = through ?? {
    ...defaultSurface(ofInks.length > 0 ? ofInks : [...papers.values()], kind === 'spectrum'),
    trapping: trapping.trapping,
  };

  const inks = new Map<string, Ink>();
  const trust = new Map<string, Saying>();
  const deposits = new Map<string, number>();
  const settle = (ink: JobInk, at: number): void => {
    if (inks.has(ink.id) || ink.from === 'mix') return;
    const deposit = wetMicrons !== null && ink.drawdownMicrons !== undefined ? wetMicrons / ink.drawdownMicrons : 1;
    deposits.set(ink.id, deposit);
    const found = inkOf(ink, spectra.get(ink.id) ?? [], surface, `inks[${at}]`, problems);
    // Settled to 1e-9: engines differ in the last bits of exp and log, and a Plan must not.
    const settled = (v: number): number => Math.round(v * deposit * 1e9) / 1e9;
    inks.set(ink.id, { ...found.ink, k: found.ink.k.map(settled), s: found.ink.s.map(settled) });
    trust.set(ink.id, trustOf(ink, found.trust.words));
  };
  job.inks.forEach(settle);
  for (const [id, mixed] of mixesOf(job.inks, inks)) {
    inks.set(id, mixed);
    deposits.set(id, 1);
    trust.set(id, say('ink.trustMix'));
  }
  const darkest = ofInks.length > 0 ? Math.min(...ofInks.map((r) => Math.min(...r.subarray(2)))) : 1;
  const shapes = shapesOf(job, spectra, surface, deposits, inkSigmas);
  return { surface, inks, trust, deposits, papers, kind, inkSigmas, paperSigmas, darkest, trapping, ...shapes, problems };
}

/** Inks that are stirred from others, by what those are; one that is part of itself has nothing of itself in it. */
function mixesOf(jobInks: InkReads['inks'], read: ReadonlyMap<string, Ink>): Map<string, Ink> {
  const mixes = new Map<string, Ink>();
  const mixing = new Set<string>();
  const mixOf = (ink: JobInk): Ink => {
    const known = read.get(ink.id) ?? mixes.get(ink.id);
    if (known || ink.from !== 'mix' || mixing.has(ink.id)) return known ?? clearInk();
    mixing.add(ink.id);
    const shares = sharesOfParts(ink.parts.map((p) => p.parts));
    const parts = ink.parts.flatMap((part, k) => {
      const of = jobInks.find((other) => other.id === part.ink);
      return of ? [{ ink: mixOf(of), share: shares[k] }] : [];
    });
    mixing.delete(ink.id);
    const mixed = parts.length > 0 ? mixInks(parts) : clearInk();
    mixes.set(ink.id, mixed);
    return mixed;
  };
  jobInks.forEach(mixOf);
  return mixes;
}

/** How far to trust an ink, whose it is, and how what was guessed of it compares. */
function trustOf(ink: JobInk, words: Saying): Saying {
  const compared = comparedGuess(ink);
  return sentences(ink.known && say(ink.known === 'published' ? 'ink.trustPublished' : 'ink.trustByEye'), words, compared?.words);
}

/** What was guessed of an ink against what was read later; null where nothing was guessed, or nothing read. */
export function comparedGuess(ink: JobInk): GuessCompared | null {
  const read = overOf(ink);
  if (!ink.guess || !read || ink.known !== undefined) return null;
  try {
    const labOf = (reading: Reading): Lab => labFromSpectrum(spectrumFromReading(reading, ''));
    return compareGuess(labOf(ink.guess.over), sigmaOf(ink.guess.over), labOf(read));
  } catch (error) {
    if (error instanceof ProblemError) return null;
    throw error;
  }
}

/** The reading of an ink at its strongest over white. */
export function overOf(ink: JobInk): Reading | null {
  switch (ink.from) {
    case 'one-ground':
      return ink.over;
    case 'two-grounds':
      return ink.overWhite;
    case 'ladder':
      return ink.steps.reduce((most, step) => (step.share > most.share ? step : most)).over;
    default:
      return null;
  }
}

/** What may be otherwise in the spectra behind colours: nothing where an instrument read the spectrum. */
function shapesOf(
  job: InkReads,
  spectra: ReadonlyMap<string, readonly (Spectrum | null)[]>,
  surface: Surface,
  deposits: ReadonlyMap<string, number>,
  sigmas: ReadonlyMap<string, number>,
): Pick<FoundInks, 'moves' | 'movesOf' | 'inkUnder'> {
  const inkOfId = new Map(job.inks.map((ink) => [ink.id, ink]));
  const first = new Map<string, number>();
  let moves = 0;
  for (const ink of job.inks) {
    const readings = readingsOf(ink, '');
    if (readings.length === 0 || readings.every(({ reading }) => reading.kind === 'spectrum')) continue;
    first.set(ink.id, moves);
    moves += modesPerInk;
  }
  const movesOf = new Map<string, readonly number[]>();
  const gather = (id: string, depth: number): readonly number[] => {
    const known = movesOf.get(id);
    if (known) return known;
    const ink = inkOfId.get(id);
    const from = first.get(id);
    const own = from === undefined ? [] : Array.from({ length: modesPerInk }, (_, k) => from + k);
    const all = ink?.from === 'mix' && depth < 16 ? [...new Set(ink.parts.flatMap((part) => gather(part.ink, depth + 1)))] : own;
    movesOf.set(id, all);
    return all;
  };
  for (const ink of job.inks) gather(ink.id, 0);
  const modes = new Map<string, InkModes>();
  const modesFor = (ink: JobInk, paper: Spectrum): InkModes => {
    let found = modes.get(ink.id);
    if (!found)
      modes.set(
        ink.id,
        (found = modesOf(inkOf(ink, spectra.get(ink.id)!, surface, '', []).ink, paper, surface, sigmas.get(ink.id) ?? 0.5)),
      );
    return found;
  };
  const inkUnder = (id: string, under: Surface, moved: Float64Array, depth = 0): Ink => {
    const ink = inkOfId.get(id);
    if (!ink || depth > 16) return clearInk();
    if (ink.from === 'mix') {
      const shares = sharesOfParts(ink.parts.map((p) => p.parts));
      return mixInks(ink.parts.map((part, k) => ({ ink: inkUnder(part.ink, under, moved, depth + 1), share: shares[k] })));
    }
    const read = spectra.get(id) ?? [];
    const found = inkOf(ink, read, under, '', []).ink;
    const from = first.get(id);
    const paper = read[0];
    const shaped = from === undefined || !paper ? found : movedInk(found, modesFor(ink, paper), moved, from, paper, under);
    const deposit = deposits.get(id) ?? 1;
    return deposit === 1 ? shaped : { ...shaped, k: shaped.k.map((v) => v * deposit), s: shaped.s.map((v) => v * deposit) };
  };
  return { moves, movesOf, inkUnder };
}

/** `findInks`, remembered. */
export function inksOf(job: Pick<Job, 'inks' | 'papers' | 'press'>, wetMicrons: number, memory: Memory): FoundInks {
  return memory.part(
    'inks',
    { press: job.press, inks: job.inks, papers: job.papers.map((p) => pick(p, 'id', 'reading')), wetMicrons },
    inksFrom,
    8,
  );
}

const inksFrom = ({ wetMicrons, ...job }: InkReads & { readonly wetMicrons: number }): FoundInks => findInks(job, wetMicrons);

function readingsOf(ink: JobInk, place: string): { reading: Reading; place: string }[] {
  switch (ink.from) {
    case 'one-ground':
      return [
        { reading: ink.ground, place: `${place}.ground` },
        { reading: ink.over, place: `${place}.over` },
      ];
    case 'two-grounds':
      return (['white', 'overWhite', 'black', 'overBlack'] as const).map((key) => ({ reading: ink[key], place: `${place}.${key}` }));
    case 'ladder':
      return [
        { reading: ink.ground, place: `${place}.ground` },
        ...ink.steps.map((step, i) => ({ reading: step.over, place: `${place}.steps[${i}].over` })),
      ];
    default:
      return [];
  }
}

function inkOf(ink: JobInk, spectra: readonly (Spectrum | null)[], surface: Surface, place: string, problems: Problem[]): InkFound {
  const clear: InkFound = { ink: clearInk(), trust: { how: 'clear', level: 'fair', words: say('ink.trustClear') }, problems: [] };
  if (ink.from === 'clear' || ink.from === 'mix' || spectra.some((s) => s === null)) return clear;
  const all = spectra as readonly Spectrum[];
  try {
    const found =
      ink.from === 'one-ground'
        ? inkOverOneGround({ ground: all[0], ink: all[1], surface })
        : ink.from === 'two-grounds'
          ? inkOverTwoGrounds({ white: all[0], overWhite: all[1], black: all[2], overBlack: all[3], surface })
          : inkFromLadder({ ground: all[0], steps: ink.steps.map((step, i) => ({ share: step.share, over: all[i + 1] })), surface });
    problems.push(...placedIn(place, found.problems));
    return found;
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    problems.push(...placedIn(place, error.problems));
    return clear;
  }
}

/** Problems of one ink, whose paths begin at its readings, with their paths in the job. */
function placedIn(place: string, problems: readonly Problem[]): Problem[] {
  return problems.map((p) => problem(p.severity, p.code, p.path === '' ? place : `${place}.${p.path}`, p.message, p.advice));
}
