import type { JobInk } from '../../../../core/job/index.ts';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { setPicture, setWish } from '../edits.ts';
import { PotsChoice } from '../PotsChoice.tsx';
import type { PicturePartProps } from '../part.ts';
import { PictureBeside } from './PictureBeside.tsx';
import { RunBar } from './RunBar.tsx';
import { WaysChoice } from './WaysChoice.tsx';

interface Props extends PicturePartProps {
  readonly pots: readonly JobInk[];
}

/** How many runs, from which pots, what is decided about them, and over what. */
export function LayersPart({ bench, job, picture, read, pots }: Props) {
  const w = words().picture;
  const chosen = picture.pots ?? pots.map((p) => p.id);
  const own = job.layers.filter((l) => !l.off).length;
  const choose = (next: readonly string[]): void =>
    setPicture(bench, 'pots', { pots: next.length === pots.length ? undefined : [...next] });
  const most = picture.over ? 8 - own : 8;
  return (
    <div class="picture-two">
      <PictureBeside job={job} picture={picture} read={read} />
      <div class="picture-words">
        <RunBar bench={bench} job={job} picture={picture} />
        <WaysChoice bench={bench} job={job} picture={picture} />
        <fieldset class="choices">
          <legend>{w.howMany}</legend>
          {[1, 2, 3, 4, 5, 6, 7, 8].map((n) => (
            <label key={n} class="choice-mark">
              <input
                type="radio"
                name="runs"
                checked={picture.layers === n}
                disabled={n > most}
                onChange={() => setPicture(bench, 'layers', n === 1 ? { layers: n, key: false } : { layers: n })}
              />
              <span>{n}</span>
            </label>
          ))}
        </fieldset>
        <TakenAs bench={bench} picture={picture} />
        <PotsChoice bench={bench} head={w.potsHead} pots={pots} chosen={chosen} choose={choose} />
        <fieldset class="choices">
          <legend>{w.mostInPot}</legend>
          {([1, 2, 3] as const).map((n) => (
            <label key={n} class="choice-mark">
              <input
                type="radio"
                name="most-in-pot"
                checked={picture.mostInPot === n}
                onChange={() => setPicture(bench, 'pots', { mostInPot: n })}
              />
              <span>{w.mostInPotOf[n]}</span>
            </label>
          ))}
        </fieldset>
        {job.papers.length > 1 && (
          <div class="row">
            <b>{w.onPaper}</b>
            <PaperSwitch bench={bench} />
          </div>
        )}
        <div class="tick-why">
          <label class="tick">
            <input
              type="checkbox"
              checked={picture.key}
              disabled={picture.layers === 1}
              onChange={(e) => setPicture(bench, 'key', e.currentTarget.checked ? { key: true, cutPairs: false } : { key: false })}
            />
            <span>{w.key}</span>
          </label>
          <Why of={w.key}>{w.keyWhy}</Why>
        </div>
        <div class="tick-why">
          <label class="tick">
            <input
              type="checkbox"
              checked={picture.cutPairs}
              onChange={(e) =>
                setPicture(
                  bench,
                  'pairs',
                  e.currentTarget.checked
                    ? { cutPairs: true, key: false, way: picture.way === 'light' ? 'near' : picture.way }
                    : { cutPairs: false },
                )
              }
            />
            <span>{w.pairs}</span>
          </label>
          <Why of={w.pairs}>{w.pairsWhy}</Why>
        </div>
        {(picture.over || (own > 0 && own < 8)) && (
          <div class="tick-why">
            <label class="tick">
              <input
                type="checkbox"
                checked={picture.over}
                onChange={(e) =>
                  setPicture(
                    bench,
                    'over',
                    e.currentTarget.checked ? { over: true, layers: Math.min(picture.layers, 8 - own) } : { over: false },
                  )
                }
              />
              <span>{w.over}</span>
            </label>
            <Why of={w.over}>{w.overWhy(own)}</Why>
          </div>
        )}
        <details class="fold">
          <summary>
            {w.decided}
            <span class="fold-fact">
              {picture.wishes.slice(0, picture.layers).some((x) => x.ink !== undefined)
                ? w.decidedSome(picture.wishes.slice(0, picture.layers).filter((x) => x.ink !== undefined).length)
                : w.decidedNone}
            </span>
          </summary>
          <ol class="wishes">
            {Array.from({ length: picture.layers }, (_, i) => (
              <Wish key={i} run={i} bench={bench} job={job} picture={picture} read={read} pots={pots} />
            ))}
          </ol>
        </details>
        <fieldset class="choices">
          <legend>{w.search}</legend>
          {(
            [
              ['quick', 0.3],
              ['usual', 1],
              ['long', 3],
            ] as const
          ).map(([name, effort]) => (
            <label key={name} class="choice-mark">
              <input
                type="radio"
                name="effort"
                checked={picture.effort === effort}
                onChange={() => setPicture(bench, 'search', { effort })}
              />
              <span>{w.efforts[name]}</span>
            </label>
          ))}
        </fieldset>
      </div>
    </div>
  );
}

function TakenAs({ bench, picture }: Pick<Props, 'bench' | 'picture'>) {
  const w = words().picture;
  return (
    <fieldset class="choices">
      <legend>
        {w.takenAs}
        <Why of={w.takenAs}>{w.takenAsWhy}</Why>
      </legend>
      {(['looks', 'drawing', 'photograph'] as const).map((what) => (
        <label key={what} class="choice-mark">
          <input
            type="radio"
            name="taken-as"
            checked={(picture.takenAs ?? 'looks') === what}
            onChange={() => setPicture(bench, 'takenAs', { takenAs: what === 'looks' ? undefined : what })}
          />
          <span>{w.takenAsOf[what]}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Wish({ bench, picture, pots, run }: Props & { readonly run: number }) {
  const w = words().picture;
  const wish = picture.wishes[run];
  const n = run + 1;
  return (
    <li class="wish">
      <b>{w.wishRun(n)}</b>
      <select
        class="choice"
        aria-label={w.wishInk(n)}
        value={wish?.ink ?? ''}
        onChange={(e) => {
          const ink = e.currentTarget.value || undefined;
          setWish(bench, run, ink === undefined ? { ink, strength: undefined } : { ink });
        }}
      >
        <option value="">{w.inkFree}</option>
        {pots.map((p) => (
          <option key={p.id} value={p.id}>
            {p.name}
          </option>
        ))}
      </select>
      {wish?.ink !== undefined && (
        <>
          <label class="tick">
            <input
              type="checkbox"
              checked={wish.strength === undefined}
              onChange={(e) => setWish(bench, run, { strength: e.currentTarget.checked ? undefined : 0.5 })}
            />
            <span>{w.strengthFree}</span>
          </label>
          {wish.strength !== undefined && (
            <NumberField
              label={w.wishStrength(n)}
              value={wish.strength * 100}
              min={1}
              max={100}
              unit="%"
              onSet={(v) => setWish(bench, run, { strength: v / 100 })}
            />
          )}
        </>
      )}
      <label class="tick">
        <input
          type="checkbox"
          aria-label={w.wishPlaceOf(n)}
          checked={wish?.placeFixed ?? false}
          onChange={(e) => setWish(bench, run, { placeFixed: e.currentTarget.checked })}
        />
        <span>{w.wishPlace}</span>
      </label>
    </li>
  );
}
