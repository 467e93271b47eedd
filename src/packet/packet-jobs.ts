import { parseJob, type JobBundle } from '../core/job/index.ts';

/** Jobs for tests: small ones, from outlines, that need no drawing. */

const lab = (L: number, a: number, b: number): object => ({ kind: 'lab', lab: [L, a, b] });
const ink = (id: string, name: string, over: object): object => ({ id, name, from: 'one-ground', ground: lab(95, 0, 0), over });
const square = (x: number, y: number, size: number): number[][] => [
  [x, y],
  [x + size, y],
  [x + size, y + size],
  [x, y + size],
];

/** Two layers, one of them with an island, on one paper. */
export function smallJob(changes: object = {}): JobBundle {
  const job = parseJob({
    schemaVersion: 1,
    title: 'Two squares',
    image: { widthMm: 80, heightMm: 60 },
    stencilMarginMm: 20,
    materials: [{ id: 'film', name: 'Film', thicknessMm: 0.12, leastBridgeMm: 2, leastOpeningMm: 1, prints: [200, 1000] }],
    forms: [
      { id: 'ring', name: 'Ring', outline: [square(0, 0, 40), square(12, 12, 16)] },
      { id: 'block', name: 'Block', outline: [square(0, 0, 30)] },
    ],
    cuts: [
      { id: 'ring', name: 'Ring', material: 'film', parts: [{ form: 'ring', xMm: 30, yMm: 30 }] },
      { id: 'block', name: 'Block', material: 'film', parts: [{ form: 'block', xMm: 50, yMm: 30 }] },
    ],
    layers: [
      { id: 'ring', name: 'Ring', cut: 'ring', side: 'window', ink: 'blue', strength: 0.6 },
      { id: 'block', name: 'Block', cut: 'block', side: 'window', ink: 'yellow', strength: 1 },
    ],
    inks: [ink('blue', 'Blue', lab(40, 0, -45)), ink('yellow', 'Yellow', lab(88, -5, 80))],
    papers: [{ id: 'white', name: 'White', reading: lab(95, 0, 0), widthMm: 120, heightMm: 100, count: 4 }],
    edition: { target: 2 },
    ...changes,
  });
  return { job, attachments: new Map() };
}

/** Everything at its longest: eight layers, names that fill lines, letters the fonts lack, hundreds of sheets, a large image, inches. */
export function hardJob(): JobBundle {
  const long = 'Very long name that no card was ever made for, with every kind of word in it and no end';
  const side = 14;
  const base = smallJob().job;
  return smallJob({
    title: `${long} 海の本 — ${long}`,
    maker: long,
    units: 'in',
    image: { widthMm: 220, heightMm: 280 },
    stencilMarginMm: 50,
    forms: base.forms,
    inks: base.inks.map((i) => ({ ...i, name: `${i.name} ${long}` })),
    cuts: Array.from({ length: 8 }, (_, i) => ({
      id: `c${i}`,
      name: long,
      material: 'film',
      parts: [{ form: i % 2 ? 'block' : 'ring', xMm: 60 + i * side, yMm: 80 + i * side, scale: 1 + i / 8 }],
    })),
    layers: Array.from({ length: 8 }, (_, i) => ({
      id: `l${i}`,
      name: `${long} ${i}`,
      cut: `c${i}`,
      side: i === 3 ? 'piece' : 'window',
      ink: i === 7 ? null : i % 2 ? 'yellow' : 'blue',
      strength: 0.3 + i / 12,
      note: long,
      ...(i % 2 ? { offContactMm: 3 + 2 * i } : {}),
    })),
    papers: Array.from({ length: 2 }, (_, i) => ({
      id: `p${i}`,
      name: `${long} ${i}`,
      reading: lab(92 - i, i, 2 * i),
      widthMm: 300,
      heightMm: 360 + i,
      count: 180,
    })),
    screen: { insideWidthMm: 700, insideHeightMm: 900, mesh: { perCm: 77, threadMicrons: 48 }, hingeLiftMm: 20, riserStepMm: 3 },
    edition: { target: 60, workshop: long },
    day: { hands: 3, screens: 3 },
  });
}
