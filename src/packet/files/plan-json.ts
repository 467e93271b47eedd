import type { Plan } from '../../core/plan/index.ts';
import { isSaying, tell } from '../../words/index.ts';

/**
 * The Plan as JSON. Rasters and long point lists are told by their length only (`{ "values": 6026200, "kind": "Uint8Array" }`):
 * they are in the pictures and cut files beside it. Spectra (36 values) are written out, sayings as English text
 * whoever the packet is for, since programs read it.
 */
export function planJson(plan: Plan): string {
  return `${JSON.stringify(plan, (_key, value: unknown) => summarised(isSaying(value) ? tell(value) : value), 1)}\n`;
}

const longestList = 64;

function summarised(value: unknown): unknown {
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    const list = value as unknown as ArrayLike<number>;
    return list.length <= longestList ? Array.from(list) : { kind: value.constructor.name, values: list.length };
  }
  if (value instanceof Map) return Object.fromEntries(value);
  return value;
}
