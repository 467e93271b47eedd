import { length, lengths, say, type Saying } from '../../../words/say.ts';
import type { SizeMm } from '../fit.ts';
import { sigmaAtCorner } from './tested.ts';
import type { MeasuredRegister } from './tested.ts';

export type RegisterMethod = 'stops' | 'hinged-sheet' | 'pins' | 'by-eye';

export interface MethodTolerance {
  readonly id: string;
  readonly method: RegisterMethod;
  readonly name: Saying;
  readonly edge: 'cut' | 'torn' | 'any';
  /** ± mm, held nineteen times in twenty; from a careful to a hasty hand. */
  readonly toleranceMm: readonly [number, number];
}

/** common practice throughout: replace by the studio's own measurement (`readTestSheets`). By eye: our guess, wide. */
export const registerMethods: readonly MethodTolerance[] = [
  { id: 'stops-torn', method: 'stops', edge: 'torn', name: say('register.stopsTorn'), toleranceMm: [1, 1.5] },
  { id: 'stops-cut', method: 'stops', edge: 'cut', name: say('register.stopsCut'), toleranceMm: [0.5, 1] },
  { id: 'hinged-sheet', method: 'hinged-sheet', edge: 'any', name: say('register.hingedSheet'), toleranceMm: [0.3, 0.5] },
  { id: 'pins', method: 'pins', edge: 'any', name: say('register.pins'), toleranceMm: [0.2, 0.3] },
  { id: 'by-eye', method: 'by-eye', edge: 'any', name: say('register.byEye'), toleranceMm: [1, 2] },
];

/** Two standard deviations hold nineteen times in twenty. */
const sigmasInTolerance = 2;

export interface RegisterSigma {
  /** Standard deviation of one layer's place on the sheet, mm. */
  readonly sigmaMm: number;
  readonly toleranceMm: number;
  readonly measured: boolean;
  readonly text: Saying;
}

/** What a studio knows of its own register. `measured` goes before `sigmaMm`. */
export interface OwnRegister {
  readonly sigmaMm?: number;
  readonly measured?: MeasuredRegister;
}

/** The studio's own σ at the corner of an image, or undefined. */
export function ownSigma(own: OwnRegister, imageMm: SizeMm): number | undefined {
  return own.measured ? sigmaAtCorner(own.measured, imageMm) : own.sigmaMm;
}

/** How far off one layer falls: the studio's own σ if it has one, else the middle of the table. */
export function sigmaOf(method: RegisterMethod, edge: 'cut' | 'torn', ownSigmaMm?: number): RegisterSigma {
  if (ownSigmaMm !== undefined)
    return {
      sigmaMm: ownSigmaMm,
      toleranceMm: ownSigmaMm * sigmasInTolerance,
      measured: true,
      text: say('register.measuredHere', { sigma: length(ownSigmaMm, 2) }),
    };
  const row = registerMethods.find((one) => one.method === method && (one.edge === 'any' || one.edge === edge))!;
  const toleranceMm = (row.toleranceMm[0] + row.toleranceMm[1]) / 2;
  return {
    sigmaMm: toleranceMm / sigmasInTolerance,
    toleranceMm,
    measured: false,
    text: say('register.usualTolerance', { method: row.name, tolerance: lengths(row.toleranceMm, 'to') }),
  };
}

/**
 * The sheet that suits how sheets are placed: hand and stops fall up to two or three millimetres apart, which a fine scale of as
 * many slits would not reach; pins and hinged sheets need the fine one.
 */
export function testScaleFor(method: RegisterMethod): { readonly readsMm: number; readonly corners: false } {
  return { readsMm: method === 'pins' || method === 'hinged-sheet' ? 0.2 : 0.5, corners: false };
}
