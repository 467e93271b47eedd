import { signal, type ReadonlySignal } from '@preact/signals';

/** Whether the browser promises to keep what it was given: null until it was asked, false in private windows and wherever it won't. */
const promised = signal<boolean | null>(null);
export const storagePromised: ReadonlySignal<boolean | null> = promised;
let asked = false;

/** Asks once, when there is something to keep: some browsers ask the person in turn. */
export function askForStorage(): void {
  if (asked || !navigator.storage?.persist) return;
  asked = true;
  void navigator.storage.persist().then(
    (yes) => {
      promised.value = yes;
    },
    () => {
      promised.value = false;
    },
  );
}
