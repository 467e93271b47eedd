import { expect, test } from 'vitest';
import { hardJob, smallJob } from '../src/packet/packet-jobs.ts';
import { createMemory, createPlanner, recolourDrawn } from '../src/core/plan/index.ts';

test('as drawn, the print differs from its Plan along bridges only, and its colours by what the ridges add', () => {
  const planner = createPlanner();
  const bundle = smallJob();
  const drawn = planner.drawn(bundle)!;
  const plan = planner.plan(bundle);
  expect([drawn.codes.width, drawn.codes.height, drawn.codes.mmPerPx]).toEqual([plan.codes.width, plan.codes.height, plan.codes.mmPerPx]);
  const ring = plan.layers.find((l) => l.id === 'ring')!;
  const bit = 1 << ring.bit;
  let [lost, elsewhere] = [0, 0];
  drawn.codes.data.forEach((code, i) => {
    if (code === plan.codes.data[i]) return;
    if (code === (plan.codes.data[i] | bit)) lost++;
    else elsewhere++;
  });
  // The ring’s middle hangs on bridges, which the drawing knows nothing of.
  const { mmPerPx } = plan.codes;
  expect(ring.stencil.bridges.length).toBeGreaterThan(0);
  expect(lost * mmPerPx * mmPerPx).toBeGreaterThan(20);
  expect(elsewhere).toBeLessThan(lost / 50);
  const [soon, then] = [drawn.papers[0], plan.papers[0]];
  expect(soon.palette[0]).toBe(then.palette[0]);
  const off = [0, 8, 16].map((shift) => Math.abs(((soon.palette[bit] >>> shift) & 255) - ((then.palette[bit] >>> shift) & 255)));
  expect(Math.max(...off)).toBeLessThan(12);
  expect(drawn.layers.map((l) => [l.id, l.run, l.bit, l.inkId])).toEqual(plan.layers.map((l) => [l.id, l.run, l.bit, l.inkId]));
});

test('its colours follow ink, strength and order; anything else asks for it anew', () => {
  const planner = createPlanner();
  const bundle = smallJob();
  const drawn = planner.drawn(bundle)!;
  const memory = createMemory();
  const layers = bundle.job.layers.toReversed().map((l) => ({ ...l, strength: 0.3 }));
  const weaker = recolourDrawn(drawn, { ...bundle.job, layers }, memory)!;
  const anew = createPlanner().drawn(smallJob({ layers }))!;
  expect(weaker.codes).toBe(drawn.codes);
  expect(weaker.papers).toEqual(anew.papers);
  expect(weaker.papers[0].palette).not.toEqual(drawn.papers[0].palette);
  expect(weaker.layers.map((l) => [l.id, l.run, l.bit, l.swatch])).toEqual(anew.layers.map((l) => [l.id, l.run, l.bit, l.swatch]));
  const out = bundle.job.layers.map((l) => (l.id === 'ring' ? { ...l, off: true } : l));
  const without = recolourDrawn(drawn, { ...bundle.job, layers: out }, memory)!;
  expect(without.layers.map((l) => [l.id, l.run])).toEqual([['block', 1]]);
  expect(without.papers[0].palette[1 << drawn.layers.find((l) => l.id === 'ring')!.bit]).toBe(drawn.papers[0].palette[0]);
  expect(recolourDrawn(without, bundle.job, memory), 'nothing is left to take it in with').toBeNull();
  expect(recolourDrawn(drawn, { ...bundle.job, image: { widthMm: 90, heightMm: 60 } }, memory)).toBeNull();
});

test('what only the whole Plan can show is not drawn', () => {
  const read = [{ paper: 'white', layers: ['ring'], reading: { kind: 'lab', lab: [60, 0, -20] } }];
  const bundle = smallJob({ proofReadings: read });
  expect(bundle.job.proofReadings.length).toBe(1);
  expect(createPlanner().drawn(bundle)).toBeNull();
  const [paper] = smallJob().job.papers;
  expect(createPlanner().drawn(smallJob({ papers: [] }))).toBeNull();
  expect(createPlanner().drawn(smallJob({ papers: [{ ...paper, printed: { picture: 'moon.png' } }] }))).toBeNull();
  expect(createPlanner().drawn(smallJob({ layers: [] }))).toBeNull();
  expect(createPlanner().drawn(hardJob())?.layers.length).toBe(8);
});
