import { expect, test } from 'vitest';
import { askLines } from '../../src/core/asks/index.ts';
import { labFromXyz, srgbFromXyz, xyzFromLab } from '../../src/core/colour/index.ts';
import { lineWays } from '../../src/core/halftone/index.ts';
import { regionBox } from '../../src/core/form/index.ts';
import type { Codes } from '../../src/core/print/index.ts';
import { certify } from '../../src/core/stencil/index.ts';
import type { Picture } from '../../src/core/image/index.ts';
import { parseJob } from '../../src/core/job/index.ts';
import { plan } from '../../src/core/plan/index.ts';
import { toneJob } from './halftone-jobs.ts';

const [width, height] = [160, 120];
/** A ball in light from above: every tone, and edges. */
const data = new Uint8Array(width * height * 3);
for (let y = 0; y < height; y++)
  for (let x = 0; x < width; x++) {
    const r = Math.hypot(x - 80, y - 60) / 50;
    const light = r < 1 ? 255 * Math.max(0, 0.95 - 0.8 * ((y - 10) / 100) * Math.sqrt(1 - r * r)) : 225 - y;
    data.fill(Math.round(light), (y * width + x) * 3, (y * width + x) * 3 + 3);
  }
const ball: Picture = { width, height, pixels: { kind: 'srgb8', data }, format: 'PNG', problems: [] };
const shelf = parseJob({
  ...toneJob('FOGRA39L', 'CMY', 'measured', false),
  image: { widthMm: 160, heightMm: 120 },
  materials: [{ id: 'film', name: 'Film', thicknessMm: 0.1, leastBridgeMm: 1.5, leastOpeningMm: 1, prints: [50, 100] }],
  papers: [{ id: 'paper', name: 'Paper', reading: { kind: 'lab', lab: [95, 0, -2] }, widthMm: 200, heightMm: 160, count: 5 }],
});

test.each(lineWays)('tone as %s: one piece, nothing narrower than the material holds', (way) => {
  const answer = askLines(shelf, ball, { way, pitchMm: 6, angleDeg: 30, ink: 'c' });
  const made = plan({ job: answer.job, attachments: new Map() });
  const [layer] = made.layers;
  expect(layer.stencil.certificate.holds).toBe(true);
  expect(layer.stencil.certificate.pieces).toBe(1);
  // Nothing to mend: no island, no bridge of the planner's own.
  expect(layer.stencil.islands).toEqual([]);
  expect(layer.stencil.bridges).toEqual([]);
  // The check that knows nothing of lines, on the sheet as it is cut.
  const { leastBridgeMm, leastOpeningMm } = shelf.materials[0];
  const again = certify(layer.stencil.paper, layer.stencil.sheet, {
    leastBridgeMm: leastBridgeMm * 0.97,
    leastOpeningMm: leastOpeningMm * 0.95,
  });
  expect(again.holds).toBe(true);
  // Nor is any bare place of the proof cut off from its edge: filled from a corner, all of it is reached.
  expect(unreached(made.codes)).toBe(0);
  // And nothing prints beyond the image.
  const box = regionBox(layer.stencil.prints);
  expect(Math.min(box.minX, box.minY, 160 - box.maxX, 120 - box.maxY)).toBeGreaterThan(-0.01);
  expect(layer.written.machine).not.toBeNull();
  expect(layer.stencil.knife.metres).toBeGreaterThan(1);
  // What is open follows the tone: the dark lower half has more than the light upper one.
  const { data: codes } = made.codes;
  const open = (half: Uint8Array): number => half.reduce((sum, code) => sum + (code !== 0 ? 1 : 0), 0);
  const middle = codes.length >> 1;
  expect(open(codes.subarray(middle))).toBeGreaterThan(1.2 * open(codes.subarray(0, middle)));
});

function unreached({ data, width, height }: Codes): number {
  const seen = new Uint8Array(data.length);
  const queue = [0];
  seen[0] = 1;
  while (queue.length > 0) {
    const at = queue.pop()!;
    const x = at % width;
    for (const [next, there] of [
      [at - 1, x > 0],
      [at + 1, x < width - 1],
      [at - width, at >= width],
      [at + width, at < width * (height - 1)],
    ] as const)
      if (there && data[next] === 0 && seen[next] === 0) {
        seen[next] = 1;
        queue.push(next);
      }
  }
  return data.reduce((sum, code, i) => sum + (code === 0 && seen[i] === 0 ? 1 : 0), 0);
}

