import { cautions, studioDefaults } from '../../core/edition/index.ts';
import { sayMass } from '../../core/units/index.ts';
import { caution, drawSwatch } from './parts.ts';
import { startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { inkName, labWords } from './words.ts';

/** Two cards a page, one under the other, to be cut apart and stood beside the pots. */
export function* mixingPages(setting: Setting): Pages {
  const layers = setting.plan.layers.filter((l) => l.mix !== null);
  const open = setting.plan.layers.filter((l) => l.mix === null);
  for (let i = 0; i < Math.max(1, layers.length); i += 2) {
    if (i > 0) yield;
    const pair = layers.slice(i, i + 2);
    const frame = startPage(setting, { step: 1, title: 'Mix', side: 'one card a run', runs: pair.map((l) => l.run) });
    const { page, left, right, top, bottom, width } = frame;
    const gap = 14;
    const height = (bottom - top - gap) / 2;
    pair.forEach((layer, k) => card(setting, frame, layer, top + k * (height + gap), height));
    const middle = top + height + gap / 2;
    if (pair.length > 1) page.line(left, middle, right, middle, 0.2, [2, 2]);
    else if (open.length > 0) {
      page.para(
        left,
        pair.length === 0 ? top : middle + 7,
        width,
        `Still open: ${open.map((l) => `run ${l.run}, ${l.name}`).join('; ')}. The card follows when the ink is chosen.`,
        type.body,
      );
    }
  }
}

function card(setting: Setting, frame: Frame, layer: PlannedLayer, y: number, heightMm: number): void {
  const { page, left, right, width } = frame;
  const { plan, units } = setting;
  const { mix } = layer;
  if (!mix) return;
  const paper = plan.papers[0];
  const swatchMm = 46;
  const words = width - swatchMm - 7;
  page.text(left, y + 11.5, String(layer.run), { size: 44, weight: 'bold' });
  page.fit(left + 17, y + 5.2, words - 17, inkName(plan, layer), { size: 20, weight: 'bold' });
  page.fit(
    left + 17,
    y + 11.5,
    words - 17,
    `for “${layer.name}”: ink ${Math.round(layer.strength * 100)} % of the pot by volume`,
    type.body,
  );

  const x = { parts: left + words * 0.5, grams: left + words * 0.73, weighed: left + words * 0.77 };
  let at = y + 22;
  page.text(x.parts, at, 'parts', { ...type.small, align: 'right' });
  page.text(x.grams, at, 'weigh', { ...type.small, align: 'right' });
  page.text(x.weighed, at, 'weighed', type.small);
  at += 1.8;
  const row = Math.min(13, (heightMm - 58) / (mix.parts.length + 1));
  const size = Math.min(20, row * 1.6);
  const mass = (grams: number): string => sayMass(grams, units, units === 'in' ? 2 : grams < 20 ? 1 : 0);
  const weighedBox = (top: number): void =>
    page.rect(x.weighed, top + 1, left + words - x.weighed, row - 2, { stroke: '#000000', lineMm: 0.25 });
  for (const part of mix.parts) {
    page.line(left, at, left + words, at, 0.2);
    const base = at + row * 0.7;
    page.fit(left, base, x.parts - left - 13, part.name, { size: Math.min(13, size), weight: 'bold' }, 7);
    page.text(x.parts, base, sayParts(part.partsByVolume), { size, align: 'right' });
    page.text(x.grams, base, mass(part.massGrams), { size, weight: 'bold', align: 'right' });
    weighedBox(at);
    at += row;
  }
  page.line(left, at, left + words, at, 0.6);
  page.text(left, at + row * 0.7, 'together', { size: Math.min(13, size), weight: 'bold' });
  page.text(x.grams, at + row * 0.7, mass(mix.totalGrams), { size, weight: 'bold', align: 'right' });
  weighedBox(at + 0.4);
  at += row + 3;

  const [low, high] = mix.totalRangeGrams;
  at =
    page.para(
      left,
      at,
      words,
      `${mix.note} Between ${sayMass(low, units, units === 'in' ? 1 : 0)} and ${sayMass(high, units, units === 'in' ? 1 : 0)} may be needed.`,
      { ...type.small, size: 9.5 },
    ) + 1.5;
  const grams = (share: number): string => sayMass(mix.totalGrams * share, units, units === 'in' ? 2 : 1);
  const asked =
    mix.retarderShare > 0
      ? `Retarder on top: ${sayMass(mix.retarderGrams, units, units === 'in' ? 2 : 1)} (${(mix.retarderShare * 100).toFixed(1)} %)`
      : `No retarder at this pace; if it dries in the mesh, ${grams(studioDefaults.retarderUsual[0])} to ${grams(studioDefaults.retarderUsual[1])}`;
  at =
    page.para(left, at, words, `${asked}. Never over ${grams(studioDefaults.retarderMost)}: it would not dry.`, {
      ...type.small,
      size: 9.5,
      weight: mix.retarderShare > 0 ? 'bold' : 'regular',
    }) + 2;
  caution(page, left, at, words, cautions.find((c) => c.id === 'retarder')?.text ?? 'Gloves for retarder. Labels come first.');

  const sx = right - swatchMm;
  drawSwatch(page, layer.swatch?.srgb ?? null, sx, y, swatchMm, 40);
  page.fit(sx, y + 44.2, swatchMm, paper ? `alone on ${paper.name}` : 'alone', { size: 8.5 });
  if (layer.swatch)
    page.fit(sx, y + 48.4, swatchMm, `Lab ${labWords(layer.swatch.lab)}${layer.swatch.inGamut ? '' : '; richer than shown'}`, {
      size: 8.5,
    });
  const box = y + 53;
  page.rect(sx, box, swatchMm, heightMm - 53, { stroke: '#000000', lineMm: 0.3 });
  page.para(sx + 2, box + 2.2, swatchMm - 4, 'Drawdown of this pot, fully dry. Date, lot:', { size: 8.5 });
}

function sayParts(parts: number): string {
  return Math.abs(parts - Math.round(parts)) < 0.05 ? parts.toFixed(0) : parts.toFixed(1);
}
