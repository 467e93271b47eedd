import { signal } from '@preact/signals';
import type { Bench } from '../store/bench.ts';
import { words } from '../store/words.ts';
import { ProofCanvas } from '../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../ui/proof/ProofSheet.tsx';

/** From which width on there is room for the print, px: a desk's screen; and a large one. */
const [desk, large] = [1440, 1800];
const room = signal(0);
const measure = (): void => {
  room.value = innerWidth;
};

/** Stations that don't show the whole print themselves, and from which width on it stands beside them. */
const from: ReadonlyMap<string, number> = new Map([
  ['inks', large],
  ['press', desk],
  ['edition', desk],
  ['stencils', large],
]);

if (typeof addEventListener === 'function') {
  measure();
  addEventListener('resize', measure);
}

export const hasPrintBeside = (bench: Bench, station: string): boolean =>
  room.value >= (from.get(station) ?? Infinity) && bench.plan.value !== null && bench.paper.value !== null;

/** The print as it is foreseen, kept in sight while something else is worked on. */
export function PrintBeside({ bench }: { readonly bench: Bench }) {
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  if (!plan || !paper) return null;
  return (
    <aside class="print-beside" aria-label={words().laydown.proof(paper.name)}>
      <figure>
        <ProofSheet plan={plan} paper={paper}>
          <ProofCanvas bench={bench} plan={plan} paper={paper} label={words().laydown.proof(paper.name)} />
        </ProofSheet>
        <figcaption>{paper.name}</figcaption>
      </figure>
    </aside>
  );
}
