import { labFromSpectrum, type Lab } from '../../colour/index.ts';
import {
  additionProblems,
  findRecipe,
  fromLeftovers,
  mixBatch,
  stackReflectance,
  type Batch,
  type Ink,
  type InkShelf,
  type FromLeftovers,
  type RecipesFound,
} from '../../ink/index.ts';
import type { Job, JobInk } from '../../job/index.ts';
import type { Problem } from '../../problem.ts';
import { name as asName, say } from '../../../words/say.ts';
import { filmOfLayer, findInks, letDownParts, thicker, type Plan } from '../../plan/index.ts';
import { inJob, inkBench, layerOf, paperOf, placeOfPot, potsOf, refuse } from '../bench.ts';
import { printedOn, type PrintedOn, type PrintedOnAsk } from './printed-on.ts';
import { jarsOfShelf } from './shelf-jars.ts';

export interface RecipeQuestion extends PrintedOnAsk {
  readonly wanted: Lab;
  /** Pots to mix from, by id; left out: all. */
  readonly pots?: readonly string[];
  readonly mostPots?: number;
  readonly nearEnough?: number;
  readonly baseId?: string;
  /** How much is mixed, and what the scale shows: what can't be weighed is left out. */
  readonly totalGrams?: number;
  readonly scaleStepGrams?: number;
  /** Share of the pot for retarder. */
  readonly retarderShare?: number;
}

/** The best recipe for a wanted colour on a paper, over layers already printed. */
export function askRecipe(
  job: Job,
  ask: RecipeQuestion,
  plan?: Plan,
): RecipesFound & { readonly on: Pick<PrintedOn, 'over' | 'layerId'>; readonly problems: readonly Problem[] } {
  const { seen, surface, deposit, inkOf: inRun, over, layerId } = printedOn(inkBench(job, plan), ask, plan);
  const pots = potsOf(job)
    .filter((p) => ask.pots === undefined || ask.pots.includes(p.id))
    .flatMap((p) => {
      const ink = inRun(p.id);
      return ink ? [{ id: p.id, name: p.name, ink }] : [];
    });
  const whole = job.inks
    .filter((k) => k.role === 'ink' && k.from === 'mix' && (ask.pots === undefined || ask.pots.includes(k.id)))
    .flatMap((k) => {
      const ink = inRun(k.id);
      return ink ? [{ id: k.id, name: k.name, ink }] : [];
    });
  const additions = ask.retarderShare ?? 0;
  const found = inJob(job, () =>
    findRecipe({
      wanted: ask.wanted,
      paper: seen,
      surface,
      deposit,
      pots,
      whole,
      leastShare: leastShareOf(ask),
      base: ask.baseId === undefined ? undefined : inRun(ask.baseId),
      additions,
      mostPots: ask.mostPots,
      nearEnough: ask.nearEnough,
    }),
  );
  return { ...found, on: { over, layerId }, problems: additions > 0 ? additionProblems(additions, 0, say('asks.theRecipe')) : [] };
}

/** A part weighs at least what the scale shows twice over; it shows a tenth of a gram (common practice), the pot holds 100 g. */
const leastShareOf = (ask: { readonly scaleStepGrams?: number; readonly totalGrams?: number }): number =>
  (2 * (ask.scaleStepGrams ?? 0.1)) / (ask.totalGrams ?? 100);

export interface LeftoversQuestion extends PrintedOnAsk {
  readonly wanted: Lab;
  readonly totalGrams: number;
  readonly scaleStepGrams?: number;
  /** ΔE00 that is near enough. */
  readonly within: number;
  /** Grams left by ink id, in place of what the job says. */
  readonly left?: Readonly<Record<string, number>>;
  /** The studio's shelf: jars of it count as well. */
  readonly shelf?: InkShelf | null | undefined;
}

export interface LeftoversAnswer {
  /** Least new ink that comes near enough; null where nothing does. */
  readonly best: FromLeftovers | null;
  /** The nearest there is, near enough or not. */
  readonly nearest: FromLeftovers | null;
  /** New ink that the same colour takes without any jar; null where no such pot comes near enough. */
  readonly freshGrams: number | null;
  readonly jars: number;
  /** Jars of the shelf that the job has no ink of: a pot that takes one wants it in the job. */
  readonly shelfInks: readonly JobInk[];
  readonly on: Pick<PrintedOn, 'over' | 'layerId'>;
}

