import type { Problem } from '../core/problem.ts';
import {
  bareInches,
  sayArea,
  sayFilm,
  sayLength,
  sayMass,
  sayShare,
  sayVolume,
  mmPerInch,
  sayNumber,
  type LengthUnits,
} from '../core/units/index.ts';
import type { en } from './en/index.ts';
import type { shown } from './en/shown.ts';
import type { List, Quantity, Saying, Value } from './kinds.ts';

/** A language that there is a whole catalogue of. */
export interface Language {
  /** As in `lang` attributes: `en`. */
  readonly id: string;
  /** In itself: `Deutsch`. */
  readonly name: string;
  /** For `Intl`: how numbers, lists and plurals are made. */
  readonly locale: string;
}
/** What page and packet say; whoever speaks as the command has the whole. */
export type Catalogue = typeof shown;

/** Every language. To add one: a folder like `en/`, and the lines that CONTRIBUTING.md names. */
export const languages: readonly Language[] = [
  { id: 'en', name: 'English', locale: 'en-GB' },
  { id: 'de', name: 'Deutsch', locale: 'de-DE' },
];

const learned = new Map<string, Catalogue>();
/** Makes the words of a language known. `index.ts` knows all from the start; the page fetches one at a time. */
export function learn(id: string, words: Catalogue | typeof en): void {
  learned.set(id, words);
}

export const knows = (id: string): boolean => learned.has(id);

/** Its words; of another language that is known as long as its own are not. */
export function catalogueOf({ id }: Language): Catalogue {
  const words = learned.get(id) ?? [...learned.values()][0];
  if (!words) throw new Error(`The words of ${id} have not been learned.`);
  return words;
}

/** Who reads: their language and the units of the job. */
export interface Reader {
  readonly language: string;
  readonly units: LengthUnits;
}

export const english: Reader = { language: 'en', units: 'mm' };

/** The language of this id or of a locale such as `de_AT.UTF-8`; English where there is no catalogue in it. */
export function languageOf(id: string): Language {
  const short = id.slice(0, 2).toLowerCase();
  return languages.find((l) => l.id === short) ?? languages[0];
}

/** A saying as text, in the reader's language and units. The one place where values become text. */
export function tell(saying: Saying, reader: Reader = english): string {
  const language = languageOf(reader.language);
  const [room, name] = split(saying.key);
  const message = (catalogueOf(language) as unknown as Record<string, Record<string, unknown>>)[room]?.[name];
  if (typeof message === 'string') return message;
  // A saying kept by an older or newer edition, whose words are gone: its key is all there is to show.
  if (typeof message !== 'function') return saying.key;
  const values: Record<string, string | number | undefined> = {};
  for (const [key, value] of Object.entries(saying.values ?? {})) {
    values[key] = typeof value === 'number' || value === undefined ? value : textOf(value, reader, language);
  }
  return (message as (values: unknown) => string)(values);
}

/** Any value as text. */
export function tellValue(value: Value, reader: Reader): string {
  return textOf(value, reader, languageOf(reader.language));
}

function textOf(value: Value, reader: Reader, language: Language): string {
  if (typeof value === 'number') return numbers(language.locale, 0, 20, value);
  if ('key' in value) return tell(value, reader);
  if (value.kind === 'name') return value.name;
  if (value.kind === 'list') return listOf(value, reader, language);
  return local(quantity(value, reader.units, language), language);
}

function quantity(value: Quantity, units: LengthUnits, language: Language): string {
  switch (value.kind) {
    case 'length':
      return value.long ? longText(value.mm, units, value.digits) : lengthText([value.mm], ', ', units, value.digits);
    case 'lengths':
      return lengthText(
        value.mm,
        value.by === '×' ? ' × ' : value.by === ',' ? ', ' : ` ${catalogueOf(language).common.to} `,
        units,
        value.digits,
      );
    case 'film':
      return sayFilm(value.microns, units, value.digits);
    case 'area':
      return sayArea(value.mm2, units);
    case 'mass':
      return sayMass(value.grams, units, value.digits);
    case 'volume':
      return sayVolume(value.millilitres, units, value.digits);
    case 'time':
      return timeText(value.minutes);
    case 'clock':
      return clockText(value.minutes);
    case 'share':
      return sayShare(value.share, value.digits);
    case 'number':
      return sayNumber(value.value, value.digits, value.fixed);
    case 'colour-difference':
      return sayNumber(value.deltaE, value.digits ?? 1, true);
    case 'lab':
      return value.lab.map((v) => sayNumber(v, 0, true).replace('-', '−')).join(' ');
  }
}

