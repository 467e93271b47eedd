import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { figure, length, name as asName, say, sentences } from '../../../words/say.ts';
import { Bench } from './day-bench.ts';
import type { DayScreen, DayStep } from './day-bench.ts';
import { dryingFactor, openTimeAdvice } from './open-time.ts';
import type { OpenTime } from './open-time.ts';
import { studioDefaults } from '../defaults.ts';
import type { DayInput, DayRun } from './day-input.ts';

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
  /** Someone racks during pulls; else the others prepare and wash all the while, and who pulls racks. */
  readonly racked: boolean;
  readonly days: number;
  readonly hands: number;
  /** When the hands are done, and when the last sheet is dry (minutes from midnight before day 1). */
  readonly workEnds: number;
  readonly lastDry: number;
  readonly workMinutes: number;
  readonly waitMinutes: number;
  readonly rackPeak: number;
  /** Drying time in this air with this much retarder. */
  readonly dryMinutes: number;
  /** The same of the run that dries slowest: fine shapes lie thick along their edges. */
  readonly dryMinutesMost: number;
  readonly openTime: OpenTime;
  readonly problems: readonly Problem[];
}

/**
 * The day by the hour: every run in laydown order, each sheet only once it is dry, never more wet sheets than the rack has
 * places, nobody in two places. While ink dries, later inks are mixed and free screens set up. A run that must stop for
 * longer than its ink stays open is washed out and taken up again. With more hands every way of sharing the work is tried
 * (the second racks all runs, or some, or only prepares and washes; someone stands by) and the one that ends soonest is taken. Throws ProblemError when no day can hold the work.
 */
export function planDay(input: DayInput): DayPlan {
  check(input);
  let best = oneDay({ ...input, hands: 1 }, 'never');
  for (let hands = 2; hands <= (input.hands ?? 1); hands++) {
    for (const racks of ['always', 'when-prepared', 'never'] as const) {
      const day = oneDay({ ...input, hands }, racks);
      if (day.workEnds < best.workEnds - 1e-9) best = day;
    }
  }
  return { ...best, hands: input.hands ?? 1 };
}

/** Does the second hand rack during the pulls: of all runs, of those whose next run needs nothing more, of none? */
type Racks = 'always' | 'when-prepared' | 'never';

