import { bareLength, sayLength, sayNumber } from '../../../ui/fields/units.ts';
import { LengthBox } from '../../../ui/fields/LengthField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { materialList } from '../../stencils/edits.ts';
import { AmountField } from '../marks/AmountField.tsx';
import { setPicture } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { PictureBeside } from './PictureBeside.tsx';
import { RunBar } from './RunBar.tsx';
import { knifeIn, knifeUnit, metresOf } from '../say.ts';

/** What the knife may be asked for, what is cut, how well layers register, and what becomes of colours out of reach. */
export function KnifePart({ bench, job, picture, read }: PicturePartProps) {
  const w = words().picture;
  const { units } = job;
  const { knife } = picture;
  const materials = materialList(job);
  const material = materials.find((m) => m.id === picture.material) ?? materials[0];
  // A budget of metres sets the price itself.
  const budget = (change: Partial<typeof knife>): void =>
    setPicture(bench, 'knife', { knife: { ...knife, ...(change.metres === undefined ? {} : { priceMm: undefined }), ...change } });
  const jobSigma = bench.plan.value?.register.sigma.sigmaMm;
  return (
    <div class="picture-two">
      <PictureBeside job={job} picture={picture} read={read} />
      <div class="picture-words">
        <RunBar bench={bench} job={job} picture={picture} />
        <fieldset class="knife-budget">
          <legend>
            {w.budget}
            <Why of={w.budget}>{w.budgetWhy}</Why>
          </legend>
          <div class="fields">
            <AmountField
              label={w.metres}
              value={knife.metres === undefined ? null : knifeIn(knife.metres, units)}
              unit={knifeUnit(units)}
              digits={1}
              min={0.1}
              max={1000}
              hint={w.freely}
              onSet={(v) => budget({ metres: v === null ? undefined : metresOf(v, units) })}
            />
            <AmountField
              label={w.minutes}
              value={knife.minutes ?? null}
              unit={words().press.minutes}
              min={1}
              max={10000}
              hint={w.freely}
              onSet={(v) => budget({ minutes: v ?? undefined })}
            />
            <AmountField
              label={w.pieces}
              value={knife.pieces ?? null}
              unit=""
              min={1}
              max={10000}
              hint={w.freely}
              onSet={(v) => budget({ pieces: v === null ? undefined : Math.round(v) })}
            />
            <LengthBox
              label={w.least}
              mm={knife.leastWidthMm ?? null}
              units={units}
              minMm={0.1}
              maxMm={50}
              hint={w.freely}
              optional
              onSet={(mm) => budget({ leastWidthMm: mm ?? undefined })}
            />
          </div>
          {knife.priceMm !== undefined && (
            <p class="row">
              {w.priceNow(sayNumber(knife.priceMm, 2, true))}
              <button
                type="button"
                class="button button-line"
                onClick={() => setPicture(bench, 'price', { knife: { ...knife, priceMm: undefined } })}
              >
                {w.priceForget}
              </button>
            </p>
          )}
        </fieldset>
        <label class="length-field picture-material">
          <span class="length-label">
            {w.material}
            <small>{w.materialFacts(sayLength(material.leastBridgeMm, units), sayLength(material.leastOpeningMm, units))}</small>
          </span>
          <select class="choice" value={material.id} onChange={(e) => setPicture(bench, 'material', { material: e.currentTarget.value })}>
            {materials.map((m) => (
              <option key={m.id} value={m.id}>
                {m.name}
              </option>
            ))}
          </select>
        </label>
        <div class="with-why">
          <LengthBox
            label={w.sigma}
            mm={picture.sigmaMm ?? null}
            units={units}
            minMm={0}
            maxMm={10}
            optional
            hint={jobSigma === undefined ? '' : bareLength(jobSigma, units, units === 'mm' ? 2 : 3)}
            onSet={(mm) => setPicture(bench, 'sigma', { sigmaMm: mm ?? undefined })}
          />
          <Why of={w.sigma}>{w.sigmaWhy}</Why>
        </div>
        <fieldset class="choices choices-under">
          <legend>
            {w.reach}
            <Why of={w.reach}>{w.reachWhy}</Why>
          </legend>
          {(['nearest', 'lightness', 'chroma', 'contrast'] as const).map((way) => (
            <label key={way} class="choice-mark">
              <input
                type="radio"
                name="reach"
                checked={picture.reach === way}
                onChange={() => setPicture(bench, 'reach', { reach: way })}
              />
              <span>{w.reaches[way]}</span>
            </label>
          ))}
        </fieldset>
      </div>
    </div>
  );
}
