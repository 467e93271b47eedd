import { describe, expect, test } from 'vitest';
import {
  askExposure,
  overlapRamp,
  readRows,
  wedgeCurve,
  wedgeFromFile,
  wedgeFromPhoto,
  wedgeFromText,
  wedgeProblems,
  withExposure,
  withWedge,
  type WedgeRead,
} from '../../src/core/asks/index.ts';
import { deltaE00, labFromXyz, xyzFromSpectrum, type Lab } from '../../src/core/colour/index.ts';
import { filterOf, gainCurve, curveAt, spectrumAtCover, toneForesight, wedgeSheet, wedgeSteps } from '../../src/core/halftone/index.ts';
import { srgbSpace, type Photograph } from '../../src/core/ink/index.ts';
import { homography, mapPoint } from '../../src/core/numeric/index.ts';
import { parseJob } from '../../src/core/job/index.ts';
import { plan } from '../../src/core/plan/index.ts';
import { seeded } from '../../src/core/random.ts';
import { say } from '../../src/words/index.ts';
import { toneJob } from './halftone-jobs.ts';

/** A studio that read its pots and its paper, and no wedge yet. */
const studio = toneJob('FOGRA39L', 'CMYK', 'measured', false);
const made = plan({ job: studio, attachments: new Map() });
const { model, layers } = made.papers[0].tones!;
const place = say('where.exposureStrip');
const paper = Float64Array.from(toneForesight(model).spectrum(layers.map(() => 0)));
const solidOf = (id: string): Float64Array => Float64Array.from(toneForesight(model).spectrum(layers.map((l) => (l === id ? 1 : 0))));

/** What the press of this trial does, unknown to the reader: dots that gain a quarter at half tone, light that spreads by n = 2.3. */
const truth = { n: 2.3, curve: gainCurve({ rulingPerCm: 19, spreadMicrons: 52, shape: 'round' }) };
const trueSpectrum = (id: string, film: number): Float64Array => spectrumAtCover(paper, solidOf(id), truth.n, curveAt(truth.curve, film));
const trueLab = (id: string, film: number): Lab => labFromXyz(xyzFromSpectrum(trueSpectrum(id, film)));

/** What one light's worth of the page looks like through a camera: another camera than the field's, badly balanced, in light from one side, with veil and noise. */
interface Camera {
  readonly falls: number;
  readonly noise: number;
  readonly veil: number;
}

function photographed(id: string, { falls, noise, veil }: Camera): Photograph {
  const sheet = wedgeSheet();
  const [width, height] = [480, 640];
  const random = seeded(4);
  const gauss = (): number => Math.sqrt(-2 * Math.log(random.next() + 1e-12)) * Math.cos(2 * Math.PI * random.next());
  const toPage = homography(
    [
      [48, 32],
      [443, 51],
      [427, 613],
      [32, 597],
    ],
    [
      [0, 0],
      [sheet.widthMm, 0],
      [sheet.widthMm, sheet.heightMm],
      [0, sheet.heightMm],
    ],
  )!;
  const rgbOf = (spectrum: Float64Array): number[] => {
    const xyz = xyzFromSpectrum(spectrum);
    const m = inverse(srgbSpace.toXyz);
    const [r, g, b] = m.map((row) => row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2]);
    // Its channels see into one another, and its balance is warm.
    return [1.12 * (0.86 * r + 0.1 * g + 0.04 * b), 0.06 * r + 0.88 * g + 0.06 * b, 0.82 * (0.02 * r + 0.12 * g + 0.86 * b)];
  };
  const bare = rgbOf(paper);
  const inks = new Map([...new Set(sheet.fields.map((f) => f.cover))].map((cover) => [cover, rgbOf(trueSpectrum(id, cover))]));
  const inked = (x: number, y: number): number[] => {
    const field = sheet.fields.find((f) => x >= f.xMm && x < f.xMm + f.widthMm && y >= f.yMm && y < f.yMm + f.heightMm);
    if (field) return inks.get(field.cover)!;
    const mark = sheet.marks.find((m) => Math.max(Math.abs(x - m.xMm), Math.abs(y - m.yMm)) < m.sizeMm / 2);
    if (!mark) return bare;
    const r = Math.max(Math.abs(x - mark.xMm), Math.abs(y - mark.yMm));
    return r > mark.holeMm / 2 || r < mark.dotMm / 2 ? inks.get(1)! : bare;
  };
  const data = new Uint8Array(width * height * 4);
  for (let py = 0; py < height; py++)
    for (let px = 0; px < width; px++) {
      const [x, y] = mapPoint(toPage, px, py);
      const out = x < 0 || y < 0 || x > sheet.widthMm || y > sheet.heightMm;
      const seen = out ? [0.5, 0.45, 0.4] : inked(x, y);
      const [u, v] = [px / width - 0.5, py / height - 0.5];
      const light = 0.72 * (1 - falls * (u + 0.4 * v + 0.5) * 0.8) * (1 - 0.5 * falls * (u * u + v * v));
      const at = (py * width + px) * 4;
      for (let c = 0; c < 3; c++) {
        const value = Math.max(0, light * (seen[c] * (1 - veil) + veil * bare[c]) * (1 + noise * gauss()));
        data[at + c] = Math.round(255 * Math.min(1, value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055));
      }
      data[at + 3] = 255;
    }
  return { width, height, data, space: srgbSpace };
}

