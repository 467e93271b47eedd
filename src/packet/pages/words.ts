import { materialsOf, type Plan } from '../../core/plan/index.ts';
import type { PlannedLayer } from './setting.ts';

/** `Rockpool at 60 %`; `open` while no ink is chosen. */
export function inkLine(plan: Plan, layer: PlannedLayer): string {
  const ink = plan.inks.find((i) => i.id === layer.inkId);
  if (!ink) return 'ink still open';
  return `${ink.name} at ${Math.round(layer.strength * 100)} %`;
}

export function inkName(plan: Plan, layer: PlannedLayer): string {
  return plan.inks.find((i) => i.id === layer.inkId)?.name ?? 'open';
}

export function labWords(lab: readonly [number, number, number]): string {
  return lab.map((v) => (Math.abs(v) < 0.5 ? '0' : v.toFixed(0).replace('-', '–'))).join('  ');
}

export function minutesInWords(minutes: number): string {
  if (minutes < 60) return `${Math.max(1, Math.round(minutes))} min`;
  const hours = Math.floor(minutes / 60),
    rest = Math.round((minutes - hours * 60) / 5) * 5;
  return rest === 0 ? `${hours} h` : rest === 60 ? `${hours + 1} h` : `${hours} h ${rest} min`;
}

/** What a layer's stencil is cut from; a job that names no materials is planned with the usual ones. */
export function materialOf(plan: Plan, layer: PlannedLayer): ReturnType<typeof materialsOf>[number] | undefined {
  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  return materialsOf(plan.job).find((m) => m.id === cut?.materialId);
}

export function plural(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

export const timesInWords = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

/** A name that is safe as a file name, on every disk. */
export function fileName(id: string): string {
  return (
    id
      .toLowerCase()
      .replace(/[^a-z0-9._-]+/g, '-')
      .replace(/^[-.]+|[-.]+$/g, '') || 'unnamed'
  );
}

export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
