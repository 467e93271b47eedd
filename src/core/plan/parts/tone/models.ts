import { labFromSpectrum, labFromXyz, smoothestSpectrumNear, xyzAt, xyzFromLab, type Lab } from '../../../colour/index.ts';
import { toneModel, type RampStep, type ToneModel } from '../../../halftone/index.ts';
import { overlapSpectra, spectrumFromReading } from '../../../ink/index.ts';
import type { Job, JobPaper } from '../../../job/index.ts';
import { ProblemError } from '../../../problem.ts';
import type { FoundInks } from '../colour/inks.ts';
import type { LearnedPaper } from '../colour/learning.ts';
import type { PrintedLayer } from '../colour/let-down.ts';
import { isSolid } from './solid.ts';
import { usualCurve, type ToneScreen } from './screens.ts';

const bands = 36;

/** Tones of several layers on one paper: whatever the films cover, the colour and its band. */
export interface PlannedTones {
  /** Ids of the layers that print, first down first: the order of coverages. */
  readonly layers: readonly string[];
  /** Which of them carry tone; the others lie solid or not at all. */
  readonly carries: readonly boolean[];
  readonly model: ToneModel;
}

/** @param lab of all overlaps as they are shown, first-down layer in bit 0; @param band likewise */
export function tonesOn(
  paper: Pick<JobPaper, 'id'>,
  job: Pick<Job, 'proofReadings'>,
  found: FoundInks,
  layers: readonly PrintedLayer[],
  screens: ReadonlyMap<string, ToneScreen>,
  learned: LearnedPaper | null,
  lab: Float64Array,
  band: ArrayLike<number>,
): PlannedTones | null {
  const ground = found.papers.get(paper.id);
  if (!ground || !layers.some((l) => screens.has(l.id))) return null;
  const at = new Map(layers.map((l, i) => [l.id, i]));
  const read = job.proofReadings.flatMap((r, i) => {
    if (r.paper !== paper.id || isSolid(r) || !r.layers.every((id) => at.has(id)) || r.coverages?.length !== r.layers.length) return [];
    const coverages = layers.map(() => 0);
    r.layers.forEach((id, k) => {
      coverages[at.get(id)!] = r.coverages![k];
    });
    try {
      return [{ coverages, spectrum: spectrumFromReading(r.reading, `proofReadings[${i}]`) }];
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      return [];
    }
  });
  const printing = (coverages: readonly number[]): number[] => coverages.flatMap((c, i) => (c > 0 ? [i] : []));
  const single = (i: number): RampStep[] =>
    meanOfAlike(
      read
        .filter(({ coverages }) => printing(coverages).length === 1 && coverages[i] > 0)
        .map(({ coverages, spectrum }) => ({ coverage: coverages[i], spectrum })),
    );
  const films = learned?.learning ? learned.best() : { films: layers.map((l) => l.film), surface: found.surface };
  const readSolids = readSpectra(paper, job, layers);
  const spectra = asShown(overlapSpectra(ground, films.films, films.surface), lab, readSolids);
  const several = (1 << layers.length) - 1 - layers.length;
  const severalRead = [...readSolids.keys()].filter((row) => (row & (row - 1)) !== 0).length;
  return {
    layers: layers.map((l) => l.id),
    carries: layers.map((l) => screens.has(l.id)),
    model: toneModel({
      overlaps: spectra,
      bands: band,
      overlapsRead: several > 0 ? severalRead / several : 1,
      inks: layers.map((l, i) => {
        const screen = screens.get(l.id);
        return screen ? { ramp: single(i), usual: usualCurve(screen) } : { ramp: [] };
      }),
      read: read
        .filter(({ coverages }) => printing(coverages).length > 1)
        .map(({ coverages, spectrum }) => ({ coverages, lab: labFromSpectrum(spectrum) })),
    }),
  };
}

/** Steps that were read several times count once. */
function meanOfAlike(steps: readonly RampStep[]): RampStep[] {
  const by = new Map<number, RampStep[]>();
  for (const step of steps) by.set(step.coverage, [...(by.get(step.coverage) ?? []), step]);
  return [...by.values()]
    .map((alike) => ({
      coverage: alike[0].coverage,
      spectrum: alike[0].spectrum.map((_, b) => alike.reduce((sum, s) => sum + s.spectrum[b], 0) / alike.length),
    }))
    .sort((a, b) => a.coverage - b.coverage);
}

/** Overlaps read as spectra or colours, by their row. */
function readSpectra(
  paper: Pick<JobPaper, 'id'>,
  job: Pick<Job, 'proofReadings'>,
  layers: readonly PrintedLayer[],
): Map<number, Float64Array> {
  const out = new Map<number, Float64Array>();
  job.proofReadings.forEach((r, i) => {
    if (r.paper !== paper.id || !isSolid(r) || !r.layers.every((id) => layers.some((l) => l.id === id))) return;
    const row = layers.reduce((code, l, k) => (r.layers.includes(l.id) ? code | (1 << k) : code), 0);
    try {
      out.set(row, spectrumFromReading(r.reading, `proofReadings[${i}]`));
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
    }
  });
  return out;
}

/** Spectra of the films with the colours that are shown: as read where they were, else moved by what two smoothest spectra of the two colours differ. */
function asShown(spectra: Float64Array, lab: Float64Array, read: ReadonlyMap<number, Float64Array>): Float64Array {
  for (let row = 0; row * bands < spectra.length; row++) {
    const known = read.get(row);
    if (known) {
      spectra.set(known, row * bands);
      continue;
    }
    const shown: Lab = [lab[row * 3], lab[row * 3 + 1], lab[row * 3 + 2]];
    const own = labFromXyz(xyzAt(spectra, row * bands));
    if (Math.hypot(shown[0] - own[0], shown[1] - own[1], shown[2] - own[2]) < 0.01) continue;
    const to = smoothestSpectrumNear(xyzFromLab(shown)).spectrum,
      from = smoothestSpectrumNear(xyzFromLab(own)).spectrum;
    for (let b = 0; b < bands; b++) {
      const at = row * bands + b;
      spectra[at] = Math.min(1.2, Math.max(1e-4, (spectra[at] * to[b]) / from[b]));
    }
  }
  return spectra;
}
