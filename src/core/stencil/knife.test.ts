import { describe, expect, test } from 'vitest';
import { rectangle, takeAway, unite } from '../form/index.ts';
import type { Region } from '../form/index.ts';
import { seeded } from '../random.ts';
import { Buckets } from './raster/buckets.ts';
import { cutOrder, ringsAround } from './cut-order.ts';
import { withinReach } from './raster/discs.ts';
import { nearDistance } from './raster/edt.ts';
import { cornersOf, knifeWork } from './knife.ts';
import { joinRuns, labelParts } from './raster/label.ts';
import { defaultMaterials } from './materials.ts';
import { defaultRates, knifeMinutes, knifeRates } from './rates.ts';
import { ridgeWarnings } from './raster/ridge.ts';
import { Runs } from './raster/runs.ts';

const polygon = (...points: number[]): Region => ({ rings: [Float64Array.from(points)] });
const regular = (n: number): Region =>
  polygon(...Array.from({ length: 2 * n }, (_, i) => 50 + 40 * (i % 2 ? Math.sin : Math.cos)((Math.PI * 2 * (i >> 1)) / n)));

describe('corners of the knife', () => {
  /** A shape whose outline turns by so many degrees at (50, 10). */
  const bent = (deg: number): Region =>
    polygon(0, 10, 50, 10, 50 + 50 * Math.cos((deg * Math.PI) / 180), 10 + 50 * Math.sin((deg * Math.PI) / 180), 20, 120);
  const atBend = (deg: number) => cornersOf(bent(deg)).find((corner) => corner.atMm[0] === 50 && corner.atMm[1] === 10);
  // Common practice: from about 40° on the knife is lifted and set anew.
  test('a turn of 40.5° is one, a turn of 39.5° is drawn through', () => {
    expect(atBend(39.5)).toBeUndefined();
    expect(atBend(40.5)?.turnDeg).toBeCloseTo(40.5, 2);
    expect(atBend(-39.5)).toBeUndefined();
    expect(atBend(-40.5)?.turnDeg).toBeCloseTo(40.5, 2);
  });

  // Geometry: an n-gon turns by 360/n at each of its corners.
  test('eight corners has an octagon, of 45°; none a decagon, of 36°; three a triangle, of 120°', () => {
    expect(cornersOf(regular(8)).map((corner) => Math.round(corner.turnDeg))).toEqual(Array(8).fill(45));
    expect(cornersOf(regular(10))).toEqual([]);
    expect(cornersOf(regular(3)).map((corner) => Math.round(corner.turnDeg))).toEqual([120, 120, 120]);
  });

  test('a nick of half the width of a knife cut is none', () => {
    const nicked = (deep: number): number => cornersOf(polygon(0, 0, 29.95, 0, 30, deep, 30.05, 0, 60, 0, 60, 60, 0, 60)).length;
    expect([nicked(0.047), nicked(0.053)]).toEqual([4, 7]);
  });

  test('a window’s corners point into the paper, those of the paper left standing in it do not', () => {
    const around = cornersOf(takeAway(rectangle(0, 0, 60, 60), rectangle(20, 20, 20, 20)));
    const inner = (at: (x: number) => boolean) =>
      around.filter((corner) => at(corner.atMm[0]) && at(corner.atMm[1])).map((corner) => corner.inner);
    expect(inner((v) => v === 0 || v === 60)).toEqual([true, true, true, true]);
    expect(inner((v) => v === 20 || v === 40)).toEqual([false, false, false, false]);
    // Whichever way round the path is drawn.
    const square = [10, 10, 50, 10, 50, 50, 10, 50];
    expect(cornersOf(polygon(...square)).map((corner) => corner.inner)).toEqual([true, true, true, true]);
    expect(cornersOf(polygon(10, 50, 50, 50, 50, 10, 10, 10)).map((corner) => corner.inner)).toEqual([true, true, true, true]);
    // A window, paper in it, a window in that and paper again: the fourth square's corners point into what drops out.
    const [a, b, c, d] = [0, 10, 20, 30].map((at) => rectangle(at, at, 90 - 2 * at, 90 - 2 * at));
    const within = cornersOf(unite([takeAway(a, b), takeAway(c, d)])).map(({ atMm: [x], inner }) => [Math.min(x, 90 - x) / 10, inner]);
    for (const k of [0, 1, 2, 3]) expect(within.filter(([at]) => at === k)).toEqual(Array(4).fill([k, k % 2 === 0]));
    // An arrow's notch is a corner of paper.
    const arrow = cornersOf(polygon(0, 0, 40, 20, 0, 40, 15, 20));
    expect(arrow).toHaveLength(4);
    expect(arrow.filter((corner) => !corner.inner).map((corner) => corner.atMm)).toEqual([[15, 20]]);
  });
});

