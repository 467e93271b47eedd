import { sayToneWay, type ToneWay } from '../../../../core/asks/index.ts';
import type { Job } from '../../../../core/job/index.ts';
import { told, words } from '../../../store/words.ts';
import { StepsPicture } from '../../../ui/StencilPicture.tsx';

interface ChoiceProps {
  readonly layerId: string;
  readonly layer: string;
  readonly ways: readonly ToneWay[];
  readonly taken: ToneWay;
  readonly take: (way: ToneWay) => void;
}

/** One run's ways, with the work of each: film, cut lines, flat strengths. */
export function WaysChoice({ layerId, layer, ways, taken, take }: ChoiceProps) {
  return (
    <fieldset class="choices tone-ways">
      <legend>{words().picture.toneWaysOf(layer)}</legend>
      {ways.map((way) => (
        <label key={way.kind} class="choice-mark">
          <input type="radio" name={`tone-way-${layerId}`} value={way.kind} checked={taken.kind === way.kind} onChange={() => take(way)} />
          <span>{told(sayToneWay(way))}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** What lines and flats would be cut from. */
export function CutFrom({ job, at, choose }: { readonly job: Job; readonly at: string; readonly choose: (id: string) => void }) {
  if (job.materials.length < 2) return null;
  return (
    <label class="length-field">
      <span class="length-label">{words().picture.linesMaterial}</span>
      <select class="choice" value={at || job.materials[0].id} onChange={(e) => choose(e.currentTarget.value)}>
        {job.materials.map((m) => (
          <option key={m.id} value={m.id}>
            {m.name}
          </option>
        ))}
      </select>
    </label>
  );
}

/** What is cut for a run instead of its film: each step darker than the one below it. */
export function CutInstead({ way, layer, image }: { readonly way: ToneWay; readonly layer: string; readonly image: Job['image'] }) {
  const { widthMm, heightMm } = image;
  return (
    <StepsPicture
      prints={way.runs.map((run) => run.region)}
      widthMm={widthMm}
      heightMm={heightMm}
      label={words().picture.toneCutInstead(layer)}
    />
  );
}
