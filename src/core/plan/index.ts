/** plan(job): the one place where the rooms meet. */
export * from './plan.ts';
export { makeForm, type MadeForm } from './parts/shapes.ts';
export { shownBy, type Shown } from './parts/costs.ts';
export { ratesOf, materialOf } from './parts/stencils.ts';
export { comparedGuess, findInks, overOf, type FoundInks } from './parts/inks.ts';
export { warningsOfOrders, type OrderWarnings } from './parts/order-warnings.ts';
export { forecastOn, type Forecast } from './parts/forecast.ts';
export { planPress } from './parts/press.ts';
export { potOfLayer, printedPot, filmOfLayer, thicker, type RunLayer } from './parts/let-down.ts';
export { letDownParts, type PotPart } from './parts/mix.ts';
export { tapeForJob } from './parts/tape.ts';
export { recolour } from './parts/recolour.ts';
export { createMemory, type Memory } from './memory.ts';