/** The pot from what is left in jars: nearest to a wanted colour, with the least new ink. */
export function askLeftovers(job: Job, ask: LeftoversQuestion, plan?: Plan): LeftoversAnswer {
  const bench = inkBench(job, plan);
  const { seen, surface, deposit, inkOf, over, layerId } = printedOn(bench, ask, plan);
  const times = bench.layers.find((l) => l.id === layerId)?.filmTimes;
  const fromShelf = ask.shelf ? jarsOfShelf(ask.shelf, job) : [];
  const strangers = fromShelf.filter((jar) => !jar.here).map((jar) => jar.ink);
  // Read through the surface that the job's own inks are, so that what they are doesn't hang on what stands on the shelf.
  const theirs = findInks({ ...job, inks: strangers }, bench.wetMicrons, surface).inks;
  const filmOf = (id: string): Ink | undefined => inkOf(id) ?? (theirs.has(id) ? thicker(theirs.get(id)!, times) : undefined);
  const leftOf = (k: JobInk): number => ask.left?.[k.id] ?? k.leftGrams ?? fromShelf.find((jar) => jar.ink.id === k.id)?.leftGrams ?? 0;
  const named = [...job.inks, ...strangers].flatMap((k) => {
    const ink = filmOf(k.id);
    return ink ? [{ id: k.id, name: k.name, ink, densityGPerMl: k.densityGPerMl, leftGrams: leftOf(k), of: k }] : [];
  });
  for (const id of Object.keys(ask.left ?? {}))
    if (!named.some((one) => one.id === id))
      refuse(job, 'no-such-ink', 'inks', say('asks.noSuchInk', { ink: asName(id) }), say('asks.giveInkId'));
  const jars = named.filter((one) => one.leftGrams > 0 && one.of.role === 'ink');
  if (jars.length === 0) refuse(job, 'no-jars', 'inks', say('asks.noJars'), say('asks.sayWhatIsLeft'));
  const own = named.filter((one) => !strangers.includes(one.of));
  const common = {
    wanted: ask.wanted,
    paper: seen,
    surface,
    deposit,
    pots: own.filter((one) => one.of.role === 'ink' && one.of.from !== 'mix'),
    base: own.find((one) => one.of.role === 'transparent-base'),
    totalGrams: ask.totalGrams,
    within: ask.within,
    leastShare: leastShareOf(ask),
  };
  const found = fromLeftovers({ ...common, jars });
  const fresh = fromLeftovers({ ...common, jars: [] });
  const used = (found.best ?? found.nearest)?.parts ?? [];
  return {
    ...found,
    freshGrams: fresh.best && fresh.best.newGrams,
    jars: jars.length,
    shelfInks: strangers.filter((ink) => used.some((part) => part.id === ink.id)),
    on: { over, layerId },
  };
}

export interface BatchQuestion {
  /** Id, name or run number. */
  readonly layer: string;
  readonly scaleStepGrams: number;
  /** Left out: what the run needs. */
  readonly totalGrams?: number;
}

/** A layer's pot, weighed to the scale's step, with the colour error of the rounding. */
export function askBatch(plan: Plan, ask: BatchQuestion): Batch & { readonly layerId: string; readonly layerName: string } {
  const bench = inkBench(plan.job);
  const layer = layerOf(bench, ask.layer);
  const planned = plan.layers.find((l) => l.id === layer.id);
  const parts = letDownParts(plan.job, layer);
  if (parts.length === 0) refuse(plan.job, 'layer-open', placeOfPot(layer), say('asks.openNothingToMix'), say('asks.chooseInk'));
  const { spectrum } = paperOf(bench, undefined);
  const retarder = planned?.mix?.retarderShare ?? 0;
  const clear = { k: new Float64Array(36), s: new Float64Array(36) };
  const place = placeOfPot(layer);
  const weigh = (): Batch => {
    const batch = mixBatch({
      parts: parts.map((p) => ({
        id: p.inkId,
        name: p.name,
        share: p.share,
        ink: bench.found.inks.get(p.inkId) ?? clear,
        densityGPerMl: p.densityGPerMl,
      })),
      totalGrams: ask.totalGrams ?? planned?.mix?.totalGrams ?? 100,
      scaleStepGrams: ask.scaleStepGrams,
      ground: spectrum,
      surface: bench.found.surface,
      place,
    });
    return { ...batch, problems: [...batch.problems, ...(retarder > 0 ? additionProblems(retarder, 0, place) : [])] };
  };
  return { ...inJob(plan.job, weigh), layerId: layer.id, layerName: layer.name };
}

export interface Reach {
  readonly inkId: string;
  readonly strength: number;
  /** Overlaps that the layer takes part in, with this ink: ids first down first. */
  readonly overlaps: readonly { readonly layers: readonly string[]; readonly lab: Lab; readonly areaMm2: number }[];
}

const reachStrengths = [0.15, 0.35, 0.6, 0.85, 1];

/** The whole reach of an open layer: every ink at several strengths, and all overlaps that follow. */
export function askReach(
  plan: Plan,
  ask: { readonly layer: string; readonly paperId?: string; readonly inks?: readonly string[] },
): Reach[] {
  const bench = inkBench(plan.job, plan);
  const layer = layerOf(bench, ask.layer);
  const { spectrum } = paperOf(bench, ask.paperId);
  const planned = plan.layers.find((l) => l.id === layer.id);
  if (!planned) return [];
  // Which stacks of the other layers lie under and over it, and on how much area.
  const stacks = new Map<number, number>();
  const { data, mmPerPx } = plan.codes;
  const counts = new Float64Array(256);
  for (let i = 0; i < data.length; i++) counts[data[i]]++;
  for (let code = 0; code < 256; code++)
    if (counts[code] > 0 && code & (1 << planned.bit)) stacks.set(code, counts[code] * mmPerPx * mmPerPx);
  const inks = bench.job.inks.filter((k) => k.role === 'ink' && (ask.inks === undefined || ask.inks.includes(k.id)));
  return inks.flatMap((ink) =>
    reachStrengths.map((strength): Reach => {
      const asIf = bench.layers.map((l) => (l.id === layer.id ? { ...l, ink: ink.id, strength } : l));
      const merged = new Map<string, { layers: string[]; lab: Lab; areaMm2: number }>();
      for (const [code, areaMm2] of stacks) {
        const lying = asIf.filter((l) => l.ink !== null && code & (1 << (plan.layers.find((p) => p.id === l.id)?.bit ?? 31)));
        const ids = lying.map((l) => l.id);
        const known = merged.get(ids.join());
        if (known) known.areaMm2 += areaMm2;
        else
          merged.set(ids.join(), {
            layers: ids,
            areaMm2,
            lab: labFromSpectrum(
              stackReflectance(
                spectrum,
                lying.flatMap((l) => filmOfLayer(l, bench.found) ?? []),
                bench.found.surface,
              ),
            ),
          });
      }
      return { inkId: ink.id, strength, overlaps: [...merged.values()].sort((a, b) => b.areaMm2 - a.areaMm2) };
    }),
  );
}