function inverse(m: readonly (readonly [number, number, number])[]): number[][] {
  const [[a, b, c], [d, e, f], [g, h, i]] = m;
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [e * i - f * h, c * h - b * i, b * f - c * e],
    [f * g - d * i, a * i - c * g, c * d - a * f],
    [d * h - e * g, b * g - a * h, a * e - b * d],
  ].map((row) => row.map((v) => v / det));
}

/** How far the tones that the plan then foresees are off, step by step, ΔE00; and its curve, in covers that look alike. */
function judged(id: string, read: WedgeRead): { readonly mean: number; readonly worst: number } {
  const at = { paperId: 'paper', layerId: id };
  const job = parseJob(withWedge(studio, at, read));
  const { tones } = plan({ job, attachments: new Map() }).papers[0];
  const { lab } = toneForesight(tones!.model);
  const off = [0.05, 0.1, 0.15, 0.2, 0.3, 0.45, 0.5, 0.6, 0.75, 0.9, 0.95].map((film) =>
    deltaE00(lab(tones!.layers.map((l) => (l === id ? film : 0))), trueLab(id, film)),
  );
  expect(wedgeCurve(tones, id)!.read).toBe(true);
  return { mean: off.reduce((a, b) => a + b, 0) / off.length, worst: Math.max(...off) };
}
const tell = (what: string, { mean, worst }: { mean: number; worst: number }): string =>
  `${what}: ${mean.toFixed(2)} / ${worst.toFixed(2)}`;

describe('what a photograph of a printed wedge does to the curve', () => {
  const cameras: readonly (readonly [string, Camera, readonly string[]])[] = [
    ['even light, a quiet camera', { falls: 0.05, noise: 0.01, veil: 0 }, ['c']],
    ['a third less light on one side, noise, a veil of glare', { falls: 0.35, noise: 0.05, veil: 0.02 }, ['c', 'm', 'y', 'k']],
  ];
  test.each(cameras)('%s', (name, camera, ids) => {
    const guess = ids.map((id) =>
      Math.max(
        ...[0.2, 0.5, 0.8].map((film) => deltaE00(toneForesight(model).lab(layers.map((l) => (l === id ? film : 0))), trueLab(id, film))),
      ),
    );
    const all = ids.map((id, i) => {
      const read = wedgeFromPhoto(made, { paperId: 'paper', layerId: id }, photographed(id, camera), place);
      const found = judged(id, read);
      console.log(tell(`${name}, ${id}`, found), `unread ${guess[i].toFixed(1)}`);
      return found;
    });
    for (const [i, { mean, worst }] of all.entries()) {
      expect(mean).toBeLessThan(1.2);
      expect(worst).toBeLessThan(2.2);
      expect(worst).toBeLessThan(guess[i] / 3);
    }
  });
});

