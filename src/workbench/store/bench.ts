import { batch, computed, effect, signal, type ReadonlySignal } from '@preact/signals';
import { type Job, sayTouched, touchesDone } from '../../core/job/index.ts';
import type { Drawn } from '../../core/plan/index.ts';
import type { Problem } from '../../core/problem.ts';
import type { Saying } from '../../words/one-language.ts';
import { language, sayStep, step, units, words, type Step } from './words.ts';
import type { AskOptions, WorkerClient } from '../engine/client.ts';
import type { Answer, Ask, Attachments, OpenedJob, Question, ShownPaper, ShownPlan } from '../engine/protocol.ts';
import type { VersionName } from './keep/keep.ts';
import { withTrials, type Trials } from './edits.ts';
import { atHand } from './leads.ts';
import { begin, everywhere, record, redo, settle, undo, type History } from './history.ts';
import { keepPlanned, type Fit, type Making } from './planning.ts';

/** What lies on the bench, and everything that can be done to it. Stations get this and nothing else. */
export interface Bench {
  readonly job: ReadonlySignal<Job | null>;
  readonly attachments: ReadonlySignal<Attachments>;
  /** What follows from the job (with the inks being tried); the last good one while a new one is worked out. */
  readonly plan: ReadonlySignal<ShownPlan | null>;
  /** The print as it is drawn, until its first Plan is there. */
  readonly drawn: ReadonlySignal<Drawn | null>;
  readonly working: ReadonlySignal<boolean>;
  /** How far what is shown belongs to the job as it is now. */
  readonly fit: ReadonlySignal<Fit>;
  readonly making: ReadonlySignal<Making | null>;
  readonly failure: ReadonlySignal<readonly Problem[] | null>;
  /** Paper that proofs are shown on. */
  readonly paper: ReadonlySignal<ShownPaper | null>;
  choosePaper(id: string): void;
  /** Inks that open layers are being tried in: shown, not part of the job. */
  readonly trials: ReadonlySignal<Trials>;
  tryInk(layerId: string, inkId: string | null): void;
  /** The inks tried become those of their layers: one step. */
  keepTrials(): void;

  /**
   * Changes the job under a name that undo says. `mark`: edits with the same mark in a row are one step until `settle()`
   * (sliders: mark while dragging, settle when let go). `attachments` when files come or go with it.
   */
  edit(name: Step, change: (job: Job) => Job, options?: EditOptions): void;
  settle(): void;
  /** A change that would leave finished work behind, told before it is made; null when none waits. */
  readonly held: ReadonlySignal<{ readonly says: Saying } | null>;
  /** Makes the change that is held, or lets it go. */
  answerHeld(go: boolean): void;
  /** Puts a file beside the job in every moment of its history: a fact, which undo neither names nor takes away. */
  carry(path: string, bytes: Uint8Array): void;
  undo(): void;
  redo(): void;
  readonly canUndo: ReadonlySignal<Step | null>;
  readonly canRedo: ReadonlySignal<Step | null>;
  /** Puts another job on the bench; undo forgets the one before. */
  put(opened: OpenedJob): void;
  /** Takes an earlier version of the same job; can be undone. */
  take(version: VersionName, opened: OpenedJob): void;

  /** Asks the worker (worker/protocol.ts). `upToDate` first waits until the worker has planned the newest job. */
  ask<Q extends Question>(question: Q, ask: Ask<Q>, options?: AskOptions): Promise<Answer<Q>>;
  upToDate(): Promise<void>;
  /** Ends the making of a Plan that takes too long; `goOn` makes it after all. */
  stop(): void;
  readonly stopped: ReadonlySignal<boolean>;
  goOn(): void;
  /** Shows a Plan kept from before until the worker has made the first one. */
  show(kept: ShownPlan): void;

  /** Says something to eyes (a line in the header) and to screen readers. */
  announce(text: string): void;
  readonly announced: ReadonlySignal<string>;
  /** Problems that stopped something just asked for (opening a file, printing); null when none. */
  readonly refused: ReadonlySignal<readonly Problem[] | null>;
  refuse(problems: readonly Problem[] | null): void;
}

export interface EditOptions {
  readonly mark?: string;
  readonly attachments?: Attachments;
  /** It is another print from here on: the old one is not shown beside it. */
  readonly anew?: boolean;
}