test('lines along the edges follow them: around a ball they turn with its rim', () => {
  const { job } = askLines(shelf, ball, { way: 'flow', pitchMm: 5, ink: 'c' });
  const middles = job.forms[0].outline!.map((ring) => ring.slice(0, ring.length / 2));
  let along = 0,
    all = 0;
  for (const line of middles)
    for (let i = 4; i < line.length; i += 4) {
      const [x, y] = line[i];
      const r = Math.hypot(x - 80, y - 60);
      if (r < 42 || r > 58) continue;
      const [dx, dy] = [x - line[i - 4][0], y - line[i - 4][1]];
      all++;
      if (Math.abs(dx * (x - 80) + dy * (y - 60)) < 0.35 * r * Math.hypot(dx, dy)) along++;
    }
  expect(all).toBeGreaterThan(50);
  expect(along / all).toBeGreaterThan(0.8);
});

test('lines closer than the material holds are refused with what it needs', () => {
  expect(() => askLines(shelf, ball, { way: 'parallel', pitchMm: 2 })).toThrow();
});

test.each(['parallel', 'hatch', 'rings', 'holes'] as const)(
  'tone as %s is as light as the ink prints it: a grey wedge, field by field',
  (way) => {
    // Six flat fields in even steps of lightness, printed in a cyan that is read.
    const [w, h] = [240, 40];
    const wedge = new Uint8Array(w * h * 3);
    const light = (field: number): number => 0.1 + 0.16 * field;
    for (let y = 0; y < h; y++)
      for (let x = 0; x < w; x++) {
        const [r] = srgbFromXyz(xyzFromLab([100 * light(Math.floor(x / 40)), 0, 0])).rgb;
        wedge.fill(Math.round(r), (y * w + x) * 3, (y * w + x) * 3 + 3);
      }
    const picture: Picture = { width: w, height: h, pixels: { kind: 'srgb8', data: wedge }, format: 'PNG', problems: [] };
    const job = {
      ...shelf,
      image: { ...shelf.image, widthMm: 240, heightMm: 40 },
      papers: shelf.papers.map((p) => ({ ...p, widthMm: 280 })),
    };
    const answer = askLines(job, picture, { way, pitchMm: way === 'holes' ? 7 : 5, angleDeg: 45, ink: 'c' });
    const { codes, papers } = plan({ job: answer.job, attachments: new Map() });
    const [bare, solid] = [0, 1].map((code) => xyzFromLab(papers[0].overlaps.find((o) => o.code === code)!.lab)[1]);
    expect(answer.bareL).toBeCloseTo(labFromXyz([0, bare, 0])[0], 0);
    const off = Array.from({ length: 6 }, (_, field) => {
      // The field's middle, away from its neighbours and the image's edge.
      let [open, all] = [0, 0];
      for (let y = 0.2 * codes.height; y < 0.8 * codes.height; y++)
        for (let x = (field + 0.2) / 6; x < (field + 0.8) / 6; x += 1 / codes.width, all++)
          if (codes.data[Math.floor(y) * codes.width + Math.floor(x * codes.width)] !== 0) open++;
      const seen = labFromXyz([0, bare + (solid - bare) * (open / all), 0])[0];
      return seen - (answer.darkestL + (answer.bareL - answer.darkestL) * light(field));
    });
    // Taken as shares of the area, as if ink were black and the eye a light meter, they would be off by 10 and more.
    for (const d of off) expect(Math.abs(d)).toBeLessThan(2);
    expect(answer.darkestL).toBeLessThan(85);
  },
);

test('holes are of the punches one owns, and nothing else, and still hold the tone between them', () => {
  const punchesMm = [2, 3.5, 5];
  const { job, cut } = askLines({ ...shelf, knife: { punchesMm } }, ball, { way: 'holes', pitchMm: 7, ink: 'c' });
  const across = job.forms[0].outline!.map((ring) => Math.max(...ring.map(([x]) => x)) - Math.min(...ring.map(([x]) => x)));
  expect(across.length).toBeGreaterThan(100);
  for (const d of across) expect(Math.min(...punchesMm.map((p) => Math.abs(p - d)))).toBeLessThan(0.01);
  expect(new Set(across.map((d) => Math.round(d))).size).toBe(3);
  const rows = (7 * 7 * Math.sqrt(3)) / 2;
  expect(cut.darkest).toBeCloseTo((Math.PI * 25) / 4 / rows, 2);
});
