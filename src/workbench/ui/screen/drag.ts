import { twoFingers } from './pinch.ts';

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
  const edges = scrollAtEdges(held.closest<HTMLElement>('.zoom-view'), from, (event) => {
    last = mmAt(inside, event.clientX, event.clientY);
    onMove(last, event);
  });
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== e.pointerId) return;
    if (!moved && Math.hypot(event.clientX - from[0], event.clientY - from[1]) < slackPx) return;
    moved = true;
    last = mmAt(inside, event.clientX, event.clientY);
    onMove(last, event);
    edges.at(event);
  };
  const view = held.closest('.zoom-view');
  const end = (event: PointerEvent): void => {
    if (event.pointerId === e.pointerId) letGo(event.type === 'pointercancel');
  };
  const drop = (): void => letGo(true);
  const letGo = (cancelled: boolean): void => {
    edges.stop();
    view?.removeEventListener(twoFingers, drop);
    held.removeEventListener('pointermove', move as EventListener);
    held.removeEventListener('pointerup', end as EventListener);
    held.removeEventListener('pointercancel', end as EventListener);
    onEnd(last, { moved, cancelled });
  };
  view?.addEventListener(twoFingers, drop);
  held.addEventListener('pointermove', move as EventListener);
  held.addEventListener('pointerup', end as EventListener);
  held.addEventListener('pointercancel', end as EventListener);
}

/** So near to its edge, or past it, what is carried pulls the view along. */
const edgePx = 28;
const mostPxAFrame = 22;

/**
 * A view that is zoomed scrolls while something is held at its edge, faster the farther out; `onScroll` hears of it with the last
 * place of the pointer. Only towards where the hand has gone: what was taken up at an edge can be moved there in peace.
 */
function scrollAtEdges(
  view: HTMLElement | null,
  from: readonly [number, number],
  onScroll: (e: PointerEvent) => void,
): { at(e: PointerEvent): void; stop(): void } {
  let frame = 0;
  let now: PointerEvent | null = null;
  const pull = (at: number, began: number, low: number, high: number): number => {
    const past = at > high - edgePx && at > began ? at - (high - edgePx) : at < low + edgePx && at < began ? at - (low + edgePx) : 0;
    return Math.max(-mostPxAFrame, Math.min(mostPxAFrame, past / 3));
  };
  const step = (): void => {
    frame = 0;
    if (!view || !now || view.classList.contains('zoom-fit')) return;
    const box = view.getBoundingClientRect();
    // A view that is higher than the window ends, for the hand, where the window does.
    const dx = pull(now.clientX, from[0], Math.max(0, box.left), Math.min(innerWidth, box.right));
    const dy = pull(now.clientY, from[1], Math.max(0, box.top), Math.min(innerHeight, box.bottom));
    if (dx === 0 && dy === 0) return;
    const [left, top] = [view.scrollLeft, view.scrollTop];
    view.scrollBy({ left: dx, top: dy, behavior: 'instant' });
    if (view.scrollLeft !== left || view.scrollTop !== top) onScroll(now);
    frame = requestAnimationFrame(step);
  };
  return {
    at(e) {
      now = e;
      if (frame === 0 && view) frame = requestAnimationFrame(step);
    },
    stop() {
      now = null;
      cancelAnimationFrame(frame);
    },
  };
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
