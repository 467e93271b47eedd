import { fail, problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { figure, say, share, type Saying } from '../../../words/say.ts';
import { studioDefaults } from '../defaults.ts';

export interface OpenTime {
  /** From one stroke to the next at this pace. */
  readonly intervalMinutes: number;
  /** How long the ink stays open in the mesh in this room, without retarder. */
  readonly openMinutes: readonly [number, number];
  /** Interval and one mishap. */
  readonly neededMinutes: number;
  /** Share of the pot; 0: none needed. Never above the ceiling. */
  readonly retarderShare: number;
  readonly text: Saying;
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
      say('day.humidityImpossible', { humidity: share(humidityPercent / 100) }),
      say('day.readHygrometer'),
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
  if (!(pullsPerHour > 0))
    fail('pace', 'day.pullsPerHour', say('day.paceImpossible', { pulls: figure(pullsPerHour, 2, false) }), say('day.usualAlone'));
  const factor = dryingFactor(humidityPercent, studioDefaults.openAtHumidity);
  const open = [openMinutes[0] * factor, openMinutes[1] * factor] as const;
  const intervalMinutes = 60 / pullsPerHour;
  const neededMinutes = intervalMinutes + mishapMinutes;
  const percent = Math.max(0, (neededMinutes / open[0] - 1) / studioDefaults.openGainPerPercent);
  const most = studioDefaults.retarderMost * 100;
  const retarderShare = percent === 0 ? 0 : Math.min(most, Math.max(studioDefaults.retarderUsual[0] * 100, Math.ceil(percent))) / 100;
  const problems: Problem[] = [];
  const needed = figure(neededMinutes, 1, false);
  const ceiling = share(studioDefaults.retarderMost);
  const retarder = share(retarderShare, 0);
  if (percent > most) {
    problems.push(
      problem(
        'warning',
        'ink-dries-in-mesh',
        'day.humidityPercent',
        say('day.driesInMesh', { humidity: share(humidityPercent / 100), open: figure(open[0], 1, false), needed, most: ceiling }),
        say('day.dampenOrFaster'),
      ),
    );
  } else if (percent > studioDefaults.retarderUsual[1] * 100) {
    problems.push(
      problem(
        'warning',
        'retarder-high',
        'day.pullsPerHour',
        say('day.retarderHigh', {
          retarder,
          low: figure(studioDefaults.retarderUsual[0] * 100),
          high: share(studioDefaults.retarderUsual[1], 0),
        }),
        say('day.trialFirst'),
      ),
    );
  }
  const times = { low: figure(open[0]), high: figure(open[1]), needed };
  const text = retarderShare === 0 ? say('day.noRetarder', times) : say('day.takeRetarder', { ...times, retarder, most: ceiling });
  return { intervalMinutes, openMinutes: open, neededMinutes, retarderShare, text, problems };
}
