import { addFilm, internal, measured, thinned, type Film, type Surface } from '../ink/index.ts';
import {
  labFromXyz,
  labUnderLamp,
  smoothestSpectrumNear,
  srgbFromXyz,
  xyzFromLab,
  xyzFromSpectrum,
  xyzFromSrgb,
  type Illuminant,
  type Lab,
  type Spectrum,
  type Xyz,
} from '../colour/index.ts';
import type { Codes } from './codes.ts';

/**
 * Printing over a sheet that carries a picture. For each overlap, a cube of ground colours (sRGB) says what that
 * ground becomes under the films; between the nodes the colour is interpolated. Ground colours come from a picture,
 * so each is taken as the smoothest spectrum with that colour (OPTICS.md section 1): a forecast with a wide band.
 */
export interface GroundCube {
  /** Nodes along each of red, green, blue. */
  readonly nodes: number;
  /** For each row (overlap) nodes³ × RGB bytes, red slowest. */
  readonly table: Uint8Array;
  readonly rows: number;
  /** Which lamp it is seen under; under D50 the bare ground is the picture itself. */
  readonly lamp: Illuminant;
}

/** Films as they lie on one sheet. */
export interface LaidFilms {
  readonly films: readonly Film[];
  readonly surface: Surface;
  /** Film i as it lies on film b, at [b · films + i]; left out: all alike, by the surface's trapping. */
  readonly onInk?: readonly Film[] | undefined;
}

/** Nodes a side of the cube that a Plan holds, and of one made while a slider moves. */
export const fineNodes = 13,
  quickNodes = 5;
const nodeSpectra = new Map<number, readonly Spectrum[]>();

function groundSpectra(nodes: number): readonly Spectrum[] {
  const known = nodeSpectra.get(nodes);
  if (known) return known;
  const spectra: Spectrum[] = [];
  const step = 1 / (nodes - 1);
  for (let r = 0; r < nodes; r++)
    for (let g = 0; g < nodes; g++)
      for (let b = 0; b < nodes; b++) {
        spectra.push(smoothestSpectrumNear(withinPaint(xyzFromSrgb([r * step, g * step, b * step]))).spectrum);
      }
  nodeSpectra.set(nodes, spectra);
  return spectra;
}

/** Black and white of a screen are no surface's; a touch of grey makes them one. Saturated corners give up chroma. */
export function withinPaint(xyz: readonly [number, number, number]): [number, number, number] {
  const white = xyzFromSrgb([1, 1, 1]);
  return [0, 1, 2].map((i) => 0.003 * white[i] + 0.985 * xyz[i]) as [number, number, number];
}

/**
 * The cube for overlaps of these films (first down first): index bit i = film i.
 * @param wanted rows that are needed; what lies under their topmost films (the progressive proofs) comes with them.
 *   Left out: all of them. Rows that are not needed stay black.
 * @param nodes a side, 2 or more; colours between them are interpolated
 */
export function groundCube(laid: LaidFilms, wanted?: readonly number[], nodes: number = fineNodes, lamp: Illuminant = 'D50'): GroundCube {
  const { films, surface } = laid;
  const rows = 1 << films.length;
  const perRow = nodes ** 3 * 3;
  const table = new Uint8Array(rows * perRow);
  const needed = neededRows(rows, wanted);
  const alike = laid.onInk ? [] : films.map((film) => thinned(film, surface.trapping ?? 1));
  const onInk = (below: number, top: number): Film => laid.onInk?.[below * films.length + top] ?? alike[top];
  groundSpectra(nodes).forEach((ground, node) => {
    const stacks: Spectrum[] = [];
    for (const row of needed) {
      const top = 31 - Math.clz32(row);
      const below = row & ~(1 << top);
      stacks[row] =
        row === 0 ? internal(ground, surface) : addFilm(stacks[below], below === 0 ? films[top] : onInk(31 - Math.clz32(below), top));
      const seen = row === 0 && lamp !== 'D50' ? pictured(node, nodes, ground, lamp) : xyzUnder(measured(stacks[row], surface), lamp);
      table.set(srgbFromXyz(seen).rgb, row * perRow + node * 3);
    }
  });
  return { nodes, table, rows, lamp };
}

const xyzUnder = (R: Spectrum, lamp: Illuminant): Xyz =>
  lamp === 'D50' ? xyzFromSpectrum(R) : xyzFromLab(labUnderLamp(xyzFromSpectrum(R, lamp), lamp));

/** The colour of the picture itself under a lamp: it moves as the spectrum that stands for it. */
function pictured(node: number, nodes: number, ground: Spectrum, lamp: Illuminant): Xyz {
  const step = 1 / (nodes - 1);
  const own = labFromXyz(
    xyzFromSrgb([Math.floor(node / nodes ** 2) * step, (Math.floor(node / nodes) % nodes) * step, (node % nodes) * step]),
  );
  const [as, under] = [labFromXyz(xyzFromSpectrum(ground)), labUnderLamp(xyzFromSpectrum(ground, lamp), lamp)];
  return xyzFromLab(own.map((v, c) => v + under[c] - as[c]) as unknown as Lab);
}

