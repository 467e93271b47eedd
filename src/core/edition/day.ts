import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { Bench } from './day-bench.ts';
import type { DayStep } from './day-bench.ts';
import { dryingFactor, openTimeAdvice } from './open-time.ts';
import type { OpenTime } from './open-time.ts';
import { studioDefaults } from './defaults.ts';

export interface DayRun {
  readonly id: string;
  readonly name: string;
  /** Names of the sheets in the order they go through, or how many (then `1`, `2`, …). */
  readonly sheets: number | readonly string[];
  /** Pulled on newsprint first. */
  readonly setUpSheets?: number;
  /** A screen of its own name; runs that name the same one share it. Left out: any free screen. */
  readonly screen?: string;
  readonly dryMinutes?: number;
}

export interface DayInput {
  /** In laydown order. */
  readonly runs: readonly DayRun[];
  readonly startHour: number;
  readonly endHour: number;
  readonly pullsPerHour: number;
  readonly setUpMinutes: number;
  readonly cleanMinutes: number;
  /** At about 50 % humidity. */
  readonly dryMinutes: number;
  readonly rackPlaces: number;
  readonly screens: number;
  readonly humidityPercent: number;
  readonly mixMinutesPerRun?: number;
  readonly rest?: { readonly hour: number; readonly minutes: number };
  readonly openMinutes?: readonly [number, number];
}

export interface SheetTime {
  readonly sheet: string;
  readonly run: string;
  /** Minutes from midnight before day 1. On the rack from `off` to `dry`. */
  readonly on: number;
  readonly off: number;
  readonly dry: number;
}

export interface DayPlan {
  readonly steps: readonly DayStep[];
  readonly sheetTimes: readonly SheetTime[];
  readonly days: number;
  /** When the hands are done, and when the last sheet is dry (minutes from midnight before day 1). */
  readonly workEnds: number;
  readonly lastDry: number;
  readonly workMinutes: number;
  readonly waitMinutes: number;
  readonly rackPeak: number;
  /** Drying time in this air with this much retarder. */
  readonly dryMinutes: number;
  readonly openTime: OpenTime;
  readonly problems: readonly Problem[];
}

/**
 * The day by the hour for one pair of hands: every run in laydown order, each sheet only once it is dry, never more wet
 * sheets than the rack has places. While ink dries, later inks are mixed and free screens set up. A run that must stop for
 * longer than its ink stays open is washed out and taken up again. Throws ProblemError when no day can hold the work.
 */
export function planDay(input: DayInput): DayPlan {
  check(input);
  const { runs, rackPlaces, setUpMinutes, cleanMinutes } = input;
  const mixMinutes = input.mixMinutesPerRun ?? studioDefaults.mixMinutesPerRun;
  const openTime = openTimeAdvice(input);
  const gain = 1 + openTime.retarderShare * 100 * studioDefaults.openGainPerPercent;
  const longestPause = openTime.openMinutes[0] * gain;
  const slower = dryingFactor(input.humidityPercent, studioDefaults.dryAtHumidity) * (1 + openTime.retarderShare * 100 * studioDefaults.dryGainPerPercent);
  const stroke = 60 / input.pullsPerHour;
  const bench = new Bench(input);
  const problems: Problem[] = [...openTime.problems];
  const dryAt = new Map<string, number>();
  const sheetTimes: SheetTime[] = [];
  /** Drying times of the sheets on the rack, soonest first. */
  let wet: number[] = [];
  let rackPeak = 0;
  const mixed = new Set<number>();
  const setUp = new Map<number, string>();
  const mix = (run: number, before?: number): boolean => doOnce(mixed.has(run) || mixMinutes === 0, () => bench.work('mix', mixMinutes, runs[run], 'table', 'Mix and label the ink, pull a drawdown.', before), () => mixed.add(run));
  const prepare = (run: number, before?: number): boolean => {
    const screen = freeScreen(input, run, setUp);
    return doOnce(setUp.has(run), () => screen !== undefined && bench.work('set-up', setUpMinutes, runs[run], screen, 'Stencil, tape, register; a first look on newsprint.', before), () => setUp.set(run, screen!));
  };

  runs.forEach((run, index) => {
    const names = sheetNames(run);
    const dry = (run.dryMinutes ?? input.dryMinutes) * slower;
    let done = 0;
    let sittings = 0;
    while (done < names.length) {
      mix(index);
      prepare(index);
      const first = (run.setUpSheets ?? 0) * stroke;
      const ready = names.slice(done, done + rackPlaces).reduce((latest, name, i) => Math.max(latest, (dryAt.get(name) ?? 0) - first - i * stroke), bench.now);
      // The rack must have a place for the first sheet too.
      const place = wet.length < rackPlaces ? 0 : wet[wet.length - rackPlaces] - first - stroke;
      if (place > ready) problems.push(problem('warning', 'rack-full', 'day.rackPlaces', `Run ${index + 1} (${run.name}) waits for a place on the rack: all ${rackPlaces} are full.`, 'Find more places (a line with pegs does), or print fewer sheets in a row.'));
      const whole = first + (names.length - done) * stroke + cleanMinutes;
      const begin = bench.beginning(Math.max(ready, place), whole, first + stroke + cleanMinutes);
      for (let later = index + 1; later < runs.length; later++) {
        if (sheetNames(runs[later]).length === 0) continue;
        // Hands that would wait do what the next runs need, nearest first.
        mix(later, begin);
        prepare(later, begin);
      }
      bench.waitUntil(begin, run, Math.max(ready, place));
      const from = bench.now;
      const until = bench.windowEnd() - cleanMinutes;
      let time = from + first;
      let pause = 0;
      const begun = done;
      while (done < names.length) {
        const name = names[done];
        const on = Math.max(time, dryAt.get(name) ?? 0, wet.length >= rackPlaces ? wet[wet.length - rackPlaces] - stroke : 0);
        if (done > begun && on - time > longestPause) break;
        const off = on + stroke;
        if (off > until + 1e-9) break;
        if (done > begun) pause += on - time;
        wet = wet.filter((end) => end > off);
        insert(wet, off + dry);
        rackPeak = Math.max(rackPeak, wet.length);
        dryAt.set(name, off + dry);
        sheetTimes.push({ sheet: name, run: run.id, on, off, dry: off + dry });
        time = off;
        done++;
      }
      if (done === begun) bench.skipToNextWindow(run);
      else {
        bench.pull(from, time, run, [begun + 1, done], names.length, pause);
        bench.clean(cleanMinutes, run, setUp.get(index) ?? fail('screens-taken', 'day.screens', `No screen is free for run ${index + 1}.`, 'Name fewer screens, or let runs take any.'));
        setUp.delete(index);
        sittings++;
      }
    }
    if (sittings > 1) {
      problems.push(problem('warning', 'run-split', `day, run ${index + 1}`, `Run ${index + 1} (${run.name}) is pulled in ${sittings} sittings, the screen washed and set up again between them.`,
        rackPlaces < names.length ? `Find ${names.length} places on the rack, or use a film stencil that bears washing.` : 'Start earlier, pull faster, or print fewer sheets.'));
    }
  });
  const lastDry = Math.max(bench.now, ...dryAt.values());
  bench.lastDrying(lastDry);
  if (rackPeak >= rackPlaces && !problems.some((one) => one.code === 'rack-full')) {
    problems.push(problem('warning', 'rack-full', 'day.rackPlaces', `All ${rackPlaces} places of the rack are taken at the fullest moment.`, 'Keep a line with pegs ready, or take dry sheets off as you go.'));
  }
  return { ...bench.result(), sheetTimes, lastDry, rackPeak, dryMinutes: input.dryMinutes * slower, openTime, problems };
}

