import { length, lengths, list, say, sentences, type Saying } from '../../words/say.ts';
import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { studioDefaults } from './defaults.ts';

/** Width and height in mm as the printmaker sees them, standing at the press. */
export type SizeMm = readonly [number, number];
export type Side = 'top' | 'bottom' | 'left' | 'right';

export interface FitInput {
  /** Inside of the frame. */
  readonly frameInsideMm: SizeMm;
  readonly imageMm: SizeMm;
  readonly sheetMm?: SizeMm;
  readonly squeegeeMm?: number;
  /** Side of the image where the frame is hinged: the hand stands opposite and strokes towards itself. */
  readonly hingeSide: Side;
  /** Where the image's top left corner lies inside the frame; left out: in the middle. */
  readonly imageAtMm?: SizeMm;
}

export interface Margin {
  readonly side: Side;
  readonly role: 'blade end' | 'ink well';
  readonly mm: number;
  readonly wantedMm: number;
  readonly leastMm: number;
  /** What is short of the wanted room; 0 when nothing is. */
  readonly missingMm: number;
}

export interface Remedy {
  readonly what: 'larger frame' | 'smaller image' | 'turn image' | 'hinge elsewhere' | 'move image';
  readonly text: Saying;
  /** With it the image fits. */
  readonly fits: boolean;
}

export interface ScreenFit {
  /** holds: all the room one wants; tight: can be printed with care; no: cannot. */
  readonly verdict: 'holds' | 'tight' | 'no';
  readonly imageAtMm: SizeMm;
  /** Stroke runs along this axis, the blade lies across it. */
  readonly strokeAxis: 'x' | 'y';
  readonly margins: readonly Margin[];
  readonly squeegee: {
    readonly leastMm: number;
    readonly bestMm: number;
    readonly mostMm: number;
    readonly ownMm: number | null;
    readonly travelMm: number;
  };
  readonly wouldFit: { readonly frameInsideMm: SizeMm; readonly imageMm: SizeMm };
  readonly remedies: readonly Remedy[];
  readonly problems: readonly Problem[];
}

/**
 * Does the screen fit? Wanted room: 2.5 in at the blade's ends, 4 in at the ink wells (published: supplier's note); least
 * room by a careful hand: common practice, in `studioDefaults`. Throws ProblemError for sizes that are no sizes.
 */
export function fitScreen(input: FitInput): ScreenFit {
  const { frameInsideMm: frame, imageMm: image, hingeSide } = input;
  checkSize(frame, 'frame');
  checkSize(image, 'image');
  if (input.sheetMm) checkSize(input.sheetMm, 'sheet');
  const imageAtMm = input.imageAtMm ?? ([(frame[0] - image[0]) / 2, (frame[1] - image[1]) / 2] as const);
  const strokeAxis = strokeOf(hingeSide);
  const margins = marginsOf(frame, image, imageAtMm, strokeAxis);
  const tooSmall = margins.some((margin) => margin.mm < margin.leastMm);
  const short = margins.some((margin) => margin.missingMm > 0);
  const problems: Problem[] = [];
  const squeegee = squeegeeOf(input, strokeAxis, problems);
  if (input.sheetMm && (image[0] > input.sheetMm[0] || image[1] > input.sheetMm[1])) {
    problems.push(
      problem(
        'error',
        'image-over-sheet',
        'papers',
        say('press.imageOverSheet', { image: lengths(image), sheet: lengths(input.sheetMm) }),
        say('press.smallerImage'),
      ),
    );
  }
  const wouldFit = {
    frameInsideMm: grow(image, strokeAxis, studioDefaults.bladeEndMm, studioDefaults.wellMm),
    imageMm: grow(frame, strokeAxis, -studioDefaults.leastBladeEndMm, -studioDefaults.leastWellMm),
  };
  const remedies = tooSmall || short ? remediesFor(input, imageAtMm, margins, wouldFit.frameInsideMm, tooSmall) : [];
  if (remedies.length > 0) problems.push(...marginProblems(margins, remedies[0].text));
  const verdict = problems.some((one) => one.severity === 'error') ? 'no' : problems.length > 0 ? 'tight' : 'holds';
  return { verdict, imageAtMm, strokeAxis, margins, squeegee, wouldFit, remedies, problems };
}