/** In ascending order, so that what lies below is made first. */
function neededRows(rows: number, wanted?: readonly number[]): number[] {
  const needed = new Set<number>([0]);
  for (const row of wanted ?? Array.from({ length: rows }, (_, i) => i)) {
    for (let r = row; r > 0; r &= ~(1 << (31 - Math.clz32(r)))) needed.add(r);
  }
  return [...needed].sort((a, b) => a - b);
}

/**
 * Paints the proof over a printed ground.
 * @param ground RGB bytes, one triple per pixel of `codes`
 * @param rowOfCode row of the cube for each of the 256 codes; 0 is the bare ground and, under D50, copies the picture
 */
export function paintOverPicture(codes: Codes, ground: Uint8Array, cube: GroundCube, rowOfCode: Uint8Array, out: Uint32Array): void {
  const { data } = codes;
  const { nodes, table } = cube;
  const perRow = nodes ** 3 * 3;
  const last = nodes - 1;
  const stepB = 3,
    stepG = nodes * 3,
    stepR = nodes * nodes * 3;
  const node = new Int32Array(256),
    share = new Float64Array(256);
  for (let v = 0; v < 256; v++) {
    const at = (v / 255) * last;
    node[v] = Math.min(last - 1, at | 0);
    share[v] = at - node[v];
  }
  // A picture enlarged to the proof's pixels repeats itself: the colour before is at hand.
  let knownRow = -1,
    knownGround = -1,
    known = 0;
  for (let i = 0; i < data.length; i++) {
    const r = ground[i * 3],
      g = ground[i * 3 + 1],
      b = ground[i * 3 + 2];
    const here = (b << 16) | (g << 8) | r;
    const row = rowOfCode[data[i]];
    if (row === 0 && cube.lamp === 'D50') {
      out[i] = (0xff000000 | here) >>> 0;
      continue;
    }
    if (row !== knownRow || here !== knownGround) {
      const fx = share[r],
        fy = share[g],
        fz = share[b];
      const at = row * perRow + node[r] * stepR + node[g] * stepG + node[b] * stepB;
      let word = 0xff000000;
      for (let c = 0; c < 3; c++) {
        const p = at + c;
        const low = mix(mix(table[p], table[p + stepB], fz), mix(table[p + stepG], table[p + stepG + stepB], fz), fy);
        const q = p + stepR;
        const high = mix(mix(table[q], table[q + stepB], fz), mix(table[q + stepG], table[q + stepG + stepB], fz), fy);
        word |= Math.round(low + (high - low) * fx) << (8 * c);
      }
      known = word >>> 0;
      knownRow = row;
      knownGround = here;
    }
    out[i] = known;
  }
}

function mix(a: number, b: number, f: number): number {
  return a + (b - a) * f;
}

/** A picture as sRGB bytes, three a pixel. */
export interface RgbPicture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/**
 * The picture of an earlier print, resampled (bilinear) to the codes' pixels.
 * @param lies where its top left corner lies from the image's, and how wide it is, mm
 * @param paperRgb sRGB bytes of the paper around it
 */
export function groundUnder(
  picture: RgbPicture,
  lies: { readonly atMm: readonly [number, number]; readonly widthMm: number },
  codes: Pick<Codes, 'width' | 'height' | 'mmPerPx'>,
  paperRgb: readonly [number, number, number],
): Uint8Array {
  const { width, height, rgb } = picture;
  const out = new Uint8Array(codes.width * codes.height * 3);
  const perMm = width / lies.widthMm;
  const columns = places(codes.width, codes.mmPerPx, lies.atMm[0], perMm, width);
  const rows = places(codes.height, codes.mmPerPx, lies.atMm[1], perMm, height);
  for (let y = 0, to = 0; y < codes.height; y++) {
    const y0 = rows.low[y] * width,
      y1 = rows.high[y] * width,
      fy = rows.share[y];
    for (let x = 0; x < codes.width; x++, to += 3) {
      if (fy < 0 || columns.share[x] < 0) {
        out[to] = paperRgb[0];
        out[to + 1] = paperRgb[1];
        out[to + 2] = paperRgb[2];
        continue;
      }
      const x0 = columns.low[x],
        x1 = columns.high[x],
        fx = columns.share[x];
      const a = (y0 + x0) * 3,
        b = (y0 + x1) * 3,
        c = (y1 + x0) * 3,
        d = (y1 + x1) * 3;
      for (let k = 0; k < 3; k++) out[to + k] = mix(mix(rgb[a + k], rgb[b + k], fx), mix(rgb[c + k], rgb[d + k], fx), fy) + 0.5;
    }
  }
  return out;
}

/** For each pixel along one side: the two pixels of the picture it lies between, and how far on; −1 outside the picture. */
function places(
  count: number,
  mmPerPx: number,
  atMm: number,
  perMm: number,
  size: number,
): { low: Int32Array; high: Int32Array; share: Float64Array } {
  const low = new Int32Array(count),
    high = new Int32Array(count),
    share = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const u = ((i + 0.5) * mmPerPx - atMm) * perMm - 0.5;
    low[i] = Math.min(size - 1, Math.max(0, Math.floor(u)));
    high[i] = Math.min(size - 1, low[i] + 1);
    share[i] = u < -0.5 || u > size - 0.5 ? -1 : Math.min(1, Math.max(0, u - low[i]));
  }
  return { low, high, share };
}
