import type { en } from './en/index.ts';
import type { List, Names, Quantity, Saying, Value } from './kinds.ts';

import type { Kinded } from './text.ts';

export type { List, Names, Quantity, Saying, Value } from './kinds.ts';
export {
  area,
  clock,
  deltaE,
  figure,
  film,
  labColour,
  length,
  longLength,
  lengths,
  list,
  mass,
  name,
  share,
  time,
  volume,
} from './kinds.ts';

/** The rooms of the catalogue that are said by key. The bench's own words are read straight from it. */
export type Rooms = Omit<typeof en, 'bench'>;
type KeyIn<R extends keyof Rooms & string> = `${R}.${keyof Rooms[R] & string}`;
/** Every key there is: `press.gapTears`. */
export type Key = { [R in keyof Rooms & string]: KeyIn<R> }[keyof Rooms & string];
type Message<K extends Key> = K extends `${infer R extends keyof Rooms & string}.${infer N}` ? Rooms[R][N & keyof Rooms[R]] : never;

type ValueOfKind<Kind> =
  | (Kind extends Quantity['kind'] ? Extract<Quantity, { kind: Kind }> : never)
  | (Kind extends 'name' ? Names : never)
  | (Kind extends 'list' ? List : never)
  | (Kind extends 'saying' ? Saying : never);
type MarkOf<T> = T extends Kinded<infer Kind> ? (unknown extends Kind ? unknown : Exclude<Kind, undefined>) : unknown;
type ValueFor<T> = T extends number ? number : unknown extends MarkOf<T> ? Exclude<Value, number> : ValueOfKind<MarkOf<T>>;
/** The values that a message of the catalogue wants. */
export type ValuesFor<M> = M extends (values: infer V) => string
  ? { readonly [P in keyof V]: ValueFor<Exclude<V[P], undefined>> }
  : undefined;
export type ValuesOf<K extends Key> = ValuesFor<Message<K>>;

/** Says something: a key of the catalogue with its values. A wrong key, a missing or a superfluous value fails the types. */
export function say<K extends Key>(key: K, ...values: ValuesOf<K> extends undefined ? [] : [ValuesOf<K>]): Saying {
  return values.length === 0 ? { key } : { key, values: values[0] as Saying['values'] };
}

/** Somebody's own words where a saying is wanted: they stand as written. */
export function asWritten(text: string): Saying {
  return { key: 'common.asWritten', values: { text: { kind: 'name', name: text } } };
}

/** Sayings behind one another, as sentences of one text. */
export function sentences(...sayings: readonly (Saying | null | undefined | false)[]): Saying {
  const all = sayings.filter((s): s is Saying => Boolean(s));
  return all.length === 1 ? all[0] : { key: 'common.listed', values: { all: { kind: 'list', items: all, by: 'sentences' } } };
}

/** A list where a saying is wanted. */
export function listed(items: readonly Value[], by: List['by'] = 'and'): Saying {
  return { key: 'common.listed', values: { all: { kind: 'list', items, by } } };
}

/** For `JSON.stringify`: numbers stay, sayings become what `as` makes of them. */
export function sayingsIn(as: (saying: Saying) => string): (key: string, value: unknown) => unknown {
  return (_, value) => (isSaying(value) ? as(value) : value);
}

/** True of a saying in a document or a message from a worker. */
export function isSaying(value: unknown): value is Saying {
  return typeof value === 'object' && value !== null && 'key' in value && typeof value.key === 'string' && /^\w+\.\w+$/.test(value.key);
}
