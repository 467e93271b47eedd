import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { tidyCrop, type Crop } from '../../../../core/separate/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { sayPercent } from '../../../ui/fields/format.ts';
import { words } from '../../../store/words.ts';
import { movedCrop, sizedCrop } from './crop.ts';
import { setPicture } from '../edits.ts';

interface Props {
  readonly bench: Bench;
  readonly crop: Crop;
  readonly active: boolean;
}

/** Where the opposite corner stays, in shares of the frame. */
const corners = { nw: [1, 1], ne: [0, 1], sw: [1, 0], se: [0, 0] } as const;
type Corner = keyof typeof corners;

/** The part that prints: dragged by pointer, moved and sized by keys; what does not print is dimmed. */
export function CropFrame({ bench, crop, active }: Props) {
  const w = words().picture;
  const frame = useRef<HTMLDivElement>(null);
  /** While a hand is on it; the job learns of it when it lets go. */
  const held = useSignal<Crop | null>(null);
  const shown = held.value ?? crop;
  useEffect(() => {
    held.value = null;
  }, [crop.x, crop.y, crop.width, crop.height]);

  const put = (next: Crop): void => {
    const tidy = tidyCrop(next);
    setPicture(bench, 'crop', { crop: { ...tidy } }, 'picture-crop');
    bench.announce(w.cropSaid(sayPercent(tidy.x), sayPercent(tidy.y), sayPercent(tidy.width)));
  };
  const grasp = (e: PointerEvent, corner: Corner | null): void => {
    const stage = frame.current?.parentElement;
    if (e.button !== 0 || !stage) return;
    e.preventDefault();
    e.stopPropagation();
    const grip = e.currentTarget as HTMLElement;
    grip.focus({ preventScroll: true });
    grip.setPointerCapture(e.pointerId);
    const box = stage.getBoundingClientRect();
    const from = [e.clientX, e.clientY],
      start = shown;
    const move = (event: PointerEvent): void => {
      const dx = (event.clientX - from[0]) / box.width,
        dy = (event.clientY - from[1]) / box.height;
      if (!corner) return void (held.value = movedCrop(start, dx, dy));
      const [u, v] = corners[corner];
      // The frame keeps its proportions: the farther of the two ways of the hand counts.
      const wide = u === 1 ? -dx : dx,
        high = (v === 1 ? -dy : dy) * (start.width / start.height);
      held.value = sizedCrop(start, start.width + (Math.abs(wide) > Math.abs(high) ? wide : high), u, v);
    };
    const end = (event: PointerEvent): void => {
      grip.removeEventListener('pointermove', move);
      grip.removeEventListener('pointerup', end);
      grip.removeEventListener('pointercancel', end);
      if (held.value && event.type === 'pointerup') {
        put(held.value);
        bench.settle();
      }
      held.value = null;
    };
    grip.addEventListener('pointermove', move);
    grip.addEventListener('pointerup', end);
    grip.addEventListener('pointercancel', end);
  };
  const key = (e: KeyboardEvent): void => {
    const by = e.shiftKey ? 0.1 : 0.01;
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-by, 0],
      ArrowRight: [by, 0],
      ArrowUp: [0, -by],
      ArrowDown: [0, by],
    };
    const to = moves[e.key]
      ? movedCrop(shown, ...moves[e.key])
      : e.key === '+' || e.key === '='
        ? sizedCrop(shown, shown.width * 1.05)
        : e.key === '-'
          ? sizedCrop(shown, shown.width / 1.05)
          : null;
    if (!to) return;
    e.preventDefault();
    put(to);
  };
  const share = (v: number): string => `${v * 100}%`;
  return (
    <div
      ref={frame}
      class={`crop${active ? '' : ' crop-still'}`}
      style={{ left: share(shown.x), top: share(shown.y), width: share(shown.width), height: share(shown.height) }}
    >
      {active && (
        <>
          <div
            class="crop-body"
            role="button"
            tabindex={0}
            aria-label={w.frame(sayPercent(shown.width))}
            onPointerDown={(e) => grasp(e, null)}
            onKeyDown={key}
            onBlur={() => bench.settle()}
          />
          {(Object.keys(corners) as Corner[]).map((corner) => (
            <div
              key={corner}
              class={`crop-corner crop-${corner}`}
              aria-hidden="true"
              title={w.corner(w.corners[corner])}
              onPointerDown={(e) => grasp(e, corner)}
            />
          ))}
        </>
      )}
    </div>
  );
}
