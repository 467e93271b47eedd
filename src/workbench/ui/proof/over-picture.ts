import type { Bench } from '../../store/bench.ts';
import type { Ask } from '../../engine/protocol.ts';
import { shrink } from './proof-pixels.ts';

/**
 * Asks the worker for a proof over a printed sheet and draws it when it comes. `fine`: twice the pixels, averaged.
 * Returns a function that lets a late answer go unheard.
 */
export function askOverPicture(bench: Bench, ask: Ask<'proof'>, fine: boolean, draw: (words: Uint32Array) => void): () => void {
  const per = fine ? 2 : 1;
  let wanted = true;
  bench.ask('proof', { ...ask, width: ask.width * per, height: ask.height * per }).then(
    (words) => {
      if (wanted) draw(shrink(words, ask.width, ask.height, per));
    },
    () => undefined,
  );
  return () => {
    wanted = false;
  };
}
