import { signal } from '@preact/signals';
import type { Mm } from '../../ui/screen/drag.ts';
import { createZoom } from '../../ui/proof/ZoomView.tsx';

/** What is in hand at this station; not part of the job. */
export const chosenLayer = signal<string | null>(null);
/** Middle of the bridge in hand: bridges get new numbers when they move, their place tells which it was. */
export const bridgeAt = signal<Mm | null>(null);
/** How far the bridge in hand has been carried. */
export const carriedBy = signal<Mm | null>(null);
/** A place being pointed out for a bridge to be added or forbidden. */
export const placing = signal<{ readonly for: 'add' | 'forbid'; readonly at: Mm } | null>(null);
/** Seen from the side that lies against the paper: mirrored. */
export const fromBelow = signal(false);
/** A place to bring into sight. */
export const lookAt = signal<Mm | null>(null);
export const zoom = createZoom();
export const shownPxPerMm = signal(1);
