import { places, stations } from '../stations/index.ts';
import { countOf } from '../stations/press/pulling/count.ts';
import { allPulled } from '../stations/press/pulling/queue.ts';
import { making } from '../stations/picture/state.ts';
import type { Station } from '../stations/station.ts';
import type { Bench } from '../store/bench.ts';
import type { Lead } from '../../core/problem.ts';
import { words } from '../store/words.ts';

export type NextStep =
  | { readonly kind: 'mend'; readonly count: number }
  | { readonly kind: 'station'; readonly station: Station; readonly says: string }
  /** Pots are tried in every open run, and only have to be kept. */
  | { readonly kind: 'keep'; readonly count: number }
  | { readonly kind: 'print' };

/** The next sensible step of a job: what is missing, in the order of the work; then the packet; then the press; then signing. */
export function nextStep(bench: Bench, packetMade: boolean): NextStep {
  const fromPicture = stencilsFromPicture(bench);
  if (fromPicture) return fromPicture;
  const open = bench.job.value?.layers.filter((layer) => !layer.off && layer.ink === null) ?? [];
  const allTried = open.length > 0 && open.every((layer) => bench.trials.value.has(layer.id));
  const missing = stations.map((station) => ({ station, needs: station.state(bench).needs })).find(({ needs }) => needs !== null);
  if (missing?.station.id === 'laydown' && allTried) return { kind: 'keep', count: open.length };
  if (missing) return { kind: 'station', station: missing.station, says: missing.needs! };
  const wrong = bench.plan.value?.problems.filter((p) => p.severity === 'error').length ?? 0;
  if (wrong > 0) return { kind: 'mend', count: wrong };
  const edition = stations.find((s) => s.id === 'edition');
  if (edition && bench.plan.value && allPulled(bench.plan.value, countOf(bench).state.value))
    return { kind: 'station', station: edition, says: edition.state(bench).knows };
  const press = places.find((s) => s.id === 'pulling');
  return packetMade && press ? { kind: 'station', station: press, says: words().guide.printed } : { kind: 'print' };
}

/** A picture on an empty bench: its stencils are made of it, so no drawing is missing, only the inks to make them for. */
function stencilsFromPicture(bench: Bench): NextStep | null {
  const job = bench.job.value;
  if (!job?.picture || job.cuts.length > 0) return null;
  const picture = stations.find((s) => s.id === 'picture'),
    inks = stations.find((s) => s.id === 'inks');
  const needs = picture?.state(bench).needs ?? null;
  if (needs !== null && inks) return { kind: 'station', station: inks, says: inks.state(bench).needs ?? needs };
  return picture
    ? { kind: 'station', station: picture, says: making.value?.result ? words().picture.takeInstead : words().picture.make }
    : null;
}

/** Where the hand goes at a station that lacks something, the likeliest first. */
const likely = ['.pot-row input', '.part .needs', '.needs-line a', '.button-strong:not(:disabled)', 'button:not(:disabled), select'];
const shownMs = 2500;

/** At the station in use: brings what the next step is done with into sight, framed for a moment, and puts the keys there. */
export function showPlace(): void {
  for (const selector of likely) {
    const place = document.querySelector(`main ${selector}`)?.closest<HTMLElement>('button, input, select, a');
    if (!place) continue;
    place.focus({ preventScroll: true });
    bringIntoSight(place.closest<HTMLElement>('label') ?? place);
    return;
  }
}

/** At the station that a problem leads to: the thing it is about comes into sight, where there is one to see, and the keys go on from here. */
export function showThing({ id }: Lead): void {
  document.getElementById('station')?.focus({ preventScroll: true });
  if (id === undefined) return;
  const of = CSS.escape(id);
  const thing = document.querySelector<HTMLElement>(`main :is([data-layer="${of}"], [data-ink="${of}"], [data-paper="${of}"])`);
  if (thing) bringIntoSight(thing);
}

function bringIntoSight(seen: HTMLElement): void {
  seen.scrollIntoView({ block: 'center' });
  seen.dataset.here = '';
  setTimeout(() => {
    delete seen.dataset.here;
  }, shownMs);
}
