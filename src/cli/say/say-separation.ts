import type { Job } from '../../core/job/index.ts';
import { printing, type Separation, type SeparateRequest } from '../../core/separate/index.ts';
import { deltaE, figure, length, lengths, list, name as asName, say, share, time, type Saying } from '../../words/index.ts';
import { knifeLength, readerHere, sayHere, showHere, tellHere } from '../reader.ts';
import { columns } from './table.ts';

/** Fewer pixels of the picture a mm of print than this: coarser than a knife cuts. */
const fewPixels = 1.5;

/** Which part of the picture prints, and how fine it is. */
export function sayPart({ picture, crop, sizeMm }: SeparateRequest): string[] {
  const { x, y, width, height } = crop ?? { x: 0, y: 0, width: 1, height: 1 };
  const shareOf = (of1: number): ReturnType<typeof share> => share(of1, Number.isInteger(Math.round(of1 * 1000) / 10) ? 0 : 1);
  const size = lengths([sizeMm.width, sizeMm.height]);
  const pxPerMm = (width * picture.width) / sizeMm.width;
  const pixels =
    readerHere().units === 'in'
      ? say('inkAnswers.pixelsPerInch', { px: figure(pxPerMm * 25.4) })
      : say('inkAnswers.pixelsPerMm', { px: figure(pxPerMm, 1) });
  return [
    width > 0.999 && height > 0.999
      ? sayHere('inkAnswers.wholePicture', { size, pixels })
      : sayHere('inkAnswers.partOfPicture', {
          size,
          width: shareOf(width),
          height: shareOf(height),
          x: shareOf(x),
          y: shareOf(y),
          pixels,
        }),
    ...(pxPerMm < fewPixels ? [sayHere('inkAnswers.tooCoarse')] : []),
  ];
}

/** What came out: runs, figures, what less or more knife would bring. */
export function saySeparation(s: Separation, job: Job, out: string): string[] {
  const { figures, baseline } = s,
    cuts = s.curve.filter((p) => p.metres > 0);
  return [
    sayHere('inkAnswers.separated', { folder: asName(out), runs: runsOf(job) }),
    ...(s.asDrawing ? [sayHere('inkAnswers.takenAsDrawing')] : []),
    ...sayRuns(s, job),
    ...sayFigures(s),
    sayHere('inkAnswers.ofFlatInks', { times: figure(figures.inRegister.mean / baseline.inRegister.mean, 2) }),
    sayHere('inkAnswers.drawing', {
      kept: share(figures.structure.kept, 0),
      invented: share(figures.structure.invented, 0),
      flatKept: share(baseline.structure.kept, 0),
      flatInvented: share(baseline.structure.invented, 0),
    }),
    sayHere('inkAnswers.knifeAsked', {
      along: knifeLength(figures.knifeMetres),
      pieces: figures.pieces,
      bridges: figures.bridges,
      time: time(figures.minutes),
    }),
    sayHere('inkAnswers.outOfReach', { share: share(s.outOfReachShare, 0), lost: deltaE(s.detailLostDeltaE) }),
    ...(cuts.length > 0 ? [sayHere('inkAnswers.moreKnife', { all: list(cuts.map(onCurve), 'comma') })] : []),
    ...(s.stoppedEarly ? [sayHere('inkAnswers.stoppedEarly')] : []),
  ];
}

function onCurve(p: Separation['curve'][number]): Saying {
  return say('inkAnswers.onCurve', { along: knifeLength(p.metres, 1), deltaE: deltaE(p.meanDeltaE), price: figure(p.priceMm, 3, false) });
}

/** Ours and flat inks, in register and off by what is planned for, against the picture. */
function sayFigures({ figures, baseline }: Separation): string[] {
  const row = (what: Saying, d: { readonly mean: number; readonly median: number; readonly p95: number }): string[] => [
    tellHere(what),
    ...[d.mean, d.median, d.p95].map((value) => showHere(deltaE(value))),
  ];
  const head = [say('inkAnswers.toPicture'), say('inkAnswers.mean'), say('inkAnswers.median'), say('inkAnswers.within95')];
  return columns(
    [
      head.map((one) => tellHere(one)),
      row(say('inkAnswers.inRegister'), figures.inRegister),
      row(say('inkAnswers.offBy', { sigma: length(figures.atSigma.sigmaMm, 2) }), figures.atSigma),
      row(say('inkAnswers.flatInks'), baseline.inRegister),
      row(say('inkAnswers.flatInksOff'), baseline.atSigma),
    ],
    { right: [1, 2, 3] },
  );
}

const runsOf = (job: Job): number => job.layers.filter((layer) => !layer.off).length;
const sides = { window: say('answers.window'), piece: say('answers.piece') };

/** First run first, as it is printed. */
function sayRuns(s: Separation, job: Job): string[] {
  const inkName = (id: string): string => job.inks.find((ink) => ink.id === id)?.name ?? id;
  const live = printing(s.layers);
  const added = runsOf(job) > live.length,
    made = job.layers.slice(-live.length);
  const rows = live.map(({ run, side, parts, stencil }, i) => [
    added ? sayHere('inkAnswers.newRunAs', { run: run + 1 }) : sayHere('inkAnswers.runAs', { run: run + 1 }),
    made[i].name,
    tellHere(sides[side]),
    sayHere('inkAnswers.potIs', {
      parts: list(parts.map((part) => say('inkAnswers.part', { share: share(part.share, 0), ink: asName(inkName(part.id)) }))),
      along: knifeLength(stencil.knife.metres),
      pieces: stencil.knife.pieces,
      bridges: stencil.bridges.length,
    }),
  ]);
  return columns(rows, { indent: '  ' });
}
