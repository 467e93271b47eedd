import { createMemory } from '../../memory.ts';
import type { Plan } from '../../types.ts';
import { inksOf } from '../colour/inks.ts';
import { coloursOnPaper, ridgesOf } from './laydown.ts';
import { layTheInks } from '../colour/let-down.ts';
import { registerOf } from '../press/register.ts';

/** What `check` would warn of if the runs were printed in another order: ridges that later runs print over, and layers that don't meet. */
export interface OrderWarnings {
  readonly ridges: number;
  readonly register: number;
}

/** @param orders layer ids, first down first; layers that are left out of an order keep their places */
export function warningsOfOrders(plan: Plan, orders: readonly (readonly string[])[]): OrderWarnings[] {
  const memory = createMemory();
  const inks = inksOf(plan.job, plan.press.deposit.wetMicrons, memory);
  return orders.map((order) => {
    const queue = order.flatMap((id) => plan.layers.find((l) => l.id === id) ?? []);
    const planned = plan.layers.map((layer) => (order.includes(layer.id) ? queue.shift()! : layer));
    const stencils = planned.flatMap(({ id, bit, stencil, written, filmTimes }) => {
      const layer = plan.job.layers.find((l) => l.id === id);
      return layer ? [{ layer: { ...layer, filmTimes }, stencil, written, bit }] : [];
    });
    const layers = stencils.map((s) => s.layer);
    const colours = coloursOnPaper(plan.job, layTheInks(layers, inks), inks, memory);
    const register = registerOf(plan.job, layers, stencils, plan.press, plan.codes, colours, memory);
    const warns = (problems: readonly { readonly severity: string }[]): number => problems.filter((p) => p.severity !== 'note').length;
    return { ridges: warns(ridgesOf(plan.job, stencils, memory)), register: warns(register.problems) };
  });
}
