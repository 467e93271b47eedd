import { offsetRegion, tidy, type Region, type Segment } from '../core/form/index.ts';
import { materialsOf, type Plan } from '../core/plan/index.ts';
import { fail } from '../core/problem.ts';
import { length, lengths, listed, say } from '../words/index.ts';
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
  const places = certificate.faults
    .slice(0, 3)
    .map((f) => say('packet.weakAt', { at: lengths(f.atMm, ',', 0), width: length(f.widthMm, 1) }));
  return fail(
    'cut-file-weak',
    `layers[#${layer.id}].cut`,
    say('packet.cutFileWeak', { places: listed(places, 'semicolon') }),
    say('packet.enlargeThere'),
  );
}

/** What drops out, smaller by half the kerf all round: the machine takes the rest. */
function insideBy(layer: PlannedLayer, kerfMm: number): Region {
  const openings = tidy(layer.stencil.cutLines.rings, 'even-odd');
  const inside = offsetRegion(openings, -kerfMm / 2);
  if (inside.rings.length !== openings.rings.length) {
    fail('kerf-too-wide', `layers[#${layer.id}].cut`, say('packet.kerfTooWide', { kerf: length(kerfMm) }), say('packet.finerTool'));
  }
  return inside;
}

/** What the stencil was planned with. */
function materialFor(plan: Plan, layer: PlannedLayer): Material {
  const id = plan.cuts.find((c) => c.id === layer.cutId)?.materialId;
  return materialsOf(plan.job).find((m) => m.id === id) ?? defaultMaterials[0];
}
