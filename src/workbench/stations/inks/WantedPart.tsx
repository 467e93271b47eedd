import { useSignal } from '@preact/signals';
import type { Lab } from '../../../core/colour/index.ts';
import { sayNumber } from '../../ui/fields/units.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';
import { OverlapLine } from '../../ui/proof/OverlapLine.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { sayDelta, sayLab } from '../../ui/fields/format.ts';
import { told, words } from '../../store/words.ts';
import { pinWanted, takeRecipe } from './edits.ts';
import { Leftovers } from './pot/Leftovers.tsx';
import { Pair } from './LayerChoice.tsx';
import { Pinned } from './Pinned.tsx';
import { ReadingField } from './read/ReadingField.tsx';
import { showReading, useAnswer, type InkPartProps } from './state.ts';

/** A colour is wanted: from the proof, or typed; recipes come with how near they get and why not nearer. */
export function WantedPart({ bench, plan, paper, job }: InkPartProps) {
  const w = words().inks;
  const pointed = useSignal<number | null>(null);
  const wanted = useSignal<Lab | null>(job.wanted[0]?.lab ?? null);
  const overlap = useSignal<readonly string[]>(job.wanted[0]?.layers ?? []);
  /** The ground of a printed sheet that was pointed at. */
  const ground = useSignal<number | null>(null);
  const over = useSignal<readonly string[]>((job.wanted[0]?.layers ?? []).slice(0, -1));
  const most = useSignal(3);
  const retarder = useSignal(0);
  const lab = wanted.value;
  const [top] = overlap.value.slice(-1);
  const layerFor =
    plan.layers.find((l) => l.id === top) ?? plan.layers.find((l) => l.inkId === null) ?? plan.layers[plan.layers.length - 1];
  const target = useSignal<string | null>(null);
  const useLayer = plan.layers.find((l) => l.id === target.value) ?? layerFor;
  // Another paper has other grounds.
  const onGround = ground.value !== null && paper.grounds?.colours[ground.value] ? ground.value : null;
  const { answer, problems } = useAnswer(
    bench,
    'recipe',
    lab && {
      wanted: lab,
      paperId: paper.id,
      over: over.value,
      layer: useLayer?.id,
      ...(onGround === null ? {} : { ground: onGround }),
      mostPots: most.value,
      retarderShare: retarder.value / 100,
    },
    [lab?.join(), over.value.join(), onGround, useLayer?.id, most.value, retarder.value, paper.id, job.inks, job.layers],
  );
  const pick = (code: number | null, held: boolean, pixel: number | null): void => {
    pointed.value = code;
    const found = held && code !== null ? paper.overlaps.find((o) => o.code === code) : undefined;
    if (!found) return;
    const at = pixel === null ? null : (paper.grounds?.regions[pixel] ?? null);
    const there = at === null ? undefined : paper.grounds?.colours[at].overlaps.find((o) => o.code === code);
    ground.value = there ? at : null;
    wanted.value = (there ?? found).lab;
    overlap.value = found.layers;
    over.value = found.layers.slice(0, -1);
    bench.announce(`${w.wanted}: ${sayLab((there ?? found).lab)}`);
  };
  const decided = plan.layers.filter((l) => l.inkId !== null);
  return (
    <div class="part-two wanted-part">
      <figure class="proof-figure">
        <ProofSheet plan={plan} paper={paper}>
          <ProofCanvas
            bench={bench}
            plan={plan}
            paper={paper}
            label={words().laydown.proofOfAll(paper.name, plan.layers.length)}
            onPoint={pick}
          />
        </ProofSheet>
        <figcaption>
          <OverlapLine plan={plan} paper={paper} code={pointed} hint={w.pick} />
        </figcaption>
      </figure>
      <div class="part-words">
        <h2>{w.wantedHead}</h2>
        <PaperSwitch bench={bench} />
        <ReadingField
          bench={bench}
          label={w.wantedLab}
          reading={lab && { kind: 'lab', lab }}
          onSet={(reading) => {
            wanted.value = showReading(reading).lab;
          }}
        />
        <fieldset class="ink-chips">
          <legend>{w.overWhat}</legend>
          {decided.map((l) => (
            <label key={l.id} class="ink-chip">
              <input
                type="checkbox"
                checked={over.value.includes(l.id)}
                onChange={(e) => {
                  over.value = decided.map((d) => d.id).filter((id) => (id === l.id ? e.currentTarget.checked : over.value.includes(id)));
                }}
              />
              {l.name}
            </label>
          ))}
        </fieldset>
        {paper.grounds && (
          <fieldset class="ink-chips">
            <legend>{words().overlaps.grounds}</legend>
            {[null, ...paper.grounds.colours.keys()].map((at) => (
              <label key={at} class="ink-chip">
                <input
                  type="radio"
                  name="wanted-ground"
                  checked={onGround === at}
                  onChange={() => {
                    ground.value = at;
                  }}
                />
                <i class="ground-colour" style={{ background: at === null ? paper.swatch.srgb : paper.grounds?.colours[at].srgb }} />{' '}
                {at === null ? words().overlaps.barePaper : words().overlaps.groundNo(at + 1)}
              </label>
            ))}
          </fieldset>
        )}
        <div class="fields">
          <CountField
            label={w.mostPots}
            value={most.value}
            min={1}
            max={4}
            onSet={(v) => {
              most.value = Math.round(v);
            }}
          />
          <CountField
            label={w.retarder}
            value={retarder.value}
            min={0}
            max={20}
            digits={1}
            unit="%"
            onSet={(v) => {
              retarder.value = v;
            }}
          />
        </div>
        {problems.length > 0 && <ProblemList problems={problems} />}
        {answer && (
          <>
            <label class="use-for">
              {w.useFor}{' '}
              <select
                class="choice"
                value={useLayer?.id}
                onChange={(e) => {
                  target.value = e.currentTarget.value;
                }}
              >
                {plan.layers.map((l) => (
                  <option key={l.id} value={l.id}>{`${l.run} ${l.name}`}</option>
                ))}
              </select>
            </label>
            <ol class="recipes">
              {answer.recipes.map((recipe, i) => (
                <li key={recipe.parts.length} class={i === answer.best ? 'recipe recipe-best' : 'recipe'}>
                  <Pair left={answer.wantedSrgb} right={recipe.srgb} leftSays={w.wantedSwatch} rightSays={w.reachedSwatch} />
                  <div>
                    <p>
                      <b>{words().overlaps.bandWords(recipe.deltaE)}</b>, {w.off(sayDelta(recipe.deltaE))} · {w.pots(recipe.parts.length)}
                      {i === answer.best && <b class="best-mark">{w.enough}</b>}
                      <Why of={w.pots(recipe.parts.length)}>{w.recipeWhy}</Why>
                    </p>
                    <div class="mix-bar">
                      {recipe.parts.map((p) => (
                        <span key={p.id} style={{ flexGrow: p.share }}>
                          <i style={{ background: plan.inks.find((k) => k.id === p.id)?.swatch.srgb }} />
                          <b>
                            {sayNumber(p.share * 100, 1, true)}
                            {'\u00a0'}%
                          </b>
                          <small>{p.name}</small>
                        </span>
                      ))}
                      {recipe.restShare > 0.001 && (
                        <span style={{ flexGrow: recipe.restShare }}>
                          <i class="mix-base" />
                          <b>
                            {sayNumber(recipe.restShare * 100, 1, true)}
                            {'\u00a0'}%
                          </b>
                          <small>{w.base}</small>
                        </span>
                      )}
                    </div>
                    {useLayer && (
                      <button
                        type="button"
                        class={i === answer.best ? 'button button-strong' : 'button button-box'}
                        onClick={() => {
                          takeRecipe(bench, useLayer.id, recipe);
                          bench.announce(w.used(useLayer.name));
                        }}
                      >
                        {w.use(useLayer.name)}
                      </button>
                    )}
                  </div>
                </li>
              ))}
            </ol>
            {answer.why.map((why) => (
              <p key={why.key} class="needs-line">
                {told(why)}
              </p>
            ))}
            {answer.problems.length > 0 && <ProblemList problems={answer.problems} />}
          </>
        )}
        {lab && (
          <Leftovers bench={bench} plan={plan} job={job} paper={paper} wanted={lab} over={over.value} ground={onGround} layer={useLayer} />
        )}
        {lab && overlap.value.length > 0 && (
          <button type="button" class="button button-box" onClick={() => pinWanted(bench, overlap.value, lab, paper.id)}>
            {w.pin}: {overlap.value.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ')}
          </button>
        )}
        <Pinned bench={bench} plan={plan} paper={paper} job={job} />
      </div>
    </div>
  );
}
