import type { Job } from '../../../../core/job/index.ts';
import { Pot } from '../../../ui/Pot.tsx';
import { sayPercent } from '../../../ui/fields/format.ts';
import { StencilPicture } from '../../../ui/StencilPicture.tsx';
import { told, words } from '../../../store/words.ts';
import { sayKnife } from '../say.ts';
import type { ShownSeparation } from '../worker/protocol.ts';

/** What will be cut, mixed and printed, first run at the bottom. */
export function Runs({ job, result }: { readonly job: Job; readonly result: ShownSeparation }) {
  const w = words().picture;
  const { widthMm, heightMm } = job.image;
  return (
    <section class="made-runs" aria-label={w.runs}>
      <h2>{w.runs}</h2>
      <ol>
        {[...result.runs].reverse().map((run) => (
          <li key={run.run} class="made-run">
            <div class="made-stencil" style={{ aspectRatio: `${widthMm} / ${heightMm}` }}>
              <StencilPicture prints={run.prints} widthMm={widthMm} heightMm={heightMm} label={w.stencilOf(run.run + 1)} />
            </div>
            <Pot srgb={run.srgb} label={w.potOf(run.parts.map((p) => p.name).join(', '))} />
            <div>
              <b>
                {w.run(run.run + 1)}: {told(run.says)}
              </b>{' '}
              <small>{run.side === 'window' ? w.window : w.piece}</small>
              <p>{run.parts.map((p) => w.part(sayPercent(p.share), p.name)).join(' + ')}</p>
              <small>{w.runKnife(sayKnife(run.metres, job.units), w.knifePieces(run.pieces), w.knifeBridges(run.bridges))}</small>
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
