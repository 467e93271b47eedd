import type { Bench } from '../store/bench.ts';

/** The one live line of the page: what just happened, for eyes and for screen readers. */
export function Announcer({ bench }: { readonly bench: Bench }) {
  return (
    <p class="announcer" role="status" aria-live="polite">
      {bench.announced.value}
    </p>
  );
}
