import { writeCsv } from '../core/edition/index.ts';
import { writeJob, writeJobFile } from '../core/job/index.ts';
import type { TestedRegister } from '../core/plan/index.ts';
import { measuredRegister, readTestTable, registerTestSheet, testTable } from '../core/press/index.ts';
import { fail } from '../core/problem.ts';
import { sayingsIn, tell } from '../words/index.ts';
import type { Command } from './command.ts';
import { writeNew } from './drawdowns.ts';
import { writeWhole } from './folder.ts';
import { jobOf, planOf, printProblems } from './load.ts';
import { tellHere } from './reader.ts';
import { readFileBytes, textOf } from './words.ts';

export const register: Command = {
  name: 'register',
  usage: 'register JOB [FILE.csv] [--out JOB2] [--form] [--json]',
  summary: 'reads printed register test sheets: how far off this studio falls',
  help: [
    'The packet has the register test sheet. Print it twice on ten sheets, read which lines meet, and write them in a table.',
    'FILE.csv    rows sheet, place, across, down: lines of the scales, or mm measured with a rule (“2.4 mm”); without it the readings in the job',
    '--form      prints an empty table to fill in: laydown register JOB --form > readings.csv',
    '--out JOB2  writes the job with these readings, planned with what they tell: a folder, or a .laydown file',
    '--json      as JSON',
  ].join('\n'),
  options: { out: { type: 'string' }, form: { type: 'boolean' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const { job } = bundle;
    const imageMm: [number, number] = [job.image.widthMm, job.image.heightMm];
    const { places, readsMm } = registerTestSheet(imageMm, {});
    if (call.options['form']) {
      process.stdout.write(writeCsv(testTable(places, 10)));
      return 0;
    }
    const file = call.words[1];
    const testSheets =
      file === undefined
        ? job.register.testSheets
        : { imageMm, readsMm, readings: readTestTable(new TextDecoder().decode(readFileBytes(file)), readsMm, file) };
    if (!testSheets || testSheets.readings.length === 0)
      fail(
        'no-readings',
        file ?? 'register.testSheets',
        'No test sheets have been read yet.',
        'Name a table of readings; laydown register JOB --form prints an empty one.',
      );
    const read = { ...bundle, job: { ...job, register: { ...job.register, testSheets } } };
    const { tested } = (await planOf(read)).register;
    if (!tested?.found) {
      printProblems(tested?.problems ?? []);
      return 1;
    }
    if (call.options['json'])
      console.log(
        JSON.stringify(
          { ...tested.found, measured: measuredRegister(tested.found), advice: tested.advice },
          sayingsIn((s) => tell(s)),
          2,
        ),
      );
    else for (const line of sayTested(tested)) console.log(line);
    const out = textOf(call.options['out']);
    if (out !== undefined) {
      const made = {
        ...read,
        job: { ...read.job, register: { ...read.job.register, sigmaMm: undefined, measured: { ...measuredRegister(tested.found) } } },
      };
      if (out.endsWith('.laydown')) writeNew(out, writeJobFile(made), false);
      else
        writeWhole(
          out,
          [...writeJob(made)].map(([path, bytes]) => ({ path, bytes })),
          false,
        );
      console.error(`Written: ${out}; it is planned with this register.`);
    }
    return 0;
  },
};

/** What test sheets tell, for the terminal. */
export function sayTested({ found, advice, problems }: TestedRegister): string[] {
  if (!found) return [];
  const {
    sigmaMm,
    sigmaRangeMm: [low, high],
    turnDeg,
    driftMm,
  } = found;
  return [
    `${found.sheets} sheets read`,
    `Spread     σ ${sigmaMm.x.toFixed(2)} mm across, ${sigmaMm.y.toFixed(2)} mm down; together ${sigmaMm.both.toFixed(2)} mm, the true one between ${low.toFixed(2)} and ${high.toFixed(2)} (nineteen times in twenty)`,
    ...(turnDeg ? [`Turn       σ ${turnDeg.sigma.toFixed(3)}°`] : ['Turn       not known: read at least two places of each sheet']),
    `Drift      ${Math.abs(driftMm[0]).toFixed(2)} mm ${driftMm[0] < 0 ? 'left' : 'right'}, ${Math.abs(driftMm[1]).toFixed(2)} mm ${driftMm[1] < 0 ? 'up' : 'down'}${turnDeg ? `, ${Math.abs(turnDeg.mean).toFixed(3)}° ${turnDeg.mean < 0 ? 'anticlockwise' : 'clockwise'}` : ''}`,
    ...advice.map((one) => `           ${tellHere(one)}`),
    ...problems.map((p) => `${p.severity}: ${tellHere(p.message)} ${tellHere(p.advice)}`),
  ];
}
