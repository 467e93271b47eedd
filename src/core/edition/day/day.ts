import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { length, name as asName, say, sentences } from '../../../words/say.ts';
import { Bench } from './day-bench.ts';
import type { DayStep } from './day-bench.ts';
import { checkDay } from './check-day.ts';
import { dryingFactor, openTimeAdvice } from './open-time.ts';
import type { OpenTime } from './open-time.ts';
import { studioDefaults } from '../defaults.ts';
import type { DayInput, DayRun } from './day-input.ts';
import { Rack, type SheetTime } from './rack.ts';
import { Screens } from './screens.ts';

export type { SheetTime } from './rack.ts';

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
  checkDay(input);
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

/** A day being planned: hands, rack and screens as far as it has come. */
interface Day {
  readonly input: DayInput;
  readonly racks: Racks;
  readonly bench: Bench;
  readonly rack: Rack;
  readonly screens: Screens;
  readonly problems: Problem[];
  /** Run → when its ink is mixed. */
  readonly mixed: Map<number, number>;
  /** Runs begun, day by day. */
  readonly begunOn: Map<number, number>;
  readonly hasSheets: readonly boolean[];
  readonly mixMinutes: number;
  /** A longer pause than this is no pause: the screen is washed out. */
  readonly longestPause: number;
  /** How much longer ink takes to dry in this air, with this much retarder. */
  readonly slower: number;
  /** Minutes a pull. */
  readonly alone: number;
  readonly helped: number;
}

function oneDay(input: DayInput, racks: Racks): DayPlan {
  const openTime = openTimeAdvice(input);
  const gain = 1 + openTime.retarderShare * 100 * studioDefaults.openGainPerPercent;
  const alone = 60 / input.pullsPerHour;
  const day: Day = {
    input,
    racks,
    bench: new Bench(input),
    rack: new Rack(input.rackPlaces),
    screens: new Screens(input),
    problems: [...openTime.problems],
    mixed: new Map(),
    begunOn: new Map(),
    hasSheets: input.runs.map((run) => sheetNames(run).length > 0),
    mixMinutes: input.mixMinutesPerRun ?? studioDefaults.mixMinutesPerRun,
    longestPause: openTime.openMinutes[0] * gain,
    slower:
      dryingFactor(input.humidityPercent, studioDefaults.dryAtHumidity) *
      (1 + openTime.retarderShare * 100 * studioDefaults.dryGainPerPercent),
    alone,
    helped: input.pullsPerHourHelped === undefined ? alone / studioDefaults.helpedPace : Math.min(alone, 60 / input.pullsPerHourHelped),
  };
  if (input.before) prepareBefore(day);
  input.runs.forEach((_, index) => pullRun(day, index));
  return ended(day, openTime);
}

/** What the day comes to, once every run is pulled. */
function ended({ input, bench, rack, slower, problems }: Day, openTime: OpenTime): DayPlan {
  bench.lastDrying(rack.lastDry);
  if (rack.peak >= rack.places && !problems.some((one) => one.code === 'rack-full'))
    problems.push(problem('warning', 'rack-full', 'day.rackPlaces', say('day.rackFull', { places: rack.places }), say('day.lineWithPegs')));
  const result = bench.result();
  const driest = (run: DayRun): number => (run.dryMinutes ?? input.dryMinutes) * Math.max(1, ...(run.dryTimes ?? []));
  return {
    ...result,
    hands: input.hands ?? 1,
    racked: result.steps.some((step) => step.what === 'rack'),
    sheetTimes: rack.times,
    lastDry: Math.max(result.workEnds, rack.lastDry),
    rackPeak: rack.peak,
    dryMinutes: input.dryMinutes * slower,
    dryMinutesMost: Math.max(input.dryMinutes, ...input.runs.map(driest)) * slower,
    openTime,
    problems,
  };
}

type Limits = { readonly before?: number; readonly beginBefore?: number; readonly idleHands?: boolean };

function mix({ input, bench, mixed, mixMinutes }: Day, index: number, limits: Limits = {}): void {
  if (mixed.has(index)) return;
  const run = input.runs[index];
  const done = mixMinutes === 0 ? bench.now : bench.work({ what: 'mix', minutes: mixMinutes, run, text: say('day.mix'), ...limits });
  if (done !== null) mixed.set(index, done);
}

