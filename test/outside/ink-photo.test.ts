import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { BANDS, deltaE00, labFromSpectrum, smoothestSpectrum, xyzFromLab, type Lab, type Spectrum } from '../../src/core/colour/index.ts';
import {
  drawdownSheet,
  filmOf,
  mixInks,
  readPhoto,
  readSheetPhoto,
  rectQuad,
  spaceFromProfile,
  srgbSpace,
  stackReflectance,
  wideSpace,
  type DrawdownSheet,
  type Photograph,
  type PhotoSpace,
  type SheetRect,
} from '../../src/core/ink/index.ts';
// The room's own perspective is used only to draw; reading finds its own.
import { homography, mapPoint } from '../../src/core/numeric/index.ts';
import { ProblemError } from '../../src/core/problem.ts';
import { asWritten, name as asName, say, type Saying } from '../../src/words/index.ts';
import { seeded } from '../../src/core/random.ts';
import { inEnglish, refusedBy } from '../said.ts';
import { inventedPots, studioSurface as surface, warmPaper } from './ink-studio.ts';

const paper = warmPaper();
const black = new Float64Array(BANDS).fill(0.045);
const inDaylight = Float64Array.from({ length: BANDS }, (_, i) => 1 - (0.3 * Math.abs(i - 16)) / 20);

/** An invented camera: three sensitivities that overlap like the eye's but are not the eye's, and its maker's matrix. */
function camera(space: PhotoSpace): (r: Spectrum) => [number, number, number] {
  const peaks = [
    [600, 42],
    [540, 45],
    [455, 32],
  ];
  const raw = (r: Spectrum): number[] =>
    peaks.map(([nm, width]) => {
      let sum = 0,
        whole = 0;
      for (let i = 0; i < BANDS; i++) {
        const s = Math.exp(-(((380 + 10 * i - nm) / width) ** 2)) * inDaylight[i];
        sum += s * r[i];
        whole += s;
      }
      return sum / whole;
    });
  // Maker's matrix: makes white, and saturates by what the sensitivities overlap.
  const matrix = space.wide
    ? [
        [1.35, -0.4, 0.05],
        [-0.18, 1.35, -0.17],
        [0.02, -0.3, 1.28],
      ]
    : [
        [1.6, -0.68, 0.08],
        [-0.24, 1.52, -0.28],
        [0.03, -0.42, 1.39],
      ];
  return (r) => {
    const v = raw(r);
    return matrix.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as [number, number, number];
  };
}

/** Light, 0 to 1, as a share of a pixel's most: between neighbours of a table, to a hundredth of the sixteenth bit. */
const curve = Float64Array.from({ length: 65_538 }, (_, i) => {
  const light = i / 65_536;
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
});
const encode = (light: number): number => {
  const i = Math.floor(light * 65_536);
  return curve[i] + (curve[i + 1] - curve[i]) * (light * 65_536 - i);
};

interface Scene {
  readonly light: (x: number, y: number) => number;
  readonly noise: number;
  readonly tilt: readonly (readonly [number, number])[];
  readonly space: PhotoSpace;
  readonly bits: 8 | 16;
  readonly exposure: number;
}
const gentle: Scene = {
  light: (x, y) => 1 - 0.18 * (x / 210) - 0.12 * (y / 297) ** 2,
  noise: 0.008,
  tilt: [
    [70, 60],
    [830, 95],
    [805, 1150],
    [95, 1120],
  ],
  space: srgbSpace,
  bits: 8,
  exposure: 0.8,
};

/** Photographs a sheet: perspective, uneven light, noise, eight bits. */
function photograph(sheet: DrawdownSheet, spectrumAt: (x: number, y: number) => Spectrum, scene: Scene, seed: number): Photograph {
  const width = 900,
    height = 1220;
  const data = scene.bits === 16 ? new Uint16Array(width * height * 4) : new Uint8Array(width * height * 4);
  const top = scene.bits === 16 ? 65535 : 255;
  const tilt = homography(scene.tilt, [
    [0, 0],
    [sheet.widthMm, 0],
    [sheet.widthMm, sheet.heightMm],
    [0, sheet.heightMm],
  ])!;
  const toSheet = ([x, y]: readonly [number, number]) => mapPoint(tilt, x, y);
  const random = seeded(seed);
  const see = camera(scene.space);
  const seen = new Map<Spectrum, [number, number, number]>();
  const table = new Float64Array(width).fill(0.12);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [mx, my] = toSheet([x, y]);
      const at = (y * width + x) * 4;
      let rgb: readonly number[] = [table[x], table[x], table[x]];
      if (mx >= 0 && my >= 0 && mx < sheet.widthMm && my < sheet.heightMm) {
        const spectrum = spectrumAt(mx, my);
        let v = seen.get(spectrum);
        if (!v) seen.set(spectrum, (v = see(spectrum)));
        rgb = v;
      }
      const light = scene.exposure * scene.light(mx, my);
      for (let c = 0; c < 3; c++)
        data[at + c] = Math.round(
          top * Math.min(1, Math.max(0, encode(Math.min(1, Math.max(0, rgb[c] * light * (1 + scene.noise * random.normal())))))),
        );
      data[at + 3] = top;
    }
  return { width, height, data, space: scene.space };
}

