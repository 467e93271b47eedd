import { expect, test } from 'vitest';
import { attackInputs, attackJobs } from '../../scripts/attack/inputs.ts';

/** A few of each; `npm run attack` has thousands. */
const wish = (times: number): { seed: number; times: number; until: number } => ({ seed: 7, times, until: Date.now() + 60_000 });

test('damaged files of every format are read or refused: nothing dies, nothing takes for ever, nothing fills the memory', async () => {
  const tallies = await attackInputs(wish(165));
  expect(tallies.flatMap((t) => (t.holds ? [] : [t.line(), ...t.told]))).toEqual([]);
  expect(tallies.every((t) => t.tried >= 5)).toBe(true);
  // The damage is damage: most of them are not what they were.
  expect(tallies.reduce((sum, t) => sum + t.survived - t.read, 0)).toBeGreaterThan(40);
}, 120_000);

test('damaged jobs are refused, or planned with sense and written as they are read', async () => {
  const [tally] = await attackJobs(wish(120));
  expect(tally.told).toEqual([]);
  expect(tally.holds).toBe(true);
  expect(tally.tried).toBeGreaterThan(20);
}, 120_000);
