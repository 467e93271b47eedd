import { fail } from '../problem.ts';
import { studioDefaults } from './defaults.ts';
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
): Deposit {
  range('transfer', 'screen.transfer', transferShare, 1.5);
  range('solids', 'ink.volumeSolids', volumeSolids, 1);
  const whole = completeMesh(mesh);
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
    fail(
      'weighing',
      'press.weighing',
      'The weighed sheet must have gained something on a printed area.',
      'Weigh ten sheets together before and at once after printing, and divide by ten.',
    );
  }
  return (gainGrams / densityGPerMl / areaMm2) * 1e6;
}

/** The studio's own transfer share from weighings: mean ± what the weighings scatter (at least a tenth either way). */
export function transferFromWeighing(mesh: Mesh, wetMicrons: readonly number[]): readonly [number, number] {
  if (wetMicrons.length === 0 || wetMicrons.some((wet) => !(wet > 0))) {
    fail('weighing', 'press.weighing', 'No usable weighing.', 'Weigh at least one sheet before and after printing.');
  }
  const volume = completeMesh(mesh).theoreticalCm3PerM2;
  const mean = wetMicrons.reduce((sum, wet) => sum + wet, 0) / wetMicrons.length / volume;
  const spread = Math.sqrt(wetMicrons.reduce((sum, wet) => sum + (wet / volume - mean) ** 2, 0) / Math.max(1, wetMicrons.length - 1));
  const half = Math.max(mean * 0.1, 2 * spread);
  return [Math.max(0.01, mean - half), mean + half];
}

export interface EdgeRidge {
  /** Wet film right at the stencil's edge: mesh film plus what the stencil's thickness holds. */
  readonly wetMicrons: number;
  readonly withinMm: readonly [number, number];
  readonly timesTheFilm: number;
  readonly note: string;
}

/**
 * Thick stencils hold the mesh up, so within 1..2 mm of an edge (common practice) the ink stands as high as the stencil
 * and the mesh's film together. An upper bound: a stiff blade or a wide stroke levels some of it.
 */
export function edgeRidge(wetMicrons: number, stencilThicknessMm: number): EdgeRidge {
  if (!(stencilThicknessMm >= 0 && stencilThicknessMm <= 10))
    fail(
      'stencil-thickness',
      'material.thicknessMm',
      `A stencil ${stencilThicknessMm} mm thick cannot be printed.`,
      'Give the thickness of the sheet in mm: newsprint about 0.07, film 0.1 to 0.18.',
    );
  const high = wetMicrons + stencilThicknessMm * 1000;
  const times = high / wetMicrons;
  return {
    wetMicrons: high,
    withinMm: studioDefaults.ridgeMm,
    timesTheFilm: times,
    note:
      times < 2
        ? 'The edge prints about as thick as the middle.'
        : `Within ${studioDefaults.ridgeMm.join('–')} mm of an edge the film can be up to ${times.toFixed(1)} times as thick: darker rims, slower drying. A thinner stencil or a second, lighter stroke evens it.`,
  };
}

function range(code: string, place: string, [low, high]: readonly [number, number], most: number): void {
  if (!(low > 0 && high >= low && high <= most)) {
    fail(
      `${code}-range`,
      place,
      `The range ${low} to ${high} does not run from a smaller to a larger share.`,
      `Give two shares, the smaller first, between 0 and ${most}.`,
    );
  }
}
