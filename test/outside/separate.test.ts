import { Resvg } from '@resvg/resvg-wasm';
import Color from 'colorjs.io';
import { decode as decodePng, encode as encodePng } from 'fast-png';
import { beforeAll, expect, test } from 'vitest';
import { benchShelf } from '../../bench/separate-shelf.ts';
import { packageFile, prepareReaders } from '../../bench/separate-tools.ts';
import { deltaE00Of, labFromSpectrum, xyzFromSpectrum } from '../../src/core/colour/index.ts';
import { prepareDrawings } from '../../src/core/form/index.ts';
import { filmOf, overlapSpectra } from '../../src/core/ink/index.ts';
import { seeded } from '../../src/core/random.ts';
import {
  jobPartsOf,
  readPicture,
  runNames,
  separate,
  separated,
  type SeparateRequest,
  type Separation,
} from '../../src/core/separate/index.ts';
import { defaultMaterials } from '../../src/core/stencil/index.ts';
import { Cancelled, quietTask } from '../../src/core/task.ts';
import { JobSchema } from '../../src/core/job/schema/schema.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { tell } from '../../src/words/index.ts';

/**
 * A separation held against things outside it: a picture painted with known overlaps, colorjs.io (CIEDE2000, sRGB) as a second scorer on
 * the PNG proof, and resvg plus flood fill as a second judge of every stencil as written to a file.
 */
const namesOf = (separation: Separation): string[] => runNames(separation).map((one) => tell(one));
const studio = benchShelf();
const film = defaultMaterials.find((m) => m.id === 'film')!;
const inks = new Map(studio.shelf.map((pot) => [pot.id, pot.ink]));
const mmPerPx = 0.25,
  width = 320,
  height = 240;
const d50 = new Color('xyz-d50', [0.9642956764295677, 1, 0.8251046025104602]);

/** A job of our own: three transparent inks over one another in rounds. */
const job = [
  { ink: 'marigold', strength: 0.3, at: (x: number, y: number): boolean => Math.hypot(x - 110, y - 100) < 78 },
  { ink: 'rose', strength: 0.35, at: (x: number, y: number): boolean => Math.hypot(x - 190, y - 96) < 70 },
  { ink: 'cobalt', strength: 0.25, at: (x: number, y: number): boolean => Math.hypot(x - 158, y - 158) < 66 },
];
const jobCodes = Uint8Array.from({ length: width * height }, (_, i) =>
  job.reduce((code, layer, b) => code | (layer.at((i % width) + 0.5, Math.floor(i / width) + 0.5) ? 1 << b : 0), 0),
);

/** The job's print as a picture file whose white is the paper. */
function paintedPng(): Uint8Array {
  const spectra = overlapSpectra(
    studio.paper,
    job.map((l) => filmOf(inks.get(l.ink)!, l.strength)),
    studio.surface,
  );
  const paper = xyzFromSpectrum(studio.paper);
  const colours = Array.from({ length: 8 }, (_, code) => {
    const xyz = xyzFromSpectrum(spectra.slice(code * 36, code * 36 + 36));
    const seen = new Color('xyz-d50', [0, 1, 2].map((c) => (xyz[c] / paper[c]) * Number(d50.coords[c])) as [number, number, number])
      .to('srgb')
      .coords.map(Number);
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(-1e-3);
    return seen.map((v) => Math.round(Math.max(0, Math.min(1, v)) * 65535));
  });
  const data = new Uint16Array(width * height * 3);
  jobCodes.forEach((code, i) => data.set(colours[code], i * 3));
  return encodePng({ width, height, data, channels: 3, depth: 16 });
}

/** Soft tones of our own making: a sky, a hill, a round light. */
function scenePng(): Uint8Array {
  const random = seeded(11);
  const data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const hill = y > 150 + 24 * Math.sin(x / 40) ? 1 : 0,
        light = Math.exp(-((x - 220) ** 2 + (y - 70) ** 2) / 1800);
      const sky = [110 + y / 2, 150 + y / 4, 205 - y / 5],
        land = [70 + 30 * Math.sin(x / 25), 95 + 20 * Math.cos(y / 20), 45];
      for (let c = 0; c < 3; c++)
        data[(y * width + x) * 3 + c] = Math.max(
          0,
          Math.min(255, (hill ? land[c] : sky[c]) + light * [140, 90, -60][c] + 6 * random.normal()),
        );
    }
  return encodePng({ width, height, data, channels: 3 });
}

