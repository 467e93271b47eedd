import { smoothestSpectrum, xyzFromLab, type Lab, type Spectrum } from '../src/core/colour/index.ts';
import { defaultSurface, inkOverOneGround, inkOverTwoGrounds, type Ink, type Surface } from '../src/core/ink/index.ts';

/** A shelf of our own invention: drawdowns of a small studio's transparent inks on white paper, and one covering white. */
const drawdowns: Readonly<Record<string, Lab>> = {
  lemon: [89, -7, 88],
  marigold: [73, 30, 82],
  brick: [46, 54, 40],
  rose: [48, 70, -4],
  plum: [33, 44, -38],
  cobalt: [29, 24, -64],
  lagoon: [52, -30, -44],
  fir: [41, -50, 22],
  umber: [34, 17, 24],
  soot: [10, 0, 1],
};

export interface Shelf {
  readonly paper: Spectrum;
  readonly surface: Surface;
  readonly shelf: readonly { readonly id: string; readonly ink: Ink }[];
}

export function benchShelf(): Shelf {
  const spectrum = (lab: Lab): Spectrum => smoothestSpectrum(xyzFromLab(lab));
  const paper = spectrum([95, 0, 2]);
  const over = Object.entries(drawdowns).map(([id, lab]) => ({ id, over: spectrum(lab) }));
  const surface = defaultSurface(
    over.map((o) => o.over),
    false,
  );
  const shelf = over.map(({ id, over: read }) => ({ id, ink: inkOverOneGround({ ink: read, ground: paper, surface }).ink }));
  const black = spectrum([13, 0, 0]);
  const chalk = inkOverTwoGrounds({ white: paper, overWhite: spectrum([95, 0, 1]), black, overBlack: spectrum([82, 0, -3]), surface }).ink;
  return { paper, surface, shelf: [...shelf, { id: 'chalk', ink: chalk }] };
}
