import { signal } from '@preact/signals';

/** Two taps nearer than this are one finger that slipped (common practice of touch screens: a double tap is 300 ms at most). */
const slipMs = 300;
const place = 'laydown-two-taps';

function recall(): boolean {
  try {
    return localStorage.getItem(place) !== 'off';
  } catch {
    return true;
  }
}

/** Whether two quick taps count once. Of this device. */
export const guarded = signal(recall());

export function setGuarded(on: boolean): void {
  guarded.value = on;
  try {
    localStorage.setItem(place, on ? 'on' : 'off');
  } catch {
    // It holds until the page is closed.
  }
}

let lastMs = -Infinity;

/** Whether a press of a counting button is the echo of the one before. Keys are never taken for one. */
export function isEcho(event: MouseEvent): boolean {
  // Where it came from is told by browsers that send pointer events; a key has no clicks to count.
  const byKey = event.detail === 0;
  const echo =
    guarded.peek() &&
    !byKey &&
    (event.detail > 1 || ((event as PointerEvent).pointerType !== 'mouse' && event.timeStamp - lastMs < slipMs));
  lastMs = event.timeStamp;
  return echo;
}
