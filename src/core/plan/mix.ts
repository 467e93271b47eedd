import type { Job, JobLayer } from '../job/index.ts';
import { inkForRun, type Deposit, type InkForRun } from '../press/index.ts';
import type { PlannedMix } from './types.ts';

/** What goes into the pot of one run: inks of a mix taken apart, base and retarder by volume, grams by density. */
export function planMix(job: Pick<Job, 'inks'>, layer: JobLayer, run: { readonly printsMm2: number; readonly pulls: number; readonly deposit: Deposit }): PlannedMix | null {
  if (layer.ink === null) return null;
  const shares = new Map<string, number>();
  const add = (id: string, share: number, depth: number): void => {
    const ink = job.inks.find((k) => k.id === id);
    if (ink?.from === 'mix' && depth < 16) {
      const whole = ink.parts.reduce((sum, p) => sum + p.parts, 0);
      for (const part of ink.parts) add(part.ink, (share * part.parts) / whole, depth + 1);
    } else shares.set(id, (shares.get(id) ?? 0) + share);
  };
  add(layer.ink, layer.strength, 0);
  const base = layer.base ?? job.inks.find((k) => k.role === 'transparent-base')?.id;
  if (layer.strength < 1) shares.set(base ?? '', (shares.get(base ?? '') ?? 0) + 1 - layer.strength);

  const inks = [...shares].filter(([, share]) => share > 0).map(([id, share]) => {
    const ink = job.inks.find((k) => k.id === id);
    return { inkId: id, name: ink?.name ?? 'Transparent base', share, density: ink?.densityGPerMl ?? 1.05 };
  });
  const densityGPerMl = inks.reduce((sum, k) => sum + k.share * k.density, 0);
  const amount: InkForRun = inkForRun({ areaMm2: run.printsMm2, wetMicrons: run.deposit.wetMicrons, wetRange: run.deposit.wetRange, densityGPerMl, pulls: run.pulls }, `layer “${layer.name}”`);
  const least = Math.min(...inks.map((k) => k.share));
  return {
    parts: inks.map(({ inkId, name, share, density }) => ({ inkId, name, share, partsByVolume: share / least, massGrams: amount.totalMl * share * density })),
    totalGrams: amount.totalGrams, totalRangeGrams: amount.totalRangeGrams, printedGrams: amount.printedGrams, note: amount.note,
  };
}