describe('what cutting costs', () => {
  // Common practice: half a metre a minute, 2 s a corner, 5 s a piece. By hand for a square of 100 mm: 0.4 m, 4 corners.
  test('a square of 100 mm with two pieces: 48 s of line, 8 s of corners, 10 s of pieces', () => {
    const work = knifeWork(rectangle(0, 0, 100, 100), 2);
    expect(work).toMatchObject({ metres: expect.closeTo(0.4, 9), corners: 4, pieces: 2, difficulty: 'easy' });
    expect(work.minutes * 60).toBeCloseTo(48 + 8 + 10, 6);
    const minutes = knifeMinutes({ metres: 1, corners: 30, pieces: 12 }, defaultRates);
    expect(minutes).toEqual({ lines: 2, corners: 1, pieces: 1 });
    expect(knifeRates(undefined)).toEqual(defaultRates);
    expect(knifeRates({ secondsPerCorner: 3 })).toEqual({ ...defaultRates, secondsPerCorner: 3 });
    expect(knifeRates({ metresPerMinute: 1, secondsPerPiece: 9 })).toEqual({ metresPerMinute: 1, secondsPerCorner: 2, secondsPerPiece: 9 });
  });

  test('from ten minutes it is no longer easy, from three hours hopeless', () => {
    const after = (pieces: number) =>
      knifeWork(rectangle(0, 0, 10, 10), pieces, { metresPerMinute: 1e9, secondsPerCorner: 0, secondsPerPiece: 60 }).difficulty;
    expect([9, 10, 24, 25, 59, 60, 179, 180].map(after)).toEqual([
      'easy',
      'steady',
      'steady',
      'fine',
      'fine',
      'trying',
      'trying',
      'hopeless',
    ]);
  });
});