/** `3.7 mm`, `180 × 240 mm`; in inches as a ruler says it, or about three figures, whatever was asked in mm. */
function lengthText(mm: readonly number[], between: string, units: LengthUnits, digits?: number): string {
  if (units === 'mm') {
    const numbersOnly = mm.map((one) => sayLength(one, 'mm', digits).replace(/\u00a0mm$/, ''));
    return `${numbersOnly.join(between)}\u00a0mm`;
  }
  const inches = mm.map((one) => bareInches(one, digits !== undefined));
  return `${inches.join(between)}\u00a0in`;
}

/** `12.4 m`, `41 ft`. */
function longText(mm: number, units: LengthUnits, digits?: number): string {
  const value = units === 'mm' ? mm / 1000 : mm / (12 * mmPerInch);
  return `${sayNumber(value, digits ?? (Math.abs(value) >= 100 ? 0 : 1), digits !== undefined)}\u00a0${units === 'mm' ? 'm' : 'ft'}`;
}

/** `25 min`, `2 h`, `1 h 20 min`. */
function timeText(minutes: number): string {
  const whole = Math.round(minutes);
  const h = Math.floor(whole / 60);
  const rest = whole % 60;
  return h === 0 ? `${rest}\u00a0min` : rest === 0 ? `${h}\u00a0h` : `${h}\u00a0h ${rest}\u00a0min`;
}

/** `9:05`, past midnight too. */
function clockText(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60) % 24}:${String(whole % 60).padStart(2, '0')}`;
}

function listOf({ items, by }: List, reader: Reader, language: Language): string {
  const texts = items.map((item) => textOf(item, reader, language));
  if (by === 'sentences') return texts.filter((t) => t !== '').join(' ');
  if (by === 'semicolon') return texts.join('; ');
  if (by === 'comma') return texts.join(', ');
  return lists(language.locale, by === 'or' ? 'disjunction' : 'conjunction').format(texts);
}

const decimals = new Map<string, string>();
/** A text of numbers and units, written with a point, with the decimal mark of the language. Names never come this way. */
function local(text: string, language: Language): string {
  let mark = decimals.get(language.locale);
  if (mark === undefined) {
    mark = new Intl.NumberFormat(language.locale).formatToParts(0.5).find((part) => part.type === 'decimal')?.value ?? '.';
    decimals.set(language.locale, mark);
  }
  return mark === '.' ? text : text.replace(/(\d)\.(?=\d)/g, `$1${mark}`);
}

function numbers(locale: string, least: number, most: number, value: number): string {
  return new Intl.NumberFormat(locale, { minimumFractionDigits: least, maximumFractionDigits: most, useGrouping: false }).format(value);
}

const listFormats = new Map<string, Intl.ListFormat>();
function lists(locale: string, type: 'conjunction' | 'disjunction'): Intl.ListFormat {
  const key = `${locale} ${type}`;
  let format = listFormats.get(key);
  if (!format) listFormats.set(key, (format = new Intl.ListFormat(locale, { type })));
  return format;
}

function split(key: string): readonly [string, string] {
  const dot = key.indexOf('.');
  return [key.slice(0, dot), key.slice(dot + 1)];
}

/** A problem on one line, for terminal, page and screen: where, what, what to do. */
export function tellProblem(p: Problem, reader: Reader = english): string {
  return [`${tellPlace(p, reader)}:`, tell(p.message, reader), tell(p.advice, reader)].filter((t) => t !== ':' && t !== '').join(' ');
}

/** Where a problem is, as a printmaker says it. */
export function tellPlace(p: Problem, reader: Reader = english): string {
  return p.where ? tell(p.where, reader) : '';
}
