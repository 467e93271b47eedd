import { Slider } from '../../../ui/fields/Slider.tsx';
import { words } from '../../../store/words.ts';
import { RasterCanvas } from './RasterCanvas.tsx';
import { strikeOf, wipe } from '../state.ts';
import type { ShownSeparation } from '../worker/protocol.ts';

/** The print over the picture or the flat inks, parted by a line that pointer and keys move. */
export function Wipe({ result }: { readonly result: ShownSeparation }) {
  const w = words().picture;
  const { against, share } = wipe.value;
  const under =
    against === 'picture' ? { raster: result.picture, name: w.thePicture } : { raster: result.flat, name: w.flat(result.flatInks.length) };
  const move = (e: PointerEvent): void => {
    const box = (e.currentTarget as HTMLElement).getBoundingClientRect();
    wipe.value = { ...wipe.value, share: Math.max(0, Math.min(1, (e.clientX - box.left) / box.width)) };
  };
  return (
    <div class="wipe">
      <div
        class="wipe-stage"
        onPointerDown={(e) => {
          e.currentTarget.setPointerCapture(e.pointerId);
          move(e);
        }}
        onPointerMove={(e) => {
          if (e.buttons !== 0) move(e);
        }}
      >
        <RasterCanvas raster={under.raster} label={under.name} />
        <div class="wipe-over" style={{ clipPath: `inset(0 ${(1 - share) * 100}% 0 0)` }}>
          <RasterCanvas raster={result.print} strike={strikeOf(result)} label={w.thePrint} />
        </div>
        <div class="wipe-line" style={{ left: `${share * 100}%` }} />
      </div>
      <div class="wipe-names" aria-hidden="true">
        <b>{w.thePrint}</b>
        <b>{under.name}</b>
      </div>
      <div class="wipe-words">
        <Slider
          label={w.wipeAt}
          value={share * 100}
          min={0}
          max={100}
          step={1}
          text={w.wipeText(Math.round(share * 100))}
          onMove={(v) => {
            wipe.value = { ...wipe.value, share: v / 100 };
          }}
          onSettle={() => undefined}
        />
        <fieldset class="choices">
          <legend>{w.wipeOver}</legend>
          {(['picture', 'flat'] as const).map((pair) => (
            <label key={pair} class="choice-mark">
              <input
                type="radio"
                name="wipe-pair"
                checked={against === pair}
                onChange={() => {
                  wipe.value = { ...wipe.value, against: pair };
                }}
              />
              <span>{w.wipePair[pair]}</span>
            </label>
          ))}
        </fieldset>
      </div>
    </div>
  );
}
