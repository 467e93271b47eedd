import { expect, test } from 'vitest';
import { rectangle, takeAway, unite } from '../../../form/index.ts';
import { layerCodes, proofGrid } from '../../../print/index.ts';
import { defaultMaterials, makeStencil } from '../../../stencil/index.ts';
import { islandNotes, meanOver, mendsOf, shownBy, withCosts } from './costs.ts';
import { costTable, extraTable, ratesOf, stencilOf } from './stencils.ts';
import { parseJob } from '../../../job/index.ts';

const labs = new Float64Array(256 * 3);
// Bare paper, a yellow, a dark blue over it, and the blue alone: the blue hides the yellow almost wholly.
labs.set([95, 0, 2, 85, 0, 70, 25, 15, -40, 26, 15, -38].flat());
const colours = [{ labOfCode: labs }];

test('a bridge costs what its layer’s ink shows there: much on bare paper, hardly anything under a dark later ink', () => {
  const grid = proofGrid(20, 10, 101.6);
  const codes = layerCodes(
    [
      { bit: 0, prints: rectangle(0, 0, 20, 10) },
      { bit: 1, prints: rectangle(10, 0, 10, 10) },
    ],
    grid,
  );
  labs.set([25, 15, -40], 2 * 3);
  labs.set([26, 15, -38], 3 * 3);
  const table = costTable(0, colours);
  const open = meanOver(rectangle(2, 2, 5, 2), codes, table),
    hidden = meanOver(rectangle(12, 2, 5, 2), codes, table);
  expect(open).toBeGreaterThan(20);
  expect(hidden).toBeLessThan(3);
  expect(meanOver(rectangle(7.5, 2, 5, 2), codes, table)).toBeCloseTo((open + hidden) / 2, 5);
});

test('an island dropped costs what the ink adds where the drawing left it out; off the image it costs nothing', () => {
  const codes = layerCodes([{ bit: 1, prints: rectangle(0, 0, 20, 10) }], proofGrid(20, 10, 101.6));
  expect(meanOver(rectangle(2, 2, 5, 5), codes, extraTable(0, colours))).toBeLessThan(3);
  expect(meanOver(rectangle(30, 2, 5, 5), codes, extraTable(0, colours))).toBe(0);
});

test('every island and loose piece says what leaving it out costs; the check says it where islands are given up', () => {
  // A ring of the yellow, its middle an island; the blue prints over the right half of the image.
  const shape = takeAway(rectangle(20, 20, 60, 60), rectangle(35, 35, 30, 30));
  const codes = layerCodes(
    [
      { bit: 0, prints: shape },
      { bit: 1, prints: rectangle(50, 0, 50, 100) },
    ],
    proofGrid(100, 100, 101.6),
  );
  const made = (islands: 'bridge' | 'loose' | 'drop') =>
    withCosts(
      makeStencil({
        shape,
        side: 'window',
        aperture: rectangle(0, 0, 100, 100),
        sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
        material: defaultMaterials[1],
        islands,
      }),
      codes,
      costTable(0, colours),
      extraTable(0, colours),
    );
  const loose = made('loose'),
    dropped = made('drop'),
    bridged = made('bridge');
  const [piece] = loose.loosePieces;
  // Half on bare paper, half under the blue.
  const onPaper = extraTable(0, colours)[0],
    underBlue = extraTable(0, colours)[2];
  expect(onPaper).toBeGreaterThan(20);
  expect(piece.costDeltaE).toBeCloseTo((onPaper + underBlue) / 2, 1);
  expect(dropped.islands[0]).toMatchObject({ handled: 'dropped', costDeltaE: piece.costDeltaE });
  expect(shownBy(dropped.islands)).toMatchObject({ count: 1, areaMm2: 900 });
  expect(islandNotes(dropped, 'layer')).toMatchObject([{ code: 'islands-dropped', severity: 'note' }]);
  // A large island that shows is worth its bridges; under an ink that hides everything it is not.
  expect(islandNotes(bridged, 'layer')).toEqual([]);
  const hidden = { ...bridged, islands: bridged.islands.map((i) => ({ ...i, costDeltaE: 0 })) };
  expect(islandNotes(hidden, 'layer')).toMatchObject([{ code: 'islands-cheaper-dropped' }]);
});

test('what mending a thin place changed is told with its size and its cost; a stencil that needed none has none', () => {
  // Two openings with 1 mm of paper between them, along 40 mm: newsprint asks for 3 mm.
  const openings = (gapMm: number) => unite([rectangle(10, 30, 40, 40), rectangle(50 + gapMm, 30, 30, 40)]);
  const codes = layerCodes([{ bit: 0, prints: openings(1) }], proofGrid(100, 100, 101.6));
  const made = (gapMm: number) =>
    makeStencil({
      shape: openings(gapMm),
      side: 'window',
      aperture: rectangle(0, 0, 100, 100),
      sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
      material: defaultMaterials[0],
      islands: 'bridge',
    });
  const tables = [costTable(0, colours), extraTable(0, colours)] as const;
  const prices = { codes, missing: tables[0], extra: tables[1] };
  // Before an ink is chosen the places are known all the same, largest first.
  const unpriced = mendsOf(made(1), openings(1));
  expect(unpriced.length).toBeGreaterThan(0);
  expect(unpriced[0]).not.toHaveProperty('costDeltaE');
  const mends = mendsOf(made(1), openings(1), prices);
  expect(mends.every((m) => m.kind === 'broader')).toBe(true);
  const area = mends.reduce((sum, m) => sum + m.areaMm2, 0);
  // 2 mm of ink along 40 mm are kept away, and the spare width that the mend takes.
  expect(area).toBeGreaterThan(80);
  expect(area).toBeLessThan(160);
  expect(mends[0].costDeltaE).toBeCloseTo(tables[0][1], 0);
  expect(mends[0].at[0]).toBeGreaterThan(45);
  expect(mends[0].at[0]).toBeLessThan(56);
  expect(mendsOf(made(10), openings(10), prices)).toEqual([]);
});

test('a slow hand says so in the job, and every stencil takes longer', () => {
  const job = (knife: object) =>
    parseJob({
      schemaVersion: 1,
      title: 'K',
      image: { widthMm: 100, heightMm: 100 },
      layers: [{ id: 'a', name: 'A', cut: 'c', side: 'window', ink: null }],
      ...knife,
    });
  const minutes = (made: ReturnType<typeof job>): number =>
    stencilOf({ job: made, layer: made.layers[0], cut: rectangle(20, 20, 60, 60), material: defaultMaterials[1] }).stencil?.knife.minutes ??
    0;
  // 24 cm at 0.5 m a minute, four corners of 2 s, one cut-out of 5 s; then at a tenth of a metre.
  expect(minutes(job({}))).toBeCloseTo(0.48 + (4 * 2 + 5) / 60, 2);
  expect(minutes(job({ knife: { metresPerMinute: 0.1 } }))).toBeCloseTo(2.4 + (4 * 2 + 5) / 60, 2);
  expect(ratesOf(job({ knife: { secondsPerCorner: 9 } }))).toEqual({ metresPerMinute: 0.5, secondsPerCorner: 9, secondsPerPiece: 5 });
});
