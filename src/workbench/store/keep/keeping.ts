import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { canonical, type JobBundle } from '../../../core/job/index.ts';
import type { Bench } from '../bench.ts';
import { fingerprint, isOnePrint, stepAside, type Keeper, type KeptPrint, type KeptVersion, type Snapshot } from './keep.ts';
import type { BenchLock } from './lock.ts';
import { askForStorage } from './persist.ts';
import { words } from '../words.ts';

export type KeptState = 'kept' | 'keeping' | 'denied' | 'full' | 'other-tab';

export interface Keeping {
  readonly state: ReadonlySignal<KeptState>;
  /** Of the print on the bench; and those from before there were prints. */
  readonly versions: ReadonlySignal<readonly KeptVersion[]>;
  /** One's prints, as they were when `look` last looked. */
  readonly prints: ReadonlySignal<readonly KeptPrint[]>;
  /** Which of them is on the bench. */
  readonly print: ReadonlySignal<string>;
  /** Marks what is on the bench as opened from a served file (its fingerprint) or from elsewhere (null); which print it is, another one unless said. */
  opened(servedPrint: string | null, changed: boolean, as?: { readonly print?: string; readonly own?: boolean }): void;
  /** Hangs prints on the wall that do not hang there yet; how many those were. */
  hang(prints: readonly JobBundle[]): Promise<number>;
  /** Looks again at what is kept. */
  look(): Promise<void>;
  keepVersion(name: string): Promise<void>;
  /** Nothing is lost if the page goes away now: it is written, or nothing was done to it. */
  isSafe(): boolean;
  /** Nothing was done to what lies on the bench, or it is in a file. */
  isUntouched(): boolean;
  /** Tells that the job as it is now was saved as a file. */
  savedAsFile(): void;
  /** Resolves when everything is written. */
  flush(): Promise<void>;
  /** Makes this tab the bench; what the other one held becomes a version where this one holds something else. */
  workHere(): Promise<void>;
  /** What lies on the bench goes back to one's prints, before another takes its place. Rejects where there is no room for it. */
  makeWay(): Promise<void>;
}

/** Time between two writes while a slider is dragged: a killed tab loses no more than this. */
const restMs = 150;

function whyNot(error: unknown): 'full' | 'denied' {
  return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'denied';
}

/**
 * Writes the bench to the browser's storage at every change, the newest only. A tab that is not the bench writes what is done there aside, under its
 * own name; when it becomes the bench, it shows what the other tab left, or, where something was done here meanwhile, puts that among the versions.
 */
