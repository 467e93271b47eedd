import { describe, expect, test } from 'vitest';
import { refusedBy } from '../../../../test/said.ts';
import { checkSize, fitScreen, strokeOf } from '../fit.ts';
import type { FitInput } from '../fit.ts';

const inch = 25.4;
const close = (...values: readonly number[]): unknown[] => values.map((value) => expect.closeTo(value, 9) as unknown);
const codes = (input: FitInput): string[] => fitScreen(input).problems.map((one) => `${one.severity} ${one.code}`);

// Supplier's note (docs/trade.md 2): 2.5 in at the blade's ends, 4 in at the ink wells.
describe('room around the image', () => {
  const just = { frameInsideMm: [200 + 5 * inch, 300 + 8 * inch], imageMm: [200, 300], hingeSide: 'top' } as const;
  test('just as much as one wants holds; the stroke runs away from the hinge', () => {
    const fit = fitScreen(just);
    expect(fit).toMatchObject({ verdict: 'holds', strokeAxis: 'y', remedies: [], problems: [] });
    expect(fit.imageAtMm).toEqual(close(2.5 * inch, 4 * inch));
    expect(fit.margins.map((m) => [m.side, m.role, m.mm, m.wantedMm, m.leastMm, m.missingMm])).toEqual([
      ['top', 'ink well', ...close(101.6, 101.6, 40), expect.closeTo(0, 9)],
      ['bottom', 'ink well', ...close(101.6, 101.6, 40), expect.closeTo(0, 9)],
      ['left', 'blade end', ...close(63.5, 63.5, 25), expect.closeTo(0, 9)],
      ['right', 'blade end', ...close(63.5, 63.5, 25), expect.closeTo(0, 9)],
    ]);
    expect(['top', 'bottom', 'left', 'right'].map((side) => strokeOf(side as 'top'))).toEqual(['y', 'y', 'x', 'x']);
    const turned = fitScreen({ frameInsideMm: [300 + 8 * inch, 200 + 5 * inch], imageMm: [300, 200], hingeSide: 'right' });
    expect(turned).toMatchObject({ verdict: 'holds', strokeAxis: 'x' });
    expect(turned.margins.map((m) => m.role)).toEqual(['blade end', 'blade end', 'ink well', 'ink well']);
  });

  test('an image off the middle is told side by side, and that it would fit in the middle', () => {
    const fit = fitScreen({ ...just, imageAtMm: [20, 4 * inch] });
    expect(fit.margins.map((m) => m.mm)).toEqual(close(101.6, 101.6, 20, 107));
    expect(fit.verdict).toBe('no');
    expect(fit.problems).toMatchObject([
      {
        severity: 'error',
        code: 'screen-too-small',
        path: 'screen.insideWidthMm',
        message: { key: 'press.bladeEndTooSmall', values: { room: { mm: 20 }, missing: { mm: 5 } } },
      },
    ]);
    expect(fit.remedies[0]).toMatchObject({ what: 'move image', fits: true });
    // Within a millimetre of the middle there is nothing to move.
    expect(fitScreen({ ...just, imageAtMm: [2.5 * inch - 0.9, 4 * inch] }).remedies.map((r) => r.what)).not.toContain('move image');
    expect(fitScreen({ ...just, imageAtMm: [2.5 * inch, 4 * inch - 1.1] }).remedies.map((r) => r.what)).toContain('move image');
  });

  test('less than one wants is tight, less than a careful hand needs is too small; opposite sides are told together', () => {
    const tight = fitScreen({ frameInsideMm: [260, 440], imageMm: [200, 300], hingeSide: 'top' });
    expect(tight.verdict).toBe('tight');
    expect(tight.problems).toMatchObject([
      {
        severity: 'warning',
        code: 'screen-tight',
        path: 'screen.insideHeightMm',
        message: { key: 'press.wellTight', values: { room: { mm: 70 }, missing: { mm: 31.6 } } },
      },
      {
        severity: 'warning',
        code: 'screen-tight',
        path: 'screen.insideWidthMm',
        message: { key: 'press.bladeEndTight', values: { room: { mm: 30 }, missing: { mm: 33.5 } } },
      },
    ]);
    expect(codes({ frameInsideMm: [250, 380], imageMm: [200, 300], hingeSide: 'top' })).toEqual([
      'warning screen-tight',
      'warning screen-tight',
    ]);
    expect(codes({ frameInsideMm: [249.8, 379.8], imageMm: [200, 300], hingeSide: 'top' })).toEqual([
      'error screen-too-small',
      'error screen-too-small',
    ]);
    const past = fitScreen({ frameInsideMm: [400, 280], imageMm: [200, 300], hingeSide: 'top' });
    expect(past.problems[0]).toMatchObject({ message: { key: 'press.imagePastFrame', values: { past: { mm: 10 } } } });
    // Uneven sides are told one by one.
    expect(codes({ frameInsideMm: [500, 500], imageMm: [200, 300], imageAtMm: [150, 50], hingeSide: 'top' })).toEqual([
      'warning screen-tight',
    ]);
    expect(codes({ frameInsideMm: [500, 440], imageMm: [200, 300], imageAtMm: [150, 60], hingeSide: 'top' })).toEqual([
      'warning screen-tight',
      'warning screen-tight',
    ]);
  });

  test('an image larger than its sheet, either way, is refused; as large as it is not', () => {
    expect(codes({ ...just, sheetMm: [200, 300] })).toEqual([]);
    expect(codes({ ...just, sheetMm: [199, 400] })).toEqual(['error image-over-sheet']);
    expect(codes({ ...just, sheetMm: [400, 299] })).toEqual(['error image-over-sheet']);
  });

  test('sizes from nothing to five metres', () => {
    for (const size of [
      [0, 1],
      [1, 0],
      [5001, 1],
      [1, 5001],
      [NaN, 1],
    ] as const)
      expect(refusedBy(() => checkSize(size, 'frame'))[0]).toMatchObject({ code: 'size', path: 'screen' });
    expect(() => checkSize([5000, 5000], 'frame')).not.toThrow();
    for (const wrong of [{ frameInsideMm: [0, 1] }, { imageMm: [0, 1] }, { sheetMm: [0, 1] }] as const)
      expect(refusedBy(() => fitScreen({ ...just, ...wrong }))[0].code).toBe('size');
  });
});

