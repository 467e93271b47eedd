import { en as bench } from './bench/index.ts';
import { common } from './common.ts';
import { page } from './page.ts';
import { units } from './core/units.ts';
import { colour } from './core/colour.ts';
import { ink } from './core/ink.ts';
import { starter } from './core/starter.ts';
import { readings } from './core/readings.ts';
import { recipes } from './core/recipes.ts';
import { image } from './core/image.ts';
import { form } from './core/form.ts';
import { stencil } from './core/stencil.ts';
import { halftone } from './core/halftone.ts';
import { separate } from './core/separate.ts';
import { press } from './core/press.ts';
import { register } from './core/register.ts';
import { edition } from './core/edition.ts';
import { day } from './core/day.ts';
import { record } from './core/record.ts';
import { job } from './core/job.ts';
import { where } from './core/where.ts';
import { plan } from './core/plan.ts';
import { asks } from './core/asks.ts';
import { buying } from './core/buying.ts';
import { fields } from './core/fields.ts';
import { engine } from './core/engine.ts';
import { packet } from './packet/packet.ts';
import { cards } from './packet/cards.ts';
import { cutPages } from './packet/cut-pages.ts';
import { setUpPages } from './packet/set-up-pages.ts';
import { recordPages } from './packet/record-pages.ts';
import { handoutPages } from './packet/handout-pages.ts';

/** All but the words of the command: what page and packet say. `bench`: words of the page alone. */
export const shown = {
  bench,
  common,
  page,
  units,
  colour,
  ink,
  starter,
  readings,
  recipes,
  image,
  form,
  stencil,
  halftone,
  separate,
  press,
  register,
  edition,
  day,
  record,
  job,
  where,
  plan,
  asks,
  buying,
  fields,
  engine,
  packet,
  cards,
  cutPages,
  setUpPages,
  recordPages,
  handoutPages,
};