/** The stroke runs from the hinge towards the hand. */
export function strokeOf(hingeSide: Side): 'x' | 'y' {
  return hingeSide === 'top' || hingeSide === 'bottom' ? 'y' : 'x';
}

function marginsOf(frame: SizeMm, image: SizeMm, at: SizeMm, stroke: 'x' | 'y'): Margin[] {
  const gaps: readonly (readonly [Side, number, 'x' | 'y'])[] = [
    ['top', at[1], 'y'],
    ['bottom', frame[1] - at[1] - image[1], 'y'],
    ['left', at[0], 'x'],
    ['right', frame[0] - at[0] - image[0], 'x'],
  ];
  return gaps.map(([side, gap, axis]) => {
    const well = axis === stroke;
    const wantedMm = well ? studioDefaults.wellMm : studioDefaults.bladeEndMm;
    return {
      side,
      role: well ? 'ink well' : 'blade end',
      mm: gap,
      wantedMm,
      leastMm: well ? studioDefaults.leastWellMm : studioDefaults.leastBladeEndMm,
      missingMm: Math.max(0, wantedMm - gap),
    };
  });
}

/** One message for each amount that is missing: opposite margins of a centred image miss the same. */
function marginProblems(margins: readonly Margin[], advice: Saying): Problem[] {
  const short = margins.filter((margin) => margin.missingMm > 0);
  const same = (one: Margin, other: Margin): boolean => one.role === other.role && Math.abs(one.mm - other.mm) < 0.05;
  return short
    .filter((margin, i) => short.findIndex((one) => same(one, margin)) === i)
    .map((margin) => {
      const sides = list(short.filter((one) => same(one, margin)).map((one) => say(sideKey[one.side])));
      const bad = margin.mm < margin.leastMm;
      const missing = mm(bad ? margin.leastMm - margin.mm : margin.missingMm);
      const key = keysOfRole[margin.role][bad ? 'bad' : 'tight'];
      return problem(
        bad ? 'error' : 'warning',
        bad ? 'screen-too-small' : 'screen-tight',
        margin.side === 'top' || margin.side === 'bottom' ? 'screen.insideHeightMm' : 'screen.insideWidthMm',
        margin.mm < 0 ? say('press.imagePastFrame', { past: mm(-margin.mm), sides }) : say(key, { room: mm(margin.mm), sides, missing }),
        advice,
      );
    });
}

function squeegeeOf(input: FitInput, stroke: 'x' | 'y', problems: Problem[]): ScreenFit['squeegee'] {
  const across = stroke === 'y' ? 0 : 1;
  const image = input.imageMm[across];
  const [least, best] = studioDefaults.bladePastImageMm;
  const leastMm = image + 2 * least;
  const mostMm = input.frameInsideMm[across] - 2 * studioDefaults.bladeToFrameMm;
  const ownMm = input.squeegeeMm ?? null;
  const upTo = Math.min(mostMm, image + 2 * best);
  if (ownMm !== null && ownMm < leastMm) {
    problems.push(
      problem(
        ownMm < image ? 'error' : 'warning',
        'squeegee-short',
        'screen.squeegeeMm',
        say('press.squeegeeShort', { own: mm(ownMm), image: mm(image), missing: mm(leastMm - ownMm) }),
        say('press.takeSqueegeeOrHinge', { suits: upTo > leastMm ? lengths([tenth(leastMm), tenth(upTo)], 'to') : mm(leastMm) }),
      ),
    );
  }
  if (ownMm !== null && ownMm > mostMm) {
    problems.push(
      problem(
        ownMm > input.frameInsideMm[across] ? 'error' : 'warning',
        'squeegee-long',
        'screen.squeegeeMm',
        say('press.squeegeeLong', { own: mm(ownMm), room: mm(studioDefaults.bladeToFrameMm) }),
        say('press.takeShorterSqueegee', { most: mm(Math.max(0, mostMm)) }),
      ),
    );
  }
  // From behind the image at the hinge, over it, to just past its near edge.
  const travelMm = input.imageMm[1 - across] + 2 * best;
  return {
    leastMm,
    bestMm: Math.min(Math.max(leastMm, Math.min(image + 2 * best, mostMm)), Math.max(leastMm, mostMm)),
    mostMm,
    ownMm,
    travelMm,
  };
}

