import type { Region } from '../form/index.ts';
import { checkJob, mostLayers, settleProblems, withCutBridges, type Job, type JobBundle, type JobLayer } from '../job/index.ts';
import type { RgbPicture } from '../print/index.ts';
import type { Problem } from '../problem.ts';
import type { Task } from '../task.ts';
import { say } from '../../words/say.ts';
import { createMemory, type Memory } from './memory.ts';
import { borrowedInks } from './parts/colour/borrowed.ts';
import { editionOf } from './parts/press/edition.ts';
import { drawPrint, type Drawn } from './parts/colour/drawn.ts';
import { inksOf } from './parts/colour/inks.ts';
import { coloursOnPaper, cutTheStencils, planCuts, planInks, planLayers, ridgeOfLayer, ridgesOf, wearReads } from './parts/cut/laydown.ts';
import { layTheInks, type RunLayer } from './parts/colour/let-down.ts';
import { planPapers } from './parts/colour/papers.ts';
import { depositOfRun, pressOf } from './parts/press/press.ts';
import { cocklingNotes } from './parts/press/press-notes.ts';
import { areasOf, codesOf } from './parts/colour/proof.ts';
import { recolour, type Recoloured } from './parts/colour/recolour.ts';
import { registerOf } from './parts/press/register.ts';
import { planShapes } from './parts/cut/shapes.ts';
import { planStock } from './parts/cut/stock.ts';
import { seenFromArm } from './parts/tone/from-arm.ts';
import { layTheTones } from './parts/tone/lay.ts';
import { screensOf } from './parts/tone/screens.ts';
import type { Plan } from './types.ts';

export type * from './types.ts';
export type * from './planned.ts';
export type { PlannedPress, RunMesh } from './parts/press/press.ts';
export { depositOfRun } from './parts/press/press.ts';
export { materialsOf, linesToCut } from './parts/cut/stencils.ts';
export { sayOffer, takeOffer } from './parts/cut/offers.ts';
export { pressNotes } from './parts/press/press-notes.ts';
export { countLogName, sheetsOf, type PlannedEdition } from './parts/press/edition.ts';
export type { StopSetting } from './parts/press/stops.ts';
export type { PlannedRegister, TestedRegister } from './parts/press/register.ts';
export type { PlannedGap } from './parts/press/gaps.ts';
export type { PlannedStock, PlacedOnStock } from './parts/cut/stock.ts';
export type { Learning } from './parts/colour/learning.ts';
export { buyingHeads, buyingList, fromParent, type BuyingGroup, type ToBuy } from './parts/press/buying.ts';
export type { Recoloured } from './parts/colour/recolour.ts';
export { recolourDrawn, type Drawn } from './parts/colour/drawn.ts';
export { readyBundle, toRgb, type ReadyBundle } from './parts/cut/pictures.ts';

/** A Job and its attachments; with `readyBundle` also its pictures, decoded. Without them printed sheets are planned as bare paper. */
export type PlanInput = JobBundle & { readonly pictures?: ReadonlyMap<string, RgbPicture>; readonly pictureProblems?: readonly Problem[] };

export interface Planner {
  /**
   * Same result as `plan`; what a change does not touch is taken from memory, and is the same object as before.
   * `report` is told what is being made; planning itself is never interrupted.
   */
  plan(bundle: PlanInput, report?: Task['report']): Plan;
  /**
   * The print as it is drawn, in a quarter of the time that the Plan takes: shown until the Plan is there, which takes over what was
   * made for it. Bridges, ridges and doubt are missing. Null where tones, readings of proofs or an earlier print ask for the whole Plan.
   */
  drawn(bundle: PlanInput): Drawn | null;
  /**
   * While a slider moves or a run is carried to another place: the colours of the last Plan's overlaps on one paper, made anew
   * in a few milliseconds. Stencils and bands stay as they were until the next `plan`. Over an earlier print they
   * are near the Plan's, else the same. Null when more than ink, strength, base or order has changed: then only `plan` will do.
   */
  recolour(job: Job, paperId: string): Recoloured | null;
}

export function createPlanner(): Planner {
  const memory = createMemory();
  let last: Plan | null = null;
  return {
    plan: (bundle, report = () => undefined) => (last = makePlan(bundle, memory, report)),
    drawn: (bundle) => drawnOf(bundle, memory),
    recolour: (job, paperId) => last && recolour(last, job, paperId, memory),
  };
}