describe('holes that a punch takes out', () => {
  const round = (x: number, y: number, wide: number, n = 48, high = wide): Float64Array =>
    Float64Array.from(
      Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n).flatMap((t) => [
        x + (wide / 2) * Math.cos(t),
        y + (high / 2) * Math.sin(t),
      ]),
    );
  const punches = { ...defaultRates, punchesMm: [6, 3] };
  const middles = (work: ReturnType<typeof knifeWork>): unknown =>
    work.punched.map(({ acrossMm, atMm }) => [acrossMm, atMm.map(([x, y]) => [Math.round(x * 100) / 100, Math.round(y * 100) / 100])]);

  test('circles of the sizes at hand go by the punch, smallest first; all else is cut, and the knife saves their way', () => {
    const square = rectangle(50, 60, 6, 6).rings[0];
    const kept = [round(20, 60, 6.4), square, round(80, 60, 6, 48, 5.5), round(20, 90, 6, 7)];
    const rings = [round(20, 20, 6), round(50, 20, 6.12), kept[0], kept[1], round(80, 20, 3), kept[2], kept[3], round(110, -40, 6, 8)];
    const work = knifeWork({ rings }, 8, punches);
    expect(middles(work)).toEqual([
      [3, [[80, 20]]],
      [
        6,
        [
          [20, 20],
          [50, 20],
          [110, -40],
        ],
      ],
    ]);
    // By 0.14 mm it goes by the punch, by 0.16 it does not; nor do five corners, be they as small as a punch.
    const across = (wide: number, n?: number): number =>
      knifeWork({ rings: [round(20, 20, wide, n)] }, 1, { ...defaultRates, punchesMm: [6, 1] }).punched.length;
    expect([across(5.86), across(6.14), across(5.84), across(6.16), across(1, 8), across(1, 5)]).toEqual([1, 1, 0, 0, 1, 0]);
    const alone = knifeWork({ rings: kept }, 8, defaultRates);
    expect([work.metres, work.corners, work.minutes]).toEqual([alone.metres, alone.corners, alone.minutes]);
    expect(alone.punched).toEqual([]);
  });

  test('without a punch, or with none that fits, every circle is cut', () => {
    const rings = [round(20, 20, 6)];
    for (const punchesMm of [undefined, [], [4]]) {
      const work = knifeWork({ rings }, 1, { ...defaultRates, ...(punchesMm && { punchesMm }) });
      expect([work.punched, Math.round(work.metres * 1e5)]).toEqual([[], 1884]);
    }
    expect(knifeRates({ punchesMm: [5] })).toEqual({ ...defaultRates, punchesMm: [5] });
  });
});

describe('the order of cuts', () => {
  const nested = [
    rectangle(0, 0, 90, 90),
    rectangle(10, 10, 60, 60),
    rectangle(20, 20, 10, 10),
    rectangle(50, 50, 10, 10),
    rectangle(200, 200, 5, 5),
  ].map((one) => one.rings[0]);
  test('what lies inside goes first; then the nearest to where the knife is', () => {
    expect(cutOrder({ rings: nested })).toEqual([2, 3, 1, 0, 4]);
    expect(cutOrder({ rings: [nested[4], nested[3], nested[2]] })).toEqual([2, 1, 0]);
    expect(
      cutOrder({ rings: [rectangle(0, 90, 5, 5).rings[0], rectangle(50, 0, 5, 5).rings[0], rectangle(0, 40, 5, 5).rings[0]] }),
    ).toEqual([2, 0, 1]);
    // From (10, 0): twenty to the right is nearer than twenty-five down, though that begins nearer to the corner.
    expect(
      cutOrder({ rings: [rectangle(10, 0, 2, 2).rings[0], rectangle(14, 25, 2, 2).rings[0], rectangle(30, 0, 2, 2).rings[0]] }),
    ).toEqual([0, 2, 1]);
    expect(cutOrder({ rings: [] })).toEqual([]);
  });

  test('a path knows the larger ones around it, not those beside or across it', () => {
    expect(ringsAround({ rings: nested })).toEqual([[], [0], [0, 1], [0, 1], []]);
    // Inside its box, but not inside it: in the notch of an L.
    const notch = [unite([rectangle(0, 0, 60, 10), rectangle(0, 0, 10, 60)]).rings[0], rectangle(30, 30, 5, 5).rings[0]];
    expect(ringsAround({ rings: notch })).toEqual([[], []]);
    // In a slanting shape, left and right of its edges.
    const kite = polygon(50, 0, 100, 50, 50, 100, 0, 50).rings[0];
    expect(
      ringsAround({
        rings: [
          kite,
          rectangle(48, 48, 4, 4).rings[0],
          rectangle(2, 2, 4, 4).rings[0],
          rectangle(94, 94, 4, 4).rings[0],
          rectangle(74, 30, 2, 2).rings[0],
        ],
      }),
    ).toEqual([[], [0], [], [], [0]]);
  });
});

