import { signal, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Box } from '../../../core/form/index.ts';
import { words } from '../../store/words.ts';
import { holdStill } from '../screen/drag.ts';
import { followPinch } from '../screen/pinch.ts';
import { screenScale } from '../screen/screen-scale.ts';

/** Fit: all of it in sight. True: a millimetre is a millimetre on this screen. Else pixels per mm. */
export type Zoom = 'fit' | 'true' | number;

export function createZoom(): Signal<Zoom> {
  return signal<Zoom>('fit');
}

const leastPxPerMm = 0.5,
  mostPxPerMm = 60;
const clamp = (value: number): number => Math.min(mostPxPerMm, Math.max(leastPxPerMm, value));

/** What lies between the fingers: px from the frame's corner, and which part of the drawing, 0..1. */
interface Between {
  readonly at: readonly [number, number];
  readonly of: readonly [number, number];
}

interface Props {
  readonly box: Box;
  readonly zoom: Signal<Zoom>;
  /** Pixels per mm as shown now, for the zoom bar and for handles that keep their size. */
  readonly shown: Signal<number>;
  readonly label: string;
  /** A point (mm) to bring to the middle whenever it changes. */
  readonly lookAt?: readonly [number, number] | null;
  /** HTML laid below the drawing, in pixels from its top left corner. */
  readonly below?: (pxPerMm: number) => ComponentChildren;
  readonly children: (pxPerMm: number) => ComponentChildren;
}

/** A drawing in millimetres that can be looked at from near and far; it scrolls, so touch, wheel and keys move it as any page. */
export function ZoomView({ box, zoom, shown, label, lookAt, below, children }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [[width, height], setSize] = useState<readonly [number, number]>([0, 0]);
  const widthMm = box.maxX - box.minX,
    heightMm = box.maxY - box.minY;

  useLayoutEffect(() => {
    const element = frame.current!;
    const measure = (): void =>
      setSize((now) =>
        now[0] === element.offsetWidth && now[1] === element.offsetHeight ? now : [element.offsetWidth, element.offsetHeight],
      );
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    measure();
    return () => watch.disconnect();
  }, []);

  const fit = width > 0 ? clamp(Math.min(width / widthMm, height / heightMm)) : 1;
  const wish = zoom.value;
  const pxPerMm = wish === 'fit' ? fit : wish === 'true' ? screenScale.value.pxPerMm : clamp(wish);
  const before = useRef(pxPerMm);
  const about = useRef<Between | null>(null);

  useLayoutEffect(() => {
    shown.value = pxPerMm;
    // What was between the fingers stays there; else what was in the middle.
    const element = frame.current!;
    const k = pxPerMm / before.current;
    if (about.current && element.firstElementChild) {
      const { at, of } = about.current;
      const [frameBox, ground] = [element.getBoundingClientRect(), element.firstElementChild.getBoundingClientRect()];
      element.scrollLeft += ground.left + of[0] * ground.width - frameBox.left - at[0];
      element.scrollTop += ground.top + of[1] * ground.height - frameBox.top - at[1];
    } else if (k !== 1) {
      element.scrollLeft = (element.scrollLeft + element.clientWidth / 2) * k - element.clientWidth / 2;
      element.scrollTop = (element.scrollTop + element.clientHeight / 2) * k - element.clientHeight / 2;
    }
    about.current = null;
    before.current = pxPerMm;
  }, [pxPerMm]);

  useLayoutEffect(() => {
    const element = frame.current;
    if (!lookAt || !element) return;
    element.scrollTo({
      left: (lookAt[0] - box.minX) * pxPerMm - element.clientWidth / 2,
      top: (lookAt[1] - box.minY) * pxPerMm - element.clientHeight / 2,
    });
  }, [lookAt, pxPerMm]);

  useLayoutEffect(() => {
    const element = frame.current!;
    let near = 0;
    const letGo = [
      followPinch(element, (factor, from, to) => {
        // Several moves may come before the page is drawn again.
        near = clamp((zoom.peek() === near ? near : shown.peek()) * factor);
        // As near or as far as it goes.
        if (near === shown.peek()) return;
        const [frameBox, ground] = [element, element.firstElementChild ?? element].map((one) => one.getBoundingClientRect());
        // Until the page is drawn again it is the same part of the drawing that is held.
        about.current = {
          at: to,
          of: about.current?.of ?? [
            (frameBox.left + from[0] - ground.left) / ground.width,
            (frameBox.top + from[1] - ground.top) / ground.height,
          ],
        };
        zoom.value = near;
      }),
      holdStill(element),
    ];
    return () => letGo.forEach((off) => off());
  }, []);

  return (
    <div class={`zoom-view${wish === 'fit' ? ' zoom-fit' : ''}`} ref={frame} tabindex={0} role="region" aria-label={label}>
      {width > 0 && (
        <div class="zoom-ground" style={{ width: `${widthMm * pxPerMm}px`, height: `${heightMm * pxPerMm}px` }}>
          {below?.(pxPerMm)}
          <svg
            class="zoom-drawing"
            width={widthMm * pxPerMm}
            height={heightMm * pxPerMm}
            viewBox={`${box.minX} ${box.minY} ${widthMm} ${heightMm}`}
            role="group"
            aria-label={label}
          >
            {children(pxPerMm)}
          </svg>
        </div>
      )}
    </div>
  );
}

/** Nearer, farther, all of it, true size. */
export function ZoomBar({ zoom, shown }: { readonly zoom: Signal<Zoom>; readonly shown: Signal<number> }) {
  const w = words().sheet;
  const scale = screenScale.value;
  const percent = Math.round((shown.value / scale.pxPerMm) * 100);
  return (
    <div class="zoom-bar" role="group" aria-label={w.zoom}>
      <button
        type="button"
        class="button zoom-step"
        aria-label={w.farther}
        onClick={() => {
          zoom.value = clamp(shown.value / 1.4);
        }}
      >
        −
      </button>
      <span class="zoom-percent">{w.percent(percent)}</span>
      <button
        type="button"
        class="button zoom-step"
        aria-label={w.nearer}
        onClick={() => {
          zoom.value = clamp(shown.value * 1.4);
        }}
      >
        +
      </button>
      <button
        type="button"
        class="button"
        aria-pressed={zoom.value === 'fit'}
        onClick={() => {
          zoom.value = 'fit';
        }}
      >
        {w.fit}
      </button>
      <button
        type="button"
        class="button"
        aria-pressed={zoom.value === 'true'}
        onClick={() => {
          zoom.value = 'true';
        }}
      >
        {w.trueSize}
      </button>
    </div>
  );
}
