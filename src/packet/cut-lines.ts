import { offsetRegion, tidy, type Region, type Segment } from '../core/form/index.ts';
import type { Plan } from '../core/plan/index.ts';
import { fail } from '../core/problem.ts';
import { defaultMaterials, writePaths, type Material } from '../core/stencil/index.ts';

type PlannedLayer = Plan['layers'][number];

/** What page, SVG and DXF draw: one fit for all three. Nearer than a hand can cut, so the proof keeps its pixels. */
export interface CutLines {
  readonly outlines: readonly (readonly Segment[])[];
  /** The `d` of an SVG path, mm. */
  readonly data: string;
}

/** Width that the machine takes away along each line; 0 for a knife. */
export function kerfOf(plan: Plan, layer: PlannedLayer): number {
  const id = plan.cuts.find((c) => c.id === layer.cutId)?.materialId;
  return plan.job.materials.find((m) => m.id === id)?.kerfMm ?? 0;
}

/**
 * The knife paths of a stencil as they will be written, proven on the written text: fitted with curves where that holds,
 * else point by point. With a kerf they run half of it inside what drops out, and are proven for what is left when that is
 * gone. Throws ProblemError where a stencil that the Plan proved would not hold as written either.
 */
export function cutLinesOf(plan: Plan, layer: PlannedLayer, kerfMm = 0): CutLines {
  const { stencil } = layer;
  const usual = materialFor(plan, layer);
  const paths = kerfMm > 0 ? insideBy(layer, kerfMm) : stencil.cutLines;
  // On the line as written paper is broader by one kerf than it will be, and openings narrower.
  const material =
    kerfMm > 0
      ? { ...usual, leastBridgeMm: usual.leastBridgeMm + kerfMm, leastOpeningMm: Math.max(0.05, usual.leastOpeningMm - kerfMm) }
      : usual;
  const { outlines, data, certificate } = writePaths(paths, stencil, material);
  // What the Plan could not prove is told there, on the facts page and in the problems; it is drawn as it is.
  if (certificate.holds || !stencil.certificate.holds) return { outlines, data };
  const where = certificate.faults
    .slice(0, 3)
    .map((f) => `${f.atMm[0].toFixed(0)}, ${f.atMm[1].toFixed(0)} mm (${f.widthMm.toFixed(1)} mm wide)`)
    .join('; ');
  return fail(
    'cut-file-weak',
    `layer “${layer.name}”`,
    `Its cut file would not hold together: ${where}.`,
    'Make the form a little larger there, or choose a firmer material.',
  );
}

/** What drops out, smaller by half the kerf all round: the machine takes the rest. */
function insideBy(layer: PlannedLayer, kerfMm: number): Region {
  const openings = tidy(layer.stencil.cutLines.rings, 'even-odd');
  const inside = offsetRegion(openings, -kerfMm / 2);
  if (inside.rings.length !== openings.rings.length) {
    fail(
      'kerf-too-wide',
      `layer “${layer.name}”`,
      `Some of what drops out is narrower than the ${kerfMm} mm that the machine takes away.`,
      'Take a finer tool, make the form larger, or cut this one by hand (no kerf).',
    );
  }
  return inside;
}

/** The Job's material with the studio's defaults for what it leaves open. */
function materialFor(plan: Plan, layer: PlannedLayer): Material {
  const id = plan.cuts.find((c) => c.id === layer.cutId)?.materialId;
  const own = plan.job.materials.find((m) => m.id === id);
  const usual = defaultMaterials.find((m) => m.id === id) ?? defaultMaterials[0];
  return own ? { ...own, prints: own.prints ?? usual.prints } : usual;
}
