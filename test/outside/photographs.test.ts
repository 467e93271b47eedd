import { readFileSync } from 'node:fs';
import jpeg from 'jpeg-js';
import { describe, expect, test } from 'vitest';
import {
  boardSeen,
  calibrated,
  lensOfShares,
  parts,
  readBoard,
  regionArea,
  regionBox,
  tracePhoto,
  traceScan,
  type Region,
} from '../../src/core/form/index.ts';
import { fitBoard } from '../../src/core/form/trace/board.ts';
import { straighten } from '../../src/core/form/trace/lens.ts';
import type { Photo } from '../../src/core/form/index.ts';
import { askPrintPhoto } from '../../src/core/asks/index.ts';
import type { BoardSeen } from '../../src/core/form/index.ts';
import { srgbSpace } from '../../src/core/ink/index.ts';
import { plan } from '../../src/core/plan/index.ts';
import { smallJob } from '../../src/packet/packet-jobs.ts';
import { asWritten } from '../../src/words/index.ts';
import { refusedBy } from '../said.ts';

// Real photographs: see data/checked-board/README.md for their source. Squares of 25 mm, nine by six inner corners.
const squareMm = 25;
const names = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '11', '12', '13', '14'];
const load = (name: string, path = `checked-board/left${name}.jpg`): Photo => {
  const { width, height, data } = jpeg.decode(readFileSync(new URL(`./data/${path}`, import.meta.url)), { useTArray: true });
  return { width, height, channels: 4, data };
};

const boards = new Map<string, BoardSeen>();
/** Looked for once in each photograph. */
function boardIn(name: string): BoardSeen {
  const board = boards.get(name) ?? boardSeen(load(name))!;
  boards.set(name, board);
  return board;
}

const centreOf = ({ rings }: Region): readonly [number, number] => {
  let area = 0,
    x = 0,
    y = 0;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const cross = ring[j] * ring[i + 1] - ring[i] * ring[j + 1];
      area += cross;
      x += (ring[j] + ring[i]) * cross;
      y += (ring[j + 1] + ring[i + 1]) * cross;
    }
  }
  return [x / (3 * area), y / (3 * area)];
};

/** How wide and how high a square is, away from its corners. */
const acrossMiddle = ({ rings: [ring] }: Region): number[] => {
  const [x, y] = centreOf({ rings: [ring] });
  return [0, 1].map((axis) => {
    const widths = [-4, -2, 0, 2, 4].map((off) => {
      const level = [x, y][1 - axis] + off;
      const hits: number[] = [];
      for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
        const a = ring[j + 1 - axis],
          b = ring[i + 1 - axis];
        if (a > level !== b > level) hits.push(ring[j + axis] + ((ring[i + axis] - ring[j + axis]) * (level - a)) / (b - a));
      }
      return Math.max(...hits) - Math.min(...hits);
    });
    return widths.sort((a, b) => a - b)[2];
  });
};

/** Off a straight line through the first and last of some points, the farthest. */
const offLine = (points: readonly (readonly [number, number])[]): number => {
  const [a, b] = [points[0], points[points.length - 1]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.max(...points.map((p) => Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length));
};

/** The outermost inner corners of a board, in pixels, clockwise, the longer side first. */
function outermost({ corners }: BoardSeen): (readonly [number, number])[] {
  const [columns, rows] = [Math.max(...corners.map((c) => c.column)), Math.max(...corners.map((c) => c.row))];
  const at = (column: number, row: number): readonly [number, number] => corners.find((c) => c.column === column && c.row === row)!.at;
  const four = [at(0, 0), at(columns, 0), at(columns, rows), at(0, rows)];
  const long = columns > rows ? four : [...four.slice(1), four[0]];
  const [a, b, c, d] = long;
  return (b[0] - a[0]) * (d[1] - a[1]) > (b[1] - a[1]) * (d[0] - a[0]) ? long : [b, a, d, c];
}

/** Share of the pixels of a squared board that are dark in a pale square or pale in a dark one. */
function wrongSquares({ width, height, rgb }: { readonly width: number; readonly height: number; readonly rgb: Uint8Array }): number {
  const level = Array.from({ length: width * height }, (_, i) => rgb[i * 3 + 1]).toSorted((a, b) => a - b)[(width * height) >> 1];
  let odd = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const dark = rgb[(y * width + x) * 3 + 1] < level;
      if (dark === ((Math.floor((x * 8) / width) + Math.floor((y * 5) / height)) % 2 === 0)) odd++;
    }
  const share = odd / (width * height);
  return Math.min(share, 1 - share);
}

