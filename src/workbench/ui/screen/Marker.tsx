import type { ComponentChildren, RefObject } from 'preact';
import { arrowStep, carry, type Mm } from './drag.ts';

interface Props {
  readonly at: Mm;
  readonly label: string;
  readonly ground: RefObject<SVGGElement | null>;
  readonly pxPerMm: number;
  readonly onMove: (to: Mm, by: 'pointer' | 'key') => void;
  /** Let go by pointer, or after a key. */
  readonly onEnd?: (to: Mm, by: 'pointer' | 'key') => void;
  readonly onKey?: (e: KeyboardEvent) => void;
  readonly children?: ComponentChildren;
}

/** A cross on the sheet that pointer and arrow keys move. */
export function Marker({ at, label, ground, pxPerMm, onMove, onEnd, onKey, children }: Props) {
  return (
    <g
      class="marker"
      tabindex={0}
      role="button"
      aria-label={label}
      transform={`translate(${at[0]} ${at[1]}) scale(${1 / pxPerMm})`}
      onPointerDown={(e) => {
        if (!ground.current) return;
        (e.currentTarget as SVGElement).focus({ preventScroll: true });
        carry(e, ground.current, {
          onMove: (to) => onMove(to, 'pointer'),
          onEnd: (to, { moved, cancelled }) => {
            if (moved && !cancelled) onEnd?.(to, 'pointer');
          },
        });
      }}
      onKeyDown={(e) => {
        const by = arrowStep(e);
        if (!by) return onKey?.(e);
        e.preventDefault();
        const to = [Math.round((at[0] + by[0]) * 100) / 100, Math.round((at[1] + by[1]) * 100) / 100] as const;
        onMove(to, 'key');
        onEnd?.(to, 'key');
      }}
    >
      <circle class="grip-reach" r="22" />
      <path class="marker-halo" d="M-14 0H14M0 -14V14" />
      <path class="marker-cross" d="M-14 0H14M0 -14V14" />
      {children}
    </g>
  );
}
