import type { JobPotLog } from '../../../../core/job/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { sayDelta } from '../../../ui/fields/format.ts';
import { told, words } from '../../../store/words.ts';
import { Pair } from '../LayerChoice.tsx';
import { at, useAnswer, type InkPartProps } from '../state.ts';

interface Props extends InkPartProps {
  readonly layer: InkPartProps['plan']['layers'][number];
  readonly log: JobPotLog;
  readonly within: number;
  readonly onAdded: (parts: JobPotLog['contents']) => void;
}

/** What to add to a pot, and when to start again. */
export function PotAdvice({ bench, job, paper, layer, log, within, onAdded }: Props) {
  const w = words().inks;
  const asIds = (parts: JobPotLog['contents']): { id: string; grams: number }[] => parts.map((p) => ({ id: p.ink, grams: p.grams }));
  const { answer, problems } = useAnswer(
    bench,
    'pot',
    {
      layer: layer.id,
      paperId: paper.id,
      contents: asIds(log.contents),
      within,
      ...(layer.mix ? { needGrams: layer.mix.totalGrams } : {}),
      rounds: log.rounds.map((r) => ({ added: asIds(r.added), reading: r.reading })),
    },
    [job, paper.id, layer.id, within],
  );
  if (problems.length > 0) return <ProblemList problems={problems} />;
  if (!answer) return null;
  const grams = (g: number): string => sayNumber(g, g < 10 ? 1 : 0, true);
  return (
    <div class="pot-advice">
      <div class="row">
        <Pair left={answer.wantedSrgb} right={answer.nowSrgb} leftSays={w.shouldBe} rightSays={w.itIs} />
        {answer.additions.length > 0 && (
          <Pair left={answer.wantedSrgb} right={answer.afterSrgb} leftSays={w.shouldBe} rightSays={w.itBecomes} />
        )}
      </div>
      <p>
        {w.potNow(words().overlaps.apartWords(answer.now.deltaE), sayDelta(answer.now.deltaE), grams(answer.now.grams))}{' '}
        {w.worksSays(Math.round((answer.works - 1) * 100))}
      </p>
      {answer.additions.length === 0 && answer.reaches && <p class="big-say">{w.nearEnough}</p>}
      {answer.startAgain && <p class="big-say">{told(answer.startAgain)}</p>}
      {answer.startAgain && (
        <button
          type="button"
          class="button button-strong"
          onClick={() => {
            at.part.value = 'mix';
          }}
        >
          {w.freshPot}
        </button>
      )}
      {answer.startAgain && answer.additions.length > 0 && (
        <p>
          <b>{w.stillAdd}</b>
        </p>
      )}
      {answer.additions.map((a) => (
        <p key={a.id} class={answer.startAgain ? undefined : 'big-say'}>
          {w.add(sayNumber(a.grams, 1, true), a.name)}
        </p>
      ))}
      {answer.additions.length > 0 && (
        <p>{w.after(sayDelta(answer.after.deltaE), grams(answer.after.grams), sayNumber(answer.grows, 2, true))}</p>
      )}
      {answer.problems.length > 0 && <ProblemList problems={answer.problems} />}
      {answer.additions.length > 0 && (
        <button
          type="button"
          class={answer.startAgain ? 'button button-box' : 'button button-strong'}
          onClick={() => onAdded(answer.additions.map((a) => ({ ink: a.id, grams: Math.max(0.1, Math.round(a.grams * 10) / 10) })))}
        >
          {w.addedThis}
        </button>
      )}
    </div>
  );
}