describe('what would help', () => {
  test('a frame that holds the image, an image that the frame holds with the least room', () => {
    const fit = fitScreen({ frameInsideMm: [260, 440], imageMm: [200, 300], hingeSide: 'top' });
    expect(fit.wouldFit).toEqual({ frameInsideMm: [327, 503], imageMm: [210, 360] });
    const sideways = fitScreen({ frameInsideMm: [440, 260], imageMm: [300, 200], hingeSide: 'left' });
    expect(sideways.wouldFit).toEqual({ frameInsideMm: [503, 327], imageMm: [360, 210] });
    expect(fitScreen({ frameInsideMm: [30, 440], imageMm: [200, 300], hingeSide: 'top' }).wouldFit.imageMm).toEqual([0, 360]);
    expect(fit.remedies.find((r) => r.what === 'larger frame')).toMatchObject({
      fits: true,
      text: { values: { size: { mm: [327, 503] } } },
    });
  });

  test('a smaller image: by the side that is worst off, wanted room while it is only tight, least room when it does not fit at all', () => {
    const smaller = (
      frame: readonly [number, number],
      hingeSide: 'top' | 'left' = 'top',
      imageMm: readonly [number, number] = [200, 300],
    ): unknown => fitScreen({ frameInsideMm: frame, imageMm, hingeSide }).remedies.find((r) => r.what === 'smaller image');
    // 260 − 127 = 133 of 200 across, 440 − 203.2 = 236.8 of 300 along: 0.665.
    expect(smaller([260, 440])).toMatchObject({ text: { key: 'press.imageThatFits', values: { size: { mm: [133, 199] } } } });
    expect(smaller([440, 260], 'left', [300, 200])).toMatchObject({ text: { values: { size: { mm: [199, 133] } } } });
    // 240 − 50 = 190 of 200.
    expect(smaller([240, 600])).toMatchObject({ text: { key: 'press.imageThatFitsTightly', values: { size: { mm: [190, 285] } } } });
    // 360 − 80 = 280 of 300 along the stroke.
    expect(smaller([600, 360])).toMatchObject({ text: { values: { size: { mm: [186, 280] } } } });
    // A fifth of the image is no print any more.
    expect(smaller([50 + 39, 900])).toBeUndefined();
    expect(smaller([50 + 41, 900])).toBeDefined();
  });

  test('a quarter turn, or a hinge on another side, is named where it helps by more than 5 mm', () => {
    const turn = fitScreen({ frameInsideMm: [500, 420], imageMm: [200, 340], hingeSide: 'top' });
    expect(turn.remedies[0]).toMatchObject({ what: 'turn image', fits: true });
    expect(turn.problems.every((one) => one.advice === turn.remedies[0].text)).toBe(true);
    const hinge = fitScreen({ frameInsideMm: [560, 420], imageMm: [340, 280], hingeSide: 'top' });
    expect(hinge.remedies[0]).toMatchObject({ what: 'hinge elsewhere', fits: true });
    expect(JSON.stringify(hinge.remedies[0].text)).toContain('press.hingeLeftOrRight');
    const back = fitScreen({ frameInsideMm: [420, 560], imageMm: [280, 340], hingeSide: 'left' });
    expect(JSON.stringify(back.remedies[0].text)).toContain('press.hingeTopOrBottom');
    // Where it helps in part it says what is still short: wells want 40 and had 5; turned, they have 20 of 40.
    const part = fitScreen({ frameInsideMm: [400, 350], imageMm: [310, 340], hingeSide: 'top' });
    const turned = part.remedies.find((r) => r.what === 'turn image')!;
    expect(turned).toMatchObject({ fits: false });
    expect(JSON.stringify(turned.text)).toContain('press.thenLess');
    // Less than 5 mm better is not worth turning for.
    expect(fitScreen({ frameInsideMm: [400, 350], imageMm: [336, 340], hingeSide: 'top' }).remedies.map((r) => r.what)).not.toContain(
      'turn image',
    );
    expect(fitScreen({ frameInsideMm: [400, 350], imageMm: [329, 340], hingeSide: 'top' }).remedies.map((r) => r.what)).toContain(
      'turn image',
    );
  });
});

