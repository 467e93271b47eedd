import type { Plan } from '../../../core/plan/index.ts';
import { say } from '../../../words/one-language.ts';
import type { Bench } from '../../store/bench.ts';
import { told } from '../../store/words.ts';
import { RgbCanvas } from '../../ui/RgbCanvas.tsx';
import { screenScale } from '../../ui/screen/screen-scale.ts';
import { useAnswer } from '../inks/state.ts';

interface Props {
  readonly bench: Bench;
  readonly plan: Pick<Plan, 'layers' | 'fromArm'>;
}

/** What the films come to on the paper in view: the print from arm's length, and half tones on one another at true size. */
export function ToneLook({ bench, plan }: Props) {
  const paper = bench.paper.value;
  const { pxPerMm } = screenScale.value;
  // On the screen's own pixels, one to one: a browser that scales it would make bands with the dots.
  const perMm = pxPerMm * devicePixelRatio;
  const ask = paper && { paperId: paper.id, screenPerMm: perMm };
  const { answer: patch } = useAnswer(bench, 'bands', ask, [plan.layers, paper?.palette, perMm]);
  const seen = plan.fromArm.find((one) => one.paperId === paper?.id);
  return (
    <div class="tone-look">
      {seen && (
        <figure>
          <RgbCanvas {...seen} class="tone-seen" label={told(say('halftone.fromArm'))} />
          <figcaption>{told(say('halftone.fromArm'))}</figcaption>
        </figure>
      )}
      {patch && (
        <figure>
          <RgbCanvas {...patch} widthPx={(patch.width / patch.pixelsPerMm) * pxPerMm} label={told(say('halftone.bandsPatch'))} />
          <figcaption>{told(say('halftone.bandsPatch'))}</figcaption>
        </figure>
      )}
    </div>
  );
}
