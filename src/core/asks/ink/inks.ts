import { deltaE00, labFromSpectrum, srgbFromXyz, xyzFromLab, type Lab } from '../../colour/index.ts';
import { chanceInWords, defaultSurface, inkCurves, inkOfLot, spectrumFromReading, type InkCurves, type Reading } from '../../ink/index.ts';
import { settleProblems, type Job, type JobInk } from '../../job/index.ts';
import { ProblemError, type Problem } from '../../problem.ts';
import type { Saying } from '../../../words/say.ts';
import { forecastOn, type Forecast, type Plan } from '../../plan/index.ts';
import { inkBench, paperOf } from '../bench.ts';
import { lotOf } from './shelf.ts';
import { chanceWithin, wantedHere, wantsTone } from './wanted.ts';

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
    /** ΔE00 that nine prints in ten stay within. */
    readonly band: number;
    readonly within: number;
    readonly chance: number;
    readonly words: Saying;
  } | null;
}

/** How near each wanted colour of a job comes, with the band that it is foreseen with, and how likely a print falls within ΔE00 `within` of it. */
export function askWanted(plan: Pick<Plan, 'job' | 'layers' | 'papers'>, paperId?: string, within = 4): WantedNow[] {
  const { job } = plan;
  const bench = inkBench(job, plan);
  const forecasts = new Map<string, Forecast | null>();
  return job.wanted.map((one, at): WantedNow => {
    const base = { at, wanted: one.lab, wantedSrgb: srgbOfLab(one.lab) };
    const paper = one.paper ?? paperId ?? job.papers[0]?.id ?? '';
    if (wantsTone(one)) {
      const on = plan.papers.find((p) => p.id === paper);
      const tone = on ? wantedHere(one, on).now : null;
      if (!tone) return { ...base, now: null };
      const chance = chanceWithin(tone, one.lab, within);
      return { ...base, now: { ...tone, deltaE: deltaE00(tone.lab, one.lab), within, chance, words: chanceInWords(chance) } };
    }
    if (!forecasts.has(paper)) forecasts.set(paper, forecastOn(job, bench.found, bench.layers, paper));
    const forecast = forecasts.get(paper);
    const foreseen = forecast?.of(one.layers);
    if (!forecast || !foreseen) return { ...base, now: null };
    const { lab, band } = foreseen;
    const chance = forecast.chance(one.layers, one.lab, within);
    return {
      ...base,
      now: { lab, srgb: srgbOfLab(lab), deltaE: deltaE00(lab, one.lab), band, within, chance, words: chanceInWords(chance) },
    };
  });
}

/** A reading as Lab, for those that are spectra or XYZ too. Throws `ProblemError` when it can't be. */
export function labOfReading(reading: Reading, place: string | Saying): Lab {
  return reading.kind === 'lab' || reading.kind === 'photo' ? reading.lab : labFromSpectrum(spectrumFromReading(reading, place));
}

export function srgbOfLab(lab: Lab): string {
  return srgbFromXyz(xyzFromLab(lab)).hex;
}