function prepare({ input, bench, screens }: Day, index: number, limits: Limits = {}): void {
  const screen = screens.of(index) ? undefined : screens.freeFor(index);
  if (screen === undefined) return;
  const run = input.runs[index];
  const ready = bench.work({
    what: 'set-up',
    minutes: run.setUpMinutes ?? input.setUpMinutes,
    run,
    screen,
    text: say('day.setUp'),
    from: screens.dryFor(index, screen),
    ...limits,
  });
  if (ready !== null) screens.mount(index, screen, ready);
}

/** Hands that would wait do what the next runs need, nearest first. */
function prepareLater(day: Day, index: number, limits: Limits): void {
  for (let later = index + 1; later < day.input.runs.length; later++) {
    if (!day.hasSheets[later]) continue;
    mix(day, later, limits);
    prepare(day, later, limits);
  }
}

/** A run on its way: which sheets it takes, how many are pulled, which changes of a worn stencil were made. */
interface Run {
  readonly run: DayRun;
  readonly index: number;
  readonly names: readonly string[];
  readonly changes: NonNullable<DayRun['changes']>;
  readonly mounted: Set<number>;
  readonly dry: number;
  done: number;
}

/** Pulls a run in as few sittings as its ink, the rack and the hours allow. */
function pullRun(day: Day, index: number): void {
  const { input, bench, screens } = day;
  const run = input.runs[index];
  const now: Run = {
    run,
    index,
    names: sheetNames(run),
    changes: run.changes ?? [],
    mounted: new Set(),
    dry: (run.dryMinutes ?? input.dryMinutes) * day.slower,
    done: 0,
  };
  let sittings = 0;
  while (now.done < now.names.length) {
    mix(day, index);
    prepare(day, index);
    const { screen } =
      screens.of(index) ?? fail('screens-taken', 'day.screens', say('day.noScreenFree', { run: index + 1 }), say('day.fewerScreenNames'));
    const time = sit(day, now);
    if (time === null) {
      bench.skipToNextWindow(run);
      continue;
    }
    prepareLater(day, index, { beginBefore: time, idleHands: true });
    const clean = bench.work({ what: 'clean', minutes: input.cleanMinutes, run, screen, text: say('day.clean'), from: time });
    // It dries before tape holds on it again.
    screens.wash(index, screen, (clean ?? time) + (input.screenDryMinutes ?? 0));
    sittings++;
  }
  if (sittings > 1) day.problems.push(runSplit(input, now, sittings));
}

function runSplit(input: DayInput, { run, index, names }: Run, sittings: number): Problem {
  return problem(
    'warning',
    'run-split',
    `layers[#${run.id}]`,
    sentences(
      say('day.split', { n: index + 1, run: asName(run.name), sittings }),
      input.toleranceMm !== undefined && say('day.sittingsShift', { off: length(Math.SQRT2 * input.toleranceMm, 1) }),
    ),
    input.rackPlaces >= names.length
      ? say('day.earlierOrFaster')
      : say(run.washable ? 'day.findPlaces' : 'day.placesOrFilm', { places: names.length }),
  );
}

/** One sitting: from when sheets, rack and hands are ready until the ink, the rack or the hours end it. When it ended; null: not a sheet was pulled. */
function sit(day: Day, now: Run): number | null {
  const { input, bench, rack, screens, mixed, begunOn, alone } = day;
  const { run, index, names } = now;
  const prepared = Math.max(bench.now, mixed.get(index) ?? 0, screens.of(index)!.ready);
  // Sheets dry, and a place on the rack, for the quicker pace: a slower one comes later and is right too.
  const wishes = wantsRacker(day, index);
  const quick = wishes ? day.helped : alone;
  let [stroke, first] = [quick, (run.setUpSheets ?? 0) * quick];
  const ready = names
    .slice(now.done, now.done + rack.places)
    .reduce((latest, name, i) => Math.max(latest, rack.dryOf(name) - first - i * stroke), prepared);
  // The rack must have a place for the first sheet too.
  const place = rack.placeFor(first, stroke);
  if (place > ready) {
    const waits = say('day.waitsForRack', { n: index + 1, run: asName(run.name), places: rack.places });
    day.problems.push(problem('warning', 'rack-full', 'day.rackPlaces', waits, say('day.morePlaces')));
  }
  const whole = first + (names.length - now.done) * stroke + changingMinutes(now, stroke) + input.cleanMinutes;
  const least = first + stroke + input.cleanMinutes;
  let begin = bench.beginning(Math.max(ready, place), whole, least);
  // Enough for one day: the rest of the runs wait for the next.
  for (const most = input.mostRunsPerDay ?? Infinity; now.done === 0 && (begunOn.get(dayOf(begin)) ?? 0) >= most; )
    begin = bench.beginning((dayOf(begin) + 1) * 1440, whole, least);
  prepareLater(day, index, { before: begin });
  bench.waitUntil(begin, run, prepared, Math.max(ready, place));
  const from = bench.now;
  const racker = wishes ? bench.racker(from) : null;
  if (racker === null) [stroke, first] = [alone, (run.setUpSheets ?? 0) * alone];
  const begun = now.done;
  const { time, pause, changed } = pullSheets(day, now, from + first, stroke);
  if (now.done === begun) return null;
  if (begun === 0) begunOn.set(dayOf(from), (begunOn.get(dayOf(from)) ?? 0) + 1);
  bench.pull(from, time, run, [begun + 1, now.done], names.length, pause, racker, changed);
  return time;
}

