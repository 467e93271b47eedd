import type { Plan } from '../core/plan/index.ts';
import { paintOverPicture } from '../core/print/index.ts';
import type { Indexed } from './files/png.ts';

type PlannedPaper = Plan['papers'][number];

/** A proof as pixels: a palette where every overlap is one colour, or plain RGB over a sheet that is printed already. */
export type ProofImage =
  | { readonly kind: 'indexed'; readonly image: Indexed; readonly mmPerPx: number }
  | { readonly kind: 'rgb'; readonly width: number; readonly height: number; readonly rgb: Uint8Array; readonly mmPerPx: number };

/** The sheet as it looks after so many runs; all of them when left out, 0 for the sheet before the first. Open layers print nothing. */
export function proofImage(plan: Plan, paper: PlannedPaper, run = plan.layers.length): ProofImage {
  const { codes } = plan;
  const { width, height, mmPerPx } = codes;
  const over = paper.overPicture;
  if (!over) return { kind: 'indexed', image: fewestColours(width, height, codes.data, wordsAfter(plan, paper, run)), mmPerPx };
  const out = new Uint32Array(codes.data.length);
  paintOverPicture(codes, over.ground, over.cube, rowsAfter(plan, over, run), out);
  return { kind: 'rgb', width, height, rgb: bytesOf(out), mmPerPx };
}

/**
 * A small picture of the same: `every` pixels a side become one, the mean of up to 9 of them, so that thin lines thin out
 * and don't break. Keeps a palette where 256 colours are enough.
 */
export function smallProof(plan: Plan, paper: PlannedPaper, run: number, every: number): ProofImage {
  if (every <= 1) return proofImage(plan, paper, run);
  const thin = thinned(plan.codes, every);
  const { width, height, mixed, looks } = thin;
  const mmPerPx = plan.codes.mmPerPx * every;
  const over = paper.overPicture;
  const words = over ? overWords(over, thin, rowsAfter(plan, over, run)) : flatWords(thin, wordsAfter(plan, paper, run));
  const many = looks.length / Math.max(1, mixed.length);
  for (let m = 0; m < mixed.length; m++) {
    let r = 0,
      g = 0,
      b = 0;
    for (let k = m * many; k < (m + 1) * many; k++) {
      const word = words.looks[k];
      r += word & 255;
      g += (word >> 8) & 255;
      b += (word >> 16) & 255;
    }
    words.all[mixed[m]] = Math.round(r / many) | (Math.round(g / many) << 8) | (Math.round(b / many) << 16);
  }
  const image = over ? null : inPalette(width, height, words.all);
  if (image) return { kind: 'indexed', image, mmPerPx };
  return { kind: 'rgb', width, height, rgb: bytesOf(words.all), mmPerPx };
}

interface Words {
  readonly all: Uint32Array;
  readonly looks: Uint32Array;
}

function flatWords(thin: Thinned, words: Uint32Array): Words {
  const all = new Uint32Array(thin.first.length),
    looks = new Uint32Array(thin.looks.length);
  for (let i = 0; i < all.length; i++) all[i] = words[thin.first[i]] & 0xffffff;
  for (let i = 0; i < looks.length; i++) looks[i] = words[thin.looks[i]];
  return { all, looks };
}

function overWords(over: NonNullable<PlannedPaper['overPicture']>, thin: Thinned, rows: Uint8Array): Words {
  const { width, height, first, mixed, looks } = thin;
  const ground = thinnedGround(over.ground, thin);
  const all = new Uint32Array(first.length),
    atLooks = new Uint32Array(looks.length);
  paintOverPicture({ width, height, mmPerPx: 1, data: first }, ground, over.cube, rows, all);
  const many = looks.length / Math.max(1, mixed.length);
  const under = new Uint8Array(looks.length * 3);
  for (let k = 0; k < looks.length; k++) {
    const from = mixed[Math.floor(k / many)] * 3;
    under[k * 3] = ground[from];
    under[k * 3 + 1] = ground[from + 1];
    under[k * 3 + 2] = ground[from + 2];
  }
  paintOverPicture({ width: looks.length, height: 1, mmPerPx: 1, data: looks }, under, over.cube, rows, atLooks);
  return { all, looks: atLooks };
}

/** Codes for small pictures: the same for every paper and run. */
interface Thinned {
  readonly width: number;
  readonly height: number;
  readonly every: number;
  readonly fullWidth: number;
  readonly fullHeight: number;
  /** The code at the first look into each small pixel. */
  readonly first: Uint8Array;
  /** Small pixels with more than one code in them, and the codes of all looks into each of these. */
  readonly mixed: Uint32Array;
  readonly looks: Uint8Array;
}

/** Looks a side into each small pixel: more show no difference on paper. */
const mostLooks = 3;
const lookAt = (every: number): number[] => {
  const many = Math.min(every, mostLooks);
  return Array.from({ length: many }, (_, i) => Math.floor(((i + 0.5) * every) / many));
};

const thinnedCodes = new WeakMap<object, Map<number, Thinned>>();
function thinned(codes: Plan['codes'], every: number): Thinned {
  const known = thinnedCodes.get(codes) ?? new Map<number, Thinned>();
  thinnedCodes.set(codes, known);
  const made = known.get(every) ?? makeThinned(codes, every);
  known.set(every, made);
  return made;
}

