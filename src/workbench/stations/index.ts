import { formStation } from './forms/index.ts';
import { inkStation } from './inks/index.ts';
import { laydownStation } from './laydown/index.ts';
import { overlapStation } from './overlaps/index.ts';
import { editionStation } from './edition/index.ts';
import { pictureStation } from './picture/index.ts';
import { pressStation } from './press/setup/index.ts';
import { pullingPlace } from './press/pulling/index.ts';
import { stencilStation } from './stencils/index.ts';
import { leadsTo } from '../store/leads.ts';
import type { Station } from './station.ts';

/** Places in the order of the work, left to right: one line each. */
export const places: readonly Station[] = [
  formStation,
  pictureStation,
  stencilStation,
  inkStation,
  laydownStation,
  overlapStation,
  pressStation,
  pullingPlace,
  editionStation,
];

/** Those that the header names; the others are reached from within one of these. */
export const stations: readonly Station[] = places.filter((place) => place.within === undefined);

for (const { id, lookAt } of places) if (lookAt) leadsTo(id, lookAt);
