/** Two fingers have come down on a view: what one of them was carrying goes back. */
export const twoFingers = 'two-fingers';

type Px = readonly [number, number];
/** `factor` since the last call; the middle between the fingers was at `from` and is at `to`, px from the element's corner. */
type ZoomBy = (factor: number, from: Px, to: Px) => void;

/** What one engine tells of a pinch on a touchpad; others send turns of the wheel with Control. */
interface GestureEvent extends UIEvent {
  readonly scale: number;
  readonly clientX: number;
  readonly clientY: number;
}

/** A drawing is brought nearer by a wheel with Control, by two fingers on the screen or on a touchpad; the page around it stays as it is. */
export function followPinch(element: HTMLElement, zoomBy: ZoomBy): () => void {
  const inside = (x: number, y: number): Px => {
    const box = element.getBoundingClientRect();
    return [x - box.left, y - box.top];
  };
  let apart = 0;
  let middle: Px = [0, 0];
  let scale = 1;
  const spread = ([a, b]: TouchList | readonly Touch[]): number => Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
  const touch = (e: TouchEvent): void => {
    if (e.touches.length !== 2) return void (apart = 0);
    if (e.cancelable) e.preventDefault();
    const now = spread(e.touches);
    const [a, b] = e.touches;
    const at = inside((a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2);
    if (apart === 0) element.dispatchEvent(new Event(twoFingers));
    else if (now > 0) zoomBy(now / apart, middle, at);
    middle = at;
    apart = now;
  };
  const wheel = (e: WheelEvent): void => {
    if (!e.ctrlKey && !e.metaKey) return;
    e.preventDefault();
    const at = inside(e.clientX, e.clientY);
    zoomBy(Math.exp(-e.deltaY / 300), at, at);
  };
  const gesture = (event: Event): void => {
    const e = event as GestureEvent;
    e.preventDefault();
    // Fingers on the screen are told as touches too.
    const at = inside(e.clientX, e.clientY);
    if (e.type !== 'gesturestart' && apart === 0) zoomBy(e.scale / scale, at, at);
    scale = e.type === 'gesturestart' ? 1 : e.scale;
  };
  const listeners: readonly (readonly [string, (e: never) => void])[] = [
    ['touchstart', touch],
    ['touchmove', touch],
    ['touchend', touch],
    ['touchcancel', touch],
    ['wheel', wheel],
    ['gesturestart', gesture],
    ['gesturechange', gesture],
  ];
  for (const [name, listener] of listeners) element.addEventListener(name, listener as EventListener, { passive: false });
  return () => {
    for (const [name, listener] of listeners) element.removeEventListener(name, listener as EventListener);
  };
}