describe('a wedge by numbers', () => {
  const at = { paperId: 'paper', layerId: 'c' };
  test('Lab of every step is met; densities through the ink’s own filter nearly so', () => {
    const labs = wedgeSteps
      .map(
        (s) =>
          `${s * 100}: ${trueLab('c', s)
            .map((v) => v.toFixed(2))
            .join(' ')}`,
      )
      .join('\n');
    const byLab = judged('c', wedgeFromText(made, at, labs, place));
    // Density of the light that a filter lets through, to a hundredth, as instruments show it (ISO 5-3).
    const filter = filterOf(paper, solidOf('c'));
    const density = (s: Float64Array): string => (-Math.log10(filter(s))).toFixed(2).replace('.', ',');
    const densities = [0, ...wedgeSteps].map((s) => `${s * 100} % = ${density(trueSpectrum('c', s))}`).join('; ');
    const byDensity = judged('c', wedgeFromText(made, at, densities, place));
    console.log(tell('by Lab', byLab), tell('by density', byDensity));
    expect(byLab.mean).toBeLessThan(0.3);
    expect(byDensity.mean).toBeLessThan(1);
    expect(byDensity.worst).toBeLessThan(2);
  });

  test('a file of readings, named by its steps or in the order of the page', () => {
    const rows = (names: readonly (string | number)[], covers: readonly number[]): Uint8Array =>
      new TextEncoder().encode(
        `name;L;a;b\n${covers.map((s, i) => [names[i], ...trueLab('c', s).map((v) => v.toFixed(2))].join(';')).join('\n')}\n`,
      );
    const named = wedgeFromFile(
      made,
      at,
      rows(
        [...wedgeSteps].map((s) => `step ${Math.round(s * 100)}`),
        wedgeSteps,
      ),
      'wedge.csv',
    );
    const page = wedgeSheet().fields.map((f) => f.cover);
    const ordered = wedgeFromFile(
      made,
      at,
      rows(
        page.map((_, i) => i + 1),
        page,
      ),
      'page.csv',
    );
    expect(judged('c', named).mean).toBeLessThan(0.3);
    expect(judged('c', ordered).mean).toBeLessThan(0.3);
    expect(() => wedgeFromFile(made, at, rows(['a', 'b', 'c'], [0.1, 0.5, 0.9]), 'odd.csv')).toThrow();
  });

  test('a wedge read again takes the place of the first; what is odd is said', () => {
    const once = withWedge(studio, at, wedgeFromText(made, at, '20: 0.2; 50: 0.5; 80: 0.9; 100: 1.4', place));
    const twice = withWedge(once, at, wedgeFromText(made, at, '50: 0.5; 100: 1.4', place));
    expect(twice.proofReadings.length).toBe(studio.proofReadings.length + 1);
    const mixed = wedgeFromText(made, at, '10: 0.2; 20: 0.9; 50: 0.4; 100: 1.4', place);
    expect(wedgeProblems(mixed, place).map((p) => p.code)).toEqual(['wedge-falls-back']);
    expect(wedgeProblems(wedgeFromText(made, at, '50: 0.5; 100: 1.4', place), place).map((p) => p.code)).toEqual(['wedge-short']);
    for (const text of ['', 'fifty: much', '50: 0.4; 70: 0.8', '150: 0.4; 100: 1'])
      expect(() => wedgeFromText(made, at, text, place)).toThrow();
  });
});

test('of an exposure strip the middle of the best rows is taken, and films hold what emulsion and mesh both do', () => {
  const found = askExposure(made, 'c', 30, readRows('- 10-90 5-95, 3-97 3-97 3-97 5-97 -', place));
  expect(found.row).toBe(4);
  expect(found.seconds).toBeCloseTo(30 * 4, 6);
  // A tint of 3 % at so many dots a cm: its dots' diameter.
  const { rulingPerCm, leastDotMicrons } = made.layers[0].tone!;
  expect(found.leastDotMicrons).toBeCloseTo((20000 / rulingPerCm) * Math.sqrt(0.03 / Math.PI), -0.5);
  expect(found.takenMicrons).toBe(Math.max(Math.round(leastDotMicrons), found.leastDotMicrons));
  const coarse = askExposure(made, 'c', 30, readRows('20-90 20-80', place));
  expect(coarse.takenMicrons).toBe(coarse.leastDotMicrons);
  expect(coarse.atEnd).toBe('shortest');
  const kept = plan({ job: parseJob(withExposure(studio, made, 'c', coarse)), attachments: new Map() });
  expect(kept.layers.map((l) => l.tone!.leastDotMicrons)).toEqual(layers.map(() => coarse.takenMicrons));
  expect(kept.layers[0].tone!.exposeSeconds).toBe(30);
  for (const text of ['', '90-10', 'x-y', '1-2 '.repeat(9)]) expect(() => readRows(text, place)).toThrow();
  expect(() => askExposure(made, 'c', 30, readRows('- -', place))).toThrow();
});

test('an overlap with a tone in it is a ramp of its topmost tone, from what lies without it to the overlap itself', () => {
  const [paper] = made.papers;
  expect(paper.overlaps.length).toBe(16);
  const named = (ids: readonly string[]): { readonly srgb: string; readonly layers: readonly string[] } =>
    paper.overlaps.find((o) => o.layers.join() === ids.join())!;
  for (const { srgb, layers: ids } of paper.overlaps.filter((o) => o.layers.length > 0)) {
    const ramp = overlapRamp(paper, { srgb, layers: ids })!;
    expect(ramp.layerId).toBe(ids.at(-1));
    expect(ramp.steps.at(-1)).toBe(srgb);
    const under = named(ids.slice(0, -1));
    if (under) expect(apart(ramp.steps[0], under.srgb)).toBeLessThan(2);
    expect(apart(ramp.steps.at(-2)!, srgb)).toBeLessThan(0.6 * apart(ramp.steps[0], srgb) + 1);
  }
  expect(overlapRamp(paper, { srgb: '#ffffff', layers: [] })).toBeNull();
  expect(overlapRamp({ tones: null }, paper.overlaps[1])).toBeNull();
});

/** Of two colours of a screen, in sRGB bytes. */
const apart = (a: string, b: string): number =>
  Math.hypot(...[1, 3, 5].map((i) => parseInt(a.slice(i, i + 2), 16) - parseInt(b.slice(i, i + 2), 16)));
