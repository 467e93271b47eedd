import { useSignal } from '@preact/signals';
import type { JobPotLog } from '../../../../core/job/index.ts';
import type { Reading } from '../../../../core/ink/index.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { asJob, setPotLog } from '../edits.ts';
import { chosenLayer, LayerChoice } from '../LayerChoice.tsx';
import { PotAdvice } from './PotAdvice.tsx';
import { PotReading } from './PotReading.tsx';
import { PotRounds } from './PotRounds.tsx';
import { isoDay, type InkPartProps } from '../state.ts';

/** Saving a pot: contents, drawdowns, the least addition, round by round; the log is kept with the job. */
export function PotPart(props: InkPartProps) {
  const { plan, job } = props;
  const w = words().inks;
  const decided = plan.layers.filter((l) => l.inkId !== null).map((l) => l.id);
  const id = chosenLayer({ plan, only: decided });
  const layer = plan.layers.find((l) => l.id === id);
  if (!layer) return <p>{w.openLayer}</p>;
  const log = job.potLogs.find((l) => l.layer === id) ?? null;
  return (
    <div class="part-words pot-part">
      <LayerChoice plan={plan} only={decided} />
      <h2>
        {w.potHead(layer.name)}
        <Why of={w.pot}>{w.potWhy}</Why>
      </h2>
      {log ? <OpenLog key={layer.id} {...props} layer={layer} log={log} /> : <NewLog key={layer.id} {...props} layer={layer} />}
    </div>
  );
}

type Layer = InkPartProps['plan']['layers'][number];

/** Before the first drawdown: what was weighed in. */
function NewLog({ bench, job, layer }: InkPartProps & { readonly layer: Layer }) {
  const w = words().inks;
  const planned = layer.mix?.parts ?? [];
  const grams = useSignal<ReadonlyMap<string, number>>(new Map(planned.map((p) => [p.inkId, Math.round(p.massGrams * 10) / 10])));
  const contents = [...grams.value].filter(([, g]) => g > 0).map(([ink, g]) => ({ ink, grams: g }));
  return (
    <>
      <h3>{w.potStart}</h3>
      <ul class="mix-parts">
        {job.inks
          .filter((k) => k.from !== 'mix')
          .toSorted((a, b) => Number(grams.value.has(b.id)) - Number(grams.value.has(a.id)))
          .map((ink) => (
            <li key={ink.id}>
              <CountField
                label={ink.name}
                value={grams.value.get(ink.id) ?? 0}
                min={0}
                max={100000}
                digits={1}
                unit="g"
                onSet={(g) => {
                  grams.value = new Map(grams.value).set(ink.id, g);
                }}
              />
            </li>
          ))}
      </ul>
      <div class="row">
        <button
          type="button"
          class="button button-strong"
          disabled={contents.length === 0}
          onClick={() => setPotLog(bench, layer, { layer: layer.id, contents, rounds: [] }, 'pot')}
        >
          {w.startLog}
        </button>
      </div>
    </>
  );
}

function OpenLog(props: InkPartProps & { readonly layer: Layer; readonly log: JobPotLog }) {
  const { bench, layer, log, job } = props;
  const w = words().inks;
  const within = useSignal(2);
  const added = log.adding ?? [];
  const nameOf = (id: string): string => job.inks.find((k) => k.id === id)?.name ?? id;
  const sayParts = (parts: JobPotLog['contents']): string =>
    parts.map((p) => `${sayNumber(p.grams, 1, true)} g ${nameOf(p.ink)}`).join(', ');
  const setAdded = (parts: JobPotLog['contents']): void => {
    const some = parts.filter((p) => p.grams > 0);
    setPotLog(bench, layer, { ...log, adding: some.length > 0 ? some : undefined }, 'adding');
  };
  const read = (reading: Reading, looks?: JobPotLog['rounds'][number]['looks']): void => {
    const round = {
      added: log.rounds.length === 0 ? [] : [...added],
      reading: asJob(reading),
      date: isoDay(),
      ...(looks === undefined ? {} : { looks }),
    };
    setPotLog(bench, layer, { ...log, adding: undefined, rounds: [...log.rounds, round] }, 'round');
  };
  const waiting = added.length > 0;
  const others = job.inks.filter((k) => k.from !== 'mix' && !added.some((p) => p.ink === k.id));
  const also = (label: string) => (
    <select
      class="choice"
      aria-label={label}
      value=""
      onChange={(e) => {
        if (e.currentTarget.value) setAdded([...added, { ink: e.currentTarget.value, grams: 1 }]);
      }}
    >
      <option value="">{label} …</option>
      {others.map((k) => (
        <option key={k.id} value={k.id}>
          {k.name}
        </option>
      ))}
    </select>
  );
  return (
    <>
      <PotRounds {...props} sayParts={sayParts} />
      {log.rounds.length > 0 && !waiting && (
        <>
          <PotAdvice {...props} within={within.value} onAdded={setAdded} />
          <div class="row">{also(w.addedElse)}</div>
          <div class="fields fields-narrow">
            <CountField
              label={w.within}
              value={within.value}
              min={0.3}
              max={20}
              digits={1}
              unit="ΔE"
              onSet={(v) => {
                within.value = v;
              }}
            />
          </div>
        </>
      )}
      {(log.rounds.length === 0 || waiting) && (
        <>
          <p class="needs-line">{waiting ? w.pending(sayParts(added)) : w.drawdown}</p>
          {waiting && (
            <ul class="mix-parts">
              {added.map((p, i) => (
                <li key={p.ink}>
                  <CountField
                    label={w.gramsOf(nameOf(p.ink))}
                    value={p.grams}
                    min={0}
                    max={100000}
                    digits={1}
                    unit="g"
                    onSet={(grams) => setAdded(added.map((q, k) => (k === i ? { ...q, grams } : q)))}
                  />
                </li>
              ))}
            </ul>
          )}
          {waiting && (
            <div class="row">
              {also(w.alsoAdded)}
              <button type="button" class="button button-box" onClick={() => setAdded([])}>
                {w.notAdded}
              </button>
            </div>
          )}
          <PotReading {...props} onRead={read} />
        </>
      )}
      <div class="row">
        {log.rounds.length > 0 && (
          <button
            type="button"
            class="button button-box"
            onClick={() => setPotLog(bench, layer, { ...log, adding: undefined, rounds: log.rounds.slice(0, -1) }, 'roundAway')}
          >
            {w.takeBack}
          </button>
        )}
        <button type="button" class="button button-box" onClick={() => setPotLog(bench, layer, null, 'potAway')}>
          {w.clearLog}
        </button>
      </div>
    </>
  );
}