describe('a checked board in thirteen photographs', () => {
  test.each(names)('left%s: found by itself; its lens is the one that the calibration beside the photographs tells', (name) => {
    const board = readBoard(load(name), name);
    expect([board.columns, board.rows].sort((a, b) => a - b)).toEqual([5, 8]);
    expect(board.offPx).toBeLessThan(0.15);
    // left_intrinsics.yml: k1 −0.266, k2 −0.039, k3 0.238 over a focal length of 535.9 px, which bends a point half way to the
    // corner (r = 200 px) by this much; ours goes the other way, from bent to straight.
    const { bend, more = 0, radius } = board.lens;
    const seen = 200,
      theirs = (r: number): number => r * (1 - 0.26637 * (r / 535.92) ** 2 - 0.03859 * (r / 535.92) ** 4 + 0.23839 * (r / 535.92) ** 6);
    let straight = seen;
    for (let i = 0; i < 50; i++) straight += seen - theirs(straight);
    const ours = seen * (1 + bend * (seen / radius) ** 2 + more * (seen / radius) ** 4);
    expect(Math.abs(ours - straight)).toBeLessThan(2.5);
  });

  const { lens } = readBoard(load('12'), '12');
  test.each(names.filter((name) => name !== '12'))(
    'left%s: with the lens of another photograph, squares kept apart lie 25 mm from one another and in straight lines',
    (name) => {
      const { region } = tracePhoto(load(name), { sheet: { squareMm }, lens, apartMm: 4, smoothMm: 0.2 }, name);
      const squares = parts(region).filter((piece) => regionArea(piece) > 300);
      expect(squares).toHaveLength(20);
      // A camera does not tell light as it falls: dark and pale squares are the same size all the same.
      const sides = squares.flatMap(acrossMiddle);
      const side = sides.reduce((a, b) => a + b) / sides.length;
      expect(Math.abs(side / squareMm - 1)).toBeLessThan(0.005);
      const centres = squares.map(centreOf);
      // Dark squares meet at their corners: the next one lies a diagonal away.
      const steps = centres
        .flatMap((a, i) => centres.slice(i + 1).map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) / Math.SQRT2))
        .filter((d) => d < 30);
      expect(steps.length).toBeGreaterThan(20);
      const mean = steps.reduce((a, b) => a + b) / steps.length;
      expect(Math.abs(mean / squareMm - 1)).toBeLessThan(0.005);
      const rows = new Map<number, (readonly [number, number])[]>();
      for (const c of centres) {
        const row = Math.round((c[1] - Math.min(...centres.map((q) => q[1]))) / squareMm);
        rows.set(row, [...(rows.get(row) ?? []), c]);
      }
      for (const row of rows.values()) if (row.length > 2) expect(offLine([...row].sort((a, b) => a[0] - b[0]))).toBeLessThan(0.3);
    },
  );

  // left_intrinsics.yml: the middle, the focal length, and Brown's terms of the radius.
  const known = { middle: [342.283, 235.571], focal: 535.916, terms: [-0.266373, -0.038589, 0.238392] };

  test('one lens from six photographs is the published one, and lays the boards of the other seven straight', () => {
    const seen = names.map(boardIn);
    const found = calibrated(seen.slice(0, 6))!;
    const lens = lensOfShares(found.lens, seen[0])!;
    expect(Math.hypot(lens.middle[0] - known.middle[0], lens.middle[1] - known.middle[1])).toBeLessThan(6);
    const shares = [60, 120, 180, 240, 300, 360].map((px) => {
      const r = px / known.focal,
        r2 = r * r;
      const seenAt = px * (1 + known.terms[0] * r2 + known.terms[1] * r2 ** 2 + known.terms[2] * r2 ** 3);
      return (straighten(lens, [lens.middle[0] + seenAt, lens.middle[1]])[0] - lens.middle[0]) / px;
    });
    // The size of a straightened picture is free; its shape is not.
    for (const share of shares) expect(Math.abs(share / shares[0] - 1)).toBeLessThan(0.005);
    for (const board of seen.slice(6)) expect(fitBoard(board, board.corners, lens)?.offPx).toBeLessThan(0.2);
    expect(calibrated(seen)!.offPx).toBeLessThan(0.13);
    expect(calibrated([])).toBeUndefined();
  });

  test('a print photographed through that lens comes out square, with the lens of six other photographs', () => {
    const seen = names.slice(0, 9).map(boardIn);
    const { lens } = calibrated(seen.slice(0, 6))!;
    // The board is taken for a print of eight by five squares, its outermost inner corners for the print's own.
    const printed = plan(smallJob({ image: { widthMm: 8 * squareMm, heightMm: 5 * squareMm } }));
    const off = (name: string, i: number, kept?: typeof lens): number => {
      const { width, height, data } = load(name);
      const corners = outermost(seen[i]);
      const { squared } = askPrintPhoto(printed, {
        photo: { width, height, data: data as Uint8Array, space: srgbSpace },
        paperId: 'white',
        corners,
        of: 'image',
        place: asWritten(name),
        longPx: 640,
        ...(kept && { lens: lensOfShares(kept, { width, height })! }),
      });
      return wrongSquares(squared!);
    };
    const judged = names.slice(6, 9).map((name, k) => [off(name, 6 + k, lens), off(name, 6 + k)] as const);
    for (const [straightened] of judged) expect(straightened).toBeLessThan(0.035);
    // As it was taken, the lens bends the print by more than a millimetre.
    const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;
    expect(mean(judged.map(([, bent]) => bent))).toBeGreaterThan(2 * mean(judged.map(([straightened]) => straightened)));
  });

  test('a photograph without a board says so', () => {
    const plain: Photo = { width: 200, height: 150, channels: 3, data: new Uint8Array(200 * 150 * 3).fill(180) };
    expect(refusedBy(() => readBoard(plain, 'plain')).map((p) => p.code)).toEqual(['photo-no-board']);
  });
});

