import { solveDamped } from '../../numeric/index.ts';
import { grown, localEdge } from './object.ts';

/** What a thing lies on, tile by tile: square roots of linear light (about as the eye counts), and how far it strays. */
export interface RimGround {
  readonly tiles: Float32Array;
  readonly spread: number;
}

const across = 16;
/** A tile within this of what is expected there is the ground; wood and cloth stray by less. */
const alike = 0.07;
/** So much of the rim must be one ground. */
const leastRim = 0.85;
/** Of this much or more a thing that shines stands out from any ground. */
const leastBrighter = 0.08;
/** Things of some height lie close to their own shadow, which is deeper than one that falls on paper from afar. */
const shadeShare = 0.6;
const crackPx = 2;
/** Darker than this share of the ground, a camera's own noise has colour. */
const leastColoured = 0.6;

/**
 * The ground as the picture's rim shows it: medians of tiles along the rim, a surface of the second degree through them (light
 * changes slowly), then through every tile inside that lies on it. Nothing where the rim is not of one ground.
 */
export function groundAtRim(rgb: Float32Array, width: number, height: number): RimGround | undefined {
  if (Math.min(width, height) < 2 * across) return undefined;
  const medians = tileMedians(rgb, width, height);
  const atRim = (i: number): boolean => {
    const x = i % across,
      y = Math.floor(i / across);
    return x === 0 || y === 0 || x === across - 1 || y === across - 1;
  };
  const all = Array.from({ length: across * across }, (_, i) => i),
    rim = all.filter(atRim);
  const middle = [0, 1, 2].map((c) => median(rim.map((i) => medians[3 * i + c])));
  let keep = rim.filter((i) => [0, 1, 2].every((c) => Math.abs(medians[3 * i + c] - middle[c]) < 3 * alike));
  let expected: Float32Array = new Float32Array(0);
  for (let round = 0; round < 6; round++) {
    if (keep.length < rim.length / 2) return undefined;
    expected = surface(medians, keep);
    keep = (round === 0 ? rim : all).filter((i) => [0, 1, 2].every((c) => Math.abs(medians[3 * i + c] - expected[3 * i + c]) < alike));
  }
  if (keep.filter(atRim).length < leastRim * rim.length) return undefined;
  const lit = grownOn(medians, expected, keep);
  return { tiles: expected, spread: spreadOf(rgb, width, height, expected, lit) };
}

/** A lamp's gleam is no such surface, but softer than any edge: from tile to tile the ground goes on where it changes little. */
function grownOn(medians: Float32Array, tiles: Float32Array, begin: readonly number[]): number[] {
  const own = new Set(begin);
  for (let last = [...begin]; last.length > 0; ) {
    const next: number[] = [];
    for (const i of own) {
      const x = i % across,
        y = Math.floor(i / across);
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ]) {
        const nx = x + dx,
          ny = y + dy,
          j = ny * across + nx;
        if (nx < 0 || ny < 0 || nx >= across || ny >= across || own.has(j) || next.includes(j)) continue;
        if ([0, 1, 2].every((c) => Math.abs(medians[3 * j + c] - medians[3 * i + c]) < alike)) next.push(j);
      }
    }
    for (const j of next) own.add(j);
    last = next;
  }
  for (const i of own) for (let c = 0; c < 3; c++) tiles[3 * i + c] = medians[3 * i + c];
  return [...own];
}

/** How much each pixel belongs to things that lie on the ground, darker or lighter than it: 0 ground, 1 a thing, outline at ½. */
export function fieldOnGround(
  rgb: Float32Array,
  width: number,
  height: number,
  ground: RimGround,
  darkShare: number,
  colourShare: number,
): Float32Array {
  const n = width * height;
  const off = new Float32Array(n);
  const guess = new Uint8Array(n);
  const brighter = brighterThan(ground.spread);
  const here = new Float64Array(3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      groundOf(ground.tiles, width, height, x, y, here);
      off[p] = distance(rgb, p, here);
      if (standsOut(rgb, p, here, brighter, darkShare * shadeShare, colourShare)) guess[p] = 1;
    }
  return localEdge(closed(guess, width, height), (p) => off[p], width, height, 0);
}

/** Whether so much lies on the ground that is lighter than it: on white paper nothing is. */
export function lighterLiesOn(rgb: Float32Array, width: number, height: number, { tiles, spread }: RimGround): boolean {
  const brighter = brighterThan(spread);
  const here = new Float64Array(3);
  let seen = 0,
    lighter = 0;
  for (let y = 1; y < height; y += 3)
    for (let x = 1; x < width; x += 3) {
      groundOf(tiles, width, height, x, y, here);
      seen++;
      if (rise(rgb, y * width + x, here) > brighter) lighter++;
    }
  return lighter > leastLighter * seen;
}

const leastLighter = 0.001;
const brighterThan = (spread: number): number => Math.max(leastBrighter, 5 * spread);

/** By how much a pixel is lighter than its ground, the mean of its channels. */
function rise(rgb: Float32Array, p: number, here: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < 3; c++) sum += Math.sqrt(Math.max(0, rgb[3 * p + c])) - here[c];
  return sum / 3;
}

function distance(rgb: Float32Array, p: number, here: Float64Array): number {
  let sum = 0;
  for (let c = 0; c < 3; c++) sum += Math.abs(Math.sqrt(Math.max(0, rgb[3 * p + c])) - here[c]);
  return sum / 3;
}

