import { signal } from '@preact/signals';
import { type Job, settleProblems } from '../../core/job/index.ts';
import type { BenchStation, Lead, Problem } from '../../core/problem.ts';

/** The job on the bench: problems say where they are in it. */
export const atHand = signal<Job | null>(null);

/** Problems as they are shown: each says where it is, and leads to where it is mended. */
export function placed(problems: readonly Problem[]): readonly Problem[] {
  return settleProblems(problems, atHand.value ?? {});
}

const lookers = new Map<BenchStation, (lead: Lead) => void>();

/** How a station brings into sight what a problem leads to. Said once, when the stations are gathered. */
export function leadsTo(station: BenchStation, look: (lead: Lead) => void): void {
  lookers.set(station, look);
}

/** The lead that was followed last: the shell puts away what lies over the station, and shows the thing. */
export const followed = signal<Lead | null>(null);

/** Goes to where something is mended: the station, its part laid open, the thing in hand. */
export function follow(lead: Lead): void {
  lookers.get(lead.station)?.(lead);
  location.hash = lead.station;
  followed.value = { ...lead };
}