/** A bed of pebbles, of our own making: plenty to cut. */
function pebblesPng(): Uint8Array {
  const random = seeded(6);
  const stones = Array.from({ length: 60 }, () => [
    random.next() * width,
    random.next() * height,
    6 + 16 * random.next(),
    60 + 150 * random.next(),
    60 + 120 * random.next(),
    50 + 120 * random.next(),
  ]);
  const data = new Uint8Array(width * height * 3).fill(225);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      for (const [sx, sy, r, ...colour] of stones)
        if (Math.hypot(x - sx, y - sy) < r) data.set(colour.map(Math.round), (y * width + x) * 3);
    }
  return encodePng({ width, height, data, channels: 3 });
}

async function request(png: Uint8Array, more: Partial<SeparateRequest> = {}): Promise<SeparateRequest> {
  return {
    picture: await readPicture(png, 'picture.png'),
    sizeMm: { width: width * mmPerPx, height: height * mmPerPx },
    ...studio,
    layers: 3,
    material: film,
    seed: 3,
    effort: 0.1,
    ...more,
  };
}

let scene: Separation;

beforeAll(async () => {
  await prepareReaders();
  await prepareDrawings(await packageFile('@resvg/resvg-wasm/index_bg.wasm'));
  scene = await separated(await request(scenePng(), { registerSigmaMm: 0.4 }), quietTask);
});

test('a picture painted with the overlaps of a job comes back as that job: its masks, and ΔE00 under 0.5', async () => {
  const wishes = job.map((l) => ({ ink: l.ink, strength: l.strength, placeFixed: true }));
  const found = await separated(await request(paintedPng(), { wishes, knife: { priceMm: 0.3 } }), quietTask);
  expect(found.figures.inRegister.mean).toBeLessThan(0.5);
  found.layers.forEach((layer, b) => {
    const wrong = layer.mask.reduce((sum, v, i) => sum + (v === ((jobCodes[i] >> b) & 1) ? 0 : 1), 0);
    // Single pixels on a raster edge may fall either way when the knife rounds them off; the outline has about 450.
    expect(wrong).toBeLessThan(25);
    expect(layer.parts).toEqual([{ id: job[b].ink, share: job[b].strength }]);
  });
});

test('a second scorer, colorjs.io on the PNG proof, agrees with the mean and the 95 percent that are told', async () => {
  const proof = new Uint8Array(width * height * 3);
  scene.codes.forEach((code, i) => proof.set(scene.rgb.subarray(code * 3, code * 3 + 3), i * 3));
  const shown = decodePng(encodePng({ width, height, data: proof, channels: 3 })).data;
  const picture = decodePng(scenePng()).data;
  const paper = xyzFromSpectrum(studio.paper);
  const lab = (xyz: readonly number[]): Color => new Color('xyz-d50', xyz as [number, number, number]).to('lab');
  const random = seeded(2),
    differences: number[] = [];
  for (let k = 0; k < 3000; k++) {
    const i = random.below(width * height) * 3;
    const rgb = (data: ArrayLike<number>): [number, number, number] => [data[i] / 255, data[i + 1] / 255, data[i + 2] / 255];
    const wanted = new Color('srgb', rgb(picture)).to('xyz-d50').coords.map((v, c) => (Number(v) * paper[c]) / Number(d50.coords[c]));
    differences.push(lab(wanted).deltaE(new Color('srgb', rgb(shown)).to('lab'), '2000'));
  }
  differences.sort((a, b) => a - b);
  const mean = differences.reduce((a, b) => a + b, 0) / differences.length;
  // 3000 of 76,800 pixels: the sample's own scatter is about 2 percent.
  expect(Math.abs(mean / scene.figures.inRegister.mean - 1)).toBeLessThan(0.06);
  expect(Math.abs(differences[Math.floor(0.95 * differences.length)] / scene.figures.inRegister.p95 - 1)).toBeLessThan(0.1);
});

test('every stencil, written as a drawing, rendered by another program and flooded from its frame, is one sheet of paper', () => {
  expect(scene.layers).toHaveLength(3);
  for (const { stencil } of scene.layers) {
    expect(stencil.certificate.holds).toBe(true);
    const { minX, minY, maxX, maxY } = stencil.sheet;
    const d = stencil.paper.rings.map((ring) => `M${[...ring].map((v) => v.toFixed(3)).join(' ')}Z`).join('');
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${minX} ${minY} ${maxX - minX} ${maxY - minY}" width="${(maxX - minX) * 5}" height="${(maxY - minY) * 5}"><path fill-rule="evenodd" d="${d}"/></svg>`;
    const image = new Resvg(svg).render();
    const w = image.width,
      pixels = image.pixels;
    const paper = Uint8Array.from({ length: w * image.height }, (_, i) => (pixels[i * 4 + 3] > 127 ? 1 : 0));
    const total = paper.reduce((a, b) => a + b, 0);
    const stack = [0];
    let flooded = 0;
    expect(paper[0]).toBe(1);
    paper[0] = 0;
    while (stack.length > 0) {
      const i = stack.pop()!,
        x = i % w;
      flooded++;
      for (const j of [x > 0 ? i - 1 : -1, x + 1 < w ? i + 1 : -1, i - w, i + w])
        if (j >= 0 && j < paper.length && paper[j]) {
          paper[j] = 0;
          stack.push(j);
        }
    }
    expect(flooded / total).toBeGreaterThan(0.99999);
  }
});

