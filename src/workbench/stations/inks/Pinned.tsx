import { sayShare } from '../../ui/fields/units.ts';
import { Films } from '../../ui/proof/Films.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { told, words } from '../../store/words.ts';
import { unpin } from './edits.ts';
import { Pair } from './LayerChoice.tsx';
import { useAnswer, type InkPartProps } from './state.ts';

/** Colours pinned to overlaps: how near each comes, and how likely. */
export function Pinned({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const { answer } = useAnswer(bench, 'wanted', { paperId: paper.id }, [job, paper.id]);
  return (
    <section class="pinned" aria-label={w.pinned}>
      <h3>
        {w.pinned}
        <Why of={w.pinned}>{w.chanceWhy}</Why>
      </h3>
      {job.wanted.length === 0 && <p>{w.noPins}</p>}
      <ul>
        {answer
          ?.filter((one) => one.at < job.wanted.length)
          .map((one) => {
            const { layers, note } = job.wanted[one.at];
            const name = layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ');
            return (
              <li key={one.at} class="pin">
                <Pair left={one.wantedSrgb} right={one.now?.srgb ?? 'transparent'} leftSays={w.wantedSwatch} rightSays={w.presentShort} />
                <div>
                  <p>
                    <Films layers={plan.layers} here={layers} />
                    <b>{name}</b>
                  </p>
                  <p>
                    {one.now
                      ? w.pinNow(sayDelta(one.now.deltaE), sayDelta(one.now.band), told(one.now.words), sayShare(one.now.chance, 0))
                      : w.pinOpen}
                  </p>
                  {note && (
                    <p>
                      <small>{note}</small>
                    </p>
                  )}
                </div>
                <button type="button" class="button button-box" aria-label={w.unpinOf(name)} onClick={() => unpin(bench, one.at)}>
                  {w.unpin}
                </button>
              </li>
            );
          })}
      </ul>
    </section>
  );
}
