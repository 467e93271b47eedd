import { signal } from '@preact/signals';

/** Which part is laid open; kept while other stations are looked at. */
export const openPart = signal('screen');

/** Before going to the press from elsewhere: its papers laid open. */
export function lookAtPapers(): void {
  openPart.value = 'papers';
}
