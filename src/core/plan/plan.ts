import { smoothestSpectrum, xyzFromLab } from '../colour/index.ts';
import { offsetRegion, type Region } from '../form/index.ts';
import { filmOf, stackReflectance } from '../ink/index.ts';
import { mostLayers, checkJob, settleProblems, type Job, type JobBundle, type JobLayer } from '../job/index.ts';
import { planCut } from './parts/cut-pairs.ts';
import { countLogName, planEdition } from './parts/edition.ts';
import { findInks } from './parts/inks.ts';
import { learnOnPaper } from './parts/learning.ts';
import { filmOfLayer, potOfLayer } from './parts/let-down.ts';
import { inkSwatch, planPaper, swatchOf, type PrintedLayer } from './parts/papers.ts';
import { codesOf, codeColours, groundsOf } from './parts/proof.ts';
import { meetingPairs, planRegister } from './parts/register.ts';
import { createMemory, type Memory } from './memory.ts';
import { planMix } from './parts/mix.ts';
import { planPress } from './parts/press.ts';
import { makeCut, makeForm } from './parts/shapes.ts';
import { recolour, type Recoloured } from './parts/recolour.ts';
import { makeStencils, materialOf, materialsOf } from './parts/stencils.ts';
import { planStock } from './parts/stock.ts';
import { edgeRidge } from '../press/index.ts';
import { ridgeWarnings } from '../stencil/index.ts';
import type { Plan, PlannedCut, PlannedForm, PlannedInk, PlannedLayer, PlannedPaper } from './types.ts';
import { codeAreas, type RgbPicture } from '../print/index.ts';
import type { Problem } from '../problem.ts';

export type * from './types.ts';
export type { PlannedPress } from './parts/press.ts';
export { materialsOf, mustHold } from './parts/stencils.ts';
export { sayOffer, takeOffer } from './parts/offers.ts';
export { countLogName, type PlannedEdition } from './parts/edition.ts';
export type { PlannedRegister, TestedRegister } from './parts/register.ts';
export type { PlannedGap } from './parts/gaps.ts';
export type { CutSet, CutUse } from './parts/cut-pairs.ts';
export type { PlannedStock, PlacedOnStock } from './parts/stock.ts';
export type { Learning } from './parts/learning.ts';
export type { Recoloured } from './parts/recolour.ts';
export { readyBundle, toRgb, type ReadyBundle } from './parts/pictures.ts';

/** A Job and its attachments; with `readyBundle` also its pictures, decoded. Without them printed sheets are planned as bare paper. */
export type PlanInput = JobBundle & { readonly pictures?: ReadonlyMap<string, RgbPicture>; readonly pictureProblems?: readonly Problem[] };

