import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { converter } from 'culori';
import { adaptedToD50, deltaE00, labUnderLamp, lamps, whitePoints, xyzFromSpectrum, type Illuminant } from '../../src/core/colour/index.ts';
import { underLamp } from '../../src/core/asks/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { createPlanner } from '../../src/core/plan/index.ts';
import { jobOf, proof } from './overprint-jobs.ts';

const read = <T>(name: string): T => JSON.parse(readFileSync(new URL(`data/${name}.json`, import.meta.url), 'utf8')) as T;
/** CIE 015 tables as an open colour library has them: source in the file. */
const { relativePower } = read<{ relativePower: Record<Illuminant, number[]> }>('illuminants');
const { xyzBar } = read<{ xyzBar: number[][] }>('cie');

describe('light under which a print hangs', () => {
  // CIE 015:2018, table 12.2: chromaticity and correlated colour temperature of the LED illuminants.
  test.each([
    ['LED-B1', 0.456, 0.4078, 2733],
    ['LED-B3', 0.3756, 0.3723, 4103],
    ['LED-B5', 0.3118, 0.3236, 6598],
  ] as const)('%s is as white as CIE 015 says', (lamp, x, y, kelvin) => {
    const [X, Y, Z] = whitePoints[lamp];
    expect(X / (X + Y + Z)).toBeCloseTo(x, 3);
    expect(Y / (X + Y + Z)).toBeCloseTo(y, 3);
    // McCamy 1992: colour temperature from chromaticity, within 2 % here.
    const n = (x - 0.332) / (0.1858 - y);
    expect(Math.abs((449 * n ** 3 + 3525 * n ** 2 + 6823.3 * n + 5520.33) / kelvin - 1)).toBeLessThan(0.02);
  });
  test('A is the radiator that CIE 015 gives a formula for', () => {
    relativePower.A.forEach((power, i) => {
      const nm = 380 + 5 * i;
      const formula = (100 * (560 / nm) ** 5 * Math.expm1(1.435e7 / (2848 * 560))) / Math.expm1(1.435e7 / (2848 * nm));
      expect(Math.abs(power / formula - 1)).toBeLessThan(1e-4);
    });
  });
  test('10 nm weights give what the 5 nm tables give, under every lamp, for measured inks', () => {
    for (const lamp of lamps) {
      for (const { reflectance } of Object.values(proof)) {
        const R = Float64Array.from(reflectance!);
        const at5 = (i: number): number => (i % 2 === 0 ? R[i / 2] : (R[(i - 1) / 2] + R[Math.min(35, (i + 1) / 2)]) / 2);
        const sum = (c: number, of: (i: number) => number): number =>
          relativePower[lamp].reduce((total, power, i) => total + power * xyzBar[c][i] * of(i), 0);
        const white = [0, 1, 2].map((c) => sum(c, () => 1));
        const xyz = xyzFromSpectrum(R, lamp);
        for (let c = 0; c < 3; c++)
          expect(Math.abs(xyz[c] - (sum(c, at5) * whitePoints[lamp][c]) / white[c]), `${lamp} ${c}`).toBeLessThan(0.002);
      }
    }
  });
  test('eyes used to D65 see what a colour library’s adaptation says; white stays white under every lamp', () => {
    const toD50 = converter('xyz50');
    const [x, y, z] = adaptedToD50([0.3, 0.2, 0.5], 'D65');
    const other = toD50({ mode: 'xyz65', x: 0.3, y: 0.2, z: 0.5 });
    expect(x).toBeCloseTo(other.x, 3);
    expect(y).toBeCloseTo(other.y, 3);
    expect(z).toBeCloseTo(other.z, 3);
    for (const lamp of lamps) labUnderLamp(whitePoints[lamp], lamp).forEach((v, i) => expect(v).toBeCloseTo([100, 0, 0][i], 2));
  });
});

/** Two greys that match under D50 and are made of different spectra, as only spectra can say. */
function twins(): Job {
  const band = (of: (nm: number) => number): number[] => Array.from({ length: 36 }, (_, i) => of(380 + 10 * i));
  const flat = band(() => 0.35);
  const bumpy = metamer(flat);
  const paper = band(() => 0.9);
  const ink = (id: string, values: number[]): object => ({
    id,
    name: id,
    from: 'one-ground',
    ground: { kind: 'spectrum', values: paper },
    over: { kind: 'spectrum', values },
  });
  const square = (id: string, xMm: number): object => ({ id, name: id, parts: [{ form: 'square', xMm, yMm: 20 }] });
  return parseJob({
    schemaVersion: 1,
    title: 'Twins',
    image: { widthMm: 80, heightMm: 40 },
    forms: [{ id: 'square', name: 'Square', made: { kind: 'flat', widthMm: 30, heightMm: 30 } }],
    cuts: [square('left', 20), square('right', 60)],
    layers: [
      { id: 'even', name: 'Even', cut: 'left', side: 'window', ink: 'flat' },
      { id: 'waved', name: 'Waved', cut: 'right', side: 'window', ink: 'bumpy' },
    ],
    inks: [ink('flat', flat), ink('bumpy', bumpy)],
    papers: [{ id: 'paper', name: 'Paper', reading: { kind: 'spectrum', values: paper }, widthMm: 100, heightMm: 100, count: 1 }],
  });
}

