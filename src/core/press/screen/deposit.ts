import { figure, length, lengths, say, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { studioDefaults } from '../defaults.ts';
import { completeMesh } from './mesh.ts';
import type { CompleteMesh, Mesh } from './mesh.ts';

export interface Deposit {
  readonly mesh: CompleteMesh;
  readonly transferShare: readonly [number, number];
  /** Film on the paper while wet: middle of the range. */
  readonly wetMicrons: number;
  readonly wetRange: readonly [number, number];
  readonly dryMicrons: number;
  readonly dryRange: readonly [number, number];
  /** m² that a litre prints, for the range of wet film. */
  readonly coverageM2PerL: readonly [number, number];
  /** A trade article's figure for the same mesh, to compare with. */
  readonly articleMicrons: number;
}

/**
 * Film of one pull: theoretical volume × what a hand pull transfers (default 60..100 %, common practice; weigh sheets
 * before and after to replace it, `transferFromWeighing`). Dry film: wet × volume solids. Throws ProblemError.
 */
export function depositOf(
  mesh: Mesh,
  transferShare: readonly [number, number] = studioDefaults.transferShare,
  volumeSolids: readonly [number, number] = studioDefaults.volumeSolids,
  place = 'screen.mesh',
): Deposit {
  range('transfer', 'screen.transfer', transferShare, 1.5);
  range('solids', say('press.solids'), volumeSolids, 1);
  const whole = completeMesh(mesh, place);
  const volume = whole.theoreticalCm3PerM2;
  const wetRange = [volume * transferShare[0], volume * transferShare[1]] as const;
  const wetMicrons = (wetRange[0] + wetRange[1]) / 2;
  return {
    mesh: whole,
    transferShare,
    wetMicrons,
    wetRange,
    dryMicrons: (wetMicrons * (volumeSolids[0] + volumeSolids[1])) / 2,
    dryRange: [wetRange[0] * volumeSolids[0], wetRange[1] * volumeSolids[1]],
    coverageM2PerL: [1000 / wetRange[1], 1000 / wetRange[0]],
    articleMicrons: articleDeposit(whole),
  };
}

/**
 * Wet deposit in microns after a trade article ('How much ink do you need?'): up to 42 threads a cm, plain weave,
 * 1.82 d (1 − M d)²; 43..139 a cm 0.285 F; from 140 0.35 F; twill 0.31 F. F fabric thickness, d thread, M threads per length.
 */
export function articleDeposit(mesh: Mesh & { readonly thicknessMicrons: number }, twill = false): number {
  if (twill) return 0.31 * mesh.thicknessMicrons;
  if (mesh.perCm < 43) return 1.82 * mesh.threadMicrons * (1 - (mesh.perCm * mesh.threadMicrons) / 10000) ** 2;
  return (mesh.perCm < 140 ? 0.285 : 0.35) * mesh.thicknessMicrons;
}

/** Wet film from a sheet weighed before and straight after the pull. Grams, mm², g/mL → µm. */
export function wetFromWeighing(gainGrams: number, areaMm2: number, densityGPerMl: number = studioDefaults.densityGPerMl): number {
  if (!(gainGrams > 0 && areaMm2 > 0 && densityGPerMl > 0)) {
    fail('weighing', say('press.weighing'), say('press.nothingGained'), say('press.weighTen'));
  }
  return (gainGrams / densityGPerMl / areaMm2) * 1e6;
}

/** The studio's own transfer share from weighings: mean ± what the weighings scatter (at least a tenth either way). */
export function transferFromWeighing(mesh: Mesh, wetMicrons: readonly number[]): readonly [number, number] {
  if (wetMicrons.length === 0 || wetMicrons.some((wet) => !(wet > 0))) {
    fail('weighing', say('press.weighing'), say('press.noWeighing'), say('press.weighOne'));
  }
  const volume = completeMesh(mesh).theoreticalCm3PerM2;
  const mean = wetMicrons.reduce((sum, wet) => sum + wet, 0) / wetMicrons.length / volume;
  const spread = Math.sqrt(wetMicrons.reduce((sum, wet) => sum + (wet / volume - mean) ** 2, 0) / Math.max(1, wetMicrons.length - 1));
  const half = Math.max(mean * 0.1, 2 * spread);
  return [Math.max(0.01, mean - half), mean + half];
}

/** How far a ridge reaches over a printed shape, and what that makes of its film. */
export interface RidgeOver {
  /** Of the printed area: what lies within reach of an edge. */
  readonly share: number;
  /** Mean film over the whole area, as a multiple of the mesh's. */
  readonly meanTimes: number;
  /** The film that gives the shape its colour, the same way: a broad flat is seen by its middle, a fine shape by its edges. */
  readonly colourTimes: number;
}

/** A ridge over more than this share of a shape is worth saying. */
export const ridgeMatters = 0.1;

/**
 * The ridge falls from the stencil's height at the edge to nothing at the end of its reach: half its height in the mean, over
 * the share of the area within reach. Geometry; an upper bound like the ridge itself.
 */
export function ridgeOver({ timesTheFilm }: Pick<EdgeRidge, 'timesTheFilm'>, share: number): RidgeOver {
  const meanTimes = 1 + (share * (timesTheFilm - 1)) / 2;
  // From a tenth of the area on, little by little: of the bound itself half, as for the grams. In hundredths, so that a moved bridge moves no colour.
  const edges = Math.max(0, (share - ridgeMatters) / (1 - ridgeMatters));
  return { share, meanTimes, colourTimes: Math.round(100 + 50 * edges * (meanTimes - 1)) / 100 };
}

export interface EdgeRidge {
  /** Wet film right at the stencil's edge: mesh film plus what the stencil's thickness holds. */
  readonly wetMicrons: number;
  readonly withinMm: readonly [number, number];
  readonly timesTheFilm: number;
  readonly note: Saying;
}

/**
 * Thick stencils hold the mesh up, so within 1..2 mm of an edge (common practice) the ink stands as high as the stencil
 * and the mesh's film together. An upper bound: a stiff blade or a wide stroke levels some of it.
 */
export function edgeRidge(wetMicrons: number, stencilThicknessMm: number): EdgeRidge {
  if (!(stencilThicknessMm >= 0 && stencilThicknessMm <= 10))
    fail(
      'stencil-thickness',
      'materials',
      say('press.stencilThickness', { thickness: length(stencilThicknessMm) }),
      say('press.giveThickness', { newsprint: length(0.07), film: lengths([0.1, 0.18], 'to') }),
    );
  const high = wetMicrons + stencilThicknessMm * 1000;
  const times = high / wetMicrons;
  return {
    wetMicrons: high,
    withinMm: studioDefaults.ridgeMm,
    timesTheFilm: times,
    note:
      times < 2
        ? say('press.edgeEven')
        : say('press.edgeRidge', { within: lengths(studioDefaults.ridgeMm, 'to'), times: figure(times, 1, false) }),
  };
}

function range(code: string, place: string | Saying, [low, high]: readonly [number, number], most: number): void {
  if (!(low > 0 && high >= low && high <= most)) {
    fail(
      `${code}-range`,
      place,
      say('press.sharesReversed', { low: figure(low, 3, false), high: figure(high, 3, false) }),
      say('press.giveShares', { most: figure(most, 1, false) }),
    );
  }
}
