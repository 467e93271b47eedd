import type { Reading } from '../../../../core/ink/index.ts';
import type { JobInk, JobReading } from '../../../../core/job/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { words } from '../../../store/words.ts';

/** A place for one reading of an ink. */
export interface Slot {
  readonly key: string;
  readonly label: string;
  readonly reading: Reading | null;
  /** Of a ladder's step: how much ink is in it, 0..1. */
  readonly share?: number;
}

export type HowRead = Exclude<JobInk['from'], 'mix'>;

/** The readings that an ink holds, in the order they are taken. */
export function slotsOf(ink: JobInk): Slot[] {
  const w = words().inks.slots;
  switch (ink.from) {
    case 'one-ground':
      return [
        { key: 'ground', label: w.ground, reading: ink.ground },
        { key: 'over', label: w.over, reading: ink.over },
      ];
    case 'two-grounds':
      return (['white', 'overWhite', 'black', 'overBlack'] as const).map((key) => ({ key, label: w[key], reading: ink[key] }));
    case 'ladder':
      return [
        { key: 'ground', label: w.ground, reading: ink.ground },
        ...ink.steps.map((s, i): Slot => ({ key: `step-${i}`, label: stepLabel(s.share), reading: s.over, share: s.share })),
      ];
    default:
      return [];
  }
}

export function stepLabel(share: number): string {
  return words().inks.step(sayNumber(share * 100, (share * 100) % 1 < 0.05 ? 0 : 1, true));
}

/** Empty places for a way of reading. The paper's own reading stands in already where it is known. */
export function emptySlots(how: HowRead, paper: Reading | null): Slot[] {
  const w = words().inks.slots;
  switch (how) {
    case 'one-ground':
      return [
        { key: 'ground', label: w.ground, reading: paper },
        { key: 'over', label: w.over, reading: null },
      ];
    case 'two-grounds':
      return (['white', 'overWhite', 'black', 'overBlack'] as const).map((key) => ({
        key,
        label: w[key],
        reading: key === 'white' ? paper : null,
      }));
    case 'ladder':
      return [
        { key: 'ground', label: w.ground, reading: paper },
        ...[1, 0.5, 0.25].map((share, i): Slot => ({ key: `step-${i}`, label: stepLabel(share), reading: null, share })),
      ];
    case 'clear':
      return [];
  }
}

/** An ink of these readings; null while one is missing. */
export function inkOfSlots(
  head: Pick<JobInk, 'id' | 'name' | 'role' | 'densityGPerMl' | 'drawdownMicrons'>,
  how: HowRead,
  slots: readonly Slot[],
): JobInk | null {
  if (slots.some((s) => s.reading === null)) return null;
  const of = (key: string): JobReading => structuredClone(slots.find((s) => s.key === key)!.reading) as JobReading;
  switch (how) {
    case 'one-ground':
      return { ...head, from: how, ground: of('ground'), over: of('over') };
    case 'two-grounds':
      return { ...head, from: how, white: of('white'), overWhite: of('overWhite'), black: of('black'), overBlack: of('overBlack') };
    case 'ladder':
      return {
        ...head,
        from: how,
        ground: of('ground'),
        steps: slots.filter((s) => s.share !== undefined).map((s) => ({ share: s.share!, over: structuredClone(s.reading) as JobReading })),
      };
    case 'clear':
      return { ...head, from: how };
  }
}
