import { registerPairStep, registerRoom, registerStep } from '../kernels/register.ts';
import type { Field } from '../kernels/relax.ts';
import type { Task } from '../../task.ts';

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
