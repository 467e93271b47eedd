import { convertIndexedToRgb, decode as decodePng, encode as encodePng } from 'fast-png';
import { beforeAll, expect, test } from 'vitest';
import { prepare, readFonts } from '../../src/cli/assets.ts';
import { readJobFile, writeJobFile, type Job } from '../../src/core/job/index.ts';
import { jobOfSeparation, separateRequest, type SeparateQuestion } from '../../src/core/asks/index.ts';
import { plan, type Plan } from '../../src/core/plan/index.ts';
import { readPicture, runNames, separated, ways, type Picture, type Separation } from '../../src/core/separate/index.ts';
import { quietTask } from '../../src/core/task.ts';
import { makePacket, type PacketFile } from '../../src/packet/index.ts';
import { tell, tellProblem } from '../../src/words/index.ts';
import { tidePool } from '../browser/bench-page.ts';

/**
 * From a picture to a printed packet: what the separation showed must be what the Plan proves, after the job went through its
 * file. Codes of the separation are on its own raster of 0.25 mm; the Plan cuts and rasterises the outlines anew at 300 an inch.
 * The PNG proof is read back by fast-png.
 */
const image = { widthMm: 60, heightMm: 80 };
const bundle = tidePool();
const studio: Job = { ...bundle.job, image };

/** A harbour of our own making: sky, a sun, a headland, water with its light. */
function harbourPng(): Uint8Array {
  const width = 180,
    height = 240,
    data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const sun = Math.hypot(x - 120, y - 66) < 26,
        land = y > 104 - 34 * Math.exp(-(((x - 30) / 44) ** 2)) && y < 132,
        water = y >= 132;
      const glint = water && Math.abs(x - 120) < 10 + (y - 132) / 4 && y % 24 < 12;
      const colour = sun ? [245, 205, 90] : land ? [46, 62, 60] : glint ? [240, 214, 150] : water ? [60, 120, 142] : [196, 214, 216];
      data.set(colour, (y * width + x) * 3);
    }
  return encodePng({ width, height, data, channels: 3 });
}

const namesOf = (separation: Separation, language = 'en'): string[] =>
  runNames(separation).map((one) => tell(one, { language, units: 'mm' }));

interface Printed {
  readonly separation: Separation;
  readonly job: Job;
  readonly made: Plan;
}

let picture: Picture;
let printed: Printed;
let paired: Printed;
let over: Printed;

async function print(job: Job, ask: Omit<SeparateQuestion, 'picture'>, after = false): Promise<Printed> {
  const separation = await separated(separateRequest(job, { picture, effort: 0.3, registerSigmaMm: 0.2, ...ask }), quietTask);
  const saved = readJobFile(
    writeJobFile({
      job: jobOfSeparation(job, separation, namesOf(separation), { materialId: ask.materialId, after }),
      attachments: bundle.attachments,
    }),
  );
  return { separation, job: saved.job, made: plan(saved) };
}

beforeAll(async () => {
  await prepare();
  picture = await readPicture(harbourPng(), 'harbour.png');
  printed = await print(studio, { layers: 3, materialId: 'film' });
  paired = await print(studio, { layers: 4, cutPairs: true, materialId: 'film' });
  over = await print(printed.job, { layers: 1, materialId: 'film', over: printed.made }, true);
});

const errorsOf = (made: Plan): string[] => made.problems.filter((p) => p.severity === 'error').map((p) => `${p.code} ${tellProblem(p)}`);

/** Share of the pixels of the separation where the Plan has the same layers, looked up at the same place of the image. */
function agreement({ separation, made }: Printed): number {
  const { codes } = made;
  // The Plan's layers in laydown order are the separation's bits, those without any print left out.
  const live = separation.layers.filter((l) => l.region.rings.length > 0).map((l) => l.bit);
  const below = made.layers.length - live.length;
  const bitOf = new Map(made.layers.map((layer, i) => [layer.bit, i < below ? i : live[i - below]]));
  let same = 0;
  for (let y = 0; y < separation.height; y++)
    for (let x = 0; x < separation.width; x++) {
      const u = Math.floor(((x + 0.5) / separation.width) * codes.width),
        v = Math.floor(((y + 0.5) / separation.height) * codes.height);
      const theirs = codes.data[v * codes.width + u];
      let code = 0;
      for (const [bit, to] of bitOf) if (theirs & (1 << bit)) code |= 1 << to;
      if (code === separation.codes[y * separation.width + x]) same++;
    }
  return same / (separation.width * separation.height);
}

test('a picture becomes a job without a thing to mend, read back from its own file', () => {
  for (const { made } of [printed, paired, over]) expect(errorsOf(made)).toEqual([]);
  expect(printed.made.layers).toHaveLength(printed.separation.layers.filter((l) => l.region.rings.length > 0).length);
  expect(printed.made.layers.length).toBeGreaterThanOrEqual(2);
});

