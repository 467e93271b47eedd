import { srgbFromXyz, xyzFromLab } from '../../../colour/index.ts';
import { toneForesight } from '../../../halftone/index.ts';
import type { Codes } from '../../../print/index.ts';
import { pick, type Memory } from '../../memory.ts';
import type { PlannedLayer, PlannedPaper } from '../../planned.ts';
import type { PlannedTones } from './models.ts';

/** The print of one paper as eyes see it that no longer tell its dots apart. */
export interface FromArm {
  readonly paperId: string;
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly rgb: Uint8Array;
}

/** What an eye still tells apart at arm's length: a minute of arc at 70 cm (common practice). */
const finestMm = 0.2;
const mostPx = 1000;
/** Nodes along each ink's coverage, by how many inks carry tone. */
const nodesFor = [0, 33, 17, 9, 6, 4, 3, 3, 3];

interface Reads {
  readonly codes: Codes;
  readonly planes: readonly { readonly id: string; readonly bit: number; readonly plane: Uint8Array }[];
  readonly bits: readonly { readonly id: string; readonly bit: number }[];
  readonly tones: PlannedTones;
}

/** Every paper's print from arm's length; none where no run carries tone, or the sheet is printed already: there the proof shows the dots. */
export function seenFromArm(
  codes: Codes,
  layers: readonly Pick<PlannedLayer, 'id' | 'bit' | 'tone'>[],
  papers: readonly PlannedPaper[],
  memory: Memory,
): FromArm[] {
  const planes = layers.flatMap(({ id, bit, tone }) => (tone ? [{ id, bit, plane: tone.plane }] : []));
  if (planes.length === 0) return [];
  const bits = layers.map((l) => pick(l, 'id', 'bit'));
  return papers.flatMap(({ id, tones, overPicture }) =>
    tones && !overPicture ? [{ paperId: id, ...memory.part(`from arm ${id}`, { codes, planes, bits, tones }, makeFromArm, 2) }] : [],
  );
}

function makeFromArm({ codes, planes, bits, tones }: Reads): Omit<FromArm, 'paperId'> {
  const { width: w, height: h, mmPerPx } = codes;
  const step = Math.max(1, Math.round(finestMm / mmPerPx), Math.ceil(Math.max(w, h) / mostPx));
  const width = Math.ceil(w / step),
    height = Math.ceil(h / step);
  const inked = planes.filter(({ id }) => tones.layers.includes(id));
  const dots = planes.reduce((mask, { bit }) => mask | (1 << bit), 0);
  const look = looks(tones, inked, bits);
  const rgb = new Uint8Array(width * height * 3);
  const covers = new Float64Array(inked.length);
  const sums = inked.map(() => new Int32Array(width));
  for (let y = 0, to = 0; y < height; y++) {
    const [top, bottom] = [y * step, Math.min(h, (y + 1) * step)];
    sums.forEach((sum, i) => sumsUnder(inked[i].plane, w, top, bottom, step, sum));
    for (let x = 0; x < width; x++, to += 3) {
      const [left, right] = [x * step, Math.min(w, (x + 1) * step)];
      const n = (bottom - top) * (right - left);
      for (let i = 0; i < covers.length; i++) covers[i] = sums[i][x] / (255 * n);
      const cut = codes.data[top * w + left] & ~dots;
      const edge = !oneCode(codes, cut, dots, left, right, top, bottom);
      const [r, g, b] = edge ? mixed(codesUnder(codes, dots, left, right, top, bottom), n, (c) => look(c, covers)) : look(cut, covers);
      rgb[to] = r + 0.5;
      rgb[to + 1] = g + 0.5;
      rgb[to + 2] = b + 0.5;
    }
  }
  return { width, height, mmPerPx: mmPerPx * step, rgb };
}

/** Sums of a plane under each pixel of one row, `step` pixels a side. */
function sumsUnder(plane: Uint8Array, w: number, top: number, bottom: number, step: number, out: Int32Array): void {
  out.fill(0);
  for (let y = top; y < bottom; y++)
    for (let x = 0, at = y * w; x < out.length; x++) {
      const end = Math.min((y + 1) * w, at + step);
      let sum = 0;
      for (; at < end; at++) sum += plane[at];
      out[x] += sum;
    }
}

function oneCode({ data, width }: Codes, cut: number, dots: number, left: number, right: number, top: number, bottom: number): boolean {
  for (let y = top; y < bottom; y++)
    for (let at = y * width + left, end = y * width + right; at < end; at++) if ((data[at] & ~dots) !== cut) return false;
  return true;
}

function codesUnder({ data, width }: Codes, dots: number, left: number, right: number, top: number, bottom: number): Map<number, number> {
  const share = new Map<number, number>();
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const cut = data[y * width + x] & ~dots;
      share.set(cut, (share.get(cut) ?? 0) + 1);
    }
  return share;
}

/** Where an edge of a cut run lies within a pixel, its light is mixed. */
function mixed(share: ReadonlyMap<number, number>, n: number, look: (cut: number) => Float64Array): number[] {
  const light = [0, 0, 0];
  for (const [cut, count] of share) look(cut).forEach((v, c) => (light[c] += ((v / 255) ** 2 * count) / n));
  return light.map((v) => 255 * Math.sqrt(v));
}

/** Colours of any covers over what is cut: a grid a cut code, made when it is met, and what lies between its nodes. */
function looks(tones: PlannedTones, inked: Reads['planes'], bits: Reads['bits']): (cut: number, covers: Float64Array) => Float64Array {
  const { lab } = toneForesight(tones.model);
  const k = inked.length;
  const nodes = nodesFor[Math.min(k, nodesFor.length - 1)] || 2;
  const place = inked.map(({ id }) => tones.layers.indexOf(id));
  const grids = new Map<number, Float32Array>();
  const gridOf = (cut: number): Float32Array => {
    const known = grids.get(cut);
    if (known) return known;
    const grid = new Float32Array(nodes ** k * 3);
    const coverages = tones.layers.map((id) => {
      const bit = bits.find((l) => l.id === id)?.bit ?? 0;
      return (cut >> bit) & 1;
    });
    for (let i = 0; i < nodes ** k; i++) {
      for (let j = 0, rest = i; j < k; j++, rest = Math.floor(rest / nodes)) coverages[place[j]] = (rest % nodes) / (nodes - 1);
      grid.set(srgbFromXyz(xyzFromLab(lab(coverages))).rgb, i * 3);
    }
    grids.set(cut, grid);
    return grid;
  };
  const low = new Int32Array(k),
    part = new Float64Array(k),
    out = new Float64Array(3);
  return (cut, covers) => {
    const grid = gridOf(cut);
    for (let j = 0; j < k; j++) {
      const at = covers[j] * (nodes - 1);
      low[j] = Math.min(nodes - 2, Math.floor(at));
      part[j] = at - low[j];
    }
    out.fill(0);
    for (let corner = 0; corner < 1 << k; corner++) {
      let weight = 1,
        at = 0;
      for (let j = 0, side = 1; j < k; j++, side *= nodes) {
        const up = (corner >> j) & 1;
        weight *= up ? part[j] : 1 - part[j];
        at += (low[j] + up) * side;
      }
      if (weight === 0) continue;
      for (let c = 0; c < 3; c++) out[c] += weight * grid[at * 3 + c];
    }
    return out;
  };
}
