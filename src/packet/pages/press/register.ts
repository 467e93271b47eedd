import { shiftCodes, type Codes } from '../../../core/print/index.ts';
import { pictureOf } from '../../pdf/picture.ts';
import { smallProof } from '../../proof.ts';
import { length, list, name as asName, sentences, say } from '../../../words/index.ts';
import { column, fact } from '../parts.ts';
import { fitImage, lengthIn, startPage, type, type Frame, type Setting } from '../ink/setting.ts';

/** How far off the layers will sit, and which pairs forgive it. Pairs that open come first. */
export function registerPage(setting: Setting): void {
  const { plan } = setting;
  const { budget, sigma } = plan.register;
  if (!budget || budget.pairs.length === 0) return;
  const frame = startPage(setting, { step: 3, title: setting.say('setUpPages.register'), side: setting.say('setUpPages.howFarOff') });
  const { page, left, right, width, top } = frame;
  const a = column(frame, 0, 2),
    b = column(frame, 2, 4);
  const within = setting.say('setUpPages.within', { tolerance: length(sigma.toleranceMm) });
  fact(page, a.x, top, a.width, setting.say('setUpPages.fallsWithin'), within, type.large);
  const { tested } = plan.register;
  const known = sentences(sigma.text, tested?.found && !tested.taken && say('setUpPages.notPlannedWith'));
  let y = page.para(b.x, top, b.width, setting.tell(known), type.body) + 1;
  const { edges } = plan.register;
  for (const one of edges.length > 1 ? edges : []) {
    const papers = list(plan.job.papers.filter((p) => one.paperIds.includes(p.id)).map((p) => asName(p.name)));
    const holds = say('register.otherEdgeCut', { papers, tolerance: length(one.sigma.toleranceMm) });
    y = page.para(b.x, y, b.width, setting.tell(holds), type.strong) + 0.5;
  }
  y = Math.max(y, top + 16) + 4;
  y = gapsTable(setting, frame, y);
  const x = { likely: left + width * 0.55, worst: left + width * 0.68, has: left + width * 0.81, verdict: left + width * 0.84 };
  const order = ['opens', 'tight', 'unknown', 'holds'];
  const pairs = budget.pairs
    .filter((p) => p.forgivesMm !== null)
    .sort((p, q) => order.indexOf(p.verdict) - order.indexOf(q.verdict) || q.likelyMm - p.likelyMm);
  if (pairs.length === 0) y = page.para(left, y, width, setting.say('setUpPages.noneMeet'), type.body);
  else {
    page.text(x.likely, y + 3, setting.say('setUpPages.likely'), { ...type.small, align: 'right' });
    page.text(x.worst, y + 3, setting.say('setUpPages.worst'), { ...type.small, align: 'right' });
    page.text(x.has, y + 3, setting.say('setUpPages.overlap'), { ...type.small, align: 'right' });
    y += 5;
  }
  const name = (id: string): string => plan.layers.find((l) => l.id === id)?.name ?? id;
  for (const [i, pair] of pairs.entries()) {
    if (y > frame.bottom - 34) {
      y = page.para(left, y + 1, width, setting.say('setUpPages.morePairs', { n: pairs.length - i }), type.small);
      break;
    }
    page.line(left, y, right, y, 0.2);
    const base = y + 5.4;
    page.fit(left, base, width * 0.4, `${name(pair.first)} + ${name(pair.second)}`, type.strong, 8);
    page.text(x.likely, base, lengthIn(setting, pair.likelyMm), { ...type.body, align: 'right' });
    page.text(x.worst, base, lengthIn(setting, pair.worstMm), { ...type.body, align: 'right' });
    page.text(x.has, base, pair.forgivesMm === null ? '—' : lengthIn(setting, pair.forgivesMm, setting.units === 'mm' ? 1 : 3), {
      ...type.body,
      align: 'right',
    });
    page.fit(
      x.verdict,
      base,
      right - x.verdict,
      pair.verdict === 'unknown'
        ? '—'
        : setting.say(pair.verdict === 'opens' && pair.beneath === 'colour' ? 'setUpPages.lineShows' : `setUpPages.${pair.verdict}`),
      { ...type.body, weight: pair.verdict === 'holds' ? 'regular' : 'bold' },
      8,
    );
    y += 8;
    if (pair.verdict === 'opens' || pair.verdict === 'tight') y = page.para(left, y - 0.5, width, setting.tell(pair.advice), advice) + 2.5;
  }
  page.line(left, y, right, y, 0.2);
  y = page.para(
    left,
    y + 3,
    width,
    setting.tell(
      sentences(
        pairs.some((p) => p.verdict === 'opens') && say('register.howToSpread'),
        pairs.length > 0 && say('setUpPages.howToRead'),
        !sigma.measured && say('setUpPages.measureYours'),
      ),
    ),
    type.small,
  );
  fallenSheets(setting, frame, y + 5);
}

const advice = { size: 10, leading: 1.35 } as const;

