import { computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { addLogLines, foldLog, logLine, readLog, type CountEvent, type CountState, type Fault } from '../../../../core/edition/index.ts';
import type { Job } from '../../../../core/job/index.ts';
import { countLogName } from '../../../../core/plan/index.ts';
import type { Bench } from '../../../store/bench.ts';
import { openCountKeep, type CountKeep } from './count-keep.ts';

/** An event before the clock and the undo's number are put to it. */
export type Tap =
  | { readonly kind: 'pull' | 'spoil'; readonly run: string; readonly sheet: string }
  | ({ readonly kind: 'note'; readonly run: string; readonly sheet: string } & Fault)
  | { readonly kind: 'undo'; readonly run: string };

export interface Count {
  readonly state: ReadonlySignal<CountState>;
  /** False until what was counted before has been read. */
  readonly ready: ReadonlySignal<boolean>;
  readonly writing: ReadonlySignal<boolean>;
  readonly kept: ReadonlySignal<'both' | 'one' | 'not'>;
  readonly damaged: ReadonlySignal<number>;
  /** Writes a tap down; true once it is on this machine. `state` changes only then. One at a time: false while another is under way. */
  tap(tap: Tap): Promise<boolean>;
  /** All that was counted, a line an event. */
  readonly lines: ReadonlySignal<readonly string[]>;
  /** Writes down what another device counted, as if it had been counted here. */
  takeIn(print: string, lines: readonly string[]): Promise<void>;
  /** What tells this count from those of other prints. */
  readonly print: ReadonlySignal<string | null>;
  /** Puts the count so far away, beside the job and on this machine, and begins a new one. */
  startOver(): Promise<void>;
}

const counts = new WeakMap<Bench, Count>();

/** The count of the job on this bench. It is read once, and follows when another job is put there. */
export function countOf(bench: Bench): Count {
  let count = counts.get(bench);
  if (!count) counts.set(bench, (count = createCount(bench, openCountKeep(), () => new Date().toISOString())));
  return count;
}

/**
 * What tells jobs apart between a tap and the moment the job itself is kept with its count. One made before prints had
 * an identity goes by what it looks like, and where it is renamed has its count beside it by then.
 */
function jobName(job: Job): string {
  if (job.print !== undefined) return job.print;
  return JSON.stringify([
    job.title,
    job.image.widthMm,
    job.image.heightMm,
    job.layers.map((l) => l.id).sort(),
    job.papers.map((p) => p.id).sort(),
  ]);
}

export function createCount(bench: Pick<Bench, 'job' | 'attachments' | 'carry'>, keep: CountKeep, clock: () => string): Count {
  const text = signal('');
  const ready = signal(false);
  const writing = signal(false);
  const kept = signal<'both' | 'one' | 'not'>('both');
  const read = computed(() => readLog(text.value));
  const state = computed(() => foldLog(read.value.events));
  const name = computed(() => (bench.job.value ? jobName(bench.job.value) : null));
  const beside = computed(() => new TextDecoder().decode(bench.attachments.value.get(countLogName) ?? new Uint8Array()));
  const news = 'BroadcastChannel' in globalThis ? new BroadcastChannel('laydown-press') : null;
  let reading = 0;

  /** All that is known of this job's count: what lies beside the job, and what this machine wrote down. */
  async function gather(): Promise<void> {
    const mine = ++reading;
    const job = name.peek();
    if (job === null) return void (ready.value = false);
    const { lines, all } = await keep.linesOf(job);
    if (mine !== reading) return;
    if (!all) kept.value = 'one';
    const whole = addLogLines(beside.peek(), lines);
    text.value = whole;
    ready.value = true;
    if (whole !== beside.peek()) carry();
  }
  function carry(): void {
    bench.carry(countLogName, new TextEncoder().encode(text.peek()));
  }

  effect(() => {
    void name.value;
    // What was just written here comes back the same: nothing to read.
    if (beside.value !== text.peek() || !ready.peek()) void gather();
  });
  news?.addEventListener('message', () => void gather());

  return {
    state,
    ready,
    writing,
    kept,
    damaged: computed(() => read.value.damaged),
    async tap(tap) {
      const job = name.peek();
      if (writing.peek() || !ready.peek() || job === null) return false;
      const event = eventOf(tap, state.peek(), clock());
      if (!event) return false;
      writing.value = true;
      try {
        const line = logLine(read.peek().nextNumber, event);
        kept.value = await keep.write(job, line.trimEnd());
        text.value = text.peek() + read.peek().joint + line;
        carry();
        news?.postMessage(null);
        return true;
      } catch {
        kept.value = 'not';
        return false;
      } finally {
        writing.value = false;
      }
    },
    lines: computed(() => text.value.split('\n').filter((line) => line !== '')),
    print: name,
    async takeIn(print, lines) {
      const job = name.peek();
      if (job === null || job !== print || !ready.peek()) return;
      const there = new Set(text.peek().split('\n'));
      let came = false;
      for (const line of lines) {
        if (there.has(line) || readLog(line).events.length !== 1) continue;
        kept.value = await keep.write(job, line);
        came = true;
      }
      if (!came) return;
      await gather();
      news?.postMessage(null);
    },
    async startOver() {
      const job = name.peek();
      if (job === null || text.peek() === '') return;
      const taken = [...bench.attachments.peek().keys()].filter((path) => /^press-count-\d+\.log$/.test(path)).length;
      bench.carry(`press-count-${taken + 1}.log`, new TextEncoder().encode(text.peek()));
      await keep.putAway(job, `${job} ${taken + 1}`);
      text.value = '';
      carry();
      news?.postMessage(null);
    },
  };
}

/** An undo takes back the last event of its run that still stands; null when there is none. */
function eventOf(tap: Tap, state: CountState, at: string): CountEvent | null {
  if (tap.kind !== 'undo') return { ...tap, at };
  const last = state.standing.filter(({ event }) => event.run === tap.run).at(-1);
  return last ? { kind: 'undo', run: tap.run, sheet: last.event.sheet, at, of: last.number } : null;
}
