import { BANDS, smoothestSpectrum, smoothestSpectrumNear, xyzFromLab, type Spectrum, type Xyz } from '../colour/index.ts';
import { fail, problem, ProblemError, type Problem } from '../problem.ts';
import type { Reading } from './types.ts';

/** Papers with brighteners read a little above 1; more than this is a wrong scale or a wrong calibration. */
const mostReflectance = 1.2;

/** Y of the darkest paper whose brighteners can lift it above what a surface reflects (L about 85). */
const glowingFrom = 0.66;

/**
 * The spectrum a reading stands for. Colours without a spectrum become the smoothest one of that colour.
 * @param place where the reading stands, for messages: `papers[0].reading`
 * @throws ProblemError with everything that is out of range
 */
export function spectrumFromReading(reading: Reading, place: string): Spectrum {
  const problems = readingProblems(reading, place);
  if (problems.length > 0) throw new ProblemError(problems);
  if (reading.kind === 'spectrum') return Float64Array.from(reading.values);
  const xyz: Xyz = reading.kind === 'xyz' ? [reading.xyz[0] / 100, reading.xyz[1] / 100, reading.xyz[2] / 100] : xyzFromLab(reading.lab);
  if (reading.kind === 'photo') return smoothestSpectrumNear(xyz).spectrum;
  try {
    const near = smoothestSpectrumNear(xyz);
    if (near.moved === 0) return near.spectrum;
    // Bright papers glow in the blue and read beyond what a surface reflects; no ink is so light.
    return smoothestSpectrum(xyz, xyz[1] > glowingFrom ? mostReflectance : 1);
  } catch (error) {
    if (error instanceof ProblemError) throw new ProblemError(error.problems.map((p) => ({ ...p, place })));
    throw error;
  }
}

/** Everything out of range in a reading; empty when it can be used. */
export function readingProblems(reading: Reading, place: string): Problem[] {
  if (reading.kind === 'spectrum') return spectrumProblems(reading.values, place);
  const [a, b, c] = reading.kind === 'xyz' ? reading.xyz : reading.lab;
  if (![a, b, c].every(Number.isFinite)) {
    return [
      problem(
        'error',
        'reading-not-a-number',
        place,
        'One of the three numbers is missing or is no number.',
        'Read the patch again or type all three.',
      ),
    ];
  }
  if (reading.kind === 'xyz') {
    const wrong: string[] = [];
    if (a <= 0 || a > 120) wrong.push(`X is ${a}, and lies between 0 and 120`);
    if (b <= 0 || b > 120) wrong.push(`Y is ${b}, and lies between 0 and 120`);
    if (c <= 0 || c > 120) wrong.push(`Z is ${c}, and lies between 0 and 120`);
    return wrong.map((what) =>
      problem('error', 'reading-out-of-range', place, `${what}.`, 'Check the scale: the perfect white has Y = 100.'),
    );
  }
  const wrong: string[] = [];
  if (a <= 0 || a > 105) wrong.push(`L is ${a}, and lies between 0 (no light at all, which no surface has) and 105`);
  if (Math.abs(b) > 130) wrong.push(`a is ${b}, and lies between −130 and 130`);
  if (Math.abs(c) > 150) wrong.push(`b is ${c}, and lies between −150 and 150`);
  return wrong.map((what) =>
    problem('error', 'reading-out-of-range', place, `${what}.`, 'Check that the three numbers are L, a and b in that order.'),
  );
}

function spectrumProblems(values: readonly number[], place: string): Problem[] {
  if (values.length !== BANDS) {
    return [
      problem(
        'error',
        'spectrum-bands',
        place,
        `The spectrum has ${values.length} values where ${BANDS} are needed.`,
        'Give the reflectance from 380 to 730 nm in steps of 10 nm.',
      ),
    ];
  }
  if (!values.every(Number.isFinite)) {
    return [
      problem('error', 'reading-not-a-number', place, 'Some value of the spectrum is missing or is no number.', 'Read the patch again.'),
    ];
  }
  const high = Math.max(...values),
    low = Math.min(...values);
  if (high > mostReflectance) {
    return [
      problem(
        'error',
        'reading-out-of-range',
        place,
        `The spectrum goes up to ${high}, where 1 is the perfect white.`,
        high > 2 ? 'These look like percent: divide by 100.' : 'Calibrate the instrument on its white tile and read again.',
      ),
    ];
  }
  if (low < -0.005) {
    return [
      problem(
        'error',
        'reading-out-of-range',
        place,
        `The spectrum goes down to ${low}; no surface reflects less than nothing.`,
        'Calibrate the instrument on its dark trap and read again.',
      ),
    ];
  }
  return [];
}

/** The doubt of a reading in ΔE00: its own where it carries one, else what is usual for its kind (common practice). */
export function sigmaOf(reading: Reading): number {
  if (reading.sigma !== undefined) return reading.sigma;
  return reading.kind === 'spectrum' ? 0.3 : 0.5;
}

/** Checks a share or strength at the room's door. */
export function checkShare(share: number, place: string): void {
  if (!(share >= 0 && share <= 1)) {
    fail(
      'share-out-of-range',
      place,
      `The strength ${share} is no share of a pot.`,
      'Give a number between 0 (only base) and 1 (only ink).',
    );
  }
}
