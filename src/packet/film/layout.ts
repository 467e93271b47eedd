import type { Plan, PlannedLayer, PlannedTone } from '../../core/plan/index.ts';
import { figure, film, name as asName, say, tell, type Reader, type Saying } from '../../words/index.ts';
import { markMm, registerMark, stampOf, textLine, type Stamp } from './stamps.ts';

export interface FilmAsk {
  readonly dpi: number;
  /** Reads the wrong way round: for a film whose printed face looks away from the screen. */
  readonly mirrored: boolean;
  readonly reader: Reader;
}

/** Where everything stands on a film, in its pixels. */
export interface FilmLayout {
  readonly width: number;
  readonly height: number;
  readonly pixelsPerMm: number;
  readonly image: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly stamps: readonly Stamp[];
  /** Steps of the wedge: place and what each covers, 0..1. */
  readonly wedge: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly covers: readonly number[];
  };
}

export type ToneRun = PlannedLayer & { readonly tone: PlannedTone };

const sideMm = 14,
  topMm = 14,
  footMm = 27;
const stepMm = 8,
  leastStepMm = 4;
/** Fine where dots are lost and where holes close. */
export const wedgeCovers: readonly number[] = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];

export function filmLayout(plan: Plan, layer: ToneRun, { dpi, mirrored, reader }: FilmAsk): FilmLayout {
  const perMm = dpi / 25.4;
  const { widthMm, heightMm } = plan.job.image;
  const px = (mm: number): number => Math.round(mm * perMm);
  const width = px(widthMm + 2 * sideMm),
    height = px(topMm + heightMm + footMm);
  const image = { x: px(sideMm), y: px(topMm), width: px(widthMm), height: px(heightMm) };
  const [cx, cy] = [sideMm + widthMm / 2, topMm + heightMm / 2];
  const marks = (
    [
      [cx, topMm - 4],
      [cx, topMm + heightMm + 4],
      [sideMm / 2, cy],
      [sideMm + widthMm + sideMm / 2, cy],
    ] as const
  ).map(([x, y]) => stampOf(perMm, registerMark(), x - markMm / 2, y - markMm / 2, markMm, markMm));
  const stepsMm = Math.max(leastStepMm, Math.min(stepMm, widthMm / wedgeCovers.length));
  const covers = wedgeCovers.slice(0, Math.max(1, Math.floor((widthMm + 2 * sideMm) / stepsMm)));
  const wedgeMm = { x: Math.max(1, cx - (covers.length * stepsMm) / 2), y: topMm + heightMm + 9 };
  const labels = covers.map((cover, i) =>
    textLine(String(Math.round(cover * 100)), 1.6, wedgeMm.x + (i + 0.2) * stepsMm, wedgeMm.y + stepMm + 0.8),
  );
  const first = say('halftone.filmOf', { title: asName(plan.job.title), run: layer.run, layer: asName(layer.name) });
  const second = dotsSay(layer.tone, dpi);
  const third = say(mirrored ? 'halftone.filmMirrored' : 'halftone.filmStraight');
  const told = (saying: Saying): string => tell(saying, reader);
  const room = widthMm + 2 * sideMm - 4;
  const lines = [
    textLine(told(first), 2.6, 2, 2.5, room),
    textLine(told(second), 1.9, 2, wedgeMm.y + stepMm + 4.4, room),
    textLine(told(third), 1.9, 2, wedgeMm.y + stepMm + 7.6, room),
  ];
  return {
    width,
    height,
    pixelsPerMm: perMm,
    image,
    stamps: [...marks, ...[...labels, ...lines].map(({ region, x, y, w, h }) => stampOf(perMm, region, x, y, w, h))],
    wedge: { x: px(wedgeMm.x), y: px(wedgeMm.y), width: px(stepsMm), height: px(stepMm), covers },
  };
}

/** How a film's dots stand, in one line. */
export function dotsSay(tone: Pick<PlannedTone, 'by' | 'shape' | 'rulingPerCm' | 'angleDeg' | 'leastDotMicrons'>, dpi: number): Saying {
  const least = film(tone.leastDotMicrons, 0);
  return tone.by === 'grain'
    ? say('halftone.filmGrain', { least, dpi })
    : say('halftone.filmDots', {
        ruling: figure(tone.rulingPerCm, 1, false),
        angle: figure(tone.angleDeg, 1, false),
        shape: say(`halftone.${tone.shape}Dots`),
        least,
        dpi,
      });
}
