import { expect, test } from 'vitest';
import { askLines } from '../../src/core/asks/index.ts';
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
