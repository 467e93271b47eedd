import type { ComponentChildren } from 'preact';
import { cropOf } from '../../../../core/separate/index.ts';
import { sayDelta } from '../../../ui/fields/format.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import type { PicturePartProps } from '../part.ts';
import { RasterCanvas } from './RasterCanvas.tsx';
import { comparing, making, strikeOf } from '../state.ts';
import { Wipe } from './Wipe.tsx';
import type { ShownSeparation } from '../worker/protocol.ts';

type Props = Omit<PicturePartProps, 'bench'>;

/** Picture, print and flat inks at the same size; or two of them on one another with a wipe. */
export function Compare({ job, picture, read }: Props) {
  const w = words().picture;
  const now = making.value;
  const result = now?.result ?? null;
  return (
    <section class="compare" style={{ '--ratio': String(job.image.widthMm / job.image.heightMm) }} aria-label={w.compare}>
      {result && comparing.value === 'wipe' ? (
        <Wipe result={result} />
      ) : (
        <div class="panes">
          <Pane name={w.thePicture} note={result ? w.onThisPaper : null}>
            {result ? (
              <RasterCanvas raster={result.picture} label={w.thePicture} />
            ) : (
              <RasterCanvas raster={read.shown} crop={cropOf(picture.crop, read, job.image)} label={w.thePicture} />
            )}
          </Pane>
          {result && (
            <Pane stage="done" name={w.thePrint} delta={result.figures.inRegister.mean} note={result.stoppedEarly ? w.stoppedEarly : null}>
              <RasterCanvas raster={result.print} strike={strikeOf(result)} label={`${w.thePrint}, ${picture.name}`} />
            </Pane>
          )}
          {result && <Flat result={result} />}
          {now && !result && (
            <Pane stage={now.draft?.stage ?? 'start'} name={w.draft} delta={now.draft?.meanDeltaE}>
              {now.draft ? (
                <RasterCanvas raster={now.draft.print} label={`${w.draft}, ${picture.name}`} />
              ) : (
                <p class="pane-empty">{w.noDraft}</p>
              )}
            </Pane>
          )}
        </div>
      )}
    </section>
  );
}

interface PaneProps {
  readonly name: string;
  readonly delta?: number;
  readonly note?: ComponentChildren;
  readonly stage?: string;
  readonly children: ComponentChildren;
}

function Pane({ name, delta, note, stage, children }: PaneProps) {
  const w = words().picture;
  return (
    <figure>
      <div class="pane" data-stage={stage}>
        {children}
      </div>
      <figcaption>
        <b>{name}</b>{' '}
        {delta !== undefined && (
          <span class="pane-delta">
            <b>{words().overlaps.apartWords(delta)}</b> ({w.onAverage(sayDelta(delta))}) {w.averageNote}
          </span>
        )}
        {note && <small>{note}</small>}
      </figcaption>
    </figure>
  );
}

function Flat({ result }: { readonly result: ShownSeparation }) {
  const w = words().picture;
  const name = w.flat(result.flatInks.length);
  return (
    <Pane
      name={name}
      delta={result.flatFigures.inRegister.mean}
      note={
        <>
          {w.flatNote}
          <Why of={name}>{w.flatWhy}</Why>
        </>
      }
    >
      <RasterCanvas raster={result.flat} label={name} />
    </Pane>
  );
}
