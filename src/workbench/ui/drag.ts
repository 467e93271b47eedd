/** A point on the sheet, mm from the image's top left corner. */
export type Mm = readonly [number, number];

/** Where an event happened, in the user units (mm) of an SVG element, whatever its zoom or mirroring. */
export function mmAt(element: SVGGraphicsElement, clientX: number, clientY: number): Mm {
  const matrix = element.getScreenCTM();
  if (!matrix) return [0, 0];
  const p = new DOMPoint(clientX, clientY).matrixTransform(matrix.inverse());
  return [p.x, p.y];
}

interface Carrying {
  /** Every move: where the pointer is now, and the event. */
  readonly onMove: (now: Mm, e: PointerEvent) => void;
  /** Let go. `moved` is false for a plain press; `cancelled` when the system took the pointer away. */
  readonly onEnd: (now: Mm, how: { readonly moved: boolean; readonly cancelled: boolean }) => void;
}

/** A hand's tremble on a touch screen is no move. */
const slackPx = 3;

/** Follows one pointer from its press until it is let go. `inside`: the element whose millimetres count. */
export function carry(e: PointerEvent, inside: SVGGraphicsElement, { onMove, onEnd }: Carrying): void {
  if (e.button !== 0) return;
  e.stopPropagation();
  const held = e.currentTarget as SVGElement | HTMLElement;
  held.setPointerCapture(e.pointerId);
  const from = [e.clientX, e.clientY] as const;
  let moved = false;
  let last = mmAt(inside, e.clientX, e.clientY);
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== e.pointerId) return;
    if (!moved && Math.hypot(event.clientX - from[0], event.clientY - from[1]) < slackPx) return;
    moved = true;
    last = mmAt(inside, event.clientX, event.clientY);
    onMove(last, event);
  };
  const end = (event: PointerEvent): void => {
    if (event.pointerId !== e.pointerId) return;
    held.removeEventListener('pointermove', move as EventListener);
    held.removeEventListener('pointerup', end as EventListener);
    held.removeEventListener('pointercancel', end as EventListener);
    onEnd(last, { moved, cancelled: event.type === 'pointercancel' });
  };
  held.addEventListener('pointermove', move as EventListener);
  held.addEventListener('pointerup', end as EventListener);
  held.addEventListener('pointercancel', end as EventListener);
}

/** Steps of the arrow keys in mm: 1, with Shift 10, with Alt 0.1; null for any other key. */
export function arrowStep(e: KeyboardEvent): Mm | null {
  const by = e.shiftKey ? 10 : e.altKey ? 0.1 : 1;
  if (e.key === 'ArrowLeft') return [-by, 0];
  if (e.key === 'ArrowRight') return [by, 0];
  if (e.key === 'ArrowUp') return [0, -by];
  if (e.key === 'ArrowDown') return [0, by];
  return null;
}

/**
 * A finger on something that can be carried must not scroll the page away with it: browsers take `touch-action` from a
 * whole SVG only, not from its parts. Returns what takes the listener off again.
 */
export function holdStill(element: HTMLElement | SVGElement): () => void {
  const hold = (e: Event): void => {
    if (e.cancelable && (e.target as Element).closest('.placed, .marker, .bridge, [data-grip]')) e.preventDefault();
  };
  element.addEventListener('touchstart', hold, { passive: false });
  return () => element.removeEventListener('touchstart', hold);
}
