import type { Job } from '../job/index.ts';
import type { Codes } from '../print/index.ts';
import type { Problem } from '../problem.ts';
import type { PlannedCut, PlannedForm, PlannedInk, PlannedLayer, PlannedPaper } from './planned.ts';
import type { FromArm } from './parts/tone/from-arm.ts';
import type { PlannedPress } from './parts/press/press.ts';
import type { PlannedEdition } from './parts/press/edition.ts';
import type { PlannedRegister } from './parts/press/register.ts';
import type { PlannedStock } from './parts/cut/stock.ts';

/** What follows from a Job. Everything the packet prints and the Workbench shows is in here. */
export interface Plan {
  /** The Job as read, with defaults. */
  readonly job: Job;
  /** Everything wrong or doubtful, errors first. */
  readonly problems: readonly Problem[];
  readonly forms: readonly PlannedForm[];
  readonly cuts: readonly PlannedCut[];
  /** In laydown order, first down first; layers that are off are left out, open ones are in. */
  readonly layers: readonly PlannedLayer[];
  readonly inks: readonly PlannedInk[];
  /** One byte a pixel: which layers lie there. Bit of a layer: `PlannedLayer.bit`. Open layers have their bit too. */
  readonly codes: Codes;
  readonly papers: readonly PlannedPaper[];
  /** Prints with tone as eyes see them from arm's length, by paper: none where all is cut, or the sheet is printed already. */
  readonly fromArm: readonly FromArm[];
  readonly press: PlannedPress;
  readonly register: PlannedRegister;
  readonly edition: PlannedEdition;
  /** Stencils side by side on the stock they are cut from; empty where no material names its stock. */
  readonly stock: readonly PlannedStock[];
}
