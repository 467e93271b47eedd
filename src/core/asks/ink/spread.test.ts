import { describe, expect, test } from 'vitest';
import { deltaE00, labFromXyz } from '../../colour/index.ts';
import { parseJob, type Job } from '../../job/index.ts';
import { plan } from '../../plan/index.ts';
import { askSpread, withWay } from './spread.ts';

const at = (values: number): { kind: 'spectrum'; values: number[] } => ({ kind: 'spectrum', values: new Array<number>(36).fill(values) });
const lab = (...values: [number, number, number]): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: values });

/** Stripes that cross: every overlap covers area. */
function job(inks: readonly object[], strengths: readonly number[]): Job {
  return parseJob({
    schemaVersion: 1,
    title: 'Spread',
    image: { widthMm: 80, heightMm: 80 },
    forms: [{ id: 'flat', name: 'Flat', made: { kind: 'flat', widthMm: 80, heightMm: 80 } }],
    cuts: inks.map((_, i) => ({ id: `c${i}`, name: `C${i}`, parts: [{ form: 'flat', xMm: 40 + 12 * i, yMm: 40 + 20 * (i % 2) }] })),
    layers: inks.map((_, i) => ({ id: `l${i}`, name: `L${i}`, cut: `c${i}`, side: 'window', ink: `i${i}`, strength: strengths[i] })),
    inks: inks.map((ink, i) => ({ id: `i${i}`, name: `I${i}`, ...ink })),
    papers: [{ id: 'paper', name: 'Paper', reading: lab(95, 0, 2), widthMm: 100, heightMm: 100, count: 5 }],
  });
}
const planOf = (of: Job): ReturnType<typeof plan> => plan({ job: of, attachments: new Map() });

describe('how sheets of one edition differ by the hand', () => {
  test('a film of one clear grey varies as Beer’s law says: nine in ten within 1.64 standard deviations of its thickness', () => {
    const grey = job([{ from: 'one-ground', ground: at(0.9), over: at(0.4) }], [1]);
    const made = planOf(grey);
    const [one] = askSpread(made, { hand: 0.1 }).overlaps;
    // R ∝ 0.9 (0.4/0.9)^d, near enough for a grey without gloss: L of 1 ± 1.64 × 0.1 films.
    const L = (d: number): number => {
      const r = 0.9 * (0.4 / 0.9) ** d;
      return labFromXyz([0.96422 * r, r, 0.82521 * r])[0];
    };
    const expected = (deltaE00([L(1.164), 0, 0], [L(1), 0, 0]) + deltaE00([L(0.836), 0, 0], [L(1), 0, 0])) / 2;
    expect(Math.abs(one.band / expected - 1)).toBeLessThan(0.25);
    expect(askSpread(made, { hand: 0.2 }).overlaps[0].band / one.band).toBeGreaterThan(1.6);
    expect(one.srgb).toHaveLength(10);
    expect(new Set(one.srgb).size).toBeGreaterThan(5);
  });
  test('same job, same sheets; those that vary most come first', () => {
    const made = planOf(
      job(
        [
          { from: 'one-ground', ground: lab(95, 0, 2), over: lab(55, -37, -50) },
          { from: 'one-ground', ground: lab(95, 0, 2), over: lab(48, 74, -3) },
        ],
        [1, 0.1],
      ),
    );
    const spread = askSpread(made, {});
    expect(askSpread(made, {})).toEqual(spread);
    const bands = spread.overlaps.map((o) => o.band);
    expect(bands).toEqual(bands.toSorted((a, b) => b - a));
    // The weaker pot varies less.
    const weak = askSpread(planOf(withWay(made.job, { kind: 'strength', layer: 'l0', strength: 0.2, meanBand: 0, moved: 0 })), {});
    const alone = (of: typeof spread): number => of.overlaps.find((o) => o.layers.join() === 'l0')!.band;
    expect(alone(weak)).toBeLessThan(alone(spread));
  });
  test('readings of a proof reach the sheets: films taught to be those of another press vary as that press’s do', () => {
    const inks = [
      { from: 'one-ground', ground: lab(95, 0, 2), over: lab(55, -37, -50) },
      { from: 'one-ground', ground: lab(95, 0, 2), over: lab(48, 74, -3) },
      { from: 'one-ground', ground: lab(95, 0, 2), over: lab(85, -5, 80) },
    ];
    const wet = { ...job(inks, [1, 0.7, 0.7]), press: { ...job(inks, [1]).press, films: 'wet-on-wet' as const } };
    const truth = planOf(wet);
    // The same inks, thought to be weaker and dried between coats, until all overlaps of a proof were read.
    const dry = job(inks, [0.75, 0.7, 0.7]);
    const readings = truth.papers[0].overlaps
      .filter((o) => o.layers.length > 0)
      .map((o) => ({ paper: 'paper', layers: [...o.layers], reading: lab(...(o.lab as [number, number, number])) }));
    const [asTruth, untaught, taught] = [truth, planOf(dry), planOf({ ...dry, proofReadings: readings })].map((of) => askSpread(of, {}));
    const off = (of: typeof taught): number =>
      of.overlaps.reduce((sum, o) => sum + Math.abs(o.band - asTruth.overlaps.find((t) => t.layers.join() === o.layers.join())!.band), 0);
    console.log(
      `spread: off by ${off(untaught).toFixed(1)} untaught, ${off(taught).toFixed(1)} taught, of ${asTruth.overlaps.length} bands`,
    );
    expect(off(taught)).toBeLessThan(0.4 * off(untaught));
  });
  test('a way that is named keeps what it promises when it is taken', () => {
    // One covers, one is clear: which lies on top decides how much of the other’s unevenness is seen.
    const base = job(
      [
        { from: 'one-ground', ground: lab(95, 0, 2), over: lab(30, 40, -20) },
        { from: 'two-grounds', white: at(0.9), overWhite: at(0.75), black: at(0.04), overBlack: at(0.55) },
        { from: 'one-ground', ground: lab(95, 0, 2), over: lab(60, -30, 30) },
      ],
      [0.9, 1, 0.8],
    );
    const spread = askSpread(planOf(base), {});
    expect(spread.ways.length).toBeGreaterThan(0);
    for (const way of spread.ways) {
      const then = askSpread(planOf(withWay(base, way)), {});
      expect(then.meanBand, JSON.stringify(way)).toBeLessThan(spread.meanBand);
      expect(Math.abs(then.meanBand / way.meanBand - 1), JSON.stringify(way)).toBeLessThan(0.2);
    }
  });
});
