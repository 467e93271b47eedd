import type { Bench } from '../store/bench.ts';
import { told, words } from '../store/words.ts';

/** What of the Plan is being made: where nothing can be shown yet (`large`), and one line in the header while something older is in sight. */
export function Making({ bench, large = false }: { readonly bench: Bench; readonly large?: boolean }) {
  const w = words().shell;
  const making = bench.making.value;
  if (!bench.working.value) return null;
  const says = making?.what ? w.makingOf(told(making.what)) : w.working;
  return large ? (
    <div class="making">
      <p>{says}</p>
      <progress {...(making ? { value: making.share } : {})} aria-label={says} />
    </div>
  ) : (
    <span class="making-line">{says}</span>
  );
}
