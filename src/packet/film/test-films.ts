import { exposureStrip, screener, stripTints, wedgeSheet, type ScreenAsk } from '../../core/halftone/index.ts';
import { rectangle, takeAway, unite, type Region } from '../../core/form/index.ts';
import type { Plan } from '../../core/plan/index.ts';
import { figure, list, name as asName, say, tell, type Saying } from '../../words/index.ts';
import { dotsSay, type FilmAsk, type ToneRun } from './layout.ts';
import { packRow, putStamps, type Film } from './rows.ts';
import { stampOf, textLine, type Stamp } from './stamps.ts';

interface Field {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cover: number;
}

/** A film of flat fields in one screen, and what is drawn beside them. */
function sheetFilm(
  size: { readonly widthMm: number; readonly heightMm: number },
  fields: readonly Field[],
  stampsAt: (perMm: number) => readonly Stamp[],
  screen: Omit<ScreenAsk, 'pixelsPerCm'>,
  { dpi, mirrored }: FilmAsk,
): Film {
  const perMm = dpi / 25.4;
  const px = (mm: number): number => Math.round(mm * perMm);
  const width = px(size.widthMm),
    height = px(size.heightMm);
  const draw = screener({ ...screen, pixelsPerCm: perMm * 10 });
  const stamps = stampsAt(perMm);
  const placed = fields.map((f) => ({
    x0: px(f.xMm),
    x1: px(f.xMm + f.widthMm),
    y0: px(f.yMm),
    y1: px(f.yMm + f.heightMm),
    value: Math.round(f.cover * 255),
  }));
  const covers = new Uint8Array(width),
    dots = new Uint8Array(width),
    black = new Uint8Array(width + 8);
  return {
    layout: { width, height, pixelsPerMm: perMm },
    lineBytes: Math.ceil(width / 8),
    cell: draw.cell,
    row: (y, line) => {
      black.fill(0);
      const here = placed.filter((f) => y >= f.y0 && y < f.y1);
      if (here.length > 0) {
        covers.fill(0);
        for (const f of here) covers.fill(f.value, f.x0, f.x1);
        draw.row(y, covers, dots);
        black.set(dots);
      }
      putStamps(stamps, y, width, black);
      if (mirrored) black.subarray(0, width).reverse();
      packRow(black, line);
    },
  };
}

const textStamps = (perMm: number, lines: readonly ReturnType<typeof textLine>[]): Stamp[] =>
  lines.map(({ region, x, y, w, h }) => stampOf(perMm, region, x, y, w, h));

const percent = (cover: number): string => String(Math.round(cover * 100));

/** Runs whose films have the same dots: one wedge does for all of them. */
export function sharesWedge(a: ToneRun['tone'], b: ToneRun['tone']): boolean {
  return (
    a.by === b.by &&
    a.meshPerCm === b.meshPerCm &&
    a.leastDotMicrons === b.leastDotMicrons &&
    (a.by === 'grain' || (a.shape === b.shape && a.rulingPerCm === b.rulingPerCm))
  );
}

/** The runs that need a wedge and a strip of their own, each with all that share them. */
export function testedRuns(plan: Pick<Plan, 'layers'>): { readonly run: ToneRun; readonly alike: readonly ToneRun[] }[] {
  const runs = plan.layers.filter((l): l is ToneRun => l.tone !== null);
  return runs.flatMap((run, i) =>
    runs.slice(0, i).some((other) => sharesWedge(other.tone, run.tone))
      ? []
      : [{ run, alike: runs.filter((other) => sharesWedge(other.tone, run.tone)) }],
  );
}

/** The wedge page of a run's screen as a film: to be printed in its ink, and in that of every other run whose dots are the same. */
export function wedgeFilm(plan: Plan, layer: ToneRun, ask: FilmAsk): Film {
  const sheet = wedgeSheet();
  const { tone } = layer;
  const told = (saying: Saying): string => tell(saying, ask.reader);
  const alike = plan.layers.filter((l): l is ToneRun => l.tone !== null && sharesWedge(l.tone, tone));
  const room = sheet.widthMm - 40;
  const lines = [
    textLine(
      told(
        say('halftone.wedgeFor', {
          title: asName(plan.job.title),
          layers: list(
            alike.map((l) => asName(l.name)),
            'and',
          ),
        }),
      ),
      2.6,
      20,
      5,
      room,
    ),
    textLine(told(dotsSay(tone, ask.dpi)), 1.9, 20, 10, room),
    textLine(told(say(ask.mirrored ? 'halftone.filmMirrored' : 'halftone.filmStraight')), 1.9, 20, 13.4, room),
    textLine(told(say('halftone.wedgePhoto')), 1.9, 20, sheet.heightMm - 9, room),
    ...sheet.fields.map((f) => textLine(percent(f.cover), 2, f.xMm + 1, f.yMm + f.heightMm + 1.6)),
  ];
  return sheetFilm(
    sheet,
    sheet.fields,
    (perMm) => [
      ...textStamps(perMm, lines),
      ...sheet.marks.map((m) => {
        const square = (side: number): Region => rectangle((m.sizeMm - side) / 2, (m.sizeMm - side) / 2, side, side);
        const ring = takeAway(square(m.sizeMm), square(m.holeMm));
        return stampOf(
          perMm,
          m.dotMm > 0 ? unite([ring, square(m.dotMm)]) : ring,
          m.xMm - m.sizeMm / 2,
          m.yMm - m.sizeMm / 2,
          m.sizeMm,
          m.sizeMm,
        );
      }),
    ],
    tone,
    ask,
  );
}

/** No dot is held back: the strip shows what the emulsion itself holds. */
const finestMicrons = 1;

/** The exposure test strip of a run's screen as a film: the same row again and again, each to be exposed longer than the one before. */
export function exposureFilm(plan: Plan, layer: ToneRun, ask: FilmAsk): Film {
  const strip = exposureStrip();
  const screen = { ...layer.tone, by: 'dots' as const, leastDotMicrons: finestMicrons };
  const told = (saying: Saying): string => tell(saying, ask.reader);
  const room = strip.widthMm - 10;
  const lines = [
    textLine(told(say('halftone.stripFor', { title: asName(plan.job.title) })), 2.6, 5, 4, room),
    textLine(
      told(
        say('halftone.stripDots', { ruling: figure(screen.rulingPerCm, 1, false), angle: figure(screen.angleDeg, 1, false), dpi: ask.dpi }),
      ),
      1.9,
      5,
      9,
      room,
    ),
    textLine(told(say(ask.mirrored ? 'halftone.filmMirrored' : 'halftone.filmStraight')), 1.9, 5, 12.4, room),
    textLine(told(say('halftone.stripHow')), 1.9, 5, 15.8, room),
    ...strip.rows.map(({ xMm, yMm }, i) => textLine(String(i + 1), 5, xMm, yMm + 3)),
    ...strip.tints.slice(0, stripTints.length).map((t) => textLine(percent(t.cover), 1.7, t.xMm + 1, t.yMm - 3)),
  ];
  const bars = unite(strip.lines.filter((l) => l.black).map((l) => rectangle(l.xMm, l.yMm, l.widthMm, l.heightMm)));
  const drawn = takeAway(bars, unite(strip.lines.filter((l) => !l.black).map((l) => rectangle(l.xMm, l.yMm, l.widthMm, l.heightMm))));
  return sheetFilm(
    strip,
    strip.tints,
    (perMm) => [...textStamps(perMm, lines), stampOf(perMm, drawn, 0, 0, strip.widthMm, strip.heightMm)],
    screen,
    ask,
  );
}