function doOnce(already: boolean, act: () => boolean, then: () => unknown): boolean {
  if (already || !act()) return false;
  then();
  return true;
}

/** The run's own screen if it is free, else any that no run has taken. */
function freeScreen(input: DayInput, run: number, setUp: ReadonlyMap<number, string>): string | undefined {
  const taken = new Set(setUp.values());
  const named = [...new Set(input.runs.flatMap((one) => one.screen ?? []))];
  const own = input.runs[run].screen;
  if (own !== undefined) return taken.has(own) ? undefined : own;
  const all = [...named, ...Array.from({ length: Math.max(0, input.screens - named.length) }, (_, i) => `screen ${named.length + i + 1}`)];
  // A screen that a run before its pull still waits for by name is left to it.
  return all.find((screen) => !taken.has(screen) && !named.includes(screen)) ?? all.find((screen) => !taken.has(screen));
}

function sheetNames(run: DayRun): readonly string[] {
  return typeof run.sheets === 'number' ? Array.from({ length: run.sheets }, (_, i) => String(i + 1)) : run.sheets;
}

function insert(sorted: number[], value: number): void {
  let at = sorted.length;
  while (at > 0 && sorted[at - 1] > value) at--;
  sorted.splice(at, 0, value);
}

function check(input: DayInput): void {
  const { runs, rackPlaces, startHour, endHour, setUpMinutes, cleanMinutes } = input;
  if (runs.length === 0) fail('no-runs', 'layers', 'There is no run to plan a day for.', 'Add a layer.');
  if (!(rackPlaces >= 1)) fail('rack-none', 'day.rackPlaces', 'The rack has no place: the first sheet has nowhere to dry.', 'Count the places where a wet sheet can lie or hang; a line with pegs counts.');
  if (!(input.screens >= 1)) fail('screens-none', 'day.screens', 'Without a screen nothing is printed.', 'Say how many screens you have, at least 1.');
  if (!(input.pullsPerHour > 0 && input.pullsPerHour <= 3600)) fail('pace', 'day.pullsPerHour', `${input.pullsPerHour} pulls an hour is no pace.`, 'Alone 30 to 60 an hour is usual.');
  if (!(startHour >= 0 && endHour <= 24 && endHour > startHour)) fail('day-hours', 'day', `A day from ${startHour} to ${endHour} has no hours.`, 'Let the day end after it starts.');
  for (const [key, value] of [['setUpMinutes', setUpMinutes], ['cleanMinutes', cleanMinutes], ['dryMinutes', input.dryMinutes], ['mixMinutesPerRun', input.mixMinutesPerRun ?? 0], ...runs.map((run) => ['dryMinutes', run.dryMinutes ?? 0] as const)] as const) {
    if (!(value >= 0 && value <= 10000)) fail('minutes', `day.${key}`, `${value} minutes cannot be planned with.`, 'Give minutes, nought or more.');
  }
  runs.forEach((run, i) => {
    const count = typeof run.sheets === 'number' ? run.sheets : run.sheets.length;
    if (!(Number.isInteger(count) && count >= 0 && count <= 20000)) fail('sheets', `layers[${i}]`, `${count} sheets cannot go through run ${i + 1}.`, 'Give a whole number up to 20000.');
    if (typeof run.sheets !== 'number' && new Set(run.sheets).size !== count) fail('sheet-twice', `layers[${i}]`, `A sheet is named twice in run ${i + 1}.`, 'Name every sheet once.');
  });
}
