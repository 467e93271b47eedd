import { batch, effect, signal, untracked, type ReadonlySignal } from '@preact/signals';
import type { Job } from '../../core/job/index.ts';
import type { Drawn } from '../../core/plan/index.ts';
import { problem, ProblemError, type Problem } from '../../core/problem.ts';
import { Cancelled } from '../../core/task.ts';
import { say, type Saying } from '../../words/one-language.ts';
import { breathe } from '../engine/breathe.ts';
import { faultsOf } from '../engine/faults.ts';
import { createUnpacker } from '../engine/parcel.ts';
import type { WorkerClient } from '../engine/client.ts';
import type { Ask, Attachments, ShownPlan } from '../engine/protocol.ts';
import { createQuick } from './quick.ts';

/** A pause of the hand after which the whole Plan is made. */
const restMs = 250;

/** How far what is shown belongs to the job: all of it, its colours (all else is made when the hand rests), or nothing. */
export type Fit = 'whole' | 'colours' | 'old';

/** What of a Plan is being made, and how far it is. */
export interface Making {
  readonly share: number;
  readonly what: Saying | null;
}

export interface Planning {
  /** The newest Plan, or the one before it while a new one is being worked out. */
  readonly plan: ReadonlySignal<ShownPlan | null>;
  /** The print as it is drawn, in the job's colours, until its first Plan is there. */
  readonly drawn: ReadonlySignal<Drawn | null>;
  readonly working: ReadonlySignal<boolean>;
  readonly fit: ReadonlySignal<Fit>;
  /** Null while nothing is made. */
  readonly making: ReadonlySignal<Making | null>;
  readonly failure: ReadonlySignal<readonly Problem[] | null>;
  /** Shows a Plan kept from before until the first one is made. */
  show(kept: ShownPlan): void;
  /** What is shown is of another print: it goes before the next is made. */
  forget(): void;
  /** Resolves when the Plan shown belongs to the newest job. Throws `ProblemError` when its making was stopped. */
  upToDate(): Promise<void>;
  /** Ends the making of a Plan that takes too long: what is in sight stays as it is, and is old, until the job changes or `goOn`. */
  stop(): void;
  readonly stopped: ReadonlySignal<boolean>;
  goOn(): void;
}

const stoppedByHand: Problem = problem(
  'warning',
  'plan-stopped',
  say('where.workbench'),
  say('engine.planStopped'),
  say('engine.planGoOn'),
);

/**
 * Keeps the Plan in step with the job. One question at a time is under way; when the job changes meanwhile only the newest
 * is asked for next, so a slider never builds up a queue.
 */