function remediesFor(input: FitInput, at: SizeMm, margins: readonly Margin[], wanted: SizeMm, tooSmall: boolean): Remedy[] {
  const { frameInsideMm: frame, imageMm: image, hingeSide } = input;
  const worst = (all: readonly Margin[]): number =>
    Math.max(...all.map((margin) => (tooSmall ? margin.leastMm - margin.mm : margin.missingMm)));
  const now = worst(margins);
  const remedies: Remedy[] = [];
  const centred = (one: SizeMm): SizeMm => [(frame[0] - one[0]) / 2, (frame[1] - one[1]) / 2];
  const stroke = strokeOf(hingeSide);
  const tries: readonly (readonly [Remedy['what'], SizeMm, 'x' | 'y', Saying])[] = [
    ['move image', image, stroke, say('press.centreImage')],
    ['turn image', [image[1], image[0]], stroke, say('press.turnImage')],
    ['hinge elsewhere', image, stroke === 'y' ? 'x' : 'y', say(stroke === 'y' ? 'press.hingeLeftOrRight' : 'press.hingeTopOrBottom')],
  ];
  for (const [what, turned, axis, text] of tries) {
    if (what === 'move image' && Math.hypot(at[0] - centred(image)[0], at[1] - centred(image)[1]) < 1) continue;
    const then = worst(marginsOf(frame, turned, centred(turned), axis));
    const fits = then <= 0;
    if (fits || then < now - 5)
      remedies.push({
        what,
        fits,
        text: sentences(text, fits ? say('press.thenFits') : say('press.thenLess', { then: mm(then), now: mm(now) })),
      });
  }
  remedies.sort((one, other) => Number(other.fits) - Number(one.fits));
  remedies.push({ what: 'larger frame', fits: true, text: say('press.frameThatFits', { size: lengths(wanted) }) });
  const scale = Math.min(
    1,
    ...[0, 1].map((axis) => {
      const well = (axis === 1) === (stroke === 'y');
      const room =
        frame[axis] -
        2 *
          (tooSmall
            ? well
              ? studioDefaults.leastWellMm
              : studioDefaults.leastBladeEndMm
            : well
              ? studioDefaults.wellMm
              : studioDefaults.bladeEndMm);
      return room / image[axis];
    }),
  );
  if (scale > 0.2 && scale < 1)
    remedies.push({
      what: 'smaller image',
      fits: true,
      text: say(tooSmall ? 'press.imageThatFitsTightly' : 'press.imageThatFits', {
        size: lengths([Math.floor(image[0] * scale), Math.floor(image[1] * scale)]),
      }),
    });
  return remedies;
}

function grow(one: SizeMm, stroke: 'x' | 'y', bladeEnd: number, well: number): SizeMm {
  const [x, y] = stroke === 'y' ? [bladeEnd, well] : [well, bladeEnd];
  return [Math.max(0, Math.round(one[0] + 2 * x)), Math.max(0, Math.round(one[1] + 2 * y))];
}

/** Where a size stands in the Job, and what is said of an impossible one. */
const sizes = {
  frame: { path: 'screen', key: 'press.frameSize' },
  image: { path: 'image', key: 'press.imageSize' },
  sheet: { path: 'papers', key: 'press.sheetSize' },
} as const;
const mostSideMm = 5000;

export function checkSize([width, height]: SizeMm, what: keyof typeof sizes, path: string = sizes[what].path): void {
  if (!(width > 0 && height > 0 && width <= mostSideMm && height <= mostSideMm)) {
    fail('size', path, say(sizes[what].key, { size: lengths([width, height]) }), say('press.giveSize', { most: length(mostSideMm) }));
  }
}

const sideKey = { top: 'press.atTop', bottom: 'press.atBottom', left: 'press.atLeft', right: 'press.atRight' } as const;
const keysOfRole = {
  'ink well': { bad: 'press.wellTooSmall', tight: 'press.wellTight' },
  'blade end': { bad: 'press.bladeEndTooSmall', tight: 'press.bladeEndTight' },
} as const;

const tenth = (value: number): number => Math.round(value * 10) / 10;
const mm = (value: number): ReturnType<typeof length> => length(tenth(value));
