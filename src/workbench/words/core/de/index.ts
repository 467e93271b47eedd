import { common } from './common.ts';
import { edition } from './edition.ts';
import { form } from './form.ts';
import { ink } from './ink.ts';
import { job } from './job.ts';
import { joined } from './joined.ts';
import { packet } from './packet.ts';
import { plan } from './plan.ts';
import { press } from './press.ts';
import { separate } from './separate.ts';
import { stencil } from './stencil.ts';
import { worker } from './worker.ts';
import type { Phrases } from '../phrasebook.ts';

/** Core's sentences in German, as a screenprint studio speaks; a new one is a line in the file of its room. */
export const coreInGerman: Phrases = {
  ...common,
  ...edition,
  ...form,
  ...ink,
  ...job,
  ...joined,
  ...packet,
  ...plan,
  ...press,
  ...separate,
  ...stencil,
  ...worker,
};
