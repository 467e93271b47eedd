import { materialsOf, type Plan } from '../../core/plan/index.ts';
import { asWritten, name as asName, say, share, type Saying } from '../../words/index.ts';
import type { PlannedLayer } from './ink/setting.ts';

/** `Rockpool at 60 %`; that it is open while no ink is chosen. */
export function inkLine(plan: Plan, layer: PlannedLayer): Saying {
  const ink = plan.inks.find((i) => i.id === layer.inkId);
  return ink ? say('packet.inkAt', { ink: asName(ink.name), strength: share(layer.strength, 0) }) : say('packet.inkOpen');
}

export function inkName(plan: Plan, layer: PlannedLayer): Saying {
  const ink = plan.inks.find((i) => i.id === layer.inkId);
  return ink ? asWritten(ink.name) : say('packet.open');
}

/** What a run goes through: its side of the cut, or a film. */
export const wayOf = (layer: Pick<PlannedLayer, 'side' | 'tone'>): Saying => (layer.tone ? say('packet.film') : sideOf(layer.side));

export const sideOf = (side: PlannedLayer['side']): Saying => say(side === 'window' ? 'packet.window' : 'packet.piece');

/** `window in Coated paper`; the side alone where nothing is known of the material. */
export function stencilOf(plan: Plan, layer: PlannedLayer): Saying {
  if (layer.tone) return say('halftone.byFilm');
  const material = materialOf(plan, layer);
  if (!material) return sideOf(layer.side);
  return say(layer.side === 'window' ? 'record.windowIn' : 'record.pieceOf', { material: material.name });
}

/** What a layer's stencil is cut from; a job that names no materials is planned with the usual ones. */
export function materialOf(plan: Plan, layer: PlannedLayer): ReturnType<typeof materialsOf>[number] | undefined {
  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  return materialsOf(plan.job).find((m) => m.id === cut?.materialId);
}

/** A name that is safe as a file name, on every disk. */
export function fileName(id: string): string {
  return (
    id
      .toLowerCase()
      .replace(/[^a-z0-9._-]+/g, '-')
      .replace(/^[-.]+|[-.]+$/g, '') || 'unnamed'
  );
}
