import { fail } from '../../problem.ts';
import { asWritten, name as asName, say, sentences, time as minutesOf, type Saying } from '../../../words/say.ts';
import type { DayInput, DayRun } from './day-input.ts';

export type DayWhat = 'cut' | 'mix' | 'set-up' | 'pull' | 'rack' | 'clean' | 'wait' | 'rest' | 'dry';

/** A screen: by the name that a run gave it, or one of those without a name, numbered from 1. `id` tells them apart. */
export type DayScreen = { readonly id: string } & ({ readonly name: string; readonly mesh?: boolean } | { readonly number: number });

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
  readonly where: Saying;
  /** Setting up and cleaning: which screen. */
  readonly screen: DayScreen | null;
  readonly text: Saying;
  /** Pull: first and last sheet in the run's order. */
  readonly sheets: readonly [number, number] | null;
  /** Whose step it is, from 1: 1 pulls. 0: nobody's (sheets that dry). */
  readonly who: number;
}

const mostDays = 400;

/** Hands and their clocks: puts each one's steps one after the other, within the hours of the day. The first hand pulls. */
export class Bench {
  private readonly windows: readonly (readonly [number, number])[];
  private readonly steps: DayStep[] = [];
  private readonly free: number[];

  constructor(
    input: Pick<
      DayInput,
      'startHour' | 'endHour' | 'rest' | 'setUpMinutes' | 'cleanMinutes' | 'mixMinutesPerRun' | 'pullsPerHour' | 'runs' | 'hands'
    >,
  ) {
    const from = input.startHour * 60;
    const to = input.endHour * 60;
    const restFrom = input.rest ? input.rest.hour * 60 : to;
    const restTo = input.rest ? restFrom + input.rest.minutes : to;
    this.windows = (
      [
        [from, Math.min(to, restFrom)],
        [Math.max(from, restTo), to],
      ] as const
    ).filter(([start, end]) => end > start);
    const longest = Math.max(0, ...this.windows.map(([start, end]) => end - start));
    const newsprint = Math.max(0, ...input.runs.map((run) => run.setUpSheets ?? 0));
    const least = Math.max(
      ...input.runs.map((run) => run.setUpMinutes ?? input.setUpMinutes),
      input.mixMinutesPerRun ?? 0,
      input.cleanMinutes + (60 / input.pullsPerHour) * (1 + newsprint),
    );
    if (least > longest) {
      fail(
        'day-short',
        'day',
        say('day.tooShort', { longest: minutesOf(longest), least: minutesOf(Math.ceil(least)) }),
        say('day.longerDay'),
      );
    }
    this.free = Array.from({ length: input.hands ?? 1 }, () => this.windows[0][0]);
  }

  /** When the hand that pulls is free. */
  get now(): number {
    return this.free[0];
  }

  /** The second hand, if it can rack all through a stretch of pulling that begins then. */
  racker(from: number): number | null {
    return this.free.length > 1 && this.free[1] <= from + 1e-9 ? 1 : null;
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
    return fail('day-endless', 'day', say('day.endless', { most: mostDays }), say('day.fewerOrFaster'));
  }

  /**
   * Does work as soon as a hand can, not before `from`; of those that can begin at once the last, as the first one pulls. With
   * `before`: only if it is done by then. Gives back when it is done, or null. `idleHands`: only those besides the puller.
   */
  work(task: {
    readonly what: DayWhat;
    readonly minutes: number;
    /** null: none in particular. */
    readonly run: DayRun | null;
    /** Left out: at the table. */
    readonly screen?: DayScreen;
    readonly text: Saying;
    readonly from?: number;
    readonly before?: number;
    readonly beginBefore?: number;
    readonly idleHands?: boolean;
  }): number | null {
    const { what, minutes, run, screen = null, text, from = 0, before = Infinity, beginBefore = Infinity } = task;
    let who = -1;
    let start = Infinity;
    for (let hand = this.free.length - 1; hand >= (task.idleHands ? 1 : 0); hand--) {
      const could = this.beginning(from, minutes, minutes, hand);
      if (could < start - 1e-9) [who, start] = [hand, could];
    }
    if (who < 0 || start + minutes > before + 1e-9 || start >= beginBefore) return null;
    this.idle(who, start, run, what === 'set-up' ? say('day.waitForScreen') : say('day.wait'));
    this.add(who, start, start + minutes, what, {
      run: run?.id ?? null,
      where: screen ? sayScreen(screen) : say('day.atTable'),
      screen,
      text,
    });
    this.free[who] = start + minutes;
    return this.free[who];
  }

  /**
   * When from `time` on work of `whole` minutes can begin and end in one stretch; if none is that long, work of `least`
   * minutes (the rest of it another time).
   */
  beginning(time: number, whole: number, least: number, hand = 0): number {
    const longest = Math.max(...this.windows.map(([start, end]) => end - start));
    const needed = whole <= longest ? whole : least;
    let [start, end] = this.windowAt(Math.max(time, this.free[hand]));
    let from = Math.max(start, time, this.free[hand]);
    while (from + needed > end + 1e-9) {
      [start, end] = this.windowAt(end);
      from = start;
    }
    return from;
  }

