/** plan(job): the one place where the rooms meet. */
export * from './plan.ts';
export { makeForm, type MadeForm } from './parts/cut/shapes.ts';
export { shownBy, type Shown } from './parts/cut/costs.ts';
export { ratesOf, materialOf } from './parts/cut/stencils.ts';
export { comparedGuess, findInks, overOf, type FoundInks } from './parts/colour/inks.ts';
export { warningsOfOrders, type OrderWarnings } from './parts/cut/order-warnings.ts';
export { learnOnPaper, type LearnedPaper } from './parts/colour/learning.ts';
export { groundSpectrum } from './parts/colour/grounds.ts';
export { forecastOn, type Forecast } from './parts/colour/forecast.ts';
export { type PlannedTones } from './parts/tone/models.ts';
export { onPaper } from './parts/tone/planes.ts';
export { type ToneScreen } from './parts/tone/screens.ts';
export { planPress } from './parts/press/press.ts';
export { potOfLayer, printedPot, filmOfLayer, thicker, type RunLayer } from './parts/colour/let-down.ts';
export { letDownParts, type PotPart } from './parts/colour/mix.ts';
export { tapeForJob } from './parts/press/tape.ts';
export { recolour } from './parts/colour/recolour.ts';
export { createMemory, type Memory } from './memory.ts';
