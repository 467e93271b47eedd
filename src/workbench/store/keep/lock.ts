import { signal, type ReadonlySignal } from '@preact/signals';

/** Which tab is the bench: one writes what lies there, the others wait for it. */
export interface BenchLock {
  /** Null until it is known. */
  readonly holds: ReadonlySignal<boolean | null>;
  /** Whether this tab was the bench when the page opened. */
  readonly known: Promise<boolean>;
  /** Tells this tab apart from all others, closed ones too. */
  readonly tab: string;
  /** Makes this tab the bench. The one that was writes down what it has first; one that doesn't answer is not waited for long. */
  take(): Promise<void>;
  /** What is done before another tab becomes the bench. */
  beforeHandingOver(work: () => Promise<void>): void;
  /** Whether a tab is still open. */
  isOpen(tab: string): Promise<boolean>;
}

type Note = { readonly kind: 'hand-over' | 'handed-over'; readonly tab: string };

/** A tab that sleeps or hangs answers nothing. */
const answerMs = 2000;

/** Browsers without locks: every tab takes itself for the bench, as there is no telling. */
export function holdBench(name = 'laydown-bench'): BenchLock {
  const holds = signal<boolean | null>(null);
  const tab = crypto.randomUUID();
  if (!('locks' in navigator)) {
    holds.value = true;
    return { holds, known: Promise.resolve(true), tab, take: async () => undefined, beforeHandingOver() {}, isOpen: async () => false };
  }
  const { locks } = navigator;
  const channel = new BroadcastChannel(name);
  const nameOf = (one: string): string => `${name} tab ${one}`;
  const forever = new Promise<never>(() => undefined);
  let before: () => Promise<void> = async () => undefined;
  let waiting: AbortController | null = null;

  const have = (): Promise<never> => {
    holds.value = true;
    return forever;
  };
  /** Stands in line; comes back when the lock was taken away. */
  const wait = (): void => {
    waiting = new AbortController();
    void locks.request(name, { signal: waiting.signal }, have).catch(lost);
  };
  const lost = (error: unknown): void => {
    // Called off by this tab itself, because it takes the lock another way.
    if (waiting?.signal.aborted && error instanceof DOMException && error.name === 'AbortError' && holds.peek() !== true) return;
    holds.value = false;
    wait();
  };
  void locks.request(nameOf(tab), () => forever).catch(() => undefined);
  const known = new Promise<boolean>((resolve) => {
    locks
      .request(name, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        if (lock) return have();
        holds.value = false;
        wait();
        return undefined;
      })
      .catch((error: unknown) => {
        resolve(true);
        lost(error);
      });
  });
  channel.addEventListener('message', ({ data }: MessageEvent<Note>) => {
    if (data.kind !== 'hand-over' || holds.peek() !== true) return;
    void before().finally(() => {
      holds.value = false;
      channel.postMessage({ kind: 'handed-over', tab: data.tab } satisfies Note);
    });
  });

  return {
    holds,
    known,
    tab,
    async take() {
      if (holds.peek() === true) return;
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, answerMs);
        channel.addEventListener('message', function heard({ data }: MessageEvent<Note>) {
          if (data.kind !== 'handed-over' || data.tab !== tab) return;
          clearTimeout(timer);
          channel.removeEventListener('message', heard);
          resolve();
        });
        channel.postMessage({ kind: 'hand-over', tab } satisfies Note);
      });
      waiting?.abort();
      void locks.request(name, { steal: true }, have).catch(lost);
    },
    beforeHandingOver(work) {
      before = work;
    },
    async isOpen(one) {
      const { held } = await locks.query();
      return held?.some((lock) => lock.name === nameOf(one)) ?? false;
    },
  };
}