  waitUntil(time: number, run: DayRun, preparedAt: number, dryingUntil: number): void {
    this.idle(0, Math.min(time, preparedAt), run, say('day.waitForScreen'));
    if (dryingUntil > this.now) this.idle(0, Math.min(time, dryingUntil), run, say('day.waitForInk'));
    const next = this.windowAt(Math.max(time, this.now))[0];
    this.idle(0, time, run, Math.floor(next / 1440) > Math.floor(this.now / 1440) ? say('day.tooLateForRun') : say('day.afterTheMeal'));
  }

  /** The longest stretch of work that a day has. */
  get longestStretch(): number {
    return Math.max(...this.windows.map(([start, end]) => end - start));
  }

  /** All hands go home, and begin again with the next day. */
  tillNextDay(): void {
    const next = (Math.floor((Math.max(...this.free) - 1e-9) / 1440) + 1) * 1440 + this.windows[0][0];
    this.free.forEach((free, hand) => {
      if (hand === 0 && next > free) this.add(hand, free, next, 'rest', { where: say('day.away'), text: say('day.night') });
      this.free[hand] = next;
    });
  }

  skipToNextWindow(run: DayRun): void {
    const [, end] = this.windowAt(this.now);
    const [start] = this.windowAt(end);
    this.idle(0, start, run, say('day.tooLateForSheet'));
    this.free[0] = start;
  }

  pull(
    from: number,
    to: number,
    run: DayRun,
    sheets: readonly [number, number],
    of: number,
    pause: number,
    racker: number | null,
    changed: readonly (string | undefined)[] = [],
  ): void {
    const [first, last] = sheets;
    const which = last - first + 1 === of ? say('day.allSheets', { n: of }) : say('day.sheetsFromTo', { from: first, to: last, of });
    const text = sentences(
      run.setUpSheets ? say('day.pullAfterNewsprint', { newsprint: run.setUpSheets, which }) : say('day.pull', { which }),
      ...changed.map((sheet) => (sheet === undefined ? say('day.changeFirst') : say('day.changeAfter', { sheet: asName(sheet) }))),
      pause > 0.5 && say('day.pauses', { pauses: minutesOf(pause) }),
    );
    this.add(0, from, to, 'pull', { run: run.id, where: say('day.atPress'), text, sheets });
    this.free[0] = to;
    if (racker === null) return;
    this.add(racker, from, to, 'rack', { run: run.id, where: say('day.atRack'), text: say('day.rack') });
    this.free[racker] = to;
  }

  lastDrying(until: number): void {
    const idle = Math.max(...this.free);
    if (until > idle + 0.5) this.add(-1, idle, until, 'dry', { where: say('day.atRack'), text: say('day.lastDry') });
  }

  result(): {
    readonly steps: readonly DayStep[];
    readonly days: number;
    readonly workEnds: number;
    readonly workMinutes: number;
    readonly waitMinutes: number;
  } {
    const total = (kinds: readonly DayWhat[]): number =>
      this.steps.filter((step) => kinds.includes(step.what)).reduce((sum, step) => sum + step.endMinutes - step.startMinutes, 0);
    const steps = this.steps
      .map((step, i) => ({ step, i }))
      .sort((a, b) => a.step.startMinutes - b.step.startMinutes || a.i - b.i)
      .map(({ step }) => step);
    const workEnds = Math.max(...this.free);
    return {
      steps,
      days: Math.floor((workEnds - 1e-9) / 1440) + 1,
      workEnds,
      workMinutes: total(['cut', 'mix', 'set-up', 'pull', 'rack', 'clean']),
      waitMinutes: total(['wait']),
    };
  }

  /** Fills a hand's time up to `until` with waiting, and with rest where no work is done. Told of the hand that pulls alone. */
  private idle(hand: number, until: number, run: DayRun | null, text: Saying): void {
    while (until > this.free[hand] + 1e-9) {
      const now = this.free[hand];
      const [start, end] = this.windowAt(now);
      const resting = start > now + 1e-9;
      const stop = Math.min(until, resting ? start : end);
      if (hand === 0 && resting)
        this.add(hand, now, stop, 'rest', {
          where: say('day.away'),
          text: Math.floor(now / 1440) === Math.floor(stop / 1440) ? say('day.rest') : say('day.night'),
        });
      else if (hand === 0) this.add(hand, now, stop, 'wait', { run: run?.id ?? null, where: say('day.atTable'), text });
      this.free[hand] = stop;
    }
  }

  private add(
    hand: number,
    from: number,
    to: number,
    what: DayWhat,
    step: Pick<DayStep, 'where' | 'text'> & Partial<Pick<DayStep, 'run' | 'screen' | 'sheets'>>,
  ): void {
    const { run = null, where, screen = null, text, sheets = null } = step;
    this.steps.push({
      startMinutes: from,
      endMinutes: to,
      day: Math.floor(from / 1440) + 1,
      start: clock(from),
      end: clock(to),
      what,
      run,
      where,
      screen,
      text,
      sheets,
      who: hand + 1,
    });
  }
}

function sayScreen(screen: DayScreen): Saying {
  if ('name' in screen) return screen.mesh ? say('day.screenOfMesh', { mesh: asName(screen.name) }) : asWritten(screen.name);
  return say('day.screen', { n: screen.number });
}

/** `09:35`, to the minute. */
export function clock(minutes: number): string {
  const whole = Math.round(minutes) % 1440;
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}
