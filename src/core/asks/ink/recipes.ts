import { labFromSpectrum, type Lab } from '../../colour/index.ts';
import {
  additionProblems,
  findRecipe,
  fromLeftovers,
  mixBatch,
  stackReflectance,
  type Batch,
  type Film,
  type Ink,
  type FromLeftovers,
  type RecipesFound,
} from '../../ink/index.ts';
import type { Job } from '../../job/index.ts';
import type { Problem } from '../../problem.ts';
import { name as asName, say } from '../../../words/say.ts';
import { filmOfLayer, letDownParts, thicker, type Plan } from '../../plan/index.ts';
import { inJob, inkBench, layerOf, paperOf, placeOfPot, potsOf, refuse, type InkBench } from '../bench.ts';

export interface RecipeQuestion {
  readonly wanted: Lab;
  readonly paperId?: string;
  /** Layers that lie under it, by id. */
  readonly over?: readonly string[];
  /** The layer that is to print it, by id: its film is as thick as that run lays it. Left out: as the job's screen does. */
  readonly layer?: string;
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
export function askRecipe(job: Job, ask: RecipeQuestion, plan?: Plan): RecipesFound & { readonly problems: readonly Problem[] } {
  const bench = inkBench(job, plan);
  const { spectrum } = paperOf(bench, ask.paperId);
  const inRun = inksInRun(bench, ask.layer);
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
      paper: spectrum,
      under: filmsOf(bench, ask.over ?? []),
      surface: bench.found.surface,
      pots,
      whole,
      leastShare: (2 * (ask.scaleStepGrams ?? 0.1)) / (ask.totalGrams ?? 100),
      base: ask.baseId === undefined ? undefined : inRun(ask.baseId),
      additions,
      mostPots: ask.mostPots,
      nearEnough: ask.nearEnough,
    }),
  );
  return { ...found, problems: additions > 0 ? additionProblems(additions, 0, say('asks.theRecipe')) : [] };
}

export interface LeftoversQuestion {
  readonly wanted: Lab;
  readonly paperId?: string;
  /** Layers that lie under it, by id. */
  readonly over?: readonly string[];
  /** The layer that is to print it, by id; left out: the job's screen. */
  readonly layer?: string;
  readonly totalGrams: number;
  /** ΔE00 that is near enough. */
  readonly within: number;
  /** Grams left by ink id, in place of what the job says. */
  readonly left?: Readonly<Record<string, number>>;
}

export interface LeftoversAnswer {
  /** Least new ink that comes near enough; null where nothing does. */
  readonly best: FromLeftovers | null;
  /** The nearest there is, near enough or not. */
  readonly nearest: FromLeftovers | null;
  /** New ink that the same colour takes without any jar; null where no such pot comes near enough. */
  readonly freshGrams: number | null;
  readonly jars: number;
}

/** The pot from what is left in jars: nearest to a wanted colour, with the least new ink. */
export function askLeftovers(job: Job, ask: LeftoversQuestion, plan?: Plan): LeftoversAnswer {
  const bench = inkBench(job, plan);
  const inRun = inksInRun(bench, ask.layer);
  const { spectrum } = paperOf(bench, ask.paperId);
  const named = job.inks.flatMap((k) => {
    const ink = inRun(k.id);
    return ink
      ? [{ id: k.id, name: k.name, ink, densityGPerMl: k.densityGPerMl, leftGrams: ask.left?.[k.id] ?? k.leftGrams ?? 0, of: k }]
      : [];
  });
  for (const id of Object.keys(ask.left ?? {}))
    if (!named.some((one) => one.id === id))
      refuse(job, 'no-such-ink', 'inks', say('asks.noSuchInk', { ink: asName(id) }), say('asks.giveInkId'));
  const jars = named.filter((one) => one.leftGrams > 0 && one.of.role === 'ink');
  if (jars.length === 0) refuse(job, 'no-jars', 'inks', say('asks.noJars'), say('asks.sayWhatIsLeft'));
  const common = {
    wanted: ask.wanted,
    paper: spectrum,
    under: filmsOf(bench, ask.over ?? []),
    surface: bench.found.surface,
    pots: named.filter((one) => one.of.role === 'ink' && one.of.from !== 'mix'),
    base: named.find((one) => one.of.role === 'transparent-base'),
    totalGrams: ask.totalGrams,
    within: ask.within,
  };
  const found = fromLeftovers({ ...common, jars });
  const fresh = fromLeftovers({ ...common, jars: [] });
  return { ...found, freshGrams: fresh.best && fresh.best.newGrams, jars: jars.length };
}

/** Inks as thick as the run of a layer lays them. */
function inksInRun(bench: InkBench, layerId: string | undefined): (id: string) => Ink | undefined {
  const times = bench.layers.find((l) => l.id === layerId)?.filmTimes;
  return (id) => {
    const ink = bench.found.inks.get(id);
    return ink && thicker(ink, times);
  };
}

function filmsOf(bench: InkBench, ids: readonly string[]): Film[] {
  return bench.layers.filter((l) => ids.includes(l.id)).flatMap((l) => filmOfLayer(l, bench.found) ?? []);
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
