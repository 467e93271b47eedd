import type { Lab } from '../../colour/index.ts';
import { fail } from '../../problem.ts';
import { asWritten, length, say, share as asShare, type Saying } from '../../../words/say.ts';
import { findMarks, type FoundMark } from '../photo/marks.ts';
import { homography, mapPoint } from '../../numeric/index.ts';
import { readPhoto, type PhotoAsk, type PhotoRead } from '../photo/read.ts';
import type { Photograph, Quad } from '../photo/sample.ts';

export interface SheetRect {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface SheetBox extends SheetRect {
  readonly name: Saying;
  /** Volume share of ink that is drawn down here. */
  readonly share: number;
  readonly over: 'white' | 'black';
}

/** A sheet to print, draw the inks down on, and photograph. mm from the top left corner. */
export interface DrawdownSheet {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Dark square rings around these centres, clockwise from the top left; the first has a dot inside. */
  readonly marks: readonly {
    readonly xMm: number;
    readonly yMm: number;
    readonly sizeMm: number;
    readonly holeMm: number;
    readonly dotMm: number;
  }[];
  /** Printed solid black. */
  readonly blackBar: SheetRect;
  /** Where each drawdown goes: one strip over white and black. */
  readonly strips: readonly (SheetRect & { readonly name: Saying; readonly share: number })[];
  /** Where the photograph is read. */
  readonly boxes: readonly SheetBox[];
  readonly bareWhite: readonly SheetRect[];
  readonly bareBlack: SheetRect;
  readonly greyCard: SheetRect;
  readonly labels: readonly { readonly xMm: number; readonly yMm: number; readonly sizeMm: number; readonly text: Saying }[];
  /** To check that it was printed at true size. */
  readonly checkLine: { readonly xMm: number; readonly yMm: number; readonly lengthMm: number };
}

/** Ink to base by parts (docs/trade.md 4): 1:0, 1:1, 1:2, 1:4, 1:8, 1:16. */
export const usualLadder: readonly number[] = [1, 1 / 2, 1 / 3, 1 / 5, 1 / 9, 1 / 17];

const mostStrips = 7;
/** A4. */
const page = { widthMm: 210, heightMm: 297 };

/**
 * The geometry of a drawdown sheet for one ink in up to seven strengths, each over white and over a black bar.
 * @throws ProblemError for no strength or more than seven, or shares outside 0..1
 */
export function drawdownSheet(title: string, shares: readonly number[] = usualLadder): DrawdownSheet {
  if (shares.length === 0 || shares.length > mostStrips || shares.some((s) => !(s > 0 && s <= 1))) {
    fail('sheet-strengths', say('where.drawdownSheet'), say('ink.sheetStrengths', { most: mostStrips }), say('ink.secondSheet'));
  }
  const top = 38,
    pitch = 31,
    high = 21;
  const bar = { xMm: 112, widthMm: 44 };
  const strips = shares.map((share, i) => ({
    name: nameOfShare(share),
    share,
    xMm: 46,
    yMm: top + i * pitch,
    widthMm: 104,
    heightMm: high,
  }));
  const boxes = strips.flatMap((s): SheetBox[] => [
    {
      name: say('ink.overWhite', { strength: s.name }),
      share: s.share,
      over: 'white',
      xMm: 52,
      yMm: s.yMm + 3,
      widthMm: 54,
      heightMm: high - 6,
    },
    {
      name: say('ink.overBlack', { strength: s.name }),
      share: s.share,
      over: 'black',
      xMm: bar.xMm + 4,
      yMm: s.yMm + 3,
      widthMm: 30,
      heightMm: high - 6,
    },
  ]);
  const bottom = top + shares.length * pitch;
  const gaps = Array.from({ length: shares.length + 1 }, (_, i) => top - 8 + i * pitch);
  const bareWhite = [
    ...gaps.map((yMm) => ({ xMm: 56, yMm, widthMm: 46, heightMm: 6 })),
    ...gaps.map((yMm) => ({ xMm: 164, yMm, widthMm: 12, heightMm: 6 })),
    ...gaps.map((yMm) => ({ xMm: 28, yMm, widthMm: 12, heightMm: 6 })),
  ];
  const marks = (
    [
      [18, 18],
      [192, 18],
      [192, 279],
      [18, 279],
    ] as const
  ).map(([xMm, yMm], i) => ({ xMm, yMm, sizeMm: 12, holeMm: 7, dotMm: i === 0 ? 3 : 0 }));
  const checkLine = { xMm: 55, yMm: 20, lengthMm: 100 };
  return {
    ...page,
    title,
    marks,
    strips,
    boxes,
    bareWhite,
    blackBar: { xMm: bar.xMm, yMm: top - 10, widthMm: bar.widthMm, heightMm: bottom - top + 14 },
    bareBlack: { xMm: bar.xMm + 6, yMm: top - 8, widthMm: 26, heightMm: 6 },
    greyCard: { xMm: 46, yMm: 262, widthMm: 60, heightMm: 24 },
    checkLine,
    labels: [
      { xMm: 46, yMm: 14, sizeMm: 5, text: asWritten(title) },
      { xMm: 55, yMm: 25, sizeMm: 2.8, text: say('ink.trueSizeLine', { long: length(checkLine.lengthMm) }) },
      ...strips.map((s) => ({ xMm: 28, yMm: s.yMm + high / 2, sizeMm: 3.6, text: s.name })),
      {
        xMm: 47,
        yMm: 258.5,
        sizeMm: 2.8,
        text: say('ink.greyCardHere'),
      },
    ],
  };
}

/** 1/5 → `1:4`, ink to base. */
function nameOfShare(share: number): Saying {
  const base = (1 - share) / share;
  return Math.abs(base - Math.round(base)) < 0.01
    ? asWritten(`1:${Math.round(base)}`)
    : say('ink.strengthOf', { share: asShare(share, 0) });
}

export interface SheetRead extends PhotoRead {
  readonly white: Lab;
  /** The bare black bar. */
  readonly black: PhotoRead['patches'][number];
  readonly boxes: readonly (SheetBox & PhotoRead['patches'][number])[];
}

/**
 * Reads every box of a photographed drawdown sheet at once, finding it by its four corner marks.
 * @throws ProblemError when the marks are not found
 */
export function readSheetPhoto(
  sheet: DrawdownSheet,
  photo: Photograph,
  known: Pick<PhotoAsk, 'paperLab' | 'chart'> & { readonly greyLab?: Lab; readonly place: Saying },
): SheetRead {
  const quad = quadsOnPhoto(sheet.marks, photo, known.place);
  const read = readPhoto({
    photo,
    place: known.place,
    paper: sheet.bareWhite.map(quad),
    patches: [...sheet.boxes.map((b) => ({ name: b.name, quad: quad(b) })), { name: say('ink.bareBlack'), quad: quad(sheet.bareBlack) }],
    ...(known.paperLab ? { paperLab: known.paperLab } : {}),
    ...(known.chart ? { chart: known.chart } : {}),
    ...(known.greyLab ? { grey: { quad: quad(sheet.greyCard), lab: known.greyLab } } : {}),
  });
  return {
    ...read,
    white: read.paper,
    black: read.patches[read.patches.length - 1],
    boxes: sheet.boxes.map((b, i) => ({ ...b, ...read.patches[i] })),
  };
}

/** Marks as they are printed, in their order on a photograph. */
export interface SheetMark {
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * Where a sheet's places lie on a photograph that shows its four corner marks. Marks that are printed in the ink itself may be dark in one
 * colour of light alone, as yellow is.
 * @throws ProblemError when the marks are not found
 */
export function quadsOnPhoto(marks: readonly SheetMark[], photo: Photograph, place: Saying): (rect: SheetRect) => Quad {
  const found = cornersOf(findMarks(photo)) ?? cornersOf(findMarks(photo, 'darkest'));
  const toPhoto =
    found &&
    homography(
      marks.map((m) => [m.xMm, m.yMm]),
      found.map((m) => m.centre),
    );
  if (!toPhoto) fail('marks-not-found', place, say('readings.marksNotFound'), say('readings.wholeSheet'));
  return (r) =>
    [
      [r.xMm, r.yMm],
      [r.xMm + r.widthMm, r.yMm],
      [r.xMm + r.widthMm, r.yMm + r.heightMm],
      [r.xMm, r.yMm + r.heightMm],
    ].map(([x, y]) => mapPoint(toPhoto, x, y)) as unknown as Quad;
}

/** The four marks, clockwise from the one with the dot. */
function cornersOf(marks: readonly FoundMark[]): FoundMark[] | undefined {
  const first = marks.filter((m) => m.dot);
  for (const start of first) {
    const alike = marks.filter((m) => !m.dot && m.sizePx > start.sizePx / 2 && m.sizePx < start.sizePx * 2);
    if (alike.length < 3) continue;
    // Of any others that look alike, the three that span the most.
    let best: { corners: FoundMark[]; area: number } | undefined;
    for (let a = 0; a < alike.length; a++)
      for (let b = a + 1; b < alike.length; b++)
        for (let c = b + 1; c < alike.length; c++) {
          const corners = clockwise([start, alike[a], alike[b], alike[c]]);
          const area = areaOf(corners);
          if (!best || area > best.area) best = { corners, area };
        }
    if (best && best.area > (start.sizePx * 4) ** 2) {
      const turn = best.corners.indexOf(start);
      return [...best.corners.slice(turn), ...best.corners.slice(0, turn)];
    }
  }
  return undefined;
}

function clockwise(marks: readonly FoundMark[]): FoundMark[] {
  const cx = marks.reduce((s, m) => s + m.centre[0], 0) / marks.length,
    cy = marks.reduce((s, m) => s + m.centre[1], 0) / marks.length;
  return [...marks].sort((a, b) => Math.atan2(a.centre[1] - cy, a.centre[0] - cx) - Math.atan2(b.centre[1] - cy, b.centre[0] - cx));
}

function areaOf(marks: readonly FoundMark[]): number {
  let sum = 0;
  marks.forEach((m, i) => {
    const next = marks[(i + 1) % marks.length];
    sum += m.centre[0] * next.centre[1] - next.centre[0] * m.centre[1];
  });
  return Math.abs(sum) / 2;
}