function makeThinned(codes: Plan['codes'], every: number): Thinned {
  const { width: fullWidth, height: fullHeight, data } = codes;
  const width = Math.ceil(fullWidth / every),
    height = Math.ceil(fullHeight / every);
  const first = new Uint8Array(width * height);
  const mixed: number[] = [],
    looks: number[] = [];
  const offsets = lookAt(every);
  for (let y = 0, to = 0; y < height; y++) {
    const lines = offsets.map((dy) => Math.min(fullHeight - 1, y * every + dy) * fullWidth);
    for (let x = 0; x < width; x++, to++) {
      const left = x * every;
      const code = data[lines[0] + Math.min(fullWidth - 1, left + offsets[0])];
      first[to] = code;
      let same = true;
      for (const line of lines) for (const dx of offsets) if (data[line + Math.min(fullWidth - 1, left + dx)] !== code) same = false;
      if (same) continue;
      mixed.push(to);
      for (const line of lines) for (const dx of offsets) looks.push(data[line + Math.min(fullWidth - 1, left + dx)]);
    }
  }
  return { width, height, every, fullWidth, fullHeight, first, mixed: Uint32Array.from(mixed), looks: Uint8Array.from(looks) };
}

const thinnedGrounds = new WeakMap<Uint8Array, Map<number, Uint8Array>>();
/** The earlier print, as small: the mean of the same looks. */
function thinnedGround(ground: Uint8Array, thin: Thinned): Uint8Array {
  const known = thinnedGrounds.get(ground) ?? new Map<number, Uint8Array>();
  thinnedGrounds.set(ground, known);
  const before = known.get(thin.every);
  if (before) return before;
  const { width, height, every, fullWidth, fullHeight } = thin;
  const out = new Uint8Array(width * height * 3);
  const offsets = lookAt(every);
  const many = offsets.length ** 2;
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0; x < width; x++, to += 3) {
      let r = 0,
        g = 0,
        b = 0;
      for (const dy of offsets) {
        const line = Math.min(fullHeight - 1, y * every + dy) * fullWidth;
        for (const dx of offsets) {
          const at = (line + Math.min(fullWidth - 1, x * every + dx)) * 3;
          r += ground[at];
          g += ground[at + 1];
          b += ground[at + 2];
        }
      }
      out[to] = Math.round(r / many);
      out[to + 1] = Math.round(g / many);
      out[to + 2] = Math.round(b / many);
    }
  known.set(every, out);
  return out;
}

/** How many inks lie on the sheet after a run: the place in `progressive`, from 1. */
const inksAfter = (plan: Plan, run: number): number => plan.layers.filter((l) => l.run <= run && l.inkId !== null).length;

function wordsAfter(plan: Plan, paper: PlannedPaper, run: number): Uint32Array {
  const printed = inksAfter(plan, run);
  return printed === 0 ? new Uint32Array(256).fill(paper.palette[0]) : paper.progressive[printed - 1];
}

function rowsAfter(plan: Plan, over: NonNullable<PlannedPaper['overPicture']>, run: number): Uint8Array {
  const printed = inksAfter(plan, run);
  return printed === 0 ? new Uint8Array(256) : over.progressive[printed - 1];
}

/** Renumbers codes so that the palette holds only colours that are seen, each once. */
function fewestColours(width: number, height: number, codes: Uint8Array, words: Uint32Array): Indexed {
  const seen = codesSeen(codes);
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
  return { width, height, data, palette: paletteOf([...entries.keys()]) };
}

const seenIn = new WeakMap<Uint8Array, Uint8Array>();
function codesSeen(codes: Uint8Array): Uint8Array {
  const known = seenIn.get(codes);
  if (known) return known;
  const seen = new Uint8Array(256);
  for (let i = 0; i < codes.length; i++) seen[codes[i]] = 1;
  seenIn.set(codes, seen);
  return seen;
}

/** null where there are more than 256 colours. */
function inPalette(width: number, height: number, words: Uint32Array): Indexed | null {
  const entries = new Map<number, number>();
  const data = new Uint8Array(words.length);
  let last = -1,
    entry = 0;
  for (let i = 0; i < words.length; i++) {
    if (words[i] !== last) {
      last = words[i];
      entry = entries.get(last) ?? entries.size;
      if (entry > 255) return null;
      entries.set(last, entry);
    }
    data[i] = entry;
  }
  return { width, height, data, palette: paletteOf([...entries.keys()]) };
}

const paletteOf = (words: readonly number[]): [number, number, number][] => words.map((w) => [w & 255, (w >> 8) & 255, (w >> 16) & 255]);

function bytesOf(words: Uint32Array): Uint8Array {
  const rgb = new Uint8Array(words.length * 3);
  for (let i = 0; i < words.length; i++) {
    rgb[i * 3] = words[i] & 255;
    rgb[i * 3 + 1] = (words[i] >> 8) & 255;
    rgb[i * 3 + 2] = (words[i] >> 16) & 255;
  }
  return rgb;
}
