import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adviseMesh,
  completeMesh,
  fitScreen,
  growthAlong,
  growthApproximate,
  layersOf,
  meshTable,
  offContact,
  paperChange,
  readTestSheets,
  registerBudget,
  registerShifts,
  registerTestSheet,
  risersFor,
  shiftOfLine,
  stopsTemplate,
  strainAt,
  tapingPlan,
} from '../../src/core/press/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { sayLength, tryReadLength } from '../../src/core/units/index.ts';
import { seeded } from '../../src/core/random.ts';
import { inEnglish } from '../said.ts';

const real = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('lengths', () => {
  test('what is said is read back', () => {
    fc.assert(
      fc.property(real(-5000, 5000), fc.constantFrom('mm' as const, 'in' as const), (mm, units) => {
        const back = tryReadLength(sayLength(mm, units, 6));
        expect(back.ok && Math.abs(back.value - mm) < 2e-5).toBe(true);
      }),
    );
  });

  test('no text at all makes reading fall over', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ maxLength: 100 }), fc.stringMatching(/^[0-9 .,\/"'a-z½-]{0,30}$/u)), (text) => {
        const result = tryReadLength(text);
        expect(!result.ok || Number.isFinite(result.value)).toBe(true);
      }),
    );
  });
});

test('every mesh whose threads leave room has figures that belong together; the others are refused', () => {
  fc.assert(
    fc.property(real(5, 200), real(5, 400), (perCm, threadMicrons) => {
      if (threadMicrons >= 10000 / perCm) {
        expect(() => completeMesh({ perCm, threadMicrons })).toThrow(ProblemError);
        return;
      }
      const mesh = completeMesh({ perCm, threadMicrons });
      expect(mesh.openingMicrons).toBeGreaterThan(0);
      expect(mesh.openPercent).toBeGreaterThan(0);
      expect(mesh.openPercent).toBeLessThan(100);
      expect(mesh.theoreticalCm3PerM2).toBeLessThan(mesh.thicknessMicrons);
    }),
  );
});

test('every wish gets every mesh, in order', () => {
  fc.assert(
    fc.property(real(0.05, 5), fc.option(real(1, 60), { nil: undefined }), (leastDetailMm, wetMicrons) => {
      const advice = adviseMesh({ leastDetailMm, wetMicrons });
      expect(advice).toHaveLength(meshTable.length);
      advice.slice(1).forEach((one, i) => expect(one.against).toBeGreaterThanOrEqual(advice[i].against));
    }),
  );
});

describe('off-contact', () => {
  test('a larger gap never stretches less, nor grows the image less', () => {
    fc.assert(
      fc.property(real(200, 1200), real(0.1, 0.45), real(0, 12), real(0, 12), (span, share, one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        const margin = span * share;
        expect(strainAt(span, high, margin)).toBeGreaterThanOrEqual(strainAt(span, low, margin) - 1e-12);
        expect(growthAlong(span, [margin, margin], [high, high])).toBeGreaterThanOrEqual(
          growthAlong(span, [margin, margin], [low, low]) - 1e-9,
        );
      }),
    );
  });

  test('the approximation meets the exact figure where the gap is small', () => {
    fc.assert(
      fc.property(real(300, 1200), real(0.15, 0.4), real(0.5, 4), (span, share, gap) => {
        const exact = growthAlong(span, [span * share, span * share], [gap, gap]);
        expect(Math.abs(exact - growthApproximate(span, gap, span * share))).toBeLessThan(0.02 * exact + 1e-9);
      }),
    );
  });

  test('the same screen, place and gap give the same growth from whichever side it is hinged', () => {
    fc.assert(
      fc.property(real(300, 900), real(0.2, 0.5), real(0, 6), (side, share, gapMm) => {
        const shared = { frameInsideMm: [side, side * 1.2] as const, imageMm: [side * share, side * share] as const, gapMm };
        const top = offContact({ ...shared, hingeSide: 'top' });
        expect(offContact({ ...shared, hingeSide: 'bottom' }).alongMm).toBeCloseTo(top.alongMm, 9);
      }),
    );
  });

  test('risers and packing put the whole image at the wanted gap', () => {
    fc.assert(
      fc.property(real(0, 6), real(0.05, 2), real(0, 1), real(0, 40), (gapMm, paperMm, stencilMm, hingeLiftMm) => {
        const risers = risersFor({ gapMm, paperMm, stencilMm, hingeLiftMm, frameLengthMm: 600, imageFromHingeMm: [150, 450] });
        const hinge = hingeLiftMm + risers.underHingeMm - risers.underPaperMm - paperMm - stencilMm;
        const front = risers.frontMm - risers.underPaperMm - paperMm - stencilMm;
        expect(hinge).toBeCloseTo(gapMm, 9);
        expect(front).toBeCloseTo(gapMm, 9);
        if (risers.frontOnly.frontMm > 0) expect((risers.frontOnly.gapMm[0] + risers.frontOnly.gapMm[1]) / 2).toBeCloseTo(gapMm, 9);
      }),
    );
  });

  test('boards or coins come within half a board of the height', () => {
    fc.assert(
      fc.property(real(0, 60), fc.oneof(real(0.2, 5), real(0.2, 0.3)), (height, thickness) => {
        expect(Math.abs(layersOf(height, thickness).offMm)).toBeLessThanOrEqual(thickness / 2 + 1e-8);
      }),
    );
  });
});

