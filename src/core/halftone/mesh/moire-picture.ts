import { pow } from '../../numeric/index.ts';
import type { DotShape } from '../model/gain.ts';
import { screener } from '../screen/screener.ts';

export interface FilmLaid {
  readonly by: 'dots' | 'grain';
  readonly shape: DotShape;
  readonly rulingPerCm: number;
  readonly angleDeg: number;
  readonly leastDotMicrons: number;
  /** The mesh that its dots are printed through, square to the frame, and how thick its threads are. */
  readonly meshPerCm: number;
  readonly threadMicrons: number;
  /** Bit in `colours`. */
  readonly bit: number;
  /** What it covers, 0..1. */
  readonly cover: number;
}

/** Ink runs together under a thread; this much of its width stays bare [M]. */
const bareUnderThread = 0.4;
const finePerMm = 32;

export interface TonePatch {
  readonly width: number;
  readonly height: number;
  readonly pixelsPerMm: number;
  readonly rgb: Uint8Array;
}

/**
 * Flat tones of several films on one another, through their meshes, as the eye at arm's length sees them: drawn dot by dot, then mixed in light
 * over an eighth of a millimetre.
 * @param colours of all 256 codes, 0xAABBGGRR
 */
export function moirePicture(films: readonly FilmLaid[], colours: ArrayLike<number>, widthMm: number, heightMm: number): TonePatch {
  const every = 4;
  const width = Math.floor((widthMm * finePerMm) / every),
    height = Math.floor((heightMm * finePerMm) / every);
  const fine = width * every;
  const drawn = films.map((film) => ({
    film,
    screen: screener({ ...film, pixelsPerCm: finePerMm * 10 }),
    covers: new Uint8Array(fine).fill(Math.round(film.cover * 255)),
    open: openings(film, Math.max(fine, height * every)),
  }));
  // Light of every code, three a code.
  const light = Float64Array.from({ length: 768 }, (_, i) => pow(((colours[Math.floor(i / 3)] >> (8 * (i % 3))) & 255) / 255, 2.2));
  const sums = new Float64Array(width * height * 3);
  const dots = new Uint8Array(fine),
    codes = new Uint8Array(fine);
  for (let y = 0; y < height * every; y++) {
    codes.fill(0);
    for (const { film, screen, covers } of drawn) {
      screen.row(y, covers, dots);
      for (let x = 0; x < fine; x++) codes[x] |= dots[x] << film.bit;
    }
    const row = Math.floor(y / every) * width;
    for (let x = 0; x < fine; x++) {
      const code = codes[x];
      const at = (row + Math.floor(x / every)) * 3,
        of = code * 3;
      sums[at] += light[of];
      sums[at + 1] += light[of + 1];
      sums[at + 2] += light[of + 2];
      // What lies under a thread is bare of that film.
      for (const { film, open } of drawn) {
        const bare = 1 - open[x] * open[y];
        if (bare === 0 || ((code >> film.bit) & 1) === 0) continue;
        const without = (code & ~(1 << film.bit)) * 3;
        sums[at] += bare * (light[without] - light[of]);
        sums[at + 1] += bare * (light[without + 1] - light[of + 1]);
        sums[at + 2] += bare * (light[without + 2] - light[of + 2]);
      }
    }
  }
  const rgb = Uint8Array.from(sums, (v) => Math.round(255 * pow(Math.max(0, v) / every ** 2, 1 / 2.2)));
  return { width, height, pixelsPerMm: finePerMm / every, rgb };
}

/** What share of each pixel the threads of one direction let through: in whole pixels the grid itself would make bands with the mesh. */
function openings({ meshPerCm, threadMicrons }: FilmLaid, length: number): Float64Array {
  const period = (finePerMm * 10) / meshPerCm;
  const bare = (bareUnderThread * threadMicrons * finePerMm) / 1000;
  // Bare length from nought to a place.
  const until = (at: number): number => {
    const whole = Math.floor(at / period);
    return whole * bare + Math.min(bare, at - whole * period);
  };
  return Float64Array.from({ length }, (_, i) => 1 - (until(i + 1) - until(i)));
}