const inside = (r: SheetRect, x: number, y: number): boolean => x >= r.xMm && y >= r.yMm && x < r.xMm + r.widthMm && y < r.yMm + r.heightMm;
const greyCard = new Float64Array(BANDS).fill(0.18);

function sheetWith(
  sheet: DrawdownSheet,
  potIndex: number,
): { at: (x: number, y: number) => Spectrum; truth: (box: DrawdownSheet['boxes'][number]) => Lab } {
  const pot = inventedPots(12, 3)[potIndex].ink;
  const spectra = new Map<string, Spectrum>();
  for (const s of sheet.strips) {
    const film = filmOf(mixInks([{ ink: pot, share: 0.6 * s.share }]));
    spectra.set(`${s.share} white`, stackReflectance(paper, [film], surface));
    spectra.set(`${s.share} black`, stackReflectance(black, [film], surface));
  }
  return {
    truth: ({ share, over }) => labFromSpectrum(spectra.get(`${share} ${over}`)!),
    at: (x, y) => {
      for (const m of sheet.marks) {
        const off = Math.max(Math.abs(x - m.xMm), Math.abs(y - m.yMm));
        if (off < m.dotMm / 2 || (off < m.sizeMm / 2 && off > m.holeMm / 2)) return black;
      }
      const onBlack = inside(sheet.blackBar, x, y);
      const strip = sheet.strips.find((s) => inside(s, x, y));
      if (strip) return spectra.get(`${strip.share} ${onBlack ? 'black' : 'white'}`)!;
      if (inside(sheet.greyCard, x, y)) return greyCard;
      return onBlack ? black : paper;
    },
  };
}

const inPhoto = (file: string): Saying => say('where.file', { file: asName(file) });

