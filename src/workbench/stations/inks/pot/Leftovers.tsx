import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { jarsOfShelf } from '../../../../core/asks/index.ts';
import type { Lab } from '../../../../core/colour/index.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { sayDelta } from '../../../ui/fields/format.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import { words } from '../../../store/words.ts';
import { takeRecipe, withInk } from '../edits.ts';
import { loadShelf, studioShelf } from '../shelf/shelf-keep.ts';
import { Pair } from '../LayerChoice.tsx';
import { useAnswer, type InkPartProps } from '../state.ts';

interface Props extends InkPartProps {
  readonly wanted: Lab;
  readonly over: readonly string[];
  /** On which ground of a printed sheet; null: on the bare paper. */
  readonly ground: number | null;
  readonly layer: { readonly id: string; readonly name: string } | undefined;
}

/** Grams from jars below which they are no help. */
const leastWorth = 0.5;

/** The wanted colour from yesterday's jars, with the least new ink. Shown where a jar has something left. */
export function Leftovers({ bench, plan, job, paper, wanted, over, ground, layer }: Props) {
  const w = words().inks;
  const within = useSignal(2);
  const grams = useSignal<number | null>(null);
  const needed = grams.value ?? plan.layers.find((l) => l.id === layer?.id)?.mix?.totalGrams ?? 100;
  useEffect(() => {
    void loadShelf();
  }, []);
  const shelf = studioShelf.value;
  const onShelf = shelf ? jarsOfShelf(shelf, job) : [];
  const jars = job.inks.filter((k) => k.role === 'ink' && (k.leftGrams ?? 0) > 0).length + onShelf.length;
  const { answer } = useAnswer(
    bench,
    'leftovers',
    jars === 0
      ? null
      : {
          wanted,
          paperId: paper.id,
          over,
          layer: layer?.id,
          ...(ground === null ? {} : { ground }),
          totalGrams: needed,
          within: within.value,
          shelf,
        },
    [wanted.join(), over.join(), layer?.id, ground, needed, within.value, paper.id, job.inks, job.layers, shelf],
  );
  if (jars === 0) return null;
  const pot = answer?.best ?? answer?.nearest;
  const say = (g: number): string => sayNumber(g, g < 10 ? 1 : 0, true);
  return (
    <section class="leftovers" aria-label={w.leftovers}>
      <h2>
        {w.leftovers}
        <Why of={w.leftovers}>{w.leftoversWhy}</Why>
      </h2>
      <div class="fields">
        <CountField
          label={w.leftoversGrams}
          value={needed}
          min={1}
          max={100000}
          digits={0}
          unit="g"
          onSet={(v) => {
            grams.value = v;
          }}
        />
        <CountField
          label={w.leftoversWithin}
          value={within.value}
          min={0.5}
          max={10}
          digits={1}
          onSet={(v) => {
            within.value = v;
          }}
        />
      </div>
      {answer && pot && (
        <>
          <p>
            {!answer.best
              ? w.leftoversNone(sayDelta(pot.deltaE))
              : pot.jarGrams < leastWorth
                ? w.leftoversNoHelp
                : w.leftoversText(answer.jars)}
          </p>
          <div class="recipe">
            <Pair left={answer.wantedSrgb} right={answer.srgb} leftSays={w.wantedSwatch} rightSays={w.reachedSwatch} />
            <div>
              <p>
                <b>{w.leftoversNew(say(pot.newGrams), answer.best && answer.freshGrams !== null ? say(answer.freshGrams) : null)}</b> ·{' '}
                <b>{words().overlaps.apartWords(pot.deltaE)}</b>, {w.leftoversOff(sayDelta(pot.deltaE))}
              </p>
              <ul>
                {pot.parts.map((p) => (
                  <li key={`${p.from} ${p.id}`}>{w.leftoverPart(say(p.grams), p.name || w.base, p.from)}</li>
                ))}
              </ul>
              {layer && (
                <button
                  type="button"
                  class="button button-box"
                  onClick={() => {
                    const inks = pot.parts.filter((p) => p.from !== 'base');
                    const parts = inks
                      .filter((p, i) => inks.findIndex((o) => o.id === p.id) === i)
                      .map((p) => ({ ...p, share: inks.reduce((sum, o) => (o.id === p.id ? sum + o.share : sum), 0) }));
                    takeRecipe(bench, layer.id, { parts, restShare: 1 - parts.reduce((sum, p) => sum + p.share, 0) }, (now) =>
                      answer.shelfInks.reduce((sum, ink) => withInk(sum, ink), now),
                    );
                    bench.announce(w.used(layer.name));
                  }}
                >
                  {w.use(layer.name)}
                </button>
              )}
            </div>
          </div>
        </>
      )}
    </section>
  );
}
