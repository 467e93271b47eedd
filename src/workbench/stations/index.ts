import { formStation } from './forms/index.ts';
import { inkStation } from './inks/index.ts';
import { laydownStation } from './laydown/index.ts';
import { overlapStation } from './overlaps/index.ts';
import { editionStation } from './edition/index.ts';
import { pictureStation } from './picture/index.ts';
import { pressStation } from './press/setup/index.ts';
import { pressPageStation } from './press/pulling/index.ts';
import { stencilStation } from './stencils/index.ts';
import { leadsTo } from '../store/leads.ts';
import type { Station } from './station.ts';

/** Stations in the order of the work, left to right: one line each. */
export const stations: readonly Station[] = [
  formStation,
  pictureStation,
  stencilStation,
  inkStation,
  laydownStation,
  overlapStation,
  pressStation,
  pressPageStation,
  editionStation,
];

for (const { id, lookAt } of stations) if (lookAt) leadsTo(id, lookAt);