describe('photographs of drawdowns', () => {
  const sheet = drawdownSheet('Pot', [1, 1 / 2, 1 / 3, 1 / 5, 1 / 9, 1 / 17]);
  test('a photographed sheet is found by its marks, turned and in perspective, and all twelve drawdowns are read', () => {
    const errors: number[] = [],
      sigmas: number[] = [];
    for (const [pot, scene] of [
      [1, gentle],
      [
        4,
        {
          ...gentle,
          tilt: [
            [805, 1150],
            [95, 1120],
            [70, 60],
            [830, 95],
          ] as const,
        },
      ],
      [7, { ...gentle, bits: 16, space: wideSpace } as Scene],
      [10, gentle],
    ] as const) {
      const drawn = sheetWith(sheet, pot);
      const read = readSheetPhoto(sheet, photograph(sheet, drawn.at, scene, pot), {
        place: inPhoto('sheet.jpg'),
        paperLab: labFromSpectrum(paper),
        greyLab: labFromSpectrum(greyCard),
      });
      expect(read.boxes).toHaveLength(12);
      expect(read.unevenness).toBeGreaterThan(1.1);
      for (const box of read.boxes) {
        errors.push(deltaE00(box.reading.lab, drawn.truth(box)));
        sigmas.push(box.reading.sigma);
      }
      expect(deltaE00(read.white, labFromSpectrum(paper))).toBeLessThan(4);
    }
    const mean = errors.reduce((a, b) => a + b, 0) / errors.length;
    const within = errors.filter((e, i) => e <= sigmas[i]).length / errors.length;
    console.log(
      `photographed sheets without a chart: mean ΔE00 ${mean.toFixed(1)}, worst ${Math.max(...errors).toFixed(1)}; ${Math.round(within * 100)} % within the doubt told`,
    );
    // Seen: 2.6, and 94 % within the doubt.
    expect(mean).toBeLessThan(4);
    expect(within).toBeGreaterThan(0.8);
  });
  test('a chart of 24 patches brings it nearer', () => {
    const random = seeded(8);
    const chartLabs: Lab[] = Array.from({ length: 24 }, (_, i) =>
      i < 6 ? [95 - 15 * i, 0, 0] : [40 + 28 * random.next(), 38 * Math.cos(i * 1.3), 34 * Math.sin(i * 1.3)],
    );
    const chart = chartLabs.map((lab) => smoothestSpectrum(xyzFromLab(lab)));
    const pots = inventedPots(12, 3);
    const patches = Array.from({ length: 12 }, (_, i) =>
      stackReflectance(paper, [filmOf(mixInks([{ ink: pots[i].ink, share: 0.25 }]))], surface),
    );
    // A plain layout: 6 × 4 chart above, 4 × 3 drawdowns below, paper between; 40 pixels a field.
    const field = (x: number, y: number): Spectrum => {
      const cx = Math.floor(x / 40),
        cy = Math.floor(y / 40);
      if (cx % 2 === 0 || cy % 2 === 0) return paper;
      const column = (cx - 1) / 2,
        row = (cy - 1) / 2;
      return row < 4 && column < 6 ? chart[row * 6 + column] : row < 6 && column < 6 ? patches[(row - 4) * 6 + column] : paper;
    };
    const scene: Scene = {
      ...gentle,
      tilt: [
        [0, 0],
        [520, 0],
        [520, 520],
        [0, 520],
      ],
    };
    const photo = photograph({ ...sheet, widthMm: 520, heightMm: 520 }, field, scene, 5);
    const quad = (i: number, row0: number): ReturnType<typeof rectQuad> =>
      rectQuad(40 + 80 * (i % 6), 40 + 80 * (row0 + Math.floor(i / 6)), 40, 40);
    const ask = {
      photo,
      place: inPhoto('chart.jpg'),
      paperLab: labFromSpectrum(paper),
      paper: [0, 1, 2, 3, 4, 5].flatMap((r) => [0, 3, 6].map((c) => rectQuad(80 * c + 2, 80 * r + 2, 36, 36))),
      patches: patches.map((_, i) => ({ name: asWritten(`${i}`), quad: quad(i, 4) })),
    };
    const off = (read: ReturnType<typeof readPhoto>): number =>
      read.patches.reduce((s, p, i) => s + deltaE00(p.reading.lab, labFromSpectrum(patches[i])), 0) / patches.length;
    const without = off(readPhoto(ask)),
      read = readPhoto({ ...ask, chart: chartLabs.map((lab, i) => ({ quad: quad(i, 0), lab })) });
    console.log(
      `drawdowns photographed: mean ΔE00 ${without.toFixed(1)} balanced on paper, ${off(read).toFixed(1)} with a chart (its own error ${read.chartError!.toFixed(1)})`,
    );
    expect(off(read)).toBeLessThan(without);
    // Seen: 0.9.
    expect(off(read)).toBeLessThan(1.5);
  });
  test('clipping, a missing mark, too little paper and a strong colour are told', () => {
    const drawn = sheetWith(sheet, 8);
    const known = { place: inPhoto('sheet.jpg'), paperLab: labFromSpectrum(paper) };
    const codes = (act: () => unknown): string[] => {
      try {
        act();
      } catch (error) {
        if (error instanceof ProblemError) return error.problems.map((p) => p.code);
        throw error;
      }
      return [];
    };
    expect(codes(() => readSheetPhoto(sheet, photograph(sheet, drawn.at, { ...gentle, exposure: 2.2 }, 1), known))).toEqual([
      'photo-clipped',
    ]);
    const cut = photograph(
      sheet,
      drawn.at,
      {
        ...gentle,
        tilt: [
          [70, 60],
          [1100, 95],
          [1105, 1150],
          [95, 1120],
        ],
      },
      1,
    );
    expect(codes(() => readSheetPhoto(sheet, cut, known))).toEqual(['marks-not-found']);
    expect(codes(() => readPhoto({ photo: cut, place: inPhoto('x'), paper: [], patches: [] }))).toEqual(['too-little-paper']);
    expect(codes(() => readPhoto({ photo: { ...cut, data: new Uint8Array(8) }, place: inPhoto('x'), paper: [], patches: [] }))).toEqual([
      'photo-too-small',
    ]);
    expect(codes(() => drawdownSheet('x', []))).toEqual(['sheet-strengths']);
    // Strong inks read through a screen's gamut: some box has an empty channel and says so.
    const strong = [2, 5, 8, 11].flatMap((pot) =>
      readSheetPhoto(sheet, photograph(sheet, sheetWith(sheet, pot).at, gentle, 1), known).boxes.flatMap((b) => b.problems),
    );
    expect(strong.map((p) => p.code)).toContain('patch-outside-photo');
    expect(strong.map((p) => inEnglish(p.where!))).toContain('sheet.jpg, 1:0 over white');
  });
  // The profile of the Debian package icc-profiles-free (zlib licence) against IEC 61966-2-1.
  test('a colour profile is read, and a broken one refused', () => {
    const bytes = new Uint8Array(readFileSync(new URL('data/srgb.icc', import.meta.url)));
    const space = spaceFromProfile(bytes, 'photo.jpg');
    space.toXyz.forEach((row, k) => row.forEach((v, c) => expect(v).toBeCloseTo(srgbSpace.toXyz[k][c], 2)));
    for (const v of [0, 0.02, 0.2, 0.5, 0.9, 1]) expect(space.linear(v)).toBeCloseTo(srgbSpace.linear(v), 2);
    expect(space.wide).toBe(false);
    for (let cut = 0; cut < bytes.length; cut += 97) {
      try {
        spaceFromProfile(bytes.slice(0, cut), 'photo.jpg');
      } catch (error) {
        expect(error).toBeInstanceOf(ProblemError);
      }
    }
    expect(refusedBy(() => spaceFromProfile(new Uint8Array(50), inPhoto('x.jpg')))[0]).toMatchObject({
      code: 'profile-not-read',
      where: inPhoto('x.jpg'),
    });
  });
});
