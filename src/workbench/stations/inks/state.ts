import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { labFromSpectrum, labFromXyz, srgbFromXyz, xyzFromLab, type Lab } from '../../../core/colour/index.ts';
import type { Reading } from '../../../core/ink/index.ts';
import type { Job } from '../../../core/job/index.ts';
import { ProblemError, type Problem } from '../../../core/problem.ts';
import { Cancelled } from '../../../core/task.ts';
import type { Bench } from '../../store/bench.ts';
import { faultsOf } from '../../engine/faults.ts';
import type { Answer, Ask, Question, ShownPaper, ShownPlan } from '../../engine/protocol.ts';

export interface InkPartProps {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly job: Job;
}

/** What lies open at the station; kept while other stations are looked at. */
export const at = {
  part: signal('shelf'),
  ink: signal<string | null>(null),
  layer: signal<string | null>(null),
};

/** Lays open what a layer can be, for whoever comes to the station next. */
export function lookAtReach(layerId: string): void {
  at.part.value = 'reach';
  at.layer.value = layerId;
}

/** A reading with its colour, as slots and lists show it. */
export interface ShownReading {
  readonly reading: Reading;
  readonly lab: Lab;
  readonly srgb: string;
}

export function showReading(reading: Reading): ShownReading {
  const lab =
    reading.kind === 'lab' || reading.kind === 'photo'
      ? reading.lab
      : reading.kind === 'xyz'
        ? labFromXyz([reading.xyz[0] / 100, reading.xyz[1] / 100, reading.xyz[2] / 100])
        : labFromSpectrum(Float64Array.from(reading.values));
  return { reading, lab, srgb: srgbOf(lab) };
}

export function srgbOf(lab: Lab): string {
  return srgbFromXyz(xyzFromLab(lab)).hex;
}

/** Says what went wrong under the header. */
export function refuse(bench: Bench, error: unknown): void {
  if (!(error instanceof Cancelled)) bench.refuse(faultsOf(error));
}

interface Answered<Q extends Question> {
  readonly answer: Answer<Q> | null;
  readonly problems: readonly Problem[];
}

/**
 * Keeps an answer of the worker in step: asks anew when `deps` change, after the newest job is planned; the last answer
 * stays in sight meanwhile. `ask` null: nothing is asked.
 */
export function useAnswer<Q extends Question>(bench: Bench, question: Q, ask: Ask<Q> | null, deps: readonly unknown[]): Answered<Q> {
  const [answered, setAnswered] = useState<Answered<Q>>({ answer: null, problems: [] });
  useEffect(() => {
    if (ask === null) return setAnswered({ answer: null, problems: [] });
    const stop = new AbortController();
    bench
      .upToDate()
      .then(() => bench.ask(question, ask, { signal: stop.signal }))
      .then(
        (answer) => {
          if (!stop.signal.aborted) setAnswered({ answer, problems: [] });
        },
        (error: unknown) => {
          if (!stop.signal.aborted && error instanceof ProblemError) setAnswered({ answer: null, problems: error.problems });
        },
      );
    return () => stop.abort();
  }, deps);
  return answered;
}

export function isoDay(): string {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
}
