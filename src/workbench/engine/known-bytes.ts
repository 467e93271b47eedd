import type { Attachments } from './protocol.ts';

/** So much is remembered, bytes: many drawings, a few photographs. */
const most = 96e6;

/**
 * Files known by what is in them. A job that is opened again, or a copy of it, brings the same drawings in other arrays: for
 * these the known array is given back, and what was made of it need not be made again.
 */
export function createKnownBytes(): (fresh: Attachments) => Attachments {
  // The longest unseen first.
  const known = new Map<string, Uint8Array>();
  let total = 0;
  return (fresh) => {
    const settled = new Map([...fresh].map(([name, bytes]) => [name, settle(bytes)]));
    for (const [key, bytes] of known) {
      if (total <= most) break;
      known.delete(key);
      total -= bytes.length;
    }
    return settled;
  };

  function settle(bytes: Uint8Array): Uint8Array {
    const key = keyOf(bytes);
    const same = known.get(key);
    if (same && !isEqual(same, bytes)) return bytes;
    known.delete(key);
    known.set(key, same ?? bytes);
    if (!same) total += bytes.length;
    return same ?? bytes;
  }
}

/** Length and FNV-1a (Fowler, Noll, Vo 1991) of a few thousand bytes of it; whether two are equal is looked at byte by byte. */
function keyOf(bytes: Uint8Array): string {
  let hash = 0x811c9dc5;
  const step = Math.max(1, Math.floor(bytes.length / 4096));
  for (let i = 0; i < bytes.length; i += step) hash = Math.imul(hash ^ bytes[i], 0x01000193);
  return `${bytes.length} ${hash >>> 0}`;
}

const isEqual = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((v, i) => v === b[i]);
