/** plan(job): the one place where the rooms meet. */
export * from './plan.ts';
