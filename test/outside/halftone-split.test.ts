import Color from 'colorjs.io';
import { decode, encode } from 'fast-png';
import UTIF from 'utif2';
import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { askSplit, askWanted, wantedName, type SplitAnswer } from '../../src/core/asks/index.ts';
import { preparePictureReaders } from '../../src/cli/assets.ts';
import { readJobAt } from '../../src/cli/disk/folder.ts';
import { planOf } from '../../src/cli/disk/load.ts';
import { deltaE00, labFromXyz, srgbFromXyz, xyzFromLab, xyzFromSrgb, type Lab } from '../../src/core/colour/index.ts';
import { prepareLetters } from '../../src/core/form/index.ts';
import { toneForesight } from '../../src/core/halftone/index.ts';
import { readPicture, type Picture } from '../../src/core/image/index.ts';
import { parseJob } from '../../src/core/job/index.ts';
import { createPlanner, plan, type Plan } from '../../src/core/plan/index.ts';
import { filmFile, filmOf, type ToneRun } from '../../src/packet/index.ts';
import { toneJob } from './halftone-jobs.ts';
import { matrixProfile, pngWithProfile } from './matrix-profile.ts';

const rgbOf = (plane: (x: number, y: number) => readonly [number, number, number], width = 256, height = 64): Picture => {
  const data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) data.set(plane(x, y), (y * width + x) * 3);
  return { width, height, pixels: { kind: 'srgb8', data }, format: 'PNG', problems: [] };
};
/** Slow gradients through greys, skies and skins, none of them far from what four printing inks reach. */
const gradients = rgbOf((x, y) => {
  const t = 60 + x * 0.72;
  return y < 20 ? [t, t, t] : y < 42 ? [t * 0.8, t * 0.92, Math.min(250, t * 1.05)] : [Math.min(250, t * 1.06), t * 0.86, t * 0.72];
});
const shelf = parseJob({ ...toneJob('FOGRA39L', 'CMYK', 'measured'), image: { widthMm: 40, heightMm: 10 } });
const inks = ['c', 'm', 'y', 'k'].map((id) => ({ id }));

describe('a split comes back', () => {
  let answer: SplitAnswer;
  beforeAll(async () => {
    answer = await askSplit(shelf, gradients, { inks });
  }, 60_000);

  test('within ΔE00 1.0 of the picture where the inks reach, pixel by pixel through the films as written', () => {
    const { films, model, split } = answer;
    expect(split.mean).toBeLessThan(0.5);
    expect(split.p95).toBeLessThan(1);
    expect(split.outOfReach).toBeLessThan(0.1);
    // Not by its own figures alone: films → paper → Lab, against the picture put on the paper's white.
    const { lab } = toneForesight(model);
    const [px, py, pz] = [0, 1, 2].map((c) => xyzOfLab(lab(films.map(() => 0)))[c]);
    const white = xyzFromSrgb([1, 1, 1]);
    const off: number[] = [];
    const { data } = gradients.pixels;
    for (let i = 0; i < films[0].plane.length; i += 7) {
      const rgb = [0, 1, 2].map((c) => data[i * 3 + c] / 255) as [number, number, number];
      const xyz = xyzFromSrgb(rgb);
      const target = labFromXyz([(xyz[0] * px) / white[0], (xyz[1] * py) / white[1], (xyz[2] * pz) / white[2]]);
      off.push(deltaE00(lab(films.map((f) => f.plane[i] / 255)), target));
    }
    off.sort((a, b) => a - b);
    expect(off[Math.floor(off.length * 0.95)]).toBeLessThan(1);
  });

  test('smoothly: where the picture has no contour, no film has one', () => {
    for (const { plane } of answer.films) {
      for (const row of [10, 30, 55]) {
        const line = plane.subarray(row * answer.width, (row + 1) * answer.width);
        for (let x = 6; x < line.length - 6; x++) {
          // Means of four, against dithering of the last bit.
          const mean = (from: number): number => (line[from] + line[from + 1] + line[from + 2] + line[from + 3]) / 4;
          expect(Math.abs(mean(x + 2) - 2 * mean(x - 2) + mean(x - 6))).toBeLessThan(7);
        }
      }
    }
  });

  test('light inks first, and no more ink than the limit', async () => {
    expect(answer.job.layers.map((l) => l.ink)).toEqual(['y', 'c', 'm', 'k']);
    const two = [{ id: 'c' }, { id: 'k' }];
    const [free, tight] = [
      await askSplit(shelf, gradients, { inks: two, greyShare: 0 }),
      await askSplit(shelf, gradients, { inks: two, limit: 0.7, greyShare: 1 }),
    ];
    expect(free.split.most).toBeGreaterThan(0.75);
    expect(tight.split.most).toBeLessThan(0.74);
    await expect(askSplit(shelf, gradients, { inks: [{ id: 'gold' }] })).rejects.toThrow();
  });
});