/** Lighter than the ground strays, darker than its shadow, or of another colour than both. */
function standsOut(rgb: Float32Array, p: number, here: Float64Array, brighter: number, darkShare: number, colourShare: number): boolean {
  const up = rise(rgb, p, here);
  if (up > brighter) return true;
  let most = 0,
    least = Infinity,
    light = 0,
    own = 0;
  for (let c = 0; c < 3; c++) {
    const share = rgb[3 * p + c] / Math.max(0.002, here[c] * here[c]);
    most = Math.max(most, share);
    least = Math.min(least, share);
    light += rgb[3 * p + c];
    own += here[c] * here[c];
  }
  // On a ground that is black itself neither a shadow nor a colour can be told.
  if (light < darkShare * own && -up > brighter) return true;
  return distance(rgb, p, here) > brighter / 2 && (most - least) / Math.max(most, leastColoured) > colourShare;
}

/** From light to dark within a thing the ground's own tone is passed: cracks so narrow belong to the thing. */
function closed(mask: Uint8Array, width: number, height: number): Uint8Array {
  const rest = grown(mask, width, height, crackPx).map((v) => 1 - v);
  return grown(rest, width, height, crackPx).map((v) => 1 - v);
}

function tileMedians(rgb: Float32Array, width: number, height: number): Float32Array {
  const out = new Float32Array(3 * across * across);
  for (let i = 0; i < across * across; i++) {
    const { x0, x1, y0, y1 } = boxOf(i, width, height);
    const every = Math.max(1, Math.floor(Math.sqrt(((x1 - x0) * (y1 - y0)) / 900)));
    for (let c = 0; c < 3; c++) {
      const values: number[] = [];
      for (let y = y0; y < y1; y += every) for (let x = x0; x < x1; x += every) values.push(rgb[3 * (y * width + x) + c]);
      out[3 * i + c] = Math.sqrt(Math.max(0, median(values)));
    }
  }
  return out;
}

function boxOf(i: number, width: number, height: number): { x0: number; x1: number; y0: number; y1: number } {
  const x = i % across,
    y = Math.floor(i / across);
  return {
    x0: Math.floor((x * width) / across),
    x1: Math.floor(((x + 1) * width) / across),
    y0: Math.floor((y * height) / across),
    y1: Math.floor(((y + 1) * height) / across),
  };
}

/** Least squares, each channel its own, told for every tile. */
function surface(values: Float32Array, keep: readonly number[]): Float32Array {
  const rowOf = (i: number): number[] => {
    const u = (2 * (i % across)) / (across - 1) - 1,
      v = (2 * Math.floor(i / across)) / (across - 1) - 1;
    return [1, u, v, u * u, u * v, v * v];
  };
  const out = new Float32Array(values.length);
  for (let c = 0; c < 3; c++) {
    const A = new Float64Array(36),
      b = new Float64Array(6);
    for (const i of keep) {
      const row = rowOf(i);
      for (let j = 0; j < 6; j++) {
        b[j] += row[j] * values[3 * i + c];
        for (let k = 0; k < 6; k++) A[j * 6 + k] += row[j] * row[k];
      }
    }
    const of = solveDamped(A, b, 1e-6);
    for (let i = 0; i < across * across; i++) out[3 * i + c] = rowOf(i).reduce((sum, v, j) => sum + v * of[j], 0);
  }
  return out;
}

/** Half of the ground lies nearer than this to what its tile tells, as a standard deviation (1.4826, normal distribution). */
function spreadOf(rgb: Float32Array, width: number, height: number, tiles: Float32Array, keep: readonly number[]): number {
  const strays: number[] = [];
  const here = new Float64Array(3);
  for (const i of keep) {
    const { x0, x1, y0, y1 } = boxOf(i, width, height);
    for (let k = 0; k < 64; k++) {
      const x = x0 + Math.floor(((k % 8) * (x1 - x0)) / 8),
        y = y0 + Math.floor((Math.floor(k / 8) * (y1 - y0)) / 8);
      groundOf(tiles, width, height, x, y, here);
      let sum = 0;
      for (let c = 0; c < 3; c++) sum += (Math.sqrt(Math.max(0, rgb[3 * (y * width + x) + c])) - here[c]) / 3;
      strays.push(Math.abs(sum));
    }
  }
  return 1.4826 * median(strays);
}

/** Between the middles of tiles. */
function groundOf(tiles: Float32Array, width: number, height: number, x: number, y: number, out: Float64Array): void {
  const fx = Math.max(0, Math.min(across - 1.001, ((x + 0.5) * across) / width - 0.5)),
    fy = Math.max(0, Math.min(across - 1.001, ((y + 0.5) * across) / height - 0.5));
  const ix = Math.floor(fx),
    iy = Math.floor(fy),
    tx = fx - ix,
    ty = fy - iy;
  const i = 3 * (iy * across + ix);
  for (let c = 0; c < 3; c++)
    out[c] =
      (tiles[i + c] * (1 - tx) + tiles[i + 3 + c] * tx) * (1 - ty) +
      (tiles[i + 3 * across + c] * (1 - tx) + tiles[i + 3 * across + 3 + c] * tx) * ty;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
