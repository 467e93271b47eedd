import type { Lab } from '../../../core/colour/index.ts';
import type { Reading, Recipe } from '../../../core/ink/index.ts';
import type { Job, JobInk, JobPotLog, JobReading } from '../../../core/job/index.ts';
import { letDownParts } from '../../../core/plan/index.ts';
import type { Bench } from '../../store/bench.ts';
import { withLayer } from '../../store/edits.ts';
import { say } from '../../../words/one-language.ts';
import { step, told, words } from '../../store/words.ts';
import type { InkField } from '../../../words/en/bench/inks.ts';

/** Edits of the ink station, each under its name. */
export function freshId(name: string, taken: readonly { readonly id: string }[], usual = 'ink'): string {
  const stem =
    name
      .toLowerCase()
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 58) || usual;
  let id = stem;
  for (let n = 2; taken.some((t) => t.id === id); n++) id = `${stem}-${n}`;
  return id;
}

export function withInk(job: Job, ink: JobInk): Job {
  return { ...job, inks: job.inks.some((k) => k.id === ink.id) ? job.inks.map((k) => (k.id === ink.id ? ink : k)) : [...job.inks, ink] };
}

export function setInk(bench: Bench, ink: JobInk, field: InkField = 'figures'): void {
  bench.edit(step('inks', field, ink.name), (job) => withInk(job, ink));
}

/** Who needs an ink: layers printed in it, let down with it or with it in their pot, and mixes made of it. */
export function usersOf(job: Job, id: string): string[] {
  const inPot = (log: JobPotLog): boolean =>
    [log.contents, log.adding ?? [], ...log.rounds.map((r) => r.added)].some((parts) => parts.some((p) => p.ink === id));
  return [
    ...new Set([
      ...job.layers
        .filter((l) => l.ink === id || l.base === id || job.potLogs.some((log) => log.layer === l.id && inPot(log)))
        .map((l) => l.name),
      ...job.inks.filter((k) => k.from === 'mix' && k.parts.some((p) => p.ink === id)).map((k) => k.name),
    ]),
  ];
}

export function takeInkAway(bench: Bench, ink: JobInk): void {
  bench.edit(step('inks', 'away', ink.name), (job) =>
    usersOf(job, ink.id).length > 0 ? job : { ...job, inks: job.inks.filter((k) => k.id !== ink.id) },
  );
}

/** Prints a layer in a recipe: one pot as it is, let down; several as a mix that holds its base already. */
export function takeRecipe(
  bench: Bench,
  layerId: string,
  recipe: Pick<Recipe, 'parts' | 'restShare'>,
  first: (job: Job) => Job = (job) => job,
  field: InkField = 'recipe',
): void {
  const layer = bench.job.peek()?.layers.find((l) => l.id === layerId);
  if (!layer || recipe.parts.length === 0) return;
  bench.edit(step('inks', field, layer.name), (before) => withRecipe(first(before), layerId, recipe, words().inks.recipeName(layer.name)));
}

export function withRecipe(job: Job, layerId: string, recipe: Pick<Recipe, 'parts' | 'restShare'>, name: string): Job {
  if (recipe.parts.length === 1) return withLayer(job, layerId, { ink: recipe.parts[0].id, strength: Math.min(1, recipe.parts[0].share) });
  const clear = job.inks.find((k) => k.role === 'transparent-base');
  const base: JobInk = clear ?? {
    id: freshId('clear-base', job.inks),
    name: told(say('ink.transparentBase')),
    from: 'clear',
    role: 'transparent-base',
    densityGPerMl: 1.05,
  };
  const mine = job.inks.find((k) => k.from === 'mix' && k.name === name && job.layers.every((l) => l.id === layerId || l.ink !== k.id));
  const parts = [
    ...recipe.parts.map((p) => ({ ink: p.id, parts: p.share * 100 })),
    ...(recipe.restShare > 1e-6 ? [{ ink: base.id, parts: recipe.restShare * 100 }] : []),
  ];
  const mix: JobInk = { id: mine?.id ?? freshId(name, job.inks, 'mix'), name, from: 'mix', role: 'ink', densityGPerMl: 1.1, parts };
  const inks = clear ? job : withInk(job, base);
  return withLayer(withInk(inks, mix), layerId, { ink: mix.id, strength: 1 });
}

/** What is left of a layer's pot, as a mix of its own with so many grams in its jar; null where the layer is open or let down with a base the job does not list. */
export function jarOfPot(job: Job, layerId: string, name: string, leftGrams: number): JobInk | null {
  const layer = job.layers.find((l) => l.id === layerId);
  const parts = layer ? letDownParts(job, layer).filter((p) => p.inkId !== '') : [];
  if (parts.length === 0) return null;
  return {
    id: freshId(name, job.inks, 'jar'),
    name,
    from: 'mix',
    role: 'ink',
    densityGPerMl: Math.round(100 * parts.reduce((sum, p) => sum + p.share * p.densityGPerMl, 0)) / 100,
    leftGrams,
    parts: parts.map((p) => ({ ink: p.inkId, parts: Math.round(p.share * 10000) / 100 })),
  };
}

/** Decided layers take the places they hold together, in a new order; the others stay where they are. */
export function withOrder(job: Job, order: readonly string[]): Job {
  const queue = order.map((id) => job.layers.find((l) => l.id === id)).filter((l) => l !== undefined);
  return { ...job, layers: job.layers.map((layer) => (order.includes(layer.id) ? (queue.shift() ?? layer) : layer)) };
}

export function takeOrder(bench: Bench, order: readonly string[]): void {
  bench.edit(step('inks', 'order', ''), (job) => withOrder(job, order));
}

export function pinWanted(bench: Bench, layers: readonly string[], lab: Lab, paper: string): void {
  bench.edit(step('inks', 'pin', ''), (job) => ({
    ...job,
    wanted: [
      ...job.wanted.filter((w) => w.paper !== paper || w.layers.toSorted().join() !== [...layers].sort().join()),
      { layers: [...layers], lab: [...lab], paper },
    ],
  }));
}

export function unpin(bench: Bench, place: number): void {
  bench.edit(step('inks', 'unpin', ''), (job) => ({ ...job, wanted: job.wanted.filter((_, i) => i !== place) }));
}

export function addProofReading(bench: Bench, paper: string, layers: readonly string[], reading: Reading, date: string): void {
  bench.edit(step('inks', 'reading', ''), (job) => ({
    ...job,
    proofReadings: [...job.proofReadings, { paper, layers: [...layers], reading: asJob(reading), date }],
  }));
}

export function removeProofReading(bench: Bench, place: number): void {
  bench.edit(step('inks', 'readingAway', ''), (job) => ({ ...job, proofReadings: job.proofReadings.filter((_, i) => i !== place) }));
}

export function setPotLog(
  bench: Bench,
  layer: { readonly id: string; readonly name: string },
  log: JobPotLog | null,
  field: InkField,
): void {
  bench.edit(step('inks', field, layer.name), (job) => {
    const others = job.potLogs.filter((l) => l.layer !== layer.id);
    return { ...job, potLogs: log ? [...others, log] : others };
  });
}

/** A reading as a job keeps it: the same, free to be written. */
export function asJob(reading: Reading): JobReading {
  return structuredClone(reading) as JobReading;
}
