import { describe, expect, test } from 'vitest';
import { deltaE00, xyzFromLab, type Lab } from '../../colour/index.ts';
import { srgbSpace, type Photograph, type Point } from '../../ink/index.ts';
import { inverse3 } from '../../numeric/index.ts';
import { parseJob, type Job } from '../../job/index.ts';
import { homography, mapPoint } from '../../numeric/index.ts';
import { plan, type Plan } from '../../plan/index.ts';
import { seeded } from '../../random.ts';
import { asWritten } from '../../../words/index.ts';
import { askPrintPhoto, withPrintPhoto } from './print-photo.ts';

const lab = (...values: [number, number, number]): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: values });
const at = [
  [28, 28],
  [54, 31],
  [40, 56],
] as const;
const overs = [lab(58, -33, -42), lab(50, 68, 2), lab(84, -4, 72)];

/** Three squares that lie over one another, on a sheet with bare paper around. */
const job = (strengths: readonly number[]): Job =>
  parseJob({
    schemaVersion: 1,
    title: 'Three squares',
    image: { widthMm: 84, heightMm: 90 },
    forms: [{ id: 'flat', name: 'Flat', made: { kind: 'flat', widthMm: 46, heightMm: 46 } }],
    cuts: at.map(([xMm, yMm], i) => ({ id: `c${i}`, name: `C${i}`, parts: [{ form: 'flat', xMm, yMm }] })),
    layers: at.map((_, i) => ({ id: `l${i}`, name: `L${i}`, cut: `c${i}`, side: 'window', ink: `i${i}`, strength: strengths[i] })),
    inks: overs.map((over, i) => ({ id: `i${i}`, name: `I${i}`, from: 'one-ground', ground: lab(95, 0, 2), over })),
    papers: [{ id: 'paper', name: 'Paper', reading: lab(95, 0, 2), widthMm: 124, heightMm: 120, count: 5 }],
  });
const planOf = (of: Job): Plan => plan({ job: of, attachments: new Map() });

interface Scene {
  /** Of the sheet, in pixels, clockwise from its top left. */
  readonly sheet: readonly Point[];
  /** Light at a place of the picture. */
  readonly light?: (x: number, y: number) => number;
  /** How the camera mixes its channels. */
  readonly mixes?: number;
  /** Lies on the sheet, mm from the image's top left corner: x, y, width, height. */
  readonly tab?: readonly [number, number, number, number];
  /** The paper ends with the image: around it is the table. */
  readonly trimmed?: boolean;
}
const [W, H] = [575, 500];
const seenAs: readonly Point[] = [
  [65, 45],
  [505, 65],
  [520, 462],
  [48, 440],
];
const toLight = inverse3(srgbSpace.toXyz);
const encode = (v: number): number => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

/** A sheet as printed by `truth`, on a dark table, under warm light that falls off, with noise, in 8 bits. */
function photographed(truth: Plan, { sheet, light = () => 1, mixes = 0, tab, trimmed }: Scene): Photograph {
  const { widthMm: w, heightMm: h } = truth.job.image;
  const [x0, y0] = [-20, -15];
  const toMm = homography(sheet, [
    [x0, y0],
    [x0 + 124, y0],
    [x0 + 124, y0 + 120],
    [x0, y0 + 120],
  ])!;
  const lights = new Map<number, readonly number[]>();
  const lightOf = (colour: Lab, key: number): readonly number[] => {
    let found = lights.get(key);
    if (!found) {
      const xyz = xyzFromLab(colour);
      const rgb = toLight.map((row) => row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2]);
      const mean = (rgb[0] + rgb[1] + rgb[2]) / 3;
      lights.set(key, (found = rgb.map((v, c) => (v * (1 - mixes) + mean * mixes) * [0.86, 0.78, 0.62][c])));
    }
    return found;
  };
  const by = new Map(truth.papers[0].overlaps.map((o) => [o.code, o.lab]));
  const random = seeded(7);
  const data = new Uint8Array(W * H * 4);
  const table: Lab = [32, 2, 6];
  for (let y = 0; y < H; y++)
    for (let x = 0; x < W; x++) {
      const [mx, my] = mapPoint(toMm, x + 0.5, y + 0.5);
      const inImage = mx >= 0 && my >= 0 && mx < w && my < h;
      const onSheet = mx >= x0 && my >= y0 && mx < x0 + 124 && my < y0 + 120 && (!trimmed || inImage);
      const onTab = tab && mx >= tab[0] && my >= tab[1] && mx < tab[0] + tab[2] && my < tab[1] + tab[3];
      const px = Math.min(truth.codes.width - 1, Math.floor(mx / truth.codes.mmPerPx)),
        py = Math.min(truth.codes.height - 1, Math.floor(my / truth.codes.mmPerPx));
      const code = inImage ? truth.codes.data[py * truth.codes.width + px] : 0;
      const rgb = onTab ? lightOf([70, 5, 40], -2) : onSheet ? lightOf(by.get(code)!, code) : lightOf(table, -1);
      for (let c = 0; c < 3; c++)
        data[(y * W + x) * 4 + c] = Math.max(0, Math.min(255, 255 * encode(Math.max(0, rgb[c]) * light(x, y)) + 2 * random.normal()));
      data[(y * W + x) * 4 + 3] = 255;
    }
  return { width: W, height: H, data, space: srgbSpace };
}
const falls = (x: number, y: number): number => 1 - 0.35 * (x / W) - 0.1 * (y / H) ** 2;
const ask = { paperId: 'paper', of: 'sheet', place: asWritten('print.jpg'), longPx: 300 } as const;

