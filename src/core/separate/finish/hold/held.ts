import type { Grid, Region } from '../../../form/index.ts';
import type { BridgePin, Stencil } from '../../../stencil/index.ts';
import type { Task } from '../../../task.ts';
import { askedFor, askedOf, together, type Hands, type StencilErrand } from '../../search/errand.ts';
import type { Field } from '../../kernels/relax.ts';
import { bridgeLengthMm, eachPixel, islandsToDrop, longBridgeMm } from './islands.ts';

export interface Holding {
  readonly bits: readonly number[];
  /** Changed where an island is dropped. */
  readonly planned: Uint8Array;
  readonly field: Field;
  readonly grid: Grid;
  readonly priceMm: number;
  /** One a run, of the masks as they are planned now. */
  readonly errandsOf: () => readonly StencilErrand[];
}

export interface Made {
  readonly stencil: Stencil;
  readonly shape: Region;
  readonly side: 'window' | 'piece';
}

/** After so many turns every long bridge seen so far is a broad one; each turn may lay another that is long. */
const mostTurns = 5;

export async function made(errands: readonly StencilErrand[], task: Task, hands?: Hands): Promise<Made[]> {
  // What takes longest is begun first, so that nobody waits for it alone in the end.
  const order = [...errands.keys()].sort((a, b) => pointsOf(errands[b]) - pointsOf(errands[a])),
    asked = askedFor(
      order.map((i) => errands[i]),
      task,
      hands,
    ),
    out: Made[] = [];
  for (const [i, errand] of errands.entries()) {
    await task.pause();
    out.push(madeOf(errand, await asked[order.indexOf(i)]()));
  }
  return out;
}

const pointsOf = ({ request }: StencilErrand): number => request.shape.rings.reduce((sum, ring) => sum + ring.length, 0);

const madeOf = ({ request }: StencilErrand, stencil: Stencil): Made => ({ stencil, shape: request.shape, side: request.side });

/**
 * Stencils with their islands decided: what costs the print less dropped than held is dropped, and a bridge that is long is made broader the longer it is,
 * so that no thin strip hangs across an opening alone. Stencils that changed are made again.
 */
export async function heldStencils(holding: Holding, task: Task, hands?: Hands): Promise<Made[]> {
  const { bits, planned, field, grid, priceMm, errandsOf } = holding;
  const first = errandsOf(),
    stencils = await made(first, task, hands);
  const dropped = bits.map((bit, run) => {
    const drops = islandsToDrop(stencils[run].stencil, { field, codes: planned, bit, grid, priceMm });
    for (const region of drops)
      eachPixel(region, grid, (i) => {
        planned[i] |= 1 << bit;
      });
    return drops.length > 0;
  });
  const errands = dropped.includes(true) ? errandsOf() : first;
  const ready = (run: number): Promise<Made> => broadened(stencils[run], errands[run], dropped[run], task, hands);
  // Each goes its own way from here on: none waits for the others.
  if (hands) return together(Promise.all(bits.map((_, run) => ready(run))), task, hands);
  for (const run of bits.keys()) stencils[run] = await ready(run);
  return stencils;
}

/** One stencil made again, if its mask has changed, and as long as it has bridges too thin for their length. */
async function broadened(from: Made, asked: StencilErrand, changed: boolean, task: Task, hands?: Hands): Promise<Made> {
  const pins: BridgePin[] = [];
  let held = from;
  for (let turn = 0; turn < mostTurns; turn++) {
    if (turn > 0 || !changed) {
      const more = broaderBridges(held.stencil, asked.request.material.leastBridgeMm);
      if (more.length === 0) break;
      pins.push(...more);
    }
    const errand: StencilErrand = pins.length > 0 ? { ...asked, request: { ...asked.request, pins: pins.slice() } } : asked;
    await task.pause();
    const again = askedOf(errand, task, hands);
    held = madeOf(errand, await (again.begun ?? again()));
  }
  return held;
}

/** What of a stencil's bridges is too thin for its length, as it should be. */
function broaderBridges({ bridges }: Stencil, leastMm: number): BridgePin[] {
  return bridges
    .filter((bridge) => !bridge.pinned && bridgeLengthMm(bridge) > longBridgeMm)
    .map((bridge) => {
      const { line } = bridge,
        points = Array.from({ length: line.length / 2 }, (_, i): [number, number] => [line[2 * i], line[2 * i + 1]]);
      return {
        fromMm: points[0],
        viaMm: points.slice(1, -1),
        toMm: points[points.length - 1],
        widthMm: bridgeWidthMm(bridgeLengthMm(bridge), leastMm),
      };
    });
}

/** A strip bends by the cube of its length and resists by its width: half as broad again from the start, twice as broad at twice the length, no more. common practice */
export function bridgeWidthMm(lengthMm: number, leastMm: number): number {
  return lengthMm <= longBridgeMm ? leastMm : leastMm * Math.min(2, Math.max(1.5, lengthMm / longBridgeMm));
}