test('five small things on a table, darker and lighter than it, come out where they lie; gleam and grain of the table do not', () => {
  // See data/table/README.md. 25.4 pixels an inch: a pixel is a millimetre.
  const { region, problems } = traceScan(load('', 'table/stuff.jpg'), 25.4, { leastMm2: 150 }, 'stuff');
  expect(problems.map((p) => p.code)).toEqual(['scan-ground']);
  const found = parts(region).map((one) => ({ box: regionBox(one), area: regionArea(one) }));
  expect(found).toHaveLength(5);
  const middle = ({ box }: (typeof found)[number]): [number, number] => [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  // The white lid is the largest: 338 from the left, 126 from the top, 118 across (below it is as grey as the table).
  const [lid] = [...found].sort((a, b) => b.area - a.area);
  const [left, top] = [338 - lid.box.minX, 126 - lid.box.minY];
  const at = (x: number, y: number): (typeof found)[number] =>
    found.find(({ box }) => x - left > box.minX && x - left < box.maxX && y - top > box.minY && y - top < box.maxY)!;
  const [cap, pencil, coin, lighter] = [at(228, 55), at(150, 145), at(210, 307), at(336, 400)];
  expect(new Set([lid, cap, pencil, coin, lighter])).toHaveProperty('size', 5);
  // Soft by four pixels and more.
  const across = (one: (typeof found)[number]): number => 2 * Math.sqrt(one.area / Math.PI);
  expect(Math.abs(across(lid) - 118)).toBeLessThan(6);
  expect(Math.abs(across(coin) - 41)).toBeLessThan(6);
  expect(Math.hypot(middle(coin)[0] + left - 210, middle(coin)[1] + top - 307)).toBeLessThan(4);
  // The cap with the core of its shadow, the pencil without its wooden tip, the lighter's red body.
  expect(Math.abs(across(cap) - 77)).toBeLessThan(8);
  expect(Math.hypot(pencil.box.maxX - pencil.box.minX, pencil.box.maxY - pencil.box.minY)).toBeGreaterThan(290);
  expect(pencil.area / 300).toBeLessThan(16);
  expect(Math.abs(lighter.box.maxY + top - 459)).toBeLessThan(4);
  expect(Math.abs(lighter.area / (459 - 335) - 41)).toBeLessThan(5);
});
