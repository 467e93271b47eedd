import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';

export interface OpenTime {
  /** From one stroke to the next at this pace. */
  readonly intervalMinutes: number;
  /** How long the ink stays open in the mesh in this room, without retarder. */
  readonly openMinutes: readonly [number, number];
  /** Interval and one mishap. */
  readonly neededMinutes: number;
  /** Share of the pot; 0: none needed. Never above the ceiling. */
  readonly retarderShare: number;
  readonly text: string;
  readonly problems: readonly Problem[];
}

/**
 * Water leaves a film in proportion to what the air still takes up, 1 − RH (first order, at one temperature), so times
 * known at one humidity are carried to another by this factor. Capped at 95 %: wetter air dries nothing worth planning.
 */
export function dryingFactor(humidityPercent: number, knownAtPercent: number): number {
  if (!(humidityPercent >= 0 && humidityPercent <= 100))
    fail(
      'humidity',
      'day.humidityPercent',
      `Air cannot have ${humidityPercent} % humidity.`,
      'Read a hygrometer in the room, or write 50.',
    );
  return (100 - knownAtPercent) / (100 - Math.min(95, humidityPercent));
}

/** The ink's open time against the pace, and the retarder this asks for (gain for each percent: a guess, try it once). */
export function openTimeAdvice(input: {
  readonly pullsPerHour: number;
  readonly humidityPercent: number;
  readonly openMinutes?: readonly [number, number];
  readonly mishapMinutes?: number;
}): OpenTime {
  const { pullsPerHour, humidityPercent, openMinutes = studioDefaults.openMinutes, mishapMinutes = studioDefaults.mishapMinutes } = input;
  if (!(pullsPerHour > 0)) fail('pace', 'day.pullsPerHour', 'At no pull an hour nothing gets printed.', 'Alone 30 to 60 an hour is usual.');
  const factor = dryingFactor(humidityPercent, studioDefaults.openAtHumidity);
  const open = [openMinutes[0] * factor, openMinutes[1] * factor] as const;
  const intervalMinutes = 60 / pullsPerHour;
  const neededMinutes = intervalMinutes + mishapMinutes;
  const percent = Math.max(0, (neededMinutes / open[0] - 1) / studioDefaults.openGainPerPercent);
  const most = studioDefaults.retarderMost * 100;
  const retarderShare = percent === 0 ? 0 : Math.min(most, Math.max(studioDefaults.retarderUsual[0] * 100, Math.ceil(percent))) / 100;
  const problems: Problem[] = [];
  if (percent > most) {
    problems.push(
      problem(
        'warning',
        'ink-dries-in-mesh',
        'day',
        `In air of ${humidityPercent} % the ink can set in the mesh after ${open[0].toFixed(1)} min; strokes with one mishap take ${neededMinutes.toFixed(1)} min. Even ${most} % of retarder may not do.`,
        'Dampen the room, pull faster, flood the screen after every stroke, or have someone hand you the sheets. More retarder than this may never dry.',
      ),
    );
  } else if (percent > studioDefaults.retarderUsual[1] * 100) {
    problems.push(
      problem(
        'warning',
        'retarder-high',
        'day',
        `This pace asks for ${Math.round(retarderShare * 100)} % of retarder, more than the usual 2 to 5 %.`,
        'It dries more slowly; print a trial first, or dampen the room.',
      ),
    );
  }
  const text =
    retarderShare === 0
      ? `Ink stays open ${range(open)} min, a stroke and a mishap take ${neededMinutes.toFixed(1)}: no retarder needed.`
      : `Ink stays open ${range(open)} min, a stroke and a mishap take ${neededMinutes.toFixed(1)}: ${Math.round(retarderShare * 100)} % of retarder, by weight of the pot; never more than ${most} %.`;
  return { intervalMinutes, openMinutes: open, neededMinutes, retarderShare, text, problems };
}

const range = ([low, high]: readonly [number, number]): string => `${low.toFixed(0)}–${high.toFixed(0)}`;
