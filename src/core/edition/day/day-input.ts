import type { StencilChange } from '../sheets/wear.ts';

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
  /** Sheet by sheet, how much longer or shorter its paper takes to dry; left out: all alike. */
  readonly dryTimes?: readonly number[];
  /** Where the stencil gives out and the next is mounted. */
  readonly changes?: readonly Pick<StencilChange, 'afterSheets' | 'checkSheets'>[];
  /** Left out: the day's. */
  readonly setUpMinutes?: number;
  /** Its stencil can be washed and taken up again. */
  readonly washable?: boolean;
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
  /** Named screens have a mesh of their own: other runs cannot take them. */
  readonly screensByMesh?: boolean;
  readonly humidityPercent: number;
  readonly mixMinutesPerRun?: number;
  readonly rest?: { readonly hour: number; readonly minutes: number };
  /** A washed screen dries so long before it can be taped again. */
  readonly screenDryMinutes?: number;
  /** Runs begun on one day, at most. */
  readonly mostRunsPerDay?: number;
  /** Done on a day of its own before the first run: all cutting, mixing and drawdowns, so that these are judged dry. */
  readonly before?: { readonly cutMinutes: number };
  /** How far off a placing falls: what a second sitting can lie off the first. */
  readonly toleranceMm?: number;
  readonly openMinutes?: readonly [number, number];
  /** People at work, at least 1. One pulls; the others rack, wash, mix and set up. */
  readonly hands?: number;
  /** Pace with someone racking; left out: half as many again as alone. */
  readonly pullsPerHourHelped?: number;
}
