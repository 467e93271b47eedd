import type { Plan } from '../core/plan.ts';
import { paintOverPicture } from '../core/print/index.ts';
import type { Indexed } from './files/png.ts';

type PlannedPaper = Plan['papers'][number];

/** A proof as pixels: a palette where every overlap is one colour, or plain RGB over a sheet that is printed already. */
export type ProofImage =
  | { readonly kind: 'indexed'; readonly image: Indexed; readonly mmPerPx: number }
  | { readonly kind: 'rgb'; readonly width: number; readonly height: number; readonly rgb: Uint8Array; readonly mmPerPx: number };

/**
 * The sheet as it looks after so many runs; all of them when left out, 0 for the sheet before the first.
 * @param run place in the laydown, as `PlannedLayer.run` counts; open layers print nothing
 * @param every takes each n-th pixel only, for small pictures
 */
export function proofImage(plan: Plan, paper: PlannedPaper, run = plan.layers.length, every = 1): ProofImage {
  const printed = plan.layers.filter((l) => l.run <= run && l.inkId !== null).length;
  const codes = thinned(plan.codes, every);
  const over = paper.overPicture;
  if (!over) {
    const words = printed === 0 ? new Uint32Array(256).fill(paper.palette[0]) : paper.progressive[printed - 1];
    return { kind: 'indexed', image: fewestColours(codes.width, codes.height, codes.data, words), mmPerPx: codes.mmPerPx };
  }
  const out = new Uint32Array(codes.width * codes.height);
  const ground = every === 1 ? over.ground : thinnedRgb(over.ground, plan.codes.width, plan.codes.height, every);
  paintOverPicture(codes, ground, over.cube, printed === 0 ? new Uint8Array(256) : over.progressive[printed - 1], out);
  return { kind: 'rgb', width: codes.width, height: codes.height, rgb: rgbOf(out), mmPerPx: codes.mmPerPx };
}

/** Renumbers codes so that the palette holds only colours that are seen, each once. */
function fewestColours(width: number, height: number, codes: Uint8Array, words: Uint32Array): Indexed {
  const seen = new Uint8Array(256);
  for (let i = 0; i < codes.length; i++) seen[codes[i]] = 1;
  const entries = new Map<number, number>();
  const entryOf = new Uint8Array(256);
  for (let code = 0; code < 256; code++) {
    if (!seen[code]) continue;
    const entry = entries.get(words[code]) ?? entries.size;
    entries.set(words[code], entry);
    entryOf[code] = entry;
  }
  const data = new Uint8Array(codes.length);
  for (let i = 0; i < codes.length; i++) data[i] = entryOf[codes[i]];
  const palette = [...entries.keys()].map((w): [number, number, number] => [w & 255, (w >> 8) & 255, (w >> 16) & 255]);
  return { width, height, data, palette };
}

function thinned(codes: Plan['codes'], every: number): Plan['codes'] {
  if (every === 1) return codes;
  const width = Math.ceil(codes.width / every), height = Math.ceil(codes.height / every);
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) data[y * width + x] = codes.data[y * every * codes.width + x * every];
  return { width, height, data, mmPerPx: codes.mmPerPx * every };
}

function thinnedRgb(rgb: Uint8Array, width: number, height: number, every: number): Uint8Array {
  const w = Math.ceil(width / every), h = Math.ceil(height / every);
  const out = new Uint8Array(w * h * 3);
  for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) {
    const from = (y * every * width + x * every) * 3;
    out.set(rgb.subarray(from, from + 3), (y * w + x) * 3);
  }
  return out;
}

function rgbOf(words: Uint32Array): Uint8Array {
  const rgb = new Uint8Array(words.length * 3);
  for (let i = 0; i < words.length; i++) {
    rgb[i * 3] = words[i] & 255;
    rgb[i * 3 + 1] = (words[i] >> 8) & 255;
    rgb[i * 3 + 2] = (words[i] >> 16) & 255;
  }
  return rgb;
}
