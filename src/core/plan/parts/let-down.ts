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