export function createBench(client: WorkerClient): Bench {
  const history = signal<History<OpenedJob> | null>(null);
  const trials = signal<Trials>(new Map());
  const announced = signal('');
  const refused = signal<readonly Problem[] | null>(null);
  const chosenPaper = signal<string | null>(null);
  const held = signal<{ readonly says: Saying; readonly touched: readonly string[]; go(): void } | null>(null);
  /** Finished things whose change was agreed to: not asked again. */
  const agreed = new Set<string>();

  const now = computed(() => history.value?.now.state ?? null);
  effect(() => {
    units.value = now.value?.job.units ?? 'mm';
    atHand.value = now.value?.job ?? null;
  });
  const wanted = computed(() => now.value && { job: withTrials(now.value.job, trials.value), attachments: now.value.attachments });
  const inSight = signal<string | null>(null);
  const planning = keepPlanned(client, wanted, inSight);
  const paper = computed(() => {
    const papers = planning.plan.value?.papers ?? [];
    return papers.find((p) => p.id === chosenPaper.value) ?? papers[0] ?? null;
  });
  effect(() => {
    inSight.value = paper.value?.id ?? null;
  });
  // What just happened was said in the language of then.
  effect(() => {
    if (language.value !== '') announced.value = '';
  });
  const noFiles: Attachments = new Map();

  const goTo = (next: History<OpenedJob>, said: string): void => {
    history.value = next;
    announced.value = said;
  };

  return {
    job: computed(() => now.value?.job ?? null),
    attachments: computed(() => now.value?.attachments ?? noFiles),
    plan: planning.plan,
    drawn: planning.drawn,
    working: planning.working,
    fit: planning.fit,
    making: planning.making,
    failure: planning.failure,
    paper,
    choosePaper(id) {
      chosenPaper.value = id;
    },
    trials,
    tryInk(layerId, inkId) {
      const next = new Map(trials.value);
      if (inkId === null) next.delete(layerId);
      else next.set(layerId, inkId);
      trials.value = next;
    },
    keepTrials() {
      const tried = trials.value;
      batch(() => {
        this.edit(step('keepTried', tried.size), (job) => withTrials(job, tried));
        trials.value = new Map();
      });
    },
    edit(name, change, options = {}) {
      const current = history.value;
      if (!current) return;
      const before = current.now.state;
      const job = change(before.job);
      const attachments = options.attachments ?? before.attachments;
      if (job === before.job && attachments === before.attachments) return;
      const make = (): void =>
        batch(() => {
          if (options.anew) planning.forget();
          history.value = record(current, { job, attachments }, name, options.mark ?? null);
        });
      const touched = touchesDone(before.job, job).filter((one) => !agreed.has(`${one.kind} ${one.layer}`));
      if (touched.length === 0) return make();
      held.value = { says: sayTouched(before.job, touched), touched: touched.map((one) => `${one.kind} ${one.layer}`), go: make };
    },
    held,
    answerHeld(go) {
      const waiting = held.value;
      held.value = null;
      if (!go && waiting) this.announce(words().shell.leftAsItWas);
      if (!go || !waiting) return;
      for (const one of waiting.touched) agreed.add(one);
      waiting.go();
    },
    settle() {
      if (history.value) history.value = settle(history.value);
    },
    carry(path, bytes) {
      if (history.value)
        history.value = everywhere(history.value, (state) => ({ ...state, attachments: new Map(state.attachments).set(path, bytes) }));
    },
    undo() {
      const current = history.value;
      if (!current || current.past.length === 0) return void (announced.value = words().shell.nothingToUndo);
      goTo(undo(current), words().shell.undone(current.now.step ? sayStep(current.now.step) : ''));
    },
    redo() {
      const current = history.value;
      const next = current?.future[0];
      if (!current || !next) return void (announced.value = words().shell.nothingToRedo);
      goTo(redo(current), words().shell.redone(next.step ? sayStep(next.step) : ''));
    },
    canUndo: computed(() => (history.value && history.value.past.length > 0 ? history.value.now.step : null)),
    canRedo: computed(() => history.value?.future[0]?.step ?? null),
    put(opened) {
      batch(() => {
        trials.value = new Map();
        chosenPaper.value = null;
        held.value = null;
        agreed.clear();
        planning.forget();
        history.value = begin(opened);
      });
    },
    take({ name, putAside = false }, opened) {
      const current = history.value;
      history.value = current ? record(current, opened, step('version', name, putAside)) : begin(opened);
    },
    ask: (question, ask, options) => client.ask(question, ask, options),
    upToDate: planning.upToDate,
    stop: planning.stop,
    stopped: planning.stopped,
    goOn: planning.goOn,
    show: planning.show,
    announce(text) {
      // The same words again are a change too: screen readers speak only what differs.
      announced.value = announced.value === text ? `${text}\u200b` : text;
    },
    announced,
    refused,
    refuse(problems) {
      refused.value = problems;
    },
  };
}