/** Does the second hand rack during this run? */
function wantsRacker({ racks, hasSheets, mixed, screens }: Day, index: number): boolean {
  if (racks !== 'when-prepared') return racks === 'always';
  const next = hasSheets.findIndex((some, i) => some && i > index);
  return next < 0 || (mixed.has(next) && (screens.of(next) !== undefined || screens.freeFor(next) === undefined));
}

/** Changes of a worn stencil that are still to come. */
function changingMinutes({ changes, mounted, done }: Run, stroke: number): number {
  return changes.reduce(
    (sum, c, i) => (mounted.has(i) || c.afterSheets < done ? sum : sum + studioDefaults.changeMinutes + c.checkSheets * stroke),
    0,
  );
}

/** Pulls sheets from a moment on, until the run is done, its ink would dry in the screen, or the hours end. */
function pullSheets(
  { input, bench, rack, longestPause }: Day,
  now: Run,
  from: number,
  stroke: number,
): {
  readonly time: number;
  readonly pause: number;
  /** Sheets after which the stencil was changed in this sitting; undefined: before the first. */
  readonly changed: readonly (string | undefined)[];
} {
  const { run, names, changes, mounted } = now;
  const begun = now.done;
  const until = bench.windowEnd() - input.cleanMinutes;
  const changed: (string | undefined)[] = [];
  let [time, pause] = [from, 0];
  while (now.done < names.length) {
    const name = names[now.done];
    // The stencil gives out here: the next is mounted, and its register checked.
    changes.forEach((change, i) => {
      if (change.afterSheets !== now.done || mounted.has(i)) return;
      mounted.add(i);
      changed.push(names[now.done - 1]);
      // At the start of a sitting the screen is set up with the next stencil anyway.
      if (now.done > begun || begun === 0) time += studioDefaults.changeMinutes + change.checkSheets * stroke;
    });
    const on = Math.max(time, rack.dryOf(name), rack.placeFor(stroke));
    // A pause shorter than washing out is waited for, with the screen flooded.
    if (now.done > begun && on - time > Math.max(longestPause, input.cleanMinutes)) break;
    const off = on + stroke;
    if (off > until + 1e-9) break;
    if (now.done > begun) pause += on - time;
    rack.lay({ sheet: name, run: run.id, on, off, dry: off + now.dry * (run.dryTimes?.[now.done] ?? 1) });
    time = off;
    now.done++;
  }
  return { time, pause, changed };
}

const dayOf = (minutes: number): number => Math.floor(minutes / 1440);

/** A day before the first run: stencils cut, inks mixed and drawn down, so that drawdowns are judged dry and cutting waits for nothing. */
function prepareBefore(day: Day): void {
  const { input, bench } = day;
  if (day.mixMinutes > 0) input.runs.forEach((_, index) => mix(day, index));
  let still = input.before?.cutMinutes ?? 0;
  while (still > 0.5) {
    const minutes = Math.min(still, studioDefaults.sittingMinutes, bench.longestStretch);
    bench.work({ what: 'cut', minutes, run: null, text: say('day.cut') });
    still -= minutes;
  }
  bench.tillNextDay();
}

function sheetNames(run: DayRun): readonly string[] {
  return typeof run.sheets === 'number' ? Array.from({ length: run.sheets }, (_, i) => String(i + 1)) : run.sheets;
}