describe('a picture’s own profile', () => {
  // Primaries as colorjs.io has them; the profile model by hand (ICC.1:2010, matrix and curve).
  const primaries = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ].map((rgb) => new Color('rec2020-linear', rgb as [number, number, number]).to('xyz-d50').coords.map(Number));
  const profile = matrixProfile(primaries, 2.2),
    gamma = 2.19921875;
  /** A picture of 16 bits in that space, as a file, read as any file is. */
  const inProfile = (width: number, height: number, colour: (i: number) => Color): Promise<Picture> => {
    const data = new Uint16Array(width * height * 3);
    for (let i = 0; i < width * height; i++)
      data.set(
        colour(i)
          .to('rec2020-linear')
          .coords.map((v) => Math.round(65535 * Math.min(1, Math.max(0, Number(v))) ** (1 / gamma))),
        i * 3,
      );
    return readPicture(pngWithProfile(encode({ width, height, data, channels: 3, depth: 16 }), profile), 'own.png');
  };
  // Black makes darks: the soft end of what two inks reach lies far below their colours.
  const two = [{ id: 'c' }, { id: 'k' }];
  let plain: SplitAnswer;
  beforeAll(async () => {
    await preparePictureReaders();
    plain = await askSplit(shelf, gradients, { inks: two, greyShare: 0 });
  }, 60_000);

  test('colours that sRGB can say are split alike in either', async () => {
    const { width, height, pixels } = gradients;
    const srgb = (i: number): [number, number, number] => [
      pixels.data[i * 3] / 255,
      pixels.data[i * 3 + 1] / 255,
      pixels.data[i * 3 + 2] / 255,
    ];
    const same = await inProfile(width, height, (i) => new Color('srgb', srgb(i)));
    expect(same.profile).toBe('Our own test profile');
    const own = await askSplit(shelf, same, { inks: two, greyShare: 0 });
    expect(own.beyondSrgb).toBe(0);
    plain.films.forEach(({ plane }, f) => {
      const off = plane.reduce((sum, v, i) => sum + Math.abs(v - own.films[f].plane[i]), 0) / plane.length;
      expect(off).toBeLessThan(1);
    });
  });

  test('colours beyond sRGB reach the inks: a ramp of one ink comes back as that ink, with black or without', async () => {
    expect(plain.job.layers.map((l) => l.ink)).toEqual(['c', 'k']);
    const { lab } = toneForesight(plain.model);
    const paper = xyzOfLab(lab([0, 0])),
      white = [0.9642, 1, 0.8249];
    const [width, height] = [64, 16];
    const covers = (i: number): [number, number] => [(i % width) / (width - 1), i < (width * height) / 2 ? 0 : 0.2];
    const wanted = Array.from({ length: width * height }, (_, i) => [...lab(covers(i))] as unknown as Lab);
    const colour = (i: number): Color => {
      const xyz = xyzOfLab(wanted[i]).map((v, c) => (v * white[c]) / paper[c]);
      return new Color('xyz-d50', xyz as [number, number, number]);
    };
    const own = await askSplit(shelf, await inProfile(width, height, colour), { inks: two, greyShare: 0 });
    // So much of it can sRGB not say, by colorjs.io.
    const beyond = wanted.reduce((n, _, i) => n + (colour(i).inGamut('srgb', { epsilon: 0.005 }) ? 0 : 1), 0) / wanted.length;
    expect(beyond).toBeGreaterThan(0.2);
    expect(own.beyondSrgb).toBeCloseTo(beyond, 1);
    const off = wanted.map((want, i) => deltaE00(lab(own.films.map((f) => f.plane[i] / 255)), want));
    expect(Math.max(...off)).toBeLessThan(1);
    own.films.forEach(({ plane }, f) => {
      expect(plane[width - 1] / 255).toBeCloseTo(covers(width - 1)[f], 1.5);
    });
  });
});

