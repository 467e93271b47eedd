import { sayMass } from '../../core/units/index.ts';
import { caution, drawSwatch } from './parts.ts';
import { startPage, type, type Frame, type PlannedLayer, type Setting } from './setting.ts';
import { inkName, labWords } from './words.ts';

/** Two cards a page, one under the other, to be cut apart and stood beside the pots. */
export function mixingPages(setting: Setting): void {
  const layers = setting.plan.layers.filter((l) => l.mix !== null);
  for (let i = 0; i < layers.length; i += 2) {
    const pair = layers.slice(i, i + 2);
    const frame = startPage(setting, { step: 1, title: 'Mix', side: 'one card a run', runs: pair.map((l) => l.run) });
    const height = (frame.bottom - frame.top) / 2;
    pair.forEach((layer, k) => card(setting, frame, layer, frame.top + k * (height + 3), height - 3));
    if (pair.length > 1) frame.page.line(frame.left, frame.top + height - 1, frame.right, frame.top + height - 1, 0.2, [2, 2]);
  }
}

function card(setting: Setting, frame: Frame, layer: PlannedLayer, y: number, heightMm: number): void {
  const { page, left, right, width } = frame;
  const { plan, units } = setting;
  const { mix } = layer;
  if (!mix) return;
  const paper = plan.papers[0];
  const swatchMm = 42;
  const words = width - swatchMm - 6;
  page.text(left, y + 9, String(layer.run), { size: 34, weight: 'bold' });
  page.fit(left + 14, y + 4.2, words - 14, inkName(plan, layer), { size: 20, weight: 'bold' });
  page.fit(left + 14, y + 9.8, words - 14, `for “${layer.name}”, ink ${Math.round(layer.strength * 100)} % of the pot by volume`, type.body);

  const columns = { name: left, parts: left + words * 0.5, grams: left + words * 0.74, weighed: left + words * 0.78 };
  let at = y + 19;
  page.text(columns.parts, at, 'parts', { ...type.small, align: 'right' });
  page.text(columns.grams, at, 'weigh', { ...type.small, align: 'right' });
  page.text(columns.weighed, at, 'weighed', type.small);
  at += 1.8;
  const row = Math.min(11, (heightMm - 62) / (mix.parts.length + 1));
  const big = Math.min(18, row * 1.7);
  for (const part of mix.parts) {
    page.line(left, at, left + words, at, 0.2);
    const base = at + row * 0.72;
    page.fit(columns.name, base, columns.parts - columns.name - 14, part.name, { ...type.strong, size: Math.min(13, big) }, 7);
    page.text(columns.parts, base, sayParts(part.partsByVolume), { size: big, align: 'right' });
    page.text(columns.grams, base, sayMass(part.massGrams, units, units === 'mm' ? (part.massGrams < 20 ? 1 : 0) : 2), { size: big, weight: 'bold', align: 'right' });
    page.rect(columns.weighed, at + 1, left + words - columns.weighed, row - 2, { stroke: '#000000', lineMm: 0.2 });
    at += row;
  }
  page.line(left, at, left + words, at, 0.6);
  page.text(columns.name, at + row * 0.72, 'together', type.strong);
  page.text(columns.grams, at + row * 0.72, sayMass(mix.totalGrams, units, units === 'mm' ? 0 : 2), { size: big, weight: 'bold', align: 'right' });
  page.rect(columns.weighed, at + 1.2, left + words - columns.weighed, row - 2, { stroke: '#000000', lineMm: 0.2 });
  at += row + 2.5;

  const [low, high] = mix.totalRangeGrams;
  at = page.para(left, at, words, `${mix.note} Between ${sayMass(low, units, 0)} and ${sayMass(high, units, 0)} may be needed.`, type.small) + 1.5;
  // 2 to 5 % by one published range, 10 % as the ceiling: common practice.
  at = page.para(left, at, words, `Retarder, if it dries in the mesh: ${sayMass(mix.totalGrams * 0.02, units, 1)} to ${sayMass(mix.totalGrams * 0.05, units, 1)}. Never over ${sayMass(mix.totalGrams * 0.1, units, 1)}: it would not dry.`, type.small) + 1.5;
  caution(page, left, at, words, 'Gloves for retarder. Follow the labels.');

  const sx = right - swatchMm;
  drawSwatch(page, layer.swatch?.srgb ?? null, sx, y, swatchMm, 36);
  page.fit(sx, y + 40, swatchMm, paper ? `alone on ${paper.name}` : 'alone', { size: 8.5 });
  if (layer.swatch) page.fit(sx, y + 44, swatchMm, `Lab ${labWords(layer.swatch.lab)}${layer.swatch.inGamut ? '' : ', not printable here'}`, { size: 8.5 });
  const box = y + 48;
  page.rect(sx, box, swatchMm, Math.max(20, Math.min(46, heightMm - 52)), { stroke: '#000000', lineMm: 0.3 });
  page.para(sx + 2, box + 2, swatchMm - 4, 'drawdown of this pot, fully dry. Date, lot:', { size: 8.5 });
}

function sayParts(parts: number): string {
  return Math.abs(parts - Math.round(parts)) < 0.05 ? parts.toFixed(0) : parts.toFixed(1);
}
