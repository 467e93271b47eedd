import { stations } from '../stations/index.ts';
import { countOf } from '../stations/press-page/count.ts';
import { allPulled } from '../stations/press-page/queue.ts';
import type { Station } from '../stations/station.ts';
import type { Bench } from '../store/bench.ts';
import { words } from '../words/index.ts';

export type NextStep =
  | { readonly kind: 'mend'; readonly count: number }
  | { readonly kind: 'station'; readonly station: Station; readonly says: string }
  | { readonly kind: 'print' };

/** The next sensible step of a job: what is missing, in the order of the work; then the packet; then the press; then signing. */
export function nextStep(bench: Bench, packetMade: boolean): NextStep {
  const missing = stations.map((station) => ({ station, needs: station.state(bench).needs })).find(({ needs }) => needs !== null);
  if (missing) return { kind: 'station', station: missing.station, says: missing.needs! };
  const wrong = bench.plan.value?.problems.filter((p) => p.severity === 'error').length ?? 0;
  if (wrong > 0) return { kind: 'mend', count: wrong };
  const edition = stations.find((s) => s.id === 'edition');
  if (edition && bench.plan.value && allPulled(bench.plan.value, countOf(bench).state.value)) return { kind: 'station', station: edition, says: edition.state(bench).knows };
  const press = stations.find((s) => s.id === 'pulling');
  return packetMade && press ? { kind: 'station', station: press, says: words().guide.printed } : { kind: 'print' };
}
