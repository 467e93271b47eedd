import type { Job, JobPicture } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import { words } from '../../words/index.ts';
import { isStale, make, making, stop } from './state.ts';

interface Props {
  readonly bench: Bench;
  readonly job: Job;
  readonly picture: JobPicture;
}

/** The next sensible step: make the stencils; while they are being made, how far, and a stop that keeps the best so far. */
export function RunBar({ bench, job, picture }: Props) {
  const w = words().picture;
  const now = making.value;
  const odd = picture.cutPairs && picture.layers % 2 === 1;
  if (now && (now.state === 'working' || now.state === 'stopping')) {
    const said = now.state === 'stopping' ? w.stopping : w.stages[now.share > 0.78 ? 'cut' : (now.draft?.stage ?? 'start')];
    return (
      <div class="run-bar">
        <progress value={now.share} aria-label={w.working} />
        <span class="run-stage">{said}</span>
        <button type="button" class="button button-line" disabled={now.state === 'stopping'} onClick={stop}>{w.stop}</button>
      </div>
    );
  }
  const stale = now?.state === 'done' && isStale(job, now);
  return (
    <div class="run-bar">
      <button type="button" class={`button ${now?.state === 'done' && !stale ? 'button-line' : 'button-strong'}`} disabled={odd} onClick={() => void make(bench)}>{now?.state === 'done' ? w.makeAgain : w.make}</button>
      {odd && <span class="needs-line">{w.pairsOdd}</span>}
      {stale && <span class="needs-line">{w.stale}</span>}
    </div>
  );
}
