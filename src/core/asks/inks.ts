import { deltaE00, labFromSpectrum, srgbFromXyz, xyzFromLab, type Lab } from '../colour/index.ts';
import {
  chanceInWords,
  chanceMet,
  defaultSurface,
  foresee,
  inkCurves,
  inkOfLot,
  spectrumFromReading,
  type InkCurves,
  type Reading,
} from '../ink/index.ts';
import { settleProblems, type Job, type JobInk } from '../job/index.ts';
import { ProblemError, type Problem } from '../problem.ts';
import type { Saying } from '../../words/say.ts';
import { printedPot, type Plan } from '../plan/index.ts';
import { inkBench, paperOf } from './bench.ts';
import { lotOf } from './shelf.ts';

/** All there is to see of one ink on a paper. */
export interface InkSheet {
  readonly id: string;
  readonly curves: InkCurves;
  /** How far to trust it; `level` where readings made it. */
  readonly trust: Saying | null;
  readonly level: 'good' | 'fair' | 'weak' | null;
  /** Bends of strength: it works at share^gamma. */
  readonly gamma: number;
  /** Doubt of its readings, ΔE00. */
  readonly sigma: number;
  readonly problems: readonly Problem[];
}

/** Curves, trust and problems of every ink and base of a job, seen on one paper. */
export function askInks(job: Job, paperId?: string): InkSheet[] {
  const bench = inkBench(job);
  const { found } = bench;
  const { spectrum } = paperOf(bench, paperId);
  return job.inks.flatMap((ink, at): InkSheet[] => {
    const film = found.inks.get(ink.id);
    if (!film) return [];
    const looked = checkInk(ink);
    const own = found.problems.filter(({ path }) => [`inks[${at}]`, `inks[#${ink.id}]`].some((whole) => isWithin(path, whole)));
    return [
      {
        id: ink.id,
        curves: inkCurves(film, spectrum, found.surface),
        trust: found.trust.get(ink.id) ?? null,
        level: looked?.level ?? null,
        gamma: film.gamma ?? 1,
        sigma: found.inkSigmas.get(ink.id) ?? 0,
        problems: settleProblems(own, job),
      },
    ];
  });
}

/** True of `inks[2].over` in `inks[2]`, and of `inks[2]` itself. */
function isWithin(path: string, whole: string): boolean {
  return path === whole || path.startsWith(`${whole}.`);
}

/** How far an ink's own readings can be trusted; null where it has none (mixes). */
function checkInk(ink: JobInk): { readonly level: 'good' | 'fair' | 'weak' } | null {
  const lot = lotOf(ink, 'now');
  if (!lot) return null;
  try {
    return { level: inkOfLot(lot, defaultSurface([], false), ink.name).trust.level };
  } catch (error) {
    if (error instanceof ProblemError) return { level: 'weak' };
    throw error;
  }
}

export interface WantedNow {
  /** Place in `job.wanted`. */
  readonly at: number;
  readonly wanted: Lab;
  readonly wantedSrgb: string;
  /** null: some of its layers are open, off or gone, or its paper was not read. */
  readonly now: {
    readonly lab: Lab;
    readonly srgb: string;
    readonly deltaE: number;
    readonly within: number;
    readonly chance: number;
    readonly words: Saying;
  } | null;
}

/** How near each wanted colour of a job comes, and how likely a print falls within ΔE00 `within` of it. */
export function askWanted(plan: Pick<Plan, 'job' | 'layers'>, paperId?: string, within = 4): WantedNow[] {
  const { job } = plan;
  const bench = inkBench(job, plan);
  const foreseen = new Map<string, ReturnType<typeof foresee>>();
  const pots = bench.layers.flatMap((l) => {
    const pot = printedPot(l, bench.found);
    return pot ? [{ id: l.id, pot, sigma: l.ink === null ? 0.3 : (bench.found.inkSigmas.get(l.ink) ?? 0.3) }] : [];
  });
  return job.wanted.map((one, at): WantedNow => {
    const base = { at, wanted: one.lab, wantedSrgb: srgbOfLab(one.lab) };
    const spectrum = bench.found.papers.get(one.paper ?? paperId ?? job.papers[0]?.id ?? '');
    const places = one.layers.map((id) => pots.findIndex((p) => p.id === id));
    if (!spectrum || places.some((p) => p < 0)) return { ...base, now: null };
    const paper = one.paper ?? paperId ?? job.papers[0].id;
    let foresight = foreseen.get(paper);
    if (!foresight) {
      foresight = foresee({
        paper: spectrum,
        surface: bench.found.surface,
        worstReading: bench.found.kind,
        paperSigma: bench.found.paperSigmas.get(paper),
        seed: job.seed,
        layers: pots.map((p) => ({ ink: p.pot, strength: 1, deposit: 1, readingSigma: p.sigma })),
      });
      foreseen.set(paper, foresight);
    }
    const code = places.reduce((bits, p) => bits | (1 << p), 0);
    const lab: Lab = [foresight.lab[code * 3], foresight.lab[code * 3 + 1], foresight.lab[code * 3 + 2]];
    const chance = chanceMet(foresight, code, one.lab, within);
    return { ...base, now: { lab, srgb: srgbOfLab(lab), deltaE: deltaE00(lab, one.lab), within, chance, words: chanceInWords(chance) } };
  });
}

/** A reading as Lab, for those that are spectra or XYZ too. Throws `ProblemError` when it can't be. */
export function labOfReading(reading: Reading, place: string | Saying): Lab {
  return reading.kind === 'lab' || reading.kind === 'photo' ? reading.lab : labFromSpectrum(spectrumFromReading(reading, place));
}

export function srgbOfLab(lab: Lab): string {
  return srgbFromXyz(xyzFromLab(lab)).hex;
}
