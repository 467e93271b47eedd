/** plan(job): the one place where the rooms meet. */
export * from './plan.ts';
export { makeForm, type MadeForm } from './parts/shapes.ts';
