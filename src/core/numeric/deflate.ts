import { Inflate } from 'fflate';

/** Packed bytes handed over at a time: as they can swell a thousandfold, no more than some megabytes are ever held beside the room. */
const slice = 1 << 13;

/**
 * Deflated data (RFC 1951) into a given room and never beyond it, whatever the packed bytes say.
 * @returns bytes that it unpacks to; more than the room as soon as that is sure. Throws where it makes no sense.
 */
export function unpackDeflate(packed: Uint8Array, room: Uint8Array): number {
  let length = 0;
  const inflate = new Inflate((part) => {
    if (length < room.length) room.set(part.subarray(0, room.length - length), length);
    length += part.length;
  });
  for (let at = 0; at < packed.length && length <= room.length; at += slice) {
    inflate.push(packed.subarray(at, at + slice), at + slice >= packed.length);
  }
  return length;
}

/** Deflated data in several pieces: how many bytes it unpacks to, or more than `most` as soon as that is sure. Nothing is kept. */
export function deflatedLength(pieces: Iterable<Uint8Array>, most: number): number {
  let length = 0;
  const inflate = new Inflate((part) => {
    length += part.length;
  });
  for (const piece of pieces) {
    for (let at = 0; at < piece.length; at += slice) {
      inflate.push(piece.subarray(at, at + slice));
      if (length > most) return length;
    }
  }
  return length;
}

/** What zlib writes before the deflated data (RFC 1950). */
export const zlibHeadBytes = 2;
