import { signal } from '@preact/signals';

/** Which part is laid open; kept while other stations are looked at. */
export const openPart = signal('sheets');

/** Before going to the edition from the press: the pencil. */
export function lookAtSigning(): void {
  openPart.value = 'signing';
}
