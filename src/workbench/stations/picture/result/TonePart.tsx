import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { mostInks, type SplitQuestion } from '../../../../core/asks/index.ts';
import { usualInkLimit } from '../../../../core/halftone/index.ts';
import type { JobInk } from '../../../../core/job/index.ts';
import { deltaE, say, share } from '../../../../words/one-language.ts';
import { step, told, words } from '../../../store/words.ts';
import { sayShare } from '../../../ui/fields/units.ts';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import type { MadeSplit } from '../../../engine/protocol.ts';
import { PotsChoice } from '../PotsChoice.tsx';
import type { PicturePartProps } from '../part.ts';
import { problemsOf } from '../state.ts';
import { PictureBeside } from './PictureBeside.tsx';
import { RasterCanvas } from './RasterCanvas.tsx';

interface Props extends PicturePartProps {
  readonly pots: readonly JobInk[];
}

const usualInks = 4;

/** The picture as tone: films of dots or grain, in inks of the shelf, instead of shapes for a knife. */
export function TonePart({ bench, job, picture, read, pots }: Props) {
  const w = words().picture;
  const chosen = useSignal<readonly string[]>(pots.slice(0, usualInks).map((p) => p.id));
  const by = useSignal<'dots' | 'grain'>('dots');
  const limit = useSignal<number | undefined>(undefined);
  const made = useSignal<MadeSplit | null>(null);
  const working = useSignal<number | null>(null);
  const stopping = useRef<AbortController | null>(null);
  const choose = (next: readonly string[]): void => {
    chosen.value = next;
    made.value = null;
  };
  const split = async (): Promise<void> => {
    const bytes = bench.attachments.peek().get(picture.file);
    if (!bytes) return;
    bench.refuse(null);
    working.value = 0;
    const stop = (stopping.current = new AbortController());
    const question: SplitQuestion = {
      inks: chosen.value.map((id) => ({ id })),
      paperId: bench.paper.peek()?.id,
      ...(picture.crop ? { crop: picture.crop } : {}),
      ...(limit.value === undefined ? {} : { limit: limit.value }),
      tone: { by: by.value },
    };
    try {
      made.value = await bench.ask(
        'split',
        { job, bytes, name: picture.name, question },
        { signal: stop.signal, onProgress: (at) => (working.value = at) },
      );
    } catch (error) {
      if (!stop.signal.aborted) bench.refuse(problemsOf(error));
    } finally {
      working.value = null;
    }
  };
  return (
    <div class="picture-two">
      <div>{made.value ? <Films made={made.value} /> : <PictureBeside job={job} picture={picture} read={read} />}</div>
      <div class="picture-words">
        <p>{w.toneIntro}</p>
        <PotsChoice bench={bench} head={w.toneInks(mostInks)} pots={pots} chosen={chosen.value} most={mostInks} choose={choose} />
        <fieldset class="choices">
          <legend>{w.toneBy}</legend>
          {(['dots', 'grain'] as const).map((way) => (
            <label key={way} class="choice-mark">
              <input
                type="radio"
                name="tone-by"
                checked={by.value === way}
                onChange={() => {
                  by.value = way;
                  made.value = null;
                }}
              />
              <span>{way === 'dots' ? w.toneDots : w.toneGrain}</span>
            </label>
          ))}
        </fieldset>
        {job.papers.length > 1 && (
          <div class="row">
            <b>{w.onPaper}</b>
            <PaperSwitch bench={bench} />
          </div>
        )}
        <div class="fields">
          <CountField
            label={w.toneLimit}
            value={(limit.value ?? usualInkLimit(Math.max(1, chosen.value.length))) * 100}
            min={50}
            max={600}
            digits={0}
            unit="%"
            onSet={(v) => {
              limit.value = v / 100;
              made.value = null;
            }}
          />
          <Why of={w.toneLimit}>{w.toneLimitWhy}</Why>
        </div>
        <div class="row">
          <button
            type="button"
            class="button button-strong"
            disabled={working.value !== null || chosen.value.length === 0}
            onClick={() => void split()}
          >
            {w.toneMake}
          </button>
          {working.value !== null && (
            <>
              <progress aria-label={w.toneMaking} value={working.value} max={1} />
              <button type="button" class="button button-line" onClick={() => stopping.current?.abort()}>
                {w.toneStop}
              </button>
            </>
          )}
        </div>
        {made.value && (
          <>
            {made.value.beyondSrgb > 0.0005 && <p>{told(say('halftone.splitWide', { share: share(made.value.beyondSrgb, 1) }))}</p>}
            {made.value.outOfReach < 0.995 && (
              <p>{told(say('halftone.splitBack', { mean: deltaE(made.value.mean), p95: deltaE(made.value.p95) }))}</p>
            )}
            {made.value.outOfReach > 0.005 && (
              <p>{told(say('halftone.splitOut', { share: share(made.value.outOfReach, 0), mean: deltaE(made.value.outMean) }))}</p>
            )}
            <p>{told(say('halftone.splitMost', { most: share(made.value.most, 0) }))}</p>
            <button
              type="button"
              class="button button-strong"
              onClick={() => {
                const { job: next, films } = made.peek()!;
                const printed = new Set(next.papers.flatMap((p) => (p.printed ? [p.printed.picture] : [])));
                const attachments = new Map([
                  ...[...bench.attachments.peek()].filter(([name]) => printed.has(name) || name === picture.file),
                  ...films.map((f) => [f.path, f.bytes] as const),
                ]);
                bench.edit(step('pictureToTone', films.length), () => ({ ...next, picture }), { attachments, anew: true });
                bench.announce(w.toneTaken(films.length));
              }}
            >
              {w.toneTake}
            </button>
          </>
        )}
      </div>
    </div>
  );
}

/** Each run's film, the first to be printed first. */
function Films({ made }: { readonly made: MadeSplit }) {
  const w = words().picture;
  return (
    <ol class="tone-films">
      {made.films.map((film) => {
        const layer = made.job.layers.find((l) => l.id === film.layer)!;
        return (
          <li key={film.layer}>
            <figure>
              <RasterCanvas raster={film.shown} label={w.toneFilm(layer.name)} />
              <figcaption>
                <b>{layer.name}</b> {w.toneMean(sayShare(film.mean, 0))}
              </figcaption>
            </figure>
          </li>
        );
      })}
    </ol>
  );
}
