import { computed, signal, type ReadonlySignal } from '@preact/signals';
import type { JobPart } from '../../../core/job/index.ts';
import type { Mm } from '../../ui/screen/drag.ts';
import { createZoom } from '../../ui/proof/ZoomView.tsx';
import type { Bench } from '../../store/bench.ts';

/** What is in hand at this station: which cut, which part of it, and where things are while they are carried. Not part of the job. */
export interface InHand {
  readonly cutId: string | null;
  readonly part: number | null;
  readonly formId: string | null;
}

export const inHand = signal<InHand>({ cutId: null, part: null, formId: null });
/** A part while it is carried, turned or sized: shown, not yet in the job. */
export const draft = signal<{ readonly part: number; readonly placed: JobPart } | null>(null);
/** Lines that the part in hand has met. */
export const met = signal<{ readonly x: number | null; readonly y: number | null }>({ x: null, y: null });
export const measuring = signal<readonly [Mm, Mm] | null>(null);
/** Forms, turns and the measure catch on lines; Alt lets them go for once. */
export const catching = signal(true);
export const printBelow = signal(true);
export const zoom = createZoom();
export const shownPxPerMm = signal(1);

/** The cut in hand: the one chosen while it exists, else the first. */
export function cutInHand(bench: Bench): ReadonlySignal<string | null> {
  return computed(() => {
    const cuts = bench.job.value?.cuts ?? [];
    return (cuts.find((c) => c.id === inHand.value.cutId) ?? cuts[0])?.id ?? null;
  });
}

export function takeCut(cutId: string, part: number | null = null): void {
  inHand.value = { ...inHand.value, cutId, part };
}

export function takePart(part: number | null): void {
  inHand.value = { ...inHand.value, part };
}

export function takeForm(formId: string | null): void {
  inHand.value = { ...inHand.value, formId };
}
