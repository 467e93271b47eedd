import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Small to look at and long to run: on a machine that has not run them they would come last, and one core would wait for them. */
const long = [
  'test/browser/desk',
  'test/attack/commands',
  'test/browser/engines',
  'test/outside/stencil-drawings',
  'test/outside/drawings',
];

/** As usual (projects one after another, larger files first), but with these at the head of their project. */
export default class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = (one: TestSpecification): boolean => long.some((name) => one.moduleId.endsWith(`/${name}.test.ts`));
    const first = sorted.filter(isLong);
    return sorted.flatMap((one, i) => {
      const begins = i === 0 || sorted[i - 1].project.name !== one.project.name;
      const head = begins ? first.filter((f) => f.project.name === one.project.name) : [];
      return [...head, ...(isLong(one) ? [] : [one])];
    });
  }
}
