/**
 * What a saying can carry. Core says *what* a value is and how finely it is known; the reader's language and units turn it into
 * text, once, at the edge (`tell.ts`).
 */
export type Value = number | Quantity | Names | List | Saying;

export type Quantity =
  /** Millimetres. `digits` after the point in mm; inches get one or two more by themselves. */
  | { readonly kind: 'length'; readonly mm: number; readonly digits?: number; readonly long?: true }
  /** Sides or points that belong together: `180 × 240 mm`, `at 31, 40 mm`, `3.7 to 2.3 mm`. */
  | { readonly kind: 'lengths'; readonly mm: readonly number[]; readonly by: '×' | ',' | 'to'; readonly digits?: number }
  /** A film or sheet, microns. */
  | { readonly kind: 'film'; readonly microns: number; readonly digits?: number }
  /** Square millimetres. */
  | { readonly kind: 'area'; readonly mm2: number }
  | { readonly kind: 'mass'; readonly grams: number; readonly digits?: number }
  | { readonly kind: 'volume'; readonly millilitres: number; readonly digits?: number }
  /** How long something takes. */
  | { readonly kind: 'time'; readonly minutes: number }
  /** Minutes since midnight. */
  | { readonly kind: 'clock'; readonly minutes: number }
  /** 0..1, said in per cent. */
  | { readonly kind: 'share'; readonly share: number; readonly digits?: number }
  /** A figure without a unit of its own. Trailing noughts stand only with `fixed`. */
  | { readonly kind: 'number'; readonly value: number; readonly digits: number; readonly fixed: boolean }
  /** ΔE00. */
  | { readonly kind: 'colour-difference'; readonly deltaE: number; readonly digits?: number }
  /** CIE L*a*b*. */
  | { readonly kind: 'lab'; readonly lab: readonly [number, number, number] };

/** Somebody's own words (a layer, a note, a file, what was typed): they stand as they were written, in every language. */
export interface Names {
  readonly kind: 'name';
  readonly name: string;
}

/** Values one after the other: `A, B and C`, `A, B or C`, `A, B, C`, or sentences behind one another. */
export interface List {
  readonly kind: 'list';
  readonly items: readonly Value[];
  readonly by: 'and' | 'or' | 'comma' | 'sentences' | 'semicolon';
}

/** A saying as data: a key of the catalogues and its values. Plain, so it can be kept, compared, sent to a worker and said in any language. */
export interface Saying {
  readonly key: string;
  readonly values?: Readonly<Record<string, Value | undefined>>;
}

export type KindOf<V> = V extends { readonly kind: infer K } ? K : 'saying';

export const length = (mm: number, digits?: number): Quantity & { kind: 'length' } => ({ kind: 'length', mm, digits });
/** What is measured by the metre (cuts, tape): `12.4 m`, `41 ft`. */
export const longLength = (mm: number, digits?: number): Quantity & { kind: 'length' } => ({ kind: 'length', mm, digits, long: true });
export const lengths = (mm: readonly number[], by: '×' | ',' | 'to' = '×', digits?: number): Quantity & { kind: 'lengths' } => ({
  kind: 'lengths',
  mm,
  by,
  digits,
});
export const film = (microns: number, digits?: number): Quantity & { kind: 'film' } => ({ kind: 'film', microns, digits });
export const area = (mm2: number): Quantity & { kind: 'area' } => ({ kind: 'area', mm2 });
export const mass = (grams: number, digits?: number): Quantity & { kind: 'mass' } => ({ kind: 'mass', grams, digits });
export const volume = (millilitres: number, digits?: number): Quantity & { kind: 'volume' } => ({ kind: 'volume', millilitres, digits });
export const time = (minutes: number): Quantity & { kind: 'time' } => ({ kind: 'time', minutes });
export const clock = (minutes: number): Quantity & { kind: 'clock' } => ({ kind: 'clock', minutes });
export const share = (of1: number, digits?: number): Quantity & { kind: 'share' } => ({ kind: 'share', share: of1, digits });
export const figure = (value: number, digits = 0, fixed = true): Quantity & { kind: 'number' } => ({
  kind: 'number',
  value,
  digits,
  fixed,
});
export const deltaE = (difference: number, digits?: number): Quantity & { kind: 'colour-difference' } => ({
  kind: 'colour-difference',
  deltaE: difference,
  digits,
});
export const labColour = (lab: readonly [number, number, number]): Quantity & { kind: 'lab' } => ({ kind: 'lab', lab });
export const name = (text: string): Names => ({ kind: 'name', name: text });
export const list = (items: readonly Value[], by: List['by'] = 'and'): List => ({ kind: 'list', items, by });
