import type { RefObject } from 'preact';
import { carry } from '../../ui/drag.ts';
import { scalePart, turnPart, within, type PartInHand } from './place.ts';
import { draft } from './state.ts';

interface Props extends PartInHand {
  readonly ground: RefObject<SVGGElement | null>;
  readonly pxPerMm: number;
}

/** Turning is caught at every 15° within this. */
const catchDeg = 2.5;

/** The frame around the part in hand: corners size it, the stalk turns it. Keys and numbers do the same, so these are for pointers only. */
export function PartHandles({ ground, pxPerMm, ...hand }: Props) {
  const { part, form, index } = hand;
  const shown = draft.value?.part === index ? draft.value.placed : part;
  const px = 1 / pxPerMm;
  const x = (form.widthMm * shown.scale) / 2 + 8 * px, y = (form.heightMm * shown.scale) / 2 + 8 * px;
  const middle = [shown.xMm, shown.yMm] as const;

  const size = (e: PointerEvent): void => {
    if (!ground.current) return;
    let first = 0;
    carry(e, ground.current, {
      onMove(now) {
        const far = Math.hypot(now[0] - middle[0], now[1] - middle[1]);
        first ||= far;
        draft.value = { part: index, placed: { ...part, scale: Math.max(0.01, (part.scale * far) / first) } };
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
        draft.value = { part: index, placed: { ...part, angleDeg: !event.altKey && Math.abs(angle - near) < catchDeg ? within(near) : angle } };
      },
      onEnd(_now, how) {
        const put = draft.peek()?.placed.angleDeg;
        if (how.moved && !how.cancelled && put !== undefined) turnPart(hand, put);
        draft.value = null;
      },
    });
  };
  const grip = (gx: number, gy: number, kind: 'size' | 'turn', onPointerDown: (e: PointerEvent) => void) => (
    <g class={`grip-${kind}`} transform={`translate(${gx} ${gy}) scale(${px})`} onPointerDown={onPointerDown} data-grip={kind}>
      <circle class="grip-reach" r="22" />
      {kind === 'size' ? <rect class="grip-mark" x="-7" y="-7" width="14" height="14" /> : <circle class="grip-mark" r="8" />}
    </g>
  );
  const stalk = y + 30 * px;
  return (
    <g class="part-frame" transform={`translate(${shown.xMm} ${shown.yMm}) rotate(${shown.angleDeg})`} aria-hidden="true">
      <path class="frame-line" d={`M${-x} ${-y}H${x}V${y}H${-x}ZM0 ${-y}V${-stalk}`} />
      {[[-x, -y], [x, -y], [x, y], [-x, y]].map(([gx, gy]) => grip(gx, gy, 'size', size))}
      {grip(0, -stalk, 'turn', turn)}
    </g>
  );
}
