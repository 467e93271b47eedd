/**
 * Sends a tree of plain data (objects, arrays, typed arrays, maps) again and again, each time only what is new: whatever
 * the other side holds already, told by identity, goes as a number. So an unchanged part of a Plan costs nothing and
 * arrives as the very same object, which the page relies on to draw only what changed.
 */
export interface Parcel {
  readonly root: Packed;
  /** Numbers the receiver can let go of. */
  readonly forget: readonly number[];
}

type Packed =
  | { readonly plain: string | number | boolean | null | undefined | bigint }
  | { readonly known: number }
  | { readonly n: number; readonly list: readonly Packed[] }
  | { readonly n: number; readonly keys: readonly string[]; readonly values: readonly Packed[] }
  | { readonly n: number; readonly entries: readonly (readonly [Packed, Packed])[] }
  | { readonly n: number; readonly bytes: ArrayBufferView };

export interface Packer {
  /** The parcel and the buffers in it that can change hands instead of being copied once more. */
  pack(root: unknown): { parcel: Parcel; transfer: ArrayBuffer[] };
}

export function createPacker(): Packer {
  let sent = new Map<object, number>();
  let next = 1;
  return {
    pack(root) {
      const alive = new Map<object, number>();
      const transfer: ArrayBuffer[] = [];
      const keepAlive = (value: unknown): void => {
        if (typeof value !== 'object' || value === null || alive.has(value)) return;
        const n = sent.get(value);
        if (n === undefined) return;
        alive.set(value, n);
        if (ArrayBuffer.isView(value)) return;
        if (value instanceof Map) for (const pair of value) pair.forEach(keepAlive);
        else Object.values(value).forEach(keepAlive);
      };
      const pack = (value: unknown): Packed => {
        if (typeof value !== 'object' || value === null) return { plain: value as null };
        const before = alive.get(value);
        if (before !== undefined) return { known: before };
        if (sent.has(value)) {
          keepAlive(value);
          return { known: sent.get(value)! };
        }
        const n = next++;
        alive.set(value, n);
        if (ArrayBuffer.isView(value)) {
          const copy = copyOf(value);
          transfer.push(copy.buffer as ArrayBuffer);
          return { n, bytes: copy };
        }
        if (Array.isArray(value)) return { n, list: value.map(pack) };
        if (value instanceof Map) return { n, entries: [...value].map(([k, v]) => [pack(k), pack(v)] as const) };
        const entries = Object.entries(value);
        return { n, keys: entries.map(([k]) => k), values: entries.map(([, v]) => pack(v)) };
      };
      const packed = pack(root);
      const kept = new Set(alive.values());
      const forget = [...sent.values()].filter((n) => !kept.has(n));
      sent = alive;
      return { parcel: { root: packed, forget }, transfer };
    },
  };
}

function copyOf(view: ArrayBufferView): ArrayBufferView {
  const bytes = view.buffer.slice(view.byteOffset, view.byteOffset + view.byteLength);
  const Kind = view.constructor as new (buffer: ArrayBufferLike) => ArrayBufferView;
  return new Kind(bytes);
}

export interface Unpacker {
  unpack(parcel: Parcel): unknown;
}

export function createUnpacker(): Unpacker {
  const held = new Map<number, object>();
  const hold = <T extends object>(n: number, value: T): T => {
    held.set(n, value);
    return value;
  };
  const unpack = (packed: Packed): unknown => {
    if ('plain' in packed) return packed.plain;
    if ('known' in packed) {
      const value = held.get(packed.known);
      if (value === undefined) throw new Error(`Part ${packed.known} was let go of too early.`);
      return value;
    }
    if ('bytes' in packed) return hold(packed.n, packed.bytes);
    if ('list' in packed) {
      const list = hold<unknown[]>(packed.n, []);
      for (const item of packed.list) list.push(unpack(item));
      return list;
    }
    if ('entries' in packed) {
      const map = hold(packed.n, new Map<unknown, unknown>());
      for (const [k, v] of packed.entries) map.set(unpack(k), unpack(v));
      return map;
    }
    // Any name may be a key, __proto__ too.
    return hold(packed.n, Object.fromEntries(packed.keys.map((key, i) => [key, unpack(packed.values[i])])));
  };
  return {
    unpack(parcel) {
      const root = unpack(parcel.root);
      for (const n of parcel.forget) held.delete(n);
      return root;
    },
  };
}
