import { BANDS, smoothestSpectrum, smoothestSpectrumNear, xyzFromLab, type Spectrum, type Xyz } from '../../colour/index.ts';
import { problem, ProblemError, type Problem } from '../../problem.ts';
import { figure, name as asName, say, type Saying } from '../../../words/say.ts';
import type { Place, Reading } from '../types.ts';

/** Papers with brighteners read a little above 1; more than this is a wrong scale or a wrong calibration. */
const mostReflectance = 1.2;

/** Y of the darkest paper whose brighteners can lift it above what a surface reflects (L about 85). */
const glowingFrom = 0.66;

/**
 * The spectrum a reading stands for. Colours without a spectrum become the smoothest one of that colour.
 * @throws ProblemError with everything that is out of range
 */
export function spectrumFromReading(reading: Reading, place: Place): Spectrum {
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
    if (!(error instanceof ProblemError)) throw error;
    throw new ProblemError(error.problems.map((p) => problem(p.severity, p.code, place, p.message, p.advice)));
  }
}

/** Everything out of range in a reading; empty when it can be used. */
export function readingProblems(reading: Reading, place: Place): Problem[] {
  return faultsOf(reading).map((f) => problem('error', f.code, place, f.message, f.advice));
}

/** What is wrong with a reading, wherever it stands. */
interface Fault {
  readonly code: 'reading-not-a-number' | 'reading-out-of-range' | 'spectrum-bands';
  readonly message: Saying;
  readonly advice: Saying;
}

export function faultsOf(reading: Reading): Fault[] {
  if (reading.kind === 'spectrum') {
    const fault = spectrumFault(reading.values);
    return fault ? [fault] : [];
  }
  const three = reading.kind === 'xyz' ? reading.xyz : reading.lab;
  if (!three.every(Number.isFinite))
    return [{ code: 'reading-not-a-number', message: say('readings.threeNumbers'), advice: say('readings.readOrType') }];
  const outOfRange = (message: Saying, advice: Saying): Fault => ({ code: 'reading-out-of-range', message, advice });
  const typed = (value: number): ReturnType<typeof figure> => figure(value, 3, false);
  if (reading.kind === 'xyz') {
    return three.flatMap((value, i) =>
      value > 0 && value <= 120
        ? []
        : [outOfRange(say('readings.xyzOutOfRange', { what: asName('XYZ'[i]), value: typed(value) }), say('readings.checkScale'))],
    );
  }
  const [L, a, b] = three;
  return [
    L <= 0 || L > 105 ? say('readings.lightnessOutOfRange', { value: typed(L) }) : null,
    Math.abs(a) > 130 ? say('readings.aOutOfRange', { value: typed(a) }) : null,
    Math.abs(b) > 150 ? say('readings.bOutOfRange', { value: typed(b) }) : null,
  ].flatMap((message) => (message ? [outOfRange(message, say('readings.checkLabOrder'))] : []));
}

function spectrumFault(values: readonly number[]): Fault | null {
  if (values.length !== BANDS) {
    return {
      code: 'spectrum-bands',
      message: say('readings.spectrumBands', { n: values.length, needed: BANDS }),
      advice: say('readings.giveSpectrum'),
    };
  }
  if (!values.every(Number.isFinite))
    return { code: 'reading-not-a-number', message: say('readings.spectrumGap'), advice: say('readings.readAgain') };
  const high = Math.max(...values),
    low = Math.min(...values);
  if (high > mostReflectance) {
    return {
      code: 'reading-out-of-range',
      message: say('readings.spectrumHigh', { high: figure(high, 3, false) }),
      advice: say(high > 2 ? 'readings.looksLikePercent' : 'readings.calibrateWhite'),
    };
  }
  if (low < -0.005) {
    return {
      code: 'reading-out-of-range',
      message: say('readings.spectrumLow', { low: figure(low, 3, false) }),
      advice: say('readings.calibrateDark'),
    };
  }
  return null;
}

/** The doubt of a reading in ΔE00: its own where it carries one, else what is usual for its kind (common practice). */
export function sigmaOf(reading: Reading): number {
  if (reading.sigma !== undefined) return reading.sigma;
  return reading.kind === 'spectrum' ? 0.3 : 0.5;
}
