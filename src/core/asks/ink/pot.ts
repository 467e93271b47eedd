import { labFromSpectrum, type Lab } from '../../colour/index.ts';
import {
  correctPot,
  matchAgain,
  picturesOfComplaint,
  spectrumFromReading,
  stackReflectance,
  filmOf,
  type Complaint,
  type Ink,
  type MatchedAgain,
  type PotCorrection,
  type Reading,
} from '../../ink/index.ts';
import type { Job, JobInk } from '../../job/index.ts';
import { say } from '../../../words/say.ts';
import { findInks, potOfLayer, letDownParts, type PotPart } from '../../plan/index.ts';
import { inJob, inkBench, layerOf, paperOf, placeOfPot, refuse } from '../bench.ts';

export interface PotRoundAsked {
  readonly added: readonly { readonly id: string; readonly grams: number }[];
  readonly reading: Reading;
}

export interface PotQuestion {
  /** The layer the pot is for: its planned colour on the paper is wanted, unless `wanted` says another. */
  readonly layer: string;
  readonly paperId?: string;
  readonly wanted?: Lab;
  readonly contents: readonly { readonly id: string; readonly grams: number }[];
  readonly rounds: readonly PotRoundAsked[];
  readonly within?: number;
  readonly needGrams?: number;
}

/** What a drawdown of a layer's pot should look like on a paper. */
export function wantedOfPot(job: Job, layerName: string, paperId?: string): { readonly lab: Lab; readonly ground: Lab } {
  const bench = inkBench(job);
  const layer = layerOf(bench, layerName);
  const { spectrum } = paperOf(bench, paperId);
  const pot = potOfLayer(layer, bench.found);
  if (!pot) refuse(job, 'layer-open', placeOfPot(layer), say('asks.openNoColour'), say('asks.chooseInk'));
  return { lab: labFromSpectrum(stackReflectance(spectrum, [filmOf(pot)], bench.found.surface)), ground: labFromSpectrum(spectrum) };
}

/** How to bring a pot back: the least addition of what the job's inks, bases and retarder hold. */
export function askPot(job: Job, ask: PotQuestion): PotCorrection {
  const bench = inkBench(job);
  const layer = layerOf(bench, ask.layer);
  const { spectrum } = paperOf(bench, ask.paperId);
  const wanted = ask.wanted ?? wantedOfPot(job, ask.layer, ask.paperId).lab;
  const shelf = job.inks
    .filter((ink) => ink.from !== 'mix')
    .flatMap((ink) => {
      const film = bench.found.inks.get(ink.id);
      return film ? [{ id: ink.id, name: ink.name, ink: film, densityGPerMl: ink.densityGPerMl }] : [];
    });
  return inJob(job, () =>
    correctPot({
      wanted,
      ground: spectrum,
      surface: bench.found.surface,
      contents: ask.contents,
      shelf,
      within: ask.within ?? 2,
      needGrams: ask.needGrams,
      rounds: ask.rounds.map((round, i) => ({
        added: round.added,
        reading: spectrumFromReading(round.reading, say('asks.drawdownNo', { n: i + 1 })),
      })),
      place: placeOfPot(layer),
    }),
  );
}

/** Pictures to hold beside a drawdown that can't be read: the one that looks like it is the reading. */
export function askComplaint(job: Job, layer: string, complaint: Complaint, paperId?: string): ReturnType<typeof picturesOfComplaint> {
  const { lab, ground } = wantedOfPot(job, layer, paperId);
  return picturesOfComplaint(lab, ground, complaint);
}

/** What a layer's pot holds by volume, mixes taken apart. Throws `ProblemError` while the layer is open. */
export function partsOfLayer(job: Job, layerName: string): readonly PotPart[] {
  const layer = layerOf(inkBench(job), layerName);
  const parts = letDownParts(job, layer);
  if (parts.length === 0) refuse(job, 'layer-open', placeOfPot(layer), say('asks.openNothingInPot'), say('asks.chooseInk'));
  return parts;
}

export interface AgainQuestion {
  readonly layer: string;
  /** New lots: an ink of the job by id, with the readings of the lot at hand. */
  readonly lots: readonly { readonly id: string; readonly ink: JobInk }[];
  readonly paperId?: string;
  /** Reading of the print of then, when there is one. */
  readonly recorded?: Reading;
}

/** The same colour again with new lots of concentrate: the job is the record. */
export function askAgain(job: Job, ask: AgainQuestion, parts: readonly Pick<PotPart, 'inkId' | 'share'>[]): MatchedAgain {
  const bench = inkBench(job);
  const { spectrum } = paperOf(bench, ask.paperId);
  const renewed = findInks(
    { ...job, inks: job.inks.map((ink) => ask.lots.find((lot) => lot.id === ink.id)?.ink ?? ink) },
    bench.wetMicrons,
    bench.found.surface,
  );
  const inkOf = (inks: ReadonlyMap<string, Ink>, id: string): Ink => inks.get(id) ?? { k: new Float64Array(36), s: new Float64Array(36) };
  return matchAgain({
    parts: parts.map((p) => {
      const oldInk = inkOf(bench.found.inks, p.inkId);
      return {
        id: p.inkId,
        name: job.inks.find((ink) => ink.id === p.inkId)?.name ?? p.inkId,
        share: p.share,
        oldInk,
        newInk: ask.lots.some((lot) => lot.id === p.inkId) ? inkOf(renewed.inks, p.inkId) : oldInk,
      };
    }),
    recorded: ask.recorded && spectrumFromReading(ask.recorded, say('asks.earlierPrint')),
    ground: spectrum,
    surface: bench.found.surface,
  });
}
