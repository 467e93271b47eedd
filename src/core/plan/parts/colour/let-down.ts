import { clearInk, filmOf, mixInks, type Film, type Ink } from '../../../ink/index.ts';
import type { JobLayer } from '../../../job/index.ts';
import type { FoundInks } from './inks.ts';

/** What a pot is made from. */
export type PotLayer = Pick<JobLayer, 'ink' | 'strength' | 'base' | 'bases'>;
/** And how thick it lies: the run's film against that of the job's screen. */
export type PrintLayer = PotLayer & { readonly filmTimes?: number };

/** A layer that prints, with its film. */
export type RunLayer = JobLayer & { readonly filmTimes: number };

/** The bases of a pot with their shares of what is no ink; one without a name is a clear one. */
export function basesOf({ base, bases }: Pick<JobLayer, 'base' | 'bases'>): { readonly ink?: string; readonly share: number }[] {
  if (bases === undefined) return [{ ink: base, share: 1 }];
  const whole = bases.reduce((sum, one) => sum + one.share, 0);
  return bases.map((one) => ({ ink: one.ink, share: one.share / whole }));
}

/** Ink and bases by volume, inks as `inkOf` has them. A clear base adds nothing but volume. */
export function letDown(ink: Ink, layer: PotLayer, inkOf: (id: string) => Ink | undefined): Ink {
  return mixInks([
    { ink, share: layer.strength },
    ...basesOf(layer).map((base) => ({
      ink: (base.ink === undefined ? undefined : inkOf(base.ink)) ?? clearInk(),
      share: base.share * (1 - layer.strength),
    })),
  ]);
}

/** An ink that lies so many times as thick. */
export function thicker(ink: Ink, times = 1): Ink {
  return times === 1 ? ink : { ...ink, k: ink.k.map((v) => v * times), s: ink.s.map((v) => v * times) };
}

/** What a run prints: the ink in its pot as thick as it lies; null for an open layer. */
export function printedPot(layer: PrintLayer, found: FoundInks): Ink | null {
  const ink = layer.ink === null ? undefined : found.inks.get(layer.ink);
  return ink
    ? thicker(
        letDown(ink, layer, (id) => found.inks.get(id)),
        layer.filmTimes,
      )
    : null;
}

/** The ink in a layer's pot, whatever mesh it goes through; null for an open layer. */
export function potOfLayer({ ink, strength, base, bases }: PotLayer, found: FoundInks): Ink | null {
  return printedPot({ ink, strength, base, bases }, found);
}

/** The film a layer leaves: its ink at its strength, let down with its bases, through the run's mesh. */
export function filmOfLayer(layer: PrintLayer, found: FoundInks): Film | null {
  const pot = printedPot(layer, found);
  return pot && filmOf(pot);
}

/** A layer that prints: its bit in the codes, what is in its pot, and the film it leaves. */
export interface PrintedLayer {
  readonly id: string;
  readonly bit: number;
  readonly pot: Ink;
  readonly film: Film;
  /** Doubt of its ink's readings, ΔE00. */
  readonly sigma: number;
  /** Its spectrum stands behind a colour, and may be another. */
  readonly moves: boolean;
}

/** Bits are given by id, so that a new order changes no code. */
export function bitsOf(layers: readonly Pick<JobLayer, 'id'>[]): ReadonlyMap<string, number> {
  const ids = layers.map((l) => l.id).sort();
  return new Map(ids.map((id, bit) => [id, bit]));
}

/** The layers that have an ink, with their films, in laydown order. */
export function layTheInks(layers: readonly (PrintLayer & Pick<JobLayer, 'id'>)[], inks: FoundInks): PrintedLayer[] {
  const bitOf = bitsOf(layers);
  return layers.flatMap((layer) => {
    const pot = printedPot(layer, inks);
    const sigma = inks.inkSigmas.get(layer.ink ?? '') ?? 1;
    return pot
      ? [
          {
            id: layer.id,
            bit: bitOf.get(layer.id)!,
            pot,
            film: filmOf(pot),
            sigma,
            moves: (inks.movesOf.get(layer.ink ?? '') ?? []).length > 0,
          },
        ]
      : [];
  });
}