describe('rasters, against looking at every pixel', () => {
  const [width, height] = [13, 9];
  const place = (p: number): readonly [number, number] => [p % width, Math.floor(p / width)];
  const random = seeded(3);
  const masks = [0, 0.1, 0.5, 0.9, 0.97, 1].map((share) =>
    Uint8Array.from({ length: width * height }, () => (random.next() < share ? 1 : 0)),
  );
  // A stretch at each edge, and alone in a row.
  const edges = new Uint8Array(width * height).fill(1);
  for (const p of [0, 1, width - 1, width * 4, width * 4 + 1, width * 4 + 2, width * height - 1, width * height - 2]) edges[p] = 0;
  masks.push(edges);
  const [columns, rows] = [0, 1].map((axis) => Int32Array.from({ length: width * height }, (_, p) => place(p)[axis]));
  /** Squared distance of every pixel to the nearest that is `value`. */
  const nearest = (mask: Uint8Array, value: number): number[] =>
    Array.from(mask.keys()).map((p) => {
      let least = Infinity;
      for (let q = 0; q < mask.length; q++)
        if (mask[q] === value) least = Math.min(least, (columns[p] - columns[q]) ** 2 + (rows[p] - rows[q]) ** 2);
      return least;
    });
  const known = masks.map((mask) => [nearest(mask, 0), nearest(mask, 1)]);

  test('distances to the nearest pixel of the other kind, cut off where told', () => {
    for (const [m, mask] of masks.entries()) {
      for (const inside of [0, 1] as const) {
        for (const cap of [2, 4, 30]) {
          const wanted = Array.from(mask.keys()).map((p) => (mask[p] === inside ? Math.min(cap * cap, known[m][1 - inside][p]) : 0));
          expect([...nearDistance(mask, width, height, inside, cap)]).toEqual(wanted);
        }
      }
    }
  });

  test('discs around pixels, to the pixel that lies just on the rim', () => {
    for (const [m, mask] of masks.entries()) {
      for (const value of [0, 1] as const) {
        for (const reach2 of [0, 1, 2, 5, 7.9, 8, 25, 400]) {
          const wanted = Array.from(mask.keys()).map((p) => (known[m][value][p] <= reach2 ? 1 : 0));
          expect([...withinReach(mask, width, height, value, reach2)]).toEqual(wanted);
        }
        expect(withinReach(mask, width, height, value, -1).some((v) => v)).toBe(false);
      }
    }
  });

  /** Flood fill from the first pixel on. */
  function filled(mask: Uint8Array, value: number, corners: boolean): number[] {
    const labels = new Array<number>(mask.length).fill(0);
    let count = 0;
    for (let start = 0; start < mask.length; start++) {
      if (mask[start] !== value || labels[start]) continue;
      const stack = [start];
      labels[start] = ++count;
      for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
        for (let q = 0; q < mask.length; q++) {
          const dx = Math.abs(columns[p] - columns[q]),
            dy = Math.abs(rows[p] - rows[q]);
          if (mask[q] === value && !labels[q] && (corners ? Math.max(dx, dy) === 1 : dx + dy === 1)) {
            labels[q] = count;
            stack.push(q);
          }
        }
      }
    }
    return labels;
  }

  test('parts that hang together, by sides or by corners, numbered as rows meet them', () => {
    for (const mask of masks) {
      for (const value of [0, 1] as const) {
        for (const corners of [false, true]) {
          const wanted = filled(mask, value, corners);
          const found = labelParts(mask, width, height, value, corners);
          expect([...found.labels]).toEqual(wanted);
          expect(found.count).toBe(Math.max(0, ...wanted));
          expect(found.firsts).toEqual(Array.from({ length: found.count }, (_, i) => wanted.indexOf(i + 1)));
        }
      }
    }
  });

  test('more parts than there is room for at first: five thousand squares of a chessboard', () => {
    const board = Uint8Array.from({ length: 100 * 100 }, (_, p) => ((p % 100) + Math.floor(p / 100)) % 2);
    expect(labelParts(board, 100, 100, 1, false).count).toBe(5000);
    expect(labelParts(board, 100, 100, 1, true).count).toBe(1);
    const joined = joinRuns(new Runs(board, 100, 1), 100, false);
    expect([joined.count, joined.starts[4999], joined.ends[4999]]).toEqual([5000, 9998, 9999]);
  });

  test('runs end with their rows', () => {
    const runs = new Runs(Uint8Array.of(0, 1, 1, 1, 1, 0, 1, 0, 0), 3, 1);
    const found: number[][] = [];
    while (runs.next()) found.push([runs.from, runs.end]);
    expect(found).toEqual([
      [1, 3],
      [3, 5],
      [6, 7],
    ]);
    expect(new Runs(Uint8Array.of(0, 0), 2, 1).next()).toBe(false);
  });
});

