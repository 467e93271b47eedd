/** Ways of packing that write into a given room and never beyond it, whatever the packed bytes say. */

/** PackBits (TIFF 6.0, section 9). @returns bytes written */
export function unpackBits(packed: Uint8Array, room: Uint8Array): number {
  let to = 0;
  for (let at = 0; at < packed.length && to < room.length; ) {
    const n = packed[at++];
    if (n < 128) {
      for (let i = 0; i <= n && at < packed.length && to < room.length; i++) room[to++] = packed[at++];
    } else if (n > 128) {
      if (at >= packed.length) break;
      const end = Math.min(room.length, to + 257 - n);
      room.fill(packed[at++], to, end);
      to = end;
    }
  }
  return to;
}

const clear = 256,
  end = 257;

/** LZW (TIFF 6.0, section 13): codes of 9 to 12 bits, high bits first, one code early. @returns bytes written */
export function unpackLzw(packed: Uint8Array, room: Uint8Array): number {
  // Every string is one byte longer than another that lies in `room` already: where it begins there, and how long it is.
  const start = new Uint32Array(4096),
    length = new Uint16Array(4096);
  let next = 258,
    bits = 9,
    held = 0,
    hold = 0,
    before = -1,
    to = 0,
    last = 0;
  for (let at = 0; to < room.length; ) {
    while (held < bits) {
      if (at >= packed.length) return to;
      hold = ((hold << 8) | packed[at++]) & 0xffffff;
      held += 8;
    }
    held -= bits;
    const code = (hold >>> held) & ((1 << bits) - 1);
    if (code === end) return to;
    if (code === clear) {
      next = 258;
      bits = 9;
      before = -1;
      continue;
    }
    const here = to;
    if (code < 256) room[to++] = code;
    else {
      // The string being made right now is the last one and its own first byte.
      const making = code === next && before >= 0;
      if (!making && code >= next) return to;
      const from = making ? last : start[code],
        long = making ? here - last + 1 : length[code];
      for (let i = 0; i < long && to < room.length; i++) room[to++] = room[from + i];
    }
    if (before >= 0 && next < 4096) {
      start[next] = last;
      length[next] = here - last + 1;
      next++;
      if (next + 1 >= 1 << bits && bits < 12) bits++;
    }
    before = code;
    last = here;
  }
  return to;
}
