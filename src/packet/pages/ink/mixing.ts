import { studioDefaults } from '../../../core/edition/index.ts';
import { figure, labColour, list, mass, name as asName, say, sentences, share, type Quantity } from '../../../words/index.ts';
import { caution, cautionHigh, cautionOf, drawSwatch, paraHigh } from '../parts.ts';
import { massIn, roomOf, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { labelPages, labelsUnder } from '../cut/labels.ts';
import { inkName } from '../words.ts';

const perPage = 3;
const swatchHighMm = 26;
const swatchMm = 46;
const gapMm = 10;
/** Over the table, and the least and most that one of its rows takes. */
const overTableMm = 19.8,
  leastRowMm = 5.6,
  mostRowMm = 13;

/** Three cards a page where they fit, one under the other, to be cut apart and stood beside the pots. */
export function* mixingPages(setting: Setting): Pages {
  const layers = setting.plan.layers.filter((l) => l.mix !== null);
  const open = setting.plan.layers.filter((l) => l.mix === null);
  let at = 0;
  do {
    if (at > 0) yield;
    // Above the first card what holds for all inks.
    const holds = at > 0 ? [] : ['ink-label', ...(layers.some((l) => l.mix && l.mix.retarderShare > 0) ? ['retarder'] : [])];
    const room = roomOf(setting);
    const said = holds.reduce((sum, id) => sum + cautionHigh(setting.book, room.width, cautionOf(setting, id)), 0);
    const from = room.top + said;
    const highFor = (n: number): number => (room.bottom - from - (n - 1) * gapMm) / n;
    const fits = (n: number): boolean => layers.slice(at, at + n).every((l) => leastHigh(setting, l) <= highFor(n));
    let count = perPage;
    while (count > 1 && !fits(count)) count--;
    const height = highFor(count);
    const some = layers.slice(at, at + count);
    const frame = startPage(setting, {
      step: 1,
      title: setting.say('cards.mix'),
      side: setting.say('cards.oneCardARun'),
      runs: some.map((l) => l.run),
    });
    const { page, left, right, top, bottom, width } = frame;
    holds.reduce((y, id) => caution(page, left, y, width, cautionOf(setting, id)), top - 2);
    some.forEach((layer, k) => {
      const y = from + k * (height + gapMm);
      card(setting, frame, layer, y, height);
      if (k > 0) page.line(left, y - gapMm / 2, right, y - gapMm / 2, 0.2, [2, 2]);
    });
    at += count;
    let y = from + some.length * (height + gapMm);
    if (at >= layers.length && open.length > 0 && y < bottom - 8) {
      y = page.para(
        left,
        y,
        width,
        setting.say('cards.stillOpen', {
          runs: list(
            open.map((l) => say('cards.runLayer', { run: l.run, layer: asName(l.name) })),
            'semicolon',
          ),
        }),
        type.body,
      );
    }
    // Labels go under the last card where they fit; else they have a page of their own.
    if (at >= layers.length && !labelsUnder(setting, frame, y + 1)) labelPages(setting);
  } while (at < layers.length);
}

/** What stands under the table: how much, and the retarder. */
function notesOf(setting: Setting, mix: NonNullable<PlannedLayer['mix']>) {
  const words = roomOf(setting).width - swatchMm - 7;
  const [least, most] = mix.totalRangeGrams;
  const mayNeed = say('cards.mayNeed', { least: massIn(setting, least, 'about'), most: massIn(setting, most, 'about') });
  const fine = (grams: number): Quantity & { kind: 'mass' } => mass(grams, setting.units === 'in' ? 2 : 1);
  const [usual, more] = studioDefaults.retarderUsual;
  const asked =
    mix.retarderShare > 0
      ? say('cards.retarderOnTop', { mass: fine(mix.retarderGrams), share: share(mix.retarderShare, 1) })
      : say('cards.noRetarder', { least: fine(mix.totalGrams * usual), most: fine(mix.totalGrams * more) });
  const never = say('cards.neverMore', { most: fine(mix.totalGrams * studioDefaults.retarderMost) });
  const noteStyle = { ...type.small, size: 9.5 };
  const askedStyle = { ...noteStyle, weight: mix.retarderShare > 0 ? 'bold' : 'regular' } as const;
  const notes = [setting.tell(sentences(mix.note, mayNeed)), setting.tell(sentences(asked, never))];
  return {
    words,
    noteStyle,
    askedStyle,
    notes,
    highMm: paraHigh(setting.book, words, notes[0], noteStyle) + paraHigh(setting.book, words, notes[1], askedStyle) + 6.5,
  };
}

const leastHigh = (setting: Setting, { mix }: PlannedLayer): number =>
  mix ? overTableMm + notesOf(setting, mix).highMm + (mix.parts.length + 1) * leastRowMm : 0;

function card(setting: Setting, frame: Frame, layer: PlannedLayer, y: number, heightMm: number): void {
  const { page, left, right } = frame;
  const { plan } = setting;
  const { mix } = layer;
  if (!mix) return;
  const paper = plan.papers[0];
  const { words, notes, noteStyle, askedStyle, highMm: underTable } = notesOf(setting, mix);
  page.text(left, y + 11.5, String(layer.run), { size: 40, weight: 'bold' });
  page.fit(left + 17, y + 5.2, words - 17, setting.tell(inkName(plan, layer)), { size: 20, weight: 'bold' });
  page.fit(
    left + 17,
    y + 11.5,
    words - 17,
    setting.say('cards.inkOfPot', { layer: asName(layer.name), share: share(layer.strength, 0) }),
    type.body,
  );

  const x = { parts: left + words * 0.5, grams: left + words * 0.73, weighed: left + words * 0.77 };
  let at = y + 18;
  page.text(x.parts, at, setting.say('cards.parts'), { ...type.small, align: 'right' });
  page.text(x.grams, at, setting.say('cards.weigh'), { ...type.small, align: 'right' });
  page.text(x.weighed, at, setting.say('cards.weighed'), type.small);
  at += 1.8;
  const row = Math.max(4, Math.min(mostRowMm, (heightMm - overTableMm - underTable) / (mix.parts.length + 1)));
  const size = Math.min(20, row * 1.6, words * 0.16);
  const weighed = (grams: number): string => setting.show(massIn(setting, grams, 'weighed'));
  const weighedBox = (top: number): void =>
    page.rect(x.weighed, top + 1, left + words - x.weighed, row - 2, { stroke: '#000000', lineMm: 0.25 });
  for (const part of mix.parts) {
    page.line(left, at, left + words, at, 0.2);
    const base = at + row * 0.7;
    page.fit(left, base, x.parts - left - 13, setting.tell(part.name), { size: Math.min(13, size), weight: 'bold' }, 7);
    page.text(x.parts, base, setting.show(partsOf(part.partsByVolume)), { size, align: 'right' });
    page.text(x.grams, base, weighed(part.massGrams), { size, weight: 'bold', align: 'right' });
    weighedBox(at);
    at += row;
  }
  page.line(left, at, left + words, at, 0.6);
  page.text(left, at + row * 0.7, setting.say('cards.together'), { size: Math.min(13, size), weight: 'bold' });
  page.text(x.grams, at + row * 0.7, weighed(mix.totalGrams), { size, weight: 'bold', align: 'right' });
  weighedBox(at + 0.4);
  at += row + 3;

  at = page.para(left, at, words, notes[0], noteStyle) + 1.5;
  page.para(left, at, words, notes[1], askedStyle);

  const sx = right - swatchMm;
  drawSwatch(setting, page, layer.swatch?.srgb ?? null, sx, y, swatchMm, swatchHighMm);
  page.fit(
    sx,
    y + swatchHighMm + 4.2,
    swatchMm,
    paper ? setting.say('cards.aloneOn', { paper: asName(paper.name) }) : setting.say('cards.alone'),
    {
      size: 8.5,
    },
  );
  if (layer.swatch) {
    const { lab, inGamut } = layer.swatch;
    page.fit(sx, y + swatchHighMm + 8.4, swatchMm, setting.say(inGamut ? 'packet.lab' : 'packet.labRicher', { lab: labColour(lab) }), {
      size: 8.5,
    });
  }
  const box = y + swatchHighMm + 11;
  page.rect(sx, box, swatchMm, heightMm - swatchHighMm - 11, { stroke: '#000000', lineMm: 0.3 });
  page.para(sx + 2, box + 2.2, swatchMm - 4, setting.say('cards.drawdownHere'), { size: 8.5 });
}

function partsOf(parts: number): Quantity {
  return figure(parts, Math.abs(parts - Math.round(parts)) < 0.05 ? 0 : 1);
}
