import { list as listOf, name as asName, say, type Saying } from '../../words/say.ts';
import { problem, type Problem } from '../problem.ts';
import { hashOf } from './file/fingerprint.ts';
import type { Job, JobLayer } from './schema/schema.ts';

/** What can be done with a layer so that it stays as it is. */
export const doneKinds = ['cut', 'mixed', 'pulled'] as const;
export type DoneKind = (typeof doneKinds)[number];
type DoneOf<K extends DoneKind> = NonNullable<Job['done']>[K][number];
type Pin = NonNullable<JobLayer['pinnedBridges']>[number];

/** The part of a job that a finished stencil, a mixed pot or a pulled run was made from. Null for a layer that is gone. */
export function stateOf(job: Job, layerId: string, kind: DoneKind): string | null {
  const layer = job.layers.find((l) => l.id === layerId);
  if (!layer) return null;
  if (kind === 'cut') return hashOf(cutState(job, layer));
  if (kind === 'mixed') return hashOf(potState(job, layer));
  const before = job.layers.slice(0, job.layers.indexOf(layer)).filter((l) => !l.off);
  return hashOf([cutState(job, layer), potState(job, layer), layer.off, before.map((l) => l.id), ...(layer.mesh ? [layer.mesh] : [])]);
}

function cutState(job: Job, layer: JobLayer): unknown {
  const cut = job.cuts.find((c) => c.id === layer.cut);
  const forms = new Set(cut?.parts.map((part) => part.form));
  const material = job.materials.find((m) => m.id === cut?.material) ?? null;
  return {
    side: layer.side,
    spread: layer.spreadMm,
    islands: layer.islands ?? null,
    parts: cut?.parts ?? null,
    material: material && [material.thicknessMm, material.leastBridgeMm, material.leastOpeningMm],
    forms: job.forms
      .filter((f) => forms.has(f.id))
      .map(({ id, drawing, outline, widthMm, heightMm }) => ({ id, drawing, outline, widthMm, heightMm })),
    image: [job.image.widthMm, job.image.heightMm],
    margin: job.stencilMarginMm,
    ...(cut?.sheetMm ? { sheet: cut.sheetMm } : {}),
  };
}

function potState(job: Job, layer: JobLayer): unknown {
  const used = new Set<string>();
  const gather = (id: string | null | undefined): void => {
    if (!id || used.has(id)) return;
    used.add(id);
    const ink = job.inks.find((k) => k.id === id);
    if (ink?.from === 'mix') for (const part of ink.parts) gather(part.ink);
  };
  gather(layer.ink);
  gather(layer.base);
  for (const base of layer.bases ?? []) gather(base.ink);
  const mixes = job.inks.flatMap((k) => (used.has(k.id) && k.from === 'mix' ? [[k.id, k.parts]] : []));
  return { ink: layer.ink, strength: layer.strength, base: layer.base ?? null, mixes, ...(layer.bases ? { bases: layer.bases } : {}) };
}

/** What is marked in a job. */
export function isDone(job: Job, layerId: string, kind: DoneKind): boolean {
  return (job.done?.[kind] as readonly { layer: string }[] | undefined)?.some((one) => one.layer === layerId) ?? false;
}

/** Marks a stencil as cut, a pot as mixed, a run as pulled; or takes the mark away. A stencil's bridges are those it has now. */
export function markDone(
  job: Job,
  layerId: string,
  kind: DoneKind,
  { done = true, bridges = [], date }: { readonly done?: boolean; readonly bridges?: readonly Pin[]; readonly date?: string } = {},
): Job {
  const all = job.done ?? { cut: [], mixed: [], pulled: [] };
  const others = (all[kind] as readonly DoneOf<DoneKind>[]).filter((one) => one.layer !== layerId);
  const state = stateOf(job, layerId, kind);
  const mark = { layer: layerId, state, ...(date === undefined ? {} : { date }), ...(kind === 'cut' ? { bridges: [...bridges] } : {}) };
  return { ...job, done: { ...all, [kind]: done && state !== null ? [...others, mark] : others } };
}

/** Bridges of finished stencils stay where the knife left them: a layer is planned with those and no others. */
export function withCutBridges<L extends Pick<JobLayer, 'id' | 'pinnedBridges'>>(job: Pick<Job, 'done'>, layer: L): L {
  const cut = job.done?.cut.find((one) => one.layer === layer.id);
  return cut && cut.bridges.length > 0 ? { ...layer, pinnedBridges: cut.bridges } : layer;
}

interface Touched {
  readonly layer: string;
  readonly kind: DoneKind;
}

/** What of the finished work a change would leave behind: to be told before it is made. */
export function touchesDone(before: Job, after: Job): Touched[] {
  return doneKinds.flatMap((kind) =>
    (before.done?.[kind] ?? [])
      .filter(({ layer }) => isDone(after, layer, kind) && stateOf(before, layer, kind) !== stateOf(after, layer, kind))
      .map(({ layer }) => ({ layer, kind })),
  );
}

const keys = { cut: 'job.stencilCut', mixed: 'job.potMixed', pulled: 'job.runPulled' } as const;

/** `The stencil of Kelp is cut.` for each. */
export function sayTouched(job: Job, touched: readonly Touched[]): Saying {
  const items = touched.map(({ layer, kind }) => say(keys[kind], { layer: asName(job.layers.find((l) => l.id === layer)?.name ?? layer) }));
  return say('job.wouldTouch', { what: listOf(items, 'sentences') });
}

/** Finished work that the job no longer agrees with. */
export function doneProblems(job: Job): Problem[] {
  return doneKinds.flatMap((kind) =>
    (job.done?.[kind] ?? []).flatMap(({ layer, state }, i) => {
      const at = job.layers.findIndex((l) => l.id === layer);
      if (at < 0)
        return [
          problem(
            'note',
            'done-without-layer',
            `done.${kind}[${i}]`,
            say('job.doneWithoutLayer', { layer: asName(layer) }),
            say('job.takeMarkAway'),
          ),
        ];
      if (stateOf(job, layer, kind) === state) return [];
      const message = say(`job.${kind}Touched`, { layer: asName(job.layers[at].name) });
      return [problem('warning', `${kind}-is-${kind}`, `layers[${at}]`, message, say(`job.${kind}Instead`))];
    }),
  );
}
