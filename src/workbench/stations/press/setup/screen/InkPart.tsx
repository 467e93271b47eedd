import { studioDefaults } from '../../../../../core/press/index.ts';
import { sayFilm, sayMass, sayShare } from '../../../../ui/fields/units.ts';
import { Pot } from '../../../../ui/Pot.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { words } from '../../../../store/words.ts';
import { setFilms } from '../edits.ts';
import type { PartProps } from '../part.ts';

/** Grams for every run as bars: what reaches the paper, in the ink's colour, and what screen and pot keep. */
export function InkPart({ bench, plan }: PartProps) {
  const w = words().press;
  const { units } = plan.job;
  const say = (grams: number): string => sayMass(grams, units, units === 'mm' ? (grams < 10 ? 1 : 0) : 2);
  const most = Math.max(1, ...plan.layers.map((l) => l.mix?.totalRangeGrams[1] ?? 0));
  const share = (grams: number): string => `${(100 * grams) / most}%`;
  const all = plan.layers.reduce((sum, l) => sum + (l.mix?.totalGrams ?? 0), 0);
  const { deposit } = plan.press;
  return (
    <div class="ink-part">
      <div class="ink-head">
        <h2>{w.inkHead}</h2>
        <p>
          <b>{w.allInk(say(all))}</b> · {w.film} {sayFilm(deposit.wetMicrons, units, units === 'mm' ? 0 : 1)}
        </p>
        <Why of={w.inkHead}>{w.inkWhy(say(studioDefaults.stayingGrams[0]), say(studioDefaults.stayingGrams[1]))}</Why>
      </div>
      <fieldset class="choices films-lie">
        <legend>
          {w.filmsLie}
          <Why of={w.filmsLie}>{w.filmsWhy}</Why>
        </legend>
        {(['dried-between', 'wet-on-wet', 'unknown'] as const).map((films) => (
          <label key={films} class="choice-mark">
            <input type="radio" name="films" checked={plan.job.press.films === films} onChange={() => setFilms(bench, films)} />
            <span>{w.films[films]}</span>
          </label>
        ))}
      </fieldset>
      <ol class="ink-runs" reversed>
        {plan.layers.toReversed().map((layer) => {
          const { mix } = layer;
          return (
            <li key={layer.id} class="ink-run">
              <span class="run-number">{layer.run}</span>
              <Pot srgb={layer.swatch?.srgb ?? null} />
              <div>
                <h3>{layer.name}</h3>
                {mix ? (
                  <>
                    <div class="ink-bar" aria-hidden="true">
                      <span class="ink-printed" style={{ width: share(mix.printedGrams), background: layer.swatch?.srgb }} />
                      <span class="ink-stays" style={{ width: share(mix.totalGrams - mix.printedGrams) }} />
                      <span
                        class="ink-range"
                        style={{ left: share(mix.totalRangeGrams[0]), width: share(mix.totalRangeGrams[1] - mix.totalRangeGrams[0]) }}
                      />
                    </div>
                    <p>
                      <b>{w.inkTotal(say(mix.totalGrams))}</b> {w.inkRange(say(mix.totalRangeGrams[0]), say(mix.totalRangeGrams[1]))}
                    </p>
                    <p>
                      {[
                        w.inkOnPaper(say(mix.printedGrams)),
                        w.inkPulls(layer.sheetsThrough),
                        w.inkStays(say(mix.totalGrams - mix.printedGrams)),
                        ...(mix.retarderShare > 0 ? [w.inkRetarder(sayShare(mix.retarderShare), say(mix.retarderGrams))] : []),
                      ].join(' · ')}
                    </p>
                  </>
                ) : (
                  <p>
                    <b>{w.inkOpen}</b>
                  </p>
                )}
              </div>
            </li>
          );
        })}
      </ol>
    </div>
  );
}
