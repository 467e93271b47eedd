import { cropOf } from '../../../../core/separate/index.ts';
import { words } from '../../../store/words.ts';
import type { PicturePartProps } from '../part.ts';
import { RasterCanvas } from './RasterCanvas.tsx';
import { making } from '../state.ts';

/** The part that prints, and the newest print beside it once there is one. */
export function PictureBeside({ job, picture, read }: Omit<PicturePartProps, 'bench'>) {
  const w = words().picture;
  const print = making.value?.result?.print ?? making.value?.draft?.print ?? null;
  return (
    <div class={`picture-pair${print ? '' : ' picture-single'}`} style={{ '--ratio': String(job.image.widthMm / job.image.heightMm) }}>
      <figure>
        <div class="pane">
          <RasterCanvas raster={read.shown} crop={cropOf(picture.crop, read, job.image)} label={w.thePicture} />
        </div>
        <figcaption>{w.thePicture}</figcaption>
      </figure>
      {print && (
        <figure>
          <div class="pane">
            <RasterCanvas raster={print} label={w.thePrint} />
          </div>
          <figcaption>{making.value?.result ? w.thePrint : w.draft}</figcaption>
        </figure>
      )}
    </div>
  );
}
