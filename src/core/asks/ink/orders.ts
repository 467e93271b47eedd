import { rankOrders, type OrderRanking, type OrderWishes, type RankedOrder } from '../../ink/index.ts';
import { say } from '../../../words/say.ts';
import type { Task } from '../../task.ts';
import { learnOnPaper, printedPot, warningsOfOrders, type OrderWarnings, type Plan } from '../../plan/index.ts';
import { inJobLater, inkBench, paperOf, refuse } from '../bench.ts';
import { wantsTone } from './wanted.ts';

export interface OrdersAsk {
  readonly paperId?: string;
  readonly wishes: OrderWishes;
  readonly keep?: number;
  /** Layer ids: the first must be printed before the second. */
  readonly before?: readonly (readonly [string, string])[];
}

export interface OrdersAnswer extends Omit<OrderRanking, 'ranked'> {
  readonly paperId: string;
  readonly ranked: readonly (Omit<RankedOrder, 'order'> & { readonly layers: readonly string[] })[];
  /** The job's own order, ranked among them. */
  readonly present: readonly string[];
  /** Orders whose figures read the same are one, the job's own standing for those like it; the best few, with what `check` would warn of. */
  readonly groups: readonly (OrdersAnswer['ranked'][number] & { readonly alike: number; readonly warnings: OrderWarnings })[];
  /** Every order that was ranked comes out the same. */
  readonly noDifference: boolean;
}

const usualGroups = 6,
  mostGroups = 20;
/** So many are ranked at least, to find those that come out the same. */
const enoughToGroup = 500;

/** Figures as they are told: to a tenth of ΔE00, to whole numbers of lightness and chroma. */
function asTold({ nearWanted, manyColours, lightnessRange, clean, steady }: RankedOrder['values'], wanted: boolean): string {
  return [...(wanted ? [nearWanted.toFixed(1)] : []), manyColours, lightnessRange.toFixed(0), clean.toFixed(0), steady.toFixed(1)].join();
}

/** Every order of a job's decided layers, ranked. Open layers have no ink yet and stay where they are. */
export async function askOrders(plan: Plan, ask: OrdersAsk, task?: Task): Promise<OrdersAnswer> {
  const bench = inkBench(plan.job, plan);
  const { paper, spectrum } = paperOf(bench, ask.paperId);
  // Films, gloss and trapping as readings of proofs have taught them.
  const learned = learnOnPaper(plan.job, bench.layers, bench.found, paper.id);
  const layers = bench.layers.flatMap((l) => {
    const planned = printedPot(l, bench.found);
    const pot = planned && (learned?.potOf(l) ?? planned);
    return pot ? [{ id: l.id, pot }] : [];
  });
  if (layers.length < 2) refuse(plan.job, 'nothing-to-order', 'layers', say('asks.nothingToOrder'), say('asks.chooseInks'));
  const at = (id: string): number => layers.findIndex((l) => l.id === id);
  const overlaps = plan.papers.find((p) => p.id === paper.id)?.overlaps ?? [];
  const areas = new Float64Array(1 << layers.length);
  for (const overlap of overlaps)
    areas[overlap.layers.reduce((bits, id) => (at(id) >= 0 ? bits | (1 << at(id)) : bits), 0)] += overlap.areaMm2;
  const wanted = plan.job.wanted
    .filter((one) => !wantsTone(one))
    .filter((w) => (w.paper === undefined || w.paper === paper.id) && w.layers.every((id) => at(id) >= 0))
    .map((w) => ({ layers: w.layers.map(at), lab: w.lab }));
  const ranking = await inJobLater(plan.job, () =>
    rankOrders(
      {
        paper: spectrum,
        surface: learned?.surface ?? bench.found.surface,
        layers: layers.map((l) => ({ ink: l.pot, strength: 1, deposit: 1 })),
        wanted,
        wishes: ask.wishes,
        areas: overlaps.length > 0 ? areas : undefined,
        keep: Math.max(ask.keep ?? 20, enoughToGroup),
        before: ask.before?.map(([a, b]) => [at(a), at(b)] as const).filter(([a, b]) => a >= 0 && b >= 0),
      },
      task,
    ),
  );
  const ranked = ranking.ranked.map(({ order, ...rest }) => ({ ...rest, layers: order.map((i) => layers[i].id) }));
  const present = layers.map((l) => l.id);
  const groups = new Map<string, { one: (typeof ranked)[number]; alike: number }>();
  for (const one of ranked) {
    const key = asTold(one.values, wanted.length > 0);
    const had = groups.get(key);
    groups.set(key, { one: !had || one.layers.join() === present.join() ? one : had.one, alike: (had?.alike ?? -1) + 1 });
  }
  const first = [...groups.values()].slice(0, Math.min(mostGroups, ask.keep ?? usualGroups));
  const warnings = warningsOfOrders(
    plan,
    first.map(({ one }) => one.layers),
  );
  return {
    ...ranking,
    groups: first.map(({ one, alike }, i) => ({ ...one, alike, warnings: warnings[i] })),
    noDifference: ranking.orders > 1 && groups.size === 1 && ranking.ranked.length >= Math.min(ranking.orders, enoughToGroup),
    paperId: paper.id,
    present,
    ranked: ranked.slice(0, ask.keep ?? 20),
  };
}
