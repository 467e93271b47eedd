import { rankOrders, type OrderRanking, type OrderWishes, type RankedOrder } from '../ink/index.ts';
import { say } from '../../words/say.ts';
import type { Task } from '../task.ts';
import { printedPot, type Plan } from '../plan/index.ts';
import { inJobLater, inkBench, paperOf, refuse } from './bench.ts';

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
}

/** Every order of a job's decided layers, ranked. Open layers have no ink yet and stay where they are. */
export async function askOrders(plan: Plan, ask: OrdersAsk, task?: Task): Promise<OrdersAnswer> {
  const bench = inkBench(plan.job, plan);
  const { paper, spectrum } = paperOf(bench, ask.paperId);
  const layers = bench.layers.flatMap((l) => {
    const pot = printedPot(l, bench.found);
    return pot ? [{ id: l.id, pot }] : [];
  });
  if (layers.length < 2) refuse(plan.job, 'nothing-to-order', 'layers', say('asks.nothingToOrder'), say('asks.chooseInks'));
  const at = (id: string): number => layers.findIndex((l) => l.id === id);
  const overlaps = plan.papers.find((p) => p.id === paper.id)?.overlaps ?? [];
  const areas = new Float64Array(1 << layers.length);
  for (const overlap of overlaps)
    areas[overlap.layers.reduce((bits, id) => (at(id) >= 0 ? bits | (1 << at(id)) : bits), 0)] += overlap.areaMm2;
  const wanted = plan.job.wanted
    .filter((w) => (w.paper === undefined || w.paper === paper.id) && w.layers.every((id) => at(id) >= 0))
    .map((w) => ({ layers: w.layers.map(at), lab: w.lab }));
  const ranking = await inJobLater(plan.job, () =>
    rankOrders(
      {
        paper: spectrum,
        surface: bench.found.surface,
        layers: layers.map((l) => ({ ink: l.pot, strength: 1, deposit: 1 })),
        wanted,
        wishes: ask.wishes,
        areas: overlaps.length > 0 ? areas : undefined,
        keep: ask.keep,
        before: ask.before?.map(([a, b]) => [at(a), at(b)] as const).filter(([a, b]) => a >= 0 && b >= 0),
      },
      task,
    ),
  );
  return {
    ...ranking,
    paperId: paper.id,
    present: layers.map((l) => l.id),
    ranked: ranking.ranked.map(({ order, ...rest }) => ({ ...rest, layers: order.map((i) => layers[i].id) })),
  };
}
