import { useSignal } from '@preact/signals';
import { sayNumber } from '../../../ui/fields/units.ts';
import { Films } from '../../../ui/proof/Films.tsx';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { OverlapLine } from '../../../ui/proof/OverlapLine.tsx';
import { ProofCanvas } from '../../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../../ui/proof/ProofSheet.tsx';
import { sayDelta, sayLab } from '../../../ui/fields/format.ts';
import { told, words } from '../../../store/words.ts';
import { addProofReading, removeProofReading } from '../edits.ts';
import { OneReading } from './OneReading.tsx';
import { isoDay, showReading, type InkPartProps } from '../state.ts';

/** Readings of proofs and finished sheets: what they say, and what was learnt. */
export function LearnPart({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const o = words().overlaps;
  const pointed = useSignal<number | null>(null);
  const held = useSignal<number | null>(null);
  const known = paper.overlaps.filter((one) => one.code !== 0);
  const chosen = known.find((one) => one.code === held.value) ?? known[0];
  const nameOf = (layers: readonly string[]): string =>
    layers.length === 0 ? o.barePaper : o.films(layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id));
  const readings = job.proofReadings.map((r, at) => ({ ...r, at })).filter((r) => r.paper === paper.id);
  const learning = paper.learning;
  return (
    <div class="part-two learn-part">
      <figure class="proof-figure">
        <ProofSheet plan={plan} paper={paper}>
          <ProofCanvas
            bench={bench}
            plan={plan}
            paper={paper}
            only={chosen && held.value !== null ? chosen.code : null}
            label={words().laydown.proofOfAll(paper.name, plan.layers.length)}
            onPoint={(code, press) => {
              pointed.value = code;
              if (press && code) held.value = code;
            }}
          />
        </ProofSheet>
        <figcaption>
          <OverlapLine plan={plan} paper={paper} code={pointed} hint={o.point} />
        </figcaption>
      </figure>
      <div class="part-words">
        <h2>
          {w.learnHead}
          <Why of={w.learn}>{w.learnWhy}</Why>
        </h2>
        <p>{w.learnText}</p>
        <PaperSwitch bench={bench} />
        <label class="length-field">
          <span class="length-label">{w.whichOverlap}</span>
          <select
            class="choice choice-wide"
            value={String(chosen?.code ?? '')}
            onChange={(e) => {
              held.value = Number(e.currentTarget.value);
            }}
          >
            {known.map((one) => (
              <option key={one.code} value={String(one.code)}>
                {nameOf(one.layers)}
              </option>
            ))}
          </select>
        </label>
        {chosen && (
          <OneReading
            key={`${chosen.code} ${readings.length}`}
            bench={bench}
            label={w.readingOf(nameOf(chosen.layers))}
            reading={null}
            onSet={(reading) => addProofReading(bench, paper.id, chosen.layers, reading, isoDay())}
          />
        )}
        {learning && <p class="big-say">{w.learnt(sayDelta(learning.before.mean), sayDelta(learning.after.mean))}</p>}
        {readings.length === 0 && <p>{w.learnNone}</p>}
        <ul class="proof-readings">
          {readings.map((r) => {
            const shown = showReading(r.reading);
            const seen = learning?.observations.find((one) => one.place === `proofReadings[${r.at}]`);
            const foreseen = paper.overlaps.find((one) => one.layers.join() === r.layers.join());
            return (
              <li key={r.at}>
                <span class="reading-swatch" style={{ background: shown.srgb }} />
                <div>
                  <p>
                    <Films layers={plan.layers} here={r.layers} />
                    <b>{nameOf(r.layers)}</b> <span>{sayLab(shown.lab)}</span>
                  </p>
                  {seen && (
                    <p>
                      {w.beforeAfter(sayDelta(seen.before), sayDelta(seen.after))}
                      {seen.outlier && <b class="best-mark">{w.outlier}</b>}
                    </p>
                  )}
                  {foreseen?.measured && <small>{o.measured}</small>}
                </div>
                <button
                  type="button"
                  class="button button-box"
                  aria-label={w.removeReading(nameOf(r.layers))}
                  onClick={() => removeProofReading(bench, r.at)}
                >
                  {w.takeAway}
                </button>
              </li>
            );
          })}
        </ul>
        {learning && (
          <>
            <h3>{w.deposits}</h3>
            <dl class="facts">
              {learning.deposits.map((d) => [
                <dt key={`${d.id} t`}>{plan.layers.find((l) => l.id === d.id)?.name ?? d.id}</dt>,
                <dd key={`${d.id} d`}>{w.depositOf(sayNumber(d.factor * 100, 0, true), sayNumber(d.doubt * 100, 0, true))}</dd>,
              ])}
            </dl>
            <p>{told(learning.words)}</p>
          </>
        )}
      </div>
    </div>
  );
}
