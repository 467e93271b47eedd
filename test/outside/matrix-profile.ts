import { deflateSync } from 'node:zlib';
import { crc32 } from '../../src/core/numeric/index.ts';

/** A v2 display profile with the primaries (adapted to D50) and a plain gamma: ICC.1:2001-04 sections 6.1, 6.4, 6.5. */
export function matrixProfile(columns: readonly (readonly number[])[], gamma: number): Uint8Array {
  const s15 = (v: number): number[] => {
    const n = Math.round(v * 65536) >>> 0;
    return [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];
  };
  const text = (t: string): number[] => [...t].map((c) => c.charCodeAt(0));
  const u32 = (v: number): number[] => [v >>> 24, (v >>> 16) & 255, (v >>> 8) & 255, v & 255];
  const xyz = (v: readonly number[]): number[] => [...text('XYZ '), 0, 0, 0, 0, ...v.flatMap(s15)];
  const curve = [...text('curv'), 0, 0, 0, 0, 0, 0, 0, 1, Math.floor(gamma), Math.round((gamma % 1) * 256), 0, 0];
  const name = 'Our own test profile';
  const desc = [...text('desc'), 0, 0, 0, 0, ...u32(name.length + 1), ...text(name), 0, ...new Array<number>(78).fill(0)];
  while (desc.length % 4) desc.push(0);
  const tags: [string, number[]][] = [
    ['desc', desc],
    ['wtpt', xyz([0.9642, 1, 0.8249])],
    ['rXYZ', xyz(columns[0])],
    ['gXYZ', xyz(columns[1])],
    ['bXYZ', xyz(columns[2])],
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ];
  let offset = 128 + 4 + 12 * tags.length;
  const table = u32(tags.length),
    body: number[] = [];
  for (const [tag, content] of tags) {
    table.push(...text(tag), ...u32(offset), ...u32(content.length));
    body.push(...content);
    offset += content.length;
  }
  const head = [
    ...u32(offset),
    0,
    0,
    0,
    0,
    2,
    0x40,
    0,
    0,
    ...text('mntrRGB XYZ '),
    ...new Array<number>(12).fill(0),
    ...text('acsp'),
    ...new Array<number>(28).fill(0),
    ...s15(0.9642),
    ...s15(1),
    ...s15(0.8249),
  ];
  while (head.length < 128) head.push(0);
  return Uint8Array.from([...head, ...table, ...body]);
}

/** A PNG with a profile of its own: the chunk iCCP behind the head (ISO/IEC 15948, 11.3.3.3). */
export function pngWithProfile(png: Uint8Array, profile: Uint8Array): Uint8Array {
  const latin = (t: string): number[] => [...t].map((c) => c.charCodeAt(0));
  const body = Uint8Array.from([...latin('iCCPown\0\0'), ...deflateSync(profile)]);
  const chunk = new Uint8Array(body.length + 8);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, body.length - 4);
  chunk.set(body, 4);
  view.setUint32(body.length + 4, crc32(body));
  const behindHead = 8 + 25;
  return Uint8Array.from([...png.subarray(0, behindHead), ...chunk, ...png.subarray(behindHead)]);
}
