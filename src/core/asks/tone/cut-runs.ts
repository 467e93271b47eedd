import type { Region } from '../../form/index.ts';
import { freshId, type Job, type JobCut, type JobForm, type JobLayer } from '../../job/index.ts';

/** A run to be cut: what is open in it, and what it is printed with. */
export interface RunToCut extends Partial<JobLayer> {
  readonly id: string;
  readonly name: string;
  readonly region: Region;
}

export interface CutRuns {
  readonly forms: readonly Partial<JobForm>[];
  readonly cuts: readonly Partial<JobCut>[];
  readonly layers: readonly Partial<JobLayer>[];
}

/** Openings as forms of their own, each with its cut and its run, under names that the job has free. To be read by `parseJob`. */
export function cutRuns(job: Pick<Job, 'forms' | 'cuts' | 'layers' | 'materials'>, runs: readonly RunToCut[], materialId: string): CutRuns {
  const made = {
    forms: [] as (Partial<JobForm> & { id: string })[],
    cuts: [] as (Partial<JobCut> & { id: string })[],
    layers: [] as (Partial<JobLayer> & { id: string })[],
  };
  for (const { region, ...run } of runs) {
    const { id, name } = run;
    const form = freshId([...job.forms, ...made.forms], id),
      cut = freshId([...job.cuts, ...made.cuts], id),
      layer = freshId([...job.layers, ...made.layers], id);
    const outline = region.rings.map(pointsOf);
    const part = { form, ...middleOf(outline), how: 'add' as const, angleDeg: 0, scale: 1, mirror: false };
    made.forms.push({ id: form, name, outline });
    made.cuts.push({ id: cut, name, ...(job.materials.length > 0 ? { material: materialId } : {}), parts: [part] });
    made.layers.push({ side: 'window', ...run, id: layer, cut });
  }
  return made;
}

/** To a thousandth of a millimetre. */
function pointsOf(ring: Float64Array): [number, number][] {
  const round = (v: number): number => Math.round(v * 1000) / 1000;
  return Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [round(ring[2 * i]), round(ring[2 * i + 1])]);
}

/** Where the middle of an outline's box lies: forms are placed by it. */
function middleOf(rings: readonly (readonly [number, number][])[]): { readonly xMm: number; readonly yMm: number } {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings)
    for (const [x, y] of ring) {
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  return { xMm: (minX + maxX) / 2, yMm: (minY + maxY) / 2 };
}
