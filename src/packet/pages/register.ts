import { column, fact } from './parts.ts';
import { lengthIn, startPage, type, type Setting } from './setting.ts';

const verdicts = { holds: 'holds', tight: 'tight', opens: 'will open', unknown: '—' } as const;

/** How far off the layers will sit, and which pairs forgive it. Pairs that open come first. */
export function registerPage(setting: Setting): void {
  const { plan } = setting;
  const { budget, sigma } = plan.register;
  if (!budget || budget.pairs.length === 0) return;
  const frame = startPage(setting, { step: 3, title: 'Register', side: 'how far off, and what forgives it' });
  const { page, left, right, width, top } = frame;
  const a = column(frame, 0, 2), b = column(frame, 2, 4);
  fact(page, a.x, top, a.width, 'One layer falls within', `± ${lengthIn(setting, sigma.toleranceMm)}`, type.large);
  let y = Math.max(page.para(b.x, top, b.width, sigma.text, type.body), top + 16) + 4;
  const x = { likely: left + width * 0.55, worst: left + width * 0.68, has: left + width * 0.81, verdict: left + width * 0.84 };
  page.text(x.likely, y + 3, 'likely', { ...type.small, align: 'right' });
  page.text(x.worst, y + 3, 'worst', { ...type.small, align: 'right' });
  page.text(x.has, y + 3, 'overlap', { ...type.small, align: 'right' });
  y += 5;
  const order = ['opens', 'tight', 'unknown', 'holds'];
  const pairs = budget.pairs.filter((p) => p.forgivesMm !== null).sort((p, q) => order.indexOf(p.verdict) - order.indexOf(q.verdict) || q.likelyMm - p.likelyMm);
  const name = (id: string): string => plan.layers.find((l) => l.id === id)?.name ?? id;
  for (const [i, pair] of pairs.entries()) {
    if (y > frame.bottom - 30) {
      y = page.para(left, y + 1, width, `and ${pairs.length - i} more that meet; none of them worse than these`, type.small);
      break;
    }
    page.line(left, y, right, y, 0.2);
    const base = y + 5.4;
    page.fit(left, base, width * 0.4, `${name(pair.first)} and ${name(pair.second)}`, type.strong, 8);
    page.text(x.likely, base, lengthIn(setting, pair.likelyMm), { ...type.body, align: 'right' });
    page.text(x.worst, base, lengthIn(setting, pair.worstMm), { ...type.body, align: 'right' });
    page.text(x.has, base, pair.forgivesMm === null ? '—' : lengthIn(setting, pair.forgivesMm), { ...type.body, align: 'right' });
    page.fit(x.verdict, base, right - x.verdict, verdicts[pair.verdict], { ...type.body, weight: pair.verdict === 'holds' ? 'regular' : 'bold' }, 8);
    y += 8;
    if (pair.verdict === 'opens' || pair.verdict === 'tight') y = page.para(left, y - 0.5, width, pair.advice, type.small) + 2;
  }
  page.line(left, y, right, y, 0.2);
  page.para(left, y + 3, width, 'Likely: nineteen sheets in twenty. Worst: everything adds up. Overlap: what the drawing has where the two shapes meet. Measure your own press with the register test sheet; these figures then become yours.', type.small);
}