const xyzOfLab = (lab: Lab): readonly [number, number, number] => {
  const f = (t: number): number => (t > 6 / 29 ? t ** 3 : 3 * (6 / 29) ** 2 * (t - 4 / 29));
  const y = (lab[0] + 16) / 116;
  return [0.9642 * f(y + lab[1] / 500), f(y), 0.8249 * f(y - lab[2] / 200)];
};

describe('tone among cut layers', () => {
  const grey = rgbOf((x) => [255 - x, 255 - x, 255 - x]);
  const pixels = grey.pixels.data as Uint8Array;
  const job = parseJob({
    ...shelf,
    forms: [{ id: 'bar', name: 'Bar', made: { kind: 'flat', widthMm: 20, heightMm: 10 } }],
    cuts: [{ id: 'bar', name: 'Bar', parts: [{ form: 'bar', xMm: 10, yMm: 5 }] }],
    layers: [
      { id: 'y', name: 'Y', ink: 'y', cut: 'bar', side: 'window' },
      { id: 'c', name: 'C', ink: 'c', tone: { picture: 'ramp.png', rulingPerCm: 20, angleDeg: 22.5 } },
    ],
    proofReadings: shelf.proofReadings.filter((r) => r.layers.every((id) => id === 'c')),
  });
  const bundle = {
    job,
    attachments: new Map([['ramp.png', new Uint8Array(1)]]),
    pictures: new Map([['ramp.png', { width: 256, height: 64, rgb: pixels }]]),
  };
  let made: Plan;
  beforeAll(() => {
    prepareLetters({
      regular: font('Regular'),
      semibold: font('Semibold'),
      bold: font('Bold'),
    });
    made = plan(bundle);
  });

  test('it is a plane of its own; codes keep their byte, and nothing is cut for it', () => {
    const [y, c] = made.layers;
    expect(y.tone).toBeNull();
    expect(c.tone!.plane).toHaveLength(made.codes.data.length);
    expect(c.tone!.meanOnFilm).toBeCloseTo(0.5, 1);
    expect(c.tone!.meanOnPaper).toBeGreaterThan(c.tone!.meanOnFilm + 0.01);
    expect(c.stencil.knife.metres).toBe(0);
    expect(made.cuts.map((one) => one.id)).toEqual(['bar']);
    // Dots in the proof come to what is printed; grams go by it.
    const bit = 1 << c.bit;
    const dots = made.codes.data.reduce((sum, code) => sum + (code & bit ? 1 : 0), 0) / made.codes.data.length;
    expect(dots).toBeCloseTo(c.tone!.meanOnPaper, 2);
    expect(c.coverage).toBeCloseTo(c.tone!.meanOnPaper, 6);
    expect(c.mix!.printedGrams).toBeGreaterThan(0);
    expect(made.papers[0].tones!.layers).toEqual(['y', 'c']);
    expect(made.papers[0].tones!.carries).toEqual([false, true]);
  });

  test('from arm’s length it is what the tones under each place come to, over what is cut', () => {
    const [seen] = made.fromArm;
    expect(seen.paperId).toBe(made.papers[0].id);
    expect(seen.width * seen.mmPerPx).toBeCloseTo(job.image.widthMm, 0);
    const { tones } = made.papers[0];
    const { lab } = toneForesight(tones!.model);
    const [, c] = made.layers;
    // The bar lies over the left half, the film's ramp over all.
    for (const share of [0.1, 0.3, 0.45, 0.55, 0.8, 0.95]) {
      const [x, y] = [Math.floor(share * seen.width), seen.height >> 1];
      const film =
        c.tone!.plane[Math.floor((y / seen.height) * made.codes.height) * made.codes.width + Math.floor(share * made.codes.width)] / 255;
      const rgb = Array.from(seen.rgb.subarray((y * seen.width + x) * 3, (y * seen.width + x) * 3 + 3), (v) => v / 255);
      const shown = labFromXyz(xyzFromSrgb(rgb as [number, number, number]));
      // As a screen can show it: strong cyans lie outside.
      const { hex } = srgbFromXyz(xyzFromLab(lab([share < 0.5 ? 1 : 0, film])));
      const told = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255) as [number, number, number];
      expect(deltaE00(shown, labFromXyz(xyzFromSrgb(told)))).toBeLessThan(1);
    }
  });

  test('a Plan is data: what carries it from worker to page loses nothing', () => {
    const { tones } = made.papers[0];
    const copy = structuredClone(tones)!;
    expect(toneForesight(copy.model).lab([0, 0.4])).toEqual(toneForesight(tones!.model).lab([0, 0.4]));
  });

  test('a slider recolours it as the Plan would', () => {
    const planner = createPlanner();
    planner.plan(bundle);
    const weaker = { ...job, layers: job.layers.map((l) => (l.id === 'c' ? { ...l, strength: 0.4 } : l)) };
    const quick = planner.recolour(weaker, 'paper')!;
    const whole = plan({ ...bundle, job: weaker });
    expect(quick.paper.overlaps.map((o) => o.lab)).toEqual(whole.papers[0].overlaps.map((o) => o.lab));
    expect(toneForesight(quick.paper.tones!.model).lab([1, 0.5])).toEqual(toneForesight(whole.papers[0].tones!.model).lab([1, 0.5]));
  });

  test('while a slider moves no picture is copied: far less than four of the proof’s own buffers', () => {
    const large = { ...bundle, job: { ...job, image: { widthMm: 100, heightMm: 75 } } };
    const planner = createPlanner();
    const { codes } = planner.plan(large);
    const at = (strength: number): typeof job => ({
      ...large.job,
      layers: large.job.layers.map((l) => (l.id === 'c' ? { ...l, strength } : l)),
    });
    planner.recolour(at(0.9), 'paper');
    const before = process.memoryUsage().arrayBuffers;
    expect(planner.recolour(at(0.4), 'paper')).not.toBeNull();
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(4 * codes.data.byteLength);
    expect(codes.data.BYTES_PER_ELEMENT).toBe(1);
  });

  test('a run of tone may be open: its dots lie in the proof and print nothing yet', () => {
    const open = plan({ ...bundle, job: { ...job, layers: job.layers.map((l) => (l.id === 'c' ? { ...l, ink: null } : l)) } });
    const c = open.layers.find((l) => l.id === 'c')!;
    expect(open.problems.filter((p) => p.severity === 'error')).toEqual([]);
    expect(c.tone!.meanOnFilm).toBeCloseTo(0.5, 1);
    expect(c.swatch).toBeNull();
    expect(open.codes.data.some((code) => (code & (1 << c.bit)) !== 0)).toBe(true);
    expect(open.papers[0].overlaps.every((o) => !o.layers.includes('c'))).toBe(true);
  });

  test('a colour may be wanted of a tone: it is held against what the film’s dots come to, with its chance', () => {
    const { lab } = toneForesight(made.papers[0].tones!.model);
    const [l, a, b] = lab([1, 0.4]);
    const wanted = [
      { layers: ['y', 'c'], coverages: [1, 0.4], lab: [l, a, b] as [number, number, number], paper: 'paper' },
      { layers: ['y', 'c'], lab: [l, a, b] as [number, number, number], paper: 'paper' },
    ];
    const wishing = plan({ ...bundle, job: parseJob({ ...job, wanted }) });
    const [tone, solid] = askWanted(wishing);
    expect(tone.now!.deltaE).toBeLessThan(0.01);
    expect(solid.now!.deltaE).toBeGreaterThan(10);
    expect(tone.now!.chance).toBeGreaterThan(solid.now!.chance);
    // Nine in ten lie within the band, by what the band is.
    const [sure] = askWanted(wishing, undefined, tone.now!.band);
    expect(sure.now!.chance).toBeCloseTo(0.9, 1);
    expect(wantedName(wanted[0], wishing.layers)).toBe('Y + C 40 %');
    // A cut run has no tones.
    const none = plan({ ...bundle, job: parseJob({ ...job, wanted: [{ ...wanted[0], coverages: [0.5, 0.4] }] }) });
    expect(askWanted(none)[0].now).toBeNull();
  });

  test('its film is the same in every format, and opens at its true size elsewhere', () => {
    const layer = made.layers.find((l): l is ToneRun => l.tone !== null)!;
    const ask = { dpi: 600, mirrored: false, reader: { language: 'en', units: 'mm' } } as const;
    const film = filmOf(made, layer, ask);
    const png = decode(filmFile(film, 'png'));
    expect([png.width, png.height, png.depth]).toEqual([film.layout.width, film.layout.height, 1]);
    expect(png.resolution).toMatchObject({ x: Math.round(600 / 0.0254), unit: 1 });
    const bytes = filmFile(film, 'tiff');
    const [ifd] = UTIF.decode(bytes.buffer as ArrayBuffer);
    UTIF.decodeImage(bytes.buffer as ArrayBuffer, ifd);
    expect([ifd.width, ifd.height]).toEqual([png.width, png.height]);
    const rgba = UTIF.toRGBA8(ifd);
    const line = Math.ceil(png.width / 8);
    const black = (x: number, y: number): boolean => ((png.data[y * line + (x >> 3)] >> (7 - (x & 7))) & 1) === 0;
    let wrong = 0,
      dark = 0,
      all = 0;
    for (let y = 0; y < png.height; y += 3)
      for (let x = 0; x < png.width; x += 3) {
        if (black(x, y) !== rgba[(y * png.width + x) * 4] < 128) wrong++;
        const { image } = film.layout;
        if (x >= image.x && x < image.x + image.width && y >= image.y && y < image.y + image.height) {
          all++;
          if (black(x, y)) dark++;
        }
      }
    expect(wrong).toBe(0);
    expect(dark / all).toBeCloseTo(layer.tone.meanOnFilm, 1.7);
    // Mirrored, it is the same film seen from behind.
    const behind = decode(filmFile(filmOf(made, layer, { ...ask, mirrored: true }), 'png'));
    const { image } = film.layout;
    for (let x = image.x; x < image.x + image.width; x += 11) {
      const y = image.y + 40,
        back = png.width - 1 - x;
      expect(((behind.data[y * line + (back >> 3)] >> (7 - (back & 7))) & 1) === 0).toBe(black(x, y));
    }
    const pdf = Buffer.from(filmFile(film, 'pdf')).toString('latin1');
    const [, w] = /MediaBox \[0 0 ([\d.]+)/.exec(pdf)!;
    expect((Number(w) / 72) * 600).toBeCloseTo(png.width, 0);
    // Its picture holds the same bits (ISO 32000-1, FlateDecode with PNG’s predictor).
    const [, head, length] = /(\/Subtype ?\/Image[^]*?\/Length (\d+)[^]*?stream\r?\n)/.exec(pdf)!;
    const from = pdf.indexOf(head) + head.length;
    const bits = inflateSync(Buffer.from(pdf.slice(from, from + Number(length)), 'latin1'));
    // Each row after the filter that it names: none.
    expect(bits.length).toBe((line + 1) * png.height);
    const rows = Array.from({ length: png.height }, (_, y) => bits.subarray(y * (line + 1) + 1, (y + 1) * (line + 1)));
    expect(Buffer.concat(rows).compare(Buffer.from(png.data))).toBe(0);
  });
});

test('the examples with tone ship whole: a split on thin paper, and a run of cut lines that holds', async () => {
  const three = await planOf(readJobAt(fileURLToPath(new URL('../../examples/parrot', import.meta.url))));
  expect(three.problems.filter((p) => p.severity !== 'note')).toEqual([]);
  expect(three.layers.map((l) => l.tone !== null)).toEqual([true, true, true]);
  expect(three.fromArm).toHaveLength(1);
  const lines = readJobAt(fileURLToPath(new URL('../../examples/tide-lines', import.meta.url)));
  const only = { ...lines, job: { ...lines.job, layers: lines.job.layers.map((l) => ({ ...l, off: l.id !== 'kelp' })) } };
  const [kelp] = (await planOf(only)).layers;
  expect(kelp.stencil.certificate.holds).toBe(true);
  expect(kelp.stencil.bridges).toEqual([]);
});

function font(name: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(`../../assets/OpenSans-${name}.ttf`, import.meta.url)));
}
