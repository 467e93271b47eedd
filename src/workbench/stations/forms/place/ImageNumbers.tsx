import type { Job } from '../../../../core/job/index.ts';
import { saySize } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { UnitChoice } from '../../../ui/fields/UnitChoice.tsx';
import { PaperSwitch } from '../../../ui/proof/PaperSwitch.tsx';
import { step, words, type Step } from '../../../store/words.ts';

/** How large the image is, how much stencil stays around it, and which sheet it is shown on. */
export function ImageNumbers({ bench }: { readonly bench: Bench }) {
  const w = words().forms;
  const job = bench.job.value!;
  const edit = (name: Step, change: Partial<Job>): void => bench.edit(name, (j) => ({ ...j, ...change }));
  const { image, units } = job;
  return (
    <details class="fold" open={job.cuts.length === 0}>
      <summary>
        {w.imageAndSheet} <span class="fold-fact">{saySize(image.widthMm, image.heightMm, units)}</span>
      </summary>
      <UnitChoice units={units} onChange={(u) => edit(step('units'), { units: u })} />
      <div class="nums">
        <label class="num">
          <span>{w.imageWidth}</span>
          <LengthField
            label={w.imageWidth}
            valueMm={image.widthMm}
            minMm={5}
            maxMm={5000}
            units={units}
            onSet={(widthMm) => edit(step('imageSize'), { image: { ...image, widthMm } })}
          />
        </label>
        <label class="num">
          <span>{w.imageHeight}</span>
          <LengthField
            label={w.imageHeight}
            valueMm={image.heightMm}
            minMm={5}
            maxMm={5000}
            units={units}
            onSet={(heightMm) => edit(step('imageSize'), { image: { ...image, heightMm } })}
          />
        </label>
        <label class="num">
          <span>{w.margin}</span>
          <LengthField
            label={w.margin}
            valueMm={job.stencilMarginMm}
            minMm={0}
            maxMm={500}
            units={units}
            onSet={(stencilMarginMm) => edit(step('stencilMargin'), { stencilMarginMm })}
          />
        </label>
      </div>
      {job.papers.length > 1 && <PaperSwitch bench={bench} />}
    </details>
  );
}
