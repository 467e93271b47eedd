import { common, offsetRegion, regionArea, simplify, takeAway } from '../../form/index.ts';
import type { Region } from '../../form/index.ts';
import { problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { length, list, name as asName, say, type Saying } from '../../../words/say.ts';
import type { Material } from '../materials.ts';

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
    // To a tenth of a millimetre: the lengths are said to ten.
    const prints = simplify(layer.prints, 0.1);
    const strip = takeAway(prints, offsetRegion(prints, -ridgeWidthMm));
    const crossed = layers.slice(i + 1).flatMap((later): Saying[] => {
      const lengthMm = regionArea(common(strip, simplify(later.prints, 0.1))) / ridgeWidthMm;
      return lengthMm < leastCrossingMm
        ? []
        : [say('stencil.ridgeAlong', { layer: asName(later.name), along: length(Math.round(lengthMm / 10) * 10, 0) })];
    });
    if (crossed.length === 0) return;
    problems.push(
      problem(
        'warning',
        'ridge-crossed',
        `layers[#${layer.id}]`,
        say('stencil.ridgeCrossed', {
          layer: asName(layer.name),
          material: layer.material.name,
          thickness: length(layer.material.thicknessMm),
          crossed: list(crossed),
        }),
        say('stencil.thinnerOrLater', { layer: asName(layer.name) }),
      ),
    );
  });
  return problems;
}