export function keepSaved(bench: Bench, keeper: Keeper, lock: BenchLock): Keeping {
  const state = signal<KeptState>('kept');
  const allVersions = signal<readonly KeptVersion[]>([]);
  const prints = signal<readonly KeptPrint[]>([]);
  const print = signal<string>(crypto.randomUUID());
  let own = false;
  let servedPrint: string | null = null;
  let changed = false;
  let opening = false;
  let inFile: unknown = null;
  let dirty = false;
  let running: Promise<void> | null = null;
  /** The job as it was opened, or as it last lay on the bench: what differs from it was done in this tab alone. */
  let base: unknown = null;
  let setAside: unknown = null;

  const snapshot = (): Snapshot | null => {
    const job = bench.job.peek();
    return job && { job, attachments: bench.attachments.peek(), servedPrint, changed, print: print.peek(), own };
  };

  async function run(): Promise<void> {
    while (dirty) {
      dirty = false;
      const now = snapshot();
      if (!now) continue;
      await lock.known;
      if (lock.holds.peek() === false) {
        await keepAside(now);
        if (dirty) await rest();
        continue;
      }
      state.value = 'keeping';
      try {
        await keeper.keep(now);
        base = now.job;
        if (changed) askForStorage();
        // A change that came meanwhile is not written yet.
        state.value = dirty ? 'keeping' : 'kept';
      } catch (error) {
        state.value = whyNot(error);
      }
      if (dirty) await rest();
    }
    running = null;
  }

  const rest = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, restMs));

  async function keepAside(now: Snapshot): Promise<void> {
    try {
      if (now.job !== base) await keeper.keepAside(lock.tab, now);
      setAside = now.job;
      state.value = 'other-tab';
    } catch (error) {
      state.value = whyNot(error);
    }
  }

  /** This tab has become the bench. */
  async function become(): Promise<void> {
    await flush();
    const [kept, mine] = [await keeper.kept(), snapshot()];
    if (kept && !(await isSame(kept, mine))) {
      if (mine && mine.job !== base) {
        if (isOnePrint(kept, mine)) {
          await keeper.keepVersion({ name: kept.job.title, otherTab: true }, { ...kept, print: print.peek() });
          bench.announce(words().shell.hereNowBoth(words().shell.fromOtherTab(kept.job.title)));
        } else {
          await keeper.keepPrint(kept);
          bench.announce(words().prints.hereNowBoth(kept.job.title));
        }
      } else {
        servedPrint = kept.servedPrint;
        changed = kept.changed;
        print.value = kept.print ?? print.peek();
        own = kept.own ?? false;
        opening = true;
        bench.put({ job: kept.job, attachments: kept.attachments });
        bench.announce(words().shell.hereNow);
      }
    } else bench.announce(words().shell.hereNow);
    dirty = true;
    running ??= run();
    await flush();
    await keeper.dropAside(lock.tab);
  }

  const flush = async (): Promise<void> => {
    while (running) await running;
  };

  let was: boolean | null = null;
  effect(() => {
    const holds = lock.holds.value;
    if (holds === true && was === false)
      void become()
        .then(gatherAsides)
        .catch((error: unknown) => {
          state.value = whyNot(error);
        });
    if (holds === false && was === true) {
      base = bench.job.peek();
      state.value = 'other-tab';
    }
    was = holds;
  });
  lock.beforeHandingOver(flush);

  /** What was done in tabs that are closed by now, and never came to the bench, becomes a version each. */
  async function gatherAsides(): Promise<void> {
    for (const tab of await keeper.tabsAside()) if (tab !== lock.tab && !(await lock.isOpen(tab))) await keeper.keepAsideAsVersion(tab);
    await look();
  }

  effect(() => {
    if (!bench.job.value || !bench.attachments.value) return;
    if (opening) base = bench.job.peek();
    else changed = true;
    opening = false;
    dirty = true;
    if (state.peek() === 'kept') state.value = 'keeping';
    running ??= run();
  });

  const look = async (): Promise<void> => {
    try {
      allVersions.value = await keeper.versions();
      prints.value = await keeper.prints();
    } catch (error) {
      state.value = whyNot(error);
    }
  };
  void look();
  void lock.known.then((holds) => (holds ? gatherAsides() : undefined)).catch(() => undefined);

  return {
    state,
    versions: computed(() => allVersions.value.filter((v) => v.print === undefined || v.print === print.value)),
    prints,
    print,
    look,
    opened(served, wasChanged, as = {}) {
      servedPrint = served;
      changed = wasChanged;
      print.value = as.print ?? crypto.randomUUID();
      own = as.own ?? false;
      opening = true;
    },
    async hang(bundles) {
      const there = await Promise.all((await keeper.prints()).map(({ print: id }) => keeper.print(id)));
      let hung = 0;
      for (const { job, attachments } of bundles) {
        const one: Snapshot = { job, attachments, servedPrint: null, changed: false, own: true };
        const same = await Promise.all(there.map((other) => other !== null && isSame(other, one)));
        if (same.includes(true)) continue;
        await keeper.keepPrint(one);
        hung++;
      }
      await look();
      return hung;
    },
    async keepVersion(name) {
      const now = snapshot();
      if (!now) return;
      await keeper.keepVersion({ name }, now);
      await look();
    },
    isSafe() {
      const job = bench.job.peek();
      if (job === null || job === inFile || state.peek() === 'kept' || !changed) return true;
      return state.peek() === 'other-tab' && (job === setAside || job === base);
    },
    isUntouched: () => !changed || bench.job.peek() === inFile,
    savedAsFile() {
      inFile = bench.job.peek();
    },
    flush,
    workHere: () => lock.take(),
    async makeWay() {
      if (lock.holds.peek() === false) await keeper.keepAsideAsVersion(lock.tab);
      else await stepAside(keeper, await keeper.kept());
      await look();
    },
  };
}

async function isSame(kept: Snapshot, mine: Snapshot | null): Promise<boolean> {
  if (!mine || kept.attachments.size !== mine.attachments.size || canonical(kept.job) !== canonical(mine.job)) return false;
  for (const [path, bytes] of kept.attachments) {
    const own = mine.attachments.get(path);
    if (!own || (await fingerprint(own)) !== (await fingerprint(bytes))) return false;
  }
  return true;
}
