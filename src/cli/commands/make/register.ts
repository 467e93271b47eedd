import { writeCsv } from '../../../core/edition/index.ts';
import { writeJob, writeJobFile } from '../../../core/job/index.ts';
import type { TestedRegister } from '../../../core/plan/index.ts';
import {
  measuredRegister,
  readTestTable,
  registerTestSheet,
  testScaleFor,
  testTable,
  type RegisterFound,
} from '../../../core/press/index.ts';
import { fail } from '../../../core/problem.ts';
import { figure, length, lengths, listed, name as asName, say, type Saying } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { json, option, word } from '../../say/help.ts';
import { jobOf, planOf, printProblems } from '../../disk/load.ts';
import { printJson, sayHere, tellHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { checkFree, writeWhole } from '../../disk/write-folder.ts';

export const register: Command = {
  name: 'register',
  usage: say('help.registerUsage'),
  summary: say('help.registerSummary'),
  help: [
    say('help.registerText'),
    word('csvFile', say('help.registerFile')),
    option('--form', say('help.registerForm')),
    option('--out', say('help.registerOut'), 'job2'),
    json,
  ],
  options: { out: { type: 'string' }, form: { type: 'boolean' }, json: { type: 'boolean' } },
  async run(call) {
    const bundle = jobOf(call);
    const { job } = bundle;
    const imageMm: [number, number] = [job.image.widthMm, job.image.heightMm];
    const { places, readsMm } = registerTestSheet(imageMm, testScaleFor(job.register.method));
    if (call.options['form']) {
      process.stdout.write(writeCsv(testTable(places, 10)));
      return 0;
    }
    const out = textOf(call.options['out']);
    const wish = { kind: 'job', replace: false } as const;
    if (out?.endsWith('.laydown')) mustBeNew(out, false);
    else if (out !== undefined) checkFree(out, wish);
    const file = call.words[1];
    const testSheets =
      file === undefined
        ? job.register.testSheets
        : { imageMm, readsMm, readings: readTestTable(new TextDecoder().decode(readFileBytes(file)), readsMm, file) };
    if (!testSheets || testSheets.readings.length === 0)
      fail(
        'no-readings',
        file === undefined ? 'register.testSheets' : fileAt(file),
        say('refusals.noTestSheets'),
        say('refusals.nameTable'),
      );
    const read = { ...bundle, job: { ...job, register: { ...job.register, testSheets } } };
    const { tested } = (await planOf(read)).register;
    if (!tested?.found) {
      printProblems(tested?.problems ?? []);
      return 1;
    }
    if (call.options['json']) printJson({ ...tested.found, measured: measuredRegister(tested.found), advice: tested.advice });
    else {
      for (const line of sayTested(tested.found, tested.advice)) console.log(line);
      printProblems(tested.problems, console.log);
    }
    if (out !== undefined) {
      const made = {
        ...read,
        job: { ...read.job, register: { ...read.job.register, sigmaMm: undefined, measured: { ...measuredRegister(tested.found) } } },
      };
      if (out.endsWith('.laydown')) writeNew(out, false, () => writeJobFile(made));
      else
        writeWhole(
          out,
          [...writeJob(made)].map(([path, bytes]) => ({ path, bytes })),
          wish,
        );
      console.error(sayHere('answers.plannedWithRegister', { file: asName(out) }));
    }
    return 0;
  },
};

/** What test sheets tell, for the terminal. */
function sayTested({ sheets, sigmaMm, sigmaRangeMm, turnDeg, driftMm: [x, y] }: RegisterFound, advice: TestedRegister['advice']): string[] {
  const by = (mm: number): { by: ReturnType<typeof length> } => ({ by: length(Math.abs(mm), 2) });
  const drift: Saying[] = [
    x < 0 ? say('answers.toLeft', by(x)) : say('answers.toRight', by(x)),
    y < 0 ? say('answers.up', by(y)) : say('answers.down', by(y)),
  ];
  if (turnDeg) {
    const turned = { by: figure(Math.abs(turnDeg.mean), 3) };
    drift.push(turnDeg.mean < 0 ? say('answers.anticlockwise', turned) : say('answers.clockwise', turned));
  }
  const rows: readonly (readonly [Saying | null, Saying])[] = [
    [
      say('answers.spread'),
      say('answers.spreadIs', {
        across: length(sigmaMm.x, 2),
        down: length(sigmaMm.y, 2),
        both: length(sigmaMm.both, 2),
        range: lengths(sigmaRangeMm, 'to', 2),
      }),
    ],
    [say('answers.turn'), turnDeg ? say('answers.turnIs', { sigma: figure(turnDeg.sigma, 3) }) : say('answers.turnUnknown')],
    [say('answers.drift'), listed(drift, 'comma')],
    ...advice.map((one) => [null, one] as const),
  ];
  return [
    sayHere('answers.sheetsRead', { n: sheets }),
    ...columns(
      rows.map(([head, line]) => [head ? tellHere(head) : '', tellHere(line)]),
      { between: '   ' },
    ),
  ];
}