/** Runs with a gap of their own print another size: what each grows by. Nothing where all gaps are one. */
function gapsTable(setting: Setting, frame: Frame, from: number): number {
  const { press, layers } = setting.plan;
  if (!press.gaps.some((gap) => gap.own)) return from;
  const { page, left, right, width } = frame;
  const fine = setting.units === 'mm' ? 2 : 3;
  const x = { gap: left + width * 0.6, across: left + width * 0.8 };
  page.text(left, from + 4, setting.say('setUpPages.gapsDiffer'), type.strong);
  const head = from + 9.5;
  const headings = [
    ['setUpPages.gap', x.gap],
    ['setUpPages.across', x.across],
    ['setUpPages.along', right],
  ] as const;
  for (const [key, at] of headings) page.text(at, head, setting.say(key), { ...type.small, align: 'right' });
  let y = head + 2;
  for (const gap of press.gaps) {
    const layer = layers.find((l) => l.id === gap.layerId);
    if (!layer) continue;
    page.line(left, y, right, y, 0.2);
    const style = { ...type.body, weight: gap.own ? 'bold' : 'regular', align: 'right' } as const;
    page.fit(left, y + 5.2, width * 0.4, `${layer.run}  ${layer.name}`, { ...type.body, weight: gap.own ? 'bold' : 'regular' }, 8);
    page.text(x.gap, y + 5.2, lengthIn(setting, gap.gapMm), style);
    const grows = (mm: number): string => setting.say('setUpPages.grows', { by: length(mm, fine) });
    page.text(x.across, y + 5.2, gap.growth ? grows(Math.max(...gap.growth.acrossMm)) : '—', style);
    page.text(right, y + 5.2, gap.growth ? grows(gap.growth.alongMm) : '—', style);
    y += 7.4;
  }
  page.line(left, y, right, y, 0.2);
  y += 3;
  for (const one of setting.plan.register.problems.filter((p) => p.code === 'gaps-differ'))
    y = page.para(left, y, width, [one.message, one.advice].map((text) => setting.tell(text)).join(' '), advice) + 1.5;
  return y + 4;
}

/** What the sheets will look like: in register, as half of them fall, and among the worst twentieth. */
function fallenSheets(setting: Setting, frame: Frame, from: number): void {
  const { plan } = setting;
  // An earlier print under it is as fine as the raster was, so a bare paper shows it.
  const paper = plan.papers.find((one) => one.overPicture === null);
  const { draws } = plan.register;
  const high = Math.min(92, frame.bottom - from - 24);
  if (!paper || high < 40) return;
  const { page } = frame;
  const middle = draws.sheets.reduce(
    (best, sheet, i) => (Math.abs(sheet.offMm - draws.medianMm) < Math.abs(draws.sheets[best].offMm - draws.medianMm) ? i : best),
    0,
  );
  const inTwenty = draws.worst.at(-1) ?? 0;
  page.text(frame.left, from + 4, setting.say('setUpPages.howSheetsFall'), type.head);
  const columns: readonly (readonly [string, string, number | null])[] = [
    [setting.say('setUpPages.inRegister'), '', null],
    [setting.say('setUpPages.halfNoWorse'), setting.say('setUpPages.apartAtCorner', { apart: length(draws.medianMm, 1) }), middle],
    [setting.say('setUpPages.oneInTwenty'), setting.say('setUpPages.apart', { apart: length(draws.sheets[inTwenty].offMm, 1) }), inTwenty],
  ];
  const size = fitImage(plan, column(frame, 0, 2).width, high);
  const coarse = coarser(plan.codes, Math.max(1, Math.floor(((plan.codes.width / size.widthMm) * 25.4) / 400)));
  columns.forEach(([title, says, sheet], i) => {
    const { x, width } = column(frame, i * 2, 2);
    const codes =
      sheet === null
        ? coarse
        : shiftCodes(
            coarse,
            plan.layers.map((layer, k) => ({ bit: layer.bit, ...draws.sheets[sheet].layers[k] })),
          );
    page.picture(pictureOf(smallProof({ ...plan, codes }, paper, plan.layers.length, 2)), x, from + 8, size.widthMm, size.heightMm);
    page.rect(x, from + 8, size.widthMm, size.heightMm, { stroke: '#000000', lineMm: 0.15 });
    page.fit(x, from + 13 + size.heightMm, width, title, type.strong, 8);
    page.para(x, from + 15 + size.heightMm, width, says, { ...type.small, size: 8.5 });
  });
}

/** Every so-maniest pixel: sheets as small as here are shifted no finer. */
function coarser({ width, height, mmPerPx, data }: Codes, every: number): Codes {
  if (every === 1) return { width, height, mmPerPx, data };
  const [w, h] = [Math.floor(width / every), Math.floor(height / every)];
  const out = new Uint8Array(w * h);
  const half = every >> 1;
  for (let y = 0, to = 0; y < h; y++) for (let x = 0; x < w; x++, to++) out[to] = data[(y * every + half) * width + x * every + half];
  return { width: w, height: h, mmPerPx: mmPerPx * every, data: out };
}
