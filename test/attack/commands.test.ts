import { expect, test } from 'vitest';
import { attackCommands } from '../../scripts/attack/kills.ts';
import { attackServer } from '../../scripts/attack/requests.ts';

test('commands killed while they work lose nothing, and the next one puts right what they left', async () => {
  const tallies = await attackCommands({ seed: 3, times: 8, until: Date.now() + 100_000 });
  expect(tallies.flatMap((t) => t.told)).toEqual([]);
  expect(tallies.every((t) => t.holds && t.tried > 0)).toBe(true);
}, 240_000);

test('odd requests end nothing and get nothing of the job', async () => {
  const [tally] = await attackServer({ seed: 3, times: 40, until: Date.now() + 30_000 });
  expect([tally.holds, tally.survived]).toEqual([true, 40]);
}, 60_000);
