import { useEffect, useState } from 'preact/hooks';
import type { Bench } from '../store/bench.ts';
import { told, words } from '../store/words.ts';

/** Work that ends sooner is not worth a button. */
const longMs = 3000;

/** What of the Plan is being made: where nothing can be shown yet (`large`), and one line in the header while something older is in sight. */
export function Making({ bench, large = false }: { readonly bench: Bench; readonly large?: boolean }) {
  const w = words().shell;
  const making = bench.making.value;
  const working = bench.working.value;
  const [long, setLong] = useState(false);
  useEffect(() => {
    setLong(false);
    if (!working) return;
    const timer = setTimeout(() => setLong(true), longMs);
    return () => clearTimeout(timer);
  }, [working]);
  if (!working) return null;
  const stop = long && (
    <button type="button" class="button" onClick={() => bench.stop()}>
      {w.stop}
    </button>
  );
  const says = making?.what ? w.makingOf(told(making.what)) : w.working;
  return large ? (
    <div class="making">
      <p>{says}</p>
      <progress {...(making ? { value: making.share } : {})} aria-label={says} />
      {stop}
    </div>
  ) : (
    <span class="making-line">
      {says} {stop}
    </span>
  );
}