export interface Planner {
  /** Same result as `plan`; what a change does not touch is taken from memory, and is the same object as before. */
  plan(bundle: PlanInput): Plan;
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
    plan: (bundle) => (last = makePlan(bundle, memory)),
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

const severities = ['error', 'warning', 'note'] as const;

function makePlan(bundle: PlanInput, memory: Memory): Plan {
  const { job, attachments } = bundle;
  const problems: Problem[] = [...checkJob(bundle), ...(bundle.pictureProblems ?? [])];

  const forms = new Map<string, PlannedForm>();
  for (const form of job.forms) {
    const bytes = form.drawing === undefined ? undefined : attachments.get(form.drawing);
    const made = memory.part(`form ${form.id}`, [form, bytes], () => makeForm(form, bytes));
    problems.push(...made.problems);
    if (made.form) forms.set(form.id, made.form);
  }
  const cuts = new Map<string, Region>();
  for (const cut of job.cuts) {
    const used = [...new Set(cut.parts.map((p) => p.form))].map((id) => forms.get(id) ?? null);
    const made = memory.part(`cut ${cut.id}`, [cut, job.image, ...used.map((f) => f?.region ?? null)], () =>
      makeCut(cut, job.image, forms),
    );
    problems.push(...made.problems);
    if (made.region.rings.length > 0) cuts.set(cut.id, made.region);
  }

  const layers = job.layers.filter((l) => !l.off && cuts.has(l.cut)).slice(0, mostLayers);
  const press = memory.part(
    'press',
    [job.screen ?? null, job.image, job.papers, job.materials, layers.map((l) => [l.id, l.name, l.offContactMm ?? null])],
    () => planPress(job, layers),
  );
  problems.push(...press.problems);
  const found = memory.part(
    'inks',
    [job.inks, job.papers.map((p) => [p.id, p.reading]), press.deposit.wetMicrons],
    () => findInks(job, press.deposit.wetMicrons),
    8,
  );
  problems.push(...found.problems);

  const bitOf = new Map(
    [...layers]
      .map((l) => l.id)
      .sort()
      .map((id, bit) => [id, bit]),
  );
  const printed: PrintedLayer[] = layers.flatMap((layer) => {
    const pot = potOfLayer(layer, found);
    return pot
      ? [{ id: layer.id, bit: bitOf.get(layer.id) as number, pot, film: filmOf(pot), sigma: found.inkSigmas.get(layer.ink ?? '') ?? 1 }]
      : [];
  });

  const materials = materialsOf(job);
  const bareSheets = job.papers.filter((p) => found.papers.has(p.id) && !p.printed);
  const colours = bareSheets.map((paper) => codeColours(found.papers.get(paper.id) as Float64Array, printed, found.surface));
  const stencils = makeStencils(
    job,
    layers.map((layer) => ({
      layer,
      bit: bitOf.get(layer.id) as number,
      cut: spreadCut(cuts.get(layer.cut) as Region, layer, memory),
      material: materialOf(materials, job.cuts.find((c) => c.id === layer.cut)?.material),
    })),
    colours,
    memory,
    materials,
  );
  for (const made of stencils.values()) problems.push(...made.problems);

  const cutLayers = layers.flatMap((layer) => {
    const stencil = stencils.get(layer.id)?.stencil;
    return stencil ? [{ layer, stencil, bit: bitOf.get(layer.id) as number }] : [];
  });
  const codes = codesOf(
    job.image,
    cutLayers.map((c) => ({ bit: c.bit, prints: c.stencil.prints })),
    memory,
  );
  const areas = memory.part('areas', [codes], () => codeAreas(codes));
  const grounds = groundsOf(bundle, found, codes, memory);

  const papers = job.papers.flatMap((paper): PlannedPaper[] => {
    const ground = grounds.get(paper.id) ?? null;
    const laydown = layers.map((l) => [l.id, l.ink, l.strength, l.base]);
    const learned = memory.part(
      `learning ${paper.id}`,
      [paper.id, job.proofReadings, found, laydown, layers.map((l) => l.name)],
      () => learnOnPaper(job, layers, found, press.deposit.wetMicrons, paper.id),
      8,
    );
    problems.push(...(learned?.problems ?? []));
    const planned = memory.part(
      `paper ${paper.id}`,
      [paper, job.proofReadings, job.seed, found, ground, areas, learned, printed.map((p) => [p.id, p.bit]), laydown],
      () => planPaper(paper, job, found, printed, areas, ground, learned),
      8,
    );
    return planned ? [planned] : [];
  });

  const meeting = memory.part('meeting', [codes, cutLayers.map((c) => [c.layer.id, c.bit])], () =>
    meetingPairs(
      cutLayers.map(({ layer, stencil, bit }) => ({ id: layer.id, bit, prints: stencil.prints })),
      codes,
    ),
  );
  const ridges = memory.part(
    'ridges',
    [cutLayers.map((c) => c.stencil), cutLayers.map((c) => c.layer.name), materials, job.cuts.map((c) => [c.id, c.material])],
    () =>
      ridgeWarnings(
        cutLayers.map(({ layer, stencil }) => ({
          id: layer.id,
          name: layer.name,
          prints: stencil.prints,
          material: materialOf(materials, job.cuts.find((c) => c.id === layer.cut)?.material),
        })),
      ),
  );
  problems.push(...ridges);
  const register = memory.part(
    'register',
    [job.register, job.papers, job.image, job.seed, layers.map((l) => [l.id, l.name]), meeting, press, job.screen ?? null],
    () => planRegister(job, layers, meeting, press),
  );
  problems.push(...register.problems);
  const log = attachments.get(countLogName);
  const edition = memory.part(
    'edition',
    [
      job.edition,
      job.day,
      job.papers,
      job.title,
      job.maker,
      job.units,
      job.inks,
      job.cuts,
      job.materials,
      layers,
      press,
      register.sigma.text,
      log ?? null,
    ],
    () => planEdition(job, layers, press, register.sigma.text, log),
  );
  problems.push(...edition.problems);

  const firstPaper =
    job.papers.map((p) => found.papers.get(p.id)).find((s) => s !== undefined) ?? smoothestSpectrum(xyzFromLab([95, 0, 0]));
  const swatch = (layer: JobLayer): PlannedLayer['swatch'] => {
    const film = filmOfLayer(layer, found);
    return film && swatchOf(stackReflectance(firstPaper, [film], found.surface));
  };
  const plannedLayers = cutLayers.map(({ layer, stencil, bit }, i): PlannedLayer => {
    const printsMm2 = areaOfBit(areas, bit);
    const pulls = edition.pullsOfRun[layers.indexOf(layer)] ?? 0;
    return {
      id: layer.id,
      name: layer.name,
      run: i + 1,
      bit,
      cutId: layer.cut,
      side: layer.side,
      stencil,
      inkId: layer.ink,
      strength: layer.strength,
      printsMm2,
      coverage: printsMm2 / (job.image.widthMm * job.image.heightMm),
      wetMicrons: press.deposit.wetMicrons,
      deposit: layer.ink === null ? 1 : (found.deposits.get(layer.ink) ?? 1),
      swatch: swatch(layer),
      mix: planMix(job, layer, { printsMm2, pulls, deposit: press.deposit, retarderShare: edition.day?.openTime.retarderShare ?? 0 }),
      sheetsThrough: pulls,
      ridge: edgeRidge(press.deposit.wetMicrons, materialOf(materials, job.cuts.find((c) => c.id === layer.cut)?.material).thicknessMm),
    };
  });

  const spreads = new Map(layers.map((l) => [l.id, l.spreadMm]));
  const plannedCuts = job.cuts.flatMap((cut): PlannedCut[] => {
    const region = cuts.get(cut.id);
    const served = plannedLayers.filter((l) => l.cutId === cut.id);
    const material = materialOf(materials, cut.material);
    return region
      ? [
          {
            id: cut.id,
            name: cut.name,
            region,
            materialId: material.id,
            layers: served.map((l) => l.id),
            ...planCut(served, spreads, material, job.materials.find((m) => m.id === material.id)?.kerfMm ?? 0),
          },
        ]
      : [];
  });
  const stock = planStock(job, plannedCuts, plannedLayers);
  problems.push(...stock.problems);
  return {
    job,
    problems: sortProblems(problems, job),
    forms: [...forms.values()],
    cuts: plannedCuts,
    layers: plannedLayers,
    inks: job.inks.map((ink): PlannedInk => {
      const film = found.inks.get(ink.id);
      const none = new Float64Array(36);
      return {
        id: ink.id,
        name: ink.name,
        role: ink.role,
        swatch: film ? inkSwatch(film, firstPaper, found) : swatchOf(firstPaper),
        k: film?.k ?? none,
        s: film?.s ?? none,
        trust: found.trust.get(ink.id)!,
      };
    }),
    codes,
    papers,
    press,
    register,
    edition,
    stock: stock.sheets,
  };
}

/** A layer that is spread prints farther out on all sides: its window grows, or its piece shrinks. */
function spreadCut(cut: Region, layer: JobLayer, memory: Memory): Region {
  if (layer.spreadMm === 0) return cut;
  const mm = layer.side === 'window' ? layer.spreadMm : -layer.spreadMm;
  return memory.part(`spread ${layer.id}`, [cut, mm], () => offsetRegion(cut, mm));
}

function sortProblems(problems: readonly Problem[], job: Job): Problem[] {
  const once = new Map(settleProblems(problems, job).map((p) => [JSON.stringify([p.code, p.path, p.where, p.message]), p]));
  return [...once.values()].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
}

function areaOfBit(areas: Float64Array, bit: number): number {
  let sum = 0;
  for (let code = 0; code < 256; code++) if (code & (1 << bit)) sum += areas[code];
  return sum;
}