export function keepPlanned(
  client: WorkerClient,
  wanted: ReadonlySignal<{ readonly job: Job; readonly attachments: Attachments } | null>,
  inSight: ReadonlySignal<string | null>,
): Planning {
  const plan = signal<ShownPlan | null>(null);
  const drawn = signal<Drawn | null>(null);
  const working = signal(false);
  const fit = signal<Fit>('whole');
  const making = signal<Making | null>(null);
  /** Another print each time; a Plan that comes for one before is not shown. */
  let print = 0;
  const failure = signal<readonly Problem[] | null>(null);
  let unpacker = createUnpacker();
  let there: Attachments | null = null;
  let running: Promise<void> | null = null;
  let done: unknown = null;
  const stopped = signal(false);

  client.onRestart(() => {
    unpacker = createUnpacker();
    there = null;
    done = null;
  });

  const quick = createQuick();
  /** The files that what `quick` knows was planned with. */
  let quickFiles: Attachments | null = null;
  /** What the quick colours in sight belong to. */
  let quickly: unknown = null;

  /** The last whole Plan. */
  let whole: ShownPlan | null = null;

  const know = (made: ShownPlan, files: Attachments): void => {
    whole = made;
    if (quickFiles !== files) quick.forget();
    quickFiles = files;
    quick.know(made);
  };

  /** Colours of the paper in sight, before the page is drawn again. */
  function showQuickly(now: { readonly job: Job; readonly attachments: Attachments }): boolean {
    const shown = plan.peek();
    const paperId = inSight.peek();
    const made = shown && paperId !== null && now.attachments === quickFiles ? quick.show(shown, now.job, paperId) : null;
    if (made) {
      quickly = now;
      fit.value = 'colours';
      plan.value = made;
    }
    return made !== null;
  }

  /** The same from the worker, where what the page can't colour is kept. False when the change asks for more than that. */
  async function recolour(job: Job): Promise<boolean> {
    const shown = plan.peek();
    const paperId = inSight.peek();
    if (!shown || paperId === null) return false;
    const made = await client.ask('recolour', { job, paperId });
    if (!made || plan.peek() === null) return false;
    if (wanted.peek()?.job === job) fit.value = 'colours';
    plan.value = {
      ...shown,
      layers: made.layers.map((layer) => ({ ...shown.layers.find((l) => l.id === layer.id)!, ...layer })),
      papers: shown.papers.map((paper) => (paper.id === paperId ? made.paper : paper)),
    };
    return true;
  }

  /** Asked for in front of the first Plan of a print: what is seen of it long before. */
  function askDrawn(now: { readonly job: Job; readonly attachments: Attachments }, news: Ask<'drawn'>): void {
    const asked = print;
    client.ask('drawn', news).then(
      (made) => {
        if (!made || asked !== print || plan.peek() !== null) return;
        const newer = wanted.peek();
        drawn.value = newer === now ? made : newer && newer.attachments === now.attachments ? quick.drawn(made, newer.job) : null;
      },
      // The Plan says what is wrong.
      () => undefined,
    );
  }

  /** Until the job changes again, or the hand has rested. */
  const rest = (): Promise<void> =>
    new Promise((resolve) => {
      const before = wanted.peek();
      const timer = setTimeout(end, restMs);
      const stop = wanted.subscribe((now) => {
        if (now !== before) end();
      });
      function end(): void {
        clearTimeout(timer);
        queueMicrotask(() => stop());
        resolve();
      }
    });

  async function run(): Promise<void> {
    working.value = true;
    let tries = 0;
    while (wanted.peek() !== done) {
      const now = wanted.peek();
      if (stopped.peek()) {
        stopped.value = false;
        failure.value = null;
      }
      if (!now) {
        plan.value = whole = drawn.value = null;
        done = now;
        continue;
      }
      try {
        if (now.attachments === there && (quickly === now || (await recolour(now.job)))) {
          // While changes keep coming the colours are enough; the whole Plan is made when the hand rests.
          await rest();
          if (wanted.peek() !== now) continue;
        }
        let news: Ask<'plan'> = now.attachments === there ? { job: now.job } : { job: now.job, attachments: now.attachments };
        there = now.attachments;
        const asked = print;
        if (stopped.peek()) throw new Cancelled();
        if (plan.peek() === null && drawn.peek() === null) {
          askDrawn(now, news);
          news = { job: now.job };
        }
        making.value = { share: 0, what: null };
        const onProgress = (share: number, what: Saying | undefined): void => {
          making.value = { share, what: what ?? null };
        };
        const parcel = await client.ask('plan', news, { onProgress });
        const made = unpacker.unpack(parcel) as ShownPlan;
        // Taking it out and drawing it are tasks of their own.
        await breathe();
        if (asked !== print && wanted.peek() !== now) continue;
        know(made, now.attachments);
        failure.value = null;
        tries = 0;
        done = now;
        // The hand may have gone on meanwhile: then its colours stay in sight, on the newest stencils.
        const newer = wanted.peek();
        batch(() => {
          plan.value = made;
          drawn.value = null;
          // Stopped when it was there already.
          stopped.value = false;
          fit.value = newer === now ? 'whole' : 'old';
          if (newer && newer !== now) showQuickly(newer);
        });
      } catch (error) {
        if (stopped.peek()) {
          failure.value = [stoppedByHand];
          done = now;
          continue;
        }
        // A worker that fell over is started again and asked once more; a second fall is shown.
        if (error instanceof Cancelled || tries++ === 0) continue;
        failure.value = faultsOf(error);
        done = now;
      }
    }
    making.value = null;
    working.value = false;
    running = null;
  }

  const start = (): Promise<void> => (running ??= run());
  effect(() => {
    const now = wanted.value;
    // Back at what the last whole Plan was made of before the next was asked for: it is shown as it was.
    if (now === done)
      return void (
        whole &&
        untracked(() => {
          plan.value = whole;
          fit.value = failure.peek() === null ? 'whole' : 'old';
        })
      );
    untracked(() => {
      if (now && !showQuickly(now)) fit.value = 'old';
      const sketch = drawn.peek();
      if (sketch) drawn.value = now && quick.drawn(sketch, now.job);
    });
    void start();
  });
  return {
    plan,
    drawn,
    working,
    fit,
    making,
    failure,
    show(kept) {
      const now = wanted.peek();
      if (plan.peek() !== null || !working.peek() || !now) return;
      know(kept, now.attachments);
      plan.value = kept;
      drawn.value = null;
      fit.value = 'whole';
    },
    forget() {
      print++;
      quick.forget();
      quickFiles = null;
      plan.value = whole = drawn.value = null;
    },
    upToDate: async () => {
      while (wanted.peek() !== done) await start();
      if (stopped.peek()) throw new ProblemError([stoppedByHand]);
    },
    stopped,
    stop() {
      if (!running) return;
      stopped.value = true;
      client.end();
    },
    goOn() {
      if (!stopped.peek()) return;
      done = null;
      failure.value = null;
      void start();
    },
  };
}
