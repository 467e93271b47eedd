import type { RefObject } from 'preact';
import type { Box } from '../../../../core/form/index.ts';
import { carry, mmAt } from '../../../ui/screen/drag.ts';
import { scalePart, turnPart, within, type PartInHand } from './place.ts';
import { catching, draft } from '../state.ts';

interface Props extends PartInHand {
  readonly ground: RefObject<SVGGElement | null>;
  readonly pxPerMm: number;
  /** All that is in sight: the ring's knobs stay on it. */
  readonly whole: Box;
}

/** Turning is caught at every 15° within this. */
const catchDeg = 2.5;
/** The two knobs never come nearer than a finger. */
const leastRadiusPx = 36;

/**
 * A protractor laid on the form in hand, its needle in the middle: the knob at the needle's end goes round to turn it, the
 * one beside it in and out to size it. Keys and numbers do the same, so this is for pointers only.
 */
export function PartHandles({ ground, pxPerMm, whole, ...hand }: Props) {
  const { part, form, index } = hand;
  const shown = draft.value?.part === index ? draft.value.placed : part;
  const px = 1 / pxPerMm;
  const middle = [shown.xMm, shown.yMm] as const;
  const far = ([x, y]: readonly [number, number]): number => Math.hypot(x - middle[0], y - middle[1]);
  const radius = Math.max(
    leastRadiusPx * px,
    Math.min(
      (Math.hypot(form.widthMm, form.heightMm) / 2) * shown.scale + 10 * px,
      ...[-90, 0].map((knob) => roomTo(whole, middle, shown.angleDeg + knob, 10 * px)),
    ),
  );

  const size = (e: PointerEvent): void => {
    if (!ground.current) return;
    const first = Math.max(px, far(mmAt(ground.current, e.clientX, e.clientY)));
    carry(e, ground.current, {
      onMove(now) {
        draft.value = { part: index, placed: { ...part, scale: Math.max(0.01, (part.scale * far(now)) / first) } };
      },
      onEnd(_now, how) {
        const put = draft.peek()?.placed.scale;
        if (how.moved && !how.cancelled && put !== undefined) scalePart(hand, put);
        draft.value = null;
      },
    });
  };
  const turn = (e: PointerEvent): void => {
    if (!ground.current) return;
    carry(e, ground.current, {
      onMove(now, event) {
        const angle = within((Math.atan2(now[1] - middle[1], now[0] - middle[0]) * 180) / Math.PI + 90);
        const near = Math.round(angle / 15) * 15;
        draft.value = {
          part: index,
          placed: { ...part, angleDeg: catching.peek() && !event.altKey && Math.abs(angle - near) < catchDeg ? within(near) : angle },
        };
      },
      onEnd(_now, how) {
        const put = draft.peek()?.placed.angleDeg;
        if (how.moved && !how.cancelled && put !== undefined) turnPart(hand, put);
        draft.value = null;
      },
    });
  };
  const knob = (x: number, y: number, kind: 'size' | 'turn', onPointerDown: (e: PointerEvent) => void) => (
    <g class={`grip-${kind}`} transform={`translate(${x} ${y}) scale(${px})`} onPointerDown={onPointerDown} data-grip={kind}>
      <circle class="grip-reach" r="22" />
      {kind === 'turn' ? <circle class="grip-mark" r="9" /> : <path class="grip-mark" d="M-12 0L-2 -8V8ZM12 0L2 -8V8Z" />}
    </g>
  );
  const needle = `M0 ${-6 * px}V${6 * px}M${-6 * px} 0H${6 * px}M0 ${-8 * px}V${-radius}`;
  return (
    <g class="part-ring" aria-hidden="true">
      <g transform={`translate(${middle[0]} ${middle[1]})`}>
        <circle class="ring-halo" r={radius} />
        <circle class="ring-line" r={radius} />
        <path class="ring-line" d={ticks(radius, px)} />
      </g>
      <g transform={`translate(${middle[0]} ${middle[1]}) rotate(${shown.angleDeg})`}>
        <path class="ring-halo" d={needle} />
        <path class="ring-line" d={needle} />
        {knob(radius, 0, 'size', size)}
        {knob(0, -radius, 'turn', turn)}
      </g>
    </g>
  );
}

/** Where turning catches: a mark every 15°, longer at right angles. */
function ticks(radius: number, px: number): string {
  return Array.from({ length: 24 }, (_, i) => {
    const [x, y] = [Math.sin((i * Math.PI) / 12), -Math.cos((i * Math.PI) / 12)];
    const inner = radius - (i % 6 === 0 ? 12 : 6) * px;
    return `M${x * radius} ${y * radius}L${x * inner} ${y * inner}`;
  }).join('');
}

/** How far it is from a point, in a direction, to `short` of the edge of a box; 0 outside of it. */
function roomTo(box: Box, [x, y]: readonly [number, number], degrees: number, short: number): number {
  const [dx, dy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const along = (at: number, d: number, low: number, high: number): number =>
    Math.abs(d) < 1e-9 ? Infinity : ((d > 0 ? high - short : low + short) - at) / d;
  return Math.max(0, Math.min(along(x, dx, box.minX, box.maxX), along(y, dy, box.minY, box.maxY)));
}
