import { useEffect, useRef } from 'preact/hooks';
import { filmBands, filmSays, type WithTones } from '../../../core/asks/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { say } from '../../../words/index.ts';
import { told } from '../../store/words.ts';

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
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height } = plan.codes;
  const step = Math.max(1, Math.ceil(width / widestPx));
  const [w, h] = [Math.floor(width / step), Math.floor(height / step)];
  const { plane } = layer.tone;
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    const image = context.createImageData(w, h);
    for (let y = 0; y < h; y++)
      for (let x = 0; x < w; x++) {
        const at = (y * w + x) * 4;
        image.data.fill(255 - plane[y * step * width + x * step], at, at + 3);
        image.data[at + 3] = 255;
      }
    context.putImageData(image, 0, 0);
  }, [plane, w, h, step, width]);
  return (
    <>
      <canvas ref={canvas} class="film-plane" width={w} height={h} role="img" aria-label={layer.name} />
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
