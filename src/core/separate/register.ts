import { cutRoom } from './kernels/cut.ts';
import { expectedCost, registerCut, registerPairStep, registerRoom, registerStep } from './kernels/register.ts';
import type { Field } from './kernels/relax.ts';
import type { Task } from '../task.ts';

/** Mean expected cost per pixel when every layer sits off by N(0, σ) on its own. */
export function costOffRegister(field: Field, codes: Uint8Array, sigmaPx: number): number {
  return expectedCost(field, registerRoom(field, codes, sigmaPx));
}

/** Masks moved so that the print suffers least from layers sitting off; `codes` is changed in place. */
export async function settleForRegister(field: Field, codes: Uint8Array, sigmaPx: number, rounds: number, task: Task): Promise<void> {
  const room = registerRoom(field, codes, sigmaPx);
  for (let round = 0; round < rounds; round++) {
    let changed = 0;
    for (let layer = 0; layer < field.layers; layer++) {
      if (field.frozen & (1 << layer)) continue;
      await task.pause();
      if (field.paired) changed += registerPairStep(field, codes, layer++, room);
      else changed += registerStep(field, codes, layer, room);
    }
    if (changed < codes.length * 1e-4) break;
  }
}

/** Masks cut anew, each layer exactly while the others stay, as long as that moves much; `codes` is changed in place. */
export async function cutForRegister(field: Field, codes: Uint8Array, sigmaPx: number, rounds: number, task: Task): Promise<void> {
  const room = registerRoom(field, codes, sigmaPx), cut = cutRoom(codes.length), mask = new Uint8Array(codes.length);
  for (let round = 0; round < rounds; round++) {
    let changed = 0;
    for (let layer = 0; layer < field.layers; layer++) {
      if (field.frozen & (1 << layer)) continue;
      await task.pause();
      changed += registerCut(field, codes, layer, room, cut, mask);
    }
    if (changed < codes.length * 1e-3) break;
  }
}
