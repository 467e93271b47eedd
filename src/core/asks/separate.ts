import type { Job, JobPicture } from '../job/index.ts';
import { ownSigma, sigmaOf } from '../press/index.ts';
import {
  cropOf,
  findFaces,
  importanceOf,
  jobPartsOf,
  veilAtHand,
  veilOf,
  type Crop,
  type GamutIntent,
  type ImportanceMap,
  type KnifeBudget,
  type LayerWish,
  type Picture,
  type PrintedLayer,
  type SeparateRequest,
  type Separation,
  type Way,
} from '../separate/index.ts';
import { materialOf, materialsOf, type Plan, type PlannedLayer } from '../plan/index.ts';
import { inkBench, paperOf, potsOf } from './bench.ts';

export interface SeparateQuestion {
  readonly picture: Picture;
  readonly crop?: Crop;
  readonly layers: number;
  readonly paperId?: string;
  /** Ink ids to choose from; left out: every ink of the job that was read itself. */
  readonly pots?: readonly string[];
  readonly wishes?: readonly LayerWish[];
  /** Go on from the job's layers, which are printed already. */
  readonly over?: Pick<Plan, 'job' | 'layers'>;
  readonly way?: Way;
  readonly takenAs?: SeparateRequest['takenAs'];
  readonly key?: boolean;
  readonly cutPairs?: boolean;
  readonly knife?: KnifeBudget;
  readonly materialId?: string;
  /** Left out: the job's own register error. */
  readonly registerSigmaMm?: number;
  readonly importance?: ImportanceMap;
  /** What the first sketch does not wait for. */
  readonly matters?: SeparateRequest['matters'];
  readonly intent?: GamutIntent;
  readonly mostInPot?: number;
  readonly effort?: number;
  readonly seed?: number;
}

/** What `separate` (core/separate) is asked, with the job's inks, paper, material and register. */
export function separateRequest(job: Job, ask: SeparateQuestion): SeparateRequest {
  const bench = inkBench(job);
  const { spectrum } = paperOf(bench, ask.paperId);
  const read = potsOf(job).flatMap((p) => {
    const ink = bench.found.inks.get(p.id);
    return ink ? [{ id: p.id, ink }] : [];
  });
  const isChosen = ({ id }: { readonly id: string }): boolean => ask.pots === undefined || ask.pots.includes(id);
  const alreadyPrinted =
    ask.over &&
    printedOf(
      ask.over,
      bench.layers.map((l) => l.id),
    );
  const edge = job.papers.some((p) => p.edge === 'torn') ? ('torn' as const) : ('cut' as const);
  return {
    picture: ask.picture,
    crop: ask.crop,
    sizeMm: { width: job.image.widthMm, height: job.image.heightMm },
    paper: spectrum,
    surface: bench.found.surface,
    shelf: read.filter(isChosen),
    printedWith: read.filter((pot) => !isChosen(pot) && alreadyPrinted?.some((layer) => layer.parts.some((part) => part.id === pot.id))),
    layers: ask.layers,
    wishes: ask.wishes,
    alreadyPrinted,
    way: ask.way,
    takenAs: ask.takenAs,
    key: ask.key,
    cutPairs: ask.cutPairs,
    knife: ask.knife,
    material: materialOf(materialsOf(job), ask.materialId),
    marginMm: job.stencilMarginMm,
    registerSigmaMm:
      ask.registerSigmaMm ?? sigmaOf(job.register.method, edge, ownSigma(job.register, [job.image.widthMm, job.image.heightMm])).sigmaMm,
    importance: ask.importance,
    matters: ask.matters ?? (() => ({ importance: ask.importance, faces: findFaces(ask.picture) })),
    intent: ask.intent,
    mostInPot: ask.mostInPot,
    effort: ask.effort,
    seed: ask.seed ?? job.seed,
  };
}

/**
 * What `separate` is asked when `ask` (the job's `picture`) was decided of a picture: crop and marks put to its size, the rest as it stands.
 * @param over the job's layers as planned, when they lie on the sheet already
 */
export function pictureRequest(
  job: Job,
  ask: JobPicture,
  picture: Picture,
  { paperId, over }: { readonly paperId?: string; readonly over?: readonly PlannedLayer[] },
): SeparateRequest {
  const crop = cropOf(ask.crop, picture, job.image),
    atHand = ask.veil > 0 ? veilAtHand(picture) : undefined;
  const weighed = (map?: ImportanceMap): ImportanceMap | undefined =>
    importanceOf(ask.important, crop, picture, map && { map, share: ask.veil });
  return separateRequest(job, {
    picture,
    crop,
    layers: ask.layers,
    paperId,
    pots: ask.pots,
    wishes: ask.wishes.slice(0, ask.layers),
    over: over && { job, layers: over },
    way: ask.way,
    takenAs: ask.takenAs,
    key: ask.key,
    cutPairs: ask.cutPairs,
    knife: ask.knife,
    materialId: ask.material,
    registerSigmaMm: ask.sigmaMm,
    importance: weighed(atHand),
    matters: () => ({ importance: weighed(ask.veil > 0 ? veilOf(picture) : undefined), faces: findFaces(picture) }),
    intent: ask.reach,
    mostInPot: ask.mostInPot,
    effort: ask.effort,
    seed: ask.seed,
  });
}

