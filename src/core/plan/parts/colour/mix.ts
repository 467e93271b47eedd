import type { Job, JobLayer } from '../../../job/index.ts';
import { inkForRun, studioDefaults, type Deposit, type InkForRun, type RidgeOver } from '../../../press/index.ts';
import { asWritten, say, type Saying } from '../../../../words/say.ts';
import type { PlannedMix } from '../../planned.ts';
import { basesOf, type PotLayer } from './let-down.ts';

export interface PotPart {
  /** Empty: a base that the job doesn't list. */
  readonly inkId: string;
  readonly name: Saying;
  /** Of the pot's volume. */
  readonly share: number;
  readonly densityGPerMl: number;
}

/** What a layer's pot holds, by volume: mixes taken apart, let down with their base. Empty for an open layer. */
export function letDownParts(job: Pick<Job, 'inks'>, layer: PotLayer): PotPart[] {
  if (layer.ink === null) return [];
  const shares = new Map<string, number>();
  const add = (id: string, share: number, depth: number): void => {
    const ink = job.inks.find((k) => k.id === id);
    if (ink?.from === 'mix' && depth < 16) {
      const whole = ink.parts.reduce((sum, p) => sum + p.parts, 0);
      for (const part of ink.parts) add(part.ink, (share * part.parts) / whole, depth + 1);
    } else shares.set(id, (shares.get(id) ?? 0) + share);
  };
  add(layer.ink, layer.strength, 0);
  const usual = job.inks.find((k) => k.role === 'transparent-base')?.id ?? '';
  for (const { ink = usual, share } of basesOf(layer)) add(ink, (1 - layer.strength) * share, 0);
  return [...shares]
    .filter(([, share]) => share > 0)
    .map(([id, share]) => {
      const ink = job.inks.find((k) => k.id === id);
      const name = ink ? asWritten(ink.name) : say('ink.transparentBase');
      return { inkId: id, name, share, densityGPerMl: ink?.densityGPerMl ?? 1.05 };
    });
}

/** What goes into the pot of one run: parts by volume, grams by density, with what stays in screen and pot. */
export function planMix(
  job: Pick<Job, 'inks'>,
  layer: JobLayer,
  run: {
    readonly printsMm2: number;
    readonly pulls: number;
    readonly deposit: Deposit;
    readonly retarderShare: number;
    readonly bladeMm: number;
    readonly ridge: RidgeOver;
  },
): PlannedMix | null {
  const inks = letDownParts(job, layer);
  if (inks.length === 0) return null;
  const densityGPerMl = inks.reduce((sum, k) => sum + k.share * k.densityGPerMl, 0);
  const { meanTimes } = run.ridge;
  const perCm = studioDefaults.residueGramsPerCm;
  const amount: InkForRun = inkForRun(
    {
      areaMm2: run.printsMm2,
      // Fine shapes lie within the ridge of their own edges: up to so much thicker.
      wetMicrons: (run.deposit.wetMicrons * (1 + meanTimes)) / 2,
      wetRange: [run.deposit.wetRange[0], run.deposit.wetRange[1] * meanTimes],
      densityGPerMl,
      pulls: run.pulls,
      stayingGrams: [(perCm[0] * run.bladeMm) / 10, (perCm[1] * run.bladeMm) / 10],
    },
    `layers[#${layer.id}]`,
  );
  const least = Math.min(...inks.map((k) => k.share));
  return {
    parts: inks.map(({ inkId, name, share, densityGPerMl: density }) => ({
      inkId,
      name,
      share,
      partsByVolume: share / least,
      massGrams: amount.totalMl * share * density,
    })),
    totalGrams: amount.totalGrams,
    totalRangeGrams: amount.totalRangeGrams,
    printedGrams: amount.printedGrams,
    retarderShare: run.retarderShare,
    retarderGrams: amount.totalGrams * run.retarderShare,
    note: amount.note,
  };
}
