import type { Random } from '../../src/core/random.ts';

/** Bytes as a bad disk, a broken download or somebody's malice leave them: seeded, so that whatever breaks something can be made again. */
export function damaged(bytes: Uint8Array, random: Random): Uint8Array {
  const ways = [flipped, cut, holed, doubled, overwritten, swollen];
  let out = ways[random.below(ways.length)](bytes, random);
  if (random.next() < 0.3) out = flipped(out, random);
  return out;
}

/** Texts get other numbers too, as a hand or another program writes them. */
export function damagedText(bytes: Uint8Array, random: Random): Uint8Array {
  if (random.next() < 0.4) return damaged(bytes, random);
  const text = new TextDecoder().decode(bytes);
  const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
  if (numbers.length === 0) return damaged(bytes, random);
  const odd = ['-1', '0', '1e308', '-1e308', '999999999999', 'NaN', '', '1e-320', '0x41', '1,5', '\u0000', '٣', '-0', 'Infinity'];
  let out = text;
  for (let n = 1 + random.below(4); n > 0; n--) {
    const { index, 0: found } = numbers[random.below(numbers.length)];
    if (out.length === text.length) out = out.slice(0, index) + odd[random.below(odd.length)] + out.slice(index + found.length);
  }
  return new TextEncoder().encode(out);
}

const place = (bytes: Uint8Array, random: Random): number => random.below(Math.max(1, bytes.length));

/** A few bits; half of the time near the beginning, where files say what they are. */
function flipped(bytes: Uint8Array, random: Random): Uint8Array {
  const out = bytes.slice();
  if (out.length === 0) return out;
  for (let n = 1 + random.below(8); n > 0; n--) {
    const at = random.next() < 0.5 ? random.below(Math.min(out.length, 200)) : place(out, random);
    out[at] ^= 1 << random.below(8);
  }
  return out;
}

function cut(bytes: Uint8Array, random: Random): Uint8Array {
  return bytes.slice(0, place(bytes, random));
}

function holed(bytes: Uint8Array, random: Random): Uint8Array {
  const from = place(bytes, random),
    to = from + random.below(Math.min(4096, bytes.length));
  return Uint8Array.from([...bytes.subarray(0, from), ...bytes.subarray(to)]);
}

function doubled(bytes: Uint8Array, random: Random): Uint8Array {
  const from = place(bytes, random),
    part = bytes.subarray(from, from + 1 + random.below(2000));
  return Uint8Array.from([...bytes.subarray(0, from), ...part, ...part, ...bytes.subarray(from + part.length)]);
}

function overwritten(bytes: Uint8Array, random: Random): Uint8Array {
  const out = bytes.slice();
  const from = place(bytes, random),
    fill = [0, 255, random.below(256)][random.below(3)];
  out.fill(fill, from, from + 1 + random.below(300));
  return out;
}

/** Four bytes that count something become as large as they can be. */
function swollen(bytes: Uint8Array, random: Random): Uint8Array {
  const out = bytes.slice();
  const from = random.below(Math.max(1, Math.min(out.length, 400)));
  const large = [
    [255, 255, 255, 255],
    [127, 255, 255, 255],
    [255, 255, 255, 127],
    [0, 0, 0, 0],
    [255, 255, 0, 0],
  ][random.below(5)];
  large.forEach((v, i) => {
    if (from + i < out.length) out[from + i] = v;
  });
  return out;
}
