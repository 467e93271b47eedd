import { groundCube, overlapIndex, type LaidFilms } from '../../../print/index.ts';
import type { Member } from '../../../ink/index.ts';
import type { OverPicture } from '../../planned.ts';
import type { PrintedLayer } from './let-down.ts';

/**
 * The proof over an earlier print, in the films that the paper's colours are shown in.
 * @param nodes of the ground's cube; left out: as fine as a Plan's
 */
export function overPicture(
  ground: Uint8Array,
  shown: Member,
  layers: readonly PrintedLayer[],
  areas: Float64Array,
  nodes?: number,
): OverPicture {
  const laid = laidFilms(shown);
  const rows = Array.from(areas.keys()).filter((row) => areas[row] > 0);
  const bits = layers.map((l) => l.bit);
  const rowOfCode = (runs: number): Uint8Array => Uint8Array.from({ length: 256 }, (_, code) => overlapIndex(code, bits, runs));
  return {
    ground,
    cube: groundCube(laid, rows, nodes),
    laid,
    rows,
    rowOfCode: rowOfCode(layers.length),
    progressive: layers.map((_, i) => rowOfCode(i + 1)),
  };
}

/** Films of a print with how each lies on each other one, as data. */
function laidFilms({ films, surface, onFilm }: Member): LaidFilms {
  if (!onFilm) return { films, surface };
  return { films, surface, onInk: films.flatMap((_, b) => films.map((film, top) => (top > b ? onFilm(b, top) : film))) };
}