test('the Plan lays the same layers on the same places as the separation showed', () => {
  // Pixels across an outline may fall either way; at 0.25 mm and these lengths of outline that is some hundredths.
  expect(agreement(printed)).toBeGreaterThan(0.97);
  expect(agreement(paired)).toBeGreaterThan(0.97);
  expect(agreement(over)).toBeGreaterThan(0.97);
});

test('bridges lie in the Plan where the separation laid them: it had the picture in view, the job has not', async () => {
  const width = 160,
    height = 160,
    data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const far = Math.hypot(x - 80, y - 80),
        ring = far > 34 && far < 62;
      // The ring fades towards one side: there a bridge is seen least, though nowhere is it shorter.
      const dark = ring ? 0.5 + 0.5 * Math.max(0, Math.cos(Math.atan2(y - 80, x - 80) - 2)) : 0;
      data.set(ring ? [236 - 190 * dark, 226 - 150 * dark, 206 - 120 * dark] : [248, 246, 240], (y * width + x) * 3);
    }
  const square: Job = { ...studio, image: { widthMm: 80, heightMm: 80 } };
  const rings = await readPicture(encodePng({ width, height, data, channels: 3 }), 'rings.png');
  const separation = await separated(separateRequest(square, { picture: rings, layers: 1, materialId: 'film', effort: 0.3 }), quietTask);
  const saved = readJobFile(
    writeJobFile({
      job: jobOfSeparation(square, separation, namesOf(separation), { materialId: 'film' }),
      attachments: bundle.attachments,
    }),
  );
  const live = separation.layers.filter((l) => l.region.rings.length > 0),
    made = plan(saved);
  expect(live.reduce((sum, l) => sum + l.stencil.bridges.length, 0)).toBeGreaterThan(0);
  live.forEach((layer, i) => {
    const stencil = made.layers[i].stencil!;
    expect(stencil.certificate.holds).toBe(true);
    expect(stencil.bridges).toHaveLength(layer.stencil.bridges.length);
    stencil.bridges.forEach((bridge, k) => {
      const laid = layer.stencil.bridges[k];
      expect(bridge.pinned).toBe(true);
      expect(Math.abs(bridge.areaMm2 - laid.areaMm2)).toBeLessThan(0.15 * laid.areaMm2 + 0.5);
      expect(Math.hypot(bridge.line[0] - laid.line[0], bridge.line[1] - laid.line[1])).toBeLessThan(0.01);
    });
  });
});

test('the Plan foresees the colours that the separation promised: strengths and mixes survive', () => {
  const { separation, job } = printed;
  // The ridge along a stencil's edges comes on top in the Plan, with the sheet that is cut; here one without thickness.
  expect(job.materials.length).toBeGreaterThan(0);
  const thin = { ...job, materials: job.materials.map((m) => ({ ...m, thicknessMm: 0.001 })) };
  const made = plan({ job: thin, attachments: bundle.attachments });
  const shown = new Map<number, number>();
  for (const code of separation.codes) shown.set(code, (shown.get(code) ?? 0) + 1);
  const live = separation.layers.filter((l) => l.region.rings.length > 0);
  let compared = 0;
  for (const [code, count] of shown) {
    if (count < separation.codes.length * 0.01) continue;
    const ids = live.filter((l) => code & (1 << l.bit)).map((l) => made.layers[live.indexOf(l)].id);
    const overlap = made.papers[0].overlaps.find((o) => o.layers.length === ids.length && ids.every((id) => o.layers.includes(id)));
    expect(overlap, `overlap of ${ids.join(' + ') || 'nothing'}`).toBeDefined();
    // Shares are written to a thousandth.
    const lab = separation.overlapLab.subarray(code * 3, code * 3 + 3);
    for (let c = 0; c < 3; c++) expect(Math.abs(overlap!.lab[c] - lab[c])).toBeLessThan(0.6);
    compared++;
  }
  expect(compared).toBeGreaterThanOrEqual(3);
});

test('window and piece of one cut make two runs: half as many cuts as runs', () => {
  const { job, made } = paired;
  expect(made.layers).toHaveLength(2 * job.cuts.length);
  for (const cut of job.cuts)
    expect(
      job.layers
        .filter((l) => l.cut === cut.id)
        .map((l) => l.side)
        .sort(),
    ).toEqual(['piece', 'window']);
});

test('a run over what is printed leaves the runs below as they were', () => {
  const before = printed.job.layers.map((l) => l.id);
  expect(over.job.layers.slice(0, before.length).map((l) => l.id)).toEqual(before);
  expect(over.job.layers.length).toBe(before.length + over.separation.layers.filter((l) => l.region.rings.length > 0).length);
});

