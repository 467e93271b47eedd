import { labFromSpectrum, type Lab } from '../../colour/index.ts';
import { learn, sigmaOf, spectrumFromReading, type Ink, type Learned, type Surface } from '../../ink/index.ts';
import type { Job, JobLayer } from '../../job/index.ts';
import { ProblemError, type Problem } from '../../problem.ts';
import type { Saying } from '../../../words/say.ts';
import { findInks, type FoundInks, type InkReads } from './inks.ts';
import { letDown } from './let-down.ts';

/** What readings of printed overlaps on one paper have taught. */
export interface Learning {
  readonly words: Saying;
  readonly before: Learned['before'];
  readonly after: Learned['after'];
  readonly observations: Learned['observations'];
  /** Film of each layer against the planned one, with its doubt. */
  readonly deposits: Learned['deposits'];
  readonly trapping: number;
}

export interface LearnedPaper {
  readonly learning: Learning;
  /** Foresees an overlap (by layer ids, first down first) with what was learnt. */
  readonly foresee: (layerIds: readonly string[]) => Lab;
  /** Every overlap that was read: its own colour and doubt, by ids joined with +. */
  readonly problems: readonly Problem[];
}

/** What learning knows of a layer. */
export type LearningLayer = Pick<JobLayer, 'id' | 'name' | 'ink' | 'strength' | 'base'>;

/** Learns from the Job's readings of proofs on one paper; null when there are none that speak about its layers. */
export function learnOnPaper(
  job: InkReads & Pick<Job, 'proofReadings'>,
  layers: readonly LearningLayer[],
  found: FoundInks,
  wetMicrons: number,
  paperId: string,
): LearnedPaper | null {
  const paper = found.papers.get(paperId);
  const printing = layers.filter((l) => l.ink !== null);
  const at = new Map(printing.map((l, i) => [l.id, i]));
  const readings = job.proofReadings.flatMap((r, i) =>
    r.paper === paperId && r.layers.every((id) => at.has(id)) ? [{ ...r, place: `proofReadings[${i}]` }] : [],
  );
  if (!paper || readings.length === 0) return null;
  const underKs = new Map<number, FoundInks>();
  const under = (surface: Surface): FoundInks => {
    let inks = underKs.get(surface.ks);
    if (!inks) {
      inks = findInks(job, wetMicrons, surface);
      if (underKs.size > 8) underKs.clear();
      underKs.set(surface.ks, inks);
    }
    return inks;
  };
  const inkUnder =
    (layer: LearningLayer) =>
    (surface: Surface): Ink => {
      const { inks } = under(surface);
      return letDown(inks.get(layer.ink as string) as Ink, layer.strength, layer.base === undefined ? undefined : inks.get(layer.base));
    };
  try {
    const observations = readings.map((r) => ({
      stack: r.layers.map((id) => at.get(id) as number).sort((a, b) => a - b),
      lab: labFromSpectrum(spectrumFromReading(r.reading, r.place)),
      sigma: sigmaOf(r.reading),
      place: r.place,
    }));
    const learned = learn({
      paper,
      surface: found.surface,
      layers: printing.map((l) => ({ id: l.id, name: l.name, inkUnder: inkUnder(l), strength: 1, deposit: 1 })),
      observations,
      darkest: found.darkest,
    });
    const { words, before, after, deposits, trapping, problems } = learned;
    return {
      learning: { words, before, after, observations: learned.observations, deposits, trapping },
      foresee: (ids) => learned.foresee(ids.map((id) => at.get(id) as number).sort((a, b) => a - b)),
      problems,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return null;
  }
}