describe('the screen', () => {
  const size = fc.tuple(real(20, 900), real(20, 900));

  test('the frame that is said to fit does fit', () => {
    fc.assert(
      fc.property(
        size,
        size,
        fc.constantFrom('top' as const, 'left' as const, 'bottom' as const, 'right' as const),
        (frameInsideMm, imageMm, hingeSide) => {
          const fit = fitScreen({ frameInsideMm, imageMm, hingeSide });
          const again = fitScreen({
            frameInsideMm: [fit.wouldFit.frameInsideMm[0] + 1, fit.wouldFit.frameInsideMm[1] + 1],
            imageMm,
            hingeSide,
          });
          expect(again.verdict).toBe('holds');
          if (fit.verdict !== 'holds') expect(fit.remedies.length).toBeGreaterThan(0);
          fit.problems.forEach((one) => expect(inEnglish(one.advice)).not.toBe(''));
        },
      ),
    );
  });

  test('tape and aperture together leave no gap, and no tape lies on the image', () => {
    fc.assert(
      fc.property(
        real(150, 800),
        real(150, 800),
        real(0.2, 0.8),
        real(0.2, 0.8),
        real(0, 1),
        real(0, 1),
        (width, height, sx, sy, px, py) => {
          const plan = tapingPlan({ frameInsideMm: [width, height], imageMm: [width * sx, height * sy] });
          const inside = (r: { xMm: number; yMm: number; widthMm: number; heightMm: number }, x: number, y: number): boolean =>
            x >= r.xMm - 1e-9 && y >= r.yMm - 1e-9 && x <= r.xMm + r.widthMm + 1e-9 && y <= r.yMm + r.heightMm + 1e-9;
          const [x, y] = [px * width, py * height];
          expect(inside(plan.aperture, x, y) || plan.strips.some((strip) => inside(strip, x, y))).toBe(true);
          const image = plan.image;
          for (const strip of plan.strips) {
            const apart =
              strip.xMm >= image.xMm + image.widthMm - 1e-9 ||
              strip.yMm >= image.yMm + image.heightMm - 1e-9 ||
              strip.xMm + strip.widthMm <= image.xMm + 1e-9 ||
              strip.yMm + strip.heightMm <= image.yMm + 1e-9;
            expect(apart).toBe(true);
          }
        },
      ),
    );
  });

  test('stops touch the sheet and stay off it, whichever corner', () => {
    fc.assert(
      fc.property(
        real(80, 900),
        real(80, 900),
        fc.constantFrom('top-left' as const, 'top-right' as const, 'bottom-left' as const, 'bottom-right' as const),
        (width, height, corner) => {
          const { stops, fromStopsMm } = stopsTemplate({
            sheetMm: [width, height],
            imageMm: [width / 2, height / 2],
            sheetThicknessMm: 0.3,
            corner,
          });
          for (const stop of stops) {
            const gaps = {
              left: -(stop.xMm + stop.widthMm),
              right: stop.xMm - width,
              top: -(stop.yMm + stop.heightMm),
              bottom: stop.yMm - height,
            };
            expect(gaps[stop.side]).toBeCloseTo(0, 9);
          }
          expect(fromStopsMm[0]).toBeCloseTo(width * 0.75, 6);
        },
      ),
    );
  });
});

