import { effect, signal, type ReadonlySignal } from '@preact/signals';
import type { Bench } from './bench.ts';
import type { Keeper, KeptVersion, Snapshot } from './keep.ts';

export type KeptState = 'kept' | 'keeping' | 'denied' | 'full' | 'other-tab';

export interface Keeping {
  readonly state: ReadonlySignal<KeptState>;
  readonly versions: ReadonlySignal<readonly KeptVersion[]>;
  /** Marks what is on the bench as opened from a served file (its fingerprint) or from elsewhere (null). */
  opened(servedPrint: string | null, changed: boolean): void;
  keepVersion(name: string): Promise<void>;
  /** Nothing is lost if the page goes away now: it is written, or nothing was done to it. */
  isSafe(): boolean;
  /** Tells that the job as it is now was saved as a file. */
  savedAsFile(): void;
  /** Resolves when everything is written. */
  flush(): Promise<void>;
}

/** Time between two writes while a slider is dragged: a killed tab loses no more than this. */
const restMs = 150;

function whyNot(error: unknown): 'full' | 'denied' {
  return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'denied';
}

/** Writes the bench to the browser's storage at every change, the newest only; a tab without the bench's lock leaves it alone. */
export function keepSaved(bench: Bench, keeper: Keeper, mayWrite: Promise<boolean>): Keeping {
  const state = signal<KeptState>('kept');
  const versions = signal<readonly KeptVersion[]>([]);
  let servedPrint: string | null = null;
  let changed = false;
  let opening = false;
  let inFile: unknown = null;
  let dirty = false;
  let running: Promise<void> | null = null;

  const snapshot = (): Snapshot | null => {
    const job = bench.job.peek();
    return job && { job, attachments: bench.attachments.peek(), servedPrint, changed };
  };

  async function run(): Promise<void> {
    while (dirty) {
      dirty = false;
      const now = snapshot();
      if (!now) continue;
      if (!(await mayWrite)) {
        state.value = 'other-tab';
        continue;
      }
      state.value = 'keeping';
      try {
        await keeper.keep(now);
        // A change that came meanwhile is not written yet.
        state.value = dirty ? 'keeping' : 'kept';
      } catch (error) {
        state.value = whyNot(error);
      }
      if (dirty) await new Promise((resolve) => setTimeout(resolve, restMs));
    }
    running = null;
  }

  effect(() => {
    if (!bench.job.value || !bench.attachments.value) return;
    if (!opening) changed = true;
    opening = false;
    dirty = true;
    if (state.peek() === 'kept') state.value = 'keeping';
    running ??= run();
  });

  const look = async (): Promise<void> => {
    try {
      versions.value = await keeper.versions();
    } catch (error) {
      state.value = whyNot(error);
    }
  };
  void look();

  return {
    state,
    versions,
    opened(print, wasChanged) {
      servedPrint = print;
      changed = wasChanged;
      opening = true;
    },
    async keepVersion(name) {
      const now = snapshot();
      if (!now) return;
      await keeper.keepVersion({ name }, now);
      await look();
    },
    isSafe() {
      const job = bench.job.peek();
      return job === null || job === inFile || state.peek() === 'kept' || !changed;
    },
    savedAsFile() {
      inFile = bench.job.peek();
    },
    flush: async () => {
      while (running) await running;
    },
  };
}