/**
 * Job → Plan. Pure: same Job, same Plan, to the last digit. `prepareDrawings` must have run. Never throws for what is
 * wrong in the Job: that is told in `problems`, and what can be planned is.
 */
export function plan(bundle: PlanInput): Plan {
  return createPlanner().plan(bundle);
}

function drawnOf(bundle: PlanInput, memory: Memory): Drawn | null {
  const { job } = bundle;
  const { cuts } = planShapes(bundle, memory, () => undefined);
  const layers = printedLayers(job, cuts);
  return drawPrint(job, layers, cuts, pressOf(job, layers, memory), memory);
}

/** The runs that are in the print and have something to cut. */
const printedLayers = (job: Job, cuts: ReadonlyMap<string, Region>): JobLayer[] =>
  job.layers
    .filter((l) => !l.off && cuts.has(l.cut))
    .slice(0, mostLayers)
    .map((l) => withCutBridges(job, l));

/** What is wrong or doubtful, gathered as the parts are made. */
type Found = (problems: readonly Problem[]) => void;

function makePlan(bundle: PlanInput, memory: Memory, report: Task['report']): Plan {
  const { job } = bundle;
  const problems: Problem[] = [...checkJob(bundle), ...(bundle.pictureProblems ?? [])];
  const found: Found = (more) => problems.push(...more);

  report(0, say('plan.makingForms'));
  const shapes = planShapes(bundle, memory, found);
  const layers = printedLayers(job, shapes.cuts);
  const press = pressOf(job, layers, memory);
  const inks = inksOf(job, press.deposit.wetMicrons, memory);
  found([...press.problems, ...inks.problems, ...borrowedInks(job, layers)]);

  const flat = layers.map((l): RunLayer => ({ ...l, filmTimes: depositOfRun(press, l.id).wetMicrons / press.deposit.wetMicrons }));
  const laydown = layTheInks(flat, inks);
  report(0.15, say('plan.makingStencils'));
  const stencils = cutTheStencils(job, layers, laydown, shapes.cuts, inks, memory, found);
  report(0.5, say('plan.makingColours'));
  const cutCodes = codesOf(
    job.image,
    stencils.filter((c) => !c.layer.tone).map((c) => ({ bit: c.bit, prints: c.stencil.prints })),
    memory,
  );
  const screens = screensOf(layers, press, job.papers, memory);
  const tone = layTheTones(bundle, cutCodes, stencils, screens, laydown, inks, memory);
  const { codes } = tone;
  const areas = areasOf(codes, memory);
  // What the stencils' thickness adds along edges is known only now.
  const runs = flat.map((l): RunLayer => {
    const made = stencils.find((s) => s.layer.id === l.id);
    return made ? { ...l, filmTimes: l.filmTimes * ridgeOfLayer(job, l, made.stencil, press, memory).colourTimes } : l;
  });
  const inked = layTheInks(runs, inks);
  const papers = planPapers(bundle, runs, inks, codes, areas, screens, memory, found);

  report(0.75, say('plan.makingRegister'));
  found(ridgesOf(job, stencils, memory));
  const register = registerOf(job, layers, stencils, press, codes, coloursOnPaper(job, inked, inks, memory), memory);
  const edition = editionOf(bundle, layers, press, register, wearReads(job, layers, stencils, press, memory), memory);
  found([...register.problems, ...edition.problems]);

  const plannedLayers = planLayers({ job, layers: runs, stencils, inks, press, edition, areas, tones: tone.layers, memory });
  found(cocklingNotes(job, plannedLayers));
  const cuts = planCuts(job, layers, plannedLayers, shapes.cuts);
  const stock = planStock(job, cuts, plannedLayers);
  found(stock.problems);
  return {
    job,
    problems: sortProblems(problems, job),
    forms: shapes.forms,
    cuts,
    layers: plannedLayers,
    inks: planInks(job, inks),
    codes,
    papers,
    fromArm: seenFromArm(codes, plannedLayers, papers, memory),
    press,
    register,
    edition,
    stock: stock.sheets,
  };
}

const severities = ['error', 'warning', 'note'] as const;

/** Each once, the worst first. */
function sortProblems(problems: readonly Problem[], job: Job): Problem[] {
  const once = new Map(settleProblems(problems, job).map((p) => [JSON.stringify([p.code, p.path, p.where, p.message]), p]));
  return [...once.values()].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
}
