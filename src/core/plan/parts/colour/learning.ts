import { log } from '../../../numeric/index.ts';
import { labFromSpectrum, type Lab } from '../../../colour/index.ts';
import {
  chosen,
  filmOf,
  learn,
  sigmaOf,
  spectrumFromReading,
  thicknessOn,
  thinned,
  type Film,
  type Ink,
  type Learned,
  type Member,
  type Surface,
} from '../../../ink/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import { ProblemError, type Problem } from '../../../problem.ts';
import { seeded, type Random } from '../../../random.ts';
import type { Saying } from '../../../../words/say.ts';
import { isSolid } from '../tone/solid.ts';
import type { FoundInks } from './inks.ts';
import { basesOf, letDown, thicker, type PrintLayer } from './let-down.ts';

/** What readings of printed overlaps on one paper have taught. */
export interface Learning {
  readonly words: Saying;
  readonly before: Learned['before'];
  readonly after: Learned['after'];
  readonly observations: Learned['observations'];
  /** Film of each layer against the planned one, with its doubt. */
  readonly deposits: Learned['deposits'];
  /** How thick films lie on ink, against the same films on paper. */
  readonly trapping: number;
}

/** All that is known of the films on one paper, and how surely. */
export interface LearnedPaper {
  /** null: nothing has been read. */
  readonly learning: Learning | null;
  /** Foresees an overlap (by layer ids, first down first) with what was learnt. */
  readonly foresee: (layerIds: readonly string[]) => Lab;
  /** The same by films and press alone, before what was still off at a reading is carried to its kin. */
  readonly byModel: (layerIds: readonly string[]) => Lab;
  /** The print that is shown: films, gloss and trapping as learned. */
  readonly best: () => Member;
  /** Runs in another order, of other strengths, with films so many times as thick (one a run; left out: as learned): gloss, trapping and films as learned. */
  readonly laid: (runs: readonly PrintRun[], times?: readonly number[]) => Member;
  /** An ink, and the surface, as learned. */
  readonly inkOf: (id: string) => Ink;
  readonly surface: Surface;
  /** Prints that may be so as well: seeded. */
  readonly members: (count: number, seed: number) => Member[];
  /** Overlaps that were read, by the bits of their layers. */
  readonly read: readonly number[];
  readonly problems: readonly Problem[];
}

/** What learning knows of a layer. */
export type LearningLayer = PrintLayer & Pick<JobLayer, 'id' | 'name'>;
/** A run as it is laid, whatever it is called. */
export type PrintRun = PrintLayer & Pick<JobLayer, 'id'>;

