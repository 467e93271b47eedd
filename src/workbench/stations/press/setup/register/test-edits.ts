import type { Job } from '../../../../../core/job/index.ts';
import { measuredRegister, registerFromLines } from '../../../../../core/press/index.ts';
import type { Bench } from '../../../../store/bench.ts';
import { step } from '../../../../store/words.ts';
import { clean } from '../edits.ts';

export type TestSheetsOfJob = NonNullable<Job['register']['testSheets']>;

export interface TestLine {
  readonly sheet: number;
  readonly place: string;
  readonly way: 'across' | 'down';
  /** null: taken out again. */
  readonly line: number | null;
}

/** One reading written down. Stepping in one field is one step of undo. */
export function setTestLine(bench: Bench, sheets: TestSheetsOfJob, { sheet, place, way, line }: TestLine): void {
  bench.edit(
    step('press', 'test-sheets'),
    (job) => {
      const now = job.register.testSheets ?? sheets;
      const here: TestSheetsOfJob['readings'][number] = now.readings.find((one) => one.sheet === sheet && one.place === place) ?? {
        sheet,
        place,
      };
      // A field that is left says once more what Enter said.
      if ((here[way] ?? null) === line) return job;
      const read = clean({ ...here, [way]: line ?? undefined }) as typeof here;
      const rest = now.readings.filter((one) => !(one.sheet === sheet && one.place === place));
      const readings = read.across === undefined && read.down === undefined ? rest : [...rest, read].sort((a, b) => a.sheet - b.sheet);
      return { ...job, register: clean({ ...job.register, testSheets: readings.length === 0 ? undefined : { ...now, readings } }) };
    },
    { mark: `test:${sheet}:${place}:${way}` },
  );
}

/** The job is planned with what its test sheets tell: those written down now, whatever plan is still in sight. */
export function useTested(bench: Bench): void {
  bench.edit(step('press', 'measured'), (job) => {
    const { testSheets } = job.register;
    return testSheets
      ? {
          ...job,
          register: clean({ ...job.register, sigmaMm: undefined, measured: { ...measuredRegister(registerFromLines(testSheets)) } }),
        }
      : job;
  });
}

/** Back to the usual figures of the method. */
export function takeBackTested(bench: Bench): void {
  bench.edit(step('press', 'measured'), (job) => ({
    ...job,
    register: clean({ ...job.register, sigmaMm: undefined, measured: undefined }),
  }));
}