function errors(truth: Plan, seen: ReturnType<typeof askPrintPhoto>['seen']): number[] {
  return seen.map((one) => deltaE00(truth.papers[0].overlaps.find((o) => o.code === one.code)!.lab, one.reading.lab as Lab));
}
const mean = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / of.length;

describe('a photograph of the printed sheet', () => {
  const planned = planOf(job([0.95, 0.8, 0.7]));
  const truth = planOf(job([0.65, 0.8, 0.98]));

  test('in perspective, warm and uneven light: found, squared up, and every broad overlap read to within its doubt', () => {
    const read = askPrintPhoto(planned, { ...ask, photo: photographed(truth, { sheet: seenAs, light: falls }) });
    const off = read.corners!.map(([x, y], i) => Math.hypot(x - seenAs[i][0], y - seenAs[i][1]));
    const wrong = errors(truth, read.seen);
    console.log(
      `print photo: corners to ${Math.max(...off).toFixed(1)} px, colours to ${mean(wrong).toFixed(2)}, at worst ${Math.max(...wrong).toFixed(2)}`,
    );
    expect(Math.max(...off)).toBeLessThan(1.5);
    expect(read.seen).toHaveLength(7);
    // What sRGB can't hold reads duller, and carries more doubt for it.
    read.seen.forEach((one, i) => expect(wrong[i]).toBeLessThan(one.reading.sigma! > 7 ? 3 : 1.2));
    expect(read.seen.filter((one) => one.reading.sigma === 7).length).toBeGreaterThanOrEqual(4);
    expect(read.problems.filter((p) => p.code === 'patch-outside-photo')).toHaveLength(
      read.seen.filter((one) => one.reading.sigma! >= 11).length,
    );
    // Squared up, each place shows its own colour, as the screen shows that.
    const { rgb, width } = read.squared!;
    for (const { at: place, code } of read.seen) {
      const i = (Math.round((place.yMm / 90) * 300) * width + Math.round((place.xMm / 90) * 300)) * 3;
      const shown = [1, 3, 5].map((from) =>
        parseInt(truth.papers[0].overlaps.find((o) => o.code === code)!.srgb.slice(from, from + 2), 16),
      );
      for (let c = 0; c < 3; c++) expect(Math.abs(rgb[i + c] - shown[c])).toBeLessThan(16);
    }
  });

  test('any way up: the turn that comes nearest to the colours foreseen', () => {
    const turned = [...seenAs.slice(2), ...seenAs.slice(0, 2)];
    const read = askPrintPhoto(planned, { ...ask, photo: photographed(truth, { sheet: turned, light: falls }) });
    expect(read.corners!.every(([x, y], i) => Math.hypot(x - turned[i][0], y - turned[i][1]) < 1.5)).toBe(true);
    expect(mean(errors(truth, read.seen))).toBeLessThan(1);
  });

  test('a tab on the margin is not taken for paper', () => {
    const photo = photographed(truth, { sheet: seenAs, light: falls, tab: [-18, -14, 60, 13] });
    const read = askPrintPhoto(planned, { ...ask, corners: seenAs, photo });
    expect(mean(errors(truth, read.seen))).toBeLessThan(1);
  });

  test('a print cut down to its image is read by the corners of the image, and by the bare paper in it', () => {
    const photo = photographed(truth, { sheet: seenAs, light: falls, trimmed: true });
    const image = askPrintPhoto(planned, { ...ask, corners: seenAs, photo }).outlines!.image;
    const read = askPrintPhoto(planned, { ...ask, of: 'image', corners: image, photo });
    expect(read.outlines!.sheet.every(([x, y], i) => Math.hypot(x - seenAs[i][0], y - seenAs[i][1]) < 1)).toBe(true);
    expect(mean(errors(truth, read.seen))).toBeLessThan(1);
  });

  test('a wrong pot is told, and a right print is not blamed', () => {
    const swapped = planOf({
      ...job([0.95, 0.8, 0.7]),
      layers: job([0.95, 0.8, 0.7]).layers.map((l, i) => ({ ...l, ink: ['i2', 'i1', 'i0'][i] })),
    });
    const wrong = askPrintPhoto(planned, { ...ask, corners: seenAs, photo: photographed(swapped, { sheet: seenAs, light: falls }) });
    const right = askPrintPhoto(planned, { ...ask, corners: seenAs, photo: photographed(planned, { sheet: seenAs, light: falls }) });
    expect(wrong.seen.filter((one) => one.beyond).length).toBeGreaterThanOrEqual(2);
    expect(right.seen.filter((one) => one.beyond)).toEqual([]);
    expect(right.suspect).toBeNull();
    // One pot too weak is told by the overlaps that have it, even under a cast.
    const weak = planOf(job([0.95, 0.3, 0.7]));
    const cast = askPrintPhoto(planned, {
      ...ask,
      corners: seenAs,
      photo: photographed(weak, { sheet: seenAs, light: falls, mixes: 0.03 }),
    });
    expect(cast.suspect).toBe('l1');
  });

  test('taken into the job, readings of a camera that mixes colours teach the forecast, and never replace an instrument’s', () => {
    const photo = photographed(truth, { sheet: seenAs, light: falls, mixes: 0.06 });
    const read = askPrintPhoto(planned, { ...ask, photo });
    const taught = withPrintPhoto(planned.job, 'paper', read.seen, '2026-05-04');
    const after = planOf(taught);
    const off = (of: Plan): number => mean(of.papers[0].overlaps.map((o, i) => deltaE00(o.lab, truth.papers[0].overlaps[i].lab)));
    const band = (of: Plan): number => mean(of.papers[0].overlaps.map((o) => o.band));
    console.log(
      `print photo: read to ${mean(errors(truth, read.seen)).toFixed(2)}; forecast off by ${off(planned).toFixed(2)}, taught ${off(after).toFixed(2)}; band ${band(planned).toFixed(2)}, ${band(after).toFixed(2)}`,
    );
    expect(off(after)).toBeLessThan(off(planned));
    expect(band(after)).toBeLessThanOrEqual(band(planned));
    // A second photograph takes the place of the first.
    expect(withPrintPhoto(taught, 'paper', read.seen).proofReadings).toHaveLength(read.seen.length);
    const layers = ['l0'];
    const instrument = { paper: 'paper', layers, reading: lab(60, -20, -30) };
    const both = planOf(withPrintPhoto({ ...planned.job, proofReadings: [instrument] }, 'paper', read.seen));
    const [one] = both.papers[0].overlaps.filter((o) => o.layers.join() === 'l0');
    expect(one.measured).toBe(true);
    expect(deltaE00(one.lab, [60, -20, -30])).toBeLessThan(0.5);
  });

  test('what can’t be read is said, and the picture is there all the same', () => {
    const photo = photographed(truth, { sheet: seenAs });
    const none = askPrintPhoto(planned, { ...ask, photo: { ...photo, data: new Uint8Array(W * H * 4).fill(90) } });
    expect([none.corners, none.problems[0].code]).toEqual([null, 'corners-not-found']);
    const crossed = [seenAs[1], seenAs[0], seenAs[2], seenAs[3]];
    expect(() => askPrintPhoto(planned, { ...ask, photo, corners: crossed })).toThrow();
    // Corners of the picture itself taken for those of the image: no paper is left around, but there is some inside.
    const tight = askPrintPhoto(planned, { ...ask, of: 'image', photo: { ...photo, data: photo.data.map(() => 40) }, corners: seenAs });
    expect(tight.squared).not.toBeNull();
  });
});
