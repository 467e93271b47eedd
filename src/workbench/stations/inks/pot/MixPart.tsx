import { useSignal } from '@preact/signals';
import { sayNumber, sayShare } from '../../../ui/fields/units.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { told, words } from '../../../store/words.ts';
import { BaseShares } from './BaseShares.tsx';
import { chosenLayer, LayerChoice } from '../LayerChoice.tsx';
import { jarOfPot, setInk } from '../edits.ts';
import { at, useAnswer, type InkPartProps } from '../state.ts';

const scaleSteps = [5, 1, 0.5, 0.1, 0.01] as const;

/** A layer's pot weighed out to what the scale shows. */
export function MixPart({ bench, plan, job }: InkPartProps) {
  const w = words().inks;
  const grams = useSignal<number | null>(null);
  const scale = useSignal(1);
  const decided = plan.layers.filter((l) => l.inkId !== null).map((l) => l.id);
  const id = chosenLayer({ plan, only: decided });
  const { answer, problems } = useAnswer(
    bench,
    'batch',
    id === null ? null : { layer: id, scaleStepGrams: scale.value, ...(grams.value === null ? {} : { totalGrams: grams.value }) },
    [id, scale.value, grams.value, job],
  );
  const layer = plan.layers.find((l) => l.id === id);
  if (!layer) return <p>{w.openLayer}</p>;
  const jobLayer = job.layers.find((l) => l.id === id);
  const mix = layer.mix;
  const digits = scale.value >= 1 ? 0 : scale.value >= 0.1 ? 1 : 2;
  const say = (g: number): string => sayNumber(g, digits, true);
  const swatchOf = (inkId: string): string | undefined => {
    const ink = plan.inks.find((k) => k.id === inkId);
    return ink && ink.role === 'ink' ? ink.swatch.srgb : undefined;
  };
  return (
    <div class="part-words mix-part">
      <LayerChoice plan={plan} only={decided} />
      {answer && (
        <>
          <h2>
            {w.mixHead(answer.layerName, say(answer.totalGrams))}
            <Why of={w.mix}>{w.mixWhy}</Why>
          </h2>
          <div class="scales">
            <span class="scales-pot" style={{ background: answer.srgb }} />
            <ol>
              {answer.parts.map((p) => (
                <li key={p.id}>
                  <i class={swatchOf(p.id) ? '' : 'mix-base'} style={swatchOf(p.id) ? { background: swatchOf(p.id) } : {}} />
                  <b class="big-grams">
                    {say(p.grams)}
                    {'\u00a0'}g
                  </b>
                  <span>
                    {told(p.name)}
                    <small>{w.byVolume(sayNumber(p.share * 100, 1, true))}</small>
                  </span>
                </li>
              ))}
            </ol>
          </div>
          {mix && mix.retarderShare > 0 && (
            <p class="needs-line">{w.retarderOn(sayNumber(answer.totalGrams * mix.retarderShare, 1, true), sayShare(mix.retarderShare))}</p>
          )}
          <p>{w.rounding(sayNumber(answer.roundingDeltaE, 2, true))}</p>
        </>
      )}
      {problems.length > 0 && <ProblemList problems={problems} />}
      <div class="fields">
        {jobLayer && <BaseShares bench={bench} layer={jobLayer} />}
        <CountField
          label={w.grams}
          value={grams.value ?? mix?.totalGrams ?? 100}
          min={1}
          max={100000}
          digits={0}
          unit="g"
          onSet={(v) => {
            grams.value = v;
          }}
        />
        <label class="length-field">
          <span class="length-label">{w.scale}</span>
          <select
            class="choice"
            value={String(scale.value)}
            onChange={(e) => {
              scale.value = Number(e.currentTarget.value);
            }}
          >
            {scaleSteps.map((s) => (
              <option key={s} value={String(s)}>{`${sayNumber(s, s < 0.1 ? 2 : s < 1 ? 1 : 0, true)} g`}</option>
            ))}
          </select>
        </label>
      </div>
      {grams.value !== null && (
        <button
          type="button"
          class="button button-box"
          onClick={() => {
            grams.value = null;
          }}
        >
          {w.asRun}
        </button>
      )}
      {answer && (
        <button
          type="button"
          class="button button-box"
          onClick={() => {
            const jar = jarOfPot(
              job,
              layer.id,
              w.jarName(answer.layerName),
              Math.max(1, Math.round(answer.totalGrams - (mix?.printedGrams ?? 0))),
            );
            if (!jar) return;
            setInk(bench, jar, 'new');
            at.ink.value = jar.id;
            bench.announce(w.jarKept(jar.name));
          }}
        >
          {w.keepJar}
        </button>
      )}
      {mix && <p>{told(mix.note)}</p>}
      {answer && answer.problems.length > 0 && <ProblemList problems={answer.problems} />}
    </div>
  );
}