/** Learns from the Job's readings of proofs on one paper; null where the paper was not read. */
export function learnOnPaper(
  job: Pick<Job, 'proofReadings'>,
  layers: readonly LearningLayer[],
  found: FoundInks,
  paperId: string,
): LearnedPaper | null {
  const paper = found.papers.get(paperId);
  if (!paper) return null;
  const printing = layers.filter((l) => l.ink !== null && found.inks.has(l.ink));
  const at = new Map(printing.map((l, i) => [l.id, i]));
  const readings = job.proofReadings.flatMap((r, i) =>
    r.paper === paperId && isSolid(r) && r.layers.every((id) => at.has(id)) ? [{ ...r, place: `proofReadings[${i}]` }] : [],
  );
  const stackOf = (ids: readonly string[]): number[] => ids.map((id) => at.get(id) as number).sort((a, b) => a - b);
  let own: { readonly count: number; readonly seed: number; readonly members: Member[] } | null = null;
  try {
    const observations = readings.map((r) => ({
      stack: stackOf(r.layers),
      lab: labFromSpectrum(spectrumFromReading(r.reading, r.place)),
      sigma: sigmaOf(r.reading),
      place: r.place,
    }));
    const learned = learn({
      paper,
      surface: found.surface,
      layers: printing.map((l) => asLearnt(l, found)),
      observations,
      moves: found.moves,
      darkest: found.darkest,
      priors: priorsOf(found),
    });
    const { words, before, after, deposits, trapping, problems } = learned;
    return {
      learning: readings.length === 0 ? null : { words, before, after, observations: learned.observations, deposits, trapping },
      foresee: (ids) => learned.foresee(stackOf(ids)),
      byModel: (ids) => learned.bare(stackOf(ids)),
      best: () => memberOf(learned, printing.length, () => 0),
      laid: laidAsLearned(learned, printing, found),
      inkOf: (id) => found.inkUnder(id, surfaceOf(learned, found), learned.state.moved),
      surface: surfaceOf(learned, found),
      members: (count, seed) => {
        const make = (): Member[] => membersOf(learned, printing.length, count, seed);
        if (readings.length > 0) {
          if (own?.count !== count || own.seed !== seed) own = { count, seed, members: make() };
          return own.members;
        }
        const films = printing.map((l) => [l.ink, l.strength, l.base, l.bases, l.filmTimes]);
        return sharedMembers(found, JSON.stringify([count, seed, films]), make);
      },
      read: observations.map((o) => o.stack.reduce((mask, i) => mask | (1 << i), 0)),
      problems,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return null;
  }
}

/** A run as learning sees it: the ink in its pot by how the surface and the inks' spectra may be. */
function asLearnt(layer: PrintRun & { readonly name?: string }, found: FoundInks): Parameters<typeof learn>[0]['layers'][number] {
  return {
    id: layer.id,
    name: layer.name ?? layer.id,
    inkUnder: (surface, moved) =>
      thicker(
        letDown(found.inkUnder(layer.ink as string, surface, moved), layer, (id) => found.inkUnder(id, surface, moved)),
        layer.filmTimes,
      ),
    moves: [layer.ink, ...basesOf(layer).map((b) => b.ink)].flatMap((id) => found.movesOf.get(id ?? '') ?? []),
    strength: 1,
    deposit: 1,
  };
}

const surfaceOf = ({ state }: Learned, found: FoundInks): Surface => ({ ...found.surface, ks: state.ks, trapping: state.trapping });

/** What was learned of single films, of how they lie on one another, of gloss and spectra, for runs in any order and strength. */
function laidAsLearned(learned: Learned, printing: readonly LearningLayer[], found: FoundInks): LearnedPaper['laid'] {
  const { state } = learned;
  const n = printing.length;
  const at = new Map(printing.map((l, i) => [l.id, i]));
  const surface = surfaceOf(learned, found);
  const inks = new Map<string, Ink>();
  const inkOf = (run: PrintRun): Ink => {
    const key = JSON.stringify([run.ink, run.strength, run.base, run.bases, run.filmTimes]);
    let ink = inks.get(key);
    if (!ink) inks.set(key, (ink = asLearnt(run, found).inkUnder(surface, state.moved)));
    return ink;
  };
  return (runs, times) => {
    const places = runs.map((run) => at.get(run.id) ?? -1);
    const films = runs.map((run, i) => filmOf(inkOf(run), 1, (state.deposits[places[i]] ?? 1) * (times?.[i] ?? 1)));
    const known: (Film | undefined)[] = [];
    const onFilm = (below: number, above: number): Film => {
      const pair = places[below] < 0 || places[above] < 0 ? state.trapping : thicknessOn(state, places[below], places[above], n);
      return (known[below * runs.length + above] ??= thinned(films[above], pair));
    };
    return { films, surface, onFilm };
  };
}

/** How sure everything is before an overlap was read. */
function priorsOf({ trapping, surface, kind }: FoundInks): Parameters<typeof learn>[0]['priors'] {
  const { filmSigma, filmReadSigma, glossSigma, learning } = chosen;
  const off = learning[kind];
  return {
    depositSigma: filmSigma,
    unreadSigma: filmReadSigma,
    trapping: trapping.trapping,
    trappingSigma: trapping.sigma,
    pairSigma: trapping.pairs,
    ksSigma: surface.ks > 0 ? Math.min(1, glossSigma / surface.ks) : 0.4,
    modelSigma: off,
    modelHueSigma: off,
  };
}

/** Before anything is read, all papers of a job share the films that may be. */
const shared = new WeakMap<FoundInks, { readonly key: string; readonly members: Member[] }>();

function sharedMembers(found: FoundInks, key: string, make: () => Member[]): Member[] {
  const known = shared.get(found);
  if (known?.key === key) return known.members;
  const members = make();
  shared.set(found, { key, members });
  return members;
}

function membersOf(learned: Learned, n: number, count: number, seed: number): Member[] {
  const random = seeded(seed);
  // Gloss and trapping move all overlaps at once: drawn evenly over their doubt, so that a band doesn't hang on chance.
  const gloss = evenly(count, random),
    trapping = evenly(count, random);
  return Array.from({ length: count }, (_, s) =>
    memberOf(learned, n, (p) => (p === n ? gloss[s] : p === n + 1 ? trapping[s] : random.normal())),
  );
}

/** @param draw how many standard deviations each parameter lies off */
function memberOf(learned: Learned, n: number, draw: (parameter: number) => number): Member {
  const state = learned.drawn(draw);
  const { films, surface } = learned.model.films(state);
  const known: (Film | undefined)[] = [];
  const onFilm = (below: number, above: number): Film =>
    (known[below * n + above] ??= thinned(films[above], thicknessOn(state, below, above, n)));
  return { films: [...films], surface, onFilm };
}

/** Standard normal numbers spread evenly over their distribution, in an order by chance. */
function evenly(count: number, random: Random): number[] {
  const all = Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  for (let i = count - 1; i > 0; i--) {
    const k = random.below(i + 1);
    [all[i], all[k]] = [all[k], all[i]];
  }
  return all;
}

/** Inverse of the standard normal distribution, within 5e-4 (Abramowitz and Stegun 26.2.23). */
function normalQuantile(p: number): number {
  const t = Math.sqrt(-2 * log(Math.min(p, 1 - p)));
  const z = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
  return Math.round((p < 0.5 ? -z : z) * 1e9) / 1e9;
}
