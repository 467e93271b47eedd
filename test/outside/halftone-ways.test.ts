import { beforeAll, describe, expect, test } from 'vitest';
import { askToneWays, leastCut, minutesOf, withToneWay, type ToneWay } from '../../src/core/asks/index.ts';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { toneForesight } from '../../src/core/halftone/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { plan, type Plan } from '../../src/core/plan/index.ts';
import { certify } from '../../src/core/stencil/index.ts';
import { toneJob } from './halftone-jobs.ts';

/** A run of cyan between two cut-free neighbours: a soft slope with a dark hill on it. */
const [width, height] = [240, 180];
const plane = Uint8Array.from({ length: width * height }, (_, i) => {
  const [x, y] = [i % width, Math.floor(i / width)];
  return Math.min(255, 20 + x * 0.5 + 130 * Math.exp(-((x - 90) ** 2 + (y - 90) ** 2) / 2400));
});
const job: Job = parseJob({
  ...toneJob('FOGRA39L', 'CMY', 'measured'),
  image: { widthMm: 88, heightMm: 66 },
  materials: [{ id: 'thin', name: 'Thin film', thicknessMm: 0.05, leastBridgeMm: 1.5, leastOpeningMm: 1, prints: [50, 100] }],
});
const run = { job, layerId: 'c', plane, width, height };
const planOf = (made: Job): Plan => plan({ job: made, attachments: new Map() });

describe('a run of tone in other ways', () => {
  let ways: ToneWay[];
  const wayOf = (kind: ToneWay['kind']): ToneWay => ways.find((w) => w.kind === kind)!;
  beforeAll(async () => {
    ways = await askToneWays(run);
  });

  test('all four are offered, each with its work; what is nearer to the film takes more of it', () => {
    expect(ways.map((w) => w.kind)).toEqual(['film', 'lines', 'two', 'three']);
    expect(wayOf('film').off).toBe(0);
    expect(wayOf('three').off).toBeLessThan(wayOf('two').off);
    expect(minutesOf(wayOf('three'))).toBeGreaterThan(minutesOf(wayOf('two')));
    // Another run costs what a run costs at this press: pots, set-up, pulls, washing.
    expect(wayOf('three').pressMinutes).toBeCloseTo(3 * wayOf('film').pressMinutes, 6);
    const least = leastCut(ways)!;
    expect(least.kind).not.toBe('film');
    for (const way of ways) if (way.kind !== 'film' && minutesOf(way) < minutesOf(least)) expect(way.off).toBeGreaterThan(2 * least.off);
  });

  test.each(['two', 'three'] as const)('in %s strengths: flats within flats, certified, as near to the film as was said', (kind) => {
    const way = wayOf(kind);
    const made = withToneWay(job, 'c', way);
    const planned = planOf(made);
    const flats = planned.layers.filter((l) => l.id.startsWith('c-'));
    expect(flats).toHaveLength(kind === 'two' ? 2 : 3);
    // In the film's place, before what lay over it.
    expect(made.layers.map((l) => l.id)).toEqual([...flats.map((l) => l.id), 'm', 'y']);
    for (const { stencil, tone, inkId } of flats) {
      expect(tone).toBeNull();
      expect(inkId).toBe('c');
      expect(stencil.certificate.holds).toBe(true);
      const least = { leastBridgeMm: 1.5 * 0.97, leastOpeningMm: 0.95 };
      expect(certify(stencil.paper, stencil.sheet, least).holds).toBe(true);
    }
    const knife = flats.reduce((sum, l) => sum + l.stencil.knife.minutes, 0);
    expect(Math.abs(knife - way.makeMinutes)).toBeLessThan(0.15 * way.makeMinutes + 1);

    // Each step lies on all steps before it, but for bridges.
    const { codes } = planned;
    const dots = planned.layers.filter((l) => l.tone).reduce((mask, l) => mask | (1 << l.bit), 0);
    const nested = new Map(flats.map((_, n) => [flats.slice(0, n).reduce((code, l) => code | (1 << l.bit), 0), n]));
    nested.set(
      flats.reduce((code, l) => code | (1 << l.bit), 0),
      flats.length,
    );
    const labs = new Map(planned.papers[0].overlaps.map((o) => [o.code, o.lab]));
    const film = filmColours();
    let [off, odd] = [0, 0];
    codes.data.forEach((code, i) => {
      const cut = code & ~dots;
      if (!nested.has(cut)) odd++;
      const [x, y] = [i % codes.width, Math.floor(i / codes.width)];
      const cover = plane[Math.floor((y * height) / codes.height) * width + Math.floor((x * width) / codes.width)];
      off += film(cover, labs.get(cut)!) / codes.data.length;
    });
    expect(odd / codes.data.length).toBeLessThan(0.005);
    expect(Math.abs(off - way.off)).toBeLessThan(0.8);
    expect(off).toBeLessThan(kind === 'two' ? 8 : 6);
  });

  test('as cut lines it is one run that holds, and the job with a way taken is a job like any other', () => {
    const made = withToneWay(job, 'c', wayOf('lines'));
    expect(made.layers.map((l) => l.id)).toEqual(['c', 'm', 'y']);
    const [lines] = planOf(made).layers;
    expect(lines.tone).toBeNull();
    expect(lines.stencil.certificate.holds).toBe(true);
    expect(Math.abs(lines.stencil.knife.minutes - wayOf('lines').makeMinutes)).toBeLessThan(0.1 * wayOf('lines').makeMinutes + 1);
    // Wedges of a film that is no more are no readings of this run.
    expect(made.proofReadings.some((r) => r.layers.includes('c'))).toBe(false);
    expect(made.proofReadings.length).toBeGreaterThan(0);
    expect(withToneWay(job, 'c', wayOf('film'))).toBe(job);
  });

  test('more runs than a sheet takes are refused', () => {
    const many = { ...job, layers: [...job.layers, ...'defgh'.split('').map((id) => ({ ...job.layers[1], id, name: id }))].slice(0, 8) };
    expect(() => withToneWay(many, 'c', wayOf('two'))).toThrow();
  });
});

/** ΔE00 from what the film prints where it covers so much, by the Plan of the run alone. */
function filmColours(): (cover: number, lab: Lab) => number {
  const alone = { ...job, layers: [job.layers[0]], proofReadings: job.proofReadings.filter((r) => r.layers.join() === 'c') };
  const { lab } = toneForesight(planOf({ ...alone, image: { widthMm: 2, heightMm: 2 } }).papers[0].tones!.model);
  const film = Array.from({ length: 256 }, (_, cover) => [...lab([cover / 255])] as unknown as Lab);
  return (cover, of) => deltaE00(film[cover], of);
}
