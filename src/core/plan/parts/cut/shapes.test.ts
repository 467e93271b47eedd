import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { cutsByColour } from '../../../asks/index.ts';
import { common, openDrawing, prepareDrawings, prepareLetters, regionArea } from '../../../form/index.ts';
import { checkJob, currentSchemaVersion, madeKinds, parseJob, usualShape, type Job } from '../../../job/index.ts';
import { plan } from '../../plan.ts';

const font = (name: string): Uint8Array => new Uint8Array(readFileSync(`assets/OpenSans-${name}.ttf`));
beforeAll(async () => {
  await prepareDrawings(readFileSync('node_modules/@resvg/resvg-wasm/index_bg.wasm'));
  prepareLetters({ regular: font('Regular'), semibold: font('Semibold'), bold: font('Bold') });
});

const image = { widthMm: 120, heightMm: 160 };
const jobWith = (forms: readonly object[]): Job => parseJob({ schemaVersion: currentSchemaVersion, title: 'Shapes', image, forms });

/** A red square, a blue one on it, a yellow one beside it; in a drawing twice as small as it is to be. */
const drawing = new TextEncoder().encode(
  '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><rect width="30" height="30" fill="#d00000"/><rect x="5" y="5" width="10" height="10" fill="#0000c0"/><rect x="32" y="32" width="8" height="8" fill="#ffe000"/></svg>',
);

describe('forms of a job', () => {
  test('every made shape is a form like any other', () => {
    const job = jobWith(madeKinds.map((kind) => ({ id: kind, name: kind, made: usualShape(kind, image) })));
    const { forms, problems } = plan({ job, attachments: new Map() });
    expect(forms.map((f) => f.id)).toEqual(madeKinds);
    for (const form of forms) expect(regionArea(form.region)).toBeGreaterThan(10);
    expect(problems.filter((p) => p.severity === 'error')).toEqual([]);
  });
  test('a drawing is read as the form says', () => {
    const attachments = new Map([['fish.svg', drawing]]);
    const areaOf = (read?: object): number =>
      regionArea(
        plan({ job: jobWith([{ id: 'fish', name: 'Fish', drawing: 'fish.svg', ...(read ? { read } : {}) }]), attachments }).forms[0].region,
      );
    expect(areaOf()).toBeCloseTo(964, 1);
    expect(areaOf({ what: 'dark' })).toBeCloseTo(900, 1);
    expect(areaOf({ what: 'colours', colours: ['#0000c0'] })).toBeCloseTo(100, 1);
  });
  test('colours must be named, and written as colours', () => {
    const fish = { id: 'fish', name: 'Fish', drawing: 'fish.svg' };
    const job = jobWith([{ ...fish, read: { what: 'colours' } }]);
    expect(checkJob({ job, attachments: new Map([['fish.svg', drawing]]) }).map((p) => p.code)).toContain('no-colours-named');
    expect(() => jobWith([{ ...fish, read: { what: 'colours', colours: ['red'] } }])).toThrow();
  });
});

describe('one cut a colour', () => {
  const made = (edges: 'spread' | 'under' | 'meet'): Job =>
    cutsByColour(jobWith([]), openDrawing(drawing, 'fish.svg'), {
      drawing: 'fish.svg',
      name: 'Fish',
      edges,
      widthMm: 80,
      middleMm: [60, 80],
    });
  const attachments = new Map([['fish.svg', drawing]]);
  test('every colour lies where the drawing has it, back to front', () => {
    const job = made('meet');
    expect(job.layers.map((l) => l.name)).toEqual(['Fish #d00000', 'Fish #0000c0', 'Fish #ffe000']);
    const { cuts } = plan({ job, attachments });
    const [red, blue, yellow] = cuts.map((c) => c.region);
    expect(regionArea(red)).toBeCloseTo(4 * 800, -1);
    expect(regionArea(blue)).toBeCloseTo(4 * 100, 0);
    expect(regionArea(yellow)).toBeCloseTo(4 * 64, 0);
    expect(regionArea(common(red, blue))).toBeLessThan(1);
  });
  test('what lies behind is spread by what register needs, or runs on under what lies in front', () => {
    expect(made('spread').layers.map((l) => l.spreadMm > 0.3)).toEqual([true, true, false]);
    const { cuts } = plan({ job: made('under'), attachments });
    expect(regionArea(cuts[0].region)).toBeCloseTo(4 * 964, -1);
    expect(made('under').layers.every((l) => l.spreadMm === 0)).toBe(true);
  });
});
