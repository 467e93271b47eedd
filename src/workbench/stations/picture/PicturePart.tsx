import { useEffect } from 'preact/hooks';
import { cropOf, heightOfCrop, tidyCrop } from '../../../core/separate/index.ts';
import { saySize, sayNumber } from '../../ui/fields/units.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { ProblemList } from '../../ui/ProblemList.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { step, words } from '../../store/words.ts';
import { movedCrop, sizedCrop } from './marks/crop.ts';
import { CropFrame } from './marks/CropFrame.tsx';
import { setPicture, takePictureAway } from './edits.ts';
import { MarkControls } from './marks/MarkControls.tsx';
import { MarkDrawing } from './marks/MarkDrawing.tsx';
import type { PicturePartProps } from './part.ts';
import { ChoosePicture } from './ChoosePicture.tsx';
import { RasterCanvas } from './result/RasterCanvas.tsx';
import { RunBar } from './result/RunBar.tsx';
import { drawVeil, onPicture, veil } from './state.ts';
import type { ReadPicture } from './worker/protocol.ts';

/** The picture with the part that prints, and what matters on it. */
export function PicturePart({ bench, job, picture, read }: PicturePartProps) {
  const w = words().picture;
  const { image, units } = job;
  const crop = cropOf(picture.crop, read, image);
  const mode = onPicture.value;
  const percent = (share: number): number => share * 100;
  const put = (next: typeof crop): void => setPicture(bench, 'crop', { crop: { ...tidyCrop(next) } });
  const wholeHeightMm = Math.round(heightOfCrop(undefined, read, image.widthMm) * 10) / 10;
  const sameShape = Math.abs(wholeHeightMm - image.heightMm) < 0.5;
  const pxPerMm = (crop.width * read.width) / image.widthMm;
  return (
    <div class="picture-two">
      <div class="picture-stage" style={{ '--ratio': String(read.width / read.height) }}>
        <RasterCanvas raster={read.shown} label={w.photo(picture.name)} />
        {mode === 'mark' && picture.veil > 0 && <Veil read={read} share={picture.veil} />}
        <MarkDrawing bench={bench} picture={picture} read={read} active={mode === 'mark'} />
        <CropFrame bench={bench} crop={crop} active={mode === 'crop'} />
      </div>
      <div class="picture-words">
        <RunBar bench={bench} job={job} picture={picture} />
        {read.problems.length > 0 && <ProblemList problems={read.problems} />}
        <fieldset class="choices">
          <legend class="unseen">{w.what}</legend>
          {(['crop', 'mark'] as const).map((m) => (
            <label key={m} class="choice-mark">
              <input
                type="radio"
                name="on-picture"
                checked={mode === m}
                onChange={() => {
                  onPicture.value = m;
                }}
              />
              <span>{m === 'crop' ? w.cropping : w.marking}</span>
            </label>
          ))}
        </fieldset>
        {mode === 'mark' ? (
          <MarkControls bench={bench} job={job} picture={picture} read={read} />
        ) : (
          <>
            <p>
              <b>{w.imageSize(saySize(image.widthMm, image.heightMm, units))}</b> {w.pixelsPerMm(sayNumber(pxPerMm, 1, true))}
              {pxPerMm < 1.5 && ` ${w.fewPixels}`}
              <Why of={w.pixelsPerMm('')}>{w.sizeWhy}</Why>
            </p>
            {read.profile !== null && <p class="field-note">{w.profile(read.profile)}</p>}
            <div class="fields">
              <CountField
                label={w.cropLeft}
                value={percent(crop.x)}
                min={0}
                max={100}
                digits={1}
                unit="%"
                onSet={(v) => put(movedCrop(crop, v / 100 - crop.x, 0))}
              />
              <CountField
                label={w.cropTop}
                value={percent(crop.y)}
                min={0}
                max={100}
                digits={1}
                unit="%"
                onSet={(v) => put(movedCrop(crop, 0, v / 100 - crop.y))}
              />
              <CountField
                label={w.cropWidth}
                value={percent(crop.width)}
                min={5}
                max={100}
                digits={1}
                unit="%"
                onSet={(v) => put(sizedCrop(crop, v / 100, 0, 0))}
              />
            </div>
            <div class="row">
              {picture.crop && (
                <button type="button" class="button button-line" onClick={() => setPicture(bench, 'crop', { crop: undefined })}>
                  {w.wholePicture}
                </button>
              )}
              {!sameShape && (
                <button
                  type="button"
                  class="button button-line button-wrap"
                  onClick={() =>
                    bench.edit(step('imageSize'), (j) => ({
                      ...j,
                      image: { ...j.image, heightMm: wholeHeightMm },
                      picture: j.picture && { ...j.picture, crop: undefined },
                    }))
                  }
                >
                  {w.wholeImage(saySize(image.widthMm, wholeHeightMm, units))}
                </button>
              )}
            </div>
            {!sameShape && <p class="field-note">{w.otherShape}</p>}
            <div class="row picture-swap">
              <ChoosePicture bench={bench}>{w.another}</ChoosePicture>
              <button type="button" class="button button-line" onClick={() => takePictureAway(bench)}>
                {w.takeAway}
              </button>
            </div>
          </>
        )}
      </div>
    </div>
  );
}

/** What matters less by itself, darkened: there a moment after it is asked for. */
function Veil({ read, share }: { readonly read: ReadPicture; readonly share: number }) {
  useEffect(() => void drawVeil(read), [read]);
  const raster = veil.value?.of === read ? veil.value.raster : null;
  return (
    raster && (
      <div class="picture-veil" style={{ opacity: share }}>
        <RasterCanvas raster={raster} label={words().picture.veilShown} />
      </div>
    )
  );
}
