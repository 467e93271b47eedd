import { useSignal } from '@preact/signals';
import { usualPitch } from '../../../../core/asks/index.ts';
import { lineWays, type LineWay } from '../../../../core/halftone/index.ts';
import type { JobInk } from '../../../../core/job/index.ts';
import { figure, length, say, share } from '../../../../words/one-language.ts';
import type { MadeLines } from '../../../engine/protocol.ts';
import { step, told, words } from '../../../store/words.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { StencilPicture } from '../../../ui/StencilPicture.tsx';
import type { PicturePartProps } from '../part.ts';
import { problemsOf } from '../state.ts';
import { PictureBeside } from './PictureBeside.tsx';

interface Props extends PicturePartProps {
  readonly pots: readonly JobInk[];
}

/** Ways that an angle turns. */
const turned: readonly LineWay[] = ['parallel', 'hatch', 'flow'];

/** The picture's tone as openings that a knife can cut: swelling lines, hatching, holes. */
export function LinesPart({ bench, job, picture, read, pots }: Props) {
  const w = words().picture;
  const way = useSignal<LineWay>('flow');
  const pitch = useSignal<number | undefined>(undefined);
  const angle = useSignal(0);
  const ink = useSignal('');
  const material = useSignal('');
  const made = useSignal<(MadeLines & { readonly after: boolean }) | null>(null);
  const busy = useSignal(false);
  const draw = async (after: boolean): Promise<MadeLines | null> => {
    const bytes = bench.attachments.peek().get(picture.file);
    if (!bytes) return null;
    bench.refuse(null);
    busy.value = true;
    try {
      const question = {
        way: way.value,
        ...(pitch.value === undefined ? {} : { pitchMm: pitch.value }),
        ...(turned.includes(way.value) && angle.value !== 0 ? { angleDeg: angle.value } : {}),
        ...(ink.value === '' ? {} : { ink: ink.value }),
        ...(material.value === '' ? {} : { materialId: material.value }),
        ...(picture.crop ? { crop: picture.crop } : {}),
        paperId: bench.paper.peek()?.id,
        after,
      };
      const answer = await bench.ask('lines', { job, bytes, name: picture.name, question });
      made.value = { ...answer, after };
      return answer;
    } catch (error) {
      bench.refuse(problemsOf(error));
      return null;
    } finally {
      busy.value = false;
    }
  };
  const take = async (after: boolean): Promise<void> => {
    const answer = made.peek()?.after === after ? made.peek() : await draw(after);
    if (!answer) return;
    bench.edit(step('pictureToLines'), () => ({ ...answer.job, picture }), after ? {} : { anew: true });
    bench.announce(w.linesTaken(answer.region.rings.length));
  };
  const { widthMm, heightMm } = job.image;
  const choice = <T extends string>(set: (v: T) => void) => ({
    onChange: (e: { readonly currentTarget: { readonly value: string } }): void => {
      set(e.currentTarget.value as T);
      made.value = null;
    },
  });
  return (
    <div class="picture-two">
      <div>
        {made.value ? (
          <StencilPicture prints={made.value.region} widthMm={widthMm} heightMm={heightMm} label={w.linesDrawn} />
        ) : (
          <PictureBeside job={job} picture={picture} read={read} />
        )}
      </div>
      <div class="picture-words">
        <p>{w.linesIntro}</p>
        <fieldset class="choices">
          <legend>{w.linesWay}</legend>
          {lineWays.map((one) => (
            <label key={one} class="choice-mark">
              <input type="radio" name="line-way" value={one} checked={way.value === one} {...choice<LineWay>((v) => (way.value = v))} />
              <span>{w.lineWays[one]}</span>
            </label>
          ))}
        </fieldset>
        <div class="fields">
          <span class="length-field">
            <span class="length-label" aria-hidden="true">
              {w.linesPitch}
            </span>
            <LengthField
              label={w.linesPitch}
              valueMm={pitch.value ?? usualPitch(job, material.value || undefined)}
              minMm={0.5}
              maxMm={50}
              units={job.units}
              onSet={(v) => {
                pitch.value = v;
                made.value = null;
              }}
            />
          </span>
          {turned.includes(way.value) && (
            <CountField
              label={w.linesAngle}
              value={angle.value}
              min={-180}
              max={180}
              digits={0}
              unit="°"
              onSet={(v) => {
                angle.value = v;
                made.value = null;
              }}
            />
          )}
        </div>
        <label class="length-field">
          <span class="length-label">{w.linesInk}</span>
          <select class="choice" value={ink.value} {...choice((v) => (ink.value = v))}>
            <option value="">{w.linesOpen}</option>
            {pots.map((p) => (
              <option key={p.id} value={p.id}>
                {p.name}
              </option>
            ))}
          </select>
        </label>
        {job.materials.length > 1 && (
          <label class="length-field">
            <span class="length-label">{w.linesMaterial}</span>
            <select class="choice" value={material.value || job.materials[0].id} {...choice((v) => (material.value = v))}>
              {job.materials.map((m) => (
                <option key={m.id} value={m.id}>
                  {m.name}
                </option>
              ))}
            </select>
          </label>
        )}
        <div class="row">
          <button type="button" class="button button-strong" disabled={busy.value} onClick={() => void draw(false)}>
            {w.linesDraw}
          </button>
        </div>
        {made.value && (
          <>
            <p>
              {told(
                say('halftone.linesMade', {
                  n: made.value.region.rings.length,
                  pitch: length(made.value.pitchMm, 1),
                  lightest: share(made.value.lightest, 0),
                  darkest: share(made.value.darkest, 0),
                }),
              )}
            </p>
            <p>
              {told(
                say('halftone.linesReach', { bare: figure(made.value.bareL, 0, false), darkest: figure(made.value.darkestL, 0, false) }),
              )}
            </p>
            <div class="row">
              <button type="button" class="button button-strong" disabled={busy.value} onClick={() => void take(false)}>
                {w.toneTake}
              </button>
              {job.layers.length > 0 && (
                <button type="button" class="button button-line" disabled={busy.value} onClick={() => void take(true)}>
                  {w.linesAfter}
                </button>
              )}
            </div>
          </>
        )}
      </div>
    </div>
  );
}