test('the separation beats flat opaque inks, and tells what it can not reach and what the knife lost', () => {
  expect(scene.figures.inRegister.mean).toBeLessThan(scene.baseline.inRegister.mean);
  expect(scene.figures.atSigma.mean).toBeGreaterThanOrEqual(scene.figures.inRegister.mean - 0.05);
  expect(scene.outOfReachShare).toBeCloseTo(scene.outOfReach.reduce((sum, v) => sum + (v ? 1 : 0), 0) / scene.codes.length, 9);
  expect(scene.curve.map((p) => p.metres)).toEqual(scene.curve.map((p) => p.metres).toSorted((a, b) => b - a));
});

test('what a Job needs of the separation passes the Job document, and its outlines carry the area of the masks', () => {
  const parts = jobPartsOf(scene, { names: namesOf(scene), materialId: 'film' });
  const inkReadings = studio.shelf.map(({ id }) => ({ id, name: id, from: 'clear' }));
  const read = JobSchema.safeParse({
    schemaVersion: 1,
    title: 'Scene',
    image: parts.image,
    forms: parts.forms,
    cuts: parts.cuts,
    layers: parts.layers,
    inks: [...inkReadings, ...parts.inks],
  });
  expect(read.error?.issues ?? []).toEqual([]);
  parts.layers.forEach((layer, i) => {
    const form = parts.forms.find((f) => f.id === parts.cuts.find((c) => c.id === layer.cut)!.parts[0].form)!;
    const areaMm2 = Math.abs(
      form.outline.reduce(
        (sum, ring) => sum + ring.reduce((a, [x, y], k) => a + ring.at(k - 1)![0] * y - x * ring.at(k - 1)![1], 0) / 2,
        0,
      ),
    );
    const maskMm2 = scene.layers[i].mask.reduce((a, b) => a + b, 0) * mmPerPx ** 2;
    expect(Math.abs(areaMm2 / maskMm2 - 1)).toBeLessThan(0.02);
  });
});

test('the same seed gives the same stencils to the last point, another seed may not', async () => {
  const again = await separated(await request(scenePng(), { registerSigmaMm: 0.4 }), quietTask);
  expect(jobPartsOf(again, { names: namesOf(again) })).toEqual(jobPartsOf(scene, { names: namesOf(scene) }));
  expect(again.figures).toEqual(scene.figures);
});

test('drafts come first and get finer; stopped after the first, the best so far is cut all the same', async () => {
  const drafts = separate(await request(scenePng()), {
    report() {},
    async pause() {
      if (stop) throw new Cancelled();
    },
  });
  let stop = false;
  const first = await drafts.next();
  expect(first.done).toBe(false);
  stop = true;
  const last = await drafts.next();
  expect(last.done).toBe(true);
  const result = last.value as Separation;
  expect(result.stoppedEarly).toBe(true);
  expect(result.layers).toHaveLength(3);
  for (const { stencil } of result.layers) expect(stencil.certificate.pieces).toBe(1);
});

test('a budget of metres is kept, and less knife means a coarser print', async () => {
  const run = async (metres: number): Promise<Separation> =>
    separated(await request(pebblesPng(), { layers: 2, effort: 0.1, knife: { metres } }), quietTask);
  const short = await run(0.9),
    long = await run(1.25);
  expect(short.figures.knifeMetres).toBeLessThan(0.9 * 1.04);
  expect(long.figures.knifeMetres).toBeLessThan(1.25 * 1.04);
  expect(long.figures.knifeMetres).toBeGreaterThan(short.figures.knifeMetres);
  expect(long.figures.inRegister.mean).toBeLessThan(short.figures.inRegister.mean);
  const none = await separated(await request(pebblesPng(), { layers: 2, effort: 0.1, knife: { metres: 0.01 } }), quietTask);
  expect(none.problems.map((p) => p.code)).toContain('knife-budget-exceeded');
});

test('two cuts give four runs when window and piece are both printed', async () => {
  const pairs = await separated(await request(scenePng(), { layers: 4, cutPairs: true }), quietTask);
  expect(pairs.layers.map((l) => l.side)).toEqual(['window', 'piece', 'window', 'piece']);
  for (let cut = 0; cut < 2; cut++) {
    const [a, b] = [pairs.layers[2 * cut], pairs.layers[2 * cut + 1]];
    expect(b.region).toBe(a.region);
    expect(a.mask.every((v, i) => v + b.mask[i] === 1)).toBe(true);
  }
  const parts = jobPartsOf(pairs, { names: namesOf(pairs) });
  expect(parts.cuts).toHaveLength(2);
  expect(parts.layers).toHaveLength(4);
});

