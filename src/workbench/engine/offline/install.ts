import { signal, type ReadonlySignal } from '@preact/signals';

export interface Offline {
  /** Everything is kept: Laydown opens without a network from now on. */
  readonly ready: ReadonlySignal<boolean>;
  /** A newer Laydown is kept and waits. */
  readonly newer: ReadonlySignal<boolean>;
  /** The browser offers to put Laydown among the programs of this machine. */
  readonly canInstall: ReadonlySignal<boolean>;
  install(): void;
  /** Goes over to the newer Laydown: `beforehand` first, then the page loads again. */
  take(): void;
}

interface InstallOffer extends Event {
  prompt(): Promise<unknown>;
}

/**
 * Keeps Laydown on this machine once the page has `rested` after its start. A newer one is announced and waits until it is
 * taken; `beforehand` writes what lies on the bench and says whether it is safe.
 */
export function keepOffline(rested: Promise<void>, beforehand: () => Promise<boolean>): Offline {
  const ready = signal(false);
  const newer = signal(false);
  const offer = signal<InstallOffer | null>(null);
  const canInstall = signal(false);
  let waiting: ServiceWorker | null = null;

  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    offer.value = event as InstallOffer;
    canInstall.value = true;
  });

  const watch = (registration: ServiceWorkerRegistration): void => {
    const look = (): void => {
      if (registration.active) ready.value = true;
      waiting = registration.waiting;
      newer.value = waiting !== null && registration.active !== null;
    };
    const follow = (worker: ServiceWorker | null): void => worker?.addEventListener('statechange', look);
    registration.addEventListener('updatefound', () => follow(registration.installing));
    follow(registration.installing);
    look();
  };

  const container = import.meta.env.PROD && 'serviceWorker' in navigator ? navigator.serviceWorker : null;
  if (container) {
    const had = container.controller !== null;
    container.addEventListener('controllerchange', () => {
      // The first time, this page is of the very edition that was kept.
      if (had)
        void beforehand().then((safe) => {
          if (safe) location.reload();
        });
    });
    const begin = (): void => {
      container.register(new URL('sw.js', document.baseURI), { updateViaCache: 'none' }).then(watch, () => undefined);
    };
    void rested.then(begin);
  }

  return {
    ready,
    newer,
    canInstall,
    install() {
      void offer.value?.prompt();
      offer.value = null;
      canInstall.value = false;
    },
    take() {
      void beforehand().then((safe) => {
        if (safe) waiting?.postMessage('take');
      });
    },
  };
}