function oneDay(input: DayInput, racks: Racks): DayPlan {
  const { runs, rackPlaces, setUpMinutes, cleanMinutes } = input;
  const mixMinutes = input.mixMinutesPerRun ?? studioDefaults.mixMinutesPerRun;
  const openTime = openTimeAdvice(input);
  const gain = 1 + openTime.retarderShare * 100 * studioDefaults.openGainPerPercent;
  const longestPause = openTime.openMinutes[0] * gain;
  const slower =
    dryingFactor(input.humidityPercent, studioDefaults.dryAtHumidity) *
    (1 + openTime.retarderShare * 100 * studioDefaults.dryGainPerPercent);
  const alone = 60 / input.pullsPerHour;
  const helped =
    input.pullsPerHourHelped === undefined ? alone / studioDefaults.helpedPace : Math.min(alone, 60 / input.pullsPerHourHelped);
  const bench = new Bench(input);
  const problems: Problem[] = [...openTime.problems];
  const dryAt = new Map<string, number>();
  const sheetTimes: SheetTime[] = [];
  /** Drying times of the sheets on the rack, soonest first. */
  let wet: number[] = [];
  let rackPeak = 0;
  /** Run → when its ink is mixed; run → its screen, and since when it is ready; screen → when it is washed. */
  const mixed = new Map<number, number>();
  const setUp = new Map<number, { readonly screen: DayScreen; readonly ready: number }>();
  const washed = new Map<string, number>();
  /** Run → when its own stencil came off the press: a second sitting needs the same one. */
  const washedOf = new Map<number, number>();
  const screenDry = input.screenDryMinutes ?? 0;
  /** Runs begun, day by day. */
  const begunOn = new Map<number, number>();
  const hasSheets = runs.map((run) => sheetNames(run).length > 0);
  type Limits = { readonly before?: number; readonly beginBefore?: number; readonly idleHands?: boolean };
  const mix = (run: number, limits: Limits = {}): void => {
    if (mixed.has(run)) return;
    const done =
      mixMinutes === 0
        ? bench.now
        : bench.work({
            what: 'mix',
            minutes: mixMinutes,
            run: runs[run],
            text: say('day.mix'),
            ...limits,
          });
    if (done !== null) mixed.set(run, done);
  };
  const prepare = (run: number, limits: Limits = {}): void => {
    const screen = setUp.has(run) ? undefined : freeScreen(input, run, setUp, washed);
    const ready =
      screen === undefined
        ? null
        : bench.work({
            what: 'set-up',
            minutes: runs[run].setUpMinutes ?? setUpMinutes,
            run: runs[run],
            screen,
            text: say('day.setUp'),
            from: Math.max(washed.get(screen.id) ?? 0, washedOf.get(run) ?? 0),
            ...limits,
          });
    if (screen !== undefined && ready !== null) setUp.set(run, { screen, ready });
  };
  /** Hands that would wait do what the next runs need, nearest first. */
  const prepareLater = (index: number, limits: Limits): void => {
    for (let later = index + 1; later < runs.length; later++) {
      if (!hasSheets[later]) continue;
      mix(later, limits);
      prepare(later, limits);
    }
  };

  if (input.before) prepareBefore(input, bench, mixed, mixMinutes);
  runs.forEach((run, index) => {
    const names = sheetNames(run);
    const changes = run.changes ?? [];
    const mounted = new Set<number>();
    const dry = (run.dryMinutes ?? input.dryMinutes) * slower;
    let done = 0;
    let sittings = 0;
    while (done < names.length) {
      mix(index);
      prepare(index);
      const screen =
        setUp.get(index) ?? fail('screens-taken', 'day.screens', say('day.noScreenFree', { run: index + 1 }), say('day.fewerScreenNames'));
      const prepared = Math.max(bench.now, mixed.get(index) ?? 0, screen.ready);
      // Sheets dry, and a place on the rack, for the quicker pace: a slower one comes later and is right too.
      const next = hasSheets.findIndex((some, i) => some && i > index);
      const wishes =
        racks === 'always' ||
        (racks === 'when-prepared' &&
          (next < 0 || (mixed.has(next) && (setUp.has(next) || freeScreen(input, next, setUp, washed) === undefined))));
      const quick = wishes ? helped : alone;
      let [stroke, first] = [quick, (run.setUpSheets ?? 0) * quick];
      const ready = names
        .slice(done, done + rackPlaces)
        .reduce((latest, name, i) => Math.max(latest, (dryAt.get(name) ?? 0) - first - i * stroke), prepared);
      // The rack must have a place for the first sheet too.
      const place = wet.length < rackPlaces ? 0 : wet[wet.length - rackPlaces] - first - stroke;
      if (place > ready)
        problems.push(
          problem(
            'warning',
            'rack-full',
            'day.rackPlaces',
            say('day.waitsForRack', { n: index + 1, run: asName(run.name), places: rackPlaces }),
            say('day.morePlaces'),
          ),
        );
      const changing = (pace: number): number =>
        changes.reduce(
          (sum, c, i) => (mounted.has(i) || c.afterSheets < done ? sum : sum + studioDefaults.changeMinutes + c.checkSheets * pace),
          0,
        );
      const whole = first + (names.length - done) * stroke + changing(stroke) + cleanMinutes;
      let begin = bench.beginning(Math.max(ready, place), whole, first + stroke + cleanMinutes);
      // Enough for one day: the rest of the runs wait for the next.
      for (const most = input.mostRunsPerDay ?? Infinity; done === 0 && (begunOn.get(dayOf(begin)) ?? 0) >= most; )
        begin = bench.beginning((dayOf(begin) + 1) * 1440, whole, first + stroke + cleanMinutes);
      prepareLater(index, { before: begin });
      bench.waitUntil(begin, run, prepared, Math.max(ready, place));
      const from = bench.now;
      const racker = wishes ? bench.racker(from) : null;
      if (racker === null) [stroke, first] = [alone, (run.setUpSheets ?? 0) * alone];
      const until = bench.windowEnd() - cleanMinutes;
      let time = from + first;
      let pause = 0;
      const begun = done;
      /** Sheets after which the stencil was changed in this sitting; undefined: before the first. */
      const changed: (string | undefined)[] = [];
      while (done < names.length) {
        const name = names[done];
        // The stencil gives out here: the next is mounted, and its register checked.
        changes.forEach((change, i) => {
          if (change.afterSheets !== done || mounted.has(i)) return;
          mounted.add(i);
          changed.push(names[done - 1]);
          // At the start of a sitting the screen is set up with the next stencil anyway.
          if (done > begun || begun === 0) time += studioDefaults.changeMinutes + change.checkSheets * stroke;
        });
        const on = Math.max(time, dryAt.get(name) ?? 0, wet.length >= rackPlaces ? wet[wet.length - rackPlaces] - stroke : 0);
        // A pause shorter than washing out is waited for, with the screen flooded.
        if (done > begun && on - time > Math.max(longestPause, cleanMinutes)) break;
        const off = on + stroke;
        if (off > until + 1e-9) break;
        if (done > begun) pause += on - time;
        wet = wet.filter((end) => end > off);
        const dried = off + dry * (run.dryTimes?.[done] ?? 1);
        insert(wet, dried);
        rackPeak = Math.max(rackPeak, wet.length);
        dryAt.set(name, dried);
        sheetTimes.push({ sheet: name, run: run.id, on, off, dry: dried });
        time = off;
        done++;
      }
      if (done === begun) bench.skipToNextWindow(run);
      else {
        if (begun === 0) begunOn.set(dayOf(from), (begunOn.get(dayOf(from)) ?? 0) + 1);
        bench.pull(from, time, run, [begun + 1, done], names.length, pause, racker, changed);
        prepareLater(index, { beginBefore: time, idleHands: true });
        const clean = bench.work({
          what: 'clean',
          minutes: cleanMinutes,
          run,
          screen: screen.screen,
          text: say('day.clean'),
          from: time,
        });
        // It dries before tape holds on it again.
        washed.set(screen.screen.id, (clean ?? time) + screenDry);
        washedOf.set(index, (clean ?? time) + screenDry);
        setUp.delete(index);
        sittings++;
      }
    }
    if (sittings > 1) {
      problems.push(
        problem(
          'warning',
          'run-split',
          `layers[#${run.id}]`,
          sentences(
            say('day.split', { n: index + 1, run: asName(run.name), sittings }),
            input.toleranceMm !== undefined && say('day.sittingsShift', { off: length(Math.SQRT2 * input.toleranceMm, 1) }),
          ),
          rackPlaces >= names.length
            ? say('day.earlierOrFaster')
            : say(run.washable ? 'day.findPlaces' : 'day.placesOrFilm', { places: names.length }),
        ),
      );
    }
  });
  const lastSheet = Math.max(0, ...dryAt.values());
  bench.lastDrying(lastSheet);
  if (rackPeak >= rackPlaces && !problems.some((one) => one.code === 'rack-full')) {
    problems.push(problem('warning', 'rack-full', 'day.rackPlaces', say('day.rackFull', { places: rackPlaces }), say('day.lineWithPegs')));
  }
  const result = bench.result();
  return {
    ...result,
    hands: input.hands ?? 1,
    racked: result.steps.some((step) => step.what === 'rack'),
    sheetTimes,
    lastDry: Math.max(result.workEnds, lastSheet),
    rackPeak,
    dryMinutes: input.dryMinutes * slower,
    dryMinutesMost:
      Math.max(input.dryMinutes, ...runs.map((run) => (run.dryMinutes ?? input.dryMinutes) * Math.max(1, ...(run.dryTimes ?? [])))) *
      slower,
    openTime,
    problems,
  };
}

