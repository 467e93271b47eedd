import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { mostInks, withToneWay, type SplitQuestion, type ToneWay } from '../../../../core/asks/index.ts';
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
import { CutFrom, CutInstead, WaysChoice } from './ToneWays.tsx';

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
  const ways = useSignal<readonly RunWays[] | null>(null);
  const material = useSignal('');
  const stopping = useRef<AbortController | null>(null);
  const anew = (): void => {
    made.value = null;
    ways.value = null;
  };
  const choose = (next: readonly string[]): void => {
    chosen.value = next;
    anew();
  };
  const split = async (): Promise<void> => {
    const bytes = bench.attachments.peek().get(picture.file);
    if (!bytes) return;
    const question: SplitQuestion = {
      inks: chosen.value.map((id) => ({ id })),
      paperId: bench.paper.peek()?.id,
      ...(picture.crop ? { crop: picture.crop } : {}),
      ...(limit.value === undefined ? {} : { limit: limit.value }),
      tone: { by: by.value },
    };
    ways.value = null;
    await atWork(async (how) => {
      made.value = await bench.ask('split', { job, bytes, name: picture.name, question }, how);
    });
  };
  /** Shows how far the worker is, and takes what it refuses to the bench. */
  const atWork = async (work: (how: { signal: AbortSignal; onProgress: (at: number) => void }) => Promise<void>): Promise<void> => {
    bench.refuse(null);
    working.value = 0;
    const stop = (stopping.current = new AbortController());
    try {
      await work({ signal: stop.signal, onProgress: (at) => (working.value = at) });
    } catch (error) {
      if (!stop.signal.aborted) bench.refuse(problemsOf(error));
    } finally {
      working.value = null;
    }
  };
  const weigh = (split: MadeSplit): Promise<void> =>
    atWork(async ({ signal }) => {
      const found: RunWays[] = [];
      const on = { paperId: bench.paper.peek()?.id, ...(material.value === '' ? {} : { materialId: material.value }) };
      for (const [i, { layer: layerId, bytes: film }] of split.films.entries()) {
        const onProgress = (at: number): void => {
          working.value = (i + at) / split.films.length;
        };
        const all = await bench.ask('toneWays', { job: split.job, layerId, film, ...on }, { signal, onProgress });
        found.push({ layerId, ways: all, taken: all[0] });
      }
      ways.value = found;
    });
  return (
    <div class="picture-two">
      <div>
        {made.value ? (
          <Films made={made.value} ways={ways.value} set={(next) => (ways.value = next)} />
        ) : (
          <PictureBeside job={job} picture={picture} read={read} />
        )}
      </div>
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
                  anew();
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
              anew();
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
            {ways.value ? (
              <p>{told(say('halftone.wayMinutes'))}</p>
            ) : (
              <div class="row">
                <CutFrom job={job} at={material.value} choose={(id) => (material.value = id)} />
                <button type="button" class="button" disabled={working.value !== null} onClick={() => void weigh(made.peek()!)}>
                  {w.toneWeigh}
                </button>
              </div>
            )}
            <button
              type="button"
              class="button button-strong"
              disabled={working.value !== null}
              onClick={() => takeSplit({ bench, picture }, made.peek()!, ways.peek() ?? [], material.peek() || undefined)}
            >
              {w.toneTake}
            </button>
          </>
        )}
      </div>
    </div>
  );
}

/** The split as the job, each run in the way that was chosen for it. */
function takeSplit(
  { bench, picture }: Pick<PicturePartProps, 'bench' | 'picture'>,
  made: MadeSplit,
  ways: readonly RunWays[],
  materialId: string | undefined,
): void {
  try {
    const next = ways.reduce((job, { layerId, taken }) => withToneWay(job, layerId, taken, materialId), made.job);
    const films = made.films.filter(({ layer }) => next.layers.some((l) => l.id === layer && l.tone));
    const printed = new Set(next.papers.flatMap((p) => (p.printed ? [p.printed.picture] : [])));
    const attachments = new Map([
      ...[...bench.attachments.peek()].filter(([name]) => printed.has(name) || name === picture.file),
      ...films.map((f) => [f.path, f.bytes] as const),
    ]);
    bench.edit(step('pictureToTone', next.layers.length), () => ({ ...next, picture }), { attachments, anew: true });
    bench.announce(words().picture.toneTaken(next.layers.length));
  } catch (error) {
    bench.refuse(problemsOf(error));
  }
}

interface RunWays {
  readonly layerId: string;
  readonly ways: readonly ToneWay[];
  readonly taken: ToneWay;
}

interface FilmsProps {
  readonly made: MadeSplit;
  readonly ways: readonly RunWays[] | null;
  readonly set: (ways: readonly RunWays[]) => void;
}

/** Each run's film, or what is cut in its place, the first to be printed first. */
function Films({ made, ways, set }: FilmsProps) {
  const w = words().picture;
  return (
    <ol class={`tone-films${ways ? ' tone-films-wide' : ''}`}>
      {made.films.map((film) => {
        const layer = made.job.layers.find((l) => l.id === film.layer)!;
        const run = ways?.find((r) => r.layerId === film.layer);
        return (
          <li key={film.layer}>
            <figure>
              {run && run.taken.runs.length > 0 ? (
                <CutInstead way={run.taken} layer={layer.name} image={made.job.image} />
              ) : (
                <RasterCanvas raster={film.shown} label={w.toneFilm(layer.name)} />
              )}
              <figcaption>
                <b>{layer.name}</b> {w.toneMean(sayShare(film.mean, 0))}
              </figcaption>
            </figure>
            {run && (
              <WaysChoice
                layerId={run.layerId}
                layer={layer.name}
                ways={run.ways}
                taken={run.taken}
                take={(taken) => set(ways!.map((r) => (r === run ? { ...r, taken } : r)))}
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}
