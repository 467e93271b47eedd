import { length, say, type Saying } from '../../../words/say.ts';
import { fail } from '../../problem.ts';
import { checkSize } from '../fit.ts';
import type { SizeMm } from '../fit.ts';

/** From the cross's middle to its ends with its number beside it, and from there to the scale. */
const crossMm = 12;
const clearMm = 2;

export interface TestLine {
  readonly x1Mm: number;
  readonly y1Mm: number;
  readonly x2Mm: number;
  readonly y2Mm: number;
  readonly widthMm: number;
  /** The run that prints it. */
  readonly run: 'first' | 'second';
}

export interface TestPlace {
  /** As it stands in tables of readings and in the Job: `top left`. */
  readonly id: string;
  readonly name: Saying;
  /** Middle of the cross, from the image's top left corner. */
  readonly xMm: number;
  readonly yMm: number;
}

export interface TestSheet {
  readonly imageMm: SizeMm;
  readonly places: readonly TestPlace[];
  readonly lines: readonly TestLine[];
  readonly labels: readonly { readonly xMm: number; readonly yMm: number; readonly text: string; readonly run: 'first' | 'second' }[];
  /** Smallest step that the scales show. */
  readonly readsMm: number;
  /** Farthest shift that they show, each way. */
  readonly rangeMm: number;
  readonly howToRead: readonly Saying[];
}

/**
 * A sheet printed twice: near every corner that has room a cross, with a scale across and one down, running inwards. The
 * second run's scale has a pitch shorter by `readsMm`, so the pair of lines that meets tells the shift: line k meets when
 * the second run lies k × readsMm to the right of (or below) the first. Lines wide enough to be cut by hand.
 */
export function registerTestSheet(
  imageMm: SizeMm,
  options: {
    readonly readsMm?: number;
    readonly pitchMm?: number;
    readonly lineMm?: number;
    readonly steps?: number;
    /** False: at two opposite corners only, which tell the turn as well and halve the slits to cut. */
    readonly corners?: boolean;
  } = {},
): TestSheet {
  const { readsMm = 0.2, pitchMm = 3, lineMm = 1, steps = readsMm < 0.4 ? 8 : 6, corners = true } = options;
  checkSize(imageMm, 'image');
  if (!(readsMm > 0 && pitchMm > lineMm + readsMm && lineMm > 0 && Number.isInteger(steps) && steps >= 1 && steps <= 50)) {
    fail('test-scale', say('register.testSheet'), say('register.scaleTooDense'), say('register.widerPitch'));
  }
  const arm = 2 * steps * pitchMm;
  const across = crossMm + clearMm + arm + 4;
  if (Math.min(...imageMm) < crossMm + across)
    fail(
      'test-sheet-small',
      'image',
      say('register.testSheetSmall', { least: length(Math.ceil(crossMm + across)) }),
      say('register.printTestLarger'),
    );
  const room = imageMm.map((side) => side >= 2 * (crossMm + across));
  const places: TestPlace[] = [];
  for (const bottom of room[1] ? [false, true] : [false]) {
    for (const right of room[0] ? [false, true] : [false]) {
      if (!corners && room[0] && room[1] && right !== bottom) continue;
      places.push({
        id: `${bottom ? 'bottom' : 'top'} ${right ? 'right' : 'left'}`,
        name: say(bottom ? (right ? 'register.bottomRight' : 'register.bottomLeft') : right ? 'register.topRight' : 'register.topLeft'),
        xMm: right ? imageMm[0] - crossMm : crossMm,
        yMm: bottom ? imageMm[1] - crossMm : crossMm,
      });
    }
  }
  const lines: TestLine[] = [];
  const labels: TestSheet['labels'][number][] = [];
  const add = (run: TestLine['run'], x1Mm: number, y1Mm: number, x2Mm: number, y2Mm: number): unknown =>
    lines.push({ x1Mm, y1Mm, x2Mm, y2Mm, widthMm: lineMm, run });
  for (const { id, xMm: x, yMm: y } of places) {
    // The first run's cross is open in the middle, the second's fills it.
    for (const sign of [-1, 1]) {
      add('first', x + sign * 4.5, y, x + sign * 9, y);
      add('first', x, y + sign * 4.5, x, y + sign * 9);
    }
    add('second', x - 3.5, y, x + 3.5, y);
    add('second', x, y - 3.5, x, y + 3.5);
    const middleX = x + (id.endsWith('right') ? -1 : 1) * (crossMm + clearMm + arm / 2);
    const middleY = y + (id.startsWith('bottom') ? -1 : 1) * (crossMm + clearMm + arm / 2);
    for (let k = -steps; k <= steps; k++) {
      const first = k * pitchMm;
      const second = k * (pitchMm - readsMm);
      const long = k % 4 === 0 ? 2 : 0;
      add('first', middleX + first, y - 5 - long, middleX + first, y - 1);
      add('second', middleX + second, y + 1, middleX + second, y + 5 + long);
      add('first', x - 5 - long, middleY + first, x - 1, middleY + first);
      add('second', x + 1, middleY + second, x + 5 + long, middleY + second);
      if (k % 4 === 0)
        labels.push(
          { xMm: middleX + first, yMm: y - 9, text: String(k), run: 'first' },
          { xMm: x - 9, yMm: middleY + first, text: String(k), run: 'first' },
        );
    }
  }
  return {
    imageMm,
    places,
    lines,
    labels,
    readsMm,
    rangeMm: steps * readsMm,
    howToRead: [say('register.printTestTwice'), say('register.findLine', { step: length(readsMm) }), say('register.writeLines')],
  };
}

/** The shift when line k of the scales meets. */
export function shiftOfLine(k: number, readsMm: number): number {
  return k * readsMm;
}
