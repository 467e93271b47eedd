import { fail } from '../problem.ts';
import type { DayInput, DayRun } from './day.ts';

export type DayWhat = 'mix' | 'set-up' | 'pull' | 'clean' | 'wait' | 'rest' | 'dry';

export interface DayStep {
  /** Minutes from midnight before day 1. */
  readonly startMinutes: number;
  readonly endMinutes: number;
  readonly day: number;
  /** `09:35`. */
  readonly start: string;
  readonly end: string;
  readonly what: DayWhat;
  /** Id of the run; null: none in particular. */
  readonly run: string | null;
  /** press, table, sink, rack, away, or the name of a screen. */
  readonly where: string;
  readonly text: string;
  /** Pull: first and last sheet in the run's order. */
  readonly sheets: readonly [number, number] | null;
}

const mostDays = 400;

/** One pair of hands and its clock: puts steps one after the other, within the hours of the day. */
export class Bench {
  now: number;
  private readonly windows: readonly (readonly [number, number])[];
  private readonly steps: DayStep[] = [];

  constructor(input: Pick<DayInput, 'startHour' | 'endHour' | 'rest' | 'setUpMinutes' | 'cleanMinutes' | 'mixMinutesPerRun' | 'pullsPerHour' | 'runs'>) {
    const from = input.startHour * 60;
    const to = input.endHour * 60;
    const restFrom = input.rest ? input.rest.hour * 60 : to;
    const restTo = input.rest ? restFrom + input.rest.minutes : to;
    this.windows = ([[from, Math.min(to, restFrom)], [Math.max(from, restTo), to]] as const).filter(([start, end]) => end > start);
    const longest = Math.max(0, ...this.windows.map(([start, end]) => end - start));
    const newsprint = Math.max(0, ...input.runs.map((run) => run.setUpSheets ?? 0));
    const least = Math.max(input.setUpMinutes, input.mixMinutesPerRun ?? 0, input.cleanMinutes + (60 / input.pullsPerHour) * (1 + newsprint));
    if (least > longest) {
      fail('day-short', 'day', `The longest stretch of work is ${Math.round(longest)} min, but one piece of work takes ${Math.ceil(least)} min.`, 'Make the day longer, or the set-up shorter.');
    }
    this.now = this.windows[0][0];
  }

  /** End of the stretch of work that `now` lies in. */
  windowEnd(): number {
    return this.windowAt(this.now)[1];
  }

  /** The stretch of work that holds a moment, or the next one after it. */
  private windowAt(time: number): readonly [number, number] {
    for (let day = Math.floor(time / 1440); day < mostDays; day++) {
      for (const [start, end] of this.windows) {
        if (time < day * 1440 + end - 1e-9) return [day * 1440 + start, day * 1440 + end];
      }
    }
    return fail('day-endless', 'day', `This work takes more than ${mostDays} days.`, 'Print fewer sheets, pull faster or let the ink dry shorter.');
  }

  /** Does work as soon as it fits a stretch. With `before`: only if it is done by then, else false. */
  work(what: DayWhat, minutes: number, run: DayRun, where: string, text: string, before = Infinity): boolean {
    const start = this.beginning(this.now, minutes, minutes);
    if (start + minutes > before + 1e-9) return false;
    this.idle(start, run, 'Wait.');
    this.add(start, start + minutes, what, run.id, where, text, null);
    this.now = start + minutes;
    return true;
  }

  /**
   * When from `time` on work of `whole` minutes can begin and end in one stretch; if none is that long, work of `least`
   * minutes (the rest of it another time).
   */
  beginning(time: number, whole: number, least: number): number {
    const longest = Math.max(...this.windows.map(([start, end]) => end - start));
    const needed = whole <= longest ? whole : least;
    let [start, end] = this.windowAt(Math.max(time, this.now));
    let from = Math.max(start, time, this.now);
    while (from + needed > end + 1e-9) {
      [start, end] = this.windowAt(end);
      from = start;
    }
    return from;
  }

  waitUntil(time: number, run: DayRun, dryingUntil: number): void {
    if (dryingUntil > this.now) this.idle(Math.min(time, dryingUntil), run, 'Ink dries: cut the next stencil, read the drawdown, number the backs, look at the sheets against the B.A.T.');
    this.idle(time, run, 'Too late to pull this run to its end today: cut the next stencil, tidy up, end early.');
  }

  skipToNextWindow(run: DayRun): void {
    const [, end] = this.windowAt(this.now);
    const [start] = this.windowAt(end);
    this.idle(start, run, 'Too late for the next sheet.');
    this.now = start;
  }

  pull(from: number, to: number, run: DayRun, sheets: readonly [number, number], of: number, pause: number): void {
    const whole = sheets[1] - sheets[0] + 1 === of;
    const which = !whole ? `sheets ${sheets[0]}–${sheets[1]} of ${of}` : of === 1 ? 'the one sheet' : `all ${of} sheets`;
    const newsprint = run.setUpSheets ? `${run.setUpSheets} on newsprint, then ` : '';
    const pauses = pause > 0.5 ? `; ${Math.round(pause)} min of pauses with the screen flooded` : '';
    this.add(from, to, 'pull', run.id, 'press', `Pull ${newsprint}${which}${pauses}.`, sheets);
    this.now = to;
  }

  clean(minutes: number, run: DayRun, screen: string): void {
    this.add(this.now, this.now + minutes, 'clean', run.id, screen, 'Ink back into the jar, wipe, then wash the screen at once.', null);
    this.now += minutes;
  }

  lastDrying(until: number): void {
    if (until > this.now + 0.5) this.add(this.now, until, 'dry', null, 'rack', 'The last sheets dry. Hands are free.', null);
  }

  result(): { readonly steps: readonly DayStep[]; readonly days: number; readonly workEnds: number; readonly workMinutes: number; readonly waitMinutes: number } {
    const total = (kinds: readonly DayWhat[]): number => this.steps.filter((step) => kinds.includes(step.what)).reduce((sum, step) => sum + step.endMinutes - step.startMinutes, 0);
    return { steps: this.steps, days: Math.floor((this.now - 1e-9) / 1440) + 1, workEnds: this.now, workMinutes: total(['mix', 'set-up', 'pull', 'clean']), waitMinutes: total(['wait']) };
  }

  /** Fills the time up to `until` with waiting, and with rest where no work is done. */
  private idle(until: number, run: DayRun, text: string): void {
    while (until > this.now + 1e-9) {
      const [start, end] = this.windowAt(this.now);
      const resting = start > this.now + 1e-9;
      const stop = Math.min(until, resting ? start : end);
      if (resting) this.add(this.now, stop, 'rest', null, 'away', Math.floor(this.now / 1440) === Math.floor(stop / 1440) ? 'Rest.' : 'Night; sheets go on drying.', null);
      else this.add(this.now, stop, 'wait', run.id, 'table', text, null);
      this.now = stop;
    }
  }

  private add(from: number, to: number, what: DayWhat, run: string | null, where: string, text: string, sheets: readonly [number, number] | null): void {
    this.steps.push({ startMinutes: from, endMinutes: to, day: Math.floor(from / 1440) + 1, start: clock(from), end: clock(to), what, run, where, text, sheets });
  }
}

/** `09:35`, to the minute. */
export function clock(minutes: number): string {
  const whole = Math.round(minutes) % 1440;
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}