const dayOf = (minutes: number): number => Math.floor(minutes / 1440);

/** A day before the first run: stencils cut, inks mixed and drawn down, so that drawdowns are judged dry and cutting waits for nothing. */
function prepareBefore(input: DayInput, bench: Bench, mixed: Map<number, number>, mixMinutes: number): void {
  const { runs } = input;
  if (mixMinutes > 0)
    runs.forEach((run, index) => {
      const done = bench.work({ what: 'mix', minutes: mixMinutes, run, text: say('day.mix') });
      if (done !== null) mixed.set(index, done);
    });
  let still = input.before?.cutMinutes ?? 0;
  while (still > 0.5) {
    const minutes = Math.min(still, studioDefaults.sittingMinutes, bench.longestStretch);
    bench.work({ what: 'cut', minutes, run: null, text: say('day.cut') });
    still -= minutes;
  }
  bench.tillNextDay();
}

/** The run's own screen if it is free, else any that no run has taken: the one that is washed first. */
function freeScreen(
  input: DayInput,
  run: number,
  setUp: ReadonlyMap<number, { readonly screen: DayScreen }>,
  washed: ReadonlyMap<string, number>,
): DayScreen | undefined {
  const taken = new Set([...setUp.values()].map((one) => one.screen.id));
  const nameOf = (name: string): DayScreen => screenNamed(name, input.screensByMesh);
  const named = [...new Set(input.runs.flatMap((one) => one.screen ?? []))].map(nameOf);
  const own = input.runs[run].screen;
  if (own !== undefined) return taken.has(nameOf(own).id) ? undefined : nameOf(own);
  const others = Array.from({ length: Math.max(0, input.screens - named.length) }, (_, i) =>
    screenOf((input.screensByMesh ? 0 : named.length) + i + 1),
  );
  const soonest = (screens: readonly DayScreen[]): DayScreen | undefined =>
    screens
      .filter((screen) => !taken.has(screen.id))
      .reduce<DayScreen | undefined>(
        (best, screen) => (best === undefined || (washed.get(screen.id) ?? 0) < (washed.get(best.id) ?? 0) ? screen : best),
        undefined,
      );
  // A screen that a run before its pull still waits for by name is left to it.
  return soonest(others) ?? (input.screensByMesh ? undefined : soonest(named));
}

