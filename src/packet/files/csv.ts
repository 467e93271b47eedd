import { writeCsv } from '../../core/edition/index.ts';
import type { Plan } from '../../core/plan/index.ts';
import { sheetGroups, sheetNames } from '../sheets.ts';

/** Every overlap that covers area on every paper. */
export function overlapsCsv(plan: Plan): string {
  const whole = plan.job.image.widthMm * plan.job.image.heightMm;
  const rows = plan.papers.flatMap((paper) =>
    paper.overlaps.map((o) => [
      paper.id,
      o.layers.length === 0 ? 'bare paper' : o.layers.join(' + '),
      ...o.lab.map((v) => round(v, 2)),
      o.srgb,
      o.inGamut ? 'yes' : 'no',
      round(o.band, 2),
      o.measured ? 'measured' : 'foreseen',
      round(o.areaMm2, 1),
      round((100 * o.areaMm2) / whole, 3),
    ]),
  );
  return writeCsv([
    ['paper', 'layers, first down first', 'L*', 'a*', 'b*', 'sRGB', 'in sRGB', 'band dE00', 'how known', 'area mm2', 'share %'],
    ...rows,
  ]);
}

/** One line a sheet, to be filled in: the same table as the record's page. */
export function recordCsv(plan: Plan): string {
  const runs = plan.layers.map((l) => `run ${l.run} ${l.name}`);
  return writeCsv([
    ['sheet', 'paper', ...runs, 'what is wrong', 'number', 'signed', 'where it went'],
    ...sheetNames(sheetGroups(plan)).map(({ name, group }) => [name, group.name, ...runs.map(() => ''), '', '', '', '']),
  ]);
}

/** Without trailing noughts, and never -0. */
const round = (value: number, digits: number): string => String(Number(value.toFixed(digits)) + 0);
