import { common, offsetRegion, regionArea, takeAway } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Material } from './materials.ts';

/** A layer in laydown order with what its stencil is made of. */
export interface RidgeLayer {
  readonly id: string;
  readonly name: string;
  readonly prints: Region;
  readonly material: Material;
}

/** Stencils at least this thick leave a ridge that later runs show (common practice; cut film is 75..127 µm). */
export const ridgeFromMm = 0.12;
/** Extra ink stands within this distance of edges (common practice: 1..2 mm). */
const ridgeWidthMm = 1;
/** Shorter crossings than this are not worth a word. */
const leastCrossingMm = 20;

/**
 * Ink stands higher along the edges of a thick stencil. A warning for each such layer that later ones print across, with
 * the lengths that cross (to about a tenth, from the area of a strip along the edge).
 */
export function ridgeWarnings(layers: readonly RidgeLayer[]): Problem[] {
  const problems: Problem[] = [];
  layers.forEach((layer, i) => {
    if (layer.material.thicknessMm < ridgeFromMm || !layer.prints.rings.length) return;
    const strip = takeAway(layer.prints, offsetRegion(layer.prints, -ridgeWidthMm));
    const crossed = layers.slice(i + 1).flatMap((later) => {
      const lengthMm = regionArea(common(strip, later.prints)) / ridgeWidthMm;
      return lengthMm < leastCrossingMm ? [] : [`${later.name} ${(lengthMm / 10).toFixed(0)} cm`];
    });
    if (crossed.length === 0) return;
    problems.push(
      problem(
        'warning',
        'ridge-crossed',
        `layer ${layer.id}`,
        `Later runs print over the ridge that ${layer.material.name.toLowerCase()} (${layer.material.thicknessMm} mm) leaves along the edges of ${layer.name}: ${crossed.join(', ')}.`,
        `Cut ${layer.name} from thinner material, or print it after them.`,
      ),
    );
  });
  return problems;
}