const screenNamed = (name: string, mesh = false): DayScreen => ({ id: `named ${name}`, name, ...(mesh ? { mesh } : {}) });
const screenOf = (number: number): DayScreen => ({ id: String(number), number });

function sheetNames(run: DayRun): readonly string[] {
  return typeof run.sheets === 'number' ? Array.from({ length: run.sheets }, (_, i) => String(i + 1)) : run.sheets;
}

function insert(sorted: number[], value: number): void {
  let at = sorted.length;
  while (at > 0 && sorted[at - 1] > value) at--;
  sorted.splice(at, 0, value);
}

const mostSheets = 20_000;

function check(input: DayInput): void {
  const { runs, rackPlaces, startHour, endHour, hands = 1, pullsPerHourHelped } = input;
  const number = (value: number): ReturnType<typeof figure> => figure(value, 2, false);
  const isPace = (pulls: number): boolean => pulls > 0 && pulls <= 3600;
  if (runs.length === 0) fail('no-runs', 'layers', say('day.noRuns'), say('day.addLayer'));
  if (!(rackPlaces >= 1)) fail('rack-none', 'day.rackPlaces', say('day.rackNone'), say('day.countPlaces'));
  if (!(input.screens >= 1)) fail('screens-none', 'day.screens', say('day.noScreen'), say('day.sayScreens'));
  if (!isPace(input.pullsPerHour))
    fail('pace', 'day.pullsPerHour', say('day.paceImpossible', { pulls: number(input.pullsPerHour) }), say('day.usualAlone'));
  if (!(Number.isInteger(hands) && hands >= 1 && hands <= 20))
    fail('hands', 'day.hands', say('day.handsImpossible', { hands: number(hands) }), say('day.sayHands'));
  if (pullsPerHourHelped !== undefined && !isPace(pullsPerHourHelped))
    fail('pace', 'day.pullsPerHourHelped', say('day.paceImpossible', { pulls: number(pullsPerHourHelped) }), say('day.usualHelped'));
  if (!(startHour >= 0 && endHour <= 24 && endHour > startHour))
    fail('day-hours', 'day.endHour', say('day.hoursImpossible', { from: number(startHour), to: number(endHour) }), say('day.laterEnd'));
  for (const [path, value] of [
    ['day.setUpMinutes', input.setUpMinutes],
    ['day.cleanMinutes', input.cleanMinutes],
    ['day.dryMinutes', input.dryMinutes],
    ['day', input.mixMinutesPerRun ?? 0],
    ...runs.map((run) => [`layers[#${run.id}]`, run.dryMinutes ?? 0] as const),
  ] as const) {
    if (!(value >= 0 && value <= 10000))
      fail('minutes', path, say('day.minutesImpossible', { minutes: number(value) }), say('day.giveMinutes'));
  }
  runs.forEach(({ id, sheets }, i) => {
    const run = i + 1;
    const count = typeof sheets === 'number' ? sheets : sheets.length;
    if (!(Number.isInteger(count) && count >= 0 && count <= mostSheets))
      fail(
        'sheets',
        `layers[#${id}]`,
        say('day.sheetsImpossible', { sheets: number(count), run }),
        say('day.wholeNumberTo', { most: mostSheets }),
      );
    if (typeof sheets !== 'number' && new Set(sheets).size !== count)
      fail('sheet-twice', `layers[#${id}]`, say('day.sheetTwice', { run }), say('day.nameOnce'));
  });
}