describe('register', () => {
  test('paper changes in proportion to the humidity, and back again', () => {
    fc.assert(
      fc.property(
        real(0, 100),
        real(0, 100),
        fc.constantFrom('along-width' as const, 'along-height' as const, 'unknown' as const),
        (from, to, grain) => {
          const out = paperChange([400, 300], grain, from, to);
          const back = paperChange([400, 300], grain, to, from);
          expect(out.xMm[1]).toBeCloseTo(-back.xMm[0], 9);
          expect(out.yMm[0]).toBeLessThanOrEqual(out.yMm[1]);
        },
      ),
    );
  });

  test('the budget never shrinks when any cause grows; what holds the worst holds the likely', () => {
    fc.assert(
      fc.property(real(0, 2), real(0, 2), real(0, 60), real(0, 3), (sigma, more, damp, overlapMm) => {
        const of = (sigmaMm: number, points: number) =>
          registerBudget({
            layers: [
              { id: 'a', name: 'A', humidityPercent: 40 },
              { id: 'b', name: 'B', humidityPercent: 40 + points },
            ],
            method: 'pins',
            edge: 'cut',
            sigmaMm,
            imageMm: [200, 300],
            grain: 'unknown',
            forgives: [{ first: 'b', second: 'a', overlapMm }],
          }).pairs[0];
        const [small, wide, wet] = [of(sigma, 0), of(sigma + more, 0), of(sigma, damp)];
        expect(wide.likelyMm).toBeGreaterThanOrEqual(small.likelyMm);
        expect(wet.worstMm).toBeGreaterThanOrEqual(small.worstMm);
        expect(small.worstMm).toBeGreaterThanOrEqual(small.likelyMm);
        expect(wet.forgivesMm! + wet.spreadMm).toBeGreaterThanOrEqual(wet.likelyMm - 0.051);
      }),
    );
  });

  test('the same seed draws the same sheets; the worst twentieth is the worst', () => {
    fc.assert(
      fc.property(fc.integer(), real(0, 2), fc.integer({ min: 1, max: 120 }), fc.integer({ min: 1, max: 8 }), (seed, sigma, n, layers) => {
        const draws = registerShifts(seed, sigma, n, { layers });
        expect(registerShifts(seed, sigma, n, { layers })).toEqual(draws);
        const least = Math.min(...draws.worst.map((i) => draws.sheets[i].offMm));
        draws.sheets.forEach((sheet, i) => expect(draws.worst.includes(i) || sheet.offMm <= least).toBe(true));
      }),
      { numRuns: 60 },
    );
  });

  test('shifts that were put into test sheets are read out of them', () => {
    fc.assert(
      fc.property(fc.integer(), real(-1, 1), real(-1, 1), real(-0.2, 0.2), real(0.05, 0.5), (seed, dx, dy, turnDeg, sigma) => {
        const sheet = registerTestSheet([260, 340]);
        const random = seeded(seed);
        const readings = Array.from({ length: 60 }, (_, i) => {
          const [sx, sy] = [dx + (random.normal() - random.normal()) * sigma, dy + (random.normal() - random.normal()) * sigma];
          return sheet.places.map((place) => ({
            sheet: i + 1,
            place: place.id,
            xMm: sx - ((place.yMm - 170) * turnDeg * Math.PI) / 180,
            yMm: sy + ((place.xMm - 130) * turnDeg * Math.PI) / 180,
          }));
        }).flat();
        const found = readTestSheets(sheet.places, readings);
        expect(Math.abs(found.driftMm[0] - dx)).toBeLessThan(sigma);
        expect(Math.abs(found.turnDeg!.mean - turnDeg)).toBeLessThan(1e-9);
        expect(Math.abs(found.sigmaMm.both / sigma - 1)).toBeLessThan(0.35);
      }),
      { numRuns: 60 },
    );
  });

  test('on the scales, the line that meets tells the shift', () => {
    fc.assert(
      fc.property(fc.integer({ min: -8, max: 8 }), (k) => {
        const sheet = registerTestSheet([180, 240]);
        const shift = shiftOfLine(k, sheet.readsMm);
        const upright = (run: 'first' | 'second') =>
          sheet.lines
            .filter((line) => line.run === run && line.x1Mm === line.x2Mm && line.y1Mm < 24 && line.x1Mm > 24 && line.x1Mm < 90)
            .map((line) => line.x1Mm)
            .sort((a, b) => a - b);
        const [first, second] = [upright('first'), upright('second').map((x) => x + shift)];
        expect(first).toHaveLength(17);
        const apart = first.map((x, i) => Math.abs(x - second[i]));
        expect(apart.indexOf(Math.min(...apart))).toBe(k + 8);
        expect(Math.min(...apart)).toBeLessThan(1e-9);
      }),
    );
  });
});
