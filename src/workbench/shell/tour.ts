import { signal } from '@preact/signals';
import type { Bench } from '../store/bench.ts';
import type { Words } from '../store/words.ts';

/** What the tour looks at to see that a step was done. */
export interface TourLook {
  readonly bench: Bench;
  readonly station: string;
  readonly packetMade: boolean;
}
export interface TourStep {
  readonly id: keyof Words['guide']['steps'];
  /** Where it is done; null: anywhere. */
  readonly station: string | null;
  readonly done?: (look: TourLook) => boolean;
  /** Done as soon as this is used. */
  readonly touch?: string;
}

const lastStep = ({ bench }: TourLook): string | undefined => bench.canUndo.value?.key;

/** From an empty bench to the printed packet, in the order of the work. */
export const tourSteps: readonly TourStep[] = [
  { id: 'open', station: null, done: ({ bench }) => bench.job.value?.layers.some((l) => l.id === 'foam') ?? false },
  { id: 'point', station: 'laydown', touch: '.laydown-side .proof-canvas' },
  { id: 'strength', station: 'laydown', done: (look) => lastStep(look) === 'strength' },
  { id: 'undo', station: null, done: ({ bench }) => bench.canRedo.value !== null },
  { id: 'order', station: 'laydown', done: (look) => lastStep(look) === 'move' },
  { id: 'ink', station: 'laydown', done: ({ bench }) => bench.job.value?.layers.every((l) => l.off || l.ink !== null) ?? false },
  { id: 'register', station: 'laydown', touch: '.laydown .sheet-kinds input' },
  { id: 'overlaps', station: 'overlaps', touch: '.swatch-grid .overlap' },
  { id: 'stencils', station: 'stencils', touch: '.stencils button, .stencils input' },
  { id: 'press', station: 'press', touch: '[data-part=gap]' },
  { id: 'edition', station: 'edition', done: ({ station }) => station === 'edition' },
  { id: 'print', station: null, done: ({ packetMade }) => packetMade },
  { id: 'pdf', station: null, touch: '.packet-pdf' },
];
export const tourMinutes = 10;

interface TourState {
  readonly on: boolean;
  /** Step in hand; the number of steps when all are done. */
  readonly at: number;
  /** The step before was done, not skipped. */
  readonly justDone: boolean;
}

const place = 'laydown-tour';

function recall(): TourState {
  try {
    const kept = JSON.parse(localStorage.getItem(place) ?? '{}') as Partial<TourState>;
    const at = Number.isInteger(kept.at) ? Math.min(tourSteps.length, Math.max(0, kept.at!)) : 0;
    return { on: kept.on === true, at, justDone: false };
  } catch {
    return { on: false, at: 0, justDone: false };
  }
}

export const tour = signal<TourState>(recall());

function go(next: TourState): void {
  tour.value = next;
  try {
    localStorage.setItem(place, JSON.stringify({ on: next.on, at: next.at }));
  } catch {
    // It is remembered until the page is closed.
  }
}

export const startTour = (): void => go({ on: true, at: tour.peek().at >= tourSteps.length ? 0 : tour.peek().at, justDone: false });
export const leaveTour = (): void => go({ ...tour.peek(), on: false });
export const tourAgain = (): void => go({ on: true, at: 0, justDone: false });
/** @param done the step was done; else it is only passed by */
export const tourNext = (done: boolean): void => go({ on: true, at: Math.min(tourSteps.length, tour.peek().at + 1), justDone: done });
export const tourBack = (): void => go({ on: true, at: Math.max(0, tour.peek().at - 1), justDone: false });
