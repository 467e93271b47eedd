import type { JobPicture } from '../../../core/job/index.ts';
import { cropOf } from '../../../core/separate/index.ts';
import { sayDelta } from '../../ui/format.ts';
import { Slider } from '../../ui/Slider.tsx';
import { Why } from '../../ui/Why.tsx';
import { words } from '../../words/index.ts';
import type { PicturePartProps } from './part.ts';
import { RasterCanvas } from './RasterCanvas.tsx';
import { comparing, making, struck, wipe } from './state.ts';
import type { ShownSeparation } from './worker/protocol.ts';

type Props = Omit<PicturePartProps, 'bench'>;

/** Picture, print and flat inks at the same size; or two of them on one another with a wipe. */
export function Compare({ job, picture, read }: Props) {
  const w = words().picture;
  const now = making.value;
  const result = now?.result ?? null;
  const ratio = { '--ratio': String(job.image.widthMm / job.image.heightMm) };
  return (
    <section class="compare" style={ratio} aria-label={w.compare}>
      {result && <CompareBar />}
      {result && comparing.value === 'wipe' ? <Wipe result={result} /> : (
        <div class={`panes${result ? ' panes-three' : ''}`}>
          <figure>
            <div class="pane">{result ? <RasterCanvas raster={result.picture} label={w.thePicture} /> : <RasterCanvas raster={read.shown} crop={cropOf(picture.crop, read, job.image)} label={w.thePicture} />}</div>
            <figcaption><b>{w.thePicture}</b>{result && <small>{w.onThisPaper}</small>}</figcaption>
          </figure>
          <Print picture={picture} />
          {result && (
            <figure>
              <div class="pane"><RasterCanvas raster={result.flat} label={w.flat(result.flatInks.length)} /></div>
              <figcaption>
                <b>{w.flat(result.flatInks.length)}</b><small>{w.flatNote}</small><Why of={w.flat(result.flatInks.length)}>{w.flatWhy}</Why>
                <Delta mean={result.flatFigures.inRegister.mean} spread={[result.flatFigures.inRegister.median, result.flatFigures.inRegister.p95]} />
              </figcaption>
            </figure>
          )}
        </div>
      )}
    </section>
  );
}

function Delta({ mean, spread }: { readonly mean: number; readonly spread: readonly [number, number] | null }) {
  const w = words().picture;
  return <p class="pane-delta"><b>{w.onAverage(sayDelta(mean))}</b> <span>{w.averageNote}{spread && `; ${w.spread(sayDelta(spread[0]), sayDelta(spread[1]))}`}</span></p>;
}

function Print({ picture }: { readonly picture: JobPicture }) {
  const w = words().picture;
  const now = making.value;
  const result = now?.result ?? null;
  const raster = result?.print ?? now?.draft?.print ?? null;
  if (!now) return null;
  const strike = !result || struck.value === 'nothing' ? null : struck.value === 'reach' ? result.outOfReach : result.detailLost;
  const mean = result?.figures.inRegister.mean ?? now.draft?.meanDeltaE;
  return (
    <figure>
      <div class="pane" data-stage={result ? 'done' : (now.draft?.stage ?? 'start')}>{raster ? <RasterCanvas raster={raster} strike={strike} label={`${w.thePrint}, ${picture.name}`} /> : <p class="pane-empty">{w.noDraft}</p>}</div>
      <figcaption>
        <b>{result ? w.thePrint : w.draft}</b>{result?.stoppedEarly && <small>{w.stoppedEarly}</small>}
        {mean !== undefined && <Delta mean={mean} spread={result ? [result.figures.inRegister.median, result.figures.inRegister.p95] : null} />}
      </figcaption>
    </figure>
  );
}

function CompareBar() {
  const w = words().picture;
  return (
    <div class="compare-bar">
      <fieldset class="choices">
        <legend class="unseen">{w.compare}</legend>
        {(['side', 'wipe'] as const).map((way) => (
          <label key={way} class="choice-mark"><input type="radio" name="comparing" checked={comparing.value === way} onChange={() => { comparing.value = way; }} /><span>{way === 'side' ? w.sideBySide : w.wipe}</span></label>
        ))}
      </fieldset>
      <fieldset class="choices">
        <legend>{w.show}</legend>
        {(['nothing', 'reach', 'lost'] as const).map((what) => (
          <label key={what} class="choice-mark"><input type="radio" name="struck" checked={struck.value === what} onChange={() => { struck.value = what; }} /><span>{{ nothing: w.showNothing, reach: w.showReach, lost: w.showLost }[what]}</span></label>
        ))}
      </fieldset>
    </div>
  );
}

/** One on the other, parted by a line that pointer and keys move. */
function Wipe({ result }: { readonly result: ShownSeparation }) {
  const w = words().picture;
  const { against, share } = wipe.value;
  const under = against === 'picture' ? result.picture : result.flat;
  const strike = struck.value === 'nothing' ? null : struck.value === 'reach' ? result.outOfReach : result.detailLost;
  const move = (e: PointerEvent): void => {
    const box = (e.currentTarget as HTMLElement).getBoundingClientRect();
    wipe.value = { ...wipe.value, share: Math.max(0, Math.min(1, (e.clientX - box.left) / box.width)) };
  };
  return (
    <div class="wipe">
      <fieldset class="choices">
        <legend>{w.wipeOver}</legend>
        {(['picture', 'flat'] as const).map((pair) => (
          <label key={pair} class="choice-mark"><input type="radio" name="wipe-pair" checked={against === pair} onChange={() => { wipe.value = { ...wipe.value, against: pair }; }} /><span>{w.wipePair[pair]}</span></label>
        ))}
      </fieldset>
      <div class="wipe-stage"
        onPointerDown={(e) => { e.currentTarget.setPointerCapture(e.pointerId); move(e); }} onPointerMove={(e) => { if (e.buttons !== 0) move(e); }}>
        <RasterCanvas raster={under} label={against === 'picture' ? w.thePicture : w.flat(result.flatInks.length)} />
        <div class="wipe-over" style={{ clipPath: `inset(0 ${(1 - share) * 100}% 0 0)` }}><RasterCanvas raster={result.print} strike={strike} label={w.thePrint} /></div>
        <div class="wipe-line" style={{ left: `${share * 100}%` }} />
      </div>
      <Slider label={w.wipeAt} value={share * 100} min={0} max={100} step={1} text={w.wipeText(Math.round(share * 100))} onMove={(v) => { wipe.value = { ...wipe.value, share: v / 100 }; }} onSettle={() => undefined} />
    </div>
  );
}
