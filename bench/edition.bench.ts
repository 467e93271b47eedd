import { binomialDistribution } from 'simple-statistics';
import { binomialAtLeast, foldLog, logLine, planDay, readLog, sheetsToStart } from '../src/core/edition/index.ts';
import { medianMs } from './row.ts';
import type { BenchRow } from './row.ts';

export const title = 'The edition: sheets, the day, the count';

export async function run(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const survive = 0.95 ** 6;
  rows.push({
    name: 'chance of 150 good sheets of 220',
    medianMs: await medianMs(() => binomialAtLeast(220, 150, survive)),
    rivalName: 'simple-statistics, whole distribution',
    rivalMs: await medianMs(() =>
      binomialDistribution(220, survive)!
        .slice(150)
        .reduce((a, b) => a + b, 0),
    ),
  });
  rows.push({
    name: 'sheets to start, 6 runs, target 40',
    medianMs: await medianMs(() => sheetsToStart({ target: 40, spoilagePerRun: Array.from({ length: 6 }, () => 0.05), certainty: 0.9 })),
  });
  for (const sheets of [20, 200, 2000]) {
    rows.push({
      name: `plan the days of 8 runs of ${sheets} sheets`,
      medianMs: await medianMs(() =>
        planDay({
          runs: Array.from({ length: 8 }, (_, i) => ({ id: `r${i}`, name: `Run ${i}`, sheets, setUpSheets: 3 })),
          startHour: 9,
          endHour: 17,
          pullsPerHour: 60,
          setUpMinutes: 35,
          cleanMinutes: 18,
          dryMinutes: 45,
          rackPlaces: 60,
          screens: 2,
          humidityPercent: 50,
        }),
      ),
    });
  }
  const log = Array.from({ length: 2000 }, (_, i) =>
    logLine(i + 1, { kind: 'pull', run: `r${i % 8}`, sheet: String(i >> 3), at: '2025-05-01T10:00:00Z' }),
  ).join('');
  rows.push({ name: 'read and add up a count of 2000 pulls', medianMs: await medianMs(() => foldLog(readLog(log).events)) });
  return rows;
}
