import { bandsPatch, bandsPatchMm, filmBands, filmSays } from '../../../core/asks/index.ts';
import type { ToneRun } from '../../film/index.ts';
import { pictureOf } from '../../pdf/picture.ts';
import { tonePicture } from '../parts.ts';
import { startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

const cardMm = 54,
  gapMm = 5;

/** The films of the runs of tone: how each stands, how it is exposed and read, and what bands they make. */
export function* filmPages(setting: Setting): Pages {
  const { plan } = setting;
  const runs = plan.layers.filter((l): l is ToneRun => l.tone !== null);
  if (runs.length === 0) return;
  const begin = (more: boolean): Frame =>
    startPage(setting, {
      step: 2,
      title: setting.say('halftone.films'),
      side: setting.say(more ? 'packet.continued' : 'halftone.filmsSide'),
      runs: runs.map((l) => l.run),
    });
  let frame = begin(false);
  let y = frame.page.para(frame.left, frame.top, frame.width, setting.say('halftone.filmsIntro'), type.body) + 2;
  y = frame.page.para(frame.left, y, frame.width, setting.say('halftone.filmsWedge'), type.body) + 4;
  for (const layer of runs) {
    if (y + cardMm > frame.bottom) {
      yield;
      [frame, y] = [begin(true), frame.top];
    }
    drawFilm(setting, frame, layer, y);
    y += cardMm + gapMm;
  }
  yield;
  yield* lookPage(setting, runs);
}

/** What the films come to: the print from arm's length, and half tones on one another at true size. */
function* lookPage(setting: Setting, runs: readonly ToneRun[]): Pages {
  const { plan } = setting;
  const [seen] = plan.fromArm;
  const paper = plan.papers.find((p) => p.id === seen?.paperId) ?? plan.papers.find((p) => p.tones);
  if (!paper) return;
  const frame = startPage(setting, {
    step: 2,
    title: setting.say('halftone.toneLook'),
    side: paper.name,
    runs: runs.map((l) => l.run),
  });
  const { page, left, width, bottom } = frame;
  let y = frame.top;
  if (seen) {
    const wide = seen.width * seen.mmPerPx,
      high = seen.height * seen.mmPerPx;
    const scale = Math.min(1, width / wide, (bottom - y - bandsPatchMm.heightMm - 50) / high);
    page.picture(pictureOf({ kind: 'rgb', ...seen }), left, y, wide * scale, high * scale);
    y = page.para(left, y + high * scale + 2, width, setting.say('halftone.fromArm'), type.small) + 4;
  }
  const patch = bandsPatch(plan, paper);
  if (patch) {
    const { widthMm, heightMm } = bandsPatchMm;
    page.picture(pictureOf({ kind: 'rgb', ...patch, mmPerPx: 1 / patch.pixelsPerMm }), left, y, widthMm, heightMm);
    let at = page.para(left + widthMm + 5, y, width - widthMm - 5, setting.say('halftone.bandsPatch'), type.small) + 2;
    if (runs.length > 1 || plan.layers.length > runs.length)
      at = page.para(left + widthMm + 5, at, width - widthMm - 5, setting.say('halftone.toneRegister'), type.small) + 1.5;
    for (const band of filmBands(plan).slice(0, 6)) {
      if (at > Math.max(y + heightMm, bottom - 12)) break;
      at = page.para(left + widthMm + 5, at, width - widthMm - 5, setting.tell(band), type.small) + 1.5;
    }
  }
  yield;
}

function drawFilm(setting: Setting, { page, left, right }: Frame, layer: ToneRun, y: number): void {
  const { plan } = setting;
  const { tone } = layer;
  const { widthMm, heightMm } = plan.job.image;
  const scale = Math.min(60 / widthMm, cardMm / heightMm);
  const [w, h] = [widthMm * scale, heightMm * scale];
  page.picture(tonePicture(setting, tone.plane, '#000000'), left, y, w, h);
  page.rect(left, y, w, h, { stroke: '#000000', lineMm: 0.2 });
  const x = left + 66;
  page.fit(x, y + 5, right - x, `${layer.run}  ${layer.name}`, type.head, 9);
  let at = y + 9;
  for (const fact of filmSays(plan, layer)) at = page.para(x, at, right - x, setting.tell(fact), type.body) + 1;
}