describe('the squeegee', () => {
  const screen = { frameInsideMm: [400, 600], imageMm: [180, 240], hingeSide: 'top' } as const;
  test('passes the image by one to two centimetres each side and clears the frame by two', () => {
    expect(fitScreen(screen).squeegee).toEqual({ leastMm: 200, bestMm: 220, mostMm: 360, ownMm: null, travelMm: 280 });
    expect(fitScreen({ ...screen, frameInsideMm: [600, 400], imageMm: [240, 180], hingeSide: 'left' }).squeegee).toEqual({
      leastMm: 200,
      bestMm: 220,
      mostMm: 360,
      ownMm: null,
      travelMm: 280,
    });
    // In a narrow frame as long as goes in, never under the least.
    expect(fitScreen({ ...screen, frameInsideMm: [250, 600] }).squeegee.bestMm).toBe(210);
    expect(fitScreen({ ...screen, frameInsideMm: [230, 600] }).squeegee).toMatchObject({ leastMm: 200, bestMm: 200, mostMm: 190 });
  });

  test('of the studio’s own is judged: too short for the image, too long for the frame', () => {
    const own = (squeegeeMm: number) => fitScreen({ ...screen, squeegeeMm });
    const told = (squeegeeMm: number): string[] => own(squeegeeMm).problems.map((one) => `${one.severity} ${one.code}`);
    expect([told(200), told(360), told(199.9), told(180), told(179.9), told(360.1), told(400), told(400.1)]).toEqual([
      [],
      [],
      ['warning squeegee-short'],
      ['warning squeegee-short'],
      ['error squeegee-short'],
      ['warning squeegee-long'],
      ['warning squeegee-long'],
      ['error squeegee-long'],
    ]);
    expect(own(150).problems[0]).toMatchObject({
      message: { values: { missing: { mm: 50 }, image: { mm: 180 } } },
      advice: { values: { suits: { mm: [200, 220] } } },
    });
    expect(own(390).problems[0]).toMatchObject({
      message: { values: { own: { mm: 390 }, room: { mm: 20 } } },
      advice: { values: { most: { mm: 360 } } },
    });
    expect(own(390).verdict).toBe('tight');
    expect(fitScreen({ ...screen, frameInsideMm: [215, 600], squeegeeMm: 180 }).problems[0]).toMatchObject({
      advice: { values: { suits: { mm: 200 } } },
    });
  });
});
