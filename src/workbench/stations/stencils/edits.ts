import type { Job, JobLayer, JobMaterial } from '../../../core/job/index.ts';
import { type Bridge, defaultMaterials, knifeRates } from '../../../core/stencil/index.ts';
import { withLayer } from '../../store/edits.ts';
import { told } from '../../store/words.ts';

export type Pin = NonNullable<JobLayer['pinnedBridges']>[number];
export type Way = Pick<Pin, 'fromMm' | 'toMm'>;

const near = (a: readonly number[], b: readonly number[]): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.02;

/** Which pin a planned bridge came from; -1 when Laydown laid it. */
export function pinOf(layer: JobLayer, bridge: Pick<Bridge, 'from' | 'to' | 'pinned'>): number {
  return bridge.pinned ? (layer.pinnedBridges ?? []).findIndex((p) => near(p.fromMm, bridge.from) && near(p.toMm, bridge.to)) : -1;
}

/** Puts a bridge where the printmaker wants it: in place of pin `index`, or as one more. */
export function withPin(job: Job, layerId: string, index: number, way: Way): Job {
  const layer = job.layers.find((l) => l.id === layerId);
  if (!layer) return job;
  const pins = layer.pinnedBridges ?? [];
  const pin: Pin = {
    fromMm: [...way.fromMm],
    toMm: [...way.toMm],
    ...(index >= 0 && pins[index].widthMm !== undefined ? { widthMm: pins[index].widthMm } : {}),
  };
  return withLayer(job, layerId, { pinnedBridges: index >= 0 ? pins.map((p, i) => (i === index ? pin : p)) : [...pins, pin] });
}

export function withoutPin(job: Job, layerId: string, index: number): Job {
  const pins = job.layers.find((l) => l.id === layerId)?.pinnedBridges?.filter((_, i) => i !== index) ?? [];
  return withLayer(job, layerId, { pinnedBridges: pins.length > 0 ? pins : undefined });
}

/** No bridge within `radiusMm` of a place; a pin that lies there is let go. */
export function withForbidden(job: Job, layerId: string, atMm: readonly [number, number], radiusMm: number, pinIndex: number): Job {
  const base = pinIndex >= 0 ? withoutPin(job, layerId, pinIndex) : job;
  const layer = base.layers.find((l) => l.id === layerId);
  return withLayer(base, layerId, { noBridge: [...(layer?.noBridge ?? []), { atMm: [...atMm], radiusMm }] });
}

export function withAllowed(job: Job, layerId: string, index: number): Job {
  const rest = job.layers.find((l) => l.id === layerId)?.noBridge?.filter((_, i) => i !== index) ?? [];
  return withLayer(job, layerId, { noBridge: rest.length > 0 ? rest : undefined });
}

/** The studio's own materials; where it has none the usual ones, called as the language in use calls them. Read it while drawing. */
export function materialList(job: Pick<Job, 'materials'>): readonly JobMaterial[] {
  return job.materials.length > 0 ? job.materials : defaultMaterials.map((m) => ({ ...m, name: told(m.name), prints: [...m.prints] }));
}

/** Pulls that a material lasts, where the studio has not said. */
export function usualPrints(id: string): readonly [number, number] {
  return defaultMaterials.find((m) => m.id === id)?.prints ?? [2, 6];
}

/** Changes a figure of one material; with the first change the usual list becomes the studio's own, names and all. */
export function withMaterial(job: Job, id: string, change: Partial<JobMaterial>): Job {
  return { ...job, materials: materialList(job).map((m) => (m.id === id ? { ...m, ...change } : m)) };
}

/** The stencil's own sheet; null: the image and the margin. */
export function withSheet(job: Job, cutId: string, sheetMm: readonly [number, number] | null): Job {
  return {
    ...job,
    cuts: job.cuts.map((cut) => (cut.id === cutId ? { ...cut, sheetMm: sheetMm === null ? undefined : [sheetMm[0], sheetMm[1]] } : cut)),
  };
}

type Pace = NonNullable<Job['knife']>;

/** How fast this studio cuts; null: as is usual again. */
export function withPace(job: Job, change: Partial<Pace> | null): Job {
  if (change === null) return job.knife === undefined ? job : { ...job, knife: undefined };
  const now = knifeRates(job.knife);
  const same = (Object.keys(change) as (keyof typeof now)[]).every((key) => JSON.stringify(now[key]) === JSON.stringify(change[key]));
  return same ? job : { ...job, knife: { ...job.knife, ...change } };
}
