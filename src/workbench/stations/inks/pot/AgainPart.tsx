import { useSignal } from '@preact/signals';
import type { Reading } from '../../../../core/ink/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { sayDelta } from '../../../ui/fields/format.ts';
import { told, words } from '../../../store/words.ts';
import { takeRecipe, withInk } from '../edits.ts';
import { chosenLayer, LayerChoice, Pair } from '../LayerChoice.tsx';
import { OneReading } from '../read/OneReading.tsx';
import { useAnswer, type InkPartProps } from '../state.ts';

/** The same colour years later, from new lots of concentrate. */
export function AgainPart({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const lots = useSignal<ReadonlyMap<string, Reading>>(new Map());
  const decided = plan.layers.filter((l) => l.inkId !== null).map((l) => l.id);
  const id = chosenLayer({ plan, only: decided });
  const layer = plan.layers.find((l) => l.id === id);
  const { answer: parts } = useAnswer(bench, 'partsOf', id === null ? null : { layer: id }, [id, job]);
  const mine = (parts ?? []).filter((p) => job.inks.find((k) => k.id === p.inkId)?.role === 'ink');
  const read = mine.flatMap((p) => {
    const over = lots.value.get(p.inkId);
    return over ? [{ id: p.inkId, over }] : [];
  });
  const { answer, problems } = useAnswer(
    bench,
    'again',
    id === null || read.length === 0 ? null : { layer: id, paperId: paper.id, lots: read },
    [id, paper.id, lots.value, parts, job],
  );
  if (!layer) return <p>{w.openLayer}</p>;
  const take = (): void => {
    if (!answer) return;
    takeRecipe(
      bench,
      layer.id,
      {
        parts: answer.corrected.parts.filter((p) => job.inks.find((k) => k.id === p.id)?.role === 'ink'),
        restShare: Math.max(
          0,
          1 - answer.corrected.parts.reduce((sum, p) => sum + (job.inks.find((k) => k.id === p.id)?.role === 'ink' ? p.share : 0), 0),
        ),
      },
      (before) => answer.lotInks.reduce(withInk, before),
      'lots',
    );
    lots.value = new Map();
    bench.announce(w.takenLots(layer.name));
  };
  return (
    <div class="part-words again-part">
      <LayerChoice plan={plan} only={decided} />
      <h2>
        {w.againHead}
        <Why of={w.again}>{w.againWhy}</Why>
      </h2>
      <p>{w.againText}</p>
      <PaperSwitch bench={bench} />
      <div class="slots">
        {mine.map((p) => (
          <OneReading
            key={`${layer.id} ${p.inkId}`}
            bench={bench}
            label={w.newLot(told(p.name))}
            reading={lots.value.get(p.inkId) ?? null}
            onSet={(reading) => {
              lots.value = new Map(lots.value).set(p.inkId, reading);
            }}
          />
        ))}
      </div>
      {problems.length > 0 && <ProblemList problems={problems} />}
      {answer && (
        <>
          <div class="row">
            <Pair left={answer.wantedSrgb} right={answer.unchangedSrgb} leftSays={w.wantedSwatch} rightSays={w.unchanged} />
            <Pair left={answer.wantedSrgb} right={answer.correctedSrgb} leftSays={w.wantedSwatch} rightSays={w.corrected} />
          </div>
          <p class="big-say">{told(answer.words)}</p>
          <dl class="facts">
            {answer.corrected.parts.map((p) => [
              <dt key={`${p.id} t`}>
                {p.name}
                {read.some((r) => r.id === p.id) && (
                  <small>{w.lotStrength(sayNumber(answer.lots.find((l) => l.id === p.id)?.strength ?? 1, 2, true))}</small>
                )}
              </dt>,
              <dd key={`${p.id} d`}>
                {sayNumber(p.share * 100, 1, true)}
                {'\u00a0'}% <small>{w.was(sayNumber((parts?.find((q) => q.inkId === p.id)?.share ?? 0) * 100, 1, true))}</small>
              </dd>,
            ])}
            <dt>{w.base}</dt>
            <dd>
              {sayNumber(answer.corrected.restShare * 100, 1, true)}
              {'\u00a0'}%
            </dd>
          </dl>
          <p>{w.lamp(sayDelta(answer.otherLight.D65), sayDelta(answer.otherLight.A))}</p>
          <button type="button" class="button button-strong" onClick={take}>
            {w.takeLots}
          </button>
        </>
      )}
    </div>
  );
}
