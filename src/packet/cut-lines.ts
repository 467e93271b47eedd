import { fitOutline, offsetRegion, pathData, tidy, type FitRules, type Region, type Segment } from '../core/form/index.ts';
import type { Plan } from '../core/plan.ts';
import { fail } from '../core/problem.ts';
import { certifyWritten, defaultMaterials, type Material } from '../core/stencil/index.ts';

type PlannedLayer = Plan['layers'][number];

/** What page, SVG and DXF draw: one fit for all three. Nearer than a hand can cut, so the proof keeps its pixels. */
export interface CutLines {
  readonly outlines: readonly (readonly Segment[])[];
  /** The `d` of an SVG path, mm. */
  readonly data: string;
}

/** Few nodes first; where that would not hold, nearer to the Plan's own outline. */
const fits: readonly FitRules[] = [0.03, 0.015, 0.006].map((toleranceMm) => ({ toleranceMm, cornerDeg: 32 }));
/** Straight segments only, every point kept: what is written where a fitted outline would not hold. */
const unfitted = (region: Region): Segment[][] => region.rings.map((ring) => Array.from({ length: ring.length / 2 }, (_, i): Segment => ({ kind: i === 0 ? 'move' : 'line', points: [ring[i * 2], ring[i * 2 + 1]] })));

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
  const material = kerfMm > 0 ? { ...usual, leastBridgeMm: usual.leastBridgeMm + kerfMm, leastOpeningMm: Math.max(0.05, usual.leastOpeningMm - kerfMm) } : usual;
  for (const rules of fits) {
    const fitted = { outlines: fitOutline(paths, rules), data: pathData(paths, rules) };
    // What the Plan could not prove is told there, on the facts page and in the problems; it is drawn as it is.
    if (!stencil.certificate.holds || certifyWritten(fitted.data, stencil, material).holds) return fitted;
  }
  const outlines = unfitted(paths);
  const data = dataOf(outlines);
  const certificate = certifyWritten(data, stencil, material);
  if (certificate.holds) return { outlines, data };
  const where = certificate.faults.slice(0, 3).map((f) => `${f.atMm[0].toFixed(0)}, ${f.atMm[1].toFixed(0)} mm (${f.widthMm.toFixed(1)} mm wide)`).join('; ');
  return fail('cut-file-weak', `layer “${layer.name}”`, `Its cut file would not hold together: ${where}.`, 'Make the form a little larger there, or choose a firmer material.');
}

/** What drops out, smaller by half the kerf all round: the machine takes the rest. */
function insideBy(layer: PlannedLayer, kerfMm: number): Region {
  const openings = tidy(layer.stencil.cutLines.rings, 'even-odd');
  const inside = offsetRegion(openings, -kerfMm / 2);
  if (inside.rings.length !== openings.rings.length) {
    fail('kerf-too-wide', `layer “${layer.name}”`, `Some of what drops out is narrower than the ${kerfMm} mm that the machine takes away.`, 'Take a finer tool, make the form larger, or cut this one by hand (no kerf).');
  }
  return inside;
}

/** Segments as the `d` of an SVG path, mm. */
export function dataOf(outlines: readonly (readonly Segment[])[]): string {
  return outlines.map((segments) => `${segments.map((s) => `${s.kind === 'move' ? 'M' : s.kind === 'line' ? 'L' : 'C'}${s.points.map((v) => v.toFixed(3)).join(' ')}`).join('')}Z`).join('');
}

/** The Job's material with the studio's defaults for what it leaves open. */
function materialFor(plan: Plan, layer: PlannedLayer): Material {
  const id = plan.cuts.find((c) => c.id === layer.cutId)?.materialId;
  const own = plan.job.materials.find((m) => m.id === id);
  const usual = defaultMaterials.find((m) => m.id === id) ?? defaultMaterials[0];
  return own ? { ...own, prints: own.prints ?? usual.prints } : usual;
}
