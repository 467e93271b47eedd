import { say, sentences } from '../../../words/index.ts';
import { roughly, startPage, type, type Frame, type Pages, type Setting } from '../ink/setting.ts';

const leastRowMm = 4.3;

/** The work by the hour, as a strip and a list. */
export function* dayPages(setting: Setting): Pages {
  const { day } = setting.plan.edition;
  if (!day || day.steps.length === 0) return;
  // The night is nobody's work, nor are the minutes left before it.
  const steps = day.steps.filter(
    (s) => s.what !== 'dry' && (s.what !== 'rest' || isMeal(s)) && (s.what !== 'wait' || s.endMinutes - s.startMinutes >= 5),
  );
  const last = steps.length;
  let at = 0;
  let sheet = 0;
  while (at < last) {
    const values = { days: day.days, time: roughly(day.workMinutes) };
    const work = day.hands > 1 ? say('recordPages.workForHands', { ...values, hands: day.hands }) : say('recordPages.work', values);
    const frame = startPage(setting, {
      step: 4,
      title: setting.say('recordPages.theDay'),
      side: setting.tell(sheet === 0 ? work : say('packet.continued')),
    });
    let y = frame.top;
    if (sheet === 0) y = strip(setting, frame, y);
    const room = frame.bottom - y - 7 * (new Set(steps.slice(at).map((s) => s.day)).size + 1);
    // Closer where that saves a page.
    const rowMm = (last - at) * leastRowMm <= room ? Math.min(6.2, room / (last - at)) : 6.2;
    let shown = -1;
    while (at < last && y < frame.bottom - rowMm) {
      const step = steps[at];
      if (step.day !== shown) {
        shown = step.day;
        if (y > frame.top + 10) y += 2.5;
        frame.page.text(frame.left, y + 4.4, setting.say('recordPages.dayNumber', { n: step.day }), type.strong);
        y += 6;
        continue;
      }
      row(setting, frame, step, y, rowMm);
      y += rowMm;
      at++;
    }
    sheet++;
    yield;
  }
}

const isMeal = (s: { readonly startMinutes: number; readonly endMinutes: number }): boolean =>
  Math.floor(s.startMinutes / 1440) === Math.floor((s.endMinutes - 1e-9) / 1440) && s.endMinutes - s.startMinutes < 360;

type Step = NonNullable<Setting['plan']['edition']['day']>['steps'][number];

function row(setting: Setting, frame: Frame, step: Step, y: number, rowMm: number): void {
  const { page, left, right } = frame;
  page.line(left, y, right, y, 0.12);
  const run = setting.plan.layers.find((l) => l.id === step.run);
  // In the middle of its row, however close the rows lie.
  const base = y + rowMm / 2 + 1.3;
  page.rect(left, y + rowMm / 2 - 1.5, 3, 3, { stroke: '#000000', lineMm: 0.25 });
  page.text(left + 6, base, step.start, { size: 10, weight: 'bold' });
  page.text(left + 18, base, step.end, { size: 10 });
  if (run) page.text(left + 34, base, String(run.run), { size: 10, weight: 'bold', align: 'right' });
  const hands = (setting.plan.edition.day?.hands ?? 1) > 1;
  // Who does it: a number in a box, black for whoever pulls.
  if (hands && step.who > 0) {
    page.rect(left + 37, y + rowMm / 2 - 2, 4, 4, { stroke: '#000000', lineMm: 0.3, ...(step.who === 1 ? { fill: '#000000' } : {}) });
    page.text(left + 39.1, base, String(step.who), {
      size: 9,
      weight: 'bold',
      align: 'centre',
      colour: step.who === 1 ? '#ffffff' : '#000000',
    });
  }
  const words = left + (hands ? 44 : 38);
  page.fit(words, base, right - words - 24, setting.tell(step.text), { size: 10, weight: step.what === 'pull' ? 'bold' : 'regular' }, 7);
  page.fit(right, base, 22, setting.tell(step.where), { size: 9, align: 'right' }, 7);
}

/** One line a day: pulls black, set-up and cleaning grey, waiting white. */
function strip(setting: Setting, frame: Frame, from: number): number {
  const { page, left, width } = frame;
  const { plan } = setting;
  const { day } = plan.edition;
  if (!day) return from;
  const busy = day.steps.filter((s) => s.what !== 'rest' && s.what !== 'dry');
  const start = Math.min(...busy.map((s) => s.startMinutes - (s.day - 1) * 1440)),
    end = Math.max(...busy.map((s) => s.endMinutes - (s.day - 1) * 1440));
  const labelMm = 14;
  const scale = (width - labelMm) / Math.max(60, end - start);
  const x = (minutes: number): number => left + labelMm + (minutes - start) * scale;
  let y = from;
  for (let hour = Math.ceil(start / 60); hour * 60 <= end; hour++) {
    page.text(x(hour * 60), y + 2.6, String(hour % 24), { size: 8, align: 'centre' });
  }
  y += 4;
  // Hands that find nothing to do get no line.
  const hands = Math.max(1, ...busy.map((step) => step.who));
  const days = Math.min(day.days, Math.max(1, Math.floor(6 / hands)));
  for (let d = 1; d <= days; d++) {
    page.text(left, y + 6, setting.say('recordPages.dayLabel', { n: d }), type.smallStrong);
    for (let hand = 1; hand <= hands; hand++) {
      for (const s of busy.filter((one) => one.day === d && one.who === hand)) {
        const a = x(s.startMinutes - (d - 1) * 1440),
          b = x(s.endMinutes - (d - 1) * 1440);
        const fill = s.what === 'pull' ? '#000000' : s.what === 'wait' ? '#ffffff' : s.what === 'rack' ? '#8a8a8a' : '#cfcfcf';
        page.rect(a, y, Math.max(0.3, b - a), 9, { fill, stroke: '#000000', lineMm: 0.15 });
        const run = plan.layers.find((l) => l.id === s.run);
        if (s.what === 'pull' && run && b - a > 4)
          page.text((a + b) / 2, y + 6.2, String(run.run), { size: 10, weight: 'bold', align: 'centre', colour: '#ffffff' });
      }
      if (hands > 1) page.text(left + labelMm - 3.5, y + 6, String(hand), { size: 9, weight: 'bold' });
      y += hand < hands ? 9.6 : 11;
    }
  }
  const key = sentences(
    say('recordPages.blackPulling'),
    hands > 1 && say('recordPages.greyRacking'),
    say('recordPages.greyWhite', { dry: roughly(day.dryMinutes), most: roughly(day.dryMinutesMost), wet: day.rackPeak }),
  );
  y = page.para(left, y + 1, width, setting.tell(key), type.small);
  return y + 3;
}
