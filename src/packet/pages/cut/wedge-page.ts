import { wedgeCurve } from '../../../core/asks/index.ts';
import { stripFactor, stripRows, wedgeSteps } from '../../../core/halftone/index.ts';
import { figure, name as asName, say, share } from '../../../words/index.ts';
import { testedRuns } from '../../film/index.ts';
import type { ToneRun } from '../../film/index.ts';
import { startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

const rowMm = 7;

/** Before the films: the exposure strip and the wedge, how they are used, and tables for what they show. */
export function* wedgePages(setting: Setting): Pages {
  for (const { alike } of testedRuns(setting.plan)) {
    const frame = startPage(setting, {
      step: 2,
      title: setting.say('halftone.wedgeHead'),
      side: setting.say('halftone.wedgeSide'),
      runs: alike.map((l) => l.run),
    });
    let y = frame.top;
    for (const key of ['halftone.stripUse', 'halftone.wedgeUse', 'halftone.wedgeFiles'] as const)
      y = frame.page.para(frame.left, y, frame.width, setting.say(key), type.body) + 2;
    y = frame.page.para(frame.left, y + 1, frame.width, setting.say('halftone.filmCaution'), { ...type.small, weight: 'semibold' }) + 5;
    const half = (frame.width - 8) / 2;
    drawStrip(setting, frame, frame.left, y, Math.min(half, 74));
    drawWedge(setting, frame, frame.left + Math.min(half, 74) + 8, y, alike);
    if (y + (stripRows + 6) * rowMm + 40 < frame.bottom) drawCurves(setting, frame, alike, y + (stripRows + 2) * rowMm);
    yield;
  }
}

/** A row for each row of the strip, to be filled in. */
function drawStrip(setting: Setting, { page }: Frame, x: number, y: number, width: number): void {
  const heads = ['halftone.stripRow', 'halftone.stripTime', 'halftone.stripOpen', 'halftone.stripHeld'] as const;
  const column = width / heads.length;
  heads.forEach((key, i) => page.fit(x + i * column + 1, y + 4, column - 2, setting.say(key), type.smallStrong));
  for (let row = 0; row < stripRows; row++) {
    const top = y + rowMm * (row + 1) - 1;
    heads.forEach((_, i) => page.rect(x + i * column, top, column, rowMm, { stroke: '#000000', lineMm: 0.15 }));
    page.text(x + 2, top + 5, String(row + 1), type.body);
    const times = setting.tell(say('halftone.timesFirst', { times: figure(stripFactor ** row, 1, false) }));
    page.fit(x + column + 1, top + 5, column - 2, times, type.small);
  }
}

/** A row for each step, a column for each run that is printed by these dots. */
function drawWedge(setting: Setting, { page, right }: Frame, x: number, y: number, runs: readonly ToneRun[]): void {
  const first = 17;
  const column = (right - x - first) / runs.length;
  page.fit(x, y - 1, right - x, `${setting.say('halftone.wedgeTable')}; ${setting.say('halftone.wedgeReading')}`, type.small);
  runs.forEach((run, i) => page.fit(x + first + i * column + 1, y + 4, column - 2, `${run.run}  ${run.name}`, type.smallStrong));
  [0, ...wedgeSteps].forEach((step, row) => {
    const top = y + rowMm * (row + 1) - 1;
    page.rect(x, top, first, rowMm, { stroke: '#000000', lineMm: 0.15 });
    page.text(x + first - 2, top + 5, setting.tell(say('halftone.percentIs', { share: share(step, 0) })), { ...type.body, align: 'right' });
    runs.forEach((_, i) => page.rect(x + first + i * column, top, column, rowMm, { stroke: '#000000', lineMm: 0.15 }));
  });
}

const curveMm = 46;

/** What is taken now: the tone curve of each run, on the first paper that knows it. */
function drawCurves(setting: Setting, { page, left, bottom }: Frame, alike: readonly ToneRun[], y: number): void {
  const { plan } = setting;
  const paper = plan.papers.find((p) => p.tones);
  if (!paper) return;
  const side = Math.min(curveMm, bottom - y - 16);
  page.rect(left, y, side, side, { stroke: '#000000', lineMm: 0.2 });
  page.line(left, y + side, left + side, y, 0.15, [1, 1]);
  const at = (film: number, on: number): [number, number] => [left + film * side, y + side * (1 - on)];
  const said: string[] = [];
  alike.forEach((layer, i) => {
    const curve = wedgeCurve(paper.tones, layer.id);
    if (!curve) return;
    const dash = i === 0 ? undefined : ([1.5 + i, 0.8] as const);
    for (let k = 1; k < curve.points.length; k++) {
      const [x0, y0] = at(curve.points[k - 1].film, curve.points[k - 1].paper),
        [x1, y1] = at(curve.points[k].film, curve.points[k].paper);
      page.line(x0, y0, x1, y1, 0.5, dash);
    }
    const half = share(curve.points.find((p) => p.film === 0.5)?.paper ?? 0.5, 0);
    if (!curve.read) said.push(setting.tell(say('halftone.curveHalf', { layer: asName(layer.name), half })));
    else said.push(setting.tell(say('halftone.curveHalfRead', { layer: asName(layer.name), half, n: figure(curve.n, 2) })));
  });
  page.para(left, y + side + 2, 74, said.join('\n'), type.small);
}
