import { filmBands, filmSays, type WithTones } from '../../../core/asks/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { say } from '../../../words/index.ts';
import { told } from '../../store/words.ts';
import { PlaneCanvas } from '../../ui/PlaneCanvas.tsx';

type Layer = Plan['layers'][number];

/** No wider on the screen than this: what the film covers, as grey. */
const widestPx = 900;

/** A run of tone is not cut: its film, and how it stands on the screen. */
export function Film({
  plan,
  layer,
}: {
  readonly plan: Pick<Plan, 'codes' | 'layers'> & WithTones;
  readonly layer: Layer & { readonly tone: NonNullable<Layer['tone']> };
}) {
  const { width, height } = plan.codes;
  return (
    <>
      <PlaneCanvas class="film-plane" plane={layer.tone.plane} width={width} height={height} widestPx={widestPx} label={layer.name} />
      <div class="stencils-beside">
        <section class="beside" aria-labelledby="film">
          <h2 id="film">{layer.name}</h2>
          {filmSays(plan, layer).map((one, i) => (
            <p key={i}>{told(one)}</p>
          ))}
          <p>{told(say('halftone.filmsIntro'))}</p>
          <p>{told(say('halftone.filmsWedge'))}</p>
          {filmBands(plan)
            .slice(0, 4)
            .map((one, i) => (
              <p key={i}>{told(one)}</p>
            ))}
          <p>
            <b>{told(say('halftone.filmCaution'))}</b>
          </p>
        </section>
      </div>
    </>
  );
}
