import { clearInk, filmOf, mixInks, type Film, type Ink } from '../../ink/index.ts';
import type { JobLayer } from '../../job/index.ts';
import type { FoundInks } from './inks.ts';

/** Ink and base by volume. A clear base adds nothing but volume. */
export function letDown(ink: Ink, strength: number, base: Ink = clearInk()): Ink {
  return mixInks([
    { ink, share: strength },
    { ink: base, share: 1 - strength },
  ]);
}

/** The ink in a layer's pot; null for an open layer. */
export function potOfLayer(layer: Pick<JobLayer, 'ink' | 'strength' | 'base'>, found: FoundInks): Ink | null {
  const ink = layer.ink === null ? undefined : found.inks.get(layer.ink);
  return ink ? letDown(ink, layer.strength, layer.base === undefined ? undefined : found.inks.get(layer.base)) : null;
}

/** The film a layer leaves: its ink at its strength, let down with its base. */
export function filmOfLayer(layer: Pick<JobLayer, 'ink' | 'strength' | 'base'>, found: FoundInks): Film | null {
  const pot = potOfLayer(layer, found);
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
export function layTheInks(layers: readonly Pick<JobLayer, 'id' | 'ink' | 'strength' | 'base'>[], inks: FoundInks): PrintedLayer[] {
  const bitOf = bitsOf(layers);
  return layers.flatMap((layer) => {
    const pot = potOfLayer(layer, inks);
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