test('a sheet that carries two layers already is gone on from: they stay, one more is added, and the print gets nearer', async () => {
  const kept = scene.layers.slice(0, 2);
  const more = await separated(
    await request(scenePng(), { layers: 1, alreadyPrinted: kept.map((l) => ({ parts: l.parts, prints: l.stencil.prints })) }),
    quietTask,
  );
  expect(more.layers).toHaveLength(1);
  expect(more.layers[0].bit).toBe(2);
  // The first two bits are those of the scene, pixel for pixel.
  expect(more.codes.every((code, i) => (code & 3) === (scene.codes[i] & 3))).toBe(true);
  // The sheet as it was, before the new layer.
  let before = 0;
  more.codes.forEach((code, i) => {
    const c = (code & 3) * 3,
      t = i * 3;
    before += deltaE00Of(
      more.target[t],
      more.target[t + 1],
      more.target[t + 2],
      more.overlapLab[c],
      more.overlapLab[c + 1],
      more.overlapLab[c + 2],
    );
  });
  expect(more.figures.inRegister.mean).toBeLessThan(before / more.codes.length - 0.1);
});

test('a region marked as important comes out nearer to the picture than without the mark', async () => {
  const weight = new Float32Array(32 * 24).fill(1);
  for (let y = 4; y < 10; y++) for (let x = 18; x < 27; x++) weight[y * 32 + x] = 12;
  const inside = (s: Separation): number => {
    let sum = 0,
      n = 0;
    for (let y = 40; y < 100; y++)
      for (let x = 180; x < 270; x++) {
        const i = y * s.width + x,
          c = s.codes[i] * 3;
        sum += new Color('lab', [...s.target.subarray(i * 3, i * 3 + 3)] as [number, number, number]).deltaE(
          new Color('lab', [...s.overlapLab.subarray(c, c + 3)] as [number, number, number]),
          '2000',
        );
        n++;
      }
    return sum / n;
  };
  const marked = await separated(await request(scenePng(), { importance: { width: 32, height: 24, weight } }), quietTask);
  const plain = await separated(await request(scenePng()), quietTask);
  expect(inside(marked)).toBeLessThan(inside(plain));
});

test('one flat colour, inks all alike, contrast kept: each gives an answer, not an accident', async () => {
  const flat = encodePng({ width: 40, height: 30, data: new Uint8Array(3600).map((_, i) => [180, 90, 60][i % 3]), channels: 3 });
  const one = await separated(await request(flat), quietTask);
  expect(one.figures.inRegister.mean).toBeLessThan(4);
  const same = await separated(
    await request(scenePng(), { effort: 0.1, shelf: studio.shelf.slice(0, 3).map((p) => ({ id: p.id, ink: studio.shelf[9].ink })) }),
    quietTask,
  );
  expect(same.problems.map((p) => p.code)).toContain('inks-all-same');
  for (const intent of ['lightness', 'chroma', 'contrast'] as const) {
    expect(
      (await separated(await request(scenePng(), { intent, layers: 2, effort: 0.1 }), quietTask)).figures.inRegister.mean,
    ).toBeLessThan(20);
  }
});

test('what can not be done is said in words, all of it at once', async () => {
  const codes = async (more: Partial<SeparateRequest>): Promise<string[]> => {
    const error = await request(scenePng(), more)
      .then((r) => separated(r, quietTask))
      .then(
        () => undefined,
        (e: unknown) => e,
      );
    expect(error).toBeInstanceOf(ProblemError);
    return (error as ProblemError).problems.map((p) => p.code);
  };
  expect(await codes({ layers: 0 })).toEqual(['no-layers']);
  expect(await codes({ layers: 9 })).toEqual(['too-many-layers']);
  expect(await codes({ layers: 3, cutPairs: true, shelf: [] })).toEqual(['pairs-need-even', 'shelf-empty']);
  expect(await codes({ wishes: [{ ink: 'no such pot' }], registerSigmaMm: -1, knife: { metres: 0 } })).toEqual([
    'ink-unknown',
    'register-out-of-range',
    'budget-out-of-range',
  ]);
  const dot = await readPicture(encodePng({ width: 1, height: 1, data: new Uint8Array(3), channels: 3 }), 'dot.png');
  expect(await codes({ picture: dot })).toEqual(['picture-too-small']);
  const clear = new Float64Array(36);
  expect(await codes({ shelf: [{ id: 'clear', ink: { k: clear, s: clear } }] })).toEqual(['inks-colourless']);
  expect(labFromSpectrum(studio.paper)[0]).toBeGreaterThan(90);
});