/** The same XYZ under D50, another spectrum: a wave with what it does to X, Y, Z taken out of it by three slow curves. */
function metamer(flat: readonly number[]): number[] {
  const wave = flat.map((_, i) => 0.16 * Math.cos((i * 2 * Math.PI) / 11));
  const slow = [0, 1, 2].map((k) => flat.map((_, i) => Math.exp(-(((i - 7 - 9 * k) / 6) ** 2))));
  const xyz = (v: readonly number[]): readonly number[] => xyzFromSpectrum(Float64Array.from(v));
  const [a, b, c] = slow.map(xyz);
  const w = xyz(wave);
  const det = (p: readonly number[], q: readonly number[], r: readonly number[]): number =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) - q[0] * (p[1] * r[2] - p[2] * r[1]) + r[0] * (p[1] * q[2] - p[2] * q[1]);
  const d = det(a, b, c);
  const by = [det(w, b, c) / d, det(a, w, c) / d, det(a, b, w) / d];
  return flat.map((v, i) => v + wave[i] - slow.reduce((sum, s, k) => sum + by[k] * s[i], 0));
}

describe('the same print under other lamps', () => {
  const [paper] = createPlanner().plan({ job: twins(), attachments: new Map() }).papers;
  test('two overlaps that match by daylight and part under a lamp are named; their ΔE00 is that of their spectra', () => {
    expect(paper.parting).toHaveLength(1);
    const [pair] = paper.parting;
    const [even, waved] = ['even', 'waved'].map((id) => paper.overlaps.find((o) => o.layers.join() === id)!);
    expect([...pair.codes].sort()).toEqual([even.code, waved.code].sort());
    expect(pair.alikeDeltaE).toBeLessThan(1.5);
    expect(pair.apartDeltaE).toBeGreaterThan(3);
    expect(pair.chance).toBeGreaterThan(0.9);
    const job = twins();
    const over = (at: number): Float64Array => {
      const ink = job.inks[at];
      if (ink.from !== 'one-ground' || ink.over.kind !== 'spectrum') throw new Error();
      return Float64Array.from(ink.over.values);
    };
    const far = pair.apartUnder;
    const off = deltaE00(labUnderLamp(xyzFromSpectrum(over(0), far), far), labUnderLamp(xyzFromSpectrum(over(1), far), far));
    expect(pair.apartDeltaE).toBeCloseTo(off, 0);
  });
  test('from colours alone nothing is known of the spectra, and nothing is said to part', () => {
    const job = twins();
    const asLab: Job = {
      ...job,
      inks: job.inks.map((ink) => (ink.from === 'one-ground' ? { ...ink, over: { kind: 'lab', lab: [66, 0, 0] } } : ink)),
    };
    expect(createPlanner().plan({ job: asLab, attachments: new Map() }).papers[0].parting).toEqual([]);
  });
  test('measured spectra under A: every single ink is what its spectrum is under A', () => {
    const plan = createPlanner().plan({ job: jobOf(proof, { known: 'spectrum', black: true }), attachments: new Map() });
    const light = plan.papers[0].lights.find((l) => l.lamp === 'A')!;
    for (const one of plan.papers[0].overlaps.filter((o) => o.layers.length === 1)) {
      const name = one.layers[0].toUpperCase();
      const measured = labUnderLamp(xyzFromSpectrum(Float64Array.from(proof[name].reflectance!), 'A'), 'A');
      expect(deltaE00(light.overlaps.find((o) => o.code === one.code)!.lab, measured), name).toBeLessThan(0.5);
    }
    const shown = underLamp(plan.papers[0], 'A');
    expect(shown.overlaps[3].srgb).not.toBe(plan.papers[0].overlaps[3].srgb);
    expect(shown.palette[shown.overlaps[3].code] & 0xff).toBe(parseInt(shown.overlaps[3].srgb.slice(1, 3), 16));
  });
  test('measured overprints under lamps are foreseen as well as under the light they were read by', () => {
    const plan = createPlanner().plan({ job: jobOf(proof, { known: 'spectrum', black: true }), attachments: new Map() });
    const overprints = plan.papers[0].overlaps.filter((o) => o.layers.length > 1);
    const mean = (lamp: Illuminant): number => {
      const off = overprints.flatMap((one) => {
        const name = Object.keys(proof).find(
          (key) =>
            [...key].sort().join() ===
            one.layers
              .map((l) => l.toUpperCase())
              .sort()
              .join(),
        );
        if (!name) return [];
        const R = Float64Array.from(proof[name].reflectance!);
        const lab =
          lamp === 'D50' ? one.lab : plan.papers[0].lights.find((l) => l.lamp === lamp)!.overlaps.find((o) => o.code === one.code)!.lab;
        return [deltaE00(lab, labUnderLamp(xyzFromSpectrum(R, lamp), lamp))];
      });
      expect(off.length).toBeGreaterThan(3);
      return off.reduce((a, b) => a + b, 0) / off.length;
    };
    console.log(lamps.map((lamp) => `${lamp} ${mean(lamp).toFixed(2)}`).join(', '));
    for (const lamp of lamps) expect(mean(lamp), lamp).toBeLessThan(1.25 * mean('D50'));
  });
});