test('the packet is made of it: a cut sheet for each stencil, and a proof whose pixels are the print', async () => {
  const files = await makePacket({ job: printed.job, attachments: bundle.attachments }, printed.made, {
    fonts: readFonts(),
    printer: { page: 'a4', marginMm: 12 },
  });
  const paths = files.map((f: PacketFile) => f.path);
  expect(paths).toContain('packet.pdf');
  expect(paths.filter((p) => /^cut\/.*\.svg$/.test(p)).length).toBeGreaterThanOrEqual(printed.made.cuts.length);
  const proof = decodePng(files.find((f) => f.path === `proofs/${printed.made.papers[0].id}.png`)!.bytes);
  const shown = proof.palette ? convertIndexedToRgb(proof) : proof.data;
  const step = proof.palette ? 3 : proof.channels;
  const { separation } = printed;
  let far = 0,
    looked = 0;
  for (let y = 2; y < separation.height; y += 5)
    for (let x = 2; x < separation.width; x += 5) {
      const at =
        Math.floor(((y + 0.5) / separation.height) * proof.height) * proof.width + Math.floor(((x + 0.5) / separation.width) * proof.width);
      const rgb = shown.slice(at * step, at * step + 3);
      const code = separation.codes[y * separation.width + x];
      looked++;
      if ([0, 1, 2].some((c) => Math.abs(Number(rgb[c]) - separation.rgb[code * 3 + c]) > 4)) far++;
    }
  expect(looked).toBeGreaterThan(2000);
  expect(far / looked).toBeLessThan(0.03);
}, 60_000);

test('made again, a picture leaves no pots of the last time behind, and no name tells a place in the order', () => {
  const names = namesOf(printed.separation),
    again = jobOfSeparation(printed.job, printed.separation, names, { materialId: 'film' });
  expect(again.inks.length).toBe(printed.job.inks.length);
  expect(again.layers.map((l) => l.name)).toEqual(printed.job.layers.map((l) => l.name));
  for (const layer of again.layers) expect(layer.name).not.toMatch(/run/i);
  const twice = jobOfSeparation(printed.job, printed.separation, names, { after: true });
  expect(twice.inks.length).toBeGreaterThanOrEqual(printed.job.inks.length);
  expect(new Set(twice.layers.map((l) => l.name)).size).toBe(twice.layers.length);
});

/** A picture of known places: sky above, sea below, a boat in the middle, night around it. */
const flatPng = (colourAt: (x: number, y: number) => number[]): Uint8Array => {
  const size = 120;
  const data = Uint8Array.from({ length: size * size * 3 }, (_, i) => {
    const p = Math.floor(i / 3);
    return colourAt((p % size) / size, Math.floor(p / size) / size)[i % 3];
  });
  return encodePng({ width: size, height: size, data, channels: 3 });
};

test('runs are called by what they print, each way and in both languages', async () => {
  const square: Job = { ...studio, image: { widthMm: 60, heightMm: 60 } };
  const made = async (colourAt: (x: number, y: number) => number[], ask: Omit<SeparateQuestion, 'picture'>): Promise<Separation> =>
    separated(
      separateRequest(square, {
        picture: await readPicture(flatPng(colourAt), 'places.png'),
        effort: 0.1,
        registerSigmaMm: 0,
        materialId: 'film',
        ...ask,
      }),
      quietTask,
    );
  const tones = [250, 190, 130, 80, 30];
  const ladder = (x: number): number[] => tones.map((v) => [v, v, v])[Math.min(4, Math.floor(5 * x))];
  for (const way of ways) {
    const one = await made(ladder, { layers: 3, way, key: way === 'light' });
    const said = namesOf(one),
      job = jobOfSeparation(square, one, said);
    expect(new Set(job.layers.map((l) => l.name)).size).toBe(job.layers.length);
    expect(namesOf(one)).toEqual(said);
    const german = namesOf(one, 'de');
    for (const [i, name] of german.entries()) {
      expect(name).not.toMatch(/separate\.|undefined/);
      expect(name).not.toBe(said[i]);
    }
    if (way === 'light') expect([said.at(-1), german.at(-1)]).toEqual(['Key', 'Zeichnung']);
  }
  // Five bare tones, each laid inside the one before: from light to dark, whatever the pots.
  const order = ['Light ground', 'Pale tones', 'Light tones', 'Ground', 'Middle tones', 'Dark ground', 'Dark tones', 'Shadows'];
  const nested = namesOf(await made(ladder, { layers: 4, way: 'light' })).map((name) => order.indexOf(name.split(',')[0]));
  expect(nested).not.toContain(-1);
  expect(nested).toEqual(nested.toSorted((a, b) => a - b));
  expect(new Set(nested).size).toBeGreaterThan(2);
  // One dark place on bare paper is told by where it lies.
  const places: readonly (readonly [(x: number, y: number) => boolean, string])[] = [
    [(_, y) => y < 0.3, 'Shadows, top'],
    [(x) => x > 0.7, 'Shadows, right'],
    [(x, y) => Math.hypot(x - 0.5, y - 0.5) < 0.2, 'Shadows, centre'],
    [(x, y) => Math.hypot(x - 0.5, y - 0.5) > 0.48, 'Background, dark'],
    [(x, y) => Math.hypot(x - 0.5, y - 0.5) > 0.2, 'Dark ground'],
  ];
  for (const [isDark, name] of places)
    expect(namesOf(await made((x, y) => (isDark(x, y) ? [40, 44, 60] : [252, 250, 244]), { layers: 1 }))).toEqual([name]);
});
