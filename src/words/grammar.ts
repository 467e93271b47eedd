/** Counting, as `Intl` knows each language's plural forms. */
export interface Grammar {
  /** `1 sheet`, `3 sheets`. */
  many(n: number, one: string, other: string): string;
  /** The word alone, without its number. */
  which(n: number, one: string, other: string): string;
}

export function grammarOf(locale: string): Grammar {
  const rules = new Intl.PluralRules(locale);
  const which = (n: number, one: string, other: string): string => (rules.select(n) === 'one' ? one : other);
  return { which, many: (n, one, other) => `${n} ${which(n, one, other)}` };
}

/** The same text beginning with a capital: a saying that stands first in another. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
