import { useSignal, type Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { PrintPhotoAsk } from '../../../../core/asks/index.ts';
import { words } from '../../../store/words.ts';
import { holdStill, type Mm } from '../../../ui/screen/drag.ts';
import { Marker } from '../../../ui/screen/Marker.tsx';
import type { PrintPhotograph } from './photograph.ts';

interface Props {
  readonly photo: PrintPhotograph;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly corners: Signal<readonly Mm[] | null>;
  readonly of: PrintPhotoAsk['of'];
  readonly onOf: (next: PrintPhotoAsk['of']) => void;
  /** A corner was let go, or all were turned. */
  readonly onEnd: () => void;
}

const kinds = ['sheet', 'image'] as const;

/** The photograph with a handle on each corner of the print, moved by pointer or keys. */
export function Corners({ photo, widthPx, heightPx, corners, of, onOf, onEnd }: Props) {
  const w = words().overlaps;
  const ground = useRef<SVGGElement>(null);
  const picture = useRef<SVGSVGElement>(null);
  /** Pixels of the screen for one of the photograph: handles keep their size. */
  const scale = useSignal(400 / widthPx);
  useEffect(() => {
    const svg = picture.current;
    if (!svg) return;
    const measure = (): void => {
      const box = svg.getBoundingClientRect();
      if (box.width > 0) scale.value = Math.min(box.width / widthPx, box.height / heightPx);
    };
    const watch = new ResizeObserver(measure);
    watch.observe(svg);
    measure();
    const stop = holdStill(svg);
    return () => {
      watch.disconnect();
      stop();
    };
  }, [widthPx, heightPx]);
  const all = corners.value ?? [];
  return (
    <div class="print-photo-corners">
      <svg ref={picture} class="trace-photo" viewBox={`0 0 ${widthPx} ${heightPx}`} role="group" aria-label={photo.name}>
        <g ref={ground}>
          <image href={photo.url} width={widthPx} height={heightPx} />
          <path class="trace-sheet print-photo-halo" d={`M${all.map((c) => c.join(' ')).join('L')}Z`} />
          <path class="trace-sheet" d={`M${all.map((c) => c.join(' ')).join('L')}Z`} />
          {all.map((corner, i) => (
            <Marker
              key={i}
              at={corner}
              label={w.photoCorner(i + 1)}
              ground={ground}
              pxPerMm={scale.value}
              onMove={(to) => {
                const within: Mm = [Math.min(widthPx, Math.max(0, to[0])), Math.min(heightPx, Math.max(0, to[1]))];
                corners.value = all.map((c, k) => (k === i ? within : c));
              }}
              onEnd={onEnd}
            />
          ))}
        </g>
      </svg>
      <div class="row">
        <fieldset class="choices">
          <legend>{w.photoCornersOf}</legend>
          {kinds.map((kind) => (
            <label key={kind} class="choice-mark">
              <input type="radio" name="print-photo-of" checked={of === kind} onChange={() => onOf(kind)} />
              <span>{w.photoOf[kind]}</span>
            </label>
          ))}
        </fieldset>
        <button
          type="button"
          class="button button-box"
          onClick={() => {
            corners.value = [...all.slice(1), ...all.slice(0, 1)];
            onEnd();
          }}
        >
          {w.photoTurn}
        </button>
      </div>
      <p>{w.photoMoveCorners}</p>
    </div>
  );
}
