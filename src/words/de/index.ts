import type { en } from '../en/index.ts';
import { de as bench } from './bench/index.ts';
import { common } from './common.ts';
import { units } from './core/units.ts';
import { colour } from './core/colour.ts';
import { ink } from './core/ink.ts';
import { readings } from './core/readings.ts';
import { recipes } from './core/recipes.ts';
import { image } from './core/image.ts';
import { form } from './core/form.ts';
import { stencil } from './core/stencil.ts';
import { print } from './core/print.ts';
import { separate } from './core/separate.ts';
import { press } from './core/press.ts';
import { edition } from './core/edition.ts';
import { job } from './core/job.ts';
import { plan } from './core/plan.ts';
import { asks } from './core/asks.ts';
import { packet } from './packet/packet.ts';
import { cli } from './cli/cli.ts';

/** Deutsch, wie eine Siebdruckwerkstatt spricht; Anweisungen stehen im Infinitiv. */
export const de: typeof en = {
  bench,
  common,
  units,
  colour,
  ink,
  readings,
  recipes,
  image,
  form,
  stencil,
  print,
  separate,
  press,
  edition,
  job,
  plan,
  asks,
  packet,
  cli,
};
