import { convertIndexedToRgb, decode } from 'fast-png';
import { name as asName, say } from '../../words/say.ts';
import { fail } from '../problem.ts';
import { checkPng } from './check/png-check.ts';
import { fileAt, resave } from './check/refuse.ts';
import type { Decoded } from './types.ts';

export function readPng(bytes: Uint8Array, file: string): Decoded {
  const checked = checkPng(bytes);
  if (!checked) return damaged(file);
  try {
    const png = decode(checked.bare);
    const n = png.width * png.height;
    let { data, channels } = png;
    let wide = png.depth === 16;
    if (png.palette) {
      data = convertIndexedToRgb(png);
      channels = data.length / n;
      wide = false;
    }
    // Greys of fewer than 8 bits come as whole numbers of their own range.
    const stretch = !png.palette && png.depth < 8 ? 255 / ((1 << png.depth) - 1) : 1;
    const samples = png.depth < 8 && !png.palette ? unpack(data, png.width, png.height, png.depth) : data;
    const rgb = wide ? new Uint16Array(n * 3) : new Uint8Array(n * 3);
    const hasAlpha = channels === 2 || channels === 4;
    const coverage = hasAlpha ? new Uint8Array(n) : undefined;
    for (let i = 0; i < n; i++) {
      const at = i * channels;
      for (let c = 0; c < 3; c++) rgb[i * 3 + c] = samples[at + (channels >= 3 ? c : 0)] * stretch;
      if (coverage) coverage[i] = wide ? samples[at + channels - 1] >> 8 : samples[at + channels - 1];
    }
    return { width: png.width, height: png.height, rgb, coverage, profile: checked.profile, orientation: 1, animated: checked.animated };
  } catch {
    return damaged(file);
  }
}

function damaged(file: string): never {
  fail('picture-damaged', fileAt(file), say('image.cutShort', { format: asName('PNG') }), resave);
}

/** Rows of 1, 2 or 4 bits a sample, each row starting at a byte → one number a sample. */
function unpack(data: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const perRow = Math.ceil((width * depth) / 8);
  if (data.length === width * height) return Uint8Array.from(data);
  const out = new Uint8Array(width * height);
  const mask = (1 << depth) - 1,
    perByte = 8 / depth;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      out[y * width + x] = (data[y * perRow + ((x / perByte) | 0)] >> (8 - depth * (1 + (x % perByte)))) & mask;
    }
  return out;
}
