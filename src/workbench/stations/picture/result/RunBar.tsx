import { potsOf } from '../../../../core/asks/index.ts';
import type { Job, JobPicture } from '../../../../core/job/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { words } from '../../../store/words.ts';
import { takeAsJob } from '../edits.ts';
import { isStale, isTaken, make, making, openPart, stop, type Making } from '../state.ts';

interface Props {
  readonly bench: Bench;
  readonly job: Job;
  readonly picture: JobPicture;
}

/** The next sensible step: make the stencils; while they are being made, how far, and a stop that keeps the best so far; then make them the job. */
export function RunBar({ bench, job, picture }: Props) {
  const w = words().picture;
  const now = making.value;
  if (now && now.state !== 'done') return <UnderWay now={now} />;
  const hindered = potsOf(job).length === 0 ? w.noPots : picture.cutPairs && picture.layers % 2 === 1 ? w.pairsOdd : null;
  const stale = now !== null && isStale(bench, now);
  const again = now === null || stale || now.result?.stoppedEarly;
  return (
    <div class="run-bar">
      {again && (
        <button
          type="button"
          class={`button ${now === null || stale ? 'button-strong' : 'button-line'}`}
          disabled={hindered !== null}
          onClick={() => void make(bench)}
        >
          {now ? w.makeAgain : w.make}
        </button>
      )}
      {hindered !== null && <span class="needs-line">{hindered}</span>}
      {potsOf(job).length === 0 && (
        <a class="button button-line" href="#inks">
          {w.toInks}
        </a>
      )}
      {stale && <span class="needs-line">{w.stale}</span>}
      {now &&
        (openPart.value === 'result' ? (
          <TakeIt bench={bench} job={job} picture={picture} now={now} weak={stale} />
        ) : (
          <button
            type="button"
            class="button button-line"
            onClick={() => {
              openPart.value = 'result';
            }}
          >
            {w.seePrint}
          </button>
        ))}
    </div>
  );
}

function UnderWay({ now }: { readonly now: Making }) {
  const w = words().picture;
  return (
    <div class="run-bar run-bar-wide">
      <progress value={now.share} aria-label={w.working} />
      <span class="run-stage">
        {now.state === 'stopping' ? w.stopping : w.stages[now.share > 0.78 ? 'cut' : (now.draft?.stage ?? 'start')]}
      </span>
      <button type="button" class="button button-line" disabled={now.state === 'stopping'} onClick={stop}>
        {w.stop}
      </button>
    </div>
  );
}

function TakeIt({ bench, job, picture, now, weak }: Props & { readonly now: Making; readonly weak: boolean }) {
  const w = words().picture;
  const runs = now.result?.runs.length ?? 0;
  if (runs === 0) return <span class="needs-line">{w.nothingPrints}</span>;
  if (isTaken(job, now))
    return (
      <>
        <b>{w.taken(runs)}</b>
        <a class="button button-strong" href="#laydown">
          {w.toLaydown}
        </a>
        <a class="button button-line" href="#stencils">
          {w.toStencils}
        </a>
      </>
    );
  const after = picture.over && job.layers.some((l) => !l.off);
  const take = async (): Promise<void> => {
    if (await takeAsJob(bench, after)) location.hash = 'laydown';
  };
  return (
    <>
      <button type="button" class={`button ${weak ? 'button-line' : 'button-strong'}`} onClick={() => void take()}>
        {after ? w.takeAfter : w.takeInstead}
      </button>
      <small class="take-note">{after ? w.takeAfterNote : w.takeInsteadNote}</small>
    </>
  );
}
