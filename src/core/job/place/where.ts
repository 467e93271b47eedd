import { say, type Saying } from '../../../words/say.ts';
import type { Lead, Problem } from '../../problem.ts';
import { fields, inReading, thingsIn, type Known, type Node, type Raw, type Scope } from './nouns.ts';
import type { Job, JobCut, JobLayer, JobPicture, JobScreen } from '../schema/schema.ts';

/** A Job, or its document as it was read and may yet be wrong. */
export type Document = Job | Readonly<Record<string, unknown>>;

type Step = string | number | { readonly id: string };

/** `layers[#kelp].ink` → `layers`, the thing of that id, `ink`. What is no path ends where it stops being one. */
function stepsOf(path: string): { readonly steps: readonly Step[]; readonly whole: boolean } {
  const steps: Step[] = [];
  const next = /([A-Za-z]\w*)|\[(\d+)\]|\[#([^\]]+)\]|\./y;
  let read = 0;
  for (let found = next.exec(path); found; found = next.exec(path)) {
    read = next.lastIndex;
    const [, field, index, id] = found;
    if (field !== undefined) steps.push(field);
    else if (index !== undefined) steps.push(Number(index));
    else if (id !== undefined) steps.push({ id });
  }
  return { steps, whole: read === path.length };
}

/** How far a path has been walked: what is called so here, what it is in, and what the document holds there. */
interface Here {
  readonly says: Saying;
  readonly scope: Scope;
  readonly node: Node | null;
  readonly value: unknown;
}

function intoField(here: Here, field: string): Here {
  const { node, scope } = here;
  const value = typeof here.value === 'object' && here.value !== null ? (here.value as Raw)[field] : undefined;
  const stay: Here = { ...here, node: null, value };
  if (node === null || typeof node === 'string' || 'key' in node) return stay;
  if ('reading' in node) {
    const part = Object.hasOwn(inReading, field) ? inReading[field as keyof typeof inReading] : null;
    return part ? { ...stay, says: say('where.inReading', { reading: here.says, part }) } : stay;
  }
  const child: Node | undefined = Object.hasOwn(node.fields, field) ? node.fields[field] : undefined;
  if (child === undefined) return stay;
  const noun = typeof child === 'string' || 'key' in child ? child : 'reading' in child ? child.reading : child.noun;
  return {
    says: typeof noun === 'string' ? say(`where.${noun}`, { it: scope.it, of: scope.of }) : noun,
    scope: typeof child === 'object' && 'inside' in child && child.inside ? child.inside(scope) : scope,
    node: child,
    value,
  };
}

function intoList(here: Here, index: number, document: Raw): Here {
  const { node, scope } = here;
  const item = thingsIn(here.value)[index] ?? {};
  if (node === null || typeof node === 'string' || !('each' in node) || !node.each) return { ...here, value: item };
  const inside = node.each(item, index, scope, document);
  return { says: inside.it, scope: inside, node: { noun: inside.it, fields: node.fields }, value: item };
}

/** What a path leads to: as a printmaker says it; the path with numbers for ids; where on the bench one goes to mend it. */
function follow(path: string, document: Document): { readonly says: Saying; readonly path: string; readonly lead: Lead | undefined } {
  const job = say('where.job');
  const { steps, whole } = stepsOf(path);
  let here: Here = { says: job, scope: { it: job, of: job }, node: { noun: job, fields }, value: document };
  let walked = '';
  for (const step of steps) {
    if (typeof step === 'string') {
      here = intoField(here, step);
      walked += walked === '' ? step : `.${step}`;
      continue;
    }
    const index = typeof step === 'number' ? step : thingsIn(here.value).findIndex((thing) => thing['id'] === step.id);
    if (index < 0) return { says: here.says, path, lead: leadTo(steps, document) };
    here = intoList(here, index, document);
    walked += `[${index}]`;
  }
  return { says: here.says, path: whole ? walked : path, lead: leadTo(steps, document) };
}

/** Where something in the Job is, as a printmaker says it: `papers[1].printed.picture` → “the picture on the paper “Warm fibre””. */
export function whereIn(path: string, document: Document): Saying {
  return follow(path, document).says;
}

/** Problems as they leave core: each says where it is in a printmaker's words, its path holds no ids, and it leads to where it is mended. */
export function settleProblems(problems: readonly Problem[], document: Document): Problem[] {
  return problems.map((p) => {
    if (p.path === '') return p.where ? p : { ...p, where: say('where.job') };
    const { says, path, lead } = follow(p.path, document);
    return { ...p, path, where: p.where ?? says, lead: p.lead ?? lead };
  });
}

const leads: { readonly [K in Known<Job>]: Lead | null } = {
  schemaVersion: null,
  print: null,
  title: null,
  maker: { station: 'edition', part: 'record' },
  units: null,
  language: null,
  image: { station: 'forms', part: 'image' },
  stencilMarginMm: { station: 'forms', part: 'image' },
  materials: { station: 'stencils', part: 'material' },
  knife: { station: 'stencils', part: 'knife' },
  cameras: { station: 'forms', part: 'form' },
  forms: { station: 'forms', part: 'form' },
  cuts: { station: 'forms', part: 'cut' },
  layers: { station: 'laydown' },
  inks: { station: 'inks', part: 'shelf' },
  papers: { station: 'press', part: 'papers' },
  screen: { station: 'press', part: 'screen' },
  press: { station: 'press', part: 'screen' },
  register: { station: 'press', part: 'register' },
  edition: { station: 'edition', part: 'sheets' },
  day: { station: 'press', part: 'day' },
  wanted: { station: 'inks', part: 'wanted' },
  proofReadings: { station: 'inks', part: 'learn' },
  done: { station: 'laydown' },
  potLogs: { station: 'inks', part: 'pot' },
  picture: { station: 'picture', part: 'picture' },
  seed: null,
  note: null,
};

type LeadsIn<T> = { readonly [K in Known<T>]?: Lead };
const ofCut: LeadsIn<JobCut> = { material: { station: 'stencils', part: 'material' } };
const ofLayer: LeadsIn<JobLayer> = {
  cut: { station: 'forms', part: 'layer' },
  side: { station: 'forms', part: 'layer' },
  spreadMm: { station: 'press', part: 'register' },
  offContactMm: { station: 'press', part: 'gap' },
  islands: { station: 'stencils', part: 'layer' },
  bridgesBy: { station: 'stencils', part: 'layer' },
  pinnedBridges: { station: 'stencils', part: 'layer' },
  noBridge: { station: 'stencils', part: 'layer' },
  closings: { station: 'stencils', part: 'layer' },
  drops: { station: 'stencils', part: 'layer' },
};
const ofScreen: LeadsIn<JobScreen> = {
  offContactMm: { station: 'press', part: 'gap' },
  hingeLiftMm: { station: 'press', part: 'gap' },
  riserStepMm: { station: 'press', part: 'gap' },
  tensionNPerCm: { station: 'press', part: 'gap' },
};
const ofEdition: LeadsIn<Job['edition']> = {
  record: { station: 'edition', part: 'record' },
  year: { station: 'edition', part: 'record' },
  workshop: { station: 'edition', part: 'record' },
  setApart: { station: 'edition', part: 'signing' },
};
const ofPicture: LeadsIn<JobPicture> = {
  layers: { station: 'picture', part: 'layers' },
  pots: { station: 'picture', part: 'layers' },
  wishes: { station: 'picture', part: 'layers' },
  over: { station: 'picture', part: 'layers' },
  way: { station: 'picture', part: 'layers' },
  takenAs: { station: 'picture', part: 'layers' },
  key: { station: 'picture', part: 'layers' },
  cutPairs: { station: 'picture', part: 'layers' },
  mostInPot: { station: 'picture', part: 'layers' },
  effort: { station: 'picture', part: 'layers' },
  knife: { station: 'picture', part: 'knife' },
  material: { station: 'picture', part: 'knife' },
  sigmaMm: { station: 'picture', part: 'knife' },
  reach: { station: 'picture', part: 'knife' },
  veil: { station: 'picture', part: 'picture' },
};
const leadsWithin: { readonly [K in Known<Job>]?: Readonly<Record<string, Lead>> } = {
  cuts: ofCut,
  layers: ofLayer,
  screen: ofScreen,
  edition: ofEdition,
  picture: ofPicture,
};

function leadTo(steps: readonly Step[], document: Document): Lead | undefined {
  const [first, ...rest] = steps;
  if (typeof first !== 'string' || !Object.hasOwn(leads, first)) return undefined;
  const list = first as Known<Job>;
  const field = rest.find((step) => typeof step === 'string');
  const which = rest.find((step) => typeof step !== 'string');
  const within = field !== undefined ? leadsWithin[list]?.[field] : undefined;
  // What is wrong with a layer as a whole is wrong with its stencil.
  const lead =
    within ??
    (list === 'layers' && which !== undefined && field === undefined ? { station: 'stencils' as const, part: 'layer' } : leads[list]);
  if (!lead) return undefined;
  const thing = typeof which === 'number' ? thingsIn((document as Raw)[list])[which]?.['id'] : which?.id;
  return typeof thing === 'string' ? { ...lead, id: thing } : lead;
}
