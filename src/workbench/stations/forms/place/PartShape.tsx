import type { RefObject } from 'preact';
import { carry, mmAt } from '../../../ui/screen/drag.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import { words } from '../../../store/words.ts';
import { copiesOf, movePart, partKey, type PartInHand } from './place.ts';
import { partBox, reachPx, snapBox, type SnapLines } from './snap.ts';
import { catching, draft, inHand, met, shownPxPerMm, takePart } from '../state.ts';

interface Props extends PartInHand {
  readonly ground: RefObject<SVGGElement | null>;
  /** Lines to catch on, of everything but this part. */
  readonly lines: () => SnapLines;
}

/** One form on the cut in hand, with its copies. It follows the pointer; the Plan follows when it is let go. */
export function PartShape({ ground, lines, ...hand }: Props) {
  const { bench, part, form, index } = hand;
  const w = words().forms;
  const job = bench.job.value!;
  const carried = draft.value?.part === index ? draft.value.placed : null;
  const held = inHand.value.part === index;

  const onPointerDown = (e: PointerEvent): void => {
    if (!ground.current || e.button !== 0) return;
    takePart(index);
    (e.currentTarget as SVGElement).focus({ preventScroll: true });
    const start = part;
    const box = partBox(form, start);
    const near = lines();
    const from = mmAt(ground.current, e.clientX, e.clientY);
    carry(e, ground.current, {
      onMove(now, event) {
        const dx = now[0] - from[0],
          dy = now[1] - from[1];
        const moved = { minX: box.minX + dx, maxX: box.maxX + dx, minY: box.minY + dy, maxY: box.maxY + dy };
        const snapped =
          event.altKey || !catching.peek() || start.repeat?.kind === 'scatter'
            ? { dxMm: 0, dyMm: 0, x: null, y: null }
            : snapBox(moved, near, reachPx / shownPxPerMm.peek());
        met.value = { x: snapped.x, y: snapped.y };
        draft.value = { part: index, placed: { ...start, xMm: start.xMm + dx + snapped.dxMm, yMm: start.yMm + dy + snapped.dyMm } };
      },
      onEnd(_now, { moved, cancelled }) {
        const put = draft.peek()?.placed;
        met.value = { x: null, y: null };
        if (moved && !cancelled && put) movePart(hand, put.xMm, put.yMm);
        draft.value = null;
      },
    });
  };

  const shown = carried ?? part;
  const say = (mm: number): string => sayLength(mm, job.units);
  return (
    <g
      class={`placed placed-${part.how}${held ? ' placed-held' : ''}${carried ? ' placed-carried' : ''}`}
      data-placed={index}
      tabindex={0}
      role="button"
      aria-pressed={held}
      aria-label={w.partLabel(form.name, w.how[part.how], say(part.xMm), say(part.yMm), say(10), say(0.1))}
      onPointerDown={onPointerDown}
      onKeyDown={(e) => {
        partKey(hand, e);
      }}
      onFocus={() => {
        if (inHand.peek().part !== index) takePart(index);
      }}
      onBlur={() => bench.settle()}
    >
      {copiesOf(shown, form, job.image).map((transform, i) => (
        <use key={i} href={`#form-${form.id}`} transform={transform} />
      ))}
    </g>
  );
}
