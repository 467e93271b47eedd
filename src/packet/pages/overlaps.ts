import type { PlannedOverlap } from '../../core/plan/index.ts';
import { bandInWords, drawProof, drawStack, drawSwatch, shareInWords } from './parts.ts';
import { startPage, type, type Frame, type Pages, type PlannedPaper, type Setting } from './setting.ts';
import { labWords } from './words.ts';

const perRow = 4;
const cellHigh = 45;

/** Every overlap that covers area, largest first: pictures, then few numbers. */
export function* overlapPages(setting: Setting): Pages {
  for (const paper of setting.plan.papers) yield* chart(setting, paper);
}

function* chart(setting: Setting, paper: PlannedPaper): Pages {
  const { plan } = setting;
  const whole = plan.job.image.widthMm * plan.job.image.heightMm;
  const seen = paper.overlaps.filter((o) => o.areaMm2 > 0).sort((a, b) => b.areaMm2 - a.areaMm2 || a.code - b.code);
  let at = 0;
  for (let sheet = 0; sheet === 0 || at < seen.length; sheet++) {
    const frame = startPage(setting, {
      step: 7,
      title: `Overlaps on ${paper.name}`,
      side: sheet === 0 ? `${seen.length} that cover area` : 'continued',
    });
    let y = frame.top;
    if (sheet === 0) y = heading(setting, frame, paper);
    const rows = Math.max(1, Math.floor((frame.bottom - y + 4) / cellHigh));
    const gap = 5;
    const width = (frame.width - gap * (perRow - 1)) / perRow;
    seen.slice(at, at + rows * perRow).forEach((overlap, i) => {
      cell(setting, frame, paper, overlap, frame.left + (i % perRow) * (width + gap), y + Math.floor(i / perRow) * cellHigh, width, whole);
    });
    at += rows * perRow;
    yield;
  }
}

function heading(setting: Setting, frame: Frame, paper: PlannedPaper): number {
  const { page, left, width, top } = frame;
  const { plan } = setting;
  const size = drawProof(setting, page, paper, plan.layers.length, left, top, 60, 56);
  const x = left + size.widthMm + 7;
  page.text(x, top + 3.4, 'How to read it', type.head);
  // The key: the whole stack with names, first run at the bottom.
  const n = plan.layers.length;
  const stackHigh = Math.min(44, n * 7);
  drawStack(
    page,
    plan.layers,
    plan.layers.map((l) => l.id),
    x,
    top + 8,
    13,
    stackHigh,
  );
  const names = 40;
  plan.layers.forEach((layer, i) => {
    page.fit(
      x + 16,
      top + 8 + stackHigh - (i + 0.5) * (stackHigh / n) + 1.2,
      names,
      `${layer.run}  ${layer.name}${layer.inkId === null ? ' (open)' : ''}`,
      { size: Math.min(9.5, (stackHigh / n) * 2.2) },
    );
  });
  const note = { size: 8, leading: 1.3 };
  // Beside the key where there is room, else under picture and key.
  const beside = left + width - (x + 16 + names + 4) >= 38;
  const [nx, ny] = beside ? [x + 16 + names + 4, top + 8] : [left, top + Math.max(size.heightMm, stackHigh + 8) + 3];
  const w = left + width - nx;
  const y = page.para(
    nx,
    ny,
    w,
    'Bars: which inks lie there, first run at the bottom. Share of the image. Lab (D50). Last line: how far the print may be off, ΔE00.',
    note,
  );
  const ground = paper.overPicture ? ' Colours are those on the unprinted parts of the sheet.' : '';
  const end = page.para(nx, y + 1.5, w, `${paper.bandNote}${ground}`, note);
  return Math.max(top + size.heightMm, end) + 6;
}

function cell(
  setting: Setting,
  frame: Frame,
  paper: PlannedPaper,
  overlap: PlannedOverlap,
  x: number,
  y: number,
  w: number,
  whole: number,
): void {
  const { page } = frame;
  const { plan } = setting;
  const high = 27;
  drawStack(page, plan.layers, overlap.layers, x, y, 7, high);
  drawSwatch(page, overlap.srgb, x + 9, y, w - 9, high);
  page.fit(x, y + high + 4.6, w * 0.42, shareInWords(overlap.areaMm2, whole), type.strong, 8);
  page.fit(x + w, y + high + 4.6, w * 0.56, `Lab ${labWords(overlap.lab)}`, { size: 8.5, align: 'right' }, 6.5);
  const names =
    overlap.layers.length === 0
      ? paper.overPicture
        ? 'the sheet as it is'
        : 'bare paper'
      : overlap.layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ');
  page.fit(x, y + high + 8.8, w, names, { size: 8.5 }, 6.5);
  const band = overlap.measured
    ? `measured, ±${overlap.band.toFixed(1)}`
    : `${bandInWords(overlap.band)}, ±${overlap.band.toFixed(overlap.band < 10 ? 1 : 0)}`;
  page.fit(x, y + high + 12.8, w, `${band}${overlap.inGamut ? '' : '; richer than shown'}`, { size: 8.5 }, 6.5);
}