describe('the waiting list of a shortest way', () => {
  test('the cheapest first, of equals the one that came first', () => {
    const list = new Buckets(7);
    for (const [item, cost] of [
      [1, 5],
      [2, 3],
      [3, 5],
      [4, 0],
      [5, 7],
    ])
      list.put(item, cost);
    const taken: number[][] = [];
    for (let item = list.take(); item >= 0; item = list.take()) taken.push([item, list.cost]);
    expect(taken).toEqual([
      [4, 0],
      [2, 3],
      [1, 5],
      [3, 5],
      [5, 7],
    ]);
    list.put(9, 14);
    list.put(8, 8);
    expect([list.take(), list.cost, list.take(), list.cost, list.take()]).toEqual([8, 8, 9, 14, -1]);
  });

  test('holds more than it had room for', () => {
    const list = new Buckets(3);
    for (let i = 0; i < 70_000; i++) list.put(i, i % 3);
    let sorted = true;
    for (let i = 0, last = -1; i < 70_000; i++) {
      const item = list.take();
      const key = (item % 3) * 100_000 + item;
      if (key <= last) sorted = false;
      last = key;
    }
    expect(sorted).toBe(true);
    expect(list.take()).toBe(-1);
  });
});

describe('ridges along a thick stencil', () => {
  const material = (thicknessMm: number) => ({ ...defaultMaterials[0], thicknessMm });
  const layer = (id: string, prints: Region, thicknessMm = 0.18) => ({ id, name: id, prints, material: material(thicknessMm) });
  const under = rectangle(0, 0, 100, 100);
  const along = (...layers: ReturnType<typeof layer>[]): unknown[] =>
    ridgeWarnings(layers).map((one) => [one.severity, 'path' in one ? one.path : '', JSON.stringify(one.message).match(/"mm":[\d.]+/g)]);
  // A strip of a millimetre inside the edge: 100 mm across the top and 50 down each side are 200 mm, to about a tenth.
  test('are said with the length that a later run crosses', () => {
    expect(along(layer('a', under), layer('b', rectangle(-10, -10, 120, 60)))).toEqual([
      ['warning', 'layers[#a]', ['"mm":0.18', '"mm":200']],
    ]);
    // Not of what lies inside, or was printed before, or crosses for less than 20 mm.
    expect(along(layer('a', under), layer('b', rectangle(5, 5, 60, 60)))).toEqual([]);
    expect(along(layer('b', rectangle(5, 5, 60, 60)), layer('a', under))).toEqual([['warning', 'layers[#b]', ['"mm":0.18', '"mm":240']]]);
    expect(along(layer('a', under), layer('b', rectangle(20, -5, 19, 20)))).toEqual([]);
    expect(along(layer('a', under), layer('b', rectangle(20, -5, 20.6, 20)))).toHaveLength(1);
    expect(along(layer('a', { rings: [] }), layer('b', under))).toEqual([]);
  });

  // docs/trade.md 1: cut film 75..127 µm; here from 0.12 mm.
  test('begin at film of 0.12 mm', () => {
    const over = layer('b', rectangle(-10, -10, 120, 60), 0.05);
    expect(along(layer('a', under, 0.119), over)).toEqual([]);
    expect(along(layer('a', under, 0.12), over)).toHaveLength(1);
  });
});
