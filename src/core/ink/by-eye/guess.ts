import { deltaE00, labFromXyz, xyzFromSrgb, type Lab } from '../../colour/index.ts';
import { deltaE, say, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import type { Place, Reading } from '../types.ts';

/** How a colour was told without an instrument. */
export type GuessedBy = 'typed' | 'swatch' | 'picture' | 'compared';

/**
 * Doubt of such a colour, ΔE00 (common practice, OPTICS section 7): a screen that nobody calibrated is off by 3 to 5, a swatch chosen by
 * eye by one step of the fan besides, a photograph in some light by 5 to 12.
 */
export const doubtOfGuess: Readonly<Record<Exclude<GuessedBy, 'compared'>, number>> = { typed: 8, swatch: 9, picture: 10 };

/** What the screen alone may be off by, once the drawdown beside it looks the same (common practice). */
export const screenSigma = 3.5;

/** `#c0392b`, `c0392b` or `#c32`, as they come out of a picture program. */
export function labOfHex(text: string, place: Place): Lab {
  const short = /^#?([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text.trim());
  const long = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text.trim());
  const three = short ? short.slice(1).map((d) => d + d) : long?.slice(1);
  if (!three) fail('not-a-colour', place, say('readings.notHex'), say('readings.typeHex'));
  const [r, g, b] = three.map((pair) => parseInt(pair, 16) / 255);
  return labFromXyz(xyzFromSrgb([r, g, b]));
}

/** A colour told by eye, as a reading with its doubt. */
export function readingByEye(lab: Lab, by: Exclude<GuessedBy, 'compared'>): Extract<Reading, { kind: 'lab' }> {
  return { kind: 'lab', lab: rounded(lab), sigma: doubtOfGuess[by] };
}

/** A hundredth: nobody sees less, and a Job stays the same on every machine. */
export function rounded(lab: Lab): Lab {
  return [hundredth(lab[0]), hundredth(lab[1]), hundredth(lab[2])];
}
const hundredth = (v: number): number => Math.round(v * 100) / 100;

export interface GuessCompared {
  /** ΔE00 between guess and reading. */
  readonly off: number;
  /** Two thirds of such guesses lie within it. */
  readonly sigma: number;
  readonly words: Saying;
}

/** How a guess compares with what was read later: within its doubt, within twice of it, or further off. */
export function compareGuess(guess: Lab, sigma: number, read: Lab): GuessCompared {
  const off = deltaE00(guess, read);
  const values = { off: deltaE(off), sigma: deltaE(sigma) };
  const words =
    off <= sigma ? say('ink.guessWithin', values) : off <= 2 * sigma ? say('ink.guessNear', values) : say('ink.guessFar', values);
  return { off, sigma, words };
}
