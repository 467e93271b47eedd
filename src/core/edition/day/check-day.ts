import { fail } from '../../problem.ts';
import { figure, say } from '../../../words/say.ts';
import type { DayInput } from './day-input.ts';

const mostSheets = 20_000;

/** @throws ProblemError where no day can be planned from it */
export function checkDay(input: DayInput): void {
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