function printedOf(plan: Pick<Plan, 'job' | 'layers'>, order: readonly string[]): PrintedLayer[] {
  return order.flatMap((id) => {
    const layer = plan.layers.find((l) => l.id === id);
    const inks = plan.job.inks;
    if (!layer?.mix) return [];
    const parts = layer.mix.parts
      .filter((p) => inks.some((k) => k.id === p.inkId && k.role === 'ink'))
      .map((p) => ({ id: p.inkId, share: p.share }));
    return [{ parts, prints: layer.stencil.prints }];
  });
}

/**
 * The job with a separation's forms, cuts, layers and pots: in place of its own, or printed after them. `names` are what its runs are called
 * (`runNames`), in the language of whoever makes the job; from then on they are theirs.
 */
export function jobOfSeparation(
  job: Job,
  separation: Separation,
  names: readonly string[],
  choice: { readonly title?: string; readonly materialId?: string; readonly after?: boolean } = {},
): Job {
  const parts = jobPartsOf(separation, {
    names,
    materialId: choice.materialId ?? materialsOf(job)[0]?.id,
    inkName: (id) => job.inks.find((ink) => ink.id === id)?.name ?? id,
    taken: choice.after ? job.layers.map((layer) => layer.name) : [],
  });
  const taken = new Set([...job.forms, ...job.cuts, ...job.layers, ...job.inks].map((item) => item.id));
  const given = new Map<string, string>();
  const fresh = (id: string): string => {
    let name = given.get(id);
    if (name === undefined) {
      name = id;
      for (let n = 2; taken.has(name); n++) name = `${id}-${n}`;
      taken.add(name);
      given.set(id, name);
    }
    return name;
  };
  const usesOwn = new Set(parts.inks.map((k) => k.id));
  const base = job.inks.find((k) => k.role === 'transparent-base')?.id;
  const forms: Job['forms'] = parts.forms.map((f) => ({
    id: fresh(f.id),
    name: f.name,
    outline: f.outline.map((ring) => ring.map(([x, y]): [number, number] => [x, y])),
  }));
  const cuts: Job['cuts'] = parts.cuts.map((c) => ({
    id: fresh(c.id),
    name: c.name,
    material: c.material,
    parts: c.parts.map((p) => ({ form: fresh(p.form), how: 'add' as const, xMm: p.xMm, yMm: p.yMm, angleDeg: 0, scale: 1, mirror: false })),
  }));
  const inks: Job['inks'] = parts.inks.map((k) => ({
    id: fresh(k.id),
    name: k.name,
    from: 'mix' as const,
    role: 'ink' as const,
    densityGPerMl: 1.1,
    parts: k.parts.map((p) => ({ ink: p.ink, parts: p.parts })),
  }));
  const layers: Job['layers'] = parts.layers.map((l) => ({
    id: fresh(l.id),
    name: l.name,
    cut: fresh(l.cut),
    side: l.side,
    ink: usesOwn.has(l.ink) ? fresh(l.ink) : l.ink,
    strength: l.strength,
    base,
    islands: l.islands,
    bridgesBy: 'least-seen' as const,
    ...(l.pinnedBridges ? { pinnedBridges: [...l.pinnedBridges] } : {}),
    spreadMm: 0,
    off: false,
  }));
  const keep = choice.after ? job : { ...job, forms: [], cuts: [], layers: [], wanted: [], proofReadings: [] };
  return {
    ...keep,
    title: choice.title ?? job.title,
    forms: [...keep.forms, ...forms],
    cuts: [...keep.cuts, ...cuts],
    layers: [...keep.layers, ...layers],
    inks: [...(choice.after ? job.inks : withoutOldPots(job, layers)), ...inks],
  };
}

/** The shelf without pots an earlier separation made, once their runs are replaced and nothing else names them: made again, they would pile up. */
function withoutOldPots(job: Job, layers: Job['layers']): Job['inks'] {
  const named = new Set([
    ...layers.map((l) => l.ink),
    ...(job.picture?.pots ?? []),
    ...job.inks.flatMap((k) => (k.from === 'mix' ? k.parts.map((p) => p.ink) : [])),
  ]);
  return job.inks.filter(
    (k) => k.from !== 'mix' || !/^pot-\d+(-\d+)?$/.test(k.id) || !job.layers.some((l) => l.ink === k.id) || named.has(k.id),
  );
}
